package draw

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/section"
)

// What is drawn as reached by a light is where the head, an egg, is turned to it, for heads that lean and lights from everywhere;
// and the sets of lights that are lettered there are the same.
func TestReachedPartsOfTheHead(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	unit := func() r3.Vec {
		return r3.Unit(r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()})
	}
	checked := 0
	for range 40 {
		lean := rng.Float64() * 2 * math.Pi
		h := headView{Lesson: &Lesson{Lesson: &meter.Lesson{}}, centre: r2.Vec{X: 50, Y: 40}, picture: plan.FrameAlong(r3.Vec{}, unit(), 0, 0),
			upright: r2.Vec{X: math.Sin(lean), Y: math.Cos(lean)}, wide: eggWide, high: eggHigh}
		way := unit()
		at := r3.Scale(2, way)
		light := &meter.LessonLight{At: &at}
		d, _ := h.light(light)
		_, reached := h.terminator(d)
		for range 200 {
			x, y := 2*rng.Float64()-1, 2*rng.Float64()-1
			if x*x+y*y > 0.97 {
				continue
			}
			own := r3.Vec{X: x * h.wide, Y: y * h.high, Z: math.Sqrt(1-x*x-y*y) * h.wide} // on the egg, in its own axes
			normal := r3.Unit(r3.Vec{X: own.X / h.wide / h.wide, Y: own.Y / h.high / h.high, Z: own.Z / h.wide / h.wide})
			facing := r3.Dot(normal, h.inHead(h.inPicture(way)))
			if math.Abs(facing) < 0.03 {
				continue // on the edge itself
			}
			q := h.onPaper(r2.Vec{X: own.X, Y: own.Y})
			if box.InRing(reached, q) != (facing > 0) {
				t.Fatalf("toward %v a place that faces it by %.3f is drawn as reached: %v", way, facing, facing < 0)
			}
			if set := h.reaching(r2.Sub(q, h.centre), []*meter.LessonLight{light}, nil); (set == 1) != (facing > 0) {
				t.Fatalf("toward %v a place that faces it by %.3f has the set %b", way, facing, set)
			}
			checked++
		}
	}
	if checked < 3000 {
		t.Errorf("only %d places are looked at", checked)
	}
}

// The camera stands below the head, camera left is left on paper, angles are true, and what is near is drawn at its distance.
func TestLightsStandAtTheirAngles(t *testing.T) {
	l := &Lesson{Lesson: &meter.Lesson{}, centre: r2.Vec{X: 80, Y: 60}, scale: 30, reach: 50}
	for turn, want := range map[float64]r2.Vec{0: {Y: -1}, 90: {X: 1}, -90: {X: -1}, 180: {Y: 1}, -45: {X: -math.Sqrt2 / 2, Y: -math.Sqrt2 / 2}} {
		at, broken := l.stand(turn, 40)
		if r2.Norm(r2.Sub(at, r2.Add(l.centre, r2.Scale(40, want)))) > 1e-9 || broken {
			t.Errorf("at %g° it stands at %v, broken %v", turn, at, broken)
		}
		if far, broken := l.stand(turn, 400); !(math.Abs(r2.Norm(r2.Sub(far, l.centre))-l.reach) <= 1e-9) || !broken {
			t.Errorf("at %g° and far off it stands at %v, broken %v", turn, far, broken)
		}
	}
}

// A lamp whose light comes off a wall stands at its own angle and distance from the face, turned as it aims; one at the left of who looks back is at
// camera left.
func TestALampBehindAWallStandsAtItsPlace(t *testing.T) {
	s := &plan.Setup{
		People:  []plan.Person{{Name: "ada", Face: plan.FrameAlong(r3.Vec{X: 1, Y: 2, Z: 1.6}, r3.Vec{Y: -1}, 0, 0)}},
		Cameras: []plan.Camera{{Name: "A", Frame: plan.FrameAlong(r3.Vec{X: 1, Y: -1, Z: 1.6}, r3.Vec{Y: 1}, 0, 0)}},
		Lights:  []plan.Light{{Name: "k", Frame: plan.FrameAlong(r3.Vec{X: 3, Y: 2, Z: 2}, r3.Vec{X: 1}, 0, 0)}},
	}
	l := &Lesson{Drawing: &Drawing{Report: section.Report{In: &section.Input{Setup: s}}}, Lesson: &meter.Lesson{Person: "ada", Camera: "A"}}
	turn, far := l.lampFrom(&s.Lights[0])
	if way := toward(turn); math.Abs(far-2) > 1e-9 || math.Abs(way.X-1) > 1e-9 || math.Abs(way.Y) > 1e-9 {
		t.Errorf("it stands %g m off, on paper toward %v", far, way)
	}
	if got := l.lightWords(&meter.LessonLight{Role: "key", By: "den.top"}); len(got) != 2 || got[1][0] != "off den.top" {
		t.Errorf("its tag says %q", got)
	}
}
