package light

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// moved turns a set about z by quarter turns after mirroring it in x, and moves it.
func moved(s *solid.Set, place func(r3.Vec) r3.Vec, mirrored bool) *solid.Set {
	out := &solid.Set{}
	for _, p := range s.Prisms {
		base := make([]r2.Vec, len(p.Base))
		for i, c := range p.Base {
			q := place(r3.Vec{X: c.X, Y: c.Y})
			base[i] = r2.Vec{X: q.X, Y: q.Y}
		}
		if mirrored {
			slices.Reverse(base)
		}
		z := place(r3.Vec{}).Z
		p.Base, p.Z0, p.Z1 = base, p.Z0+z, p.Z1+z
		out.Prisms = append(out.Prisms, p)
	}
	for _, h := range s.Sheets {
		corners := make([]r3.Vec, len(h.Corners))
		for i, c := range h.Corners {
			corners[i] = place(c)
		}
		h.Corners = corners
		out.Sheets = append(out.Sheets, h)
	}
	return out
}

// Direct light knows no place and no direction: random rooms moved, turned by quarter turns and
// mirrored.
func TestSameEverywhere(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	type motion struct {
		name     string
		place    func(r3.Vec) r3.Vec
		mirrored bool
	}
	motions := []motion{
		{"moved", func(p r3.Vec) r3.Vec { return r3.Add(p, r3.Vec{X: 13.7, Y: -4.1, Z: 2.9}) }, false},
		{"turned", func(p r3.Vec) r3.Vec { return r3.Vec{X: -p.Y, Y: p.X, Z: p.Z} }, false},
		{"turned about", func(p r3.Vec) r3.Vec { return r3.Vec{X: -p.X, Y: -p.Y, Z: p.Z} }, false},
		{"mirrored", func(p r3.Vec) r3.Vec { return r3.Vec{X: -p.X, Y: p.Y, Z: p.Z} }, true},
	}
	for range cases(25, 3) {
		s, lights := room(r), lamps(r)
		var points []Receptor
		for range 40 {
			axis := r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()})
			points = append(points, Receptor{At: r3.Vec{X: 8 * r.Float64(), Y: 8 * r.Float64(), Z: 2 * r.Float64()}, Axis: axis, Response: Response(r.IntN(2))})
		}
		here := basis(t, build(t, s, Options{Quality: Draft}), lights, Targets{Points: points})
		for _, m := range motions {
			origin := m.place(r3.Vec{})
			turn := func(v r3.Vec) r3.Vec { return r3.Sub(m.place(v), origin) }
			var ls []Emitter
			for _, e := range lights {
				f := plan.Frame{At: m.place(e.Frame.At), Axis: turn(e.Frame.Axis), Right: turn(e.Frame.Right)}
				if m.mirrored {
					f.Right = r3.Scale(-1, f.Right)
				}
				ls = append(ls, Emitter{Name: e.Name, Frame: f, Source: e.Source})
			}
			var ps []Receptor
			for _, p := range points {
				ps = append(ps, Receptor{At: m.place(p.At), Axis: turn(p.Axis), Response: p.Response})
			}
			there := basis(t, build(t, moved(s, m.place, m.mirrored), Options{Quality: Draft}), ls, Targets{Points: ps})
			for i := range points {
				for _, e := range lights {
					a, _ := here.Point(i, Levels{e.Name: {1, 1, 1}})
					b, _ := there.Point(i, Levels{e.Name: {1, 1, 1}})
					close(t, fmt.Sprint(m.name, " ", e.Name), b.Y(), a.Y(), 1e-9)
				}
			}
		}
	}
}

