package truth_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/truth"
)

// A point lamp gives I cos/d² on a plane and I (1 + cos)/2d² on a dome.
func TestPoint(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
lights: {l: {output: {candela: 1000, shape: uniform}, at: [0, 0], height: 3, aim: down}}
meters: {flat: {flat: [1, 0.5, 1], facing: up}, dome: {dome: [1, 0.5, 1], facing: 90}}
`)
	square := 1 + 0.25 + 4.0
	v := truth.Trace(s, meters(s), truth.Options{})
	held(t, "flat", v[0].Direct, 1000*2/math.Sqrt(square)/square)
	held(t, "dome", v[1].Direct, 1000*(1-1/math.Sqrt(square))/2/square)
}

// quarter is the form factor of a rectangle a by b to a small plane parallel to it at a distance h under one of
// its corners.
func quarter(a, b, h float64) float64 {
	x, y := a/h, b/h
	p, q := math.Sqrt(1+x*x), math.Sqrt(1+y*y)
	return (x/p*math.Atan(y/p) + y/q*math.Atan(x/q)) / (2 * math.Pi)
}

// A Lambertian rectangle gives its luminance times pi times the form factor, close by and from afar; so does
// the half of it that a flag leaves.
func TestRectangle(t *testing.T) {
	for _, h := range []float64{0.05, 0.4, 2, 9} {
		s := laidOut(t, fmt.Sprintf(`scrimshaw: 1
lights: {l: {output: {lumens: 4000, face: [1.4, 0.8]}, at: [0, 0], height: 10, aim: down}}
meters: {m: {flat: [0, 0, %g], facing: up}}
`, 10-h))
		v := truth.Trace(s, meters(s), truth.Options{})
		held(t, fmt.Sprintf("%g m", h), v[0].Direct, 4000/(1.4*0.8)*4*quarter(0.7, 0.4, h))
	}
	// The flag hides what lies to the left of the middle.
	s := laidOut(t, `scrimshaw: 1
lights: {l: {output: {lumens: 4000, face: [1.4, 0.8]}, at: [0, 0], height: 3, aim: down, roll: 0}}
grip: {f: {flag: [4, 4], at: [-2, 0], height: 2, faces: up}}
meters: {m: {flat: [0, 0, 1], facing: up}}
`)
	half := truth.Trace(s, meters(s), truth.Options{Error: 3e-4})[0]
	held(t, "half", half.Direct, 4000/(1.4*0.8)*2*quarter(0.7, 0.4, 2))
}

// A disc gives L pi sin² of its half angle on its axis, a sphere what its middle would, and a long line what
// the integral over it says.
func TestRound(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
lights: {l: {output: {lumens: 3000, disc: 1.2}, at: [0, 0], height: 3, aim: down}}
meters: {near: {flat: [0, 0, 2.7], facing: up}, far: {flat: [0, 0, 0], facing: up}}
`)
	v := truth.Trace(s, meters(s), truth.Options{})
	disc := func(h float64) float64 { return 3000 / (math.Pi * 0.36) * 0.36 / (0.36 + h*h) }
	held(t, "disc near", v[0].Direct, disc(0.3))
	held(t, "disc far", v[1].Direct, disc(3))
	s = laidOut(t, `scrimshaw: 1
lights: {l: {output: {lumens: 3000, sphere: 0.6}, at: [0, 0], height: 1, aim: down}}
meters: {near: {flat: [0, 0, 0.5], facing: up}, side: {flat: [1, 0, 0.2], facing: up}}
`)
	v = truth.Trace(s, meters(s), truth.Options{})
	held(t, "sphere near", v[0].Direct, 3000/(4*math.Pi)/0.25)
	held(t, "sphere aside", v[1].Direct, 3000/(4*math.Pi)*0.8/math.Pow(1.64, 1.5))
	s = laidOut(t, `scrimshaw: 1
lights: {l: {output: {lumens: 3000, tube: 1.2}, at: [0, 0], height: 1, aim: down}}
meters: {near: {flat: [0, 0, 0.7], facing: up}}
`)
	// I = Φ/π² sin p per length, sin p = h/d, cos = h/d: the integral of h²/d⁴ over the length.
	h, half := 0.3, 0.6
	line := 3000 / (math.Pi * math.Pi * 1.2) * (half/(h*h+half*half) + math.Atan(half/h)/h)
	held(t, "tube", truth.Trace(s, meters(s), truth.Options{})[0].Direct, line)
}

// box is a closed room of one material.
const box = `scrimshaw: 1
materials: {m: {reflectance: %g}}
rooms: {k: {size: [4, 3], height: 2.5, walls: m, floor: m, ceiling: m}}
lights: {%s}
`

// onWalls are flat receptors on the inside of the box of 4 by 3 by 2.5 m, at the nodes of a Gauss-Legendre rule
// over each wall, and the area that each stands for.
func onWalls() (all []truth.Receptor, areas []float64) {
	const n = 5
	x, weight := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, weight, 0, 1)
	size := [3]float64{4, 3, 2.5}
	for axis := range 3 {
		u, v := (axis+1)%3, (axis+2)%3
		for i := range 2 * n * n {
			side, cell := i%2, i/2
			var p, out [3]float64
			p[u], p[v] = x[cell%n]*size[u], x[cell/n]*size[v]
			p[axis], out[axis] = float64(side)*size[axis], 1-2*float64(side)
			all = append(all, truth.Receptor{At: r3.Vec{X: p[0], Y: p[1], Z: p[2]}, Axis: r3.Vec{X: out[0], Y: out[1], Z: out[2]}})
			areas = append(areas, size[u]*size[v]*weight[cell%n]*weight[cell/n])
		}
	}
	return all, areas
}

