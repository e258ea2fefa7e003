package light

import (
	"math"
	"math/bits"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// A pane dims that lets less than half of the light through, in its brightest channel, on the side that the light comes from.
func TestPanesThatDim(t *testing.T) {
	s := sheetAt(1, r3.Vec{}, 0, 0, 1, 1) // its normal goes along x
	for _, c := range []struct {
		front, back colour.RGB
		x           float64
		want        bool
	}{
		{colour.RGB{0.49, 0.4, 0.3}, colour.RGB{1, 1, 1}, 1, true}, {colour.RGB{0.5, 0.4, 0.3}, colour.RGB{}, 1, false}, {colour.RGB{0.1, 0.1, 0.6}, colour.RGB{}, 1, false},
		{colour.RGB{1, 1, 1}, colour.RGB{0.2, 0.49, 0.2}, -1, true}, {colour.RGB{}, colour.RGB{0.2, 0.51, 0.2}, -1, false},
	} {
		s.Front.Direct, s.Back.Direct = c.front, c.back
		p, ok := sheetCaster(&s)
		if got := p.dims(r3.Vec{X: c.x}); !ok || got != c.want {
			t.Errorf("%v and %v from x = %g m: dims %v", c.front, c.back, c.x, got)
		}
	}
}

// A sheet shades by both its sides, whichever way its corners run, and its normal is theirs.
func TestFlatCasters(t *testing.T) {
	for _, corners := range [][]r3.Vec{{{}, {X: 3}, {X: 3, Y: 2}, {Y: 2}}, {{}, {X: 4}, {X: 4, Y: 3}}, {{Z: 1}, {X: 2, Z: 1}, {X: 3, Y: 1, Z: 1}, {X: 2, Y: 2, Z: 1}, {Y: 2, Z: 1}}} {
		c, ok := flatCaster(1, corners)
		area := 0.0 // by the trapezia under its sides
		for i, p := range corners {
			q := corners[(i+1)%len(corners)]
			area += (p.X - q.X) * (p.Y + q.Y) / 2
		}
		if !ok || !(math.Abs(c.size-2*area) <= 1e-12) || !(math.Abs(c.normal.Z-2*area) <= 1e-12) || c.z0 != corners[0].Z || c.z1 != corners[0].Z {
			t.Errorf("%v: size %g, want %g; normal %v", corners, c.size, 2*area, c.normal)
		}
	}
	upright, ok := flatCaster(1, []r3.Vec{{Z: 1}, {X: 1, Z: 2}, {X: 1, Z: 5}})
	if !ok || upright.z0 != 1 || upright.z1 != 5 {
		t.Errorf("it stands from %g to %g m", upright.z0, upright.z1)
	}
	for name, corners := range map[string][]r3.Vec{"a line": {{}, {X: 1}, {X: 2}}, "no end": {{}, {X: math.Inf(1)}, {Y: 1}}} {
		if _, ok := flatCaster(1, corners); ok {
			t.Errorf("%s throws a shadow", name)
		}
	}
	if coloured(colour.RGB{1, 1, 1}) || !coloured(colour.RGB{1, 0, 0}) || !coloured(colour.RGB{1, 1, 0}) {
		t.Error("greys have a colour, or colours have none")
	}
}

// The sides of a prism look out of it: from within it all face away, and from before a side that one looks at the place.
func TestSidesOfPrisms(t *testing.T) {
	p, _ := prismCaster(&solid.Prism{ID: 7, Base: box(1, 2, 2, 4, 0), Z0: 1, Z1: 4})
	sides := p.sides()
	if len(sides) != 6 {
		t.Fatalf("%d sides", len(sides))
	}
	all := 0.0
	for i := range sides {
		all += sides[i].size / 2
		if !sides[i].facesAway(r3.Vec{X: 1, Y: 2, Z: 2.5}) {
			t.Errorf("side %v looks in", sides[i].base)
		}
	}
	if want := 2 * (2*4 + 2*3 + 4*3.); !(math.Abs(all-want) <= 1e-12) {
		t.Errorf("its sides have %g m², want %g", all, want)
	}
	for _, from := range []r3.Vec{{X: 5, Y: 2, Z: 2.5}, {X: -5, Y: 2, Z: 2.5}, {X: 1, Y: 9, Z: 2.5}, {X: 1, Y: -9, Z: 2.5}, {X: 1, Y: 2, Z: 9}, {X: 1, Y: 2, Z: -9}} {
		seen := 0
		for i := range sides {
			if !sides[i].facesAway(from) {
				seen++
			}
		}
		if seen != 1 {
			t.Errorf("from %v %d sides are seen", from, seen)
		}
	}
	for _, c := range []struct {
		at, axis r3.Vec
		want     bool
	}{{r3.Vec{Z: 4.1}, r3.Vec{Z: 1}, true}, {r3.Vec{Z: 3.9}, r3.Vec{Z: 1}, false}, {r3.Vec{Z: 0.9}, r3.Vec{Z: -1}, true}, {r3.Vec{Z: 1.1}, r3.Vec{Z: -1}, false}, {r3.Vec{X: 2.1}, r3.Vec{X: 1}, true}, {r3.Vec{X: 1.9}, r3.Vec{X: 1}, false}} {
		if got := p.behind(c.at, c.axis); got != c.want {
			t.Errorf("it lies behind a face at %v along %v: %v", c.at, c.axis, got)
		}
	}
}

// The box of the points of a mask is the least that holds all of them.
func TestBoxOfAMask(t *testing.T) {
	l := Lattice{U: r3.Vec{X: 1}, V: r3.Vec{Y: 1}, Normal: r3.Vec{Z: 1}, NU: 150, NV: 9}
	g := newGrid(&l, 1e-6)
	for _, points := range [][][2]int{nil, {{0, 0}}, {{149, 8}}, {{63, 2}}, {{64, 2}, {64, 5}}, {{10, 7}, {130, 3}, {70, 4}}, {{5, 1}, {3, 1}}} {
		mask := make([]uint64, g.nv*g.words)
		low, high := [2]int{1000, 1000}, [2]int{0, 0}
		for _, p := range points {
			mask[p[1]*g.words+p[0]/64] |= 1 << (p[0] % 64)
			low = [2]int{min(low[0], p[0]), min(low[1], p[1])}
			high = [2]int{max(high[0], p[0]+1), max(high[1], p[1]+1)}
		}
		lo, hi, any := g.box(mask)
		if any != (points != nil) || any && (lo != r2.Vec{X: float64(low[0]), Y: float64(low[1])} || hi != r2.Vec{X: float64(high[0]), Y: float64(high[1])}) {
			t.Errorf("%v lie from %v to %v, %v", points, lo, hi, any)
		}
		lit := g.litRows(complement(mask))
		if want := (rows{low[1], high[1]}); points != nil && lit != want || points == nil && lit != (rows{}) {
			t.Errorf("%v lie in rows %v", points, lit)
		}
	}
	for nv, want := range map[int]int{1: 1, 8: 1, 9: 2, 16: 2, 17: 3} {
		if got := (&grid{nv: nv}).bands(); got != want {
			t.Errorf("%d rows make %d bands, want %d", nv, got, want)
		}
	}
	blank := 0
	for _, w := range g.blank {
		blank += bits.OnesCount64(w)
	}
	if blank != 9*(192-150) {
		t.Errorf("%d bits have no data", blank)
	}
}

func complement(mask []uint64) (all []uint64) {
	for _, w := range mask {
		all = append(all, ^w)
	}
	return all
}

// Counters say where a count is a number, and where it is at most one: held to counts bit by bit.
func TestCounters(t *testing.T) {
	var words [29]uint64
	x := uint64(12345)
	for k := range words {
		x = x*6364136223846793005 + 1442695040888963407
		words[k] = x ^ x>>29
	}
	count := func(of []uint64, bit int) (n int) {
		for _, w := range of {
			n += int(w >> bit & 1)
		}
		return n
	}
	var small smallCounter
	var wide, sevens, apart wideCounter
	for k, w := range words {
		if k < 7 {
			small.add(w)
		}
		wide.add(w, 0)
	}
	for k := 0; k < 28; k += 7 {
		sevens.addSeven(words[k:], 1)
	}
	for k := range 4 {
		apart.addSeven(words[k:], 4)
	}
	if apart != sevens {
		t.Error("words that lie apart count otherwise")
	}
	for bit := range 64 {
		n := count(words[:7], bit)
		for m := range 8 {
			if got := small.exactly(m)>>bit&1 != 0; got != (n == m) {
				t.Fatalf("bit %d was counted %d times: is it %d: %v", bit, n, m, got)
			}
		}
		if got := small.any()>>bit&1 != 0; got != (n > 0) {
			t.Errorf("bit %d was counted %d times: %v", bit, n, got)
		}
		for m := range 30 {
			if got := wide.atMost(m)>>bit&1 != 0; got != (count(words[:], bit) <= m) {
				t.Fatalf("bit %d was counted %d times: at most %d: %v", bit, count(words[:], bit), m, got)
			}
			if got := sevens.atMost(m)>>bit&1 != 0; got != (count(words[:28], bit) <= m) {
				t.Fatalf("by sevens bit %d was counted %d times: at most %d: %v", bit, count(words[:28], bit), m, got)
			}
		}
	}
}

// All points of an opening are in the order of its bundles, each once; a bundle has so many at most, neighbours, and is mirrored by another.
func TestBundlesOfPoints(t *testing.T) {
	for name, o := range openings {
		l := lampOf(o)
		order, begins := inBundles(l.points, 4)
		if len(order) != len(l.points) || len(begins) != len(order) {
			t.Fatalf("%s: %d places for %d points", name, len(order), len(l.points))
		}
		sorted := slices.Clone(order)
		slices.Sort(sorted)
		size, spread := 0, 0.0
		for n, i := range sorted {
			if n != i {
				t.Fatalf("%s: the order is %v", name, order)
			}
			if begins[n] {
				size = 0
			}
			if size++; size > 4 {
				t.Errorf("%s: a bundle has %d points", name, size)
			}
			if n > 0 && !begins[n] {
				spread = max(spread, r3.Norm(r3.Sub(l.points[order[n]], l.points[order[n-1]])))
			}
			if half := len(order) / 2; n < half && (begins[n] != begins[n+half] || order[n+half] != order[n]+1) {
				t.Errorf("%s: place %d of the left half is not that of the right", name, n)
			}
		}
		if !begins[0] || spread > 0.45*o.Largest() {
			t.Errorf("%s: points of a bundle are %g m apart", name, spread)
		}
	}
}

// Polygons that stand for circles have their area, and squares and boxes hold what is round; a sphere's rim lies where lines from a place touch it.
func TestShapesOfRound(t *testing.T) {
	c := circle{centre: r3.Vec{X: 1}, right: r3.Vec{Y: 1}, up: r3.Vec{Z: 1}, radius: 2}
	for _, sides := range []int{fewSides, roundSides} {
		polygon := c.polygon(sides)
		area := 0.0
		for i, p := range polygon {
			q := polygon[(i+1)%sides]
			area += (p.Y*q.Z - q.Y*p.Z) / 2
		}
		if !(math.Abs(area-math.Pi*4) <= 1e-9) || len(polygon) != sides {
			t.Errorf("a polygon of %d sides has %g m², want that of the circle", len(polygon), area)
		}
	}
	if got, want := c.square(), []r3.Vec{{X: 1, Y: -2, Z: -2}, {X: 1, Y: 2, Z: -2}, {X: 1, Y: 2, Z: 2}, {X: 1, Y: -2, Z: 2}}; !slices.Equal(got, want) {
		t.Errorf("the square is %v", got)
	}
	// A sphere of 1 m from 2 m off its middle: its rim lies a quarter of the way, with a radius of sqrt(3)/2.
	rim, ok := sphereRim(r3.Vec{}, 1, r3.Vec{Z: 2}, r3.Vec{Y: 1}, r3.Vec{X: 1})
	if !ok || r3.Norm(r3.Sub(rim.centre, r3.Vec{Z: 0.5})) > 1e-12 || !(math.Abs(rim.radius-math.Sqrt(3)/2) <= 1e-12) || r3.Norm(r3.Sub(r3.Cross(rim.right, rim.up), r3.Vec{Z: 1})) > 1e-12 {
		t.Errorf("the rim is %+v, %v", rim, ok)
	}
	if rim, ok = sphereRim(r3.Vec{}, 1, r3.Vec{Y: 2}, r3.Vec{Y: 1}, r3.Vec{X: 1}); !ok || !(math.Abs(r3.Norm(rim.right)-1) <= 1e-12) {
		t.Errorf("seen along its up the rim is %+v, %v", rim, ok)
	}
	if _, ok = sphereRim(r3.Vec{}, 1, r3.Vec{Y: 0.99}, r3.Vec{Y: 1}, r3.Vec{X: 1}); ok {
		t.Error("from within a sphere has a rim")
	}
	corners := boxAbout(r3.Vec{X: 5}, 2)
	low, high := corners[0], corners[0]
	for _, p := range corners {
		low, high = r3.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y), Z: min(low.Z, p.Z)}, r3.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y), Z: max(high.Z, p.Z)}
	}
	if low != (r3.Vec{X: 3, Y: -2, Z: -2}) || high != (r3.Vec{X: 7, Y: 2, Z: 2}) {
		t.Errorf("the box is from %v to %v", low, high)
	}
	for form, want := range map[photometry.Form]bool{photometry.Point: false, photometry.Rectangle: false, photometry.Disc: false, photometry.Tube: false, photometry.Sphere: true, photometry.Lampshade: true} {
		if got := isRound(photometry.Opening{Form: form}); got != want {
			t.Errorf("form %d is round: %v", form, got)
		}
	}
}

