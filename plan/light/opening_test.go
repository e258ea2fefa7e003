package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// openings are one of each form, none as wide as it is high.
var openings = map[string]photometry.Opening{
	"face":   {Form: photometry.Rectangle, Width: 1.2, Height: 0.7},
	"disc":   {Form: photometry.Disc, Width: 0.9},
	"tube":   {Form: photometry.Tube, Width: 1.5, Height: 0.03},
	"sphere": {Form: photometry.Sphere, Width: 0.8},
}

// lampOf is a Lambertian lamp of 1000 lm with an opening, askew in space.
func lampOf(o photometry.Opening) *lamp {
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: -2, Z: 1.5}, r3.Vec{X: 3, Y: 1, Z: 0.4}),
		Source: photometry.Source{Flux: 1000, Distribution: photometry.Lambertian(o.Form), Opening: o}}
	return newLamp(&e, 256, 64, 16)
}

// squares are the means of the squares of x, y and z over an opening; those of a sphere as it is seen from any side: a
// disc as bright all over.
func squares(o photometry.Opening) (mean r3.Vec) {
	w, h := o.Width*o.Width/12, o.Height*o.Height/12
	d := o.Width * o.Width / 16
	switch o.Form {
	case photometry.Rectangle:
		return r3.Vec{X: w, Y: h}
	case photometry.Disc:
		return r3.Vec{X: d, Y: d}
	case photometry.Tube:
		return r3.Vec{X: w}
	}
	return r3.Vec{X: d, Y: d, Z: d}
}

// The points that stand for an opening are spread over all of it evenly, and over its left as over its right.
func TestPointsOfOpenings(t *testing.T) {
	for name, o := range openings {
		l := lampOf(o)
		for _, n := range []int{255, 256} {
			own, points := l.openingPoints(n, n)
			if len(own) != 256 || len(points) != 256 {
				t.Fatalf("%s: %d points and %d, want an even number from %d on", name, len(own), len(points), n)
			}
			var sum, square r3.Vec
			for i, p := range own {
				sum = r3.Add(sum, p)
				square = r3.Add(square, r3.Vec{X: p.X * p.X, Y: p.Y * p.Y, Z: p.Z * p.Z})
				if back := l.local(r3.Sub(points[i], l.at)); r3.Norm(r3.Sub(back, r3.Vec{X: p.X, Y: p.Y, Z: -p.Z})) > 1e-12 {
					t.Fatalf("%s: point %v lies at %v in space", name, p, back)
				}
				if i%2 == 1 && own[i-1] != (r3.Vec{X: -p.X, Y: p.Y, Z: p.Z}) {
					t.Errorf("%s: %v and %v do not mirror each other", name, own[i-1], p)
				}
				if i%2 == 0 && p.X < 0 {
					t.Errorf("%s: %v lies in the left half", name, p)
				}
			}
			want, size := squares(o), o.Largest()
			for axis, v := range map[string][3]float64{"x": {sum.X, square.X, want.X}, "y": {sum.Y, square.Y, want.Y}, "z": {sum.Z, square.Z, want.Z}} {
				close(t, name+": mean of "+axis, v[0]/256/size, 0, 0.01)
				close(t, name+": mean square of "+axis, v[1]/256/(size*size), v[2]/(size*size), 0.0015)
			}
		}
	}
}

// The distance of a place from an opening is that from the box it lies in; of a sphere from its middle.
func TestDistanceFromOpenings(t *testing.T) {
	for name, want := range map[string][4]float64{ // straight before, beside, above, and past a corner
		"face": {2, 0.5, 0.5, 3}, "disc": {2, 0.5, 0.5, 3}, "tube": {2, 0.5, 0.5, 3}, "sphere": {2, 0.5, 0.5, 3},
	} {
		o := openings[name]
		l := lampOf(o)
		w, h := o.Width/2, o.Height/2
		switch o.Form {
		case photometry.Disc:
			h = w
		case photometry.Tube:
			h = 0
		case photometry.Sphere:
			w, h = 0, 0
		}
		for i, p := range []r3.Vec{{X: w / 2, Y: -h / 2, Z: 2}, {X: -w - 0.5, Y: h / 3}, {X: w / 3, Y: h + 0.5}, {X: w + 2, Y: -h - 2, Z: -1}} {
			at := r3.Add(l.at, r3.Add(r3.Scale(p.X, l.right), r3.Add(r3.Scale(p.Y, l.up), r3.Scale(p.Z, l.axis))))
			close(t, fmt.Sprint(name, " ", i), math.Sqrt(l.distance2(at)), want[i], 1e-12)
		}
	}
}