// In a closed box of reflectance p all light of a flux F ends on its walls: F/(1 - p) lm reach them, of which
// F p/(1 - p) were sent back. So it is for a lamp close to a wall, a small spot, and soft faces.
func TestClosedBox(t *testing.T) {
	for _, c := range []struct {
		lamp    string
		reflect float64
	}{
		{"l: {output: {lumens: 1000, shape: uniform}, at: [0.06, 1.3], height: 1, aim: down}", 0.3},
		{"l: {output: {lumens: 1000, beam: 14, field: 24}, at: [1.5, 1.2], height: 1.1, aim: [4, 1.3, 1]}", 0.5},
		{`a: {output: {lumens: 300, tube: 1.1}, at: [1.5, 1.2], height: 0.2, aim: 90}, b: {output: {lumens: 300, sphere: 0.5}, at: [2.5, 0.4], height: 1.2, aim: 90},
			c: {output: {lumens: 400, face: [0.9, 0.6]}, at: [1.5, 1.2], height: 0.3, aim: down}`, 0.4},
	} {
		s := laidOut(t, fmt.Sprintf(box, c.reflect, c.lamp))
		places, areas := onWalls()
		sum := 0.0
		for i, v := range truth.Trace(s, places, truth.Options{Error: 1, Most: 1}) {
			sum += v.Reflected.Y * areas[i]
		}
		want := 1000 * c.reflect / (1 - c.reflect)
		t.Logf("%s, %g: %.2f lm, want %.2f", c.lamp, c.reflect, sum, want)
		if !(math.Abs(sum/want-1) <= 0.003) {
			t.Errorf("%s, reflectance %g: %.2f lm come back, want %.2f", c.lamp, c.reflect, sum, want)
		}
	}
}

// Light is the same in a mirrored scene.
func TestMirrored(t *testing.T) {
	scene := func(x func(float64) float64, faces, aim int) string {
		return fmt.Sprintf(`scrimshaw: 1
rooms: {k: {at: [-2, 0], size: [4, 3], height: 2.5}}
furniture: {b: {box: [0.6, 0.4, 1.1], at: [%g, 1.5], material: white}}
lights: {l: {output: {lumens: 3000, face: [0.8, 0.5]}, at: [%g, 0.7], height: 1.4, aim: {pan: %d, tilt: -10}}}
meters: {m: {flat: [%g, 2, 0.9], facing: %d}, d: {dome: [%g, 1, 0.3], facing: %d}}
`, x(0.5), x(-0.9), aim, x(0.9), faces, x(1.4), faces)
	}
	plain := laidOut(t, scene(func(x float64) float64 { return x }, 200, 40))
	other := laidOut(t, scene(func(x float64) float64 { return -x }, 160, 320))
	a := truth.Trace(plain, meters(plain), truth.Options{Error: 3e-3})
	b := truth.Trace(other, meters(other), truth.Options{Error: 3e-3, Seed: 1})
	for i := range a {
		off, se := math.Abs(a[i].Total.Y-b[i].Total.Y), math.Hypot(a[i].Total.YSE, b[i].Total.YSE)
		if off > 4*se || se > 0.01*a[i].Total.Y {
			t.Errorf("%+v mirrored is %+v", a[i].Total, b[i].Total)
		}
	}
}

// The standard errors are what estimates with other seeds are apart, and the number of goroutines changes no bit.
func TestHonest(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms: {k: {size: [4, 3], height: 2.5}}
openings: {w: {window: k.left, width: 0.8}}
lights: {l: {output: {lumens: 20000, face: [1, 1]}, at: [-1, 1.4], height: 1.5, aim: 90}}
grip: {g: {card: [0.8, 0.8], at: [1.3, 1.5], height: 1.5, faces: 270}}
meters: {a: {flat: [2, 1.5, 1.2], facing: 270}, b: {dome: [3, 0.4, 1], facing: up}}
`)
	const seeds = 30
	o := truth.Options{Error: 1, Most: 1, Workers: 1}
	var all [2][seeds]truth.Part
	for seed := range seeds {
		o.Seed = uint64(seed)
		for i, v := range truth.Trace(s, meters(s), o) {
			all[i][seed] = v.Total
		}
	}
	for i := range all {
		mean, spread, told := 0.0, 0.0, 0.0
		for _, p := range all[i] {
			mean += p.Y / seeds
			told += p.YSE * p.YSE / seeds
		}
		for _, p := range all[i] {
			spread += (p.Y - mean) * (p.Y - mean) / (seeds - 1)
		}
		t.Logf("%.3f: spread %.4f, told %.4f", mean, math.Sqrt(spread), math.Sqrt(told))
		if ratio := math.Sqrt(told / spread); ratio < 0.7 || ratio > 1.45 { // a spread of 30 is right to 13 %
			t.Errorf("the standard error is %.2f of what estimates are apart", ratio)
		}
	}
	o.Seed, o.Workers = 0, 3
	for i, v := range truth.Trace(s, meters(s), o) {
		if v.Total != all[i][0] {
			t.Errorf("three goroutines give %v, one %v", v.Total, all[i][0])
		}
	}
}
