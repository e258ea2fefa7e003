package main

import (
	"fmt"

	"scrimshaw/plan"
)

// account is the work of a run, added up before any of it is spent.
type account struct {
	setups, solids, lights, people int
}

// mostWork is the work that a run takes at most, in solids of one set-up. A set-up of a feature's largest stage has a
// few thousand.
const mostWork = 200_000

// What else counts as so many solids: each light is followed everywhere, and each face has its readings.
const (
	lightWork  = 400
	personWork = 100
)

// add takes up a set-up, and says what is large where that is too much.
func (a *account) add(s *plan.Setup) error {
	a.setups++
	a.solids += len(s.Set.Prisms) + len(s.Set.Sheets)
	a.lights += len(s.Lights)
	a.people += len(s.People)
	if a.solids+lightWork*a.lights+personWork*a.people <= mostWork {
		return nil
	}
	what, hint := fmt.Sprintf("%d solids, %d lights and %d people", a.solids, a.lights, a.people), "leave out what the light does not need: steps of stairs, furniture, lights, people"
	if a.setups > 1 {
		return fmt.Errorf("this is too much for one run: the first %d set-ups alone hold %s; name fewer with --setup, or %s", a.setups, what, hint)
	}
	return fmt.Errorf("this is too much for one run: it holds %s; %s", what, hint)
}
