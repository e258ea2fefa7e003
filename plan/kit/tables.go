package kit

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// The words of the catalogue.
var (
	technology = source.Vocabulary("a technology", term.Technologies)
)

func label[T any](at func(*T) *string) source.Field[T] {
	return field("label", source.Text("a label", "600 W LED point"), at,
		"What a tag on the plan calls it.")
}

func doc[T any](at func(*T) *string) source.Field[T] {
	return field("doc", source.Text("a line of text", "An open-faced LED head"), at,
		"What it is, in one line.")
}

// spare is the rule by which a thing goes along twice.
func spare[T any](at func(*T) *float64) source.Field[T] {
	return withDefault(field("spare", share("a share", "10 %"), at,
		"Spares: the share of those in use that goes along beside them, rounded up."), "none")
}

func class[T any](at func(*T) *term.Class) source.Field[T] {
	r := source.Vocabulary("a class", term.Classes)
	return field("class", r, at,
		"How light leaves the body, and so how it is drawn.")
}

func unitShape() *source.Shape[Unit] {
	return &source.Shape[Unit]{Name: "unit", Doc: "A lamp head.", Fields: slices.Concat(unitFields(), unitBodyFields(), rentalFields())}
}

func unitFields() []source.Field[Unit] {
	type u = Unit
	return []source.Field[Unit]{
		required(doc(func(v *u) *string { return &v.Doc })),
		spare(func(v *u) *float64 { return &v.Spare }),
		required(label(func(v *u) *string { return &v.Label })),
		required(class(func(v *u) *term.Class { return &v.Class })),
		field("technology", technology, func(v *u) *term.Technology { return &v.Technology },
			"What makes the light."),
		field("power", watts("a power", "700 W"), func(v *u) *float64 { return &v.Watts },
			"Electrical power it draws at full, with its ballast or supply."),
		withDefault(field("power-factor", amount("a power factor", "0.95", 0.1, 1), func(v *u) *float64 { return &v.PowerFactor },
			"Power over volts times amps."), "1"),
		field("mass", mass("a mass", "6.2 kg"), func(v *u) *float64 { return &v.Mass },
			"Mass of what its stand carries."),
		field("kelvin", kelvinRange(), func(v *u) *[2]float64 { return &v.Kelvin },
			"The white it makes, or the range it can be set to."),
		withDefault(field("native", kelvin("a white", "5600 K"), func(v *u) *float64 { return &v.Native },
			"The white it makes where nothing is said."), "the first of `kelvin`"),
		withDefault(field("tint", amount("a tint", "0.02", 0, colour.MaxDuv), func(v *u) *float64 { return &v.Tint },
			"The most Duv it can be set off the locus."), "none"),
		withDefault(field("warms", source.Bool("warms"), func(v *u) *bool { return &v.WarmsWhenDimmed },
			"Whether it is a filament, whose white falls as it is dimmed."), "it keeps its white"),
		withDefault(field("curve", curve(), func(v *u) *[]float64 { return &v.Curve },
			"Light at equal steps of level, from 0 to 1."), "linear"),
		withDefault(field("least", share("a level", "10 %"), func(v *u) *float64 { return &v.Levels.Least },
			"The least level that it can be set to beside off; 100 % where it does not dim."), "all the way down"),
		withDefault(field("step", share("a step", "1 %"), func(v *u) *float64 { return &v.Levels.Step },
			"The step between its levels."), "any level"),
		withDefault(field("kelvin-at-least", kelvin("a white", "6100 K"), func(v *u) *float64 { return &v.Levels.Kelvin },
			"The white of a lamp at its least level, where its ballast changes it."), "it keeps its white"),
		withDefault(field("flicker", share("a flicker", "100 %"), func(v *u) *float64 { return &v.Flicker },
			flickerDoc), "steady"),
		withDefault(field("restrike", minutes("a time", "10 min"), func(v *u) **float64 { return &v.Restrike },
			"How long a discharge lamp has to cool before it strikes again; 0 min of one that strikes hot."), unit.FormatNumber(usualRestrike/60)+" min of a discharge lamp"),
		withDefault(field("by-white", whiteShares(), func(v *u) *[]WhiteShare { return &v.ByWhite },
			"The light at some of its whites, as a share of what its figures say."), "the same at all"),
		withDefault(field("lumens", flux("60000"), func(v *u) *float64 { return &v.Lumens },
			"Flux that leaves the head without a modifier."), "that of its output bare"),
		field("spread", source.OneOf("a spread", spreadWords()...), func(v *u) *string { return &v.Spread },
			"How the bare flux leaves."),
		field("outputs", unitOutputs(), func(v *u) *[]UnitOutput { return &v.Outputs },
			"Output by modifier, `bare` without one; of a zoom, by focus below that: `{spot: {…}, 40 %: {…}, flood: {…}}`."),
	}
}

