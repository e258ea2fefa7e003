package sheet

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/review"
	"scrimshaw/plan/study"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
)

// Of gathers all that the sheet of a study says: the maps with their edges, faces, beams and views, what the
// review found, the cautions, and what the set-up writes that nothing computes yet. A plane that the study holds
// is mapped in place of the floor, and a wall in place of the plan. Of a study without fields there is no map.
//
// The same options go to Compose, which reports their faults.
func Of(s *study.Study, o Options) Input {
	in := Input{Setup: s.Setup, Readings: s.Readings.Readings, Unchecked: review.Unchecked()}
	in.Since = o.Since.Of(s.Setup)
	in.Warnings = warningsOf(s)
	in.Cautions = cautionsOf(s)
	in.Walks, in.Tracks, in.StandIns = s.Readings.Walks, s.Readings.Tracks, s.Readings.StandIns
	in.Cues, in.Played = s.Readings.Cues, s.Readings.Played
	lookAndLearn(&in, s, o)
	for i := range s.Setup.People {
		p := &s.Setup.People[i]
		in.Faces = append(in.Faces, faceOf(s, p.Name))
		for k := range p.Marks {
			at := faceOf(s, p.Marks[k].Name)
			at.Mark = true
			in.Faces = append(in.Faces, at)
		}
	}
	for _, b := range s.Beams {
		in.Beams = append(in.Beams, Beam{Light: b.Light, Half: b.Half.Outline, Tenth: b.Tenth.Outline, Spot: b.Half.Footprint})
	}
	for _, b := range s.Bounces {
		in.Bounces = append(in.Bounces, Bounce{Light: b.Light, Off: b.Off, To: b.To, At: b.At, Face: b.Face, On: b.On})
	}
	for _, r := range s.Rims {
		in.Rims = append(in.Rims, Rim{Light: r.Light, Level: r.Normal.Z > levelRim, Line: r.Line})
	}
	for _, v := range s.Views {
		in.Views = append(in.Views, View{Camera: v.Camera, Outline: v.Outline})
	}
	for _, c := range s.Cloths() {
		cloth := Cloth{Grip: c.Grip, Lost: c.Lost}
		if c.Lit {
			cloth.HotSpot = &c.HotSpot
		}
		in.Cloths = append(in.Cloths, cloth)
	}
	chooseMaps(&in, s, o)
	if o.Tint == tintColour {
		colourMaps(&in, s)
	}
	return in
}

// lookAndLearn adds what only some runs have: how faces look, to match set-ups, and what there is to learn from their light.
func lookAndLearn(in *Input, s *study.Study, o Options) {
	if o.Matches() {
		in.Looks = looksOf(s)
	}
	if o.Teaches() {
		in.Lesson = s.Readings.Lesson
	}
}

// levelRim is the least z of the normal of a face on which the rim of an image is drawn on the plan: of a floor or a top.
const levelRim = 0.5

// colourMaps gives the maps of both pages the colour of their light.
func colourMaps(in *Input, s *study.Study) {
	for _, f := range slices.Concat(in.Maps(), in.SmallMaps()) {
		for i := range s.Fields {
			if own := &s.Fields[i]; len(own.Lux) > 0 && len(f.Grid.Value) > 0 && &own.Lux[0] == &f.Grid.Value[0] {
				f.Colour = s.Colours(own)
			}
		}
	}
}

// faceOf gathers a person's readings.
func faceOf(s *study.Study, person string) Face {
	set := &s.Readings
	f := Face{Person: person, Key: set.Named(person + ".key"), Fill: set.Named(person + ".fill"), Contrast: math.NaN()}
	f.Domes = domesOf(s, person)
	if lit := set.FaceOf(person); lit != nil {
		f.Side, f.Views = lit.Side, lit.Views
		if lit.Contrast != nil {
			f.Contrast = lit.Contrast.Stops
		}
		if ratio, ok := lit.KeyToFill(); ok {
			f.KeyToFill = &ratio
		}
	}
	return f
}

// chooseMaps takes what is mapped, to scale and small: the faces where they are asked for, else a wall or a level
// plane where the study has one, else the floor.
func chooseMaps(in *Input, s *study.Study, o Options) {
	floor, face, wall, level := s.Floor(), s.Face(), firstWall(s), s.Level()
	switch {
	case face != nil && o.mapped(s.Setup.Scene, wall != nil || level != nil) == term.FaceMap:
		largeMap(in, s, face)
		secondMap(in, s, floor)
	case wall != nil:
		room, name, _ := strings.Cut(wall.Name, ".")
		in.Elevation = &Elevation{Room: room, Wall: name}
		in.Field, in.Beams, in.Views = fieldOf(s, wall), nil, nil
	case level != nil:
		largeMap(in, s, level)
		secondMap(in, s, face)
	case floor != nil:
		largeMap(in, s, floor)
		secondMap(in, s, face)
	}
}

// firstWall is the first field on a wall of a room; an upright plane in the air is on no wall to draw.
func firstWall(s *study.Study) *study.Field {
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Kind == study.OnWall && f.Name != "" {
			return f
		}
	}
	return nil
}

// largeMap takes a field, and those of its kind on the other levels of floor, for the map to scale.
func largeMap(in *Input, s *study.Study, f *study.Field) {
	in.Field, in.Floors = fieldOf(s, f), otherFloors(s, f)
}

// secondMap takes likewise what the second page maps.
func secondMap(in *Input, s *study.Study, f *study.Field) {
	if f != nil {
		in.Inset, in.Insets = fieldOf(s, f), otherFloors(s, f)
	}
}

// otherFloors are the fields of a kind on the other levels of floor.
func otherFloors(s *study.Study, but *study.Field) []Field {
	var all []Field
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Kind == but.Kind && f != but {
			all = append(all, *fieldOf(s, f))
		}
	}
	return all
}

// fieldOf turns a field of light into a grid to draw, with the light at any point for true edges.
func fieldOf(s *study.Study, f *study.Field) *Field {
	corner, step := f.Corner()
	l := &f.Lattice
	var level *float64
	if f.Kind == study.AtFace || f.Kind == study.OnPlane {
		level = &f.Z
	}
	var toward *r2.Vec
	if l.Toward != nil {
		at := plan.InPlan(*l.Toward)
		toward = &at
	}
	return &Field{
		Name:   fieldName(f, s.Setup.Feet) + everyFloor(s, f),
		Probe:  s.Probe(f),
		Level:  level,
		Toward: toward,
		Over:   f.Z - f.Base,
		Coarse: f.Coarse, Uncomputed: f.Uncomputed,
		Grid: carto.Grid{Origin: corner, Step: step, NX: l.NU, NY: l.NV, Value: f.Lux, Mask: l.Mask},
	}
}

// everyFloor says of a level plane that it lies as high over floors at other heights.
func everyFloor(s *study.Study, f *study.Field) string {
	others := func(o study.Field) bool { return o.Kind == study.OnPlane && o.Base != f.Base }
	if f.Kind == study.OnPlane && slices.ContainsFunc(s.Fields, others) {
		return " above each floor"
	}
	return ""
}

// fieldName says what a field is of, heights over its floor.
func fieldName(f *study.Field, feet bool) string {
	switch over := unit.FormatLength(f.Z-f.Base, feet); f.Kind {
	case study.AtFace:
		return "Incident dome at " + over + ", at each point turned toward " + f.Toward
	case study.OnPlane:
		return "Illuminance on the level plane at " + over
	case study.OnWall:
		return "Illuminance on the wall " + f.Name
	}
	return "Illuminance on the floor"
}
