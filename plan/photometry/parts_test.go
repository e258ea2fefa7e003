package photometry

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// held fails unless a figure is what it should be to a share of it, or of one.
func held(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// A rule of 15 points with one of 7 in it is exact for powers to the 22nd, and it sees no error where the smaller is exact too, to the 13th.
func TestKronrodIsExact(t *testing.T) {
	const a, b = -0.3, 1.1
	for power := range 23 {
		n := float64(power + 1)
		f := func(x float64) float64 { return math.Pow(x, float64(power)) }
		want := (math.Pow(b, n) - math.Pow(a, n)) / n
		sum, err := kronrod(f, a, b)
		held(t, "a power", sum, want, 1e-13)
		if gauss := power <= 13; gauss != (err < 1e-13) && (gauss || power >= 16) { // between them it may be near by chance
			t.Errorf("power %d: an error of %g", power, err)
		}
		held(t, "integrated", integrate(f, a, b), want, 1e-13)
	}
	if integrate(math.Exp, 1, 1) != 0 || integrate(math.Exp, 2, 1) != 0 {
		t.Error("nothing lies between an edge and itself")
	}
}

// What bends is halved until it is right: a kink, a pencil, a step; between edges what is empty adds nothing.
func TestIntegralsOfWhatBends(t *testing.T) {
	kink := func(x float64) float64 { return math.Abs(x - 0.3) }
	held(t, "a kink", integrate(kink, 0, 1), (0.09+0.49)/2, 1e-10)
	pencil := func(x float64) float64 { return math.Exp(-x * x / 2e-6) }
	edges := []float64{0, 1e-3, 1e-3, 1e-2, 1}
	held(t, "a pencil", integrateAcross(pencil, edges)/math.Sqrt(math.Pi*2e-6/4), 1, 1e-10)
	asked := 0
	flat := func(x float64) float64 { asked++; return 3 - x }
	held(t, "a slope in pieces", integrateAcross(flat, []float64{1, 2, 2, 4}), 3*3-7.5, 1e-13)
	if asked != 5*15 { // each piece for what it is about, and each that is not empty once more
		t.Errorf("asked at %d places", asked)
	}
	// The rule of midpoints is off by h² (b - a)/24 of the second derivative.
	const pieces = 200
	held(t, "midpoints", integrateEvenly(func(x float64) float64 { return x * x }, 1, 3), 26.0/3-2*math.Pow(2.0/pieces, 2)*2/24, 1e-12)
}

// Over the image of an edge lies as much of a disc as a chord cuts off: the integral of its width. The place where a share is left
// is found from that share.
func TestLightBeyondAnEdge(t *testing.T) {
	for _, x := range []float64{-1.5, -1, -0.8, -0.3, 0, 0.5, 0.99, 1, 2} {
		end := min(1, max(-1, x))
		want := integrate(func(a float64) float64 { return 2 * math.Sin(a) * math.Sin(a) / math.Pi }, 0, math.Acos(-end)) // u = -cos a
		held(t, "a chord", beyondEdge(x), want, 1e-12)
	}
	for _, share := range []float64{0.001, 0.1, 0.5, 0.8, 0.999} {
		held(t, "back from a share", beyondEdge(-edgeAt(share)), share, 1e-9)
	}
	held(t, "the image of 90 degrees", ImageRadius(90), 1, 1e-12)
	held(t, "of all round", ImageRadius(360), math.Tan(85*math.Pi/180), 1e-12)
}

// A convex ring is cut by a line where that crosses it, and what lies on the line is left.
func TestWhatLiesBeforeALine(t *testing.T) {
	square := []r2.Vec{{}, {X: 2}, {X: 2, Y: 2}, {Y: 2}}
	for _, c := range []struct {
		l       line
		corners int
		area    float64
	}{
		{line{1, 0, 0.5}, 4, 1}, {line{0, -1, -0.5}, 4, 3}, {line{1, 0, 2}, 4, 4}, {line{1, 0, 3}, 4, 4}, {line{1, 0, -0.1}, 0, 0}, {line{math.Sqrt2 / 2, math.Sqrt2 / 2, 3 * math.Sqrt2 / 2}, 5, 3.5}, {line{-1, 0, 0}, 4, 4},
	} {
		part := before(square, c.l)
		area := 0.0
		for i, p := range part {
			q := part[(i+1)%len(part)]
			area += (p.X*q.Y - p.Y*q.X) / 2
		}
		if held(t, "what is left", area, c.area, 1e-12); len(part) != c.corners {
			t.Errorf("%+v leaves %v", c.l, part)
		}
	}
}

// The heights of a grid are those of splitmix64: its first three numbers from a seed of 0 (from memory). Between them the relief is theirs
// at the points, their mean in the middle, and t³(6t² - 15t + 10) of the way between.
func TestNoiseIsItsGrid(t *testing.T) {
	for i, want := range []uint64{0xE220A8397B1DCDAF, 0x6E789E6AA1B965F4, 0x06C45D188009454F} {
		held(t, "a number", gridHeight(int64(i+1), 0, 0), float64(want>>11)/(1<<53), 0)
	}
	const seed = 5
	h := func(i, j int64) float64 { return gridHeight(i, j, seed) }
	for _, i := range []int64{-3, 0, 7} {
		x, y := float64(i), float64(2*i+1)
		a, b, c, d := h(i, 2*i+1), h(i+1, 2*i+1), h(i, 2*i+2), h(i+1, 2*i+2)
		held(t, "at a point", noise(x, y, seed), a, 1e-15)
		held(t, "in the middle", noise(x+0.5, y+0.5, seed), (a+b+c+d)/4, 1e-12)
		const quarter = 0.103515625 // (1/64) (6/16 - 15/4 + 10)
		held(t, "a quarter over", noise(x+0.25, y, seed), a+quarter*(b-a), 1e-12)
		held(t, "a quarter up", noise(x, y+0.25, seed), a+quarter*(c-a), 1e-12)
		held(t, "a quarter both", noise(x+0.25, y+0.25, seed), (1-quarter)*(a+quarter*(b-a))+quarter*(c+quarter*(d-c)), 1e-12)
		p := Breakup{Grain: 0.2, Seed: seed}
		held(t, "two layers", p.relief(0.4*x, 0.4*y), a+0.5*noise(2*x+0.37, 2*y+0.71, seed+1), 1e-9)
	}
}

// A level leaves a share of the gate open: of the cells within its circle, whatever lies beside it.
func TestTheLevelOfAPattern(t *testing.T) {
	heights := make([]float64, pictureSide*pictureSide)
	inside := 0
	for n := range heights {
		heights[n] = 9
		if math.Hypot(cellPlace(n%pictureSide), cellPlace(n/pictureSide)) <= 1 {
			heights[n] = math.Mod(float64(n)*math.Phi, 1) // evenly spread
			inside++
		}
	}
	held(t, "cells of the gate by its area", float64(inside)/(math.Pi*pictureCells*pictureCells), 1, 1e-3)
	for _, open := range []float64{0.001, 0.3, 0.9} {
		held(t, "the level", (&Breakup{Open: open}).level(heights), 1-open, 1e-4)
	}
	if all := (&Breakup{Open: 1}).level(heights); !math.IsInf(all, -1) {
		t.Errorf("all is open over %g", all)
	}
	if none := (&Breakup{}).level(heights); none < 1-1e-4 || none > 1 {
		t.Errorf("none is open over %g", none)
	}
}

// A row is summed between any two places, and goes on beyond its ends as it ends; chords fill their circle.
func TestSumsOfAPattern(t *testing.T) {
	heights := make([]float64, pictureSide*pictureSide)
	const row = 5
	for _, i := range []int{0, 1, 4, 7, pictureSide - 1} {
		heights[row*pictureSide+i] = 1
	}
	sums := openSums(heights, 1)
	for _, c := range []struct{ from, to, want float64 }{
		{0, 2, 2}, {1.5, 4.25, 0.75}, {2, 4, 0}, {3.5, 8, 2}, {-2, 1, 3}, {-3, -1, 2}, {pictureSide - 2, pictureSide + 3, 4}, {0, pictureSide, 5},
	} {
		held(t, "of a row", sums.between(row, c.from, c.to), c.want, 1e-9)
		held(t, "of the next", sums.between(row+1, c.from, c.to), 0, 0)
	}
	for radius, want := range map[float64]struct{ step, chords int }{1: {1, 3}, 2.5: {1, 5}, 10: {1, 21}, 19: {1, 39}, 20: {2, 21}, 64: {6, 21}} {
		step, halves := confusionChords(radius)
		if step != want.step || len(halves) != want.chords {
			t.Errorf("a radius of %g: %d chords, %d apart", radius, len(halves), step)
		}
		area := 0.0
		for k, half := range halves {
			off := float64((k - len(halves)/2) * step)
			held(t, "a chord", math.Hypot(half, off), radius, 1e-12)
			area += 2 * half * float64(step)
		}
		if radius > 5 {
			held(t, "the circle", area/(math.Pi*radius*radius), 1, 0.02)
		}
	}
}

// A picture is, cell by cell, the mean of the pattern over the circle of confusion, and between cells it is even.
func TestAPictureIsTheMeanOfItsPattern(t *testing.T) {
	b := Breakup{Open: 0.4, Grain: 0.1, Seed: 3}
	heights := make([]float64, pictureSide*pictureSide)
	for n := range heights {
		heights[n] = b.relief(cellPlace(n%pictureSide), cellPlace(n/pictureSide))
	}
	level := b.level(heights)
	const radius = 8
	p := b.picture(radius / float64(pictureCells))
	for _, c := range [][2]int{{384, 384}, {300, 410}, {200, 500}, {4, 600}, {420, 2}, {765, 350}} {
		open, all := 0.0, 0.0
		for j := -radius; j <= radius; j++ {
			for i := -radius; i <= radius; i++ {
				if math.Hypot(float64(i), float64(j)) > radius {
					continue
				}
				x, y := min(max(c[0]+i, 0), pictureSide-1), min(max(c[1]+j, 0), pictureSide-1)
				all++
				if heights[y*pictureSide+x] >= level {
					open++
				}
			}
		}
		got := float64(p.cells[c[1]*pictureSide+c[0]])
		held(t, "a cell", got, open/all, 0.025)
		x, y := cellPlace(c[0]), cellPlace(c[1])
		held(t, "at its middle", p.at(x, y), got, 3e-3) // the last cell is reached to a thousandth
		if c[0] == 384 {
			right, up := float64(p.cells[c[1]*pictureSide+c[0]+1]), float64(p.cells[(c[1]+1)*pictureSide+c[0]])
			held(t, "half way to the right", p.at(x+0.5/pictureCells, y), (got+right)/2, 1e-9)
			held(t, "half way up", p.at(x, y+0.5/pictureCells), (got+up)/2, 1e-9)
			held(t, "far out", p.at(9, y), float64(p.cells[(c[1]+1)*pictureSide-1]), 0.05)
		}
	}
	bare := Breakup{Open: 1, Grain: 0.1}
	if all := bare.picture(0.3); all.at(0.2, -0.4) != 1 || all.at(-2, 2) != 1 {
		t.Error("what is all open is dark somewhere")
	}
}

// Two circles have a lens in common: closed forms, and strip by strip.
func TestCirclesInCommon(t *testing.T) {
	for _, c := range []struct{ a, b, apart float64 }{{1, 1, 0}, {1, 1, 0.7}, {2, 1, 1.5}, {1, 2, 1.5}, {2, 1, 2.9}, {2, 1, 3}, {2, 1, 5}, {2, 0.5, 1.4}, {2, 0.5, 1.5}, {0.3, 2, 1.71}} {
		const strips = 40000
		want := 0.0
		for i := range strips {
			x := c.a * (2*(float64(i)+0.5)/strips - 1)
			off := x - c.apart
			want += 2 * c.a / strips * 2 * math.Sqrt(max(0, min(c.a*c.a-x*x, c.b*c.b-off*off)))
		}
		held(t, "in common", circlesOverlap(c.a, c.b, c.apart), want, 2e-5)
	}
}

// Discs on one axis exchange A F with F = (X - sqrt(X² - 4 (r2/r1)²))/2, X = 1 + (1 + R2²)/R1², R = r/d (M. F. Modest, Radiative Heat
// Transfer, configuration C-41), and from far away the product of their areas by pi d².
func TestExchangeOfDiscs(t *testing.T) {
	for _, c := range [][3]float64{{0.1, 0.2, 0.3}, {0.5, 0.5, 0.01}, {0.3, 0.05, 2}} {
		a, b := ring{0.2, c[0]}, ring{0.2 + c[2], c[1]}
		r1, r2 := c[0]/c[2], c[1]/c[2]
		x := 1 + (1+r2*r2)/(r1*r1)
		want := math.Pi * c[0] * c[0] * (x - math.Sqrt(x*x-4*r2*r2/(r1*r1))) / 2
		held(t, "up", a.exchange(b)/want, 1, 1e-9)
		held(t, "down", b.exchange(a)/want, 1, 1e-9)
	}
	held(t, "far", ring{0, 0.1}.exchange(ring{50, 0.2})/(math.Pi*0.01*math.Pi*0.04/(math.Pi*2500)), 1, 1e-4)
	held(t, "itself", ring{1, 0.4}.exchange(ring{1, 0.4}), math.Pi*0.16, 1e-15)
}

// What is seen of a shade from far away, counted over a fine lattice of lines of sight: of the bulb through the nearer opening, and of a
// band's outside and inside, which is the projection of its outline less the nearer disc.
func TestWhatIsSeenOfAShade(t *testing.T) {
	form := ShadeForm{Top: 0.14, Bottom: 0.34, Height: 0.2, Bulb: 0.07, Reflectance: 0.5, Transmittance: 0.3}
	s, _ := NewShade(form)
	for _, degrees := range []float64{0, 20, 44, 65, 90, 118, 140, 165, 180} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		v := shadeView{s, math.Max(0, sin), math.Abs(cos), cos > 0}
		within := func(r ring, x, y float64) bool { // its disc, as it is seen: an ellipse
			y -= r.at * v.sin * map[bool]float64{true: 1, false: -1}[v.above]
			return x*x+y*y/(v.cos*v.cos) <= r.radius*r.radius
		}
		near := s.rings[v.near()]
		const half, n = 0.18, 360
		cell := 4 * half * half / (n * n)
		bulb, through := 0.0, 0.0
		for i := range n {
			for j := range n {
				x, y := half*(2*(float64(i)+0.5)/n-1), half*(2*(float64(j)+0.5)/n-1)
				if math.Hypot(x, y) <= form.Bulb/2 && within(near, x, y) {
					bulb += cell
				}
				if within(near, x, y) && within(s.rings[5], x, y) {
					through += cell
				}
			}
		}
		held(t, "the bulb", v.bulb(), bulb, 2e-5)
		held(t, "a disc through the opening", v.through(5), through, 4e-5)
		band := 4
		hull := hullOf(v.outline(s.rings[band]), v.outline(s.rings[band+1]))
		disc := s.rings[band]
		if v.above {
			disc = s.rings[band+1]
		}
		rims := v.rimsOfBands()
		held(t, "a band's outside", v.outside(band, &rims), hull-v.cos*math.Pi*disc.radius*disc.radius, 1e-6)
		of := s.bulbLuminance() * v.bulb()
		for k := range s.bands {
			of += (s.bands[k].Outside*v.outside(k, &rims) + s.bands[k].Inside*math.Abs(v.through(k+1)-v.through(k))) / math.Pi
		}
		held(t, "the intensity", s.At(radians(degrees)), of, 1e-12)
	}
	peak := 0.0
	for t := range 181 {
		peak = max(peak, s.At(radians(float64(t))))
	}
	held(t, "the peak", s.Peak(), peak, 0)
}

