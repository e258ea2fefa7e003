package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// bitOf says whether point (i, j) is set in a mask of some words a row.
func bitOf(mask []uint64, words, i, j int) bool { return mask[j*words+i>>6]>>(i&63)&1 != 0 }

// A run of bits is filled from its first up to, not including, its last, across words.
func TestFill(t *testing.T) {
	const words = 3
	for from := range words * 64 {
		for to := from + 1; to <= words*64; to++ {
			row := make([]uint64, words)
			fill(row, from, to)
			for i := range words * 64 {
				if bitOf(row, words, i, 0) != (i >= from && i < to) {
					t.Fatalf("%d up to %d: bit %d is wrong", from, to, i)
				}
			}
		}
	}
}

// A box is covered where every point in it is set: one that is not, anywhere in it, is found.
func TestCovered(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	g := &grid{nu: 150, nv: 6, words: 3}
	b := newRasteriser(g)
	between := func(limit int) (low, high float64) {
		low, high = float64(limit)*(1.2*r.Float64()-0.1), float64(limit)*(1.2*r.Float64()-0.1)
		if r.IntN(3) == 0 {
			low, high = math.Round(low), math.Round(high)
		}
		return min(low, high), max(low, high)
	}
	found := map[bool]int{}
	for range 4000 {
		mask := make([]uint64, g.nv*g.words)
		for n := range mask {
			mask[n] = ^uint64(0)
		}
		i, j := r.IntN(g.nu), r.IntN(g.nv)
		mask[j*g.words+i>>6] &^= 1 << (i & 63)
		var low, high r2.Vec
		low.X, high.X = between(g.nu)
		low.Y, high.Y = between(g.nv)
		want := !(float64(i) >= low.X && float64(i) < high.X && float64(j) >= low.Y && float64(j) < high.Y)
		found[want]++
		if got := b.covered(mask, low, high); got != want {
			t.Fatalf("the box from %v to %v without point (%d, %d): %v, want %v", low, high, i, j, got, want)
		}
	}
	if found[true] < 500 || found[false] < 200 {
		t.Errorf("covered and not: %v, want many of both", found)
	}
}

// inConvex says whether a place lies within a convex outline, whichever way that runs.
func inConvex(p r2.Vec, outline []r2.Vec) bool {
	left, right := 0, 0
	for i, a := range outline {
		switch c := r2.Cross(r2.Sub(outline[(i+1)%len(outline)], a), r2.Sub(p, a)); {
		case c > 0:
			left++
		case c < 0:
			right++
		}
	}
	return left == 0 || right == 0
}

// inBands paints an outline onto a mask, some rows at a time.
func inBands(b *rasteriser, outline []r2.Vec, rows int) []uint64 {
	g := b.grid
	mask := make([]uint64, g.nv*g.words)
	for from := 0; from < g.nv; from += rows {
		to := min(from+rows, g.nv)
		b.paint(mask[from*g.words:to*g.words], outline, from, to)
	}
	return mask
}

// What is painted are the points within an outline, in bands of any height, beyond the lattice and within.
func TestPaint(t *testing.T) {
	r := rand.New(rand.NewPCG(33, 34))
	g := &grid{nu: 140, nv: 40, words: 3}
	b := newRasteriser(g)
	for range 150 {
		middle := r2.Vec{X: 160*r.Float64() - 10, Y: 50*r.Float64() - 5}
		turn, n := r.Float64(), 3+r.IntN(5)
		var outline []r2.Vec
		wide, high := 2+80*r.Float64(), 2+25*r.Float64()
		for k := range n {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + turn) / float64(n))
			outline = append(outline, r2.Add(middle, r2.Vec{X: wide * cos, Y: high * sin}))
		}
		mask := inBands(b, outline, 1+r.IntN(g.nv))
		for j := range g.nv {
			for i := range g.nu {
				if got, want := bitOf(mask, g.words, i, j), inConvex(r2.Vec{X: float64(i), Y: float64(j)}, outline); got != want {
					t.Fatalf("point (%d, %d) of %v: %v, want %v", i, j, outline, got, want)
				}
			}
		}
	}
}

// shadowBox is the box round an outline.
func shadowBox(outline []r2.Vec) (lo, hi r2.Vec) {
	corners := make([]r3.Vec, len(outline))
	for i, p := range outline {
		corners[i] = r3.Vec{X: p.X, Y: p.Y}
	}
	return span(corners)
}

