package files

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/unit"
)

// limits bound a figure of a file: from least to most, in a unit. What lies beyond them is a slip of the pen or of a
// program, and no lamp: it would leave the range in which light is computed.
type limits struct {
	least, most float64
	unit        string // with the blank before it; "" for a ratio
}

func upTo(most float64, unit string) limits { return limits{-most, most, unit} }

// The ranges of the figures. A figure below 0 has a meaning of its own in some places, so most reach as far down as up.
var (
	fluxes  = upTo(photometry.MostLumens, " lm")
	powers  = upTo(1e6, " W")
	ratios  = upTo(1e6, "")
	turns   = upTo(360, "°")
	metres  = upTo(maxSide, " m")
	feet    = upTo(maxSide/unit.Foot, " ft")
	millis  = upTo(maxSide*1000, " mm")
	percent = upTo(1e8, " %")

	// intensities is where the greatest of a file lies: from a speck of phosphor to beyond any searchlight.
	intensities = limits{1e-6, photometry.MostCandela, " cd"}
)

// The sides of a luminous opening, m: no lamp has a larger one, and a smaller one shines as a point does.
const (
	maxSide = 50
	minSide = 1e-3
)

func (l limits) String() string { return format(l.least) + l.unit + " to " + format(l.most) + l.unit }

// within refuses a figure beyond its limits.
func (t *text) within(l limits, v float64, p part, what string) bool {
	if v >= l.least && v <= l.most {
		return true
	}
	t.fault(p, CodeValue, shiftedHint, "%s is from %s, and %s is not", what, l, quoted(t.words(p)))
	return false
}

// greatest finds the greatest of the intensities.
func greatest(rows [][]float64) (v float64, row, column int) {
	for i, values := range rows {
		for j, w := range values {
			if w > v {
				v, row, column = w, i, j
			}
		}
	}
	return v, row, column
}

// strong refuses a file whose greatest intensity, cd, no lamp has. One of 0 is left to who makes light of it.
func (t *text) strong(candela float64, p part) bool {
	l := intensities
	if candela == 0 || candela >= l.least && candela <= l.most {
		return true
	}
	t.fault(p, CodeValue, "a multiplier or the flux of the lamps may be wrong",
		"the greatest intensity of a file is from %s, and here it is %.3g%s", l, candela, l.unit)
	return false
}
