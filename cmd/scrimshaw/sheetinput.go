package main

import (
	"fmt"
	"math"

	"scrimshaw/plan/review"
	"scrimshaw/plan/study"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet"
)

// unchecked is what nobody has checked, printed on every sheet.
var unchecked = []string{
	"What cloth, frames and nets do to light; and what mirrors and polished boards throw: every surface returns light as if it were matt.",
	"Floor load, house wiring, circuits and rigging points.",
}

// sheetInput gathers what the sheet of one study says. field is floor, face, or "" for the
// scene's own choice.
func sheetInput(s *study.Study, field string) (sheet.Input, error) {
	in := sheet.Input{Setup: s.Setup, Readings: s.Readings.Readings, Unchecked: unchecked, Watch: watch(s)}
	if field == "" {
		field = s.Setup.Scene.Sheet.Field.Or("floor")
	}
	floor, face := s.Floor(), s.Face()
	switch field {
	case "floor":
		in.Field, in.Inset = fieldOf(s, floor), small(fieldOf(s, face))
	case "face":
		if face == nil {
			return in, fmt.Errorf("--field face: there is no person with a camera to take the dome at")
		}
		in.Field, in.Inset = fieldOf(s, face), small(fieldOf(s, floor))
	default:
		return in, fmt.Errorf("--field %s: the fields are floor and face", field)
	}
	if field == "floor" {
		for i := range s.Fields {
			if f := &s.Fields[i]; f.Kind == study.OnFloor && f != floor {
				in.Floors = append(in.Floors, *fieldOf(s, f))
			}
		}
	}
	for i := range s.Setup.People {
		in.Faces = append(in.Faces, faceOf(s, s.Setup.People[i].Name))
	}
	for _, b := range s.Beams {
		in.Beams = append(in.Beams, sheet.Beam{Light: b.Light, Half: b.Half.Outline, Tenth: b.Tenth.Outline, Spot: b.Half.Footprint})
	}
	for _, v := range s.Views {
		in.Views = append(in.Views, sheet.View{Camera: v.Camera, Outline: v.Outline})
	}
	for _, c := range review.Cautions(s.Setup) {
		in.Cautions = append(in.Cautions, c.String())
	}
	in.Cautions = append(in.Cautions, review.Last)
	if field == "floor" {
		onPlane(s, &in)
	}
	return in, nil
}

// faceOf gathers a person's readings.
func faceOf(s *study.Study, person string) sheet.Face {
	set := &s.Readings
	f := sheet.Face{Person: person, Key: set.Named(person + ".key"), Fill: set.Named(person + ".fill"), Contrast: math.NaN()}
	if len(s.Setup.Cameras) > 0 {
		f.Dome = set.Named(person + ".dome." + s.Setup.Cameras[0].Name)
	}
	if c := set.ContrastOf(person); c != nil {
		f.Contrast = c.Stops
	}
	return f
}

// fieldOf turns a field of light into a grid to draw, with the light at any point for true edges.
func fieldOf(s *study.Study, f *study.Field) *sheet.Field {
	if f == nil {
		return nil
	}
	corner, step := f.Corner()
	l := &f.Lattice
	name := "on the floor"
	switch f.Kind {
	case study.AtFace:
		name = fmt.Sprintf("at face height, %s, toward %s", unit.FormatLength(f.Z, s.Setup.Feet), f.Toward)
	case study.OnPlane:
		name = "on the level plane at " + unit.FormatLength(f.Z, s.Setup.Feet)
	case study.OnWall:
		name = "on the wall " + f.Name
	}
	return &sheet.Field{
		Name:  name,
		Probe: s.Probe(f),
		Grid: carto.Grid{Origin: corner, Step: step,
			NX: l.NU, NY: l.NV, Value: f.Lux, Mask: l.Mask},
	}
}

// small is a field that is drawn too small for its edges to need more than the lattice.
func small(f *sheet.Field) *sheet.Field {
	if f != nil {
		f.Probe = nil
	}
	return f
}
