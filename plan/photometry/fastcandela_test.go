package photometry

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestAnglesToTwoInAHundredMillion(t *testing.T) {
	for n := range 20001 {
		a := (float64(n)/10000 - 1) * math.Pi
		sin, cos := math.Sincos(a)
		if got := fastArctangent(sin, cos); !(math.Abs(math.Remainder(got-a, 2*math.Pi)) <= 2e-8) {
			t.Errorf("arctangent at %g: %g", a, got)
		}
		if got := fastArccosine(cos); !(math.Abs(got-math.Abs(a)) <= 3e-8) {
			t.Errorf("arccosine at %g: %g", a, got)
		}
	}
	for _, c := range []struct{ y, x, want float64 }{{0, 0, 0}, {0, 1, 0}, {0, -1, math.Pi}, {1, 0, math.Pi / 2}, {-1, 0, -math.Pi / 2}} {
		if got := fastArctangent(c.y, c.x); !(math.Abs(got-c.want) <= 2e-8) {
			t.Errorf("arctangent(%g, %g) is %g, want %g", c.y, c.x, got, c.want)
		}
	}
}

// FastCandela and Candela agree between nodes, at even and uneven angles, of one quadrant's worth and of all round,
// and in every system.
func TestQuickly(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for _, n := range []Nodes{
		{Horizontal: []float64{0, 45, 90, 135, 180, 225, 270, 315, 360}, Vertical: []float64{0, 10, 20, 30, 40, 50, 60, 70, 80, 90}},
		{Horizontal: []float64{0, 20, 90, 200, 360}, Vertical: []float64{0, 1, 2, 5, 30, 90, 180}},
		{Horizontal: []float64{-90, 0, 100, 270}, Vertical: []float64{0, 60}},
		{Horizontal: []float64{-360, -270, -100, 0}, Vertical: []float64{0, 60}},
		{Horizontal: []float64{350, 400, 600, 710}, Vertical: []float64{0, 60}},
		{System: TypeB, Horizontal: []float64{-90, -20, 0, 40, 90}, Vertical: []float64{-90, 0, 30, 90}},
		{System: TypeA, Horizontal: []float64{-90, -20, 0, 40, 90}, Vertical: []float64{-90, 0, 30, 90}},
	} {
		for range n.Horizontal {
			var row []float64
			for range n.Vertical {
				row = append(row, 1000*r.Float64())
			}
			n.Candela = append(n.Candela, row)
		}
		d, _, err := NewTable(n)
		if err != nil {
			t.Fatal(err)
		}
		table := d.(*Table)
		for range 3000 {
			way := r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}
			want := table.Candela(r3.Unit(way))
			if got := table.FastCandela(way.X, way.Y, -way.Z, 1/r3.Norm(way)); !(math.Abs(got-want) <= 5e-6*table.Peak()) {
				t.Errorf("%v: %g, want %g", way, got, want)
			}
		}
	}
}

func BenchmarkTable(b *testing.B) {
	n := Nodes{}
	for c := 0.0; c <= 360; c += 15 {
		var row []float64
		n.Horizontal, n.Vertical = append(n.Horizontal, c), nil
		for g := 0.0; g <= 90; g += 2.5 {
			n.Vertical, row = append(n.Vertical, g), append(row, 90-g+c/100)
		}
		n.Candela = append(n.Candela, row)
	}
	d, _, err := NewTable(n)
	if err != nil {
		b.Fatal(err)
	}
	table := d.(*Table)
	b.Run("Candela", func(b *testing.B) {
		for b.Loop() {
			table.Candela(r3.Vec{X: 0.48, Y: 0.6, Z: -0.64})
		}
	})
	b.Run("FastCandela", func(b *testing.B) {
		for b.Loop() {
			table.FastCandela(0.48, 0.6, 0.64, 1)
		}
	})
}
