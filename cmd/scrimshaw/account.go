package main

import (
	"fmt"

	"scrimshaw/plan"
)

// account is the work of a run, added up before any of it is spent.
type account struct {
	setups, solids, lights, people, places int
	tracks, looks                          int // cameras on tracks, and things that each looks at all along it
}

// mostWork is the work that a run takes at most, in solids of one set-up: thirty set-ups of twenty lights each, as long a day as there is, are
// 240 000 by their lights alone. They are lit one after the other, so that this bounds time and not memory.
const mostWork = 250_000

// mostAtOnce is the work of one set-up, likewise: the set-ups of a day come one after the other, and each has to be held by itself.
const mostAtOnce = 200_000

// What else counts as so many solids: each light is followed everywhere, each face has its readings, at its marks as well,
// and so has each place of a walk. A camera on a track looks at each thing from all of it.
const (
	lightWork  = 400
	personWork = 100
	placeWork  = 30
	lookWork   = 20
)

// add takes up a set-up, and says what is large where that is too much.
func (a *account) add(s *plan.Setup) error {
	before := a.work()
	a.setups++
	a.solids += len(s.Set.Prisms) + len(s.Set.Sheets)
	a.lights += len(s.Lights)
	for i := range s.People {
		p := &s.People[i]
		a.people += 1 + len(p.Marks)
		if p.Walk != nil {
			a.places += len(p.Walk.Points)
		}
	}
	for i := range s.Cameras {
		if s.Cameras[i].Track != nil {
			a.tracks++
			a.looks += len(s.Lights) + len(s.Grip) + len(s.Cameras)
		}
	}
	if a.work() <= mostWork && a.work()-before <= mostAtOnce {
		return nil
	}
	what, hint := fmt.Sprintf("%d solids, %d lights and %d people%s", a.solids, a.lights, a.people, a.moving()), "leave out what the light does not need: steps of stairs, furniture, lights, people, tracks"
	if a.setups > 1 {
		return fmt.Errorf("this is too much for one run: the first %d set-ups alone hold %s; name fewer with --setup, or %s", a.setups, what, hint)
	}
	return fmt.Errorf("this is too much for one run: it holds %s; %s", what, hint)
}

// work is all that was added up, in solids.
func (a *account) work() int {
	return a.solids + lookWork*a.looks + lightWork*a.lights + personWork*a.people + placeWork*a.places
}

// moving words the places that are read along walks, and the cameras on tracks; "" where there are none.
func (a *account) moving() (words string) {
	if a.places > 0 {
		words = fmt.Sprintf(", with %d places on walks", a.places)
	}
	if a.tracks > 0 {
		words += fmt.Sprintf(", with %d cameras on tracks", a.tracks)
	}
	return words
}
