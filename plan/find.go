package plan

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/unit"
)

// RoomNamed is the room of a name; nil where there is none.
func (s *Setup) RoomNamed(name string) *Room {
	for i := range s.Rooms {
		if s.Rooms[i].Name == name {
			return &s.Rooms[i]
		}
	}
	return nil
}

// OpeningNamed is the opening of a name; nil where there is none.
func (s *Setup) OpeningNamed(name string) *Opening {
	for i := range s.Openings {
		if s.Openings[i].Name == name {
			return &s.Openings[i]
		}
	}
	return nil
}

// CameraNamed is the camera of a name; nil where there is none.
func (s *Setup) CameraNamed(name string) *Camera {
	for i := range s.Cameras {
		if s.Cameras[i].Name == name {
			return &s.Cameras[i]
		}
	}
	return nil
}

// LightNamed is the light of a name; nil where there is none.
func (s *Setup) LightNamed(name string) *Light {
	for i := range s.Lights {
		if s.Lights[i].Name == name {
			return &s.Lights[i]
		}
	}
	return nil
}

// GripNamed is the piece of grip of a name; nil where there is none.
func (s *Setup) GripNamed(name string) *Grip {
	for i := range s.Grip {
		if s.Grip[i].Name == name {
			return &s.Grip[i]
		}
	}
	return nil
}

// PieceNamed is the piece of furniture of a name; nil where there is none.
func (s *Setup) PieceNamed(name string) *Furniture {
	for i := range s.Furniture {
		if s.Furniture[i].Name == name {
			return &s.Furniture[i]
		}
	}
	return nil
}

// RoomUnder is the room that holds a point of the plan. A point within an opening belongs to the
// room that the opening is in.
func (s *Setup) RoomUnder(p r2.Vec, near string) *Room {
	if room := s.RoomHolding(p, near); room != nil {
		return room
	}
	for i := range s.Rooms {
		if s.Rooms[i].Holds(p) {
			return &s.Rooms[i]
		}
	}
	for i := range s.Openings {
		if o := &s.Openings[i]; plane.Contains(p, o.Plan(), -plane.Grain) {
			return s.RoomNamed(o.Room)
		}
	}
	return nil
}

// Numbered is a light by its number and its name: the crew has the one on the plan, the file the other.
func (l *Light) Numbered() string { return numbered(l.Tag, l.Name) }

// Numbered is a piece of grip by its number and its name.
func (g *Grip) Numbered() string { return numbered(g.Tag, g.Name) }

// Numbered is a light or a piece of grip by its number and its name, as the crew reads them; the name alone of
// anything else.
func (s *Setup) Numbered(name string) string {
	for i := range s.Lights {
		if s.Lights[i].Name == name {
			return s.Lights[i].Numbered()
		}
	}
	for i := range s.Grip {
		if s.Grip[i].Name == name {
			return s.Grip[i].Numbered()
		}
	}
	return name
}

// numbered puts a number before a name, but for a name that only says the number: "3 lamp", and of l3 "3".
func numbered(tag, name string) string {
	switch {
	case tag == "" || tag == name:
		return name
	case len(name) == len(tag)+1 && name[1:] == tag:
		return tag
	}
	return tag + " " + name
}

// HasLight reports whether any light is up.
func (s *Setup) HasLight() bool {
	for i := range s.Lights {
		if s.Lights[i].Level > 0 {
			return true
		}
	}
	return false
}

// RoomAt is the room whose air holds the point, between its floor and its ceiling; nil outside.
func (s *Setup) RoomAt(p r3.Vec) *Room {
	for i := range s.Rooms {
		room, at := &s.Rooms[i], r2.Vec{X: p.X, Y: p.Y}
		if p.Z >= room.Base-plane.Grain && p.Z <= room.CeilingAt(at)+plane.Grain && room.Holds(at) {
			return room
		}
	}
	return nil
}

// PlaneFault says why no level plane can be mapped at a height above the floors, m; "" where one can.
func (s *Setup) PlaneFault(height float64) string {
	if height < 0 {
		return "write a height above the floor, 0 or more"
	}
	most := 0.0
	for i := range s.Rooms {
		most = max(most, s.Rooms[i].Top-s.Rooms[i].Base)
	}
	if most > 0 && height >= most {
		return "no room is so high; the highest room has " + unit.FormatLength(most, s.Feet)
	}
	return ""
}

// RoomHolding is the room of a name where it holds a point of the plan, else nil.
func (s *Setup) RoomHolding(p r2.Vec, name string) *Room {
	if room := s.RoomNamed(name); room != nil && room.Holds(p) {
		return room
	}
	return nil
}

// WallNamed is the wall of a name with its room's before it: "kitchen.left"; nil where there is none.
func (s *Setup) WallNamed(name string) *Wall {
	room, part, _ := strings.Cut(name, ".")
	if in := s.RoomNamed(room); in != nil {
		for i := range in.Walls {
			if in.Walls[i].Name == part {
				return &in.Walls[i]
			}
		}
	}
	return nil
}

// CircuitNamed is the circuit of a name, or nil.
func (s *Setup) CircuitNamed(name string) *Circuit {
	for i := range s.Circuits {
		if s.Circuits[i].Name == name {
			return &s.Circuits[i]
		}
	}
	return nil
}
