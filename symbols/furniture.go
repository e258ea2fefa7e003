package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// FurnitureKind is a form of furniture.
type FurnitureKind string

// The forms of furniture.
const (
	Box      FurnitureKind = "box"
	Cylinder FurnitureKind = "cylinder"
	Table    FurnitureKind = "table"
	Sofa     FurnitureKind = "sofa"
	Stairs   FurnitureKind = "stairs"
	Deck     FurnitureKind = "deck"
	Mirror   FurnitureKind = "mirror"
)

// FurnitureKinds lists them in the order of a legend.
func FurnitureKinds() []FurnitureKind {
	return []FurnitureKind{Box, Cylinder, Table, Sofa, Stairs, Deck, Mirror}
}

// Furniture is a thing that stands, as it is drawn. Lengths are mm on paper.
type Furniture struct {
	Kind  FurnitureKind
	At    r2.Vec  // its middle
	Turn  float64 // degrees clockwise; at 0 its back, or the top of stairs, is up the paper, and a mirror looks down it
	Size  r2.Vec  // width and depth; of a cylinder the diameter
	Scale float64 // mm of paper for a metre: of the thickness of legs, backs and arms
	Steps int     // of stairs
}

// DrawFurniture draws furniture from above in fine outline; the glass of a mirror is the one heavy line.
func DrawFurniture(c ink.Canvas, k Look, f Furniture) Drawn {
	b := brush{c, k}.on(ink.Furniture).at(f.At, f.Turn)
	w, d := f.Size.X, f.Size.Y
	var rest [][]r2.Vec
	switch f.Kind {
	case Cylinder:
		d = w
		b.cylinder(w)
	case Table:
		rest = append(rest, b.table(w, d, f.Scale)...)
	case Sofa:
		b.sofa(w, d, f.Scale)
	case Stairs:
		b.stairs(w, d, f.Steps)
	case Deck:
		b.deck(w, d)
	case Mirror:
		rest = append(rest, b.mirror(w, d))
	default:
		b.box(b.open(Fine), w, -d/2, d/2)
	}
	return Drawn{Body: b.outline(-w/2, -d/2, w/2, d/2), Rest: rest}
}

// cylinder has its centre marked.
func (b brush) cylinder(w float64) {
	b.Circle(b.open(Fine), vec(0, 0), w/2)
	t := min(0.8, w/4)
	b.Segments(b.pen(Hair), [2]r2.Vec{vec(-t, 0), vec(t, 0)}, [2]r2.Vec{vec(0, -t), vec(0, t)})
}

// table has its legs, which the top hides, dashed. It returns the ground of those.
func (b brush) table(w, d, scale float64) (legs [][]r2.Vec) {
	b.box(b.open(Fine), w, -d/2, d/2)
	leg := min(max(0.06*scale, 1.2), min(w, d)/3)
	in := min(0.5, leg/2)
	for _, x := range []float64{-w/2 + in + leg/2, w/2 - in - leg/2} {
		for _, y := range []float64{-d/2 + in + leg/2, d/2 - in - leg/2} {
			b.Rect(b.pen(Hair).Dashed(0.5, 0.35), vec(x-leg/2, y-leg/2), vec(x+leg/2, y+leg/2))
			legs = append(legs, b.outline(x-leg/2, y-leg/2, x+leg/2, y+leg/2))
		}
	}
	return legs
}

// sofa has a back, arms and cushions.
func (b brush) sofa(w, d, scale float64) {
	back, arm := min(max(0.18*scale, 1.4), d/2), min(max(0.15*scale, 1.2), w/4)
	soft := min(1.2, back/2, arm/2)
	b.Draw(b.open(Fine), ink.RoundRect(vec(-w/2, -d/2), vec(w/2, d/2), soft))
	for _, side := range []float64{-1, 1} {
		b.Draw(b.open(Fine), ink.RoundRect(vec(min(side*w/2, side*(w/2-arm)), -d/2), vec(max(side*w/2, side*(w/2-arm)), d/2-back), soft))
	}
	b.Draw(b.open(Fine), ink.RoundRect(vec(-w/2, d/2-back), vec(w/2, d/2), soft))
	seats := max(int(math.Round((w-2*arm)/(0.65*scale))), 1)
	for i := 1; i < seats; i++ {
		x := -w/2 + arm + (w-2*arm)*float64(i)/float64(seats)
		b.Polyline(b.pen(Hair), vec(x, -d/2), vec(x, d/2-back))
	}
}

// stairs have a line a step and an arrow up.
func (b brush) stairs(w, d float64, steps int) {
	b.box(b.open(Fine), w, -d/2, d/2)
	steps = min(max(steps, 1), max(int(d/0.8), 1)) // no closer than lines can be told apart
	b.across(w, d, steps)
	foot := min(0.9, d/6)
	b.Arrow(b.pen(Fine), min(2, d/3), vec(0, -d/2+foot), vec(0, d/2-foot))
	b.Circle(b.open(Fine), vec(0, -d/2+foot), min(0.5, d/8))
}

// deck has its boards.
func (b brush) deck(w, d float64) {
	b.box(b.open(Line), w, -d/2, d/2)
	b.across(w, d, max(int(math.Round(d/2.4)), 2))
}

// across are the lines that part a box into n along its depth.
func (b brush) across(w, d float64, n int) {
	for i := 1; i < n; i++ {
		y := -d/2 + d*float64(i)/float64(n)
		b.Polyline(b.pen(Hair), vec(-w/2, y), vec(w/2, y))
	}
}

// mirror is its glass, with a ray that leaves it at the angle at which it came; it returns the ray's ground. The glass
// is drawn on the side of the room, over the frame.
func (b brush) mirror(w, d float64) []r2.Vec {
	b.box(b.open(Fine), w, -d/2, d/2)
	b.Polyline(b.pen(Heavy), vec(-w/2, -d/2), vec(w/2, -d/2))
	long := min(3, w/3)
	foot := -d/2 - Heavy/2
	b.Arrow(b.pen(Hair), min(1.2, long/2), vec(-long, foot-long), vec(0, foot), vec(long, foot-long))
	return b.outline(-long, foot-long, long, foot)
}
