package ink

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// area is the signed area of all runs of a path.
func area(p Path, tolerance float64) float64 {
	sum := 0.0
	for _, run := range p.Flatten(tolerance) {
		sum += signedArea(run.Points)
	}
	return sum
}

func near(a, b r2.Vec, tolerance float64) bool { return r2.Norm(r2.Sub(a, b)) <= tolerance }

func TestShapesHaveTheAreaOfTheirFormula(t *testing.T) {
	at := r2.Vec{X: 3, Y: -2}
	for name, c := range map[string]struct {
		path Path
		want float64
	}{
		"rect":       {Rect(r2.Vec{X: 4, Y: 1}, r2.Vec{X: 1, Y: 3}), 6},
		"circle":     {Circle(at, 5), math.Pi * 25},
		"ring":       {append(Circle(at, 5), Arc(at, 3, 90, 450).Close()...), math.Pi * 16},
		"sector":     {Sector(at, 2, 60, 10), math.Pi * 4 * 50 / 360},
		"capsule":    {Capsule(at, r2.Vec{X: 3, Y: 2}, 1), math.Pi + 8},
		"round rect": {RoundRect(r2.Vec{}, r2.Vec{X: 6, Y: 4}, 1), 24 - 4 + math.Pi},
		"pill":       {RoundRect(r2.Vec{}, r2.Vec{X: 6, Y: 4}, 9), 8 + 4*math.Pi},
		"sharp rect": {RoundRect(r2.Vec{}, r2.Vec{X: 6, Y: 4}, 0), 24},
		"arrow head": {ArrowHead(at, 33, 3), 1.5},
	} {
		if got := area(c.path, 1e-5); !(math.Abs(got-c.want) <= 3e-4*c.want) {
			t.Errorf("%s: area %v, want %v", name, got, c.want)
		}
	}
}

func TestArcsStayOnTheirCircle(t *testing.T) {
	centre := r2.Vec{X: 10, Y: 20}
	for _, c := range [][2]float64{{0, 90}, {90, -270}, {350, 370}, {10, -200}, {45, 45}} {
		p := Arc(centre, 7, c[0], c[1])
		points := p.Points(1e-4)
		for _, q := range points {
			if r := r2.Norm(r2.Sub(q, centre)); !(math.Abs(r-7) <= 7*3e-4) {
				t.Errorf("arc %v: %v is %v from the centre", c, q, r)
			}
		}
		if first := r2.Add(centre, r2.Scale(7, Direction(c[0]))); !near(points[0], first, 1e-12) {
			t.Errorf("arc %v starts at %v, want %v", c, points[0], first)
		}
		if last := r2.Add(centre, r2.Scale(7, Direction(c[1]))); !near(points[len(points)-1], last, 1e-9) {
			t.Errorf("arc %v ends at %v, want %v", c, points[len(points)-1], last)
		}
	}
}

func TestFramesTurnClockwise(t *testing.T) {
	f := Paper().At(r2.Vec{X: 100, Y: 50}, 90, 20) // a thing that looks to the right
	if got, want := f.Place(r2.Vec{Y: 1}), (r2.Vec{X: 120, Y: 50}); got != want {
		t.Errorf("ahead is %v, want %v", got, want)
	}
	if got, want := f.Place(r2.Vec{X: 1}), (r2.Vec{X: 100, Y: 30}); got != want {
		t.Errorf("right is %v, want %v", got, want)
	}
	g := f.At(r2.Vec{Y: 2}, 45, 0.5)
	if got, want := g.Place(r2.Vec{X: 1, Y: 1}), (r2.Vec{X: 140, Y: 50 - 10*math.Sqrt2}); !near(got, want, 1e-9) {
		t.Errorf("in a frame in a frame: %v, want %v", got, want)
	}
	for b := 0.0; b < 360; b += 15 {
		if got := Bearing(r2.Vec{X: 1, Y: 1}, r2.Add(r2.Vec{X: 1, Y: 1}, Direction(b))); !(math.Abs(got-b) <= 1e-9) {
			t.Errorf("bearing of direction %v is %v", b, got)
		}
	}
}

func TestFlatCurvesStayWithinTolerance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	v := func() r2.Vec { return r2.Vec{X: rnd.Float64() * 50, Y: rnd.Float64() * 50} }
	for range 200 {
		from, p := v(), [3]r2.Vec{v(), v(), v()}
		curve := Path{}.MoveTo(from).CurveTo(p[0], p[1], p[2])
		for _, tolerance := range []float64{1, 0.1, 0.01} {
			chords := curve.Points(tolerance)
			for i := range 101 {
				q := onCubic(from, p, float64(i)/100)
				if d := distance(q, chords); d > tolerance {
					t.Fatalf("%v is %v from the chords, tolerance %v", q, d, tolerance)
				}
			}
		}
	}
}

