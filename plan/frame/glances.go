package frame

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/solid"
)

// Reflections looks by each camera into each mirror, and into each pane, that its frame shows, in the order of the scene: of one that moves from all
// along its track, and says where most of a thing shows.
func Reflections(s *plan.Setup) (all []Reflection) {
	found := reflectors(s)
	if len(found) == 0 || len(s.Cameras) == 0 {
		return nil
	}
	var eyes []*eye // of all cameras, once something is to be moved
	for i := range s.Cameras {
		c := &s.Cameras[i]
		v := newViewing(s, c.Name)
		things := v.things(c.Name)
		for k := range found {
			g := v.glancesInto(&found[k], c)
			if g.eyes = &eyes; found[k].glass != nil {
				all = append(append(all, g.inGlass()...), g.litInGlass(things)...)
			} else {
				all = append(all, g.inMirror(things)...)
			}
		}
	}
	return all
}

// glances are the looks of one camera into one mirror or pane, from where it stands or from places all along its track.
type glances struct {
	*viewing
	camera *plan.Camera
	in     *reflector
	from   []glance
	last   lastPlace // from which something showed
	eyes   *[]*eye   // of all cameras; nil until they are asked for
}

// glance is the camera at one place.
type glance struct {
	along  float64 // m from the start of its track
	camera *plan.Camera
	picture
}

// glancesInto lists the places that a camera looks from, as far apart as those at which it looks straight.
func (v *viewing) glancesInto(r *reflector, c *plan.Camera) *glances {
	g := &glances{viewing: v, camera: c, in: r}
	for _, along := range lookedFrom(c) {
		at := c.OnTrack(along)
		g.from = append(g.from, glance{along, &at, pictureOf(&at)})
	}
	return g
}

// stancesAt is what a thing is made of once it is moved, stance by stance; in glass what of it light falls on. The camera that looks is where it looks from.
func (g *glances) stancesAt(t *thing, by r3.Vec, from *glance) [][]body.Piece {
	if g.in.glass != nil {
		return [][]body.Piece{g.litPieces(t, by)}
	}
	if t.kind == Camera && t.name == g.camera.Name {
		return [][]body.Piece{body.CameraAt(from.camera, by)}
	}
	return t.at(by)
}

// inMirror is what the camera sees of things in a mirror, from where most of each shows, and what takes them out.
func (g *glances) inMirror(things []thing) (all []Reflection) {
	looks := g.looks()
	worst := g.mostOf(looks, things)
	for k := range worst {
		one, t := &worst[k], &things[k]
		if one.Share == 0 {
			continue
		}
		one.Turn = g.leastTurn(t)
		if t.movable(g.camera) {
			one.Move = g.leastMove(looks, t, one.Along)
		}
		all = append(all, *one)
	}
	return all
}

// looks are those into the mirror, place by place; nil from where it shows its back or lies outside the picture.
func (g *glances) looks() []*looking { return g.looksPast(beyond(&g.in.mirror, g.hides)) }

// looksPast are those past a set.
func (g *glances) looksPast(past func() *solid.BVH) []*looking {
	all := make([]*looking, len(g.from))
	for i := range g.from {
		if look, ok := newLooking(&g.in.mirror, g.from[i].picture, past); ok {
			all[i] = &look
		}
	}
	return all
}

// mostOf is what is seen of each thing from where most of it shows; its share is 0 where it shows from nowhere.
func (g *glances) mostOf(looks []*looking, things []thing) []Reflection {
	worst := make([]Reflection, len(things))
	for i, look := range looks {
		for k := range things {
			if t := &things[k]; look != nil && !(t.name == g.in.name && t.kind == Grip) && look.mayShow(t.middle, t.radius) {
				g.glanceAt(look, t, &g.from[i], &worst[k])
			}
		}
	}
	for k := range things {
		one, t := &worst[k], &things[k]
		one.Camera, one.In, one.Kind, one.Name, one.Path, one.Span = g.camera.Name, g.in.name, t.kind, t.name, t.path, t.span
	}
	return worst
}

// anywhere says whether something holds at one of the places.
func (g *glances) anywhere(holds func(i int) bool) bool { return g.last.anywhere(len(g.from), holds) }

