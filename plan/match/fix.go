package match

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// margin is the share of what passes that a change may leave: levels are set as they print.
const margin = 0.9

// search looks for the cheapest options of one lamp or of two.
type search struct {
	look, from *Look
	known      []Row     // of those that light decides, the ones that are known on both sides: they are not spoilt
	before     []float64 // how far each of them is off, in shares of what passes
	goal       []Row
	lamps      []int        // those of the look that may be changed
	options    [][]option   // of each of these
	settings   [][]option   // those of its level alone, which are tried with all options of another lamp
	more       [atNear]span // what may come to a place more: pairs of options are many, and most are out of it
}

// searchOf prepares a search with some lamps for what may be asked of some rows, and keeps these and others.
func searchOf(l, from *Look, rows []Row, colours bool, usable func(*lamp) bool) *search {
	s := &search{look: l, from: from}
	for _, r := range rows {
		if l.Differs(from, r) != nil && !l.Struck[r] && !from.Struck[r] {
			s.known, s.before = append(s.known, r), append(s.before, math.Abs(s.apart(r, &l.at))/r.pass())
		}
	}
	var gap *colour.Gap
	if colours {
		gap = s.gap()
	}
	for i := range l.lamps {
		if one := &l.lamps[i]; !one.taken && usable(one) {
			share := shareOf(one.at[atKey].Times(one.out).Y(), l.at[atKey].Y())
			s.lamps = append(s.lamps, i)
			s.options, s.settings = append(s.options, one.options(gap, share)), append(s.settings, one.options(nil, share))
		}
	}
	return s
}

// reach is the best that reaches the first of some goals that can be reached, of which a row that is off is part; nil where none can be.
func (s *search) reach(off []Row, goals ...[]Row) *done {
	for _, goal := range goals {
		s.goal = slices.DeleteFunc(slices.Clone(goal), func(r Row) bool { return !slices.Contains(s.known, r) })
		if !slices.ContainsFunc(s.goal, func(r Row) bool { return slices.Contains(off, r) }) {
			continue
		}
		s.spans()
		if best := s.best(); best != nil {
			return best
		}
	}
	return nil
}

// span is what of a figure may be, least and most.
type span struct{ least, most float64 }

func (s span) holds(v float64) bool { return s.least <= v && v <= s.most }

// spans says how much more light may come to a place, for the goal, or so that it lies no farther off than it does.
func (s *search) spans() {
	for p := range s.more {
		s.more[p] = span{math.Inf(-1), math.Inf(1)}
	}
	for i, r := range s.known {
		p := r.place()
		if r.InMired() || p >= atNear {
			continue
		}
		most := max(1, s.before[i])
		if slices.Contains(s.goal, r) {
			most = margin
		}
		now := s.look.at[p].Y()
		wanted := now * math.Exp2(*s.from.Figures[r]-*s.look.Figures[r])
		s.more[p] = span{wanted*math.Exp2(-most*PassStops) - now - tiny, wanted*math.Exp2(most*PassStops) - now + tiny}
	}
}

// tiny is the light, lx, that sums may differ by in rounding.
const tiny = 1e-6

// gap is how the light on the key side, or on the fill side where that is farther off, lies from what is wanted there.
func (s *search) gap() *colour.Gap {
	var worst *colour.Gap
	for _, pair := range [...][2]colour.RGB{{s.look.at[atKey], s.from.at[atKey]}, {s.look.at[atFill], s.from.at[atFill]}} {
		is, ok := colour.GapBetween(colour.XY(pair[0]), colour.XY(pair[1]))
		if !ok {
			continue
		}
		is.Mired += s.from.white - s.look.white // each is seen from its own camera's white
		if worst == nil || math.Abs(is.Mired) > math.Abs(worst.Mired) {
			worst = &is
		}
	}
	return worst
}

// done is options for some lamps, and how well they do.
type done struct {
	lamps   []int
	options []*option
	cost    float64
	worst   float64 // the row of the goal that is farthest off, in shares of what passes
}