// distance is how far p lies from a polyline.
func distance(p r2.Vec, line []r2.Vec) float64 {
	best := math.Inf(1)
	for i := range len(line) - 1 {
		a, d := line[i], r2.Sub(line[i+1], line[i])
		s := min(max(r2.Dot(r2.Sub(p, a), d)/r2.Dot(d, d), 0), 1)
		best = min(best, r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(s, d)))))
	}
	return best
}

func TestFlattenKeepsRunsApart(t *testing.T) {
	p := Polygon(r2.Vec{}, r2.Vec{X: 1}, r2.Vec{X: 1, Y: 1}, r2.Vec{}) // closed twice over
	p = p.LineTo(r2.Vec{X: 5})                                         // goes on from the start of the ring
	p = p.MoveTo(r2.Vec{X: 9}).LineTo(r2.Vec{X: 9, Y: 9})
	runs := p.Flatten(1)
	if len(runs) != 3 || !runs[0].Closed || len(runs[0].Points) != 3 || runs[1].Closed || runs[1].Points[0] != (r2.Vec{}) || len(runs[2].Points) != 2 {
		t.Errorf("%+v", runs)
	}
	if dot := (Path{}.MoveTo(r2.Vec{X: 1}).Close()).Flatten(1); len(dot) != 1 || len(dot[0].Points) != 1 {
		t.Errorf("a dot is %+v", dot)
	}
}

func TestBoundsHoldTheCurveAndNoMore(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	v := func() r2.Vec { return r2.Vec{X: math.Round(rnd.Float64() * 20), Y: math.Round(rnd.Float64() * 20)} }
	for range 500 {
		from, p := v(), [3]r2.Vec{v(), v(), v()}
		box := Path{}.MoveTo(from).CurveTo(p[0], p[1], p[2]).Bounds()
		var dense Extent
		for i := range 2001 {
			dense.Add(onCubic(from, p, float64(i)/2000))
		}
		if !near(box.Box.Min, dense.Box.Min, 2e-3) || !near(box.Box.Max, dense.Box.Max, 2e-3) {
			t.Fatalf("%v %v: bounds %v, sampled %v", from, p, box.Box, dense.Box)
		}
	}
}

// convexAbout is a random convex polygon, counter-clockwise.
func convexAbout(rnd *rand.Rand, centre r2.Vec) []r2.Vec {
	angles := make([]float64, 3+rnd.IntN(5))
	for i := range angles {
		angles[i] = rnd.Float64() * 360
	}
	slices.Sort(angles)
	slices.Reverse(angles)
	radius := 1 + 5*rnd.Float64()
	var ring []r2.Vec
	for _, a := range angles {
		ring = append(ring, onCircle(centre, radius, a))
	}
	return ring
}

func TestClippingConvexByConvexIsSymmetric(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	for range 2000 {
		a := convexAbout(rnd, r2.Vec{})
		b := convexAbout(rnd, r2.Vec{X: 4 * rnd.Float64(), Y: 4 * rnd.Float64()})
		ab, ba := ClipPolygon(a, b), ClipPolygon(b, a)
		if !(math.Abs(signedArea(ab)-signedArea(ba)) <= 1e-9) {
			t.Fatalf("area of a in b %v, of b in a %v", signedArea(ab), signedArea(ba))
		}
		if whole := signedArea(a); signedArea(ab) > whole+1e-9 || signedArea(ab) < -1e-9 {
			t.Fatalf("area %v of %v", signedArea(ab), whole)
		}
		reversed := slices.Clone(b)
		slices.Reverse(reversed)
		if !(math.Abs(signedArea(ClipPolygon(a, reversed))-signedArea(ab)) <= 1e-9) {
			t.Fatal("the direction of the clip matters")
		}
		if again := ClipPolygon(ab, b); !(math.Abs(signedArea(again)-signedArea(ab)) <= 1e-9) {
			t.Fatal("clipping twice differs from clipping once")
		}
	}
}