// A board's lobe sends out what falls on it, ends where it is a millionth of its middle, or for fields a ten-thousandth, and is as wide as its power says.
func TestLobeOfABoard(t *testing.T) {
	for _, power := range []float64{1, 10, 300} {
		b := newBoard(solid.Mirror{Power: power})
		sum := 0.0
		const rings = 200000
		for i := range rings {
			sin, cos := math.Sincos((float64(i) + 0.5) * math.Pi / 2 / rings)
			sum += math.Pow(cos, power) * sin * 2 * math.Pi * math.Pi / 2 / rings
		}
		close(t, "sent", sum*b.gain(), 1, 1e-6)
		close(t, "end", math.Pow(b.least, power)/1e-6, 1, 1e-9)
		close(t, "end for fields", math.Pow(b.faint, power)/1e-4, 1, 1e-9)
	}
	narrow := newBoard(solid.Mirror{Power: 1e4})
	sigma := narrow.halfWidth()
	if got := math.Pow(math.Cos(sigma), 1e4); math.Abs(got-math.Exp(-0.5)) > 1e-3 { // of a bell at its standard deviation
		t.Errorf("at half its width the lobe has %g of its middle", got)
	}
	sheet := solid.Sheet{Corners: []r3.Vec{{X: -1, Y: -0.5}, {X: 1, Y: -0.5}, {X: 1, Y: 0.5}, {X: -1, Y: 0.5}}}
	lit := litBoard{board: &board{Mirror: solid.Mirror{Corners: sheet.Corners, Plane: solid.Plane{N: r3.Vec{Z: 1}}, Power: 100}}, near: 3}
	for _, c := range []struct {
		at       r3.Vec
		distance float64
	}{{r3.Vec{Z: 2}, 2}, {r3.Vec{X: 4, Z: 4}, 5}, {r3.Vec{X: 4, Y: 4.5, Z: 0}, 5}, {r3.Vec{X: -0.9, Y: -3.5}, 3}, {r3.Vec{Z: -2}, 2}, {r3.Vec{X: -3, Y: 0.1, Z: 1}, math.Sqrt(5)}} {
		close(t, "distance", lit.distance(c.at), c.distance, 1e-12)
		// Receptor and lamp by turns: a point of the board moved by d turns the way in by d/near and the way out by d/distance.
		d := lit.apart(c.at, 0.5)
		close(t, "apart", d/c.distance+d/3, 0.5*0.1, 1e-12)
	}
	if got := lit.side(); got != 2 {
		t.Errorf("its longer side is %g m", got)
	}
	lit.Corners = []r3.Vec{{}, {X: 3}, {Y: 4}}
	if got := lit.side(); got != 5 {
		t.Errorf("a triangle is %g m wide", got)
	}
}