// best is the cheapest that reaches the goal, and of those the closest; nil where none does.
func (s *search) best() (best *done) {
	keep := func(d done) {
		if d.worst <= margin && (best == nil || cmp.Or(cmp.Compare(d.cost, best.cost), cmp.Compare(d.worst, best.worst)) < 0) {
			best = &done{slices.Clone(d.lamps), slices.Clone(d.options), d.cost, d.worst}
		}
	}
	for i := range s.options {
		for a := range s.options[i] {
			keep(s.try([]int{s.lamps[i]}, &s.options[i][a]))
		}
	}
	if best != nil && best.cost <= 2*costSetting {
		return best
	}
	for i := range s.options {
		for j := range s.settings {
			for a := 0; i != j && a < len(s.options[i]); a++ {
				one := &s.options[i][a]
				for b := range s.settings[j] {
					if two := &s.settings[j][b]; (best == nil || one.cost+two.cost <= best.cost) && s.holds(one, two) {
						keep(s.try([]int{s.lamps[i], s.lamps[j]}, one, two))
					}
				}
			}
		}
	}
	return best
}

// holds says whether the light of two options is as much as may come to the places.
func (s *search) holds(one, two *option) bool {
	for p := range s.more {
		if !s.more[p].holds(one.more[p] + two.more[p]) {
			return false
		}
	}
	return true
}

// try says how options for some lamps do.
func (s *search) try(lamps []int, options ...*option) done {
	d := done{lamps: lamps, options: options}
	at := s.look.at
	for i, o := range options {
		d.cost += o.cost
		s.look.lamps[lamps[i]].with(o, &at)
	}
	for i, r := range s.known { // stops first: a colour takes longer to find
		off := math.Abs(s.apart(r, &at)) / r.pass()
		asked := slices.Contains(s.goal, r)
		if asked {
			d.worst = max(d.worst, off)
		}
		if asked && !(off <= margin) || !asked && off > max(1, s.before[i]) { // what is not mended is not spoilt
			d.worst = math.Inf(1)
			return d
		}
	}
	return d
}

// apart is how far a row lies apart with other light at the places, stops or mired.
func (s *search) apart(r Row, at *lit) float64 { return s.look.apart(s.from, r, at) }

func (l *Look) apart(from *Look, r Row, at *lit) float64 {
	is := func(v *float64) float64 {
		if v == nil || from.Figures[r] == nil {
			return math.NaN()
		}
		return *v - *from.Figures[r]
	}
	ratio := func(is, was colour.RGB) float64 { return lens.Stops(is.Y() / was.Y()) }
	switch p := r.place(); r {
	case Contrast:
		return ratio(at[atKey], at[atFill]) - *from.Figures[Contrast]
	case KeyColour, FillColour:
		return is(l.mired(at[p]))
	case Steadiness:
		return is(steadiness(at))
	default:
		return *l.Figures[r] + ratio(at[p], l.at[p]) - *from.Figures[r]
	}
}

// steadiness is by how much light changes about a face, stops.
func steadiness(at *lit) *float64 {
	var near []float64
	for _, c := range at[atNear:] {
		near = append(near, c.Y())
	}
	return meter.SteadinessOf(near)
}

// with is the light at the places once a lamp has changed.
func (l *lamp) with(o *option, at *lit) {
	more := l.more(o.out)
	for p := range at {
		at[p] = at[p].Add(l.at[p].Times(more))
	}
}

// Words word what is done to a light: "2 soft: level 22 %, was 14 %; add 1/4 CTO".
func (c *Change) Words() string {
	var all []string
	switch {
	case c.Level == c.Was:
	case c.Level == 0:
		all = append(all, "off, was "+unit.FormatPercent(c.Was))
	default:
		all = append(all, fmt.Sprintf("level %s, was %s", unit.FormatPercent(c.Level), unit.FormatPercent(c.Was)))
	}
	if c.White != nil {
		white := "set it to " + unit.FormatKelvin(c.White.Kelvin)
		if duv := unit.FormatDuv(c.White.Duv); duv != "0" {
			white += ", Duv " + duv
		}
		all = append(all, white)
	}
	if c.Bare {
		all = append(all, "take its gels off")
	}
	if len(c.Gels) > 0 {
		all = append(all, "add "+strings.Join(c.Gels, " + "))
	}
	if len(c.Scrims) > 0 {
		all = append(all, "add "+strings.Join(term.Words(c.Scrims), " + ")+" scrim")
	}
	return c.Numbered + ": " + strings.Join(all, "; ")
}
