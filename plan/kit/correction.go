package kit

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/term"
)

// Correction is a stack of gels that brings a light toward another.
type Correction struct {
	Gels          []string   // in the catalogue's order; none: no gel helps
	Left          colour.Gap // the gap that is left
	Transmittance float64    // share of the light that the stack lets through, luminous, 0 to 1
}

// How stacks are chosen, common practice. A fourth sheet costs a head more light and air than any gap is worth that three leave. What
// lies within alike of the closest stack, or within unseen of the light itself, is as close: both by the size of a gap (colour.Gap).
const (
	mostSheets = 3
	alike      = 0.1
	unseen     = 0.25
)

// sheet is one correction gel, or what two or three of them together do.
type sheet struct {
	left          colour.Gap
	transmittance float64
	gels          [mostSheets]int
	count         int
}

// Correct gives the stack of up to three correction gels of the catalogue, for warmth and for green, that closes a gap best: shifts
// add, transmittances multiply. Of stacks that are as close it is the one with the fewest gels, then the one that passes the most, then the closest,
// then the first in the order of the catalogue.
func (c *Catalogue) Correct(gap colour.Gap) Correction {
	gels := c.corrections()
	closest := gap.Size()
	stacks(gels, gap, func(s *sheet) { closest = min(closest, s.left.Size()) })
	enough := max(closest+alike, unseen)
	best := sheet{left: gap, transmittance: 1}
	found := gap.Size() <= enough
	if !found {
		stacks(gels, gap, func(s *sheet) {
			if s.left.Size() <= enough && (!found || s.before(&best)) {
				best, found = *s, true
			}
		})
	}
	out := Correction{Left: best.left, Transmittance: best.transmittance}
	for _, i := range best.gels[:best.count] {
		out.Gels = append(out.Gels, gels[i].Name)
	}
	return out
}

// rounding is what sums and products of the same figures may differ by.
const rounding = 1e-9

// before says whether of two stacks that are as close this one is taken, though the other came first.
func (s *sheet) before(other *sheet) bool {
	switch {
	case s.count != other.count:
		return s.count < other.count
	case s.transmittance > other.transmittance+rounding, s.transmittance < other.transmittance-rounding:
		return s.transmittance > other.transmittance
	}
	return s.left.Size() < other.left.Size()-rounding
}

// corrections are the gels that shift a white: of those that shift it alike the one that passes the most.
func (c *Catalogue) corrections() (all []*GelData) {
	for _, g := range c.Gels {
		if g.XY != nil || !correcting[g.Kind] {
			continue
		}
		known := false
		for i, o := range all {
			if near(o.Mired, g.Mired, colour.PassMired) && near(o.Duv, g.Duv, colour.PassDuv) {
				known = true
				if g.Transmittance > o.Transmittance {
					all[i] = g
				}
			}
		}
		if !known {
			all = append(all, g)
		}
	}
	return all
}

// near says whether two shifts are one, by the shift that is as large as may not be seen.
func near(a, b, pass float64) bool { return a-b < rounding*pass && b-a < rounding*pass }

// correcting are the kinds of gels that a light is corrected with.
var correcting = map[term.Gel]bool{term.CTO: true, term.CTB: true, term.PlusGreen: true, term.MinusGreen: true}

// stacks calls try with every stack of one to three gels, each once, in the order of the catalogue.
func stacks(gels []*GelData, gap colour.Gap, try func(*sheet)) {
	var put func(under *sheet, from int)
	put = func(under *sheet, from int) {
		for i := from; i < len(gels); i++ {
			g := gels[i]
			s := sheet{left: under.left.Shifted(g.Mired, g.Duv), transmittance: under.transmittance * g.Transmittance, gels: under.gels, count: under.count + 1}
			s.gels[under.count] = i
			try(&s)
			if s.count < mostSheets {
				put(&s, i)
			}
		}
	}
	put(&sheet{left: gap, transmittance: 1}, 0)
}
