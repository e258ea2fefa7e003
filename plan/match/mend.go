package match

import (
	"math"
	"slices"

	"scrimshaw/plan/colour"
)

// Mend is what of the lights of a set-up brings a face to how it looks in another: the cheapest change for each matter that is off, one after the other,
// each with what was changed before.
type Mend struct {
	Changes []Change      // none where none of those that are tried closes any of it
	Closes  []Row         // what they bring within what passes
	Crosses bool          // they exchange the two sides of the face
	After   [Rows]float64 // how far each row then lies apart, stops or mired; no number where nothing is known
	Spoils  []string      // the other people whose key side they move by more than a third of a stop, or whose colour
	Open    []Open        // the matters for which nothing was found, and why
}

// Matter is what a change is to bring back.
type Matter uint8

// The matters, in the order in which they are looked after: what comes later leaves alone what was mended before.
const (
	OfSide   Matter = iota // on which side of the face the key is
	OfFace                 // the light and the colours of the two sides
	OfSteady               // how steady that light is
	OfBehind               // what stands behind the head
)

// Open is a matter for which no change was found.
type Open struct {
	Of    Matter
	Spoil bool    // there is one, that would spoil what matches
	Light string  // the one that it hangs on most, numbered; "" where it hangs on many
	Share float64 // the share of the light on the side that ought to be the darker one that it gives
	Away  float64 // how far from the face it is, m
	Was   float64 // how far the light was that it hung on in the look to match, m; 0 where there was none
}

// byLight are the rows that follow from the light on the two sides of a face; those of all about it follow.
var (
	byLight = []Row{Key, Fill, Contrast, KeyColour, FillColour}
	atFace  = append(slices.Clone(byLight), Steadiness)
	behind  = []Row{BehindLeft, BehindRight}
	byAll   = slices.Concat(atFace, behind)
)

// goals are what is asked for a face, the most first: where no change reaches all, the sides however steady, these without their colours, the key side
// without the fill, the colours alone.
var goals = [...][]Row{atFace, byLight, {Key, Fill, Contrast}, {Key, KeyColour}, {Key}, {KeyColour, FillColour}, {KeyColour}}

// mending is a mend in the making.
type mending struct {
	Mend
	look, from *Look                 // as it is by now, and what it is to match
	by         map[string]colour.RGB // what the lights put out more by now
}

// MendTo looks for what brings a look to another; nil where nothing is off. others are the looks of the same set-up.
func (l *Look) MendTo(from *Look, others []Look) *Mend {
	turned := l.Turned(from) && !l.Struck[Contrast] && !from.Struck[Contrast]
	off := l.off(from, byAll)
	if len(off) == 0 && !turned {
		return nil
	}
	m := &mending{look: l, from: from, by: map[string]colour.RGB{}}
	if turned {
		m.side()
	}
	m.face()
	m.steady()
	m.behind()
	m.sum(off, others)
	return &m.Mend
}

// sum says what the changes come to, of rows that were off and for others.
func (m *mending) sum(off []Row, others []Look) {
	for _, r := range byAll {
		if m.After[r] = m.look.apartOrNaN(m.from, r); slices.Contains(off, r) && math.Abs(m.After[r]) <= r.pass() {
			m.Closes = append(m.Closes, r)
		}
	}
	for i := range others {
		if o := &others[i]; o.Person != m.look.Person && !slices.Contains(m.Spoils, o.Person) && o.moved(m.by) {
			m.Spoils = append(m.Spoils, o.Person)
		}
	}
}

// off are the rows that lie too far off.
func (l *Look) off(from *Look, of []Row) []Row {
	return slices.DeleteFunc(slices.Clone(of), func(r Row) bool { return !l.Off(from, r) })
}

// apartOrNaN is how far a row lies apart; no number where one of both is not known.
func (l *Look) apartOrNaN(from *Look, r Row) float64 {
	if d := l.Differs(from, r); d != nil {
		return *d
	}
	return math.NaN()
}