// Rules over figures have the area of these as the sum of their weights, are exact for squares, and their points lie no farther apart than asked.
func TestRulesOverFigures(t *testing.T) {
	square := []r3.Vec{{}, {X: 2}, {X: 2, Y: 1}, {Y: 1}}
	five := []r3.Vec{{}, {X: 2}, {X: 2, Y: 1}, {X: 1, Y: 1.5}, {Y: 1}}
	for _, apart := range []float64{2, 0.3, 0.02} {
		area, xx, xy := 0.0, 0.0, 0.0
		all := rule(square, apart)
		for _, n := range all {
			area, xx, xy = area+n.weight, xx+n.weight*n.at.X*n.at.X, xy+n.weight*n.at.X*n.at.Y
		}
		close(t, "area", area, 2, 1e-12)
		close(t, "x²", xx, 8./3, 1e-12)
		close(t, "xy", xy, 1, 1e-12)
		if got, least, most := float64(len(all)), min(2/apart, 96)*min(1/apart, 96), (2/apart+2*7+3)*(1/apart+2*5+3); got < least || got > most {
			t.Errorf("%d points for %g m apart, want %g to %g", len(all), apart, least, most)
		}
		area, xx = 0, 0
		for _, n := range rule(five, apart) {
			area, xx = area+n.weight, xx+n.weight*n.at.X*n.at.X
		}
		close(t, "area of five corners", area, 2.5, 1e-12)
		close(t, "x² of five corners", xx, 8./3+0.5*(1+1./6), 1e-12) // a triangle about x = 1, 1 m to either side
	}
	for name, o := range openings {
		l := lampOf(o)
		for _, apart := range []float64{1, 0.05} {
			sum, x := 0.0, 0.0
			for _, n := range l.boardRule(apart) {
				p := l.local(r3.Sub(n.at, l.at))
				sum, x = sum+n.weight, x+n.weight*p.X*p.X
			}
			close(t, name+": weights", sum, 1, 1e-12)
			tolerance := 1e-9
			if o.Form == photometry.Sphere {
				tolerance = 0.004 // by some of its points
			}
			close(t, name+": x²", x, squares(o).X, tolerance)
		}
	}
}