// glanceAt looks at one thing from one place, and keeps what is seen where more of it shows than before.
func (g *glances) glanceAt(look *looking, t *thing, from *glance, worst *Reflection) {
	for i, pieces := range g.stancesAt(t, r3.Vec{}, from) {
		seen := look.seen(t.unmeant(g.camera.Name, pieces))
		if !showsOf(seen, look.p) {
			continue
		}
		at := spreadOf(seen, look.p)
		if share := max(at.share(), leastShare); share > worst.Share {
			*worst = Reflection{Along: from.along, Parts: at.shown(), Share: share, Where: at.where()}
			if i < len(t.marks) {
				worst.Mark = t.marks[i]
			}
		}
	}
}

// leastMove is the least move of a thing, as the camera sees it from a place of its track, after which it sees nothing of it in the mirror from anywhere;
// nil where none does.
func (g *glances) leastMove(looks []*looking, t *thing, along float64) (best *Move) {
	round := (&report.Reporter{Feet: g.setup.Feet}).RoundUp
	at := g.camera.OnTrack(along)
	for _, to := range aside(pictureOf(&at)) {
		if to.way == Up && t.kind == Person {
			continue
		}
		most := to.most
		if best != nil && best.Clean() {
			most = min(most, best.Least)
		}
		least, rounded, ok := clearing(most, round, func(change float64) bool {
			return g.showsMoved(looks, t, r3.Scale(change, to.direction))
		})
		if by := r3.Scale(rounded, to.direction); ok && g.free(t, by) {
			best = better(best, &Move{Way: to.way, By: by, Least: least, Metres: rounded, Brings: g.broughtBy(t, by)})
		}
	}
	return best
}

// showsMoved says whether something of a thing shows in the mirror, once it is moved.
func (g *glances) showsMoved(looks []*looking, t *thing, by r3.Vec) bool {
	return g.anywhere(func(i int) bool { return looks[i] != nil && g.showsIn(looks[i], t, by, &g.from[i]) })
}

// showsIn says whether something of a thing that is moved shows from one place.
func (g *glances) showsIn(look *looking, t *thing, by r3.Vec, from *glance) bool {
	for _, pieces := range g.stancesAt(t, by, from) {
		if showsOf(look.seen(t.unmeant(g.camera.Name, pieces)), look.p) {
			return true
		}
	}
	return false
}

// broughtBy are the cameras that would see a thing once it is moved, this one too.
func (g *glances) broughtBy(t *thing, by r3.Vec) []string {
	if *g.eyes == nil {
		*g.eyes = eyesOf(g.setup)
	}
	return broughtInto(*g.eyes, nil, t, by)
}

// inGlass is what the camera sees of the light of lamps in a pane, from where most of it shows. What stands between them hides it, equipment too; a lamp that
// is meant to be in the picture may show in the glass as well.
func (g *glances) inGlass() (all []Reflection) {
	for i := range g.setup.Lights {
		l := &g.setup.Lights[i]
		if !g.setup.EverUp(l) || l.Seen.For(g.camera.Name) || len(l.Diffusion) > 0 || g.in.mirror.Plane.Over(l.Frame.At) <= 0 {
			continue
		}
		var worst Reflection
		past := beyond(&g.in.mirror, g.opaqueFor(l))
		for k := range g.from {
			if one, ok := g.lampInGlass(l, &g.from[k], past); ok && one.Share > worst.Share {
				worst = one
			}
		}
		if worst.Share > 0 {
			all = append(all, worst)
		}
	}
	return all
}

// lampInGlass is the light of one lamp in a pane from one place; not ok where it does not show there.
func (g *glances) lampInGlass(l *plan.Light, from *glance, past func() *solid.BVH) (r Reflection, ok bool) {
	p := from.picture
	image := g.in.mirror.Image(p.At)
	if !shinesTo(l, image) {
		return r, false
	}
	look, ok := newLooking(&g.in.mirror, p, past)
	if !ok {
		return r, false
	}
	seen := look.seen(openingOf(l))
	if !showsOf(seen, p) {
		return r, false
	}
	at := spreadOf(seen, p)
	toward := middleOf(seen, p)
	return Reflection{Camera: g.camera.Name, In: g.in.name, Kind: Light, Name: l.Name, Path: l.Path, Span: l.Span, Parts: at.shown(), Along: from.along,
		Share: max(at.share(), leastShare), Where: at.where(), Glass: true, From: image, Toward: toward, Factor: g.in.glass.Returned(r3.Dot(toward, g.in.mirror.Plane.N))}, true
}

// aside are the ways to move a thing out of a mirror, as the camera sees them.
func aside(p picture) []direction {
	return []direction{{Left, r3.Scale(-1, p.Right), mostAside}, {Right, p.Right, mostAside}, {Up, r3.Vec{Z: 1}, mostUp}}
}
