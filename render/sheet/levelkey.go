package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/render/carto"
)

// most is how many contours a map may have before the faintest are left out.
const most = 8

// levels are the contours of the maps: one a stop, anchored at the working stop. Both maps have the
// same, so that a tint means one thing on a sheet.
func levelsOf(in *Input) []carto.Level {
	low, high := math.Inf(1), 0.0
	span := func(f *Field) {
		l, h := carto.Span(f.Grid, 0.002)
		low, high = math.Min(low, l), math.Max(high, h)
	}
	for _, f := range in.fields() {
		span(f)
	}
	for _, f := range in.insets() {
		span(f)
	}
	return carto.Stairs(workingLux(in.Setup), low, high, most)
}

// label letters a contour.
func (c Units) label(l carto.Level) string {
	return l.Label(c.Light, c.Stop)
}

// levelKey is the key of the map's tints and contours.
func (c Report) levelKey() *section {
	if len(c.in.fields()) == 0 {
		return &section{}
	}
	s := section{title: c.in.fields()[0].Name, words: c.elsewhere(c.in.fields())}
	if k := keyOf(c.in, c.in.fields()...); len(k.all) > 0 {
		s.figure = levelFigure
		s.said = []string{"contours at " + c.levelList(k.shown())}
		s.words = append(s.words, c.keyWords(k.shown()))
	} else {
		s.words = append(s.words, "No light reaches it, or the exposure gives no working stop.")
	}
	if f := coarsest(c.in); f != nil {
		s.words = append(s.words, fmt.Sprintf("The set is large: the map is of points %s apart, and finer patterns are lost.", c.length(f.Grid.Step)))
	}
	s.lacks = notInMaps(c.in)
	return &s
}

// insetMap is the key of the second map.
func (c Report) insetMap() *section {
	maps := c.in.insets()
	if len(maps) == 0 || len(levelsOf(c.in)) == 0 {
		return &section{}
	}
	return &section{
		title:  maps[0].Name,
		rank:   other,
		figure: smallMapFigure,
		said:   []string{"contours at " + c.levelList(keyOf(c.in, maps...).shown())},
		words:  append(c.elsewhere(maps), "in "+c.levelSays()),
		lacks:  notIncludedIn(maps),
	}
}

// elsewhere says how high a map lies on floors where that is not as high as on the first.
func (c Report) elsewhere(maps []*Field) []string {
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
func notInMaps(in *Input) []string { return notIncludedIn(in.fields()) }

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
func coarsest(in *Input) *Field {
	var most *Field
	for _, f := range in.fields() {
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
func keyOf(in *Input, fields ...*Field) key {
	low, high := math.Inf(1), 0.0
	for _, f := range fields {
		l, h := carto.Span(f.Grid, 0)
		low, high = math.Min(low, l), math.Max(high, h)
	}
	k := key{all: levelsOf(in)}
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
func (c Units) levelList(levels []carto.Level) string {
	var words []string
	for _, l := range levels {
		words = append(words, c.label(l))
	}
	return strings.Join(words, ", ")
}

// keyWords say what the lines are.
func (c Report) keyWords(levels []carto.Level) string {
	s := "in " + c.levelSays() + ", one line a stop"
	for _, l := range levels {
		if l.Working {
			return s + fmt.Sprintf("; heavy: the working stop, %s", workingStop(c.in.Setup))
		}
	}
	return s + fmt.Sprintf("; the working stop, %s, is not reached", workingStop(c.in.Setup))
}

// levelSays names the measure of the levels.
func (c Units) levelSays() string {
	for _, w := range levelWords {
		if w.unit == c.Light {
			return w.says
		}
	}
	return ""
}
