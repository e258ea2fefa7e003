package draw

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// names letters what lists and people call things by.
type names struct{ *Drawing }

// nameThings letters the walls that the lists measure from, furniture, openings and rooms where that is clear of everything, and returns
// the paper it takes. A name rather keeps off the contours; where it cannot, it has a rim.
func (c names) nameThings(p Pad, v layout.View, taken, lines []carto.Obstacle) []carto.Obstacle {
	n := namer{c: c.Drawing, p: p, area: box.Inset(v.Panel, 1, 1), taken: taken, lines: lines}
	n.solid = c.furnitureObstacles()
	n.taken = withoutWalls(c.In.Setup, v, taken)
	for i := range c.In.Setup.Rooms {
		r := &c.In.Setup.Rooms[i]
		for j := range r.Walls {
			if w := &r.Walls[j]; mentionsWall(c.In.Setup, r.Name+"."+w.Name) {
				n.put(ink.Notes, "wall:"+r.Name+"."+w.Name, c.wallNames(v, w))
			}
		}
	}
	n.solid, n.taken = nil, taken
	for i := range c.In.Setup.Furniture {
		f := &c.In.Setup.Furniture[i]
		n.put(ink.Notes, "furniture:"+f.Name, c.furnitureNames(c.furniture[i].Box(), f))
	}
	n.solid = dressingObstacles(c.In.Setup, v)
	for i := range c.In.Setup.Openings {
		o := &c.In.Setup.Openings[i]
		n.put(ink.Notes, "opening:"+o.Name, openingNames(v, o))
	}
	n.solid = c.furnitureObstacles()
	for i := range c.In.Setup.Rooms {
		r := &c.In.Setup.Rooms[i]
		n.put(ink.Notes, "room:"+r.Name, roomNames(v, r, c.Pad.place()))
	}
	return n.own
}

// name is a name in a place that it could take.
type name struct {
	s     string
	at    r2.Vec  // the middle of its capitals, mm
	angle float64 // degrees counter-clockwise
}

// namer letters names one after the other.
type namer struct {
	c            *Drawing
	p            Pad
	area         r2.Box
	taken, lines []carto.Obstacle
	own          []carto.Obstacle
	solid        []carto.Obstacle // furniture, for the names of what it stands in
}

// put letters the first of the names that is clear; where all are crossed by contours, the first
// that is clear of the rest.
func (n *namer) put(layer ink.Layer, object string, names []name) {
	st := n.c.Pad.place()
	var second *name
	for i := range names {
		o := carto.Obstacle{Outline: ink.TurnedBox(names[i].at, st.boxOf(names[i].s), names[i].angle)}
		switch {
		case !box.AllIn(o.Outline, n.area) || meets(o, n.taken) || meets(o, n.own) || meets(o, n.solid):
		case !meets(o, n.lines):
			n.letter(layer, object, names[i], n.p.Look.rim())
			return
		case second == nil:
			second = &names[i]
		}
	}
	if second != nil {
		n.letter(layer, object, *second, &n.p.Look.Paper)
	}
}

func (n *namer) letter(layer ink.Layer, object string, w name, rim *ink.Colour) {
	st := n.c.Pad.place()
	n.p.On(layer).of(object, "").turned(underMiddle(w.at, st.Cap, w.angle), w.s, st, ink.Centre, w.angle, rim)
	const apart = 2.5 // mm along a line between two names, or they are read as one
	b := st.boxOf(w.s)
	b.X += 2 * apart
	n.own = append(n.own, carto.Obstacle{Outline: ink.TurnedBox(w.at, b, w.angle)})
}

// furnitureNames are the name with the height, then the name alone, about the middle of a thing,
// level and then upright.
func (c *Drawing) furnitureNames(b r2.Box, f *plan.Furniture) []name {
	shares := [][2]float64{{0.5, 0.5}, {0.5, 0.1}, {0.5, 0.9}, {0.1, 0.5}, {0.9, 0.5}, {0, 0}, {1, 0}, {0, 1}, {1, 1}}
	st := c.Pad.place()
	var names []name
	for _, s := range []string{f.Name + " " + c.Bare(f.Z1-f.Base), f.Name} {
		for _, angle := range []float64{0, 90} {
			w, h := st.Width(s)+4, st.Cap+3
			if angle == 90 {
				w, h = h, w
			}
			room := box.Inset(b, w/2, h/2)
			if box.Width(room) < 0 || box.Height(room) < 0 {
				continue
			}
			for _, q := range shares {
				names = append(names, name{s, r2.Vec{X: room.Min.X + q[0]*box.Width(room), Y: room.Min.Y + q[1]*box.Height(room)}, angle})
			}
		}
	}
	return names
}