// outline is the ellipse as which a ring is seen.
func (v *shadeView) outline(r ring) (points []r2.Vec) {
	const n = 4000
	for k := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / n)
		points = append(points, r2.Vec{X: r.radius * cos, Y: r.at*v.sin + r.radius*sin*v.cos})
	}
	return points
}

// hullOf is the area of the convex hull of some points: by its widths over the directions it faces, half the integral of h² - h'² (Cauchy).
func hullOf(all ...[]r2.Vec) (area float64) {
	const n = 7200
	reach := func(k int) float64 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / n)
		far := math.Inf(-1)
		for _, points := range all {
			// Of an ellipse the farthest point is known, which saves asking all.
			middle := r2.Scale(0.5, r2.Add(points[0], points[len(points)/2]))
			wide, high := r2.Norm(r2.Sub(points[0], middle)), r2.Norm(r2.Sub(points[len(points)/4], middle))
			far = max(far, middle.X*cos+middle.Y*sin+math.Hypot(wide*cos, high*sin))
		}
		return far
	}
	step := 2 * math.Pi / n
	last := reach(-1)
	for k := range n {
		h := reach(k)
		slope := (h - last) / step
		area += ((h+last)*(h+last)/4 - slope*slope) / 2 * step
		last = h
	}
	return area
}

