package scene

import (
	"fmt"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// Dressing is one curtain or blind of an opening.
type Dressing struct {
	Cloth     Ref              // of a curtain
	Drawn     Given[[2]Extent] // how much each half covers, from the left end and from the right as seen from inside
	In        Given[float64]   // m from the inside face of the wall into the room
	Top, Foot Given[float64]   // m above the floor of the room
	Slat      float64          // the width of the slats of a blind, m; 0 of a curtain
	Tilt      float64          // of the slats, degrees: 0 is flat and open, up to 90 the room's edge is the lower one
	Drop      Given[float64]   // share of the opening that a blind is let down over, from its head
	Span      source.Span
}

// Extent is a length along an opening: in metres, or as a share of it.
type Extent struct {
	Metres, Share float64
	IsShare       bool
}

// Of is the length along an opening of a width, m.
func (e Extent) Of(width float64) float64 {
	if e.IsShare {
		return e.Share * width
	}
	return e.Metres
}

// extent reads a length, or a share with its sign: 0.4, 60 %.
var extent = scalar("how far a curtain is drawn", "60 %", map[string]any{"type": numberOrText},
	func(text string, n *source.Node, c *source.Context) (Extent, error) {
		if strings.HasSuffix(text, "%") {
			share, err := unit.ParsePercent(text)
			if err == nil {
				err = between(0, 1).check("a share drawn", text, share, func(v float64) string { return fmt.Sprintf("%g %%", 100*v) })
			}
			return Extent{Share: share, IsShare: true}, err
		}
		feet := c.Feet != nil && c.Feet(n.Span.File)
		long, err := unit.ParseLength(text, feet)
		if err == nil {
			err = between(0, maxRoom).check("a length drawn", text, long, func(v float64) string { return showLength(v, feet) })
		}
		return Extent{Metres: long}, err
	})

var (
	edgeHeight    = quantity("a height", "0.3", lengths, between(0, maxHeight))
	dressingTable = tableOf("dressing", "What hangs in an opening.", []string{"cloth", "blind"},
		into("cloth", catalogueNameReader("a cloth", "sheer"), func(d *Dressing, v Ref, n *source.Node) { d.Cloth, d.Span = v, n.Span },
			"A curtain, by its cloth.", "sheer", ""),
		into("blind", quantity("a slat", "50 mm", lengths, between(minSlat, 0.5)),
			func(d *Dressing, v float64, n *source.Node) { d.Slat, d.Span = v, n.Span },
			"A blind, by the width of its slats.", "50 mm", ""),
		value("drawn", pair("how far a curtain is drawn", "[60 %, 60 %]", extent), func(d *Dressing) *Given[[2]Extent] { return &d.Drawn },
			"How much of the opening each half covers, from the left and from the right end as seen from inside: a length, or a share.",
			"[0.4, 60 %]", "[50 %, 50 %], closed").of("cloth"),
		value("in", quantity("a distance", "0.1", lengths, between(0, 2)), func(d *Dressing) *Given[float64] { return &d.In },
			"How far before the wall it hangs, into the room.", "0.1", inMetres(DefaultCurtainIn, 2)).of("cloth"),
		value("top", edgeHeight, func(d *Dressing) *Given[float64] { return &d.Top },
			"Its upper edge, above the floor.", "2.3", inMetres(DefaultCurtainLap, 1)+" over the opening").of("cloth"),
		value("bottom", edgeHeight, func(d *Dressing) *Given[float64] { return &d.Foot },
			"Its lower edge, above the floor.", "0.2", inMetres(DefaultCurtainLap, 1)+" under the opening").of("cloth"),
		into("tilt", quantity("a tilt of slats", "45", degrees, between(-90, 90)),
			func(d *Dressing, v float64, _ *source.Node) { d.Tilt = v },
			"Of the slats: 0 is flat and open; above, the room's edge is the lower one.", "45", "0").of("blind"),
		value("drop", quantity("a share", "80 %", percents, between(0.01, 1)), func(d *Dressing) *Given[float64] { return &d.Drop },
			"How much of the opening it is let down over, from the head.", "80 %", "100 %").of("blind"),
	)
	dressingList = source.ListOf("a dressing", "[{cloth: sheer}]", mapOf("a cloth or a blind", "{cloth: sheer}", dressingTable), 1, 5)
)

// minSlat is the narrowest slat, m.
const minSlat = 0.01

// takeDressing keeps what hangs in an opening.
func (o *Opening) takeDressing(v []Dressing) {
	o.Dressing = v
	for _, d := range v {
		o.noteCatalogueName("dressing", "cloth", d.Cloth)
	}
}
