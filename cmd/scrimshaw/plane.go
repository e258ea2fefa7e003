package main

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/study"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet"
)

// planesOf reads the flag --plane for a set-up: a height above the floor, or a wall by its name with or
// without the word before it.
func planesOf(s *plan.Setup, text string) ([]study.Plane, error) {
	if text == "" {
		return nil, nil
	}
	name := strings.TrimSpace(strings.TrimPrefix(text, "wall "))
	var walls []string
	for i := range s.Rooms {
		for k := range s.Rooms[i].Walls {
			wall := s.Rooms[i].Name + "." + s.Rooms[i].Walls[k].Name
			if wall == name {
				return []study.Plane{{Wall: name}}, nil
			}
			walls = append(walls, wall)
		}
	}
	height, err := unit.ParseLength(text, s.Feet)
	if err != nil {
		return nil, fmt.Errorf("--plane %s: write a height above the floor, like 0.75, or a wall: %s", text, strings.Join(walls, ", "))
	}
	if most := highest(s); most > 0 && height >= most {
		return nil, fmt.Errorf("--plane %s: no room is so high; the highest has %s", text, unit.FormatLength(most, s.Feet))
	}
	return []study.Plane{{Height: height}}, nil
}

// highest is the height of the highest room above its floor, m; 0 where there is none.
func highest(s *plan.Setup) float64 {
	most := 0.0
	for i := range s.Rooms {
		most = max(most, s.Rooms[i].Top-s.Rooms[i].Base)
	}
	return most
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
