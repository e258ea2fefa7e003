package fit

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// escapeWide is how wide a way out is at least, m: for up to 60 people Approved Document B of England, volume 2, table 2.3, has 750 mm (from
// memory). Other places have other rules.
const escapeWide = 0.75

// openWide is from where on a leaf stands open as far as it needs to, degrees: a hint that asks for no more says "ajar: 90".
const openWide = 90.0

// clearWidth is how wide an opening is past its leaf where that stands open, m; where it is shut, as if it were opened.
func clearWidth(o *plan.Opening) float64 {
	if o.Leaf == nil || o.Ajar == 0 || o.Ajar >= openWide {
		return o.Width()
	}
	sin, cos := plane.Sincos(o.Ajar)
	edge := r2.Vec{X: o.Width() * cos, Y: o.Width() * sin} // of the leaf, from its hinge
	return min(o.Width(), r2.Norm(r2.Sub(edge, r2.Vec{X: o.Width()})))
}

// onFloors is what stands in the way of who walks to a way out: walls beside their openings, other windows, furniture, stands and cameras by the
// ground that their legs take, and what hangs lower than a way is clear to.
func onFloors(r *checker, way *plan.Opening) []obstacle {
	on := obstacles{setup: r.out}
	for i := range r.out.Walls {
		if w := &r.out.Walls[i]; w.Opening == "" {
			on.add(w.Outline, w.Z0, w.Z1)
		}
	}
	for i := range r.out.Openings {
		if o := &r.out.Openings[i]; o.Kind == term.Window && o.Name != way.Name {
			on.add(o.Plan(), o.Sill, o.Head)
		}
	}
	for i := range r.out.Furniture {
		f := &r.out.Furniture[i]
		on.of = f.Name
		if f.Z0 < f.Base+body.LegClearance && f.Z1 > f.Base+body.LegStep && f.Kind != term.Stairs && f.Kind != term.Deck {
			for _, p := range f.Parts {
				on.add(p.Outline, f.Base, f.Z1)
			}
		}
	}
	on.equipment()
	on.hanging()
	on.of = ""
	on.ceilings()
	return on.all
}

// equipment adds stands and cameras by their legs.
func (o *obstacles) equipment() {
	for i := range o.setup.Lights {
		l := &o.setup.Lights[i]
		o.of = l.Numbered()
		o.legs(&l.Mount, l.Base)
	}
	for i := range o.setup.Grip {
		g := &o.setup.Grip[i]
		o.of = g.Numbered()
		o.legs(&g.Mount, g.Base)
	}
	for i := range o.setup.Cameras {
		if c := &o.setup.Cameras[i]; c.Track == nil {
			o.of = c.Name
			o.legs(body.LegsOfCamera(c), c.Base)
		}
	}
}

// widestWay is how wide a way there is from one place to another, m, up to the usual width: 0 where there is none.
func widestWay(from, to r2.Vec, solids [][]r2.Vec) float64 {
	free := func(wide float64) bool {
		var grown [][]r2.Vec
		for _, ring := range solids {
			by := wide / 2
			if plane.Contains(from, ring, plane.Grain) {
				continue // who stands at a table, or among legs, steps away from there
			}
			for _, end := range [2]r2.Vec{from, to} {
				by = math.Min(by, r2.Norm(r2.Sub(plane.Nearest(end, ring), end))-plane.Grain)
			}
			if by > plane.Grain {
				ring = plane.Grown(ring, by)
			}
			grown = append(grown, ring)
		}
		_, ok := plane.ShortestPath(from, to, grown)
		return ok
	}
	if free(escapeWide) {
		return escapeWide
	}
	low, high := 0.0, escapeWide
	if !free(low) {
		return 0
	}
	for range 8 {
		if middle := (low + high) / 2; free(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Floor(100*low) / 100
}

// beforeDot is the thing that a part belongs to: "desk" of "desk.top".
func beforeDot(name string) string {
	thing, _, _ := strings.Cut(name, ".")
	return thing
}