// A shadow lies within the reach of what throws it, and that of an upright box fills it; what stands under the plane or
// over the lamp has none.
func TestReachHoldsTheShadow(t *testing.T) {
	r := rand.New(rand.NewPCG(35, 36))
	lattice := floorAt(0, 0, 1, 8, 81)
	g := newGrid(&lattice, 1e-6)
	b := newRasteriser(g)
	thrown := 0
	for range 2000 {
		p := r3.Vec{X: 80 * r.Float64(), Y: 80 * r.Float64(), Z: 0.2 + 3*r.Float64()}
		low, high := 4*r.Float64()-0.5, 4*r.Float64()-0.5
		upright, turn := r.IntN(2) == 0, 0.0
		if !upright {
			turn = r.Float64()
		}
		c, ok := prismCaster(&solid.Prism{Base: box(8*r.Float64(), 8*r.Float64(), 0.1+r.Float64(), 0.1+r.Float64(), turn), Z0: 1 + min(low, high), Z1: 1 + max(low, high)})
		if !ok {
			t.Fatal("a box throws no shadow")
		}
		s := g.shape(&c, 1)
		lo, hi, any := s.reach(p)
		outline := b.shadow(&s, p)
		foot, top := min(low, high), max(low, high)
		if want := top > 0 && foot < p.Z*(1-grazing); any != want || (len(outline) > 0) != want {
			t.Fatalf("from %g to %g m under a lamp at %g m: reach %v, %d corners", foot, top, p.Z, any, len(outline))
		}
		if !any {
			continue
		}
		thrown++
		low2, high2 := shadowBox(outline)
		slack := 1e-9 * (r2.Norm(r2.Sub(high2, low2)) + 1)
		if low2.X < lo.X-slack || low2.Y < lo.Y-slack || high2.X > hi.X+slack || high2.Y > hi.Y+slack {
			t.Fatalf("the shadow from %v to %v leaves its reach from %v to %v", low2, high2, lo, hi)
		}
		if upright && max(math.Abs(low2.X-lo.X), math.Abs(low2.Y-lo.Y), math.Abs(high2.X-hi.X), math.Abs(high2.Y-hi.Y)) > slack {
			t.Fatalf("the shadow from %v to %v does not fill its reach from %v to %v", low2, high2, lo, hi)
		}
	}
	if thrown < 500 {
		t.Errorf("only %d shadows", thrown)
	}
}

// The size of a caster is what it can shade: the area round a prism and over it.
func TestSizesOfCasters(t *testing.T) {
	for _, turned := range []bool{false, true} {
		base := []r2.Vec{{X: 1, Y: 1}, {X: 4, Y: 1}, {X: 4, Y: 3}, {X: 1, Y: 3}}
		if turned { // clockwise
			base[1], base[3] = base[3], base[1]
		}
		c, ok := prismCaster(&solid.Prism{Base: base, Z0: 0.5, Z1: 2.5})
		if !ok || c.size != 10*2+6 {
			t.Errorf("a box of 3 by 2 by 2 m has the size %g", c.size)
		}
		if way := r3.Cross(r3.Sub(c.base[1], c.base[0]), r3.Sub(c.base[2], c.base[1])); way.Z <= 0 {
			t.Errorf("the base %v does not run counter-clockwise", c.base)
		}
	}
	for name, p := range map[string]solid.Prism{
		"no height": {Base: box(0, 0, 1, 1, 0), Z0: 1, Z1: 1}, "upside down": {Base: box(0, 0, 1, 1, 0), Z0: 1}, "a line": {Base: []r2.Vec{{}, {X: 1}, {X: 2}}, Z1: 1},
		"no end": {Base: box(0, 0, 1, 1, 0), Z1: math.Inf(1)},
	} {
		if _, ok := prismCaster(&p); ok {
			t.Errorf("%s throws a shadow", name)
		}
	}
}

// What can shade a lattice reaches over a part of the box round its points and those of the lamp, stands under some point of the lamp, and not behind
// one that shines to one side.
func TestWhatCanShadeALattice(t *testing.T) {
	lattice := floorAt(0, 0, 0, 8, 9) // points 1 m apart from 0 to 8 m
	g := newGrid(&lattice, 1e-6)
	up := &lamp{at: r3.Vec{X: 4, Y: 4, Z: 2}, axis: r3.Vec{Z: -1}}
	ahead := &lamp{at: r3.Vec{X: 4, Y: 4, Z: 2}, axis: r3.Vec{X: 1}, onesided: true}
	aside := r3.Vec{X: 12, Y: 4, Z: 2}
	for _, c := range []struct {
		name       string
		x, y, w, d float64
		low        float64
		lamp       *lamp
		at         r3.Vec
		want       bool
	}{
		{"in the middle", 4, 4, 1, 1, 0, up, up.at, true},
		{"over the last point", 8.4, 4, 1, 1, 0, up, up.at, true}, {"past the last point", 8.9, 4, 1, 1, 0, up, up.at, false},
		{"past it along y", 4, 8.9, 1, 1, 0, up, up.at, false}, {"over the last along y", 4, 8.4, 1, 1, 0, up, up.at, true},
		{"before the first point", -0.6, 4, 1, 1, 0, up, up.at, false}, {"before it along y", 4, -0.6, 1, 1, 0, up, up.at, false},
		{"over the first", -0.4, -0.4, 1, 1, 0, up, up.at, true},
		{"toward a lamp beside", 11, 4, 1, 1, 0, up, aside, true}, {"past it", 12.6, 4, 1, 1, 0, up, aside, false},
		{"over the lamp", 4, 4, 1, 1, 2.1, up, up.at, false}, {"behind a face", 2, 4, 1, 1, 0, ahead, ahead.at, false}, {"before a face", 6, 4, 1, 1, 0, ahead, ahead.at, true},
	} {
		caster, ok := prismCaster(&solid.Prism{Base: box(c.x, c.y, c.w, c.d, 0), Z0: c.low, Z1: c.low + 1})
		if !ok {
			t.Fatal("a box throws no shadow")
		}
		if got := len(g.shading([]shape{g.shape(&caster, 1)}, c.lamp, []r3.Vec{g.place(c.at, 1)})) > 0; got != c.want {
			t.Errorf("a box %s: %v", c.name, got)
		}
	}
}
