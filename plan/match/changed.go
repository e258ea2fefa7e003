package match

import (
	"math"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
)

// after is a look with some lamps changed, which then stay as they are.
func (l *Look) after(d *done) *Look {
	is := *l
	is.lamps = slices.Clone(l.lamps)
	for i, o := range d.options {
		one := &is.lamps[d.lamps[i]]
		one.with(o, &is.at)
		one.out, one.taken = o.out, true
	}
	for _, r := range [...]Row{Key, Fill, BehindLeft, BehindRight} {
		if was := l.Figures[r]; was != nil {
			is.Figures[r] = meter.FiniteOrNil(*was + lens.Stops(is.at[r.place()].Y()/l.at[r.place()].Y()))
		}
	}
	if l.Figures[Steadiness] != nil {
		is.Figures[Steadiness] = steadiness(&is.at)
	}
	is.fillIn()
	return &is
}

// freed is a look whose lamps may all be changed again.
func (l *Look) freed() *Look {
	is := *l
	is.lamps = slices.Clone(l.lamps)
	for i := range is.lamps {
		is.lamps[i].taken = false
	}
	return &is
}

// crossed is a look whose key side is the fill side: the same light, and what is asked of the one side is asked of the other.
func (l *Look) crossed() *Look {
	is := *l
	swap := func(a, b *lit) { a[atKey], a[atFill] = b[atFill], b[atKey] }
	swap(&is.at, &l.at)
	is.lamps = slices.Clone(l.lamps)
	for i := range is.lamps {
		swap(&is.lamps[i].at, &l.lamps[i].at)
	}
	is.Figures[Key], is.Figures[Fill], is.Struck[Key], is.Struck[Fill] = l.Figures[Fill], l.Figures[Key], l.Struck[Fill], l.Struck[Key]
	is.fillIn()
	is.Side, is.From, is.Own = l.Side.Other(), l.From.Other(), otherHand(l.Own)
	return &is
}

// moved says whether changes move the key side of another face by more than what passes.
func (l *Look) moved(by map[string]colour.RGB) bool {
	key := l.at[atKey]
	for i := range l.gives {
		if g := &l.gives[i]; by[g.name] != (colour.RGB{}) {
			key = key.Add(g.at[atKey].Times(by[g.name]))
		}
	}
	was, is := l.Figures[KeyColour], l.mired(key)
	return math.Abs(lens.Stops(key.Y()/l.at[atKey].Y())) > PassStops || was != nil && is != nil && math.Abs(*is-*was) > PassMired
}

// otherHand is the other of the person's own sides.
func otherHand(own string) string {
	if own == "left" {
		return "right"
	}
	return "left"
}
