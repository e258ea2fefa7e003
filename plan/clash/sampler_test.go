package clash_test

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// The sampler finds by points what lies in what. It shares no geometry with the package: each form tells by a formula of its own whether
// a point lies in it, and by how much, and where points of it are. All measures in metres are written again.

// form is a body.
type form interface {
	inside(p r3.Vec) float64           // how far a point lies in it; below nought, out of it by about as much
	each(step float64, f func(r3.Vec)) // calls f with points of it that are no farther apart
	box() (low, high r3.Vec)           // that holds it
}

// around is the box of points, so much larger.
func around(by float64, points ...r3.Vec) (low, high r3.Vec) {
	low, high = points[0], points[0]
	for _, p := range points {
		low = r3.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y), Z: min(low.Z, p.Z)}
		high = r3.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y), Z: max(high.Z, p.Z)}
	}
	out := r3.Vec{X: by, Y: by, Z: by}
	return r3.Sub(low, out), r3.Add(high, out)
}

func (t tubeForm) box() (low, high r3.Vec) { return around(t.r, t.a, t.b) }
func (b ballForm) box() (low, high r3.Vec) { return around(b.r, b.at) }

func (h hornForm) box() (low, high r3.Vec) {
	half := r3.Norm(r3.Vec{X: max(h.front[0], h.back[0]), Y: max(h.front[1], h.back[1])}) / 2
	near := r3.Add(h.f.At, r3.Scale(h.ahead, h.f.Axis))
	return around(half, near, r3.Sub(near, r3.Scale(h.depth, h.f.Axis)))
}

func (c columnForm) box() (low, high r3.Vec) {
	var all []r3.Vec
	for _, p := range c.ring {
		all = append(all, r3.Vec{X: p.X, Y: p.Y, Z: c.z0}, r3.Vec{X: p.X, Y: p.Y, Z: c.z1})
	}
	return around(0, all...)
}

func (s sectorForm) box() (low, high r3.Vec) {
	return around(s.r, r3.Vec{X: s.hinge.X, Y: s.hinge.Y, Z: s.z0}, r3.Vec{X: s.hinge.X, Y: s.hinge.Y, Z: s.z1})
}

// apart says whether the boxes of two forms are apart by more than the sampler could tell.
func apart(f, g form) bool {
	const far = 0.05
	a0, a1 := f.box()
	b0, b1 := g.box()
	return a1.X < b0.X-far || b1.X < a0.X-far || a1.Y < b0.Y-far || b1.Y < a0.Y-far || a1.Z < b0.Z-far || b1.Z < a0.Z-far
}

// tube is a round rod.
type tubeForm struct {
	a, b r3.Vec
	r    float64
}

func (t tubeForm) inside(p r3.Vec) float64 {
	way := r3.Sub(t.b, t.a)
	long := r3.Norm(way)
	along := r3.Dot(r3.Sub(p, t.a), way) / long
	aside := r3.Norm(r3.Sub(r3.Sub(p, t.a), r3.Scale(along/long, way)))
	return min(t.r-aside, along, long-along)
}

func (t tubeForm) each(step float64, f func(r3.Vec)) {
	way := r3.Sub(t.b, t.a)
	u := r3.Unit(r3.Cross(way, r3.Vec{X: 0.3, Y: 0.5, Z: 0.81}))
	v := r3.Unit(r3.Cross(way, u))
	n := max(1, int(r3.Norm(way)/step))
	for i := range n + 1 {
		at := r3.Add(t.a, r3.Scale(float64(i)/float64(n), way))
		f(at)
		turns := max(8, int(2*math.Pi*t.r/step))
		for k := range turns {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(turns))
			f(r3.Add(at, r3.Add(r3.Scale(t.r*cos, u), r3.Scale(t.r*sin, v))))
		}
	}
}

// ballForm is a ball.
type ballForm struct {
	at r3.Vec
	r  float64
}

func (b ballForm) inside(p r3.Vec) float64 { return b.r - r3.Norm(r3.Sub(p, b.at)) }