func TestLinearInLevel(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	s, lights := room(r), lamps(r)
	floor := floorAt(0, 0, 0, 8, 40)
	b := basis(t, build(t, s, Options{Quality: Draft}), lights, Targets{Lattices: []Lattice{floor},
		Points: []Receptor{{At: r3.Vec{X: 4, Y: 4, Z: 1}, Axis: up, Response: Dome}}})
	sum := make([]float64, floor.NU*floor.NV)
	field := make([]float32, len(sum))
	all := Levels{}
	var total float64
	for i, e := range lights {
		all[e.Name] = colour.RGB{0.1 * float64(i+1), 0.3, 0.2}
		one := Levels{e.Name: all[e.Name]}
		p, _ := b.Point(0, one)
		total += p.Y()
		b.Field(0, one, field)
		for n, v := range field {
			sum[n] += float64(v)
		}
	}
	p, shares := b.Point(0, all)
	close(t, "point", p.Y(), total, 1e-12)
	if len(shares) != len(b.Terms) {
		t.Errorf("%d shares of %d terms", len(shares), len(b.Terms))
	}
	b.Field(0, all, field)
	for n, v := range field {
		close(t, "field", float64(v), sum[n], 1e-5)
	}
}

// Another wall takes light away or leaves it, at every point and receptor.
func TestWallsOnlyDarken(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 52))
	for range 20 {
		s, lights := room(r), lamps(r)
		floor := floorAt(0.01, 0.02, 0, 8, 50)
		to := Targets{Lattices: []Lattice{floor}}
		for range 30 {
			to.Points = append(to.Points, Receptor{At: r3.Vec{X: 8 * r.Float64(), Y: 8 * r.Float64(), Z: 2 * r.Float64()}, Axis: up, Response: Dome})
		}
		before := basis(t, build(t, s, Options{Quality: Draft}), lights, to)
		s.Prisms = append(s.Prisms, solid.Prism{ID: 999, Base: box(8*r.Float64(), 8*r.Float64(), 3, 0.1, r.Float64()), Z1: 2.5})
		after := basis(t, build(t, s, Options{Quality: Draft}), lights, to)
		a, b := make([]float32, floor.NU*floor.NV), make([]float32, floor.NU*floor.NV)
		for _, e := range lights {
			d := Levels{e.Name: {1, 1, 1}}
			for i := range to.Points {
				p, _ := before.Point(i, d)
				q, _ := after.Point(i, d)
				if q.Y() > p.Y()*(1+1e-12) {
					t.Errorf("%s: a wall raised %v to %v", e.Name, p.Y(), q.Y())
				}
			}
			before.Field(0, d, a)
			after.Field(0, d, b)
			for n := range a {
				if b[n] > a[n]*(1+1e-6) { // a float32's last digit
					t.Errorf("%s: a wall raised %v to %v on the floor", e.Name, a[n], b[n])
				}
			}
		}
	}
}

func TestSameBitsOnAnyNumberOfWorkers(t *testing.T) {
	r := rand.New(rand.NewPCG(61, 62))
	s, lights := painted(room(r), r), lamps(r)
	wall := Lattice{Origin: r3.Vec{X: 1, Y: 1}, U: r3.Vec{X: 0.2}, V: r3.Vec{Z: 0.2}, Normal: r3.Vec{Y: 1}, NU: 30, NV: 12}
	dome := floorAt(0, 0, 1.3, 8, 90)
	dome.Response, dome.Normal = Dome, r3.Vec{Y: 1}
	to := Targets{Lattices: []Lattice{floorAt(0, 0, 0, 8, 133), wall, dome}}
	for range 20 {
		to.Points = append(to.Points, Receptor{At: r3.Vec{X: 8 * r.Float64(), Y: 8 * r.Float64(), Z: 1}, Axis: up})
	}
	one := basis(t, build(t, s, Options{Quality: Draft, Workers: 1}), lights, to)
	for _, n := range []int{2, 8, 0} {
		many := basis(t, build(t, s, Options{Quality: Draft, Workers: n}), lights, to)
		if !reflect.DeepEqual(one.Terms, many.Terms) || !reflect.DeepEqual(one.Points, many.Points) ||
			!reflect.DeepEqual(one.Fields, many.Fields) || !reflect.DeepEqual(one.Reflected, many.Reflected) {
			t.Errorf("%d workers give other bits than one", n)
		}
	}
}