// openingNames are the name along an opening, outside its wall and then inside, about its middle first.
func openingNames(v layout.View, o *plan.Opening) []name {
	const off = 2.6 // mm
	angle := carto.Upright(r2.Sub(o.Right, o.Left))
	left, right := v.Paper(o.Left), v.Paper(o.Right)
	var names []name
	for _, share := range []float64{0.5, 0.3, 0.7, 0.2, 0.8} {
		for _, d := range []float64{o.Depth*v.Scale + off, -off, o.Depth*v.Scale + 2*off, -2 * off} {
			names = append(names, name{o.Name, r2.Add(box.Interpolate(left, right, share), r2.Scale(d, o.Outward)), angle})
		}
	}
	return names
}

// withoutWalls are obstacles but for the walls themselves, on whose ground their names may stand.
func withoutWalls(s *plan.Setup, v layout.View, taken []carto.Obstacle) []carto.Obstacle {
	walls := wallObstacles(s, v)
	return slices.DeleteFunc(slices.Clone(taken), func(o carto.Obstacle) bool {
		return slices.ContainsFunc(walls, func(w carto.Obstacle) bool { return slices.Equal(o.Outline, w.Outline) })
	})
}

// mentionsWall says whether a list measures from a wall, or hangs something on it.
func mentionsWall(s *plan.Setup, wall string) bool {
	cited := func(from string) bool { return from == wall || strings.HasPrefix(from, wall+",") }
	from := func(d plan.Dimension) bool { return cited(d.From) }
	return slices.ContainsFunc(s.Lights, func(l plan.Light) bool { return cited(l.Mount.On) || slices.ContainsFunc(l.Placing, from) }) ||
		slices.ContainsFunc(s.Grip, func(g plan.Grip) bool { return slices.ContainsFunc(g.Placing, from) })
}

// wallNames are the name along the outside face of a wall, about its middle first, then further out, and last on the
// ground of the wall itself, where that is thick enough: inside it is taken for something in the room. Of a wall with
// another room behind it they are inside, for there it would be taken for the other room's.
func (c names) wallNames(v layout.View, w *plan.Wall) []name {
	const off, air = 2.6, 0.7 // mm
	st := c.Pad.place()
	left, right := v.Paper(w.Left), v.Paper(w.Right)
	angle := carto.Upright(r2.Sub(right, left))
	half := (st.Width(w.Name)/2 + 1) / r2.Norm(r2.Sub(right, left))
	var names []name
	thick := w.Thickness * v.Scale
	outs, inside := []float64{thick + off, thick + 2*off}, []float64{-off, -2 * off}
	if c.partyWall(w) {
		outs = inside
	}
	if thick > st.Cap+2*air {
		outs = append(outs, thick/2)
	}
	for _, d := range outs {
		for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
			if share > half && share+half < 1 {
				names = append(names, name{w.Name, r2.Add(box.Interpolate(left, right, share), r2.Scale(d, w.Outward)), angle})
			}
		}
	}
	return names
}

// partyWall says whether a wall has a room right behind it, somewhere along it.
func (c names) partyWall(w *plan.Wall) bool {
	const behind = 0.3 // m behind its outside face
	for share := 0.05; share < 1; share += 0.1 {
		if onFloor(c.In.Setup, r2.Add(box.Interpolate(w.Left, w.Right, share), r2.Scale(w.Thickness+behind, w.Outward))) {
			return true
		}
	}
	return false
}

// roomNames are the name in the corners of a room, then along its sides, then in its middle.
func roomNames(v layout.View, r *plan.Room, st style) []name {
	g := box.Bounds{}
	g.All(v.All(r.Inside), 0)
	b := box.Inset(g.Box(), st.Width(r.Name)/2+2, st.Cap/2+2)
	var names []name
	for _, q := range [][2]float64{{0, 1}, {1, 1}, {0, 0}, {1, 0}, {0.5, 1}, {0.5, 0}, {0.25, 1}, {0.75, 1}, {0.25, 0}, {0.75, 0}, {0.5, 0.5}} {
		p := r2.Vec{X: b.Min.X + q[0]*box.Width(b), Y: b.Min.Y + q[1]*box.Height(b)}
		if box.InRing(r.Inside, v.Metres(p)) {
			names = append(names, name{r.Name, p, 0})
		}
	}
	return names
}