// flickerDoc says what a flicker is, of units and bulbs alike.
const flickerDoc = "How deep its light goes down at twice the mains: the most less the least, by the sum of both."

// unitBodyFields are the keys of a unit's body and of what goes with it.
func unitBodyFields() []source.Field[Unit] {
	type u = Unit
	return []source.Field[Unit]{
		withDefault(field("modifier", source.Text("a modifier", "reflector-wide"), func(v *u) *string { return &v.Modifier },
			"The modifier it comes with."), "the first of `outputs`, else bare"),
		field("front", source.Text("a front", "bayonet"), func(v *u) *string { return &v.Front },
			"What its front takes: modifiers that fit it go on."),
		field("body", triple(), func(v *u) *[3]float64 { return &v.Body },
			"Width, depth and height of the head."),
		withDefault(field("aperture", length("an aperture", "0.2", 0.005, 5), func(v *u) *float64 { return &v.Aperture },
			"Width of the lens or the mouth that light leaves by, as it is drawn."), "that of its output, else four fifths of the body"),
		withDefault(field("doors", doorsReader(), func(v *u) **Doors { return &v.Doors },
			"Its barn doors."), "as large as its mouth takes"),
		field("stand", source.Text("a stand", "light-stand"), func(v *u) *string { return &v.Stand },
			"The stand it usually stands on."),
		field("bulb", source.Text("a bulb", "led-806"), func(v *u) *string { return &v.Bulb },
			"The bulb in a practical: power, flux and white come from it."),
	}
}

// kelvinRange reads one white, or the lowest and the highest.
func kelvinRange() source.Reader[[2]float64] {
	one := kelvin("a white", "5600 K")
	two := pair("a range of whites", "[2700 K, 6500 K]", one)
	return source.Reader[[2]float64]{What: "a white or a range", Like: "[2700 K, 6500 K]",
		Schema: func() map[string]any { return map[string]any{"anyOf": []any{one.Schema(), two.Schema()}} },
		Read: func(n *source.Node, c *source.Context) ([2]float64, bool) {
			if n.Kind != source.List {
				k, ok := one.Read(n, c)
				return [2]float64{k, k}, ok
			}
			r, ok := two.Read(n, c)
			if ok && r[0] > r[1] {
				c.Error(n, source.CodeBadValue, "", "a range of whites goes from the lower to the higher")
				return r, false
			}
			return r, ok
		}}
}

// curve reads light by level, from nothing at the start to all at the end.
func curve() source.Reader[[]float64] {
	r := source.ListOf("a curve", "[0, 0.3, 1]", share("a point of a curve", "0.3"), 2, 101)
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) ([]float64, bool) {
		v, ok := read(n, c)
		if ok && (v[0] != 0 || v[len(v)-1] != 1) {
			c.Error(n, source.CodeBadValue, "", "a curve starts at 0 and ends at 1")
			return v, false
		}
		return v, ok
	}
	return r
}

func triple() source.Reader[[3]float64] {
	r := array("a size", "[0.2, 0.35, 0.25]", length("a side of a body", "0.2", 0.005, 20), 3)
	return source.Converted(r, func(v []float64) [3]float64 { return [3]float64(v) })
}