// What an image leaves of a beam is dark without an area; its rim is run round corner by corner; a chord goes through the origin where that
// lies in it, else through the middle.
func TestRingsOfAnImage(t *testing.T) {
	ring := []r2.Vec{{X: -1, Y: -1}, {X: 3, Y: -1}, {X: 1, Y: 2}}
	m := gateImage{axis: r3.Vec{Y: 1}, right: r3.Vec{X: 1}, up: r3.Vec{Z: 1}, rim: ring}
	if m.isDark() || !(&gateImage{rim: ring[:2]}).isDark() {
		t.Error("three corners are dark, or two are not")
	}
	for _, c := range []struct {
		s  float64
		at r2.Vec
	}{{0, ring[0]}, {0.5, r2.Vec{X: 2, Y: 0.5}}, {1. / 3, ring[1]}, {5. / 6, r2.Vec{X: 0, Y: 0.5}}, {1, ring[0]}} {
		want := r3.Unit(r3.Vec{X: c.at.X, Y: 1, Z: c.at.Y})
		if _, d := m.round(c.s); r3.Norm(r3.Sub(d, want)) > 1e-9 {
			t.Errorf("at %g of the rim a ray goes along %v, want %v", c.s, d, want)
		}
	}
	if low, high, over := levelChord(ring); !(math.Abs(low+1./3) <= 1e-12) || !(math.Abs(high-7./3) <= 1e-12) || over != 0 {
		t.Errorf("the chord is from %g to %g, %g over", low, high, over)
	}
	for i := range ring {
		ring[i].Y += 2
	}
	if low, high, over := levelChord(ring); !(math.Abs(low+1./3) <= 1e-12) || !(math.Abs(high-7./3) <= 1e-12) || !(math.Abs(over-2) <= 1e-12) {
		t.Errorf("beside the origin the chord is from %g to %g, %g over", low, high, over)
	}
}

