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

// rolling is a random scene whose first camera moves on a track; nil where it has an error, and ends its track in a wall. Nothing else
// moves, so that the same scene with that camera standing is looked at for comparison.
func rolling(t *testing.T, seed int64) (s *staged, setup *plan.Setup) {
	t.Helper()
	d := draw{rand.New(rand.NewSource(seed))}
	s = stage(seed)
	s.items["cameras"] = s.items["cameras"][:1]
	a := s.items["cameras"][0]
	looks := d.one("", "looks: {pan: PAN, tilt: -3}, ")
	path := [2]r3.Vec{{X: d.between(-2, 2), Y: d.between(-2, 2)}, {X: d.between(-1, 1), Y: d.between(-1, 1)}}
	a.write = func(i *item) string {
		mid := r3.Add(i.at, path[0])
		end := r3.Add(mid, path[1])
		return fmt.Sprintf("%s, %strack: [[%.6f, %.6f], [%.6f, %.6f], [%.6f, %.6f]], lens: 35 mm", i.place(), strings.Replace(looks, "PAN", fmt.Sprintf("%.6f", i.pan), 1),
			i.at.X, i.at.Y, mid.X, mid.Y, end.X, end.Y)
	}
	return s, laidOut(t, s)
}

// standing is a set-up whose camera stands so far along its track.
func standing(s *plan.Setup, along float64) *plan.Setup {
	out := *s
	at := s.Cameras[0].OnTrack(along)
	at.Track = nil
	out.Cameras = []plan.Camera{at}
	return &out
}

// sightOf is what is said of a thing; rails are left out of a camera that stands.
func sightOf(all []frame.Sight, kind frame.Kind, name string) *frame.Sight {
	for i := range all {
		if all[i].Kind == kind && all[i].Name == name {
			return &all[i]
		}
	}
	return nil
}

// What is said of a whole track is the worst of what is said every centimetre of it, and where it shows begins and ends there.
func TestTracksOfRandomScenes(t *testing.T) {
	held := 0
	for seed := int64(1); held < max(4, *scenes/8); seed++ {
		_, setup := rolling(t, seed)
		if setup == nil {
			continue
		}
		held++
		all, by := frame.Judge(setup), centimetres(setup)
		for i := range all {
			if all[i].Kind != frame.Rails {
				by.hold(t, seed, &all[i])
			}
		}
	}
}

// byCentimetres is what is seen of things from a camera that stands every centimetre of its track: the worst of each, and where it shows first
// and last.
type byCentimetres struct{ worst, from, to map[string]float64 }

// trackStep is how far apart those places are, m.
const trackStep = 0.01

func centimetres(setup *plan.Setup) byCentimetres {
	worst, from, to := map[string]float64{}, map[string]float64{}, map[string]float64{}
	long := setup.Cameras[0].Track.Length()
	n := int(long / trackStep)
	for i := range n + 1 {
		along := float64(i) * long / float64(n)
		for _, s := range frame.Judge(standing(setup, along)) {
			key := fmt.Sprint(s.Kind, s.Name)
			rank := -s.Outside
			if s.Shows() {
				rank = s.Share
				if _, known := from[key]; !known {
					from[key] = along
				}
				to[key] = along
			}
			if was, known := worst[key]; !known || rank > was {
				worst[key] = rank
			}
		}
	}
	return byCentimetres{worst, from, to}
}

// hold compares what is said of a thing along the whole track.
func (b byCentimetres) hold(t *testing.T, seed int64, s *frame.Sight) {
	t.Helper()
	key := fmt.Sprint(s.Kind, s.Name)
	switch want := b.worst[key]; {
	case s.Shows() && s.Track != nil && s.Track.To-s.Track.From < trackStep && !(want > 0):
		// it shows for less than a centimetre
	case s.Track == nil || s.Shows() != (want > 0):
		t.Errorf("seed %d: %s shows %v at %+v, and looked at by centimetres %.6f", seed, s.Name, s.Shows(), s.Track, want)
	case s.Shows():
		if s.Share < want*0.995-1e-6 {
			t.Errorf("seed %d: %s takes %.6f at %.3f m at worst, and by centimetres %.6f", seed, s.Name, s.Share, s.Track.Worst, want)
		}
		if !(math.Abs(s.Track.From-b.from[key]) <= 2*trackStep) || !(math.Abs(s.Track.To-b.to[key]) <= 2*trackStep) {
			t.Errorf("seed %d: %s shows from %.3f to %.3f, and by centimetres from %.3f to %.3f", seed, s.Name, s.Track.From, s.Track.To, b.from[key], b.to[key])
		}
	case !math.IsInf(want, -1) && -s.Outside < want-0.005:
		t.Errorf("seed %d: %s comes to %.4f outside, and by centimetres to %.4f", seed, s.Name, s.Outside, -want)
	}
}