// The node below an angle is the last that is no greater, whatever the steps are; the first and the last belong to the scale, by rounding
// too, and nothing beyond them.
func TestAnglesOfAScale(t *testing.T) {
	for _, angles := range [][]float64{{0, 10, 20, 30}, {0, 10, 20, 30.00002}, {-30, -29, 0, 0.5, 90}, {0, 90}, {5, 5.1, 5.3, 7, 80, 81}, {0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1}} {
		s := newScale(angles)
		last := len(angles) - 1
		for k := range 2000 {
			a := angles[0] + (angles[last]-angles[0])*float64(k)/1999
			if k%7 == 0 {
				a = angles[k%len(angles)]
			}
			below := 0
			for below < last-1 && angles[below+1] <= a {
				below++
			}
			want := (a - angles[below]) / (angles[below+1] - angles[below])
			i, part, ok := s.find(a)
			if !ok || !(math.Abs(float64(i)+part-float64(below)-want) <= 1e-9) || part < 0 || part >= 1 {
				t.Fatalf("%v in %v: node %d and %g, want %d and %g", a, angles, i, part, below, want)
			}
			i, part, ok = s.quick(a)
			if !ok || i != below || !(math.Abs(part-want) <= 1e-9) {
				t.Fatalf("%v in %v, quickly: node %d and %g, want %d and %g", a, angles, i, part, below, want)
			}
		}
		for a, want := range map[float64]bool{angles[0] - 1e-10: true, angles[last] + 1e-10: true, angles[0] - 1e-8: false, angles[last] + 1e-8: false, math.NaN(): false} {
			_, part, ok := s.find(a)
			if ok != want || part != 0 {
				t.Errorf("%v in %v is found: %v, %g", a, angles, ok, part)
			}
		}
	}
	degree := newScale([]float64{0, 0.2, 1})
	for a, want := range map[float64]bool{-1e-11: true, 1 + 1e-11: true, -1e-7: false, 1 + 1e-7: false, math.NaN(): false} {
		if _, _, ok := degree.quick(a); ok != want {
			t.Errorf("%v is found quickly: %v", a, ok)
		}
	}
	for step, angles := range map[float64][]float64{10: {0, 10, 20 + 9e-6, 30}, 0: {0, 10, 20 + 2e-5, 30}, 90: {-90, 0, 90}} {
		if got := newScale(angles).step; got != step {
			t.Errorf("the steps of %v are %g", angles, got)
		}
	}
	if one := newScale([]float64{7}); one.step != 0 || len(one.inverse) != 0 {
		t.Errorf("one angle has steps: %+v", one)
	}
}