func (b ballForm) each(step float64, f func(r3.Vec)) {
	f(b.at)
	n := int(math.Pi*b.r/step) + 1
	for i := range n + 1 {
		polar := math.Pi * float64(i) / float64(n)
		m := int(2*math.Pi*b.r*math.Sin(polar)/step) + 1
		for k := range m {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(m))
			f(r3.Add(b.at, r3.Vec{X: b.r * math.Sin(polar) * cos, Y: b.r * math.Sin(polar) * sin, Z: b.r * math.Cos(polar)}))
		}
	}
}

// hornForm is a head: a box along an axis whose width and height change evenly from its face to its back.
type hornForm struct {
	f            plan.Frame
	front, back  [2]float64 // width and height
	ahead, depth float64    // where its face is on the axis, and how far behind it its back
}

func (h hornForm) size(t float64) (w, v float64) {
	return h.front[0] + (h.back[0]-h.front[0])*t, h.front[1] + (h.back[1]-h.front[1])*t
}

func (h hornForm) inside(p r3.Vec) float64 {
	d := r3.Sub(p, h.f.At)
	behind := h.ahead - r3.Dot(d, h.f.Axis)
	w, v := h.size(min(1, max(0, behind/h.depth)))
	return min(behind, h.depth-behind, w/2-math.Abs(r3.Dot(d, h.f.Right)), v/2-math.Abs(r3.Dot(d, h.f.Up())))
}

func (h hornForm) each(step float64, f func(r3.Vec)) {
	n := int(h.depth/step) + 1
	for i := range n + 1 {
		t := float64(i) / float64(n)
		w, v := h.size(t)
		nw, nv := int(w/step)+1, int(v/step)+1
		for x := range nw + 1 {
			for y := range nv + 1 {
				if i > 0 && i < n && x > 0 && x < nw && y > 0 && y < nv {
					continue
				}
				at := r3.Add(h.f.At, r3.Scale(h.ahead-t*h.depth, h.f.Axis))
				at = r3.Add(at, r3.Scale(w*(float64(x)/float64(nw)-0.5), h.f.Right))
				f(r3.Add(at, r3.Scale(v*(float64(y)/float64(nv)-0.5), h.f.Up())))
			}
		}
	}
}

// columnForm stands upright over a convex outline.
type columnForm struct {
	ring   []r2.Vec
	z0, z1 float64
}

func (c columnForm) inside(p r3.Vec) float64 {
	deep := min(p.Z-c.z0, c.z1-p.Z)
	area := 0.0
	for i, a := range c.ring {
		b := c.ring[(i+1)%len(c.ring)]
		area += a.X*b.Y - b.X*a.Y
	}
	for i, a := range c.ring {
		b := c.ring[(i+1)%len(c.ring)]
		if long := math.Hypot(b.X-a.X, b.Y-a.Y); long > 1e-9 {
			deep = min(deep, math.Copysign(1, area)*((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X))/long)
		}
	}
	return deep
}

func (c columnForm) each(float64, func(r3.Vec)) {}

// sectorForm is what a leaf sweeps from shut to square.
type sectorForm struct {
	hinge         r2.Vec
	across, swing r2.Vec
	r, z0, z1     float64
}

func (s sectorForm) inside(p r3.Vec) float64 {
	d := r2.Vec{X: p.X - s.hinge.X, Y: p.Y - s.hinge.Y}
	return min(p.Z-s.z0, s.z1-p.Z, s.r-r2.Norm(d), r2.Dot(d, s.across), r2.Dot(d, s.swing))
}

func (s sectorForm) each(float64, func(r3.Vec)) {}

// thin is how far the points of a sheet lie on either side of it.
const thin = 1e-6

// crewForms are the bodies of each piece of equipment.
func crewForms(s *plan.Setup) map[clash.Side][]form {
	all := map[clash.Side][]form{}
	for i := range s.Lights {
		l := &s.Lights[i]
		all[clash.Side{Kind: clash.Light, Name: l.Name}] = append(headForms(l), holderForms(&l.Mount, l.Frame, l.Base)...)
	}
	for i := range s.Grip {
		g := &s.Grip[i]
		sheet := hornForm{f: g.Frame, front: g.Size, back: g.Size, ahead: thin, depth: 2 * thin}
		all[clash.Side{Kind: clash.Grip, Name: g.Name}] = append([]form{sheet}, holderForms(&g.Mount, g.Frame, g.Base)...)
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		size := [2]float64{0.17, 0.20}
		middle := r3.Sub(c.Frame.At, r3.Scale(0.175, c.Frame.Axis))
		all[clash.Side{Kind: clash.Camera, Name: c.Name}] = []form{hornForm{f: c.Frame, front: size, back: size, depth: 0.35},
			tubeForm{r3.Vec{X: middle.X, Y: middle.Y, Z: c.Base}, middle, 0.018}}
		if c.Track == nil && c.Frame.At.Z > c.Base {
			all[clash.Side{Kind: clash.Ground, Name: c.Name}] = []form{discForm{at: r2.Vec{X: middle.X, Y: middle.Y}, r: 0.45, z0: c.Base + 0.03, z1: c.Base + 0.3}}
		}
	}
	return all
}

