package match

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/term"
)

// given is one light as the places of a look get it.
type given struct {
	name string
	out  colour.RGB             // as it is set, what its factors take
	at   [atFill + 1]colour.RGB // what each side of the face gets of all that it counts, at an output of {1, 1, 1} each
}

// lamp is one of those lights that may be changed.
type lamp struct {
	name, numbered string
	head           kit.Head
	level          float64
	gelled         bool      // it wears gels
	unit           *kit.Unit // whose white can be set; nil of a source that the scene states itself
	catalogue      *kit.Catalogue
	out            colour.RGB // as it is set, what its factors take
	at             lit        // what each place gets of all that it counts, at an output of {1, 1, 1} each
	away           float64    // from the face, m
	atFace, behind bool       // it gives the face, or what stands behind the head, enough to be reached for
	taken          bool       // it is changed already
}

// leastShare is the share of the light at a place that a lamp gives at least to be reached for, and mostLamps how many of them are tried: those that
// give most. Nobody matches a face by a trace.
const (
	leastShare = 0.05
	mostLamps  = 4
)

// lampsAt lists the lights of a look, and of those the ones that the face and what stands behind the head get their light of, those that give most first.
func (l *Look) lampsAt(s *Lit, read [places]receptor) {
	face := s.Setup.Post(l.Person).Face.At
	lamps := make([]lamp, 0, len(s.Setup.Lights))
	for i := range s.Setup.Lights {
		of := &s.Setup.Lights[i]
		one := lamp{name: of.Name, numbered: of.Numbered(), head: of.Head, level: of.Level, gelled: len(of.Gels) > 0, unit: unitOf(s.Setup, of), catalogue: s.Setup.Kit}
		one.head.Steps, one.away = nil, r3.Norm(r3.Sub(of.Frame.At, face))
		for p := range read {
			one.at[p] = read[p].factors(of.Name).Scale(float64(of.Count))
		}
		one.out = one.head.RelativeOutput(one.level)
		lamps = append(lamps, one)
		l.gives = append(l.gives, given{one.name, one.out, [...]colour.RGB{one.at[atKey], one.at[atFill]}})
	}
	l.mostOf(lamps, []place{atKey, atFill}, func(one *lamp) { one.atFace = true })
	l.mostOf(lamps, []place{atLeft, atRight}, func(one *lamp) { one.behind = true })
	l.lamps = slices.Clone(slices.DeleteFunc(lamps, func(one lamp) bool { return !one.atFace && !one.behind })) // cloned, for the others go with what held all
}

// mostOf marks the lamps that give most to some places.
func (l *Look) mostOf(lamps []lamp, at []place, mark func(*lamp)) {
	share := func(one *lamp) (most float64) {
		for _, p := range at {
			most = max(most, shareOf(one.at[p].Times(one.out).Y(), l.at[p].Y()))
		}
		return most
	}
	slices.SortStableFunc(lamps, func(a, b lamp) int { return cmp.Compare(share(&b), share(&a)) })
	for i := range lamps[:min(len(lamps), mostLamps)] {
		if share(&lamps[i]) >= leastShare {
			mark(&lamps[i])
		}
	}
}

// shareOf is a part of the light at a place as a share of it; 0 where the place is dark, as a fill side in the open may be.
func shareOf(part, all float64) float64 {
	if all <= 0 {
		return 0
	}
	return part / all
}

// unitOf is the unit of a light whose own output is the catalogue's; nil of one that the scene states.
func unitOf(s *plan.Setup, l *plan.Light) *kit.Unit {
	if s.Scene == nil {
		return nil
	}
	for i := range s.Scene.Lights {
		if w := &s.Scene.Lights[i]; w.Name == l.Name && w.Output == nil {
			return l.Head.Unit
		}
	}
	return nil
}

// factors is what a receptor gets of a light at an output of {1, 1, 1}, channel by channel.
func (r receptor) factors(name string) (sum colour.RGB) {
	if r.of == nil {
		return sum
	}
	for t := range r.of.Terms {
		if r.of.Terms[t].Light == name {
			sum = sum.Add(r.of.Points[t][r.i].Times(r.of.Gains[r.i]))
		}
	}
	return sum
}

// more is how much more than it does a lamp puts out where it puts out so much.
func (l *lamp) more(out colour.RGB) colour.RGB { return out.Add(l.out.Scale(-1)) }

// Change is what is done to one light.
type Change struct {
	For             Matter // what it is to bring back
	Light, Numbered string
	Level, Was      float64      // shares of its full light; equal where the level stays
	White           *kit.Setting // its own white; nil: it stays
	Bare            bool         // its gels come off
	Gels            []string     // added
	Scrims          []term.Scrim // added
}