func bulbShape() *source.Shape[Bulb] {
	type b = Bulb
	return &source.Shape[Bulb]{Name: "bulb", Doc: "A lamp for a practical.", Fields: []source.Field[Bulb]{
		spare(func(v *b) *float64 { return &v.Spare }),
		required(doc(func(v *b) *string { return &v.Doc })),
		required(field("technology", technology, func(v *b) *term.Technology { return &v.Technology },
			"What makes the light.")),
		required(field("power", watts("a power", "9 W"), func(v *b) *float64 { return &v.Watts },
			"Electrical power.")),
		withDefault(field("power-factor", amount("a power factor", "0.9", 0.1, 1), func(v *b) *float64 { return &v.PowerFactor },
			"Power over volts times amps."), "1"),
		required(field("lumens", amount("a flux", "800", 1e-3, 1e6), func(v *b) *float64 { return &v.Lumens },
			"Flux.")),
		required(field("kelvin", kelvin("a white", "2700 K"), func(v *b) *float64 { return &v.Kelvin },
			"White.")),
		withDefault(field("warms", source.Bool("warms"), func(v *b) *bool { return &v.WarmsWhenDimmed },
			"Whether it is a filament, whose white falls as it is dimmed."), "it keeps its white"),
		withDefault(field("width", length("a diameter", "0.06", 0.005, 0.5), func(v *b) *float64 { return &v.Width },
			"Its diameter."), showLength(bulbWidth)),
		withDefault(field("volts", amount("a voltage", "230", 6, 480), func(v *b) *float64 { return &v.Volts },
			"The mains that it is made for."), "any"),
		field("mass", mass("a mass", "0.05 kg"), func(v *b) *float64 { return &v.Mass },
			"Mass."),
		withDefault(field("flicker", share("a flicker", "100 %"), func(v *b) *float64 { return &v.Flicker },
			flickerDoc), "steady"),
	}}
}

func modifierShape() *source.Shape[Modifier] {
	type m = Modifier
	size := func(what string) source.Reader[float64] { return length(what, "0.9", 0.005, 20) }
	opening := func(f photometry.Form) func(float64) photometry.Opening {
		return func(d float64) photometry.Opening { return photometry.Opening{Form: f, Width: d} }
	}
	face := source.Converted(pair("a face", "[0.9, 0.9]", size("a side of a face")), func(v [2]float64) photometry.Opening {
		return photometry.Opening{Form: photometry.Rectangle, Width: v[0], Height: v[1]}
	})
	cutoff := angle("a cut-off angle", "80", 5, 170)
	return &source.Shape[Modifier]{Name: "modifier", Doc: "What goes on the front of a head.", Fields: []source.Field[Modifier]{
		required(doc(func(v *m) *string { return &v.Doc })),
		required(label(func(v *m) *string { return &v.Label })),
		withDefault(class(func(v *m) *term.Class { return &v.Class }), "the unit's"),
		required(field("fits", source.ListOf("a list of fronts", "[bayonet]", source.Text("a front", "bayonet"), 1, 20), func(v *m) *[]string { return &v.Fits },
			"The fronts it goes on.")),
		field("efficiency", share("an efficiency", "45 %"), func(v *m) *float64 { return &v.Efficiency },
			"The share of the flux of the head, or of what it goes on, that leaves, before its own cells."),
		field("beam", beamAngle("30"), func(v *m) *float64 { return &v.Beam },
			"Full angle to 50 % of the peak."),
		withDefault(field("field", fieldAngle("50"), func(v *m) *float64 { return &v.Field },
			"Full angle to 10 % of the peak."), "1.8226 times the beam"),
		refuseSecondOpening(field("face", face, openingOf,
			"Width and height of its Lambertian face.")),
		refuseSecondOpening(field("disc", source.Converted(size("a disc"), opening(photometry.Disc)), openingOf,
			"Diameter of its round Lambertian face.")),
		refuseSecondOpening(field("sphere", source.Converted(size("a sphere"), opening(photometry.Sphere)), openingOf,
			"Diameter of its globe.")),
		withDefault(field("aperture", length("an aperture", "0.2", 0.005, 5), func(v *m) *float64 { return &v.Aperture },
			"Width of the lens or the mouth that light leaves by, as it is drawn."), "that of its face, else the unit's"),
		field("grid", pair("a grid", "[80, 80]", cutoff), func(v *m) *[2]float64 { return &v.Grid },
			"Full angles beyond which its square cells hide all, across and along: twice the cut-off."),
		field("honeycomb", cutoff, func(v *m) *float64 { return &v.Honeycomb },
			"Full angle beyond which its round cells hide all: twice the cut-off. A snoot is one cell."),
		field("zoom", zoomSteps(), func(v *m) *[]ZoomStep { return &v.Zoom },
			"Of one that zooms, what it does by focus: `{spot: {efficiency: 20 %, beam: 12}, flood: {…}}`."),
		field("front", source.Text("a front", "box"), func(v *m) *string { return &v.Front },
			"What goes on it: modifiers that fit this word, written `softbox-90 + grid-40`."),
		field("skirt", length("a length", "0.45", 0.05, 3), func(v *m) *float64 { return &v.Skirt },
			"How far a black skirt hangs below the middle of the globe that it goes round, in place of an efficiency."),
		field("shade", shadeReader(), func(v *m) **Shade { return &v.Shade },
			"What hangs around a bulb, in place of an efficiency and a face."),
		withDefault(field("most-power", watts("a power", "60 W"), func(v *m) *float64 { return &v.MostWatts },
			"The power of a filament lamp that it stands the heat of."), "not known"),
		field("mass", mass("a mass", "1.4 kg"), func(v *m) *float64 { return &v.Mass },
			"Mass."),
	}, Forms: []string{"efficiency", "zoom", "skirt", "shade"}}
}

