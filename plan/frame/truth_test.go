package frame_test

import (
	"flag"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// scenes is how many random scenes are looked at: few in usual runs, for each is looked at with many thousand rays.
var scenes = flag.Int("frame-scenes", 30, "random scenes that the frame check is held to")

// sceneSeed is the first of them.
var sceneSeed = flag.Int64("frame-seed", 0, "the seed of the first of them")

// mirrorScenes is how many of those have mirrors that are looked into.
var mirrorScenes = flag.Int("mirror-scenes", 4, "random scenes with mirrors that the frame check is held to")

// mirrorSeed is the first of them.
var mirrorSeed = flag.Int64("mirror-seed", 0, "the seed of the first of them")

// What the checks see in random scenes is what brute force sees.
func TestFramesOfRandomScenes(t *testing.T) {
	held := &tally{}
	for seed := range *scenes {
		held.scene(t, *sceneSeed+int64(seed))
	}
	t.Logf("%d scenes, %d sights, %d of them in frame, %d hidden; %d moves, %d pans", held.scenes, held.sights, held.shown, held.hidden, held.moves, held.pans)
	if n := *scenes; held.shown < n/2 || held.hidden < n/10 || held.moves < n/4 || held.pans < n/4 {
		t.Error("the scenes try too little")
	}
}

// tally counts what was held to brute force.
type tally struct{ scenes, sights, shown, hidden, moves, pans int }

func (h *tally) scene(t *testing.T, seed int64) {
	var s *staged
	var setup *plan.Setup
	for try := int64(0); setup == nil; try++ { // until no lamp hangs in a solid
		s = stage(seed<<16 | try)
		setup = laidOut(t, s)
	}
	h.scenes++
	for _, g := range frame.Judge(setup) {
		h.sights++
		for i := range setup.Cameras {
			if c := &setup.Cameras[i]; c.Name == g.Camera {
				h.agrees(t, seed, newBrute(setup, c), &g)
			}
		}
		if g.Hidden {
			h.hidden++
		}
		h.clears(t, seed, s, &g)
	}
}

// The least share of which the verdicts have to agree, and by how much shares may differ.
const (
	judgedShare = 1e-4
	shareSlack  = 0.02
)

// agrees holds one sight to brute force.
func (h *tally) agrees(t *testing.T, seed int64, b *brute, g *frame.Sight) {
	want := b.share(frame.BodiesOf(b.setup, g.Kind, g.Name, g.Camera))
	if want > judgedShare || g.Share > judgedShare {
		h.shown++
		if !(math.Abs(g.Share-want) <= shareSlack*max(want, judgedShare)) {
			t.Errorf("seed %d: %s takes %.6f of the frame of %s, and by rays %.6f", seed, g.Name, g.Share, g.Camera, want)
		}
		if !g.Shows() {
			t.Errorf("seed %d: %s shows by rays in %s, and is %.4f outside", seed, g.Name, g.Camera, g.Outside)
		}
	}
}

// sections are where things are written.
var sections = map[frame.Kind]string{frame.Light: "lights", frame.Grip: "grip", frame.Camera: "cameras"}

// clears writes the offered move, and the offered pan, into the scene: then nothing shows, and after 95 % of the least of it
// something still does.
func (h *tally) clears(t *testing.T, seed int64, s *staged, g *frame.Sight) {
	if m := g.Move; m != nil {
		h.moves++
		thing := s.find(sections[g.Kind], g.Name)
		h.after(t, seed, g, s.with(sections[g.Kind], thing.moved(m.By)), false)
		h.after(t, seed, g, s.with(sections[g.Kind], thing.moved(r3.Scale(0.95*m.Least/m.Metres, m.By))), true)
	}
	if p := g.Pan; p != nil {
		h.pans++
		for _, part := range []float64{1, 0.95 * p.Least / math.Abs(p.Degrees)} {
			c := *s.find("cameras", g.Camera)
			c.pan += part * p.Degrees
			h.after(t, seed, g, s.with("cameras", &c), part != 1)
		}
	}
}

func (s *staged) find(section, name string) *item {
	for _, i := range s.items[section] {
		if i.name == name {
			return i
		}
	}
	return nil
}

// after says whether something of a thing shows once the scene is changed, by the package and by rays.
func (h *tally) after(t *testing.T, seed int64, g *frame.Sight, s *staged, shows bool) {
	setup := laidOut(t, s)
	if setup == nil {
		t.Errorf("seed %d: %s does not stand where it is moved in\n%s", seed, g.Name, s.text())
		return
	}
	for _, is := range frame.Judge(setup) {
		if is.Camera != g.Camera || is.Name != g.Name || is.Kind != g.Kind {
			continue
		}
		if is.Shows() != shows {
			t.Errorf("seed %d: %s takes %.6f of %s at %.6f outside after %+v %+v", seed, g.Name, is.Share, g.Camera, is.Outside, g.Move, g.Pan)
		}
		for i := range setup.Cameras {
			if c := &setup.Cameras[i]; c.Name == g.Camera && !shows {
				if got := newBrute(setup, c).share(frame.BodiesOf(setup, g.Kind, g.Name, g.Camera)); got > 10*frame.LeastShare {
					t.Errorf("seed %d: by rays %s takes %.7f of %s after %+v %+v", seed, g.Name, got, g.Camera, g.Move, g.Pan)
				}
			}
		}
	}
}
