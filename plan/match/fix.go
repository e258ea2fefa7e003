package match

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Fix is the cheapest change of the lights of a set-up that brings a face to how it looks in another.
type Fix struct {
	Changes []Change
	Closes  []Row         // what it brings within what passes
	After   [Rows]float64 // how far each row then lies apart, stops or mired, of those that light alone decides; no number where nothing is known
	Spoils  []string      // the other people whose key side it moves by more than a third of a stop, or whose colour
}

// byLight are the rows that follow from the light on the two sides of a face.
var byLight = [...]Row{Key, Fill, Contrast, KeyColour, FillColour}

// goals are what is asked of a fix, the most first: where no change reaches all, the sides without their colours, the key side without the fill, the
// colours alone.
var goals = [...][]Row{byLight[:], {Key, Fill, Contrast}, {Key, KeyColour}, {Key}, {KeyColour, FillColour}, {KeyColour}}

// margin is the share of what passes that a fix may leave: levels are set as they print.
const margin = 0.9

// FixTo gives the cheapest change that brings a look to another; nil where nothing that the lights decide is off, or none of the changes that are tried
// closes any of it. others are the looks of the same set-up.
func (l *Look) FixTo(from *Look, others []Look) *Fix {
	off := slices.DeleteFunc(slices.Clone(byLight[:]), func(r Row) bool { return !l.Off(from, r) })
	if len(off) == 0 {
		return nil
	}
	known := slices.DeleteFunc(slices.Clone(byLight[:]), func(r Row) bool { return l.Differs(from, r) == nil || l.Struck[r] || from.Struck[r] })
	s := search{look: l, from: from, known: known}
	s.prepare(slices.ContainsFunc(off, Row.InMired))
	for _, goal := range goals {
		s.goal = slices.DeleteFunc(slices.Clone(goal), func(r Row) bool { return !slices.Contains(known, r) })
		if !slices.ContainsFunc(s.goal, func(r Row) bool { return slices.Contains(off, r) }) {
			continue
		}
		s.spans()
		if best := s.best(); best != nil {
			return s.fix(best, off, others)
		}
	}
	return nil
}

// search looks for the cheapest options of one lamp or of two.
type search struct {
	look, from *Look
	known      []Row     // of those that light decides, the ones that are known on both sides
	before     []float64 // how far each of them is off, in shares of what passes
	goal       []Row
	options    [][]option // by lamp
	settings   [][]option // those of its level alone, which are tried with all options of another lamp
	key, fill  span       // what may come to a side more, lx: pairs of options are many, and most are out of it
}

// span is what of a figure may be, least and most.
type span struct{ least, most float64 }

func (s span) holds(v float64) bool { return s.least <= v && v <= s.most }

// spans says how much more light may come to the two sides, for the goal, or so that they lie no farther off than they do.
func (s *search) spans() {
	of := func(r Row, now float64) span {
		i := slices.Index(s.known, r)
		if i < 0 {
			return span{math.Inf(-1), math.Inf(1)}
		}
		most := max(1, s.before[i])
		if slices.Contains(s.goal, r) {
			most = margin
		}
		wanted := now * math.Exp2(*s.from.Figures[r]-*s.look.Figures[r])
		return span{wanted*math.Exp2(-most*PassStops) - now - tiny, wanted*math.Exp2(most*PassStops) - now + tiny}
	}
	s.key, s.fill = of(Key, s.look.key.sum.Y()), of(Fill, s.look.fill.sum.Y())
}

// tiny is the light, lx, that sums may differ by in rounding.
const tiny = 1e-6

// prepare lists what can be done to each lamp.
func (s *search) prepare(colours bool) {
	var gap *colour.Gap
	if colours {
		gap = s.gap()
	}
	l := s.look
	for _, r := range s.known {
		s.before = append(s.before, s.off(r, l.key, l.fill))
	}
	for i := range l.lamps {
		one := &l.lamps[i]
		share := one.key.Times(one.out).Y() / l.key.sum.Y()
		s.options = append(s.options, one.options(gap, share))
		s.settings = append(s.settings, one.options(nil, share))
	}
}