func openingOf(m *Modifier) *photometry.Opening { return &m.Opening }

// refuseSecondOpening makes one of the keys that state an opening refuse a modifier that has one already.
func refuseSecondOpening(f source.Field[Modifier]) source.Field[Modifier] {
	read := f.Read
	f.Read = func(m *Modifier, n *source.Node, c *source.Context) {
		if m.Opening.Form != photometry.Point {
			c.Error(n, CodeKit, "keep one of them", "a modifier has one opening: a face, a disc or a sphere")
			return
		}
		read(m, n, c)
	}
	return f
}

func gelShape() *source.Shape[GelData] {
	type g = GelData
	return &source.Shape[GelData]{Name: "gel", Doc: "A sheet of colour, correction or density.", Fields: []source.Field[GelData]{
		withDefault(doc(func(v *g) *string { return &v.Doc }), "its name"),
		withDefault(label(func(v *g) *string { return &v.Label }), "its name"),
		required(field("kind", source.Vocabulary("a kind of gel", term.Gels), func(v *g) *term.Gel { return &v.Kind },
			"What it is for.")),
		field("converts", pair("a pair of whites", "[5600 K, 3200 K]", kelvin("a white", "5600 K")), func(v *g) *[2]float64 { return &v.Converts },
			"The white that the full gel turns into another, and that other: its shift in mireds follows."),
		withDefault(field("part", amount("a part of the full gel", "0.5", 0.01, 4), func(v *g) *float64 { return &v.Part },
			"The part of that shift which this gel has."), "1"),
		field("mired", amount("a shift in mireds", "109", -1000, 1000), func(v *g) *float64 { return &v.Mired },
			"Shift in mireds, positive warms."),
		field("duv", amount("a shift in Duv", "0.008", -0.1, 0.1), func(v *g) *float64 { return &v.Duv },
			"Shift in Duv, positive towards green."),
		required(field("transmittance", share("a transmittance", "70 %"), func(v *g) *float64 { return &v.Transmittance },
			"Luminous transmittance.")),
		field("printed", share("a transmittance", "50 %"), func(v *g) *float64 { return &v.Printed },
			"Transmittance as the trade prints it, where it rounds."),
		field("xy", chromaticity("a chromaticity"), func(v *g) **[2]float64 { return &v.XY },
			"Chromaticity that it gives equal-energy light, CIE 1931."),
	}}
}