// A receptor's plane runs through a face that has no closed form where some of its corners lie before it and some behind.
func TestPlanesAcrossFaces(t *testing.T) {
	e := Emitter{Frame: looking(r3.Vec{}, r3.Vec{X: 1}), Source: photometry.Source{Flux: 1, Distribution: photometry.NewLobe(60, 90), Opening: face(1, 1)}}
	l := newLamp(&e, 8, 8, 4)
	e.Source.Distribution = photometry.Cosine{}
	smooth := newLamp(&e, 8, 8, 4)
	for _, c := range []struct {
		r    Receptor
		want bool
	}{
		{Receptor{At: r3.Vec{X: 2}, Axis: r3.Vec{X: -1}}, false}, {Receptor{At: r3.Vec{X: 2, Z: 0.4}, Axis: r3.Vec{Z: 1}}, true}, {Receptor{At: r3.Vec{X: 2, Z: 0.6}, Axis: r3.Vec{Z: 1}}, false},
		{Receptor{At: r3.Vec{X: 2, Z: -0.6}, Axis: r3.Vec{Z: 1}}, false}, {Receptor{At: r3.Vec{X: 2}, Axis: r3.Vec{Z: 1}, Response: Dome}, false},
	} {
		if got := runsThrough(&c.r, l); got != c.want || runsThrough(&c.r, smooth) {
			t.Errorf("the plane of %+v runs across: %v", c.r, got)
		}
	}
}