// discForm is the ground of three legs: a disc.
type discForm struct {
	at        r2.Vec
	r, z0, z1 float64
}

func (d discForm) inside(p r3.Vec) float64 {
	return min(p.Z-d.z0, d.z1-p.Z, d.r-math.Hypot(p.X-d.at.X, p.Y-d.at.Y))
}

func (d discForm) box() (low, high r3.Vec) {
	return r3.Vec{X: d.at.X - d.r, Y: d.at.Y - d.r, Z: d.z0}, r3.Vec{X: d.at.X + d.r, Y: d.at.Y + d.r, Z: d.z1}
}

func (d discForm) each(step float64, f func(r3.Vec)) {
	n, layers := int(d.r/step)+1, int((d.z1-d.z0)/step)+1
	for k := range layers + 1 {
		z := d.z0 + (d.z1-d.z0)*float64(k)/float64(layers)
		for i := range n + 1 {
			r := d.r * float64(i) / float64(n)
			around := int(2*math.Pi*r/step) + 1
			for a := range around {
				sin, cos := math.Sincos(2 * math.Pi * float64(a) / float64(around))
				f(r3.Vec{X: d.at.X + r*cos, Y: d.at.Y + r*sin, Z: z})
			}
		}
	}
}

// groundForms are what stands and lifts take of the floor.
func groundForms(s *plan.Setup, add func(clash.Kind, string, form)) {
	of := func(name string, m *plan.Mount, base float64) {
		switch m.Kind {
		case term.Stand, term.Boom:
			add(clash.Ground, name, discForm{m.Base, m.Foot / 2, base + 0.03, base + 0.3})
		case term.Lift:
			sin, cos := math.Sincos(m.Turn * math.Pi / 180)
			along, aside := r2.Scale(m.Ground[1]/2, r2.Vec{X: sin, Y: cos}), r2.Scale(m.Ground[0]/2, r2.Vec{X: cos, Y: -sin})
			add(clash.Ground, name, columnForm{[]r2.Vec{r2.Add(m.Base, r2.Add(along, aside)), r2.Add(m.Base, r2.Sub(along, aside)), r2.Sub(m.Base, r2.Add(along, aside)), r2.Sub(m.Base, r2.Sub(along, aside))}, base + 0.03, base + 0.3})
		}
	}
	for i := range s.Lights {
		of(s.Lights[i].Name, &s.Lights[i].Mount, s.Lights[i].Base)
	}
	for i := range s.Grip {
		of(s.Grip[i].Name, &s.Grip[i].Mount, s.Grip[i].Base)
	}
}

func headForms(l *plan.Light) []form {
	o, b := l.Head.Source.Opening, l.Head.Body
	if b == ([3]float64{}) {
		return nil
	}
	back := [2]float64{b[0], b[2]}
	switch o.Form {
	case photometry.Sphere:
		return []form{ballForm{l.Frame.At, o.Width / 2}}
	case photometry.Tube:
		front, deep := [2]float64{max(o.Width, b[0]), max(o.Height, b[2])}, max(o.Height, b[1])
		return []form{hornForm{f: l.Frame, front: front, back: front, ahead: deep / 2, depth: deep}}
	case photometry.Rectangle:
		return []form{hornForm{f: l.Frame, front: [2]float64{max(o.Width, b[0]), max(o.Height, b[2])}, back: back, depth: b[1]}}
	}
	return []form{hornForm{f: l.Frame, front: back, back: back, depth: b[1]}}
}

