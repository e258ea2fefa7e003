// Package change says what a crew does between two set-ups: each line is one kind of work on one thing, in an order that can be worked.
// All that a crew can touch is a fact of a state, and a list of changes is what turns one state into another: what differs is never unsaid.
package change

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// State is all that a crew can touch in a set-up.
type State struct {
	Setup  string // its name
	Things []Thing
	Rates  []scene.Rate // how long changes take; none: nobody says it

	index map[key]int
}

// key is what a thing is found by: names are unique but for those of a sort that no file names.
type key struct {
	sort Sort
	name string
}

// Of is the state of a set-up, also of one of which only Remains is left; the latter does not say who is placed by whom.
func Of(s *plan.Setup) *State {
	out := &State{Setup: s.Name}
	w := writtenOf(s)
	if s.Scene != nil {
		out.Rates = s.Scene.Rates
	}
	for i := range s.Lights {
		out.Things = append(out.Things, w.light(s, &s.Lights[i]))
	}
	for i := range s.Grip {
		out.Things = append(out.Things, w.grip(&s.Grip[i]))
	}
	for i := range s.Cameras {
		out.Things = append(out.Things, w.camera(&s.Cameras[i], &s.Exposure))
	}
	out.Things = append(out.Things, Thing{Sort: Exposure, Facts: []Fact{{Settings, settings(&s.Exposure)}}})
	for i := range s.Furniture {
		out.Things = append(out.Things, w.piece(&s.Furniture[i]))
	}
	for i := range s.Openings {
		out.Things = append(out.Things, opening(&s.Openings[i]))
	}
	for i := range s.People {
		out.Things = append(out.Things, w.person(&s.People[i]))
	}
	for i := range s.People {
		for k := range s.People[i].Marks {
			out.Things = append(out.Things, mark(&s.People[i].Marks[k]))
		}
	}
	for i := range s.Circuits {
		out.Things = append(out.Things, circuit(&s.Circuits[i]))
	}
	for i := range s.Cues {
		out.Things = append(out.Things, cue(&s.Cues[i]))
	}
	out.reindex()
	return out
}

// reindex finds again which thing stands where in the list.
func (s *State) reindex() {
	s.index = make(map[key]int, len(s.Things))
	for i := range s.Things {
		s.index[key{s.Things[i].Sort, s.Things[i].Name}] = i
	}
}

// Find is the thing of a sort and a name; nil where there is none.
func (s *State) Find(sort Sort, name string) *Thing {
	i, known := s.index[key{sort, name}]
	if !known {
		return nil
	}
	return &s.Things[i]
}
