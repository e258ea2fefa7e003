package section

import (
	"fmt"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// filterWords say what is before a lens and what it does: "ND 0.6 takes 2 stops".
func filterWords(x *plan.Exposure) string {
	if x.Filters == "" {
		return ""
	}
	words := fmt.Sprintf("%s: %.1f stops", x.Filters, x.Lost)
	if x.White != x.SetTo() {
		words += ", white before it " + unit.FormatKelvin(x.White.Kelvin)
	}
	return words
}

// filterChange says which filters a lens has now that it had not, or that it has lost them.
func filterChange(was, is string) string {
	switch {
	case was == is:
		return ""
	case is == "":
		return "no filter"
	}
	return "filter " + is
}
