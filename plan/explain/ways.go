package explain

import (
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
)

// way is what comes straight through the same panes: the whole by what is seen of the opening, by what the panes leave, by level and gels.
func (x *explainer) way(from *light.Way, w *working, level colour.RGB, value float64, number int) Way {
	out := Way{Via: solidNames(x.study.Setup.Names, from.Via), Value: value}
	seen := 0.0
	if whole := w.known["E0"]; whole > 0 {
		seen = from.Lux / whole
	}
	formula := "E0 × V × k"
	w.given(seenWords(out.Via), "V", seen, "", "found by the engine past everything in the way")
	filtered := level.Times(from.Filter)
	if len(from.Via) > 0 {
		w.given("what the panes leave of this light", "T", filtered.Y()/level.Y(), "", "the materials of the panes, for its colour")
		formula = "E0 × V × T × k"
	}
	if !x.spot() {
		w.worked("straight", "E"+strconv.Itoa(number+1), formula, value, x.unit(), "")
		w.strike(x.reading.Struck())
		out.Steps = w.steps
		return out
	}
	w.given("what the surface returns of it, through what the spot looks through", "r", reflectance(filtered, x.gain), "", "the material of the surface, for this light's colour")
	w.worked("straight", "E"+strconv.Itoa(number+1), formula+" × r / π", value, x.unit(), "a matt surface")
	w.strike(x.reading.Struck())
	out.Steps = w.steps
	return out
}

// seenWords word which part of an opening is seen.
func seenWords(via []string) string {
	if len(via) == 0 {
		return "share of its opening that is seen"
	}
	return "share of its opening that is seen through " + strings.Join(via, " and ")
}

// reflectance is what a surface returns of light, from the factor to its luminance.
func reflectance(from, gain colour.RGB) float64 {
	if !(from.Y() > 0) {
		return 0
	}
	return math.Pi * from.Times(gain).Y() / from.Y()
}
