package draw

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// note is lettering beside a mark on the plan, in forms from the fullest to the shortest.
type note struct {
	object      string
	layer       ink.Layer
	style       style
	forms       []noteForm
	anchor      r2.Vec   // mm
	body        r2.Box   // of the mark, mm
	shape       []r2.Vec // of the mark, where it fills its box badly: a leader goes on to it
	toward      *r2.Vec
	priority    float64
	linePenalty float64
	leader      float64 // how far it may stand off where no form fits beside the mark; 0: not at all
	led         bool    // it need not fit beside the mark before it may stand off

	struck        []string // figures of the forms that are struck through
	reportMissing bool     // the plan says so where it has to leave it out
}

// noteForm is what a note says, with what explains it on a line below, in the lettering of the plan; "" for none.
type noteForm struct{ words, below string }

// noteForms are notes of one line.
func noteForms(lines ...string) []noteForm {
	var all []noteForm
	for _, s := range lines {
		all = append(all, noteForm{words: s})
	}
	return all
}

// size is the room that a form takes.
func (n *note) size(p Pad, f noteForm) r2.Vec {
	size := n.style.boxOf(f.words)
	if f.below != "" {
		st := p.plan()
		size.X, size.Y = math.Max(size.X, st.Width(f.below)), size.Y+st.high()
	}
	return size
}

// label offers every form beside the mark, then every form at the end of a leader; where the note is
// led, either from the first.
func (n *note) label(p Pad) carto.Label {
	l := carto.Label{Anchor: n.anchor, Body: n.body, Priority: n.priority, LinePenalty: n.linePenalty, Toward: n.toward}
	leaders := []float64{0, n.leader}[:min(2, 1+int(n.leader))]
	if n.led {
		leaders = leaders[1:]
	}
	for _, leader := range leaders {
		for _, s := range n.forms {
			l.Forms = append(l.Forms, carto.Form{Size: n.size(p, s), Leader: leader})
		}
	}
	return l
}

func (n *note) draw(p Pad, at carto.Placement) {
	if !at.On {
		return
	}
	p = p.On(n.layer).of(n.object, "")
	if at.Leads() {
		p.Line(Hair, p.Look.Ink, at.Leader[0], touch(at.Leader[0], n.anchor, n.shape, at.Leader[1]))
	}
	f := n.forms[at.Form%len(n.forms)]
	foot := at.Box.Min.Y
	if st := p.plan(); f.below != "" {
		n.letter(p, r2.Vec{X: at.Box.Min.X, Y: foot + st.face.Descent(st.em())}, f.below, st)
		foot += st.high()
	}
	n.letter(p, r2.Vec{X: at.Box.Min.X, Y: foot + n.style.face.Descent(n.style.em())}, f.words, n.style)
}

// letter letters a line of the note.
func (n *note) letter(p Pad, from r2.Vec, words string, st style) {
	p.turned(from, words, st, ink.Left, 0, &p.Look.Paper)
	p.strikeFigures(from, words, st, n.struck)
}

// placeable is anything that the placer finds a place for.
type placeable interface {
	label(p Pad) carto.Label
	draw(p Pad, at carto.Placement)
	explains(at carto.Placement) bool // it says what it is about, not a number alone
	full(at carto.Placement) bool     // it says all that it has to say
	whole(at carto.Placement) bool    // it has all lines, if shorter ones
	missed(at carto.Placement) string // what it is, where it has no place and that must be said
}

func (n *note) explains(at carto.Placement) bool { return at.On }

func (n *note) full(at carto.Placement) bool { return at.On && at.Form%len(n.forms) == 0 }

func (n *note) whole(at carto.Placement) bool {
	return at.On && (n.forms[at.Form%len(n.forms)].below != "" || n.forms[0].below == "")
}

func (n *note) missed(at carto.Placement) string {
	if at.On || !n.reportMissing {
		return ""
	}
	return strings.TrimPrefix(n.object, "reading:")
}
