package main

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/study"
	"scrimshaw/render/sheet"
)

// planesOf reads the flag --plane for a set-up; no plane where there is none.
func planesOf(s *plan.Setup, text string) ([]study.Plane, error) {
	if text == "" {
		return nil, nil
	}
	plane, err := study.ParsePlane(s, text)
	if err != nil {
		return nil, fmt.Errorf("--plane %s: %w", text, err)
	}
	return []study.Plane{plane}, nil
}

// onPlane puts the plane that was asked for in the place of the floor's map.
func onPlane(s *study.Study, in *sheet.Input) {
	for i := range s.Fields {
		f := &s.Fields[i]
		if f.Kind != study.OnWall {
			continue
		}
		room, wall, _ := strings.Cut(f.Name, ".")
		in.Elevation = &sheet.Elevation{Room: room, Wall: wall}
		in.Field, in.Inset, in.Floors, in.Beams, in.Views = fieldOf(s, f), nil, nil, nil, nil
		return
	}
	level := s.Level()
	if level == nil {
		return
	}
	in.Field, in.Floors = fieldOf(s, level), nil
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Kind == study.OnPlane && f != level {
			in.Floors = append(in.Floors, *fieldOf(s, f))
		}
	}
}