// The rules over an opening add up to one, and are exact for squares and fourth powers of places.
func TestRulesOfOpenings(t *testing.T) {
	for name, o := range openings {
		l := lampOf(o)
		want := squares(o)
		fourth := r3.Vec{X: math.Pow(o.Width, 4) / 80, Y: math.Pow(o.Height, 4) / 80}
		rules := map[string][]node{"exact": l.rule(1, exactly()), "close": l.rule(0.5, closely()), "shortest": l.shortestRule()}
		switch o.Form {
		case photometry.Sphere:
			want = r3.Vec{} // from its middle
		case photometry.Disc:
			fourth = r3.Vec{X: math.Pow(o.Width/2, 4) / 8, Y: math.Pow(o.Width/2, 4) / 8}
		case photometry.Tube:
			fourth.Y = 0
		}
		for which, rule := range rules {
			var all, x, y, x4, y4 float64
			for _, n := range rule {
				p := l.local(r3.Sub(n.at, l.at))
				all += n.weight
				x, y = x+n.weight*p.X*p.X, y+n.weight*p.Y*p.Y
				x4, y4 = x4+n.weight*math.Pow(p.X, 4), y4+n.weight*math.Pow(p.Y, 4)
			}
			close(t, name+", "+which+": weights", all, 1, 1e-12)
			close(t, name+", "+which+": x²", x, want.X, 1e-12)
			close(t, name+", "+which+": y²", y, want.Y, 1e-12)
			if which != "shortest" && o.Form != photometry.Sphere {
				close(t, name+", "+which+": x⁴", x4, fourth.X, 1e-12)
				close(t, name+", "+which+": y⁴", y4, fourth.Y, 1e-12)
			}
		}
	}
}

// Each rule of the fields serves from its distance on, to 1e-4; the last is the closest, and closer than it a closed form
// does.
func TestFieldRulesServe(t *testing.T) {
	for name, o := range openings {
		l := lampOf(o)
		for _, w := range []Response{Cosine, Dome} {
			beyond := math.Inf(1)
			for i, level := range l.fieldRules(w) {
				if level.beyond >= beyond {
					t.Errorf("%s: rule %d does not serve closer than the one before", name, i)
				}
				beyond = level.beyond
				for _, off := range []r3.Vec{{}, {X: 0.4, Y: 0.3}} { // beside the middle of the opening
					at := r3.Add(l.at, r3.Add(r3.Scale(math.Sqrt(level.beyond)*1.0001, l.axis), r3.Add(r3.Scale(off.X*o.Width, l.right), r3.Scale(off.Y*o.Height, l.up))))
					r := &Receptor{At: at, Axis: r3.Unit(r3.Add(r3.Scale(-1, l.axis), r3.Scale(0.3, l.up))), Response: w}
					if o.Form == photometry.Sphere && w == Cosine && level.beyond < 2*o.Width*o.Width {
						r.At = r3.Add(l.at, r3.Scale(1.5*o.Width, l.axis)) // a plane that cuts the sphere is lit by a part of it
					}
					sum := 0.0
					for _, n := range level.nodes {
						sum += n.weight * l.fromPoint(n.at, r)
					}
					close(t, fmt.Sprintf("%s, rule %d, response %d", name, i, w), sum/l.closedForm(r), 1, 2e-4)
				}
			}
		}
	}
}

