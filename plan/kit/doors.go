package kit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/source"
)

// Doors are four barn doors: leaves that are hinged on a frame before what light leaves a head by. Lengths in metres.
type Doors struct {
	Frame [2]float64 // width and height between the hinges
	Gap   float64    // how far before the lens the hinges lie
	Long  Leaf       // the upper and the lower one
	Short Leaf       // those at the sides
}

// Leaf is one leaf. At its hinge it is as wide as the frame.
type Leaf struct {
	Length float64 // how far it reaches from its hinge, m
	Edge   float64 // how wide it is at its outer edge, m
}

// Opened are the angles of four doors: 0 lies across the light, 90 points straight ahead, and a leaf at folded is out of
// the way. Turn turns them all, clockwise from behind.
type Opened struct {
	Top, Bottom, Left, Right float64 // degrees
	Turn                     float64 // degrees
	Span                     source.Span
}

// Folded is the angle of a leaf that is folded back, degrees.
const Folded = 180

// HungDoors are doors on a head, as they are opened.
type HungDoors struct {
	Doors
	Opened
}

// The doors of a head whose entry does not say them, by the width of what light leaves by: common practice, from
// memory. The long leaves widen outward and close over each other, the short ones taper.
const (
	doorFrame     = 1.3
	doorGap       = 0.02 // m
	longLeaf      = 0.75
	longLeafEdge  = 1.3
	shortLeaf     = 0.6
	shortLeafEdge = 0.8
)

// usualDoors are the doors of a head by the width and the height of its mouth.
func usualDoors(width, height float64) Doors {
	size := doorFrame * max(width, height)
	return Doors{
		Frame: [2]float64{doorFrame * width, doorFrame * height}, Gap: doorGap,
		Long: Leaf{longLeaf * size, longLeafEdge * size}, Short: Leaf{shortLeaf * size, shortLeafEdge * size},
	}
}

// doorsReader reads the doors of a unit.
func doorsReader() source.Reader[*Doors] {
	const like = "{frame: [0.14, 0.14], gap: 0.02, long: [0.14, 0.2], short: [0.11, 0.11]}"
	size := length("a measure of barn doors", "0.14", 0.005, 3)
	leaf := source.Converted(pair("a leaf", "[0.14, 0.2]", size), func(v [2]float64) Leaf { return Leaf{v[0], v[1]} })
	shape := &source.Shape[Doors]{Name: "barn doors", Doc: "Four leaves before a head.", Fields: []source.Field[Doors]{
		required(field("frame", pair("a frame", "[0.14, 0.14]", size), func(v *Doors) *[2]float64 { return &v.Frame },
			"Width and height between the hinges.")),
		required(field("gap", length("a gap", "0.02", 0.001, 1), func(v *Doors) *float64 { return &v.Gap },
			"How far before the lens the hinges lie.")),
		required(field("long", leaf, func(v *Doors) *Leaf { return &v.Long },
			"The upper and the lower leaf: how far it reaches, and how wide its outer edge is.")),
		required(field("short", leaf, func(v *Doors) *Leaf { return &v.Short },
			"The leaves at the sides, likewise.")),
	}}
	return source.Reader[*Doors]{What: "barn doors", Like: like, Schema: shape.Schema,
		Read: func(n *source.Node, c *source.Context) (*Doors, bool) {
			if n.Kind != source.Map {
				c.Error(n, source.CodeWrongType, "write it like "+like, "barn doors belong here, not %s", n.Kind)
				return nil, false
			}
			v := &Doors{}
			return v, readsWithoutError(c, func(c *source.Context) { shape.Read(v, n, c) })
		}}
}

// Leaves returns the corners of the leaves that are not folded back, in the lamp's frame: along its right, its up and
// its axis. Before each leaf comes the piece of the frame that closes the gap behind its hinge.
func (d *HungDoors) Leaves() (leaves [][]r3.Vec) {
	for _, l := range [...]struct {
		opened        float64
		turn          float64 // degrees clockwise from the top
		across, reach float64 // of the frame
		leaf          Leaf
	}{
		{d.Top, 0, d.Frame[0], d.Frame[1], d.Long}, {d.Right, 90, d.Frame[1], d.Frame[0], d.Short},
		{d.Bottom, 180, d.Frame[0], d.Frame[1], d.Long}, {d.Left, 270, d.Frame[1], d.Frame[0], d.Short},
	} {
		if l.opened >= Folded {
			continue
		}
		sin, cos := math.Sincos(l.opened * math.Pi / 180)
		out, ahead := l.reach/2-l.leaf.Length*cos, d.Gap+l.leaf.Length*sin
		turnSin, turnCos := math.Sincos((l.turn + d.Turn) * math.Pi / 180)
		corner := func(along, out, ahead float64) r3.Vec {
			return r3.Vec{X: along*turnCos + out*turnSin, Y: out*turnCos - along*turnSin, Z: ahead}
		}
		hinge := [2]r3.Vec{corner(-l.across/2, l.reach/2, d.Gap), corner(l.across/2, l.reach/2, d.Gap)}
		leaves = append(leaves,
			[]r3.Vec{corner(-l.across/2, l.reach/2, 0), corner(l.across/2, l.reach/2, 0), hinge[1], hinge[0]},
			[]r3.Vec{hinge[0], hinge[1], corner(l.leaf.Edge/2, out, ahead), corner(-l.leaf.Edge/2, out, ahead)})
	}
	return leaves
}
