package kit

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
)

// Output is a photometric statement: what a unit's data says, or what a scene writes in place
// of a unit. Exactly one of the leading figures is given. Angles are full angles in degrees;
// 0 means not given.
type Output struct {
	Span                       source.Span
	Lux, Distance              float64 // lx at Distance m on the axis, with Beam (and Field)
	Candela, Lumens, Luminance float64 // cd; lm; cd/m2
	Beam, Field                float64
	Shape                      string      // the word of a spread, or "" for a lobe or a face
	Face                       *[2]float64 // width, height, m
	Disc, Tube, Sphere         float64     // diameter, length, diameter, m
	IES, LDT                   string      // the name of a photometric file, as written
	FileSpan                   source.Span // of that name
	Measured                   *Measured   // the file, once it was read; see Take
}

// outputForms are the figures that an output may state; it states exactly one.
var outputForms = []string{"lux", "candela", "lumens", "luminance", "ies", "ldt"}

// OutputShape returns the table of keys of an output, as a unit of the catalogue or a light of a
// scene states it. OutputReader also checks that the keys go together.
func OutputShape() *source.Shape[Output] {
	type o = Output
	size := func(what string) source.Reader[float64] { return length(what, "1.2", 0.005, 50) }
	face := source.Converted(pair("a face", "[1.2, 1.2]", size("a side of a face")),
		func(v [2]float64) *[2]float64 { return &v })
	return &source.Shape[Output]{
		Name: "output",
		Doc:  "What a source sends out: one figure, and how it is spread.",
		Fields: []source.Field[Output]{
			field("lux", amount("an illuminance", "8000", 1e-3, 1e8), func(v *o) *float64 { return &v.Lux },
				"Illuminance on the axis, lx, at `distance`."),
			field("distance", length("a distance", "3 m", 0.05, 1000), func(v *o) *float64 { return &v.Distance },
				"Where `lux` was measured, from the emitting face."),
			field("candela", amount("an intensity", "1000", 1e-3, photometry.MostCandela), func(v *o) *float64 { return &v.Candela },
				"Greatest luminous intensity, cd."),
			field("lumens", flux("10000"), func(v *o) *float64 { return &v.Lumens },
				"Luminous flux, lm."),
			field("luminance", amount("a luminance", "1000", 1e-3, 1e10), func(v *o) *float64 { return &v.Luminance },
				"Luminance of a face, disc or sphere, cd/m²."),
			field("beam", beamAngle("55"), func(v *o) *float64 { return &v.Beam },
				"Full angle to 50 % of the peak."),
			withDefault(field("field", fieldAngle("80"), func(v *o) *float64 { return &v.Field },
				"Full angle to 10 % of the peak."), "1.8226 times the beam"),
			field("shape", source.OneOf("a shape", spreadWords()...), func(v *o) *string { return &v.Shape }, spreadDoc()),
			field("face", face, func(v *o) **[2]float64 { return &v.Face },
				"Width and height of a rectangle that shines from one side."),
			field("disc", size("a disc"), func(v *o) *float64 { return &v.Disc },
				"Diameter of a disc that shines from one side."),
			field("tube", size("a tube"), func(v *o) *float64 { return &v.Tube },
				"Length of a tube that shines all round, along the lamp's right; its ends are dark."),
			field("sphere", size("a sphere"), func(v *o) *float64 { return &v.Sphere },
				"Diameter of a sphere that shines all round."),
			fileNamed(field("ies", source.Text("a file name", "lamp.ies"), func(v *o) *string { return &v.IES },
				"A photometric file, IES LM-63, beside the file that names it or below; its C0 lies along the lamp's right.")),
			fileNamed(field("ldt", source.Text("a file name", "lamp.ldt"), func(v *o) *string { return &v.LDT },
				"A photometric file, EULUMDAT; its C0 lies along the lamp's right, and so the length of a luminaire upright: `roll: 90` lays it level.")),
		},
		Forms: outputForms,
	}
}

// fileNamed keeps where the name of a file was written.
func fileNamed(f source.Field[Output]) source.Field[Output] {
	read := f.Read
	f.Read = func(o *Output, n *source.Node, c *source.Context) {
		o.FileSpan = n.Span
		read(o, n, c)
	}
	return f
}

