package frame

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
)

// Reflection is one piece of equipment as one camera sees it in a mirror, of what is not meant to be seen of it; or the light
// of one lamp as it sees that in clear glass.
type Reflection struct {
	Camera string
	In     string // the mirror, or the opening that the glass is in
	Kind   Kind
	Name   string
	Path   string // "lights.fill"
	Span   source.Span
	Parts  []body.Part
	Share  float64 // share of the frame that it takes
	Where  string  // there: "at the left edge"
	Move   *Move   // of the thing, after which nothing of it shows in that mirror; nil: none does, and of the camera itself
	Turn   *Turn   // of the mirror, likewise

	Glass  bool    // in glass; what follows is of that alone
	From   r3.Vec  // where the image of the lens lies, from which the lamp looks as the camera sees it, m
	Toward r3.Vec  // the way from the lens to the middle of what shows, a unit vector
	Factor float64 // share of the light that the glass throws back there, luminous, 0 to 1
}

// Own says whether it is the camera itself.
func (r *Reflection) Own() bool { return r.Kind == Camera && r.Name == r.Camera }

// Reflections looks by each camera into each mirror, and into each pane, that its frame shows, in the order of the scene.
func Reflections(s *plan.Setup) (all []Reflection) {
	found := reflectors(s)
	if len(found) == 0 || len(s.Cameras) == 0 {
		return nil
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		v := newViewing(s, c.Name)
		things := v.things(c.Name)
		for k := range found {
			if r := &found[k]; r.glass != nil {
				all = append(all, v.inGlass(r, c)...)
			} else {
				all = append(all, v.inMirror(r, c, things)...)
			}
		}
	}
	return all
}

// looking is one camera that looks into one mirror: it sees the images of things, through the mirror as through a hole, past what
// lies before the mirror and past the image of that.
type looking struct {
	viewing
	mirror *solid.Mirror
	p      picture
	within []solid.Plane // of the picture, and through the edges of the mirror
}

// newLooking prepares a look into a mirror past a set; not ok where the mirror shows its back, or lies outside the picture.
func newLooking(m *solid.Mirror, p picture, hides *solid.Set) (g looking, ok bool) {
	if m.Plane.Over(p.At) <= nearest {
		return g, false
	}
	sides := p.sides()
	if clipped(m.Corners, sides[:]) == nil {
		return g, false
	}
	g = looking{mirror: m, p: p, within: slices.Clone(sides[:])}
	for i, a := range m.Corners {
		b := m.Corners[(i+1)%len(m.Corners)]
		if n := r3.Cross(r3.Sub(a, p.At), r3.Sub(b, p.At)); r3.Norm(n) > 0 { // outward, for the corners run counter-clockwise
			n = r3.Unit(n)
			g.within = append(g.within, solid.Plane{N: n, C: r3.Dot(n, p.At)})
		}
	}
	g.set = solid.NewBVH(m.Through(hides))
	g.viewer = solid.Viewer{BVH: g.set}
	return g, true
}

// mayShow says whether something of a ball may show in the mirror.
func (g *looking) mayShow(middle r3.Vec, radius float64) bool {
	at := g.mirror.Image(middle)
	for i := range g.within {
		if g.within[i].Over(at) > radius {
			return false
		}
	}
	return g.mirror.Plane.Over(middle) > -radius
}

// seen lists what shows of some pieces in the mirror, within the picture.
func (g *looking) seen(all []body.Piece) (seen []seenPart) {
	for i := range all {
		image, ok := all[i].Image(g.mirror)
		if !ok {
			continue
		}
		image.Figures(g.p.At, func(figure []r3.Vec) bool {
			within := clipped(figure, g.within)
			if within == nil || g.p.share(within) <= leastShare/mostFigures {
				return true
			}
			return g.visible(g.p.At, within, func(part []r3.Vec) bool {
				seen = append(seen, seenPart{image.Part, slices.Clone(part)})
				return true
			})
		})
	}
	return seen
}

