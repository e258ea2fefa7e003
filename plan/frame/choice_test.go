package frame_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/plane"
)

// The move that is made brings a thing into no other picture, where one does; among such ones it is the least, and of equal ones the first.
func TestTheBetterMove(t *testing.T) {
	clean, far := &frame.Move{Least: 1}, &frame.Move{Least: 2}
	brings, bringsFar := &frame.Move{Least: 0.5, Brings: []string{"B"}}, &frame.Move{Least: 3, Brings: []string{"B"}}
	same := &frame.Move{Least: 1}
	for _, c := range []struct{ a, b, want *frame.Move }{
		{nil, brings, brings}, {nil, clean, clean}, {clean, far, clean}, {far, clean, clean}, {clean, same, clean}, {same, clean, same},
		{clean, brings, clean}, {brings, far, far}, {brings, bringsFar, brings}, {bringsFar, brings, brings},
	} {
		if got := frame.Better(c.a, c.b); got != c.want {
			t.Errorf("of %+v and %+v %+v is made", c.a, c.b, got)
		}
	}
}

// A shade clears a picture where the two rays part that bound what the picture takes and what reaches the lens, at 2 r / (slope - edge), to the next 5 cm;
// no nearer than 15 cm, no farther than 2 m and four fifths of the way to the lamp.
func TestWhereAShadeClearsThePicture(t *testing.T) {
	for _, c := range []struct {
		name         string
		places       [][2]float64
		radius, edge float64
		ahead        float64
		ok           bool
	}{
		{"one place", [][2]float64{{3, 4}}, 0.02, 0.65, 0.40, true}, // 0.04 / (3.02/4 - 0.65)
		{"the lowest counts", [][2]float64{{4, 4}, {3, 4}, {5, 4}}, 0.02, 0.65, 0.40, true},
		{"close before the lens", [][2]float64{{3, 1}}, 0.02, 0.65, 0.15, true},
		{"at its farthest", [][2]float64{{3, 4}}, 0.02, 0.735, 2, true},
		{"too far", [][2]float64{{3, 4}}, 0.02, 0.736, 0, false},
		{"near the lamp", [][2]float64{{1, 0.5}}, 0.1, 1.69, 0.4, true},
		{"too near the lamp", [][2]float64{{1, 0.5}}, 0.1, 1.71, 0, false},
		{"the nearest is too near", [][2]float64{{3, 4}, {1, 0.45}}, 0.02, 0.65, 0, false},
		{"within the picture", [][2]float64{{2, 4}}, 0.02, 0.65, 0, false},
		{"beside the lens", [][2]float64{{3, 4}, {3, 0}}, 0.02, 0.65, 0, false},
		{"behind the lens", [][2]float64{{3, -1}}, 0.02, 0.65, 0, false},
	} {
		if got, ok := frame.PartsAt(c.places, c.radius, c.edge); ok != c.ok || ok && !(math.Abs(got-c.ahead) <= 1e-9) {
			t.Errorf("%s: %g m, %v; want %g, %v", c.name, got, ok, c.ahead, c.ok)
		}
	}
}

// A change is rounded up until nothing shows after it; where what it is rounded to shows again, a twenty-fourth more is tried, eight times in all.
func TestRoundedChangesClear(t *testing.T) {
	halves := func(v float64) float64 { return math.Ceil(v*2-1e-9) / 2 }
	for _, c := range []struct {
		name  string
		shows func(v float64) bool
		want  float64
		ok    bool
	}{
		{"at once", func(v float64) bool { return v < 0.731 }, 1, true},
		{"behind a post alone", func(v float64) bool { return v < 0.731 || v > 0.9 && v < 1.2 }, 1.5, true},
		{"never again", func(v float64) bool { return v < 0.731 || v > 0.9 }, 0, false},
		{"at the last try", func(v float64) bool { return v < 0.731 || v > 0.9 && v < 4.4 }, 4.5, true}, // 1, 1.5, 2 ... 4.5
		{"one try too far", func(v float64) bool { return v < 0.731 || v > 0.9 && v < 4.6 }, 0, false},
	} {
		least, rounded, ok := frame.Clearing(2, halves, c.shows)
		if ok != c.ok || rounded != c.want || ok && !(math.Abs(least-0.731) <= 1e-5) {
			t.Errorf("%s: %g, rounded %g, %v; want %g, %v", c.name, least, rounded, ok, c.want, c.ok)
		}
	}
}

