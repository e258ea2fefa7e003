package section

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/render/sheet/layout"
)

// uncomputed lists the keys that the set-up writes and nothing computes yet, those that wait for one thing
// together: first those whose figures are struck, then those that ask for something.
func uncomputed(setup *plan.Setup) *Section {
	s := &Section{Title: "Not computed", Rank: layout.Wanted}
	var alter, ask []plan.Uncomputed
	for _, u := range setup.Uncomputed {
		if u.Changes == scene.NoFigure {
			ask = append(ask, u)
		} else {
			alter = append(alter, u)
		}
	}
	if len(alter) > 0 {
		s.Rank, s.Alarm = layout.Needed, true
	}
	s.Points = sentences(append(byWait(alter), byWait(ask)...))
	return s
}

// byWait says what is written and then what it waits for, where the words for that are others.
func byWait(keys []plan.Uncomputed) []string {
	var waits []string
	of := map[string][]plan.Uncomputed{}
	for _, u := range keys {
		if of[u.Waits] == nil {
			waits = append(waits, u.Waits)
		}
		of[u.Waits] = append(of[u.Waits], u)
	}
	var lines []string
	for _, w := range waits {
		words := plan.ListUncomputed(of[w])
		if w != words {
			words += ": " + w
		}
		lines = append(lines, words)
	}
	return lines
}