// The narrower a beam is at half of its peak, the more finely surfaces look at the lamp, and never more coarsely than by a share of the distance.
func TestGrainOfALamp(t *testing.T) {
	w := build(t, &solid.Set{}, Options{Workers: 1})
	for _, c := range []struct{ half, tenth, want float64 }{{20, 40, math.Tan(10*radian) / 2}, {40, 70, math.Tan(20*radian) / 2}, {100, 150, 0.3}} {
		e := Emitter{Frame: looking(r3.Vec{}, r3.Vec{X: 1}), Source: photometry.Source{Flux: 100, Distribution: photometry.NewLobe(c.half, c.tenth)}}
		close(t, "grain", w.newSurfaceLamp(newLamp(&e, 8, 8, 4)).grainPerMetre, c.want, 1e-4)
	}
}

// A point lamp misses what lies wholly beyond the widest angle that anything of it is followed to, and only that.
func TestPatchesOutOfABeam(t *testing.T) {
	e := Emitter{Frame: looking(r3.Vec{}, r3.Vec{X: 1}), Source: photometry.Source{Flux: 100, Distribution: photometry.NewLobe(20, 40)}}
	b := build(t, &solid.Set{}, Options{Workers: 1}).newSurfaceLamp(newLamp(&e, 8, 8, 4))
	b.widest = 30 * radian
	about := func(degrees, distance, half float64) []r3.Vec {
		sin, cos := math.Sincos(degrees * radian)
		at, side := r3.Vec{X: distance * cos, Y: distance * sin}, r3.Vec{X: -half * sin, Y: half * cos}
		return []r3.Vec{r3.Sub(at, side), r3.Add(at, side), r3.Add(at, r3.Vec{Z: half}), r3.Add(at, r3.Vec{Z: -half})}
	}
	reach := math.Asin(0.1) / radian // of a figure a tenth of its distance to every side
	for _, c := range []struct {
		degrees, distance, half float64
		want                    bool
	}{{0, 1, 0.1, false}, {30 + reach - 0.1, 1, 0.1, false}, {30 + reach + 0.1, 1, 0.1, true}, {30 + reach + 0.1, 7, 0.7, true}, {120, 1, 2, false}, {180, 1, 0.1, true}} {
		if got := b.misses(about(c.degrees, c.distance, c.half)); got != c.want {
			t.Errorf("%g° aside, %g m wide %g m off: missed %v", c.degrees, 2*c.half, c.distance, got)
		}
	}
	b.widest = math.Pi
	if b.misses(about(180, 1, 0.1)) {
		t.Error("a lamp that shines all round misses something")
	}
	if h := facing(r3.Vec{X: 1}, r3.Vec{X: 1}); outside(&h, []r3.Vec{{X: 0.9}, {X: 1.1}}) || !outside(&h, []r3.Vec{{X: 0.9}, {X: 0.8}}) {
		t.Error("half-spaces hold places wrongly")
	}
}

// The rays that a lamp sends out have its flux in all, and go where it shines.
func TestRaysOfALamp(t *testing.T) {
	w := build(t, &solid.Set{}, Options{Workers: 1})
	for name, s := range map[string]photometry.Source{
		"all round": {Flux: 500, Distribution: photometry.Uniform{}}, "cosine": {Flux: 500, Distribution: photometry.Cosine{}, Opening: face(0.4, 0.2)},
		"beam": {Flux: 500, Distribution: photometry.NewLobe(20, 40)},
	} {
		e := Emitter{Frame: looking(r3.Vec{}, r3.Vec{X: 1, Y: 1}), Source: s}
		b := w.newSurfaceLamp(newLamp(&e, 64, 8, 4))
		var mean r3.Vec
		sum := b.eachRay(func(_, d r3.Vec, weight float64) bool {
			mean = r3.Add(mean, r3.Scale(2*math.Pi*weight/500, d))
			return true
		})
		close(t, name+": flux", 2*math.Pi*sum/500, 1, 0.01)
		want := map[string]float64{"all round": 0, "cosine": 2. / 3}[name]
		if name == "beam" { // by rings of a fine grid
			all := 0.0
			for i := range 20000 {
				sin, cos := math.Sincos((float64(i) + 0.5) * math.Pi / 20000)
				weight := s.Distribution.Candela(r3.Vec{X: sin, Z: -cos}) * sin
				all, want = all+weight, want+weight*cos
			}
			want /= all
		}
		if off := r3.Norm(r3.Sub(mean, r3.Scale(want, b.l.axis))); off > 0.01 {
			t.Errorf("%s: rays go along %v in the mean, want %g of the axis", name, mean, want)
		}
		n := 0
		b.eachRay(func(_, _ r3.Vec, _ float64) bool { n++; return n < 3 })
		if n != 3 {
			t.Errorf("%s: %d rays are sent after the third is refused", name, n)
		}
	}
}