// What is moved turns to its point in plan; it keeps its tilt where that was not the point's, and its roll. What hangs straight up or down keeps its way.
func TestWhatIsMovedTurnsToItsPoint(t *testing.T) {
	at, by := r3.Vec{X: 1, Y: 1, Z: 2}, r3.Vec{X: 0.5, Y: -1}
	target := r3.Vec{X: 4, Y: 3, Z: 1}
	way := r3.Sub(target, at)
	bearing := plane.Bearing(plan.InPlan(way))
	is := r3.Sub(target, r3.Add(at, by))
	for _, tilt := range []float64{-15.5, 0, 40} {
		sin, cos := math.Sincos(tilt * math.Pi / 180)
		flat := plane.Direction(bearing)
		f := plan.FrameAlong(at, r3.Vec{X: flat.X * cos, Y: flat.Y * cos, Z: sin}, 0, 25)
		got := frame.Turned(f, by, target)
		level := plan.FrameAlong(got.At, got.Axis, 0, 0)
		if r3.Norm(r3.Sub(got.At, r3.Add(at, by))) > 1e-12 || !(math.Abs(got.Axis.Z-sin) <= 1e-9) || !(math.Abs(got.Axis.X*is.Y-got.Axis.Y*is.X) <= 1e-9) || got.Axis.X*is.X+got.Axis.Y*is.Y < 0 ||
			!(math.Abs(r3.Dot(got.Right, level.Right)-math.Cos(25*math.Pi/180)) <= 1e-9) || !(math.Abs(r3.Dot(got.Right, level.Up())+math.Sin(25*math.Pi/180)) <= 1e-9) {
			t.Errorf("a tilt of %g°: turned to %+v", tilt, got)
		}
	}
	f := plan.FrameAlong(at, way, 0, 0)
	if got := frame.Turned(f, by, target); r3.Norm(r3.Sub(got.Axis, r3.Unit(is))) > 1e-9 {
		t.Errorf("what aims at a point aims along %v, want %v", got.Axis, r3.Unit(is))
	}
	if got := frame.Turned(f, r3.Vec{}, target); got != f {
		t.Errorf("what stays is turned to %+v", got)
	}
	down := plan.FrameAlong(at, r3.Vec{Z: -1}, 30, 0)
	if got := frame.Turned(down, by, target); got.Axis != down.Axis || got.Right != down.Right || got.At != r3.Add(at, by) {
		t.Errorf("what hangs straight down is turned to %+v", got)
	}
	if got := frame.Turned(f, by, r3.Add(at, r3.Vec{Z: -2})); got.Axis != f.Axis || got.Right != f.Right {
		t.Errorf("what has its point below it is turned to %+v", got)
	}
	if got := frame.Turned(f, by, r3.Add(at, r3.Add(by, r3.Vec{Z: -2}))); got.Axis != f.Axis || got.Right != f.Right {
		t.Errorf("what comes to hang over its point is turned to %+v", got)
	}
}

// A shade reaches from the edge of what the picture takes outward, and along that, over all ways from the rim of the lens to the lamp: its sides are
// those to the next 5 cm, 10 cm at least.
func TestHowLargeAShadeIs(t *testing.T) {
	const edge, ahead = 0.4, 1.0
	for _, radius := range []float64{0, 0.02, 0.1} {
		for _, places := range [][][3]float64{{{3, 1.3, 4}}, {{3, -1.3, 4}}, {{3, 1.1, 4}, {3.4, 1.9, 5}}, {{2, -0.6, 2}, {2.2, 0.7, 2}}} {
			far, low, high := math.Inf(-1), math.Inf(1), math.Inf(-1)
			for _, p := range places {
				for _, rim := range []float64{-radius, radius} {
					way := rim + (p[1]-rim)*ahead/p[2]
					far, low, high = max(far, rim+(p[0]-rim)*ahead/p[2]), min(low, way), max(high, way)
				}
			}
			from := radius + ahead*edge
			steps := func(v float64) float64 { return max(0.1, 0.05*math.Ceil(v/0.05-1e-9)) }
			want := [4]float64{from, from + steps(far-from), (low+high)/2 - steps(high-low)/2, (low+high)/2 + steps(high-low)/2}
			inner, outer, left, right := frame.SpanAt(places, radius, edge, ahead)
			for i, got := range []float64{inner, outer, left, right} {
				if !(math.Abs(got-want[i]) <= 1e-9) {
					t.Errorf("radius %g, places %v: figure %d of the shade is %g, want %g", radius, places, i, got, want[i])
				}
			}
		}
	}
}
