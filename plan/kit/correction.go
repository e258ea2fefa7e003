package kit

import (
	"cmp"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/term"
)

// Correction is a stack of gels that brings a light toward another.
type Correction struct {
	Gels          []string   // in the catalogue's order; none: no gel helps
	Left          colour.Gap // the gap that is left
	Enough        float64    // how large a gap may be that is as close: a ratio (colour.Gap.Size)
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
	r := newRack(c.corrections())
	closest := gap.Size()
	r.stacks(gap, func() float64 { return closest }, func(s *sheet) { closest = min(closest, s.left.Size()) })
	enough := max(closest+alike, unseen)
	best := sheet{left: gap, transmittance: 1}
	if found := gap.Size() <= enough; !found {
		limit := func() float64 {
			if found && best.count < mostSheets {
				return -1 // no stack of three is taken any more
			}
			return enough
		}
		r.stacks(gap, limit, func(s *sheet) {
			if s.left.Size() <= enough && (!found || s.before(&best)) {
				best, found = *s, true
			}
		})
	}
	out := Correction{Left: best.left, Enough: enough, Transmittance: best.transmittance}
	for _, i := range best.gels[:best.count] {
		out.Gels = append(out.Gels, r.gels[i].Name)
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
	if size, than := s.left.Size(), other.left.Size(); size < than-rounding || size > than+rounding {
		return size < than
	}
	return slices.Compare(s.gels[:s.count], other.gels[:other.count]) < 0
}

// corrections are the gels that shift a white: of those that shift it alike the one that passes the most.
func (c *Catalogue) corrections() (all []*GelData) {
	for _, g := range c.Gels {
		if !g.shiftsWhite() {
			continue
		}
		known := false
		for i, o := range all {
			if o.shiftsLike(g) {
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

// AsClose says whether a change that leaves one gap is as close as another that leaves a second.
func AsClose(a, b *colour.Gap) bool { return a.Size() <= max(b.Size()+alike, unseen) }

// Corrects says whether a gel of the catalogue only corrects a white. One that takes more light than another with the same shift, as CTO with a
// density in it, is used for that, too.
func (c *Catalogue) Corrects(name string) bool {
	g := c.Gel(name)
	if g == nil || !g.shiftsWhite() {
		return false
	}
	for _, o := range c.corrections() {
		if o.shiftsLike(g) {
			return g.Transmittance > o.Transmittance-rounding
		}
	}
	return false
}

// shiftsWhite says whether a gel is of the kinds that lights are corrected with.
func (g *GelData) shiftsWhite() bool { return g.XY == nil && correcting[g.Kind] }

// shiftsLike says whether two gels shift a white alike.
func (g *GelData) shiftsLike(o *GelData) bool {
	return near(o.Mired, g.Mired, colour.PassMired) && near(o.Duv, g.Duv, colour.PassDuv)
}

// correcting are the kinds of gels that a light is corrected with.
var correcting = map[term.Gel]bool{term.CTO: true, term.CTB: true, term.PlusGreen: true, term.MinusGreen: true}

// rack is the correction gels of a catalogue, to be looked through by warmth.
type rack struct {
	gels   []*GelData
	warmer []int // them by their mireds, the coolest first
}

func newRack(gels []*GelData) *rack {
	r := &rack{gels: gels}
	for i := range gels {
		r.warmer = append(r.warmer, i)
	}
	slices.SortStableFunc(r.warmer, func(a, b int) int { return cmp.Compare(gels[a].Mired, gels[b].Mired) })
	return r
}

// stacks calls try with every stack of one or two gels, each once, and with all of three that may leave no more than a limit. Of a
// third sheet only those are looked at that bring the mireds so near: with the hundreds of gels of a kit of one's own all others would take minutes.
func (r *rack) stacks(gap colour.Gap, limit func() float64, try func(*sheet)) {
	for i := range r.gels {
		one := r.over(&sheet{left: gap, transmittance: 1}, i)
		try(&one)
		for j := i; j < len(r.gels); j++ {
			two := r.over(&one, j)
			try(&two)
			most := limit() + rounding
			reach := most * colour.PassMired
			from, _ := slices.BinarySearchFunc(r.warmer, -two.left.Mired-reach, func(k int, mired float64) int { return cmp.Compare(r.gels[k].Mired, mired) })
			for _, k := range r.warmer[from:] {
				if r.gels[k].Mired > -two.left.Mired+reach {
					break
				}
				if g := r.gels[k]; k >= j && two.left.Shifted(g.Mired, g.Duv).SquaredSize() <= most*most {
					three := r.over(&two, k)
					try(&three)
				}
			}
		}
	}
}

// over is a stack with one more gel.
func (r *rack) over(under *sheet, gel int) sheet {
	g := r.gels[gel]
	s := sheet{left: under.left.Shifted(g.Mired, g.Duv), transmittance: under.transmittance * g.Transmittance, gels: under.gels, count: under.count + 1}
	s.gels[under.count] = gel
	return s
}