// Where a beam falls on a bare floor its outline has a place for every five degrees, and a wedge on nothing one for each degree of it.
func TestPlacesOfAnOutline(t *testing.T) {
	w := build(t, &solid.Set{}, Options{Workers: 1})
	e := Emitter{Frame: down(3), Source: photometry.Source{Flux: 100, Distribution: photometry.NewLobe(40, 60)}}
	if got := w.Wedge(&e, 0.5, Limits{Reach: 20}); len(got.Outline) != 72 || !got.Footprint {
		t.Errorf("a footprint has %d places", len(got.Outline))
	} else {
		for i, p := range got.Outline {
			turn := math.Mod(math.Atan2(p.Y, p.X)-math.Atan2(got.Outline[0].Y, got.Outline[0].X)+4*math.Pi, 2*math.Pi)
			if step := float64(i) * 5 * radian; math.Abs(turn-step) > 1e-6 && math.Abs(turn-2*math.Pi+step) > 1e-6 {
				t.Errorf("place %d is turned by %g", i, turn/radian)
			}
			close(t, "radius", math.Hypot(p.X, p.Y), 3*math.Tan(20*radian), 1e-3)
		}
	}
	e.Frame = looking(r3.Vec{Z: 1}, r3.Vec{X: 1, Z: 1})
	if got := w.Wedge(&e, 0.5, Limits{Reach: 20}); len(got.Outline) < 42 || len(got.Outline) > 43 {
		t.Errorf("a wedge of 40° has %d places", len(got.Outline))
	}
}

// Sums at fixed levels add values of one plane to all channels and of three each to its own, by what a lamp is.
func TestMixesAddUp(t *testing.T) {
	m := newMix(2)
	m.add(FromPoints, 1, 2, []float32{1, 2}, colour.RGB{1, 2, 3})
	m.add(FromPoints, 1, 2, []float32{1, 2, 10, 20, 100, 200}, colour.RGB{1, 1, 0.5})
	m.add(FromPoints, 0, 2, []float32{1, 2}, colour.RGB{})
	m.add(FromFaces, 0, 2, nil, colour.RGB{1, 1, 1})
	if got, want := m[0][1], []float32{2, 4, 12, 24, 53, 106}; !slices.Equal(got, want) {
		t.Errorf("the sum is %v, want %v", got, want)
	}
	for form, want := range map[photometry.Form]string{photometry.Point: FromPoints, photometry.Tube: FromFaces, photometry.Sphere: FromFaces} {
		if got := sumOf(&lamp{opening: photometry.Opening{Form: form}}); got != want {
			t.Errorf("form %d adds to %s", form, got)
		}
	}
	if m[0][0] != nil || m[1][0] != nil || m[1][1] != nil || m[2][1] != nil {
		t.Errorf("nothing adds up to %v", m)
	}
	if got, want := addPlanes([]float32{1, 2}, []float32{10, 20}, colour.RGB{1, 1, 0.5}, 2), []float32{11, 22, 11, 22, 6, 12}; !slices.Equal(got, want) {
		t.Errorf("a tinted plane more gives %v, want %v", got, want)
	}
	if got, want := addPlanes([]float32{1, 2}, []float32{10, 20}, colour.RGB{0.5, 0.5, 0.5}, 2), []float32{6, 12}; !slices.Equal(got, want) {
		t.Errorf("a grey plane more gives %v, want %v", got, want)
	}
	if got, want := addPlanes([]float32{1, 2}, []float32{1, 2, 3, 4, 5, 6}, colour.RGB{1, 1, 1}, 2), []float32{2, 4, 4, 6, 6, 8}; !slices.Equal(got, want) {
		t.Errorf("three planes more give %v, want %v", got, want)
	}
}

