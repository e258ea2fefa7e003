package match

import (
	"cmp"
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
)

// lamp is one light as a face gets it.
type lamp struct {
	name, numbered string
	head           kit.Head
	level          float64
	gelled         bool      // it wears gels
	unit           *kit.Unit // whose white can be set; nil of a source that the scene states itself
	catalogue      *kit.Catalogue
	out            colour.RGB // as it is set, what its factors take
	key, fill      colour.RGB // what each side gets of all that it counts, at an output of {1, 1, 1} each
}

// leastShare is the share of the light on one side that a lamp gives at least to be reached for, and mostLamps how many of them are tried: those that
// give most. Nobody matches a face by a trace.
const (
	leastShare = 0.05
	mostLamps  = 4
)

// lampsAt are the lights that a face gets its light of, those that give most first.
func (s *Lit) lampsAt(key, fill *meter.Reading) []lamp {
	var lit [2]float64 // by side, lx
	given := make([]lamp, 0, len(s.Setup.Lights))
	for i := range s.Setup.Lights {
		l := &s.Setup.Lights[i]
		one := lamp{name: l.Name, numbered: l.Numbered(), head: l.Head, level: l.Level, gelled: len(l.Gels) > 0, unit: unitOf(s.Setup, l), catalogue: s.Setup.Kit}
		one.head.Steps = nil
		count := float64(l.Count)
		one.key, one.fill = s.factors(key.Receptor, l.Name).Scale(count), s.factors(fill.Receptor, l.Name).Scale(count)
		one.out = one.head.RelativeOutput(one.level)
		lit[0], lit[1] = lit[0]+one.key.Times(one.out).Y(), lit[1]+one.fill.Times(one.out).Y()
		given = append(given, one)
	}
	share := func(l *lamp) float64 {
		return max(shareOf(l.key.Times(l.out).Y(), lit[0]), shareOf(l.fill.Times(l.out).Y(), lit[1]))
	}
	given = slices.DeleteFunc(given, func(l lamp) bool { return share(&l) < leastShare })
	slices.SortStableFunc(given, func(a, b lamp) int { return cmp.Compare(share(&b), share(&a)) })
	return given[:min(len(given), mostLamps)]
}

// shareOf is a part of the light on a side as a share of it; 0 where the side is dark, as a fill side in the open may be.
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
func (s *Lit) factors(receptor int, name string) (sum colour.RGB) {
	for t := range s.Basis.Terms {
		if s.Basis.Terms[t].Light == name {
			sum = sum.Add(s.Basis.Points[t][receptor].Times(s.Basis.Gains[receptor]))
		}
	}
	return sum
}

// more is how much more than it does a lamp puts out where it puts out so much.
func (l *lamp) more(out colour.RGB) colour.RGB { return out.Add(l.out.Scale(-1)) }

// Change is what is done to one light.
type Change struct {
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

	key, fill float64 // what it gives the two sides more, lx
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
	more := l.more(out)
	return option{change, out, cost, l.key.Times(more).Y(), l.fill.Times(more).Y()}
}

// options are all that is tried on a lamp. gap is how the light on the face lies from what is wanted, where that is too far for a colour to pass; nil:
// colours stay.
func (l *lamp) options(gap *colour.Gap, share float64) []option {
	all := l.levels(&l.head, Change{}, 0)
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
		if level = handy(h, level); !ok || level == last || level == l.level || !(level > 0) {
			continue
		}
		last = level
		all = append(all, l.as(h, level, change, cost))
	}
	return all
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
