package sheet

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
)

// Sizes of a corner of the plan's panel that is given to text, mm.
const (
	cornerClear = 8.0  // between it and what stands on the plan
	cornerLeast = 22.0 // it is no lower than this
)

// withCorner is the layout with what must stand beside the plan, and has no room in the collar, in
// the emptiest corner of the panel, as maps lay a box into open sea. It stays as it is where no
// corner holds any of that.
func (l layout) withCorner(v view, stands []r2.Box) layout {
	var wait, rests []rest
	for _, b := range l.left {
		if b.block.rank == must {
			wait = append(wait, b)
		} else {
			rests = append(rests, b)
		}
	}
	b := emptiest(v, stands)
	if len(wait) == 0 || height(b) < cornerLeast {
		return l
	}
	own := slot{x: b.Min.X + pads, top: b.Max.Y - pads, bottom: b.Min.Y + pads}
	pieces, left := pour(wait, []slot{own})
	if len(pieces) == 0 {
		return l
	}
	own.bottom = own.top
	for i := range pieces {
		own.bottom -= pieces[i].gap + pieces[i].height
		pieces[i].slot = len(l.slots)
	}
	if b.Max.Y == v.panel.Max.Y { // it hangs from the top, else it stands on the foot
		b.Min.Y = own.bottom - pads
	} else {
		high := own.top - own.bottom + 2*pads
		own.top, own.bottom = b.Min.Y+high-pads, b.Min.Y+pads
		b.Max.Y = b.Min.Y + high
	}
	l.corner = b
	l.slots = append(append([]slot(nil), l.slots...), own)
	l.pieces = append(append([]piece(nil), l.pieces...), pieces...)
	l.left = append(left, rests...)
	return l
}

// emptiest is the highest box, as wide as a column of text with its pads, in a corner of the panel
// that is clear of what stands.
func emptiest(v view, stands []r2.Box) r2.Box {
	const wide = measure + 2*pads
	var best r2.Box
	for _, left := range [...]float64{v.panel.Max.X - wide, v.panel.Min.X} {
		low, high := v.panel.Min.Y, v.panel.Max.Y // of what stands below and above it
		for _, s := range stands {
			b := inset(r2.Box{Min: v.mm(s.Min), Max: v.mm(s.Max)}, -cornerClear, -cornerClear)
			if b.Max.X > left && b.Min.X < left+wide {
				low, high = math.Max(low, b.Max.Y), math.Min(high, b.Min.Y)
			}
		}
		for _, b := range [...]r2.Box{box(left, low, left+wide, v.panel.Max.Y), box(left, v.panel.Min.Y, left+wide, high)} {
			if height(b) > height(best) {
				best = b
			}
		}
	}
	return best
}

// standing are boxes round what stands in a set-up, m.
func standing(s *plan.Setup) []r2.Box {
	var all []r2.Box
	add := func(grow func(g *gatherer)) {
		g := gatherer{}
		if grow(&g); g.any {
			all = append(all, g.b)
		}
	}
	for i := range s.Walls {
		add(func(g *gatherer) { g.all(s.Walls[i].Outline, 0) })
	}
	for i := range s.Rooms {
		add(func(g *gatherer) { g.all(s.Rooms[i].Inside, 0) })
	}
	for i := range s.Furniture {
		add(func(g *gatherer) { g.furniture(&s.Furniture[i]) })
	}
	for i := range s.People {
		add(func(g *gatherer) { g.person(&s.People[i]) })
	}
	for i := range s.Cameras {
		add(func(g *gatherer) { g.point(plain(s.Cameras[i].Frame.At), bodyRoom) })
	}
	for i := range s.Lights {
		add(func(g *gatherer) { g.light(&s.Lights[i]) })
	}
	for i := range s.Grip {
		add(func(g *gatherer) { g.grip(&s.Grip[i]) })
	}
	for _, m := range s.Meters {
		add(func(g *gatherer) { g.point(plain(m.At), 0.1) })
	}
	return all
}

// around is the box round boxes.
func around(all []r2.Box) r2.Box {
	g := gatherer{}
	for _, b := range all {
		g.point(b.Min, 0)
		g.point(b.Max, 0)
	}
	return g.box()
}