// A row ends where the plane of a face ends the light of a lamp: behind it no point is lit, before it all are.
func TestUnlitRowsOfAMask(t *testing.T) {
	l := Lattice{Origin: r3.Vec{X: -3.5, Y: -1.5}, U: r3.Vec{X: 0.1}, V: r3.Vec{Y: 1}, Normal: r3.Vec{Z: 1}, NU: 71, NV: 4}
	g := newGrid(&l, 1e-6)
	for _, aim := range []r3.Vec{{X: 1, Z: 1}, {X: -1, Z: 1}, {X: 2, Y: 1, Z: 1}, {Y: 1, Z: 1}, {Y: -1, Z: 1}, {Z: 2}, {Z: -2}} {
		e := Emitter{Frame: looking(r3.Vec{Z: 1}, aim), Source: photometry.Source{Flux: 100, Distribution: photometry.Cosine{}, Opening: face(0.2, 0.2)}}
		lamp := newLamp(&e, 8, 8, 4)
		mask := make([]uint64, g.nv*g.words)
		g.hideUnlit(mask, lamp)
		for n := range l.NU * l.NV {
			i, j := n%l.NU, n/l.NU
			over := r3.Dot(r3.Sub(l.At(i, j), lamp.at), lamp.axis)
			if got := mask[j*g.words+i/64]>>(i%64)&1 != 0; math.Abs(over) > 1e-5 && got != (over < 0) {
				t.Errorf("aimed at %v: point %d, %d, %g m before the face, is unlit: %v", aim, i, j, over, got)
			}
		}
	}
}

// What of a polygon lies to one side of a height is cut off where its sides cross that.
func TestPolygonsCutAtAHeight(t *testing.T) {
	square := []r3.Vec{{Z: 0}, {X: 2, Z: 0}, {X: 4, Y: 1, Z: 4}, {X: 0, Y: 1, Z: 4}}
	for _, c := range []struct {
		at, side float64
		want     []r3.Vec
	}{
		{1, 1, []r3.Vec{{X: 0, Y: 0.25, Z: 1}, {X: 2.5, Y: 0.25, Z: 1}, {X: 4, Y: 1, Z: 4}, {X: 0, Y: 1, Z: 4}}},
		{1, -1, []r3.Vec{{}, {X: 2}, {X: 2.5, Y: 0.25, Z: 1}, {X: 0, Y: 0.25, Z: 1}}},
		{5, -1, square}, {5, 1, nil}, {0, 1, square}, {4, -1, square},
	} {
		got := clipZ(nil, square, c.at, c.side)
		off := len(got) != len(c.want)
		for _, p := range got { // from whichever corner on
			off = off || !slices.ContainsFunc(c.want, func(q r3.Vec) bool { return r3.Norm(r3.Sub(p, q)) < 1e-12 })
		}
		if off {
			t.Errorf("at %g, side %g, is left %v, want %v", c.at, c.side, got, c.want)
		}
	}
}

// A place gets light by a mirror from before it, and from no farther than mirrors reach; the image of a lattice has no data where that is not so.
func TestWhatMirrorsShow(t *testing.T) {
	set := &solid.Set{Sheets: []solid.Sheet{glass(solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -1, Z: -1}, {Y: 1, Z: -1}, {Y: 1, Z: 1}, {Y: -1, Z: 1}}}, 0.9)}}
	w := build(t, set, Options{Workers: 1})
	m := &w.mirrors[0]
	for at, want := range map[r3.Vec]bool{{X: 1}: true, {X: -1}: false, {Y: 1}: false, {X: solid.MirrorReach * 0.999}: true, {X: solid.MirrorReach * 1.001}: false} {
		if got := m.shows(at); got != want {
			t.Errorf("the mirror shows something at %v: %v", at, got)
		}
	}
	l := Lattice{Origin: r3.Vec{X: -2, Y: 0.3}, U: r3.Vec{X: 0.05}, V: r3.Vec{Y: 1}, Normal: r3.Vec{Z: 1}, NU: 90, NV: 2, Mask: []uint64{0, 1 << 20, 0}, Toward: &r3.Vec{X: 3, Y: 4, Z: 5}}
	image := m.lattice(&l)
	for n := range l.NU * l.NV {
		i, j := n%l.NU, n/l.NU
		at := l.At(i, j)
		if got, want := image.Masked(i, j), n == 84 || at.X <= w.bvh.Epsilon(); got != want {
			t.Errorf("point %d, %d of the image has no data: %v", i, j, got)
		}
		if got := image.At(i, j); r3.Norm(r3.Sub(got, inMirror(at))) > 1e-12 {
			t.Errorf("point %d, %d of the image lies at %v", i, j, got)
		}
	}
	if *image.Toward != inMirror(*l.Toward) || l.Toward.X != 3 {
		t.Errorf("its domes are turned to %v", *image.Toward)
	}
}