// holderForms are posts, arms and poles; legs are turned until they fit.
func holderForms(m *plan.Mount, f plan.Frame, base float64) (all []form) {
	at := func(z float64) r3.Vec { return r3.Vec{X: m.Base.X, Y: m.Base.Y, Z: z} }
	post := func(top r3.Vec, r float64) {
		if top.Z-base > 0.01 {
			all = append(all, tubeForm{at(base), top, r})
		}
	}
	switch m.Kind {
	case term.Stand:
		post(at(f.At.Z), 0.018)
	case term.Lift:
		post(at(f.At.Z), 0.08)
		dir := r2.Unit(r2.Vec{X: f.Axis.X, Y: f.Axis.Y})
		side := r2.Vec{X: dir.Y, Y: -dir.X}
		wide, high := [2]float64{0.75, 1.2}, min(0.4, f.At.Z-base)
		up := plan.Frame{At: at(base), Axis: r3.Vec{Z: 1}, Right: r3.Vec{X: side.X, Y: side.Y}}
		all = append(all, hornForm{f: up, front: wide, back: wide, ahead: high, depth: high})
	case term.Boom:
		reach := math.Hypot(f.At.X-m.Base.X, f.At.Y-m.Base.Y)
		pivot := at(max(base, f.At.Z-math.Sqrt(max(0, m.Arm*m.Arm-reach*reach))))
		post(pivot, 0.018)
		if arm := r3.Sub(f.At, pivot); r3.Norm(arm) > 0.01 {
			tail := r3.Sub(pivot, r3.Scale(0.8/r3.Norm(arm), arm))
			all = append(all, tubeForm{pivot, f.At, 0.018}, tubeForm{tail, pivot, 0.018}, ballForm{tail, 0.15})
		}
	case term.Pole:
		a, b := m.PoleEnds[0], m.PoleEnds[1]
		if long := r2.Norm(r2.Sub(b, a)); long > 0.05 {
			in := r2.Scale(0.02/long, r2.Sub(b, a))
			a, b = r2.Add(a, in), r2.Sub(b, in)
			all = append(all, tubeForm{r3.Vec{X: a.X, Y: a.Y, Z: f.At.Z}, r3.Vec{X: b.X, Y: b.Y, Z: f.At.Z}, 0.018})
		}
	}
	return all
}

// setForms are what equipment may not lie in, but floors and ceilings.
func setForms(s *plan.Setup) map[clash.Side][]form {
	all := map[clash.Side][]form{}
	add := func(kind clash.Kind, name string, f form) {
		side := clash.Side{Kind: kind, Name: name}
		all[side] = append(all[side], f)
	}
	groundForms(s, add)
	for i := range s.Walls {
		w := &s.Walls[i]
		add(clash.Set, w.Room+"."+w.Wall, columnForm{w.Outline, w.Z0, w.Z1})
	}
	for i := range s.Furniture {
		for _, p := range s.Furniture[i].Parts {
			add(clash.Set, s.Furniture[i].Name, columnForm{p.Outline, p.Z0, p.Z1})
		}
	}
	for _, p := range s.Posts() {
		for _, part := range p.Parts {
			add(clash.Person, p.Name, columnForm{part.Outline, part.Z0, part.Z1})
		}
	}
	for i := range s.Openings {
		if o := &s.Openings[i]; o.Leaf != nil {
			add(clash.Set, o.Name, columnForm{o.Leaf, o.Sill, o.Head})
			add(clash.Swing, o.Name, swept(o))
		}
	}
	for i := range s.People {
		if w := s.People[i].Walk; w != nil {
			for k := 1; k < len(w.Corners); k++ {
				add(clash.Walk, s.People[i].Name, bed(w.Corners[k-1], w.Corners[k], 0.46, w.Treads[0].Base+0.3, w.Treads[0].Base+w.Crown))
			}
			for k := 1; k+1 < len(w.Corners); k++ {
				if f := shoulder(w.Corners[k-1], w.Corners[k], w.Corners[k+1]); f.r > 0 {
					f.z0, f.z1 = w.Treads[0].Base+0.3, w.Treads[0].Base+w.Crown
					add(clash.Walk, s.People[i].Name, f)
				}
			}
		}
	}
	for i := range s.Cameras {
		if c := &s.Cameras[i]; c.Track != nil {
			for k := 1; k < len(c.Track.Corners); k++ {
				add(clash.Way, c.Name, bed(c.Track.Corners[k-1], c.Track.Corners[k], 0.67, c.Base, c.Frame.At.Z+0.10))
			}
		}
	}
	return all
}

