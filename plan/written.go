package plan

import (
	"slices"
	"strings"

	"scrimshaw/plan/scene"
)

// Assumption is a default that decided a number.
type Assumption struct {
	Thing string // "lights.day" or ""
	What  string // "level"
	Value string // "100 %", ready to print
}

// Uncomputed is a key that a set-up writes and nothing computes yet. Package pending says which figures it
// could change.
type Uncomputed struct {
	scene.Uncomputed
	Words string // ready to print: "scrims of 1 k"
}

// ListUncomputed words keys in one line: "scrims of 1 k, barndoors of 1 k".
func ListUncomputed(all []Uncomputed) string {
	words := make([]string, len(all))
	for i := range all {
		words[i] = all[i].Words
	}
	return strings.Join(words, ", ")
}

// Unique leaves out of some keys those that stand there before.
func Unique(all []Uncomputed) []Uncomputed {
	var once []Uncomputed
	for _, u := range all {
		if !slices.ContainsFunc(once, func(o Uncomputed) bool { return o.Path == u.Path }) {
			once = append(once, u)
		}
	}
	return once
}
