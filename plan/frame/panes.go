package frame

import (
	"cmp"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/solid"
)

// What light falls on shows in glass where that is bright enough against what is behind it: people who should not be seen, sheets of
// grip, and cloth before lamps. How bright stands, heads and cameras are nothing says.

// Glint is a place at which glass shows what light falls on, as one of many by which its brightness is judged.
type Glint struct {
	On     r3.Vec  // the glass, on the side that is seen, m
	Toward r3.Vec  // from the lens to that place, a unit vector
	Onward r3.Vec  // from that place to what it shows, a unit vector
	Factor float64 // share of the light that the glass throws back there, luminous, 0 to 1
}

// mostGlints is at how many places of a thing its brightness is judged at most.
const mostGlints = 12

// litPieces are those of a thing whose brightness is known, once it is moved: what of a lamp hangs before it, of grip the sheet, and all of somebody.
func (g *glances) litPieces(t *thing, by r3.Vec) []body.Piece {
	s := g.setup
	switch t.kind {
	case Light:
		l := s.LightNamed(t.name)
		return g.clothOn(l, g.lampFrame(l, by))
	case Grip:
		return slices.DeleteFunc(g.gripAt(s.GripNamed(t.name), by), func(p body.Piece) bool { return p.Part != body.Sheet })
	case Person:
		return t.at(by)[0] // at a mark no light is read on them
	default:
		return nil
	}
}

// opaqueBut is what hides a thing in glass: the set, people and all equipment that one does not see through, but for the thing itself.
func (v *viewing) opaqueBut(t *thing) *solid.Set {
	own := func(name string) bool { return name == t.name || strings.HasPrefix(name, t.name+".") }
	var all solid.Set
	for i := range v.setup.Set.Prisms {
		if p := &v.setup.Set.Prisms[i]; t.kind != Person || !own(p.Name) {
			all.Prisms = append(all.Prisms, *p)
		}
	}
	for _, sheet := range v.setup.Set.Sheets {
		if !seenThrough(&sheet.Front) && (t.kind == Person || !own(sheet.Name)) {
			all.Sheets = append(all.Sheets, solid.Sheet{ID: sheet.ID, Name: sheet.Name, Corners: sheet.Corners})
		}
	}
	return &all
}

// litInGlass is what the camera sees in a pane of what light falls on, from where most of it shows.
func (g *glances) litInGlass(things []thing) (all []Reflection) {
	for i := range things {
		t := &things[i]
		pieces := t.unmeant(g.camera.Name, g.litPieces(t, r3.Vec{}))
		if len(pieces) == 0 {
			continue
		}
		past := beyond(&g.in.mirror, g.opaqueBut(t))
		var worst Reflection
		for k := range g.from {
			if one, ok := g.litFrom(t, pieces, &g.from[k], past); ok && one.Share > worst.Share {
				worst = one
			}
		}
		if worst.Share > 0 {
			all = append(all, worst)
		}
	}
	return all
}

// litFrom is what a pane shows of a thing from one place; not ok where that is nothing.
func (g *glances) litFrom(t *thing, pieces []body.Piece, from *glance, past func() *solid.BVH) (r Reflection, ok bool) {
	at := func() *solid.BVH { return g.set } // until the thing is known to lie within the glass
	if look, shown := newLooking(&g.in.mirror, from.picture, at); !shown || !look.mayShow(t.middle, t.radius) {
		return r, false
	}
	look, _ := newLooking(&g.in.mirror, from.picture, past)
	seen := look.seen(pieces)
	if !showsOf(seen, from.picture) {
		return r, false
	}
	shown := spreadOf(seen, from.picture)
	return Reflection{Camera: g.camera.Name, In: g.in.name, Kind: t.kind, Name: t.name, Path: t.path, Span: t.span, Parts: shown.shown(), Along: from.along,
		Share: max(shown.share(), leastShare), Where: shown.where(), Glass: true, Glints: g.glints(seen, from.picture), side: g.in.side}, true
}

// glints are the places at which a thing is judged that shows in a pane: the middles of the largest parts of it, and half way from there to
// their corners.
func (g *glances) glints(seen []seenPart, p picture) (all []Glint) {
	type weighed struct {
		at    r3.Vec
		share float64 // of the picture
	}
	var places []weighed
	for i := range seen {
		share, middle := p.share(seen[i].corners), solid.Centre(seen[i].corners)
		places = append(places, weighed{middle, share})
		for _, c := range seen[i].corners {
			places = append(places, weighed{r3.Scale(0.5, r3.Add(c, middle)), share / float64(len(seen[i].corners))})
		}
	}
	slices.SortStableFunc(places, func(a, b weighed) int { return cmp.Compare(b.share, a.share) })
	plane := &g.in.mirror.Plane
	for _, one := range places[:min(len(places), mostGlints)] {
		toward := r3.Unit(r3.Sub(one.at, p.At))
		far := plane.Over(p.At) / -r3.Dot(toward, plane.N)
		on := r3.Add(p.At, r3.Add(r3.Scale(far, toward), r3.Scale(nearest, plane.N)))
		all = append(all, Glint{On: on, Toward: toward, Onward: g.in.mirror.Turned(toward), Factor: g.in.glass.Returned(r3.Dot(toward, plane.N))})
	}
	return all
}

// OutOfGlass is the least move of a thing that light falls on after which a pane shows nothing of it; nil where none does. It is looked for
// apart from what shows, since most of that is too dark to matter.
func OutOfGlass(s *plan.Setup, r *Reflection) *Move {
	var eyes []*eye
	c := s.CameraNamed(r.Camera)
	v := newViewing(s, c.Name)
	in := reflectors(s)[r.side]
	g := v.glancesInto(&in, c)
	g.eyes = &eyes
	things := v.things(c.Name)
	for i := range things {
		if t := &things[i]; t.kind == r.Kind && t.name == r.Name && t.movable(c) {
			past := beyond(&in.mirror, v.opaqueBut(t))
			looks := g.looksPast(past)
			return g.leastMove(looks, t, r.Along)
		}
	}
	return nil
}
