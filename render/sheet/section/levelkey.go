package section

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/layout"
)

// most is how many contours a map may have before the faintest are left out. It holds every stop within five
// of the working stop, which are those that have a tint of their own: what is left out changes no tint.
const most = 11

// LevelsOf are the contours of the maps: one a stop, anchored at the working stop, whichever set-up they are of, so that
// as much light has one tint on all pages of a run.
func LevelsOf(in *Input) []carto.Level {
	working := workingLux(in.Setup)
	low, high := in.lightSpan()
	return carto.StopLevels(working, low, high, most)
}

// lightSpan is from where to where the light of the maps goes, lx, but for specks.
func (in *Input) lightSpan() (low, high float64) {
	low = math.Inf(1)
	for _, f := range slices.Concat(in.Maps(), in.SmallMaps()) {
		l, h := carto.Span(f.Grid, 0.002)
		low, high = math.Min(low, l), math.Max(high, h)
	}
	return low, high
}

// Label letters a contour.
func (c Units) Label(l carto.Level) string {
	if l.Working && c.Light == carto.TStop && c.Written != "" {
		return c.Written
	}
	return l.Label(c.Light, c.Stop)
}

// LevelKey is the key of the map's tints and contours.
func (c Report) LevelKey() *Section {
	if len(c.In.Maps()) == 0 {
		return &Section{}
	}
	s := Section{Title: c.In.Maps()[0].Name, Words: c.elsewhere(c.In.Maps())}
	if k := KeyOf(c.In, c.In.Maps()...); len(k.All) > 0 {
		s.Figure = LevelFigure
		s.textOnly = []string{"contours at " + c.levelList(k.Shown())}
		s.Words = append(s.Words, c.keyWords(k.Shown()))
		if IsOfColours(c.In) {
			words, levels := c.hueWords()
			s.textOnly = NonEmpty(levels)
			s.Words = append([]string{"tone by the stop, in " + c.LevelMeasure()}, words...)
		}
	} else {
		s.Words = append(s.Words, "No light reaches it, or the exposure gives no working stop.")
	}
	if f := coarsest(c.In); f != nil {
		s.Words = append(s.Words, fmt.Sprintf("The set is large: the map has a point every %s, and finer patterns are lost.", c.Length(f.Grid.Step)))
	}
	s.Without = NotInMaps(c.In)
	return &s
}

// insetMap is the key of the second map.
func (c Report) insetMap() *Section {
	maps := c.In.SmallMaps()
	if len(maps) == 0 || len(LevelsOf(c.In)) == 0 {
		return &Section{}
	}
	return &Section{
		Title:    maps[0].Name,
		Rank:     layout.Other,
		Figure:   SmallMapFigure,
		textOnly: []string{"contours at " + c.levelList(KeyOf(c.In, maps...).Shown())},
		Words:    append(c.elsewhere(maps), "in "+c.LevelMeasure()),
		Without:  notIncludedIn(maps),
	}
}

// elsewhere says how high a map lies on floors where that is not as high as on the first.
func (c Report) elsewhere(maps []*Field) []string {
	own := c.Length(maps[0].Over)
	var heights []string
	for _, f := range maps {
		if high := c.Length(f.Over); high != own && !slices.Contains(heights, high) {
			heights = append(heights, high)
		}
	}
	if len(heights) == 0 {
		return nil
	}
	return []string{"on other floors at " + strings.Join(heights, ", ")}
}

// NotInMaps says what the maps that are drawn to scale leave out.
func NotInMaps(in *Input) []string { return notIncludedIn(in.Maps()) }

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
	for _, f := range in.Maps() {
		if f.Coarse && (most == nil || f.Grid.Step > most.Grid.Step) {
			most = f
		}
	}
	return most
}

// Key is what the key of a map shows: of the levels of the sheet, those that the map reaches.
type Key struct {
	All      []carto.Level
	From, To int // all[from:to] are shown
}

// Shown are the levels that the map reaches.
func (k Key) Shown() []carto.Level { return k.All[k.From:k.To] }

// KeyOf is the key of some maps. A level between two values of a map has a line on it; a map all in
// one band has the key of the whole sheet.
func KeyOf(in *Input, fields ...*Field) Key {
	low, high := math.Inf(1), 0.0
	for _, f := range fields {
		l, h := carto.Span(f.Grid, 0)
		low, high = math.Min(low, l), math.Max(high, h)
	}
	k := Key{All: LevelsOf(in)}
	for k.From < len(k.All) && k.All[k.From].Lux < low {
		k.From++
	}
	for k.To = len(k.All); k.To > k.From && k.All[k.To-1].Lux > high; {
		k.To--
	}
	if k.From == k.To {
		k.From, k.To = 0, len(k.All)
	}
	return k
}

// levelList names the contours, lowest first.
func (c Units) levelList(levels []carto.Level) string {
	var words []string
	for _, l := range levels {
		words = append(words, c.Label(l))
	}
	return strings.Join(words, ", ")
}

// keyWords say what the lines are, on one line where they can: the head of the sheet says which the working stop is.
func (c Report) keyWords(levels []carto.Level) string {
	working := WorkingStop(c.In.Setup)
	s := "in " + c.LevelMeasure() + ", one line a stop"
	if c.Light == carto.Stops {
		s = "in stops from " + working
	}
	switch {
	case slices.ContainsFunc(levels, func(l carto.Level) bool { return l.Working }):
		return s + "; heavy: " + working
	case exceeded(c.In):
		return s + "; " + working + " exceeded everywhere"
	}
	return s + "; " + working + " not reached"
}

// exceeded says whether the maps have more light everywhere than the working stop asks for.
func exceeded(in *Input) bool {
	low := math.Inf(1)
	for _, f := range in.Maps() {
		l, _ := carto.Span(f.Grid, 0)
		low = math.Min(low, l)
	}
	return low > workingLux(in.Setup)
}

// LevelMeasure names the measure of the levels.
func (c Units) LevelMeasure() string {
	for _, w := range levelWords() {
		if w.unit == c.Light {
			return w.says
		}
	}
	return ""
}

// levelWord is a word for what contours are lettered in.
type levelWord struct {
	word string
	unit carto.Unit
	says string // under the level key
}

// levelWords are the words that there are, the default for metres first.
func levelWords() []levelWord {
	return []levelWord{
		{luxWord, carto.Lux, luxWord},
		{footcandleWord, carto.Footcandles, footcandleWord},
		{"stop", carto.TStop, "T-stop"},
		{"stops", carto.Stops, "stops from the working stop"},
	}
}

// LevelUnit is what contours are lettered in by a word.
func LevelUnit(word string) (u carto.Unit, ok bool) {
	for _, l := range levelWords() {
		if l.word == word {
			return l.unit, true
		}
	}
	return u, false
}

// LevelNames lists the words for what contours are lettered in.
func LevelNames() []string {
	var names []string
	for _, l := range levelWords() {
		names = append(names, l.word)
	}
	return names
}