// OutputReader reads an output that stands by itself, as in a scene, and checks that its keys go
// together and say all that is needed.
func OutputReader() source.Reader[Output] { return outputReader(true) }

// outputReader reads an output. One of a unit need not say how it is spread, since its modifier
// does.
func outputReader(alone bool) source.Reader[Output] {
	shape := OutputShape()
	return source.Reader[Output]{
		What: "an output", Like: "{lumens: 3000, face: [1, 1]}", Schema: shape.Schema,
		Read: func(n *source.Node, c *source.Context) (Output, bool) {
			if n.Kind != source.Map {
				c.Error(n, source.CodeWrongType, "write it like {lumens: 3000, face: [1, 1]}", "an output belongs here, not %s", n.Kind)
				return Output{}, false
			}
			o := Output{Span: n.Span}
			clean := readsWithoutError(c, func(c *source.Context) { shape.Read(&o, n, c) })
			return o, clean && o.check(n, c, alone)
		},
	}
}

// opening is the luminous opening that the output states; a point where it states none.
func (o *Output) opening() photometry.Opening {
	switch {
	case o.Face != nil:
		return photometry.Opening{Form: photometry.Rectangle, Width: o.Face[0], Height: o.Face[1]}
	case o.Disc > 0:
		return photometry.Opening{Form: photometry.Disc, Width: o.Disc}
	case o.Tube > 0:
		return photometry.Opening{Form: photometry.Tube, Width: o.Tube}
	case o.Sphere > 0:
		return photometry.Opening{Form: photometry.Sphere, Width: o.Sphere}
	}
	return photometry.Opening{}
}

// spread is how the output says its light is spread: by a file, by angles, by a shape, or evenly
// over an opening. ok is false where it does not say.
func (o *Output) spread() (d photometry.Distribution, opening photometry.Opening, ok bool) {
	opening = o.opening()
	switch {
	case o.Measured != nil:
		return o.Measured.Source.Distribution, o.Measured.Source.Opening, true
	case o.Beam > 0:
		return lobe(o.Beam, o.Field, opening), opening, true
	case o.Shape != "":
		return spreadNamed(o.Shape), opening, true
	case opening.Form != photometry.Point:
		return photometry.Lambertian(opening.Form), opening, true
	}
	return nil, opening, false
}

// lobe is that of angles before an opening: a face and a disc shine from one side.
func lobe(beam, field float64, before photometry.Opening) photometry.Distribution {
	switch before.Form {
	case photometry.Rectangle, photometry.Disc:
		return photometry.NewFaceLobe(beam, field)
	}
	return photometry.NewLobe(beam, field)
}

// source is the photometric source of the output's figure, spread as told.
func (o *Output) source(d photometry.Distribution, opening photometry.Opening) photometry.Source {
	switch {
	case o.Measured != nil:
		return photometry.FromLumens(o.Measured.Source.Flux, d, opening)
	case o.Lux > 0:
		return photometry.FromLux(o.Lux, o.Distance, d, opening)
	case o.Candela > 0:
		return photometry.FromCandela(o.Candela, d, opening)
	case o.Luminance > 0:
		return photometry.FromLuminance(o.Luminance, opening)
	}
	return photometry.FromLumens(o.Lumens, d, opening)
}

// Source gives the light of an output that says how it is spread; not ok for one that leaves that to a modifier, or to a file that
// was not read.
func (o *Output) Source() (s photometry.Source, ok bool) {
	d, opening, ok := o.spread()
	if !ok {
		return s, false
	}
	return o.source(d, opening), true
}

// FileName gives the name of the output's photometric file and how it is read; "" where it names
// none.
func (o *Output) FileName() (name string, read func(*source.File) *Measured) {
	if o.IES != "" {
		return o.IES, ReadIES
	}
	return o.LDT, ReadLDT
}

// SetMeasured makes the light of a photometric file that of the output. What was found in the file is reported at its line,
// with the place that names the file.
func (o *Output) SetMeasured(m *Measured, c *source.Context) {
	for _, d := range m.Diagnostics {
		d.Setup = c.Setup
		d.Related = append(d.Related[:len(d.Related):len(d.Related)], source.Related{Span: o.FileSpan, Message: "the light takes its output from the file here"})
		c.Log.Add(d)
	}
	if m.Source.Distribution != nil {
		o.Measured = m
	}
}
