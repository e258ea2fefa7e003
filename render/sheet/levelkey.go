package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// most is how many contours a map may have before the faintest are left out.
const most = 8

// levels are the contours of the maps: one a stop, anchored at the working stop. Both maps have the
// same, so that a tint means one thing on a sheet.
func (c *composer) levels() []carto.Level {
	low, high := math.Inf(1), 0.0
	span := func(f *Field) {
		l, h := carto.Span(f.Grid, 0.002)
		low, high = math.Min(low, l), math.Max(high, h)
	}
	for _, f := range c.in.fields() {
		span(f)
	}
	for _, f := range c.in.insets() {
		span(f)
	}
	return carto.Stairs(c.working(), low, high, most)
}

// label letters a contour.
func (c *composer) label(l carto.Level) string {
	return l.Label(c.wish.levels, c.in.Setup.Exposure.Stop.N)
}

// levelKey is the key of the map's tints and contours.
func (c *composer) levelKey() *section {
	if len(c.in.fields()) == 0 {
		return &section{}
	}
	s := section{title: c.in.fields()[0].Name, words: c.elsewhere(c.in.fields())}
	if k := c.keyOf(c.in.fields()...); len(k.all) > 0 {
		s.drawn = []row{c.keyBar(k)}
		s.said = []string{"contours at " + c.levelList(k.shown())}
		s.words = append(s.words, c.keyWords(k.shown()))
	} else {
		s.words = append(s.words, "No light reaches it, or the exposure gives no working stop.")
	}
	if f := c.coarsest(); f != nil {
		s.words = append(s.words, fmt.Sprintf("The set is large: the map is of points %s apart, and finer patterns are lost.", c.length(f.Grid.Step)))
	}
	s.lacks = c.notInMaps()
	return &s
}

// elsewhere says how high a map lies on floors where that is not as high as on the first.
func (c *composer) elsewhere(maps []*Field) []string {
	own := c.length(maps[0].Over)
	var heights []string
	for _, f := range maps {
		if high := c.length(f.Over); high != own && !slices.Contains(heights, high) {
			heights = append(heights, high)
		}
	}
	if len(heights) == 0 {
		return nil
	}
	return []string{"on other floors at " + strings.Join(heights, ", ")}
}

// notInMaps says what the maps that are drawn to scale leave out.
func (c *composer) notInMaps() []string { return notIncludedIn(c.in.fields()) }

// notIncludedIn says what some maps leave out, each thing once.
func notIncludedIn(maps []*Field) []string {
	var all []string
	for _, f := range maps {
		for _, words := range f.notIncluded() {
			if !slices.Contains(all, words) {
				all = append(all, words)
			}
		}
	}
	return all
}

// coarsest is the map whose points are the farthest apart of those that are farther apart than usual, or nil.
func (c *composer) coarsest() *Field {
	var most *Field
	for _, f := range c.in.fields() {
		if f.Coarse && (most == nil || f.Grid.Step > most.Grid.Step) {
			most = f
		}
	}
	return most
}

// key is what the key of a map shows: of the levels of the sheet, those that the map reaches.
type key struct {
	all      []carto.Level
	from, to int // all[from:to] are shown
}

func (k key) shown() []carto.Level { return k.all[k.from:k.to] }

// keyOf is the key of some maps. A level between two values of a map has a line on it; a map all in
// one band has the key of the whole sheet.
func (c *composer) keyOf(fields ...*Field) key {
	low, high := math.Inf(1), 0.0
	for _, f := range fields {
		l, h := carto.Span(f.Grid, 0)
		low, high = math.Min(low, l), math.Max(high, h)
	}
	k := key{all: c.levels()}
	for k.from < len(k.all) && k.all[k.from].Lux < low {
		k.from++
	}
	for k.to = len(k.all); k.to > k.from && k.all[k.to-1].Lux > high; {
		k.to--
	}
	if k.from == k.to {
		k.from, k.to = 0, len(k.all)
	}
	return k
}

// levelList names the contours, lowest first.
func (c *composer) levelList(levels []carto.Level) string {
	var words []string
	for _, l := range levels {
		words = append(words, c.label(l))
	}
	return strings.Join(words, ", ")
}

// keyWords say what the lines are.
func (c *composer) keyWords(levels []carto.Level) string {
	s := "in " + c.levelSays() + ", one line a stop"
	for _, l := range levels {
		if l.Working {
			return s + fmt.Sprintf("; heavy: the working stop, %s", c.workingStop())
		}
	}
	return s + fmt.Sprintf("; the working stop, %s, is not reached", c.workingStop())
}

// levelSays names the measure of the levels.
func (c *composer) levelSays() string {
	for _, w := range levelWords {
		if w.unit == c.wish.levels {
			return w.says
		}
	}
	return ""
}

// keyBar is a strip of the tints with the contours across it. Where figures would touch, every
// other one is left out, never the working stop's.
func (c *composer) keyBar(k key) row {
	const barHigh, lift = 4.6, 1.0
	levels := k.shown()
	st := c.p.small().inked(c.p.look.Contour)
	return row{height: barHigh + 2*lift + st.cap + 4.4, draw: func(p pad, x, top float64) {
		bar := box(x, top-barHigh-lift, x+measure, top-lift)
		step := measure / float64(len(levels)+1)
		c.keyTints(p, bar, k)
		p.rect(bar, hair, p.look.Quiet, nil)
		every := c.keyPitch(levels, step)
		for i, l := range levels {
			at1 := x + step*float64(i+1)
			p.line(contourWidth(l), st.colour, at(at1, top-barHigh-2*lift), at(at1, top))
			if shown(levels, i, every) {
				lettered := st
				lettered.bold = l.Working
				p.text(at(at1, top-barHigh-2*lift-1.2-st.cap), c.label(l), lettered, ink.Centre)
			}
		}
	}}
}

// keyPitch is how many lines share a figure.
func (c *composer) keyPitch(levels []carto.Level, step float64) int {
	widest := 0.0
	for _, l := range levels {
		widest = math.Max(widest, c.p.small().strong().width(c.label(l)))
	}
	return max(1, int(math.Ceil((widest+1.2)/step)))
}

// shown says whether level i keeps its figure: every so many, counted from the working stop.
func shown(levels []carto.Level, i, every int) bool {
	return levels[i].Stop%every == 0
}

// contourWidth is the pen of a contour, mm.
func contourWidth(l carto.Level) float64 {
	if l.Working {
		return thick
	}
	return hair
}