// (sin d - d cos d)/d is the sum of (-1)^(k+1) 2k d^2k/(2k+1)!, on both sides of where the two ways of reckoning it meet.
func TestTheFirstMoment(t *testing.T) {
	for _, d := range []float64{1e-6, 1e-3, 0.019, 0.02, 0.021, 0.1, 1, 3} {
		want, term := 0.0, 1.0
		for k := 1; k < 20; k++ {
			n := float64(2 * k)
			term *= d * d / (n * (n + 1)) // d^2k/(2k+1)!
			sign := 1.0
			if k%2 == 0 {
				sign = -1
			}
			want += sign * n * term
		}
		held(t, "the moment", firstMoment(d)/want, 1, 1e-11)
	}
}

// Behind a scrim over its lower half a lens shows a patch: as broad as the narrowest beam is of this one, its middle farther up the higher
// it is looked at from; from behind, all of one half.
func TestThePatchOfAHalfScrim(t *testing.T) {
	const field, narrowest = 60, 15
	h, _ := NewHalfScrim(NewLobe(50, field), 0.5, field, narrowest)
	slope := (1 - 0.25) / math.Tan(30*math.Pi/180)
	for share, want := range map[float64]float64{0: 0.5, 0.125: 0.25, -0.125: 0.75, 0.25: 0, -0.25: 1, 0.7: 0, -0.7: 1} {
		up := share / slope // where the middle of the patch lies so far from that of the lens
		held(t, "from below", h.below(r3.Unit(r3.Vec{X: 0.3, Y: up, Z: -1})), want, 1e-9)
	}
	for _, z := range []float64{0, 1} {
		held(t, "up behind", h.below(r3.Vec{Y: 0.5, Z: z}), 0, 0)
		held(t, "down behind", h.below(r3.Vec{Y: -0.5, Z: z}), 1, 0)
	}
	spot, _ := NewHalfScrim(NewLobe(8, 12), 0.5, 12, 12)
	held(t, "at spot", spot.below(r3.Vec{Y: 0.5, Z: 1}), 0.5, 0)
	held(t, "at spot ahead", spot.below(r3.Vec{Y: 0.1, Z: -1}), 0.5, 0)
}