// gap is how the light on the key side, or on the fill side where that is farther off, lies from what is wanted there.
func (s *search) gap() *colour.Gap {
	var worst *colour.Gap
	for _, pair := range [...][3]colour.RGB{{s.look.key.sum, s.from.key.sum}, {s.look.fill.sum, s.from.fill.sum}} {
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
			keep(s.try([]int{i}, &s.options[i][a]))
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
						keep(s.try([]int{i, j}, one, two))
					}
				}
			}
		}
	}
	return best
}

// holds says whether the light of two options is as much as may come to both sides.
func (s *search) holds(one, two *option) bool {
	return s.key.holds(one.key+two.key) && s.fill.holds(one.fill+two.fill)
}

// try says how options for some lamps do.
func (s *search) try(lamps []int, options ...*option) done {
	d := done{lamps: lamps, options: options}
	key, fill := s.look.key, s.look.fill
	for i, o := range options {
		d.cost += o.cost
		key, fill = s.look.lamps[lamps[i]].with(o, key, fill)
	}
	for i, r := range s.known { // stops first: a colour takes longer to find
		off := s.off(r, key, fill)
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

// off is how far a row lies apart with other light on the two sides, in shares of what passes.
func (s *search) off(r Row, key, fill side) float64 {
	return math.Abs(s.apart(r, key, fill)) / r.pass()
}

// apart is the same in stops or mired.
func (s *search) apart(r Row, key, fill side) float64 {
	is := func(v *float64) float64 {
		if v == nil || s.from.Figures[r] == nil {
			return math.NaN()
		}
		return *v - *s.from.Figures[r]
	}
	ratio := func(is, was colour.RGB) float64 { return lens.Stops(is.Y() / was.Y()) }
	from := s.look
	switch r {
	case Key:
		return *from.Figures[Key] + ratio(key.sum, from.key.sum) - *s.from.Figures[Key]
	case Fill:
		return *from.Figures[Fill] + ratio(fill.sum, from.fill.sum) - *s.from.Figures[Fill]
	case Contrast:
		return ratio(key.sum, fill.sum) - *s.from.Figures[Contrast]
	case KeyColour:
		return is(from.mired(key.sum))
	case FillColour:
		return is(from.mired(fill.sum))
	}
	return math.NaN()
}

// fix is the best with what it does: what it closes, what is left, and whom it spoils.
func (s *search) fix(best *done, off []Row, others []Look) *Fix {
	f := &Fix{}
	key, fill := s.look.key, s.look.fill
	for i, o := range best.options {
		f.Changes = append(f.Changes, o.change)
		key, fill = s.look.lamps[best.lamps[i]].with(o, key, fill)
	}
	for r := range f.After {
		f.After[r] = math.NaN()
	}
	for _, r := range byLight {
		if s.look.Figures[r] == nil || s.from.Figures[r] == nil {
			continue
		}
		f.After[r] = s.apart(r, key, fill)
		if slices.Contains(off, r) && math.Abs(f.After[r]) <= r.pass() {
			f.Closes = append(f.Closes, r)
		}
	}
	for i := range others {
		if o := &others[i]; o.Person != s.look.Person && !slices.Contains(f.Spoils, o.Person) && o.moved(f.Changes, best) {
			f.Spoils = append(f.Spoils, o.Person)
		}
	}
	return f
}

// with is the light on two sides once a lamp has changed.
func (l *lamp) with(o *option, key, fill side) (side, side) {
	more := l.more(o.out)
	key.sum, fill.sum = key.sum.Add(l.key.Times(more)), fill.sum.Add(l.fill.Times(more))
	return key, fill
}

// moved says whether changes move the key side of another face by more than what passes.
func (l *Look) moved(changes []Change, d *done) bool {
	key, fill := l.key, l.fill
	for i, c := range changes {
		for k := range l.lamps {
			if l.lamps[k].name == c.Light {
				key, fill = l.lamps[k].with(d.options[i], key, fill)
			}
		}
	}
	was, is := l.Figures[KeyColour], l.mired(key.sum)
	return math.Abs(lens.Stops(key.sum.Y()/l.key.sum.Y())) > PassStops || was != nil && is != nil && math.Abs(*is-*was) > PassMired
}

// Words word what is done to a light: "2 soft: level 22 %, was 14 %; add 1/4 CTO".
func (c *Change) Words() string {
	var all []string
	if c.Level != c.Was {
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
