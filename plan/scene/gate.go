package scene

import (
	"cmp"
	"slices"
	"strconv"
	"unicode"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Cut is one straight edge in the image of a projection spot: as deep as it says, or where a thing ends.
type Cut struct {
	Angle float64        // of the side that it comes from, degrees clockwise from the top as seen from behind
	Depth Given[float64] // share of the width of the image
	To    Ref            // an opening, a piece of grip or of furniture; no name where Depth says it
	Span  source.Span
}

// Breakup is a pattern in the gate of a projection spot.
type Breakup struct {
	Open  float64        // share of the gate
	Grain Given[float64] // share of the width of the image
	Seed  Given[int]
	Span  source.Span
}

var (
	cutTable = tableOf("cut", "One straight edge in the image of a projection spot.", []string{"depth", "to"},
		figure("angle", bearing, func(v *Cut) *float64 { return &v.Angle },
			"The side that it comes from, clockwise from behind: 0 cuts the top, 90 the right.", "0"),
		value("depth", quantity("a depth", "30 %", percents, between(0, 1)), func(v *Cut) *Given[float64] { return &v.Depth },
			"How much of the width of the image it covers.", "30 %", ""),
		into("to", ref("an opening, a piece of grip or of furniture", "street"), func(v *Cut, to Ref, _ *source.Node) { v.To = to },
			"Its edge lies where this ends on that side: an opening, a card, a piece of furniture.", "street", ""),
	)
	breakupTable = tableOf("breakup", "A pattern in the gate of a projection spot, as of leaves.", nil,
		figure("open", quantity("an open share", "40 %", percents, between(0.01, 1)), func(v *Breakup) *float64 { return &v.Open },
			"How much of the gate is open.", "").needed(),
		value("grain", quantity("a grain", "10 %", percents, between(0.02, 1)), func(v *Breakup) *Given[float64] { return &v.Grain },
			"The width of a hole or of what lies between two, of the image.", "8 %", unit.FormatPercent(DefaultGrain)),
		value("seed", source.Int("a seed", 1, 9999), func(v *Breakup) *Given[int] { return &v.Seed },
			"Another number is another pattern.", "2", strconv.Itoa(DefaultSeed)),
	)
)

// lightGate are the keys of the gate and the lens of a head.
func lightGate() []entry[Light] {
	cut := withNode(mapOf("a cut", "{angle: 0, depth: 30 %}", cutTable), func(v *Cut, n *source.Node) { v.Span = n.Span })
	breakup := withNode(mapOf("a breakup", "{open: 40 %, grain: 10 %}", breakupTable), func(v *Breakup, n *source.Node) { v.Span = n.Span })
	return []entry[Light]{
		into("focus", focus, func(l *Light, v focusing, n *source.Node) {
			if v.zoom != nil {
				l.Focus, l.FocusOfZoom = Given[float64]{Value: *v.zoom, Set: true, Span: n.Span}, v.ofZoom
			}
			if v.edge != nil {
				l.Edge = Given[float64]{Value: *v.edge, Set: true, Span: n.Span}
			}
		}, "Of a zoom, from its narrowest beam to its widest: spot, flood, or a share. Of a projection spot the edge of its image: sharp, soft, or a share. Of one that zooms both: `[40 %, soft]`.",
			"40 %", string(DefaultFocus)+"; an edge as soft as that of the field is known to be"),
		into("cuts", source.ListOf("a list of cuts", "[{angle: 0, depth: 30 %}]", cut, 1, maxCuts),
			func(l *Light, v []Cut, _ *source.Node) { l.Cuts = v },
			"Up to four cuts of a projection spot.", "[{angle: 0, depth: 30 %}]", "none"),
		into("breakup", breakup, func(l *Light, v Breakup, _ *source.Node) { l.Breakup = &v },
			"A pattern in its gate.", "{open: 40 %, grain: 10 %}", "none"),
	}
}

// maxCuts is how many cuts a gate has room for.
const maxCuts = 4

// focusing is what a focus says: where a zoom stands, how soft an edge is, or both. A share alone is of whichever the head has;
// a word, or one of two, is of its own.
type focusing struct {
	zoom, edge *float64
	ofZoom     bool // whether zoom is of a zoom alone
}

// focus reads a word, a share, or a list of a zoom and an edge.
var focus = either("a focus", "40 %", ofKind(source.List),
	source.PairOf("a zoom and an edge", "[40 %, soft]", zoomFocus, edgeFocus, func(zoom, edge focusing) focusing {
		return focusing{zoom: zoom.zoom, edge: cmp.Or(edge.edge, edge.zoom), ofZoom: true}
	}),
	either("a focus", "40 %", isFocusWord(term.Focuses...), focusWord("a focus", term.Focuses...), focusShare("a focus")))

var (
	zoomFocus = either("a zoom", "40 %", notNumber, focusWord("a zoom", term.Spot, term.Flood), focusShare("a zoom"))
	edgeFocus = either("an edge", "soft", notNumber, focusWord("an edge", term.Sharp, term.Soft), focusShare("an edge"))
)

// focusWords are the ends of a zoom and of an edge, as shares of the way.
var focusWords = map[term.Focus]focusing{
	term.Spot: {zoom: share(0), ofZoom: true}, term.Flood: {zoom: share(1), ofZoom: true}, term.Sharp: {edge: share(0)}, term.Soft: {edge: share(1)},
}

func share(v float64) *float64 { return &v }

// focusWord reads one of some words.
func focusWord(what string, words ...term.Focus) source.Reader[focusing] {
	return source.Converted(source.Vocabulary(what, words), func(end term.Focus) focusing { return focusWords[end] })
}

// focusShare reads a share of the way, as that of a zoom.
func focusShare(what string) source.Reader[focusing] {
	return source.Converted(quantity(what, "40 %", percents, between(0, 1)), func(v float64) focusing { return focusing{zoom: share(v)} })
}

func isFocusWord(words ...term.Focus) func(n *source.Node) bool {
	return func(n *source.Node) bool { return slices.Contains(words, term.Focus(n.Text)) }
}

// notNumber says whether a value begins like a word.
func notNumber(n *source.Node) bool {
	return n.Kind == source.Scalar && n.Text != "" && unicode.IsLetter([]rune(n.Text)[0])
}