// Of a grid before a cosine the kernel gets the cotangents of its cut-off half angles and its intensity on the axis; of any other grid none.
func TestAGridOverACosine(t *testing.T) {
	g, _ := NewGrid(Cosine{}, 60, 40)
	inverse, perLumen, ok := g.OverCosine()
	if held(t, "across", inverse[0], math.Sqrt(3), 1e-12); !ok {
		t.Error("a grid over a cosine is not known")
	}
	held(t, "along", inverse[1], 1/math.Tan(20*math.Pi/180), 1e-12)
	held(t, "on the axis", perLumen, g.Candela(r3.Vec{Z: -1}), 1e-12)
	other, _ := NewGrid(Uniform{}, 60, 40)
	if _, _, ok := other.OverCosine(); ok {
		t.Error("a grid over an even source is taken for one over a cosine")
	}
}

// A plane through a face that shines by the cosine, at an angle a from its axis, leaves (1 + sin a)/2 of its light: the projection of what it
// leaves of the hemisphere is half a disc and half an ellipse (the analogue of Nusselt). So does a cut in its gate, however far out.
func TestCutsThroughAFace(t *testing.T) {
	const beam = 60
	for _, at := range []float64{-1.5, -0.4, 0, 0.7, 1.3, 1.55, 2, 4} { // of the edge, in radii of the image
		d, share := NewGated(Cosine{}, beam, Gate{Cuts: []Cut{{Angle: 30, Depth: (1 - at) / 2}}, Blur: 1e-3})
		a := math.Atan(at * math.Tan(beam/2*math.Pi/180))
		held(t, "what a cut leaves", share, (1+math.Sin(a))/2, 1.5e-4)
		if at > 0 {
			held(t, "the peak", d.Peak()*share*math.Pi, 1, 1e-3) // the axis is left
		} else {
			held(t, "the peak beside the axis", d.Peak()*share*math.Pi, math.Cos(a), 5e-3)
		}
	}
}

