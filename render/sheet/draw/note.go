package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// note is lettering beside a mark on the plan, in forms from the fullest to the shortest.
type note struct {
	object string
	layer  ink.Layer
	style  style
	forms  []string
	anchor r2.Vec   // mm
	body   r2.Box   // of the mark, mm
	shape  []r2.Vec // of the mark, where it fills its box badly: a leader goes on to it
	toward *r2.Vec
	weight float64
	leader float64 // how far it may stand off where no form fits beside the mark; 0: not at all
	led    bool    // it need not fit beside the mark before it may stand off

	struck []string // figures of the forms that are struck through
}

// label offers every form beside the mark, then every form at the end of a leader; where the note is
// led, either from the first.
func (n *note) label(Pad) carto.Label {
	l := carto.Label{Anchor: n.anchor, Body: n.body, Weight: n.weight, Toward: n.toward}
	leaders := []float64{0, n.leader}[:min(2, 1+int(n.leader))]
	if n.led {
		leaders = leaders[1:]
	}
	for _, leader := range leaders {
		for _, s := range n.forms {
			l.Forms = append(l.Forms, carto.Form{Size: n.style.boxOf(s), Leader: leader})
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
	base := at.Box.Min.Y + n.style.face.Descent(n.style.em())
	from, words := r2.Vec{X: at.Box.Min.X, Y: base}, n.forms[at.Form%len(n.forms)]
	p.turned(from, words, n.style, ink.Left, 0, &p.Look.Paper)
	p.strikeFigures(from, words, n.style, n.struck)
}

// placeable is anything that the placer finds a place for.
type placeable interface {
	label(p Pad) carto.Label
	draw(p Pad, at carto.Placement)
	tells(at carto.Placement) bool // it says what it is about, not a number alone
	full(at carto.Placement) bool  // it says all that it has to say
}

func (n *note) tells(at carto.Placement) bool { return at.On }

func (n *note) full(at carto.Placement) bool { return at.On && at.Form%len(n.forms) == 0 }