// option is one thing that can be done to a lamp: what it then puts out, as its factors take it, and what that costs.
type option struct {
	change Change
	out    colour.RGB
	cost   float64

	more [atNear]float64 // what it gives the sides of the face more, lx, and what stands behind the head, cd/m²
}

// What changes cost by what a crew does for them: a level or a white is set from a desk, a scrim is dropped in, a gel is cut, clipped on and may have to
// come off for the next set-up. Common practice in its order; the figures only put it in one.
const (
	costSetting = 1
	costScrim   = 2
	costGel     = 3
)

// steps of levels that are tried: tenths of a stop, over as many stops up and down as any two set-ups may lie apart.
const (
	levelSteps = 10
	mostStops  = 7
)

// as is the option of a head at a level.
func (l *lamp) as(h *kit.Head, level float64, change Change, cost float64) option {
	change.Light, change.Numbered, change.Level, change.Was = l.name, l.numbered, level, l.level
	if level != l.level {
		cost += costSetting
	}
	out := h.RelativeOutput(level).Scale(h.Source.Flux / l.head.Source.Flux)
	o := option{change: change, out: out, cost: cost}
	for p := range o.more {
		o.more[p] = l.at[p].Times(l.more(out)).Y()
	}
	return o
}

// options are all that is tried on a lamp. gap is how the light on the face lies from what is wanted, where that is too far for a colour to pass; nil:
// colours stay.
func (l *lamp) options(gap *colour.Gap, share float64) []option {
	all := append(l.levels(&l.head, Change{}, 0), l.as(&l.head, 0, Change{}, 0))
	all = append(all, l.dimmers()...)
	if gap == nil {
		return all
	}
	if l.gelled {
		head := l.head.Ungelled()
		all = append(all, l.levels(&head, Change{Bare: true}, costScrim)...)
	}
	for _, by := range [...]float64{1, 1 / max(share, leastShare)} { // the rest of the light keeps its colour
		scaled := colour.Gap{Mired: gap.Mired * by, Duv: gap.Duv * by}
		if l.unit != nil {
			if head, to := l.head.SetNearer(l.unit, scaled); to.Moves {
				all = append(all, l.levels(&head, Change{White: &to}, costSetting)...)
			}
		}
		if gels := l.catalogue.Correct(scaled).Gels; len(gels) > 0 {
			head := l.head.Gelled(l.catalogue, gels)
			all = append(all, l.levels(&head, Change{Gels: gels}, costGel*float64(len(gels)))...)
		}
	}
	return all
}

// levels are a head at its level, and at those about it that it can be set to.
func (l *lamp) levels(h *kit.Head, change Change, cost float64) []option {
	all := []option{l.as(h, l.level, change, cost)}
	last := l.level
	for n := -mostStops * levelSteps; n <= mostStops*levelSteps; n++ {
		level, ok := h.LevelFor(h.LightAt(l.level) * math.Exp2(float64(n)/levelSteps))
		if level = handy(h, level); !ok || level == last || level == l.level || level < leastSet(h) {
			continue
		}
		last = level
		all = append(all, l.as(h, level, change, cost))
	}
	return all
}

// leastBulb is the least level that a household bulb without a filament is set to: below it such bulbs blink or go out, which is common practice.
const leastBulb = 0.1

// leastSet is the least level that a head is set to, where it is not off.
func leastSet(h *kit.Head) float64 {
	const printed = 0.001 // as levels print
	if h.Bulb != nil && !h.Bulb.WarmsWhenDimmed {
		return max(h.Levels.Least, leastBulb)
	}
	return max(h.Levels.Least, printed)
}

// handy is a level as a crew says it: in whole percent from a tenth on, where the unit has no steps of its own.
func handy(h *kit.Head, level float64) float64 {
	const percent = 100
	if h.Levels.Step > 0 || level < 0.1 {
		return level
	}
	return math.Round(level*percent) / percent
}

// dimmers are what takes light off a lamp as it is set: neutral gels, and scrims where it takes them.
func (l *lamp) dimmers() (all []option) {
	for _, g := range l.catalogue.Gels {
		if g.Kind == term.ND {
			head := l.head.Gelled(l.catalogue, []string{g.Name})
			all = append(all, l.as(&head, l.level, Change{Gels: []string{g.Name}}, costGel))
		}
	}
	if !l.head.TakesScrims() {
		return all
	}
	for _, scrims := range [][]term.Scrim{{term.SingleScrim}, {term.DoubleScrim}, {term.DoubleScrim, term.SingleScrim}} {
		head := l.head.Scrimmed(scrims)
		all = append(all, l.as(&head, l.level, Change{Scrims: scrims}, costScrim*float64(len(scrims))))
	}
	return all
}