// inMirror is what one camera sees of things in a mirror.
func (v *viewing) inMirror(r *reflector, c *plan.Camera, things []thing) (all []Reflection) {
	g, ok := newLooking(&r.mirror, pictureOf(c), v.hides)
	if !ok {
		return nil
	}
	for i := range things {
		t := &things[i]
		if t.name == r.name && t.kind == Grip || !g.mayShow(t.middle, t.radius) {
			continue
		}
		seen := g.seen(t.unmeant(c.Name, t.stances[0]))
		if !showsOf(seen, g.p) {
			continue
		}
		at := spreadOf(seen, g.p)
		one := Reflection{Camera: c.Name, In: r.name, Kind: t.kind, Name: t.name, Path: t.path, Span: t.span,
			Parts: at.shown(), Share: at.share(), Where: at.where(), Turn: v.leastTurn(r, t, c)}
		if !one.Own() {
			one.Move = v.leastMoveInMirror(&g, t, c)
		}
		all = append(all, one)
	}
	return all
}

// leastMoveInMirror is the least move of a thing after which a camera sees nothing of it in a mirror; nil where none does.
func (v *viewing) leastMoveInMirror(g *looking, t *thing, c *plan.Camera) *Move {
	round := (&report.Reporter{Feet: v.setup.Feet}).RoundUp
	var best *Move
	for _, to := range g.aside() {
		most := to.most
		if best != nil {
			most = min(most, best.Least)
		}
		least, rounded, ok := clearing(most, round, func(change float64) bool {
			return showsOf(g.seen(t.unmeant(c.Name, t.at(r3.Scale(change, to.direction))[0])), g.p)
		})
		if by := r3.Scale(rounded, to.direction); ok && v.free(t, by) && (best == nil || least < best.Least) {
			best = &Move{Way: to.way, By: by, Least: least, Metres: rounded}
		}
	}
	return best
}

// aside are the ways to move a thing out of a mirror, as the camera sees them.
func (g *looking) aside() []direction {
	return []direction{{Left, r3.Scale(-1, g.p.Right), mostAside}, {Right, g.p.Right, mostAside}, {Up, r3.Vec{Z: 1}, mostUp}}
}

// inGlass is what one camera sees of the light of lamps in a pane. What stands between them hides it, equipment too; a lamp that
// is meant to be in the picture may show in the glass as well.
func (v *viewing) inGlass(r *reflector, c *plan.Camera) (all []Reflection) {
	p := pictureOf(c)
	from := r.mirror.Image(p.At)
	for i := range v.setup.Lights {
		l := &v.setup.Lights[i]
		if !v.setup.EverUp(l) || l.Seen.For(c.Name) || len(l.Diffusion) > 0 || r.mirror.Plane.Over(l.Frame.At) <= 0 || !shinesTo(l, from) {
			continue
		}
		g, ok := newLooking(&r.mirror, p, v.opaqueFor(l))
		if !ok {
			return all
		}
		seen := g.seen(openingOf(l))
		if !showsOf(seen, p) {
			continue
		}
		at := spreadOf(seen, p)
		toward := middleOf(seen, p)
		all = append(all, Reflection{Camera: c.Name, In: r.name, Kind: Light, Name: l.Name, Path: l.Path, Span: l.Span, Parts: at.shown(),
			Share: at.share(), Where: at.where(), Glass: true, From: from, Toward: toward, Factor: r.glass.Returned(r3.Dot(toward, r.mirror.Plane.N))})
	}
	return all
}

// opaqueFor is what hides the light of a lamp: the set and all equipment but the lamp's own cloth, and its doors.
func (v *viewing) opaqueFor(l *plan.Light) *solid.Set {
	all := solid.Set{Prisms: v.hides.Prisms}
	for _, sheet := range v.setup.Set.Sheets {
		if !seenThrough(&sheet.Front) && !strings.HasPrefix(sheet.Name, l.Name+".") {
			all.Sheets = append(all.Sheets, solid.Sheet{ID: sheet.ID, Name: sheet.Name, Corners: sheet.Corners})
		}
	}
	for _, leaf := range l.Leaves() {
		all.Sheets = append(all.Sheets, solid.Sheet{Name: l.Name, Corners: leaf})
	}
	return &all
}

// middleOf is the way from the lens to the middle of the largest part of what is seen.
func middleOf(seen []seenPart, p picture) r3.Vec {
	var way r3.Vec
	most := math.Inf(-1)
	for i := range seen {
		if share := p.share(seen[i].corners); share > most {
			most, way = share, r3.Unit(r3.Sub(solid.Centre(seen[i].corners), p.At))
		}
	}
	return way
}
