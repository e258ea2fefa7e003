package sheet

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
	"scrimshaw/symbols/ink"
)

// A figure that a key could change which nothing computes yet is struck through: it stays to be read and found,
// and nobody takes it for what the meter will show. Plain text has a mark before it instead.

// strikeOver is how far the line goes over the ends of a figure, mm.
const strikeOver = 0.4

// strike draws a line through the part of a lettering that runs so far from its anchor, mm.
func (p pad) strike(anchor r2.Vec, st style, from, to float64) {
	y := anchor.Y + st.cap/2
	p.line(thin, p.look.Alarm, at(anchor.X+from-strikeOver, y), at(anchor.X+to+strikeOver, y))
}

// struckText letters s as text does, struck through.
func (p pad) struckText(anchor r2.Vec, s string, st style, a ink.Align) {
	p.text(anchor, s, st, a)
	from, wide := 0.0, st.width(s)
	switch a {
	case ink.Right:
		from = -wide
	case ink.Centre:
		from = -wide / 2
	}
	p.strike(anchor, st, from, from+wide)
}

// strikeFigures draws a line through each of some figures in a lettering that starts at an anchor.
func (p pad) strikeFigures(anchor r2.Vec, s string, st style, figures []string) {
	for _, figure := range figures {
		if before, _, found := strings.Cut(s, figure); found && figure != "" {
			from := st.width(before)
			p.strike(anchor, st, from, from+st.width(figure))
		}
	}
}

// some returns what is struck where it is, else none.
func some[T any](is bool, all ...T) []T {
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
	return without(plan.EachOnce(keys))
}

// without says what struck figures are without, "" where none is.
func without(keys []plan.Uncomputed) string {
	if len(keys) == 0 {
		return ""
	}
	return "Struck figures are without " + plan.ListUncomputed(keys) + "."
}

// onView are the keys that could change the angles of view of a camera.
func onView(s *plan.Setup, camera string) []plan.Uncomputed {
	return keysOn(s, camera, func(u plan.Uncomputed) bool { return u.Changes == scene.OwnView })
}

// onColour are the keys that could give a light another colour.
func onColour(s *plan.Setup, light string) []plan.Uncomputed {
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