// square is light that is strong to the right or up, as the square of that part of its direction, and sends out one lumen all round.
type square struct{ right, up float64 }

func (s square) Candela(dir r3.Vec) float64 {
	return 3 / (4 * math.Pi) * (s.right*dir.X*dir.X + s.up*dir.Y*dir.Y)
}

// The illuminance on the axis of light that grows to the side, by closed forms: along a tube the integral of x²/r⁵ is x³/3h²r³, over a disc
// half of that of (u - h²) u^(-5/2) with u = r², over a rectangle it is summed.
func TestIlluminanceOnTheAxis(t *testing.T) {
	const wide, high = 0.7, 0.5
	for _, h := range []float64{0.4, 2.5} {
		rim := math.Hypot(h, wide/2)
		held(t, "a tube", onAxis(square{right: 1}, Opening{Form: Tube, Width: wide, Height: 0.02}, h)*4*math.Pi*wide*h/(2*math.Pow(wide/2/rim, 3)), 1, 1e-9)
		held(t, "a tube across", onAxis(square{up: 1}, Opening{Form: Tube, Width: wide, Height: 0.02}, h), 0, 1e-15)
		disc := 3 * h / (math.Pi * wide * wide) * (2/(3*h) - 1/rim + h*h/(3*rim*rim*rim))
		for _, s := range []square{{right: 1}, {up: 1}} {
			held(t, "a disc", onAxis(s, Opening{Form: Disc, Width: wide}, h)/disc, 1, 1e-8)
			const n = 400
			sum := 0.0
			for i := range n {
				for j := range n {
					x, y := wide*((float64(i)+0.5)/n-0.5), high*((float64(j)+0.5)/n-0.5)
					r := math.Sqrt(x*x + y*y + h*h)
					sum += s.Candela(r3.Vec{X: x / r, Y: y / r}) * h / (r * r * r) / (n * n)
				}
			}
			held(t, "a rectangle", onAxis(s, Opening{Form: Rectangle, Width: wide, Height: high}, h)/sum, 1, 1e-4)
		}
	}
}

