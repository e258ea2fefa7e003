package study

import (
	"errors"
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// ParsePlane reads a plane as a person names it: a height above the floors, in the set-up's own unit where none
// is written ("0.75", "75 cm"), or the inside face of a wall, with or without the word before it
// ("kitchen.left", "wall kitchen.left"). An error lists the walls, or says how high the rooms are.
func ParsePlane(s *plan.Setup, text string) (Plane, error) {
	name := strings.TrimSpace(strings.TrimPrefix(text, "wall "))
	if _, wall := findWall(s, name); wall != nil {
		return Plane{Wall: name}, nil
	}
	height, err := unit.ParseLength(text, s.Feet)
	if err != nil {
		return Plane{}, fmt.Errorf("write a height above the floor, like 0.75, or a wall: %s", strings.Join(wallNames(s), ", "))
	}
	if fault := s.PlaneFault(height); fault != "" {
		return Plane{}, errors.New(fault)
	}
	return Plane{Height: height}, nil
}

// wallNames lists the walls of all rooms in their order.
func wallNames(s *plan.Setup) []string {
	var names []string
	for i := range s.Rooms {
		for k := range s.Rooms[i].Walls {
			names = append(names, s.Rooms[i].Name+"."+s.Rooms[i].Walls[k].Name)
		}
	}
	return names
}
