package section

import (
	"scrimshaw/plan"
	"scrimshaw/plan/meter"
)

// When returns what is struck where it is, else none.
func When[T any](is bool, all ...T) []T {
	if is {
		return all
	}
	return nil
}

// leftOut says what the struck figures of some readings are without, "" where none is struck.
func leftOut(readings ...*meter.Reading) string {
	var keys []plan.Uncomputed
	for _, r := range readings {
		if r != nil {
			keys = append(keys, r.Uncomputed...)
		}
	}
	return without(plan.Unique(keys))
}

// without says what struck figures are without, "" where none is.
func without(keys []plan.Uncomputed) string {
	if len(keys) == 0 {
		return ""
	}
	return "Struck figures are without " + plan.ListUncomputed(keys) + "."
}

// OnColour are the keys that could give a light another colour.
func OnColour(s *plan.Setup, light string) []plan.Uncomputed {
	return keysOn(s, light, func(u plan.Uncomputed) bool { return u.Colours })
}

// keysOn are the keys on a thing that is picks.
func keysOn(s *plan.Setup, thing string, is func(plan.Uncomputed) bool) []plan.Uncomputed {
	var keys []plan.Uncomputed
	for _, u := range s.Uncomputed {
		if u.Thing() == thing && is(u) {
			keys = append(keys, u)
		}
	}
	return keys
}

// alsoStruck is what readingAlt adds of a reading that is struck.
func alsoStruck(r *meter.Reading) string {
	if !r.StopsStruck() {
		return ""
	}
	what := "Struck"
	if !r.Struck() {
		what = "Its stops are struck"
	}
	return " " + what + ": without " + plan.ListUncomputed(r.Uncomputed) + ", not computed yet."
}

// notIncluded says what a map leaves out, a sentence for its light and one for the stops that it is read in.
func (f *Field) notIncluded() []string {
	var light, stops []plan.Uncomputed
	for _, u := range f.Uncomputed {
		if u.AltersLight() {
			light = append(light, u)
		} else {
			stops = append(stops, u)
		}
	}
	var words []string
	if len(light) > 0 {
		words = append(words, "Not in this map: "+plan.ListUncomputed(light)+".")
	}
	if len(stops) > 0 {
		words = append(words, "Stops of this map are without "+plan.ListUncomputed(stops)+".")
	}
	return words
}