// What leaves a black shade above goes up, and what leaves it below goes down.
func TestABlackShadesHalves(t *testing.T) {
	s, share := NewShade(ShadeForm{Top: 0.2, Bottom: 0.34, Height: 0.2, Bulb: 0.06})
	ring := func(gamma float64) float64 { return 2 * math.Pi * s.At(gamma) * math.Sin(gamma) }
	held(t, "up", integrateEvenly(ring, 0, math.Pi/2), s.Parts().Above/share, 1e-3)
	held(t, "down", integrateEvenly(ring, math.Pi/2, math.Pi), s.Parts().Below/share, 1e-3)
}

// A sphere is seen under 2 pi (1 - cos a), where the sine of a is its radius by its distance; from within it is all round.
func TestSolidAngleOfASphere(t *testing.T) {
	held(t, "of 0.3 at 0.5", SphereSolidAngle(0.3, 0.5), 2*math.Pi*(1-0.8), 1e-12)
	held(t, "of 3 at 5", SphereSolidAngle(3, 5), 2*math.Pi*(1-0.8), 1e-12)
	held(t, "within", SphereSolidAngle(0.3, 0.2), 4*math.Pi, 1e-12)
}

// The rim of light that has none ends where a lens is taken to.
func TestTheRimOfEvenLight(t *testing.T) {
	for _, p := range Outline(Uniform{}, 0.5) {
		held(t, "the rim", r2.Norm(p)/math.Tan(85*math.Pi/180), 1, 1e-9)
	}
}

// Behind cells there is no light past the plane of their mouths, whatever the lamp sends there.
func TestCellsAreDarkBehind(t *testing.T) {
	base := NewLobe(150, 300)
	c, _ := NewHoneycomb(base, 90)
	cells := axialCells{c, base}
	for _, degrees := range []float64{0, 20, 44.9, 45, 60, 89, 90, 100, 135, 180} {
		held(t, "cells", cells.At(radians(degrees)), c.Candela(Direction(degrees, 30)), 1e-12)
	}
	if base.At(2) == 0 || cells.At(2) != 0 || cells.At(0.3) == 0 {
		t.Error("cells let light out behind")
	}
}