// A ball is its middle for a plane that does not cut it, and for a dome from fifty of its radii off, where that is off by less than 1e-4.
func TestWhereABallIsAPoint(t *testing.T) {
	l := newLamp(&Emitter{Name: "a", Frame: down(3), Source: photometry.Source{Flux: 1000, Distribution: photometry.Uniform{}, Opening: photometry.Opening{Form: photometry.Sphere, Width: 0.4}}}, 1, 1, 1)
	for w, far := range map[Response]float64{Cosine: 0.2, Dome: 50 * 0.2} {
		rules := l.fieldRules(w)
		if len(rules) != 1 || !(math.Abs(rules[0].beyond-far*far) <= 1e-9) {
			t.Fatalf("response %d: %+v", w, rules)
		}
		r := &Receptor{At: r3.Vec{Z: 3 - far}, Axis: up, Response: w}
		if off := math.Abs(l.closedForm(r)/l.fromPoint(l.at, r) - 1); off > 1e-4 {
			t.Errorf("response %d: from %g m the middle is %g off", w, far, off)
		}
	}
}

// A rule of higher order is taken the closer the place is, and none is longer than the longest.
func TestOrdersGrowCloseBy(t *testing.T) {
	last := 2
	for _, distance := range []float64{1000, 10, 3, 1, 0.5, 0.1, 0.01, 0} {
		n := exactly().order(distance, 1)
		if n < last || n > largest {
			t.Errorf("at %g m the order is %d, after %d", distance, n, last)
		}
		last = n
	}
	if last != largest {
		t.Errorf("in the opening itself the order is %d, want %d", last, largest)
	}
	for n := 2; n <= largest; n++ { // at 2d/length of its reach and just within
		if got := exactly().order(exactly().reach[n]/2, 1); got != n {
			t.Errorf("at the reach of order %d the order is %d", n, got)
		}
		if got := exactly().order(exactly().reach[n]/2*0.999, 1); got != min(n+1, largest) {
			t.Errorf("within the reach of order %d the order is %d", n, got)
		}
	}
}

// A rule of order n is exact for all powers up to 2n - 1, whatever order is asked for.
func TestRulesAreExact(t *testing.T) {
	for n := 2; n <= largest+4; n++ {
		x, w := legendre(n, 0, 1)
		for power := range 2 * n {
			sum := 0.0
			for i := range x {
				sum += w[i] * math.Pow(x[i], float64(power))
			}
			if want := 1 / float64(power+1); !(math.Abs(sum-want) <= 1e-13) {
				t.Errorf("order %d: the integral of the power %d is %.12g, want %.12g", n, power, sum, want)
				break
			}
		}
	}
}

// What a stretch of a tube sends that is not alike from everywhere is the sum over points of it, as shares of the whole: from far and from close to an end.
func TestStretchOfATube(t *testing.T) {
	for _, long := range []float64{0.3, 1.2, 2.5} {
		e := Emitter{Frame: looking(r3.Vec{Z: 2}, r3.Vec{X: 1, Z: 1}), Source: photometry.Source{Flux: 1000, Distribution: photometry.NewLobe(80, 130), Opening: photometry.Opening{Form: photometry.Tube, Width: long, Height: 0.03}}}
		l := newLamp(&e, 1, 1, 1)
		from, to := l.world(r3.Vec{X: -0.5 * long}), l.world(r3.Vec{})
		for _, place := range []r3.Vec{{X: 0.3, Y: 0.2, Z: 1.2}, {X: -0.5*long - 0.02, Z: 0.15}} { // in the lamp's frame
			r := Receptor{At: r3.Add(l.world(r3.Vec{X: place.X, Y: place.Y}), r3.Scale(place.Z, l.axis)), Axis: r3.Scale(-1, l.axis)}
			const n = 2000
			want := 0.0
			for i := range n {
				want += l.fromPoint(r3.Add(from, r3.Scale((float64(i)+0.5)/n, r3.Sub(to, from))), &r) * 0.5 / n
			}
			close(t, fmt.Sprintf("half of a tube of %g m from %v", long, place), l.alongTube(&r, []r3.Vec{from, to})/want, 1, 1e-4)
		}
	}
}

// The steps of an additive lattice are what is left of odd multiples of half a step once whole ones are taken off.
func TestFractionalSteps(t *testing.T) {
	for _, c := range []struct{ step, at0, at1, at2 float64 }{{0.6, 0.3, 0.9, 0.5}, {0.75, 0.375, 0.125, 0.875}, {0.25, 0.125, 0.375, 0.625}} {
		for i, want := range []float64{c.at0, c.at1, c.at2} {
			close(t, "step", fractionalStep(i, c.step), want, 1e-12)
		}
	}
}