func TestClippedLinesAreThePartsInside(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 8))
	for range 1000 {
		clip := convexAbout(rnd, r2.Vec{})
		var line []r2.Vec
		for range 2 + rnd.IntN(5) {
			line = append(line, r2.Vec{X: 12*rnd.Float64() - 6, Y: 12*rnd.Float64() - 6})
		}
		inside, sampled := 0.0, 0.0
		for _, part := range ClipPolyline(line, clip) {
			for i := range len(part) - 1 {
				inside += r2.Norm(r2.Sub(part[i+1], part[i]))
			}
		}
		const n = 4000
		for i := range len(line) - 1 {
			step := r2.Norm(r2.Sub(line[i+1], line[i])) / n
			for k := range n {
				if contains(clip, between(line[i], line[i+1], (float64(k)+0.5)/n)) {
					sampled += step
				}
			}
		}
		if !(math.Abs(inside-sampled) <= 0.03) {
			t.Fatalf("length inside %v, sampled %v (%v in %v)", inside, sampled, line, clip)
		}
	}
	whole := []r2.Vec{{X: -0.1}, {X: 0.1}, {Y: 0.1}}
	if parts := ClipPolyline(whole, Corners(r2.Vec{X: -1, Y: -1}, r2.Vec{X: 1, Y: 1})); len(parts) != 1 || !slices.Equal(parts[0], whole) {
		t.Errorf("a line inside becomes %v", parts)
	}
}

func TestHatchCoversTheArea(t *testing.T) {
	rings := [][]r2.Vec{
		Corners(r2.Vec{X: 1, Y: 1}, r2.Vec{X: 21, Y: 11}),
		Corners(r2.Vec{X: 5, Y: 3}, r2.Vec{X: 9, Y: 8}), // a hole
	}
	const want = 200 - 20
	for _, bearing := range []float64{0, 45, 90, 100, -30} {
		total := 0.0
		for _, l := range Hatch(rings, 0.01, bearing) {
			total += r2.Norm(r2.Sub(l[1], l[0])) * 0.01
		}
		if !(math.Abs(total-want) <= 0.2) {
			t.Errorf("bearing %v: lines by spacing give %v, area is %v", bearing, total, want)
		}
	}
	if lines := Hatch(rings, 0, 0); lines != nil {
		t.Error("spacing 0 gives lines")
	}
	// Neighbours' lines meet at their common edge.
	left := Hatch([][]r2.Vec{Corners(r2.Vec{}, r2.Vec{X: 10, Y: 10})}, 1, 60)
	right := Hatch([][]r2.Vec{Corners(r2.Vec{X: 10}, r2.Vec{X: 20, Y: 10})}, 1, 60)
	met := 0
	for _, l := range left {
		if math.Abs(l[1].X-10) < 1e-9 && slices.ContainsFunc(right, func(r [2]r2.Vec) bool { return near(r[0], l[1], 1e-9) }) {
			met++
		}
	}
	if met < 8 {
		t.Errorf("%d lines go on over the edge", met)
	}
}

func TestTicksStandRightOfTheLine(t *testing.T) {
	ticks := Ticks([]r2.Vec{{}, {X: 10}, {X: 10}, {X: 10, Y: 4.5}}, 2, 0.5)
	if len(ticks) != 7 {
		t.Fatalf("%d ticks on 14.5 mm at 2 mm", len(ticks))
	}
	if want := [2]r2.Vec{{X: 1}, {X: 1, Y: -0.5}}; ticks[0] != want {
		t.Errorf("first tick %v, want %v", ticks[0], want)
	}
	if want := [2]r2.Vec{{X: 10, Y: 1}, {X: 10.5, Y: 1}}; ticks[5] != want {
		t.Errorf("first tick round the corner %v, want %v", ticks[5], want)
	}
}

func FuzzClip(f *testing.F) {
	f.Add(0.0, 0.0, 10.0, 0.0, 10.0, 10.0, 5.0, 5.0, 20.0, 5.0, 5.0, 20.0)
	f.Fuzz(func(t *testing.T, ax, ay, bx, by, cx, cy, dx, dy, ex, ey, fx, fy float64) {
		one := []r2.Vec{{X: ax, Y: ay}, {X: bx, Y: by}, {X: cx, Y: cy}}
		two := []r2.Vec{{X: dx, Y: dy}, {X: ex, Y: ey}, {X: fx, Y: fy}}
		if !sane(one...) || !sane(two...) {
			t.Skip("not on paper")
		}
		if got := ClipPolygon(one, two); len(got) > len(one)+len(two) {
			t.Errorf("%d corners of 3 and 3", len(got))
		}
		for _, part := range ClipPolyline(one, two) {
			if len(part) < 2 {
				t.Errorf("a part with %d points", len(part))
			}
		}
	})
}
