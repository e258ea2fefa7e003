package frame_test

import (
	"fmt"
	"math"
	"math/rand"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// reflecting looks by rays into mirrors: each meets the plane of one, is turned over by hand, and goes on to the first thing.
type reflecting struct {
	*brute
	corners []r3.Vec
	normal  r3.Vec
	blinds  []blind
	balls   []frame.Body // about the bodies
	most    int          // rays across the part of the frame that is looked at, where none meets before
}

// blindsBut are the solids of a set that hide something, but for those of a name; equipment, and who should not be seen, only where that counts, and
// not the thing itself.
func blindsBut(s *plan.Setup, name string, equipment bool, own string) (all []blind) {
	for i := range s.Set.Prisms {
		p := &s.Set.Prisms[i]
		if p.Name == own || p.Name == "crew" && !equipment {
			continue
		}
		one := blind{planes: [][2]r3.Vec{{{Z: 1}, {Z: p.Z1}}, {{Z: -1}, {Z: p.Z0}}}}
		for k, c := range p.Base {
			n := p.Base[(k+1)%len(p.Base)]
			one.planes = append(one.planes, [2]r3.Vec{{X: n.Y - c.Y, Y: c.X - n.X}, {X: c.X, Y: c.Y}})
		}
		all = append(all, one)
	}
	for i := range s.Set.Sheets {
		sheet := &s.Set.Sheets[i]
		of, _, _ := strings.Cut(sheet.Name, ".")
		isEquipment := s.LightNamed(of) != nil || s.GripNamed(of) != nil
		if sheet.Name != name && (equipment && of != own || !isEquipment) && sheet.Front.Direct.Y() <= sheet.Front.Diffuse.Y() {
			all = append(all, blind{sheet: sheet.Corners})
		}
	}
	if l := s.LightNamed(own); l != nil && equipment {
		for _, leaf := range l.Leaves() {
			all = append(all, blind{sheet: leaf})
		}
	}
	return all
}

func (m *reflecting) isHidden(o, d r3.Vec, far float64) bool {
	for i := range m.blinds {
		if m.blinds[i].before(o, d, far) {
			return true
		}
	}
	return false
}

// onMirror is how far along a ray it meets the mirror, and where.
func (m *reflecting) onMirror(d r3.Vec) (far float64, at r3.Vec) {
	for i := 1; i+1 < len(m.corners); i++ {
		if t := onTriangle(m.at, d, m.corners[0], m.corners[i], m.corners[i+1]); !math.IsInf(t, 1) {
			return t, r3.Add(m.at, r3.Scale(t, d))
		}
	}
	return math.Inf(1), at
}

// meets says whether a ray sees some bodies in the mirror.
func (m *reflecting) meets(d r3.Vec, bodies []frame.Body) bool {
	far, at := m.onMirror(d)
	if math.IsInf(far, 1) {
		return false
	}
	d2 := r3.Sub(d, r3.Scale(2*r3.Dot(d, m.normal), m.normal))
	nearest := math.Inf(1)
	second := *m.brute
	second.at = at
	for i := range bodies {
		if m.balls[i].Radius > 0 && math.IsInf(second.onBall(&m.balls[i], d2), 1) {
			continue // it misses all of the body
		}
		if bodies[i].Radius > 0 {
			nearest = min(nearest, second.onBall(&bodies[i], d2))
		}
		for _, f := range bodies[i].Faces {
			for k := 1; k+1 < len(f); k++ {
				nearest = min(nearest, onTriangle(at, d2, f[0], f[k], f[k+1]))
			}
		}
	}
	return !math.IsInf(nearest, 1) && !m.isHidden(m.at, d, far) && !m.isHidden(at, d2, nearest)
}

// share is what some bodies take of the frame in the mirror: by a grid of rays over the part of the frame in which the mirror shows
// them, finer where few meet.
func (m *reflecting) share(bodies []frame.Body) float64 {
	if r3.Dot(r3.Sub(m.at, m.corners[0]), m.normal) <= 0 {
		return 0
	}
	w := m.windowOf(m.corners)
	var images []r3.Vec
	for i := range bodies {
		for _, p := range pointsOf(&bodies[i]) {
			h := r3.Dot(r3.Sub(p, m.corners[0]), m.normal)
			images = append(images, p, r3.Sub(p, r3.Scale(2*h, m.normal)))
		}
	}
	if w = w.and(m.windowOf(images)); w.empty() {
		return 0
	}
	m.balls = nil
	for i := range bodies {
		points := pointsOf(&bodies[i])
		one := frame.Body{Middle: r3.Scale(0.5, r3.Add(points[0], points[len(points)-1]))}
		for _, p := range points {
			one.Radius = max(one.Radius, r3.Norm(r3.Sub(p, one.Middle)))
		}
		m.balls = append(m.balls, one)
	}
	share := 0.0
	for n := 100; n <= 800; n *= 2 {
		hits := 0
		for i := range n * n {
			x, y := w.x0+(w.x1-w.x0)*(float64(i%n)+0.5)/float64(n), w.y0+(w.y1-w.y0)*(float64(i/n)+0.5)/float64(n)
			if m.meets(m.ray(x, y), bodies) {
				hits++
			}
		}
		share = float64(hits) / float64(n*n) * (w.x1 - w.x0) * (w.y1 - w.y0) / 4
		if hits > 20000 || share < judgedShare/10 && n >= max(m.most, 200) {
			break
		}
	}
	return share
}

// mirrored is a random scene with a mirror on a wall and a board that mirrors, at which its cameras look.
func mirrored(seed int64) *staged {
	s := stage(seed)
	d := draw{rand.New(rand.NewSource(seed + 7))}
	wall := d.one("left", "right", "top", "bottom")
	s.set = strings.Replace(s.set, "furniture:\n", fmt.Sprintf("furniture:\n  glass: {mirror: [%.2f, %.2f], at: {wall: main.%s, along: %.2f}, lift: %.2f}\n",
		d.between(0.6, 1.6), d.between(0.8, 1.8), wall, d.between(0.3, 2.5), d.between(0.2, 0.9)), 1)
	tilted := fmt.Sprintf("card: [1.2, 1], surface: mirror, faces: p0, tilt: %.0f, roll: %.0f, ", d.between(-30, 30), d.between(-20, 20))
	s.items["grip"] = append(s.items["grip"], &item{name: "board", at: r3.Vec{X: d.between(1, 4), Y: d.between(1, 3), Z: d.between(0.8, 1.8)},
		write: func(i *item) string { return tilted + i.place() }})
	by := s.items["cameras"][0].at
	s.set += fmt.Sprintf("  crew: {at: [%.2f, %.2f], faces: street, seen: false}\n", by.X+d.between(-0.4, 0.9), by.Y+d.between(0.6, 1.2)*float64(1-2*d.Intn(2)))
	for i, c := range s.items["cameras"] {
		look, tail := d.one("glass", "glass", "board", "street", "street"), d.one("18", "25", "35")
		for k := 0; i == 0 && k < 3 && look == "street"; k++ { // lamps that the pane may show
			unit := d.one("led-panel-100", "soft-panel-200", "led-panel-100, diffusion: half-diffusion", "fresnel-tungsten-650, barndoors: {top: 60, bottom: 90, left: 70, right: 80}", "led-point-300-bicolour, modifier: softbox-90")
			s.items["lights"] = append(s.items["lights"], &item{name: fmt.Sprintf("w%d", k), at: r3.Vec{X: c.at.X + d.between(-0.7, 1.2), Y: c.at.Y + d.between(-2, 2), Z: d.between(1, 2)},
				write: func(i *item) string { return "unit: " + unit + ", aim: street, " + i.place() }})
			if k == 0 {
				form := d.one("frame: [0.9, 0.9], cloth: half-diffusion", "card: [0.7, 0.7]", "flag: [0.8, 0.6]")
				s.items["grip"] = append(s.items["grip"], &item{name: "lit", at: r3.Vec{X: c.at.X + d.between(-0.7, 1.2), Y: c.at.Y + d.between(-1.5, 1.5), Z: d.between(1, 2)},
					write: func(i *item) string { return form + ", faces: p0, " + i.place() }})
			}
		}
		if i == 0 {
			c.write = func(i *item) string { return i.place() + ", looks: " + look + ", lens: " + tail + " mm" }
		}
	}
	return s
}

// What cameras see in mirrors and panes is what rays see that are turned over there.
func TestReflectionsOfRandomScenes(t *testing.T) {
	held := &inMirrors{}
	for seed := *mirrorSeed; held.scenes < *mirrorScenes; seed++ {
		s := mirrored(seed<<16 | 3)
		if setup := laidOut(t, s); setup != nil {
			held.scene(t, seed, s, setup)
		}
	}
	t.Logf("%d scenes, %d reflections, %d of them in glass, %d of those lit; %d that show nowhere; %d turns, %d moves", held.scenes, held.shown, held.glass, held.lit, held.none, held.turns, held.moves)
	if held.barely > 1+held.turns/5 {
		t.Errorf("of %d turns %d could be half a degree less, by rays", held.turns, held.barely)
	}
	if held.shown < *mirrorScenes/2 || held.turns == 0 || held.moves == 0 || *mirrorScenes > 20 && (held.glass == 0 || held.lit == 0) {
		t.Error("the scenes try too little")
	}
}

// inMirrors counts what was held to rays.
type inMirrors struct{ scenes, shown, none, glass, lit, turns, barely, moves, outOf int }

// mostOut is how often at most a move out of glass is tried.
const mostOut = 40

func (h *inMirrors) scene(t *testing.T, seed int64, s *staged, setup *plan.Setup) {
	h.scenes++
	all := frame.Reflections(setup)
	for i := range setup.Cameras {
		c := &setup.Cameras[i]
		for _, in := range []string{"glass", "board", "street", "yard"} {
			for _, want := range reflectedBy(setup, c, in) {
				got, sum := pick(all, c.Name, in, &want)
				if want.share < judgedShare && sum < judgedShare {
					h.none++
					continue
				}
				h.shown++
				if want.glass {
					h.glass++
				}
				if got != nil && len(got.Glints) > 0 {
					h.lit++
				}
				if got == nil || !(math.Abs(sum-want.share) <= shareSlack*max(want.share, judgedShare)+1e-5) {
					t.Errorf("seed %d: %s takes %.6f of %s in %s, and by rays %.6f", seed, want.name, sum, c.Name, in, want.share)
					continue
				}
				h.clears(t, seed, s, setup, c, got)
			}
		}
	}
}

// pick is the last reflection of a thing in a mirror, and what all of them take: a board has two sides.
func pick(all []frame.Reflection, camera, in string, of *byRays) (got *frame.Reflection, sum float64) {
	for k := range all {
		if r := &all[k]; r.Camera == camera && r.In == in && r.Name == of.name && r.Kind == of.kind {
			got, sum = r, sum+r.Share
		}
	}
	return got, sum
}

// clears turns the mirror by hand as far as is offered, and writes the offered move into the scene: then nothing shows; half a
// degree less, or 95 % of the least move, leaves something.
func (h *inMirrors) clears(t *testing.T, seed int64, s *staged, setup *plan.Setup, c *plan.Camera, r *frame.Reflection) {
	bodies := frame.BodiesOf(setup, r.Kind, r.Name, c.Name)
	if turn := r.Turn; turn != nil {
		h.turns++
		less := 0.0
		for _, corners := range frame.MirrorsOf(setup, r.In) {
			less += turnedShare(setup, c, r, corners, turn.Degrees-0.5, bodies, 800)
			if after := turnedShare(setup, c, r, corners, turn.Degrees, bodies, 200); after > 1e-5 {
				t.Errorf("seed %d: %s still takes %.6f of %s in %s after %+v", seed, r.Name, after, c.Name, r.In, *turn)
			}
		}
		if less == 0 && turn.Degrees > 0.5 && r.Share > 10*judgedShare {
			h.barely++ // what shows there is finer than the rays
		}
	}
	m := r.Move
	if len(r.Glints) > 0 && h.outOf < mostOut {
		h.outOf++
		m = frame.OutOfGlass(setup, r)
	}
	if m != nil && r.Kind != frame.Camera && r.Kind != frame.Person {
		h.moves++
		thing := s.find(sections[r.Kind], r.Name)
		for part, shows := range map[float64]bool{1: false, 0.95 * m.Least / m.Metres: true} {
			moved := laidOut(t, s.with(sections[r.Kind], thing.moved(r3.Scale(part, m.By))))
			if moved == nil {
				t.Errorf("seed %d: %s cannot be moved by %+v", seed, r.Name, m)
				continue
			}
			got, _ := pick(frame.Reflections(moved), c.Name, r.In, &byRays{name: r.Name, kind: r.Kind})
			if (got != nil) != shows {
				t.Errorf("seed %d: %s shows: %t in %s after %.3f of %+v", seed, r.Name, got != nil, r.In, part, m)
			}
		}
	}
}

// turnedShare is what some bodies take of a frame in a mirror that is turned by hand: about its middle where it is a board, else
// about the corner from which all others come forward.
func turnedShare(s *plan.Setup, c *plan.Camera, r *frame.Reflection, corners []r3.Vec, degrees float64, bodies []frame.Body, most int) float64 {
	n := r3.Unit(r3.Cross(r3.Sub(corners[1], corners[0]), r3.Sub(corners[2], corners[0])))
	axis := map[frame.Turning]r3.Vec{frame.Counterclockwise: {Z: 1}, frame.Clockwise: {Z: -1},
		frame.Down: r3.Unit(r3.Cross(r3.Vec{Z: 1}, n)), frame.Upward: r3.Unit(r3.Cross(n, r3.Vec{Z: 1}))}[r.Turn.Way]
	turn := r3.NewRotation(degrees*math.Pi/180, axis)
	about := r3.Scale(0.25, r3.Add(r3.Add(corners[0], corners[1]), r3.Add(corners[2], corners[3])))
	var out []r3.Vec
	for try := -1; try < len(corners); try++ {
		if try >= 0 {
			about = corners[try]
		}
		out = nil
		forward := true
		for _, p := range corners {
			q := r3.Add(about, turn.Rotate(r3.Sub(p, about)))
			forward = forward && r3.Dot(r3.Sub(q, p), n) > -1e-3*degrees
			out = append(out, q)
		}
		if s.GripNamed(r.In) != nil || forward {
			break
		}
	}
	m := reflecting{brute: newBrute(s, c), corners: out, normal: turn.Rotate(n), blinds: blindsBut(s, r.In, false, ""), most: most}
	return m.share(bodies)
}

// byRays is what one thing takes of a frame in a mirror by rays.
type byRays struct {
	name  string
	kind  frame.Kind
	glass bool
	share float64
}

// reflectedBy is what a camera sees by rays of each thing in one mirror, or in one pane.
func reflectedBy(s *plan.Setup, c *plan.Camera, in string) (all []byRays) {
	glass := s.OpeningNamed(in) != nil
	add := func(name string, kind frame.Kind, bodies []frame.Body, blinds []blind) {
		sum := 0.0
		for _, corners := range frame.MirrorsOf(s, in) {
			n := r3.Unit(r3.Cross(r3.Sub(corners[1], corners[0]), r3.Sub(corners[2], corners[0])))
			m := reflecting{brute: newBrute(s, c), corners: corners, normal: n, blinds: blinds}
			sum += m.share(bodies)
		}
		all = append(all, byRays{name, kind, glass, sum})
	}
	addThing := func(name string, kind frame.Kind) {
		if glass {
			add(name, kind, frame.LitOf(s, kind, name, c.Name), blindsBut(s, in, true, name))
		} else {
			add(name, kind, frame.BodiesOf(s, kind, name, c.Name), blindsBut(s, in, false, ""))
		}
	}
	for i := range s.Lights {
		l := &s.Lights[i]
		if bare := glass && len(l.Diffusion) == 0; !bare {
			addThing(l.Name, frame.Light)
		} else if l.Head.Class != "practical" && shinesBack(s, c, l, in) {
			add(l.Name, frame.Light, frame.OpeningOf(l), blindsBut(s, in, true, l.Name))
		}
	}
	for i := range s.Grip {
		if g := &s.Grip[i]; g.Name != in {
			addThing(g.Name, frame.Grip)
		}
	}
	addThing("crew", frame.Person)
	for i := range s.Cameras {
		if !glass {
			addThing(s.Cameras[i].Name, frame.Camera)
		}
	}
	return all
}

// shinesBack says whether a lamp sends light to where the lens seems to be behind a pane.
func shinesBack(s *plan.Setup, c *plan.Camera, l *plan.Light, in string) bool {
	corners := frame.MirrorsOf(s, in)[0]
	n := r3.Unit(r3.Cross(r3.Sub(corners[1], corners[0]), r3.Sub(corners[2], corners[0])))
	from := r3.Sub(c.Frame.At, r3.Scale(2*r3.Dot(r3.Sub(c.Frame.At, corners[0]), n), n))
	d := l.Frame.Local(r3.Unit(r3.Sub(from, l.Frame.At)))
	return l.Head.Source.Intensity(d) > 0
}
