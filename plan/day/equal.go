package day

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/unit"
)

// Equal is what another unit has to give to do in the place of a light, as that is used in one set-up.
type Equal struct {
	Lux    float64 // on the axis at 3 m, lx, to two figures, rounded down
	Wears  string  // "bare", "with softbox 0.9 m"
	Set    string  // where its lens stands, and to which of its whites it is set: "at spot", "set to 5600 K"; "" where it has one of each
	Whites string  // that it can be set to
	Such   string  // which other of the kit does; "" none
}

// atEqual is how far off what another unit gives is held to it, m: common practice.
const atEqual = 3

// whites are those that a unit can be set to.
func whites(h *kit.Head) string {
	u := h.Unit
	if u.Kelvin[0] == u.Kelvin[1] {
		return unit.FormatKelvin(u.Kelvin[0])
	}
	return unit.FormatKelvin(u.Kelvin[0]) + " to " + unit.FormatKelvin(u.Kelvin[1])
}

// twoFigures is a number to two figures, rounded down: who offers a unit in its place is held to that.
func twoFigures(v float64) float64 {
	if v <= 0 {
		return 0
	}
	grain := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Floor(v/grain+1e-9) * grain
}

// orEqual says what another unit has to give in all uses of a day. Uses for which the same other unit does are said together, and name it once:
// "490 lx at 3 m with softbox 0.9 m set to 5600 K and 430 lx set to 3200 K, 2700 K to 6500 K: such as ..."; "" where nobody asks.
func orEqual(gives []Equal) string {
	var all []string
	for at := range gives {
		e := &gives[at]
		alike := func(o Equal) bool { return o.Whites == e.Whites && o.Such == e.Such }
		if slices.IndexFunc(gives, alike) < at {
			continue
		}
		such := "no other of the kit"
		if e.Such != "" {
			such = "such as " + e.Such
		}
		all = append(all, usesWords(slices.DeleteFunc(slices.Clone(gives), func(o Equal) bool { return !alike(o) }))+", "+e.Whites+": "+such)
	}
	return strings.Join(all, "; ")
}

// usesWords are uses one after the other: how far off and what a unit wears are said again only where that is not as before.
func usesWords(uses []Equal) string {
	words, wears := "", ""
	for k, e := range uses {
		switch {
		case k == 0:
			words = fmt.Sprintf("%s lx at %d m", unit.FormatNumber(e.Lux), atEqual)
		case k == len(uses)-1:
			words += " and " + unit.FormatNumber(e.Lux) + " lx"
		default:
			words += ", " + unit.FormatNumber(e.Lux) + " lx"
		}
		if e.Wears != wears {
			words, wears = words+" "+e.Wears, e.Wears
		}
		if e.Set != "" {
			words += " " + e.Set
		}
	}
	return words
}
