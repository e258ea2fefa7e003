package day

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// What holds sheets: common practice.
const sameSize = 0.03 // share by which a side may differ from that of a piece of the catalogue: 8 ft are sold as 2.4 m, and the other way round

// grip counts a piece of grip, its cloth, and what holds it.
func (n *needs) grip(g *plan.Grip) {
	piece := n.piece(g)
	n.add(piece, 1, g.Tag)
	if g.Kind == term.Frame && g.Cloth != "" {
		n.add(n.frameCloth(g), 1, g.Tag)
	}
	n.holder(g)
	held := load{tag: g.Tag, mass: piece.Mass, known: piece.Mass > 0, count: 1, height: g.Frame.At.Z - g.Base, sturdy: g.OnTwoStands()}
	n.mount(&g.Mount, held)
	if g.OnTwoStands() && onStand(&g.Mount) {
		n.stand(&g.Mount, held)
	}
}

func onStand(m *plan.Mount) bool { return m.Kind == "" || m.Kind == term.Stand }

// piece is the piece by itself: of the catalogue where the scene names it, or where one there is of its kind and size. A board is one
// thing with two sides: which it shows does not count.
func (n *needs) piece(g *plan.Grip) Item {
	if item := n.cataloguedGrip(g); item != nil {
		return Item{Shelf: Grip, Name: item.Name, Label: item.Label, Mass: item.Mass}
	}
	label := fmt.Sprintf("%s %s", g.Kind, n.size(g.Size[0], g.Size[1]))
	if g.Round() {
		label = fmt.Sprintf("%s %s across", g.Kind, n.length(g.Size[0]))
	}
	for _, more := range []string{when(g.Kind == term.Net, g.Cloth), when(!anySide(g), g.Surface)} {
		if more != "" {
			label += ", " + more
		}
	}
	return Item{Shelf: Grip, Label: label}
}

// anySide says whether a board shows a side that every board of its kind has.
func anySide(g *plan.Grip) bool {
	switch g.Kind {
	case term.Card:
		return g.Surface == "" || g.Surface == "white" || g.Surface == "black"
	case term.Silver:
		return g.Surface == "" || strings.HasPrefix(g.Surface, "silver")
	}
	return g.Surface == "" || g.Surface == "black"
}

// cataloguedGrip is the entry that a piece is: named, or the only one of its kind and size.
func (n *needs) cataloguedGrip(g *plan.Grip) (found *kit.Grip) {
	if g.Item != nil || !anySide(g) {
		return g.Item
	}
	for _, entry := range n.kit.Grip {
		wide, high := math.Max(entry.Width, entry.Height), math.Min(entry.Width, entry.Height)
		if entry.Kind != g.Kind || entry.Round || !alike(wide, math.Max(g.Size[0], g.Size[1])) || !alike(high, math.Min(g.Size[0], g.Size[1])) {
			continue
		}
		if found != nil {
			return nil
		}
		found = entry
	}
	return found
}

// alike says whether a side is that of a piece of the catalogue.
func alike(entry, side float64) bool { return math.Abs(side-entry) <= sameSize*entry }

// frameCloth is the cloth of a frame: what the catalogue has for square ones of its size, by name.
func (n *needs) frameCloth(g *plan.Grip) Item {
	item := Item{Shelf: Cloth}
	if frame := n.cataloguedGrip(g); frame != nil && frame.Width == frame.Height {
		item = n.stock(Cloth, fmt.Sprintf("frame-cloth-%.0f", 100*frame.Width), "")
	}
	item.Label = g.Cloth + " for a frame of " + n.size(g.Size[0], g.Size[1])
	return item
}

// holder counts what is between a stand and a sheet.
func (n *needs) holder(g *plan.Grip) {
	switch {
	case g.Mount.Kind == term.Floor || g.Mount.Kind == term.Hand:
	case g.OnTwoStands():
		n.add(n.stock(Rigging, frameHolders, "pair of frame holders"), 1, g.Tag)
	case g.Kind == term.Card || g.Kind == term.Silver:
		n.add(n.stock(Rigging, boardHolder, "board holder"), 1, g.Tag)
	default:
		n.add(n.stock(Rigging, gripHead, "grip head"), 1, g.Tag)
		if onStand(&g.Mount) {
			n.add(n.stock(Rigging, gripArm, "arm"), 1, g.Tag)
		}
	}
}

// mirrors count the mirrors among the furniture.
func (n *needs) mirrors() {
	for i := range n.setup.Furniture {
		if f := &n.setup.Furniture[i]; f.Kind == term.Mirror {
			n.add(Item{Shelf: Grip, Label: "mirror " + n.size(f.Size[0], f.Size[2]), Note: ofTheSet}, 1, f.Name)
		}
	}
}

// openings count what hangs in windows and doors, and the gel on their glass.
func (n *needs) openings() {
	for i := range n.setup.Openings {
		o := &n.setup.Openings[i]
		for k := range o.Dressing {
			d := &o.Dressing[k]
			size := n.size(r2.Norm(r2.Sub(d.B, d.A)), d.Top-d.Foot)
			item := Item{Shelf: Cloth, Name: d.Cloth, Label: d.Cloth + " as a curtain in " + o.Name, Note: ofTheSet + ", hangs " + size}
			if d.Slat > 0 {
				item = Item{Shelf: Cloth, Label: "blind with slats of " + unit.FormatLength(d.Slat, false) + " in " + o.Name, Note: ofTheSet + ", " + size}
			}
			n.add(item, 1, o.Name)
		}
		for _, gel := range o.Gels {
			n.sheet(gelRoll, gel, [2]float64{o.Width(), o.Head - o.Sill}, 1, o.Name)
		}
	}
}

// when is a text where something holds, else "".
func when(is bool, text string) string {
	if is {
		return text
	}
	return ""
}