// Once a thing is moved as it is offered, or the camera panned, it shows nowhere along the track, looked at by centimetres, nor by rays;
// and a pan that is offered brings in nothing that was out, and keeps whom the camera looks at.
func TestMovesClearWholeTracks(t *testing.T) {
	moves, pans := 0, 0
	for seed := int64(100); moves < max(4, *scenes/8) || pans < 2; seed++ {
		s, setup := rolling(t, seed)
		if setup == nil {
			continue
		}
		all := frame.Judge(setup)
		for i := range all {
			g := &all[i]
			if g.Kind != frame.Light && g.Kind != frame.Grip {
				continue
			}
			if m := g.Move; m != nil && moves < max(4, *scenes/8) {
				moves++
				thing := s.find(sections[g.Kind], g.Name)
				clearAlong(t, seed, g, laidOut(t, s.with(sections[g.Kind], thing.moved(m.By))), g.Kind, g.Name)
				less := sightOf(frame.Judge(laidOut(t, s.with(sections[g.Kind], thing.moved(r3.Scale(0.94*m.Least/m.Metres, m.By))))), g.Kind, g.Name)
				if !less.Shows() {
					t.Errorf("seed %d: after 94 %% of the least move %+v nothing of %s shows", seed, m, g.Name)
				}
			}
			if p := g.Pan; p != nil && p.Clean() && pans < 2 && setup.Cameras[0].Track.Aim == nil {
				pans++
				c := *s.find("cameras", g.Camera)
				c.pan += p.Degrees
				panned := laidOut(t, s.with("cameras", &c))
				clearAlong(t, seed, g, panned, g.Kind, g.Name)
				for _, is := range frame.Judge(panned) {
					if was := sightOf(all, is.Kind, is.Name); is.Shows() && !was.Shows() {
						t.Errorf("seed %d: a pan of %g° that is offered for %s brings in %s", seed, p.Degrees, g.Name, is.Name)
					}
				}
			}
		}
	}
}

// The head of a lamp is not offered a place on the way of a lens that rolls by, over rails of which its stand keeps clear.
func TestNoMoveOntoTheWayOfALens(t *testing.T) {
	const seed = 257
	s, setup := rolling(t, seed)
	all := frame.Judge(setup)
	tried := 0
	for i := range all {
		if g := &all[i]; g.Move != nil && g.Kind == frame.Light {
			tried++
			clearAlong(t, seed, g, laidOut(t, s.with("lights", s.find("lights", g.Name).moved(g.Move.By))), g.Kind, g.Name)
		}
	}
	if tried == 0 {
		t.Error("nothing is to be moved")
	}
}

// What shows for a moment between two places that the track is looked at from belongs to the stretch on which it shows.
func TestAMomentBelongsToTheStretch(t *testing.T) {
	for seed, name := range map[int64]string{178: "l1"} {
		_, setup := rolling(t, seed)
		by, s := centimetres(setup), sightOf(frame.Judge(setup), frame.Light, name)
		if by.hold(t, seed, s); s.Track.To-s.Track.From < 0.5 {
			t.Errorf("seed %d: %s shows from %.3f to %.3f, which tries too little", seed, name, s.Track.From, s.Track.To)
		}
	}
}

// clearAlong fails where something of a thing shows somewhere along the track of a camera.
func clearAlong(t *testing.T, seed int64, g *frame.Sight, setup *plan.Setup, kind frame.Kind, name string) {
	t.Helper()
	if setup == nil {
		t.Errorf("seed %d: %s does not stand where it is moved", seed, name)
		return
	}
	long := setup.Cameras[0].Track.Length()
	for i := 0; float64(i)*0.02 <= long; i++ {
		at := standing(setup, float64(i)*0.02)
		if is := sightOf(frame.Judge(at), kind, name); is.Shows() {
			t.Errorf("seed %d: %s takes %.6f at %.2f m after %+v %+v", seed, name, is.Share, float64(i)*0.02, g.Move, g.Pan)
			return
		}
		if i%25 == 0 {
			b := newBrute(at, &at.Cameras[0])
			if got := b.share(frame.BodiesOf(at, kind, name, at.Cameras[0].Name)); got > 10*frame.LeastShare {
				t.Errorf("seed %d: by rays %s takes %.7f at %.2f m after %+v %+v", seed, name, got, float64(i)*0.02, g.Move, g.Pan)
			}
		}
	}
}