func bed(a, b r2.Vec, wide, z0, z1 float64) form {
	d := r2.Unit(r2.Sub(b, a))
	n := r2.Scale(wide/2, r2.Vec{X: -d.Y, Y: d.X})
	return columnForm{[]r2.Vec{r2.Sub(a, n), r2.Sub(b, n), r2.Add(b, n), r2.Add(a, n)}, z0, z1}
}

func swept(o *plan.Opening) form {
	hinge, edge := o.Left, o.Right
	if !o.HingeLeft {
		hinge, edge = edge, hinge
	}
	f := sectorForm{hinge: hinge, across: r2.Unit(r2.Sub(edge, hinge)), swing: r2.Scale(-1, o.Outward), r: r2.Norm(r2.Sub(o.Right, o.Left)), z0: o.Sill, z1: o.Head}
	if !o.SwingIn {
		f.hinge, f.swing = r2.Add(hinge, r2.Scale(o.Depth, o.Outward)), o.Outward
	}
	return f
}

// wedgeForm is a piece of a disc, upright: what a shoulder swings over at a turn.
type wedgeForm struct {
	at      r2.Vec
	r       float64
	in, out r2.Vec // unit vectors across it: how far a point lies along both says that it is between its sides
	z0, z1  float64
}

// shoulder is what the outer one of somebody swings over who walks from a by b to c; without a size where they go straight on.
func shoulder(a, b, c r2.Vec) wedgeForm {
	d, e := r2.Unit(r2.Sub(b, a)), r2.Unit(r2.Sub(c, b))
	if d.X*e.Y == d.Y*e.X {
		return wedgeForm{}
	}
	return wedgeForm{at: b, r: 0.23, in: d, out: r2.Scale(-1, e)}
}

func (w wedgeForm) inside(p r3.Vec) float64 {
	d := r2.Vec{X: p.X - w.at.X, Y: p.Y - w.at.Y}
	return min(p.Z-w.z0, w.z1-p.Z, w.r-r2.Norm(d), r2.Dot(d, w.in), r2.Dot(d, w.out))
}

func (w wedgeForm) each(float64, func(r3.Vec)) {}

func (w wedgeForm) box() (low, high r3.Vec) {
	return around(w.r, r3.Vec{X: w.at.X, Y: w.at.Y, Z: w.z0}, r3.Vec{X: w.at.X, Y: w.at.Y, Z: w.z1})
}

// walksInto is how deep the deepest point across the shoulders of somebody who walks lies in a column, wherever along the walk: below nought, how
// far off the nearest of those that were looked at is.
func walksInto(w *plan.Walk, c columnForm, step float64) float64 {
	low, high := max(w.Treads[0].Base+0.3, c.z0), min(w.Treads[0].Base+w.Crown, c.z1)
	most := math.Inf(-1)
	stand := func(at, way r2.Vec) {
		n := int(0.46/step) + 1
		for k := range n + 1 {
			aside := 0.46 * (float64(k)/float64(n) - 0.5)
			most = max(most, c.inside(r3.Vec{X: at.X + aside*way.Y, Y: at.Y - aside*way.X, Z: (low + high) / 2}))
		}
	}
	for i := 1; i < len(w.Corners); i++ {
		leg := r2.Sub(w.Corners[i], w.Corners[i-1])
		n := int(r2.Norm(leg)/step) + 1
		for k := range n + 1 {
			stand(r2.Add(w.Corners[i-1], r2.Scale(float64(k)/float64(n), leg)), r2.Unit(leg))
		}
		if i+1 < len(w.Corners) {
			next := r2.Unit(r2.Sub(w.Corners[i+1], w.Corners[i]))
			from := math.Atan2(leg.Y, leg.X)
			by := math.Remainder(math.Atan2(next.Y, next.X)-from, 2*math.Pi)
			for k := range 41 {
				sin, cos := math.Sincos(from + by*float64(k)/40)
				stand(w.Corners[i], r2.Vec{X: cos, Y: sin})
			}
		}
	}
	return most
}