// take does what was found.
func (m *mending) take(d *done, of Matter) {
	for i, o := range d.options {
		c := o.change
		c.For = of
		m.Changes = append(m.Changes, c)
		m.by[c.Light] = m.look.lamps[d.lamps[i]].more(o.out)
	}
	m.look = m.look.after(d)
}

// side looks for levels by which the lamps of the two sides change places, with all the stops of the sides within what passes.
func (m *mending) side() {
	across := m.look.crossed()
	off := across.off(m.from, byLight)
	if across.Turned(m.from) {
		return // to a camera before the nose of a profile, both sides are the same
	}
	s := searchOf(across, m.from, atFace, slices.ContainsFunc(off, Row.InMired), func(one *lamp) bool { return one.atFace })
	if best := s.reach(off, goals[:3]...); best != nil {
		m.look, m.Crosses = across, true
		m.take(best, OfSide)
		return
	}
	open := Open{Of: OfSide}
	for i := range m.look.lamps {
		one := &m.look.lamps[i]
		if share := shareOf(one.at[atKey].Times(one.out).Y(), m.look.at[atKey].Y()); share > open.Share {
			open.Light, open.Share = one.numbered, share
		}
	}
	m.Open = append(m.Open, open)
}

// face looks for what brings back the light of the two sides.
func (m *mending) face() {
	off := m.look.off(m.from, byLight)
	if len(off) == 0 {
		return
	}
	s := searchOf(m.look, m.from, atFace, slices.ContainsFunc(off, Row.InMired), func(one *lamp) bool { return one.atFace })
	if best := s.reach(off, goals[:]...); best != nil {
		m.take(best, OfFace)
	} else {
		m.Open = append(m.Open, Open{Of: OfFace})
	}
}

// behind looks for what brings back what stands behind the head, on both sides, else on one.
func (m *mending) behind() {
	off := m.look.off(m.from, behind)
	if len(off) == 0 {
		return
	}
	usable := func(one *lamp) bool { return one.behind }
	s := searchOf(m.look, m.from, byAll, false, usable)
	best := s.reach(off, behind, behind[:1], behind[1:])
	if best != nil {
		m.take(best, OfBehind)
	}
	left := m.look.off(m.from, behind)
	if len(left) == 0 {
		return
	}
	open := m.hangsOn(OfBehind, func(one *lamp) float64 {
		return one.at[left[0].place()].Times(one.out).Y()
	})
	if alone := searchOf(m.look.freed(), m.from, left, false, usable).reach(left, left); alone != nil {
		open.Spoil, open.Light = true, alone.options[0].change.Numbered
	}
	m.Open = append(m.Open, open)
}

// steady looks for levels by which the light about the face changes as much as it did.
func (m *mending) steady() {
	off := m.look.off(m.from, []Row{Steadiness})
	if len(off) == 0 {
		return
	}
	s := searchOf(m.look, m.from, byAll, false, func(one *lamp) bool { return one.atFace })
	if best := s.reach(off, off); best != nil {
		m.take(best, OfSteady)
		return
	}
	m.Open = append(m.Open, m.hangsOn(OfSteady, func(one *lamp) float64 {
		most, least := 0.0, math.Inf(1)
		for _, c := range one.at[atNear:] {
			lux := c.Times(one.out).Y()
			most, least = max(most, lux), min(least, lux)
		}
		return most - least
	}))
}

// hangsOn is a matter that is open, with the lamp that does most by some measure, here and in the look to match.
func (m *mending) hangsOn(of Matter, by func(*lamp) float64) Open {
	most := func(l *Look) (best *lamp) {
		for i := range l.lamps {
			if one := &l.lamps[i]; by(one) > 0 && (best == nil || by(one) > by(best)) {
				best = one
			}
		}
		return best
	}
	o := Open{Of: of}
	if one := most(m.look); one != nil {
		o.Light, o.Away = one.numbered, one.away
	}
	if one := most(m.from); one != nil {
		o.Was = one.away
	}
	return o
}
