package photometry_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// randomNodes are a table of a system with intensities at random.
func randomNodes(r *rand.Rand, s photometry.System) photometry.Nodes {
	n := photometry.Nodes{System: s}
	low, high := -90.0, 90.0
	n.Vertical = scattered(r, low, high)
	n.Horizontal = scattered(r, low, high)
	if s == photometry.TypeC {
		n.Vertical, n.Horizontal = scattered(r, 0, 180), scattered(r, 0, 360)
	}
	for range n.Horizontal {
		row := make([]float64, len(n.Vertical))
		for j := range row {
			row[j] = 1000 * r.Float64()
		}
		n.Candela = append(n.Candela, row)
	}
	if s == photometry.TypeC {
		n.Candela[len(n.Candela)-1] = n.Candela[0]
	}
	return n
}

// scattered are some angles in order from one end to the other.
func scattered(r *rand.Rand, from, to float64) []float64 {
	list := []float64{from}
	for list[len(list)-1] < to-(to-from)/8 {
		list = append(list, list[len(list)-1]+(to-from)*(0.01+0.11*r.Float64()))
	}
	return append(list, to)
}

// direction is that of angles of a system, written from the definition of each.
func direction(s photometry.System, h, v float64) r3.Vec {
	sinH, cosH := math.Sincos(h * math.Pi / 180)
	sinV, cosV := math.Sincos(v * math.Pi / 180)
	switch s {
	case photometry.TypeA:
		return r3.Vec{X: cosV * sinH, Y: sinV, Z: -cosV * cosH}
	case photometry.TypeB:
		return r3.Vec{X: sinH, Y: cosH * sinV, Z: -cosH * cosV}
	}
	return r3.Vec{X: sinV * cosH, Y: sinV * sinH, Z: -cosV}
}

// Exact at the nodes, bilinear between them, for each system.
func TestTableIsBilinear(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 11))
	for _, system := range []photometry.System{photometry.TypeC, photometry.TypeB, photometry.TypeA} {
		n := randomNodes(r, system)
		d, flux, err := photometry.NewTable(n)
		if err != nil {
			t.Fatal(err)
		}
		for i := 1; i < len(n.Horizontal); i++ {
			for j := 1; j < len(n.Vertical); j++ {
				u, v := r.Float64(), 0.001+0.998*r.Float64()
				h := n.Horizontal[i-1] + u*(n.Horizontal[i]-n.Horizontal[i-1])
				w := n.Vertical[j-1] + v*(n.Vertical[j]-n.Vertical[j-1])
				want := (1-u)*((1-v)*n.Candela[i-1][j-1]+v*n.Candela[i-1][j]) + u*((1-v)*n.Candela[i][j-1]+v*n.Candela[i][j])
				within(t, fmt.Sprint(system, " between ", h, w), flux*d.Candela(direction(system, h, w)), want, 1e-9*1000)
				if inner := i < len(n.Horizontal)-1 && j < len(n.Vertical)-1; inner {
					within(t, fmt.Sprint(system, " node"), flux*d.Candela(direction(system, n.Horizontal[i], n.Vertical[j])), n.Candela[i][j], 1e-9*1000)
				}
			}
		}
	}
}

// The flux is the integral of what the table gives in between, by an independent sum over fine cells.
func TestTableFluxIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 13))
	for _, system := range []photometry.System{photometry.TypeC, photometry.TypeB, photometry.TypeA} {
		d, _, err := photometry.NewTable(randomNodes(r, system))
		if err != nil {
			t.Fatal(err)
		}
		const bands, planes = 1000, 1000
		sum := 0.0
		for i := range bands {
			z := 1 - 2*(float64(i)+0.5)/bands // bands of one area
			for k := range planes {
				sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / planes)
				ring := math.Sqrt(1 - z*z)
				sum += d.Candela(r3.Vec{X: ring * cos, Y: ring * sin, Z: z})
			}
		}
		within(t, system.String(), 4*math.Pi*sum/(bands*planes), 1, 2e-4)
	}
}

// Flux of closed forms: a table that is linear in the angle, I = a + b g, for which the integral of
// I sin g is elementary, in steps down to a millionth of a degree.
func TestTableFluxOfLine(t *testing.T) {
	for _, step := range []float64{30, 5, 0.01, 1e-6} {
		from := 37.0
		to := from + 3*step
		row := []float64{5, 5 + step, 5 + 2*step, 5 + 3*step}
		_, flux, err := photometry.NewTable(photometry.Nodes{
			Horizontal: []float64{0}, Vertical: []float64{from, from + step, from + 2*step, to}, Candela: [][]float64{row},
		})
		if err != nil {
			t.Fatal(err)
		}
		// Around the middle m the line is even but for its slope: 2 pi (2 mean sin m sin d + 2 slope cos m (sin d - d cos d)).
		m, d := (from+to)/2*math.Pi/180, (to-from)/2*math.Pi/180
		slope := step / (step * math.Pi / 180)
		bend := d * d * d / 3
		if d > 0.02 {
			bend = math.Sin(d) - d*math.Cos(d)
		}
		want := 4 * math.Pi * ((5+1.5*step)*math.Sin(m)*math.Sin(d) + slope*math.Cos(m)*bend)
		within(t, fmt.Sprint("step ", step), flux, want, 1e-9*want)
	}
}

// A table gives the same light from whichever turn its azimuths are counted.
func TestTableInAnyTurn(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 3))
	n := randomNodes(r, photometry.TypeC)
	want, flux, err := photometry.NewTable(n)
	if err != nil {
		t.Fatal(err)
	}
	for _, turn := range []float64{-360, -200, -90, 90, 360} {
		moved := n
		moved.Horizontal = nil
		for _, h := range n.Horizontal {
			moved.Horizontal = append(moved.Horizontal, h+turn)
		}
		got, movedFlux, err := photometry.NewTable(moved)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "flux", movedFlux, flux, 1e-9*flux)
		for range 2000 {
			h, v := 720*r.Float64()-360, 180*r.Float64()
			want := want.Candela(direction(photometry.TypeC, h, v))
			moved := direction(photometry.TypeC, h+turn, v)
			within(t, fmt.Sprintf("from %g: at %g, %g", turn, h, v), got.Candela(moved), want, 1e-9*photometry.Peak(got))
			quick := got.(*photometry.Table).FastCandela(moved.X, moved.Y, -moved.Z, 1)
			within(t, fmt.Sprintf("from %g: quickly at %g, %g", turn, h, v), quick, want, 5e-6*photometry.Peak(got))
		}
	}
}

// Beyond the last angle there is nothing, and one angle holds for the whole circle of a Curve.
func TestTableEnds(t *testing.T) {
	d, flux, err := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0}, Vertical: []float64{10, 40}, Candela: [][]float64{{100, 50}}})
	if err != nil {
		t.Fatal(err)
	}
	c := d.(photometry.Curve)
	for angle, want := range map[float64]float64{9.999999: 0, 10: 100, 25: 75, 40: 50, 40.000001: 0, 180: 0} {
		within(t, fmt.Sprint(angle), flux*c.At(angle*math.Pi/180), want, 1e-6)
	}
	if c.Behind() {
		t.Error("light behind a table that ends at 40 degrees")
	}
	within(t, "peak", flux*photometry.Peak(d), 100, 1e-9)
	for _, bad := range []r3.Vec{{X: math.NaN()}, {X: math.NaN(), Y: 1}} {
		within(t, "no direction", d.Candela(bad), 0, 0)
	}
}

// Light square to the axis is not behind the face: a table that ends at 90 degrees shines to one side, however bright
// it is there. Light past 90 degrees is behind, where there is any. The systems A and B end at 90 degrees.
func TestLightBehindTheFace(t *testing.T) {
	for name, c := range map[string]struct {
		system   photometry.System
		vertical []float64
		candela  []float64
		want     bool
	}{
		"to 90 degrees":              {photometry.TypeC, []float64{0, 90}, []float64{100, 50}, false},
		"just past 90 degrees":       {photometry.TypeC, []float64{0, 90, 90.5}, []float64{100, 50, 1}, true},
		"dark past 90 degrees":       {photometry.TypeC, []float64{0, 90, 135, 180}, []float64{100, 50, 0, 0}, false},
		"only far behind":            {photometry.TypeC, []float64{0, 90, 135, 180}, []float64{100, 0, 0, 2}, true},
		"a vertical angle of type B": {photometry.TypeB, []float64{-90, 0, 90}, []float64{1, 2, 3}, false},
		"a vertical angle of type A": {photometry.TypeA, []float64{-90, 0, 90}, []float64{1, 2, 3}, false},
	} {
		n := photometry.Nodes{System: c.system, Horizontal: []float64{-90, 0, 90}, Vertical: c.vertical, Candela: [][]float64{c.candela, c.candela, c.candela}}
		d, _, err := photometry.NewTable(n)
		if err != nil {
			t.Fatal(name, err)
		}
		if got := photometry.Behind(d); got != c.want {
			t.Errorf("%s: behind is %v, want %v", name, got, c.want)
		}
	}
	if photometry.Behind(photometry.Uniform{}) {
		t.Error("nothing is known of light behind a source without measured data")
	}
}

func TestBadTables(t *testing.T) {
	one := [][]float64{{1, 1}}
	for want, n := range map[string]photometry.Nodes{
		"1 horizontal angles have 0 rows":   {Horizontal: []float64{0}, Vertical: []float64{0, 90}},
		"needs two angles":                  {Horizontal: []float64{0}, Vertical: []float64{0}, Candela: [][]float64{{1}}},
		"one plane does for type C only":    {System: photometry.TypeA, Horizontal: []float64{0}, Vertical: []float64{0, 90}, Candela: one},
		"angles do not ascend":              {Horizontal: []float64{0}, Vertical: []float64{0, 45, 45, 90}, Candela: [][]float64{{1, 1, 1, 1}}},
		"do not ascend":                     {Horizontal: []float64{0}, Vertical: []float64{90, 0}, Candela: one},
		"beyond the sphere":                 {Horizontal: []float64{0}, Vertical: []float64{0, 180.5}, Candela: one},
		"2 vertical angles have 1":          {Horizontal: []float64{0}, Vertical: []float64{0, 90}, Candela: [][]float64{{1}}},
		"-1 is not an intensity":            {Horizontal: []float64{0}, Vertical: []float64{0, 90}, Candela: [][]float64{{1, -1}}},
		"NaN is not an intensity":           {Horizontal: []float64{0}, Vertical: []float64{0, 90}, Candela: [][]float64{{1, math.NaN()}}},
		"gives no light":                    {Horizontal: []float64{0}, Vertical: []float64{0, 90}, Candela: [][]float64{{0, 0}}},
		"go beyond the sphere":              {Horizontal: []float64{1e9, 1e9 + 90}, Vertical: []float64{0, 90}, Candela: [][]float64{{1, 1}, {1, 1}}},
		"the angles do not ascend":          {Horizontal: []float64{0, math.NaN()}, Vertical: []float64{0, 90}, Candela: [][]float64{{1, 1}, {1, 1}}},
		"a table needs two angles each way": {Horizontal: nil, Vertical: []float64{0, 90}},
	} {
		if d, flux, err := photometry.NewTable(n); err == nil || !strings.Contains(err.Error(), want) || d != nil || flux != 0 {
			t.Errorf("got %v of %g lm, and %v, want %q", d, flux, err, want)
		}
	}
}

// The angles of a table may reach the ends of their range, and lie nowhere past them.
func TestHowFarTheAnglesGo(t *testing.T) {
	for _, c := range []struct {
		system               photometry.System
		horizontal, vertical [2]float64
		good                 bool
	}{
		{photometry.TypeC, [2]float64{0, 360}, [2]float64{0, 180}, true},
		{photometry.TypeC, [2]float64{-360, 0}, [2]float64{0, 180}, true},
		{photometry.TypeC, [2]float64{360, 720}, [2]float64{0, 180}, true},
		{photometry.TypeC, [2]float64{0, 360.5}, [2]float64{0, 180}, false},
		{photometry.TypeC, [2]float64{-360.5, 0}, [2]float64{0, 180}, false},
		{photometry.TypeC, [2]float64{360.5, 700}, [2]float64{0, 180}, false},
		{photometry.TypeC, [2]float64{0, 360}, [2]float64{-0.5, 180}, false},
		{photometry.TypeC, [2]float64{0, 360}, [2]float64{0, 180.5}, false},
		{photometry.TypeB, [2]float64{-90, 90}, [2]float64{-180, 180}, true},
		{photometry.TypeB, [2]float64{-90.5, 90}, [2]float64{-90, 90}, false},
		{photometry.TypeB, [2]float64{-90, 90.5}, [2]float64{-90, 90}, false},
		{photometry.TypeA, [2]float64{-180, 180}, [2]float64{-90, 90}, true},
		{photometry.TypeA, [2]float64{-90, 90}, [2]float64{-90, 90.5}, false},
		{photometry.TypeA, [2]float64{-90, 90}, [2]float64{-90.5, 90}, false},
		{photometry.TypeC, [2]float64{0, math.Inf(1)}, [2]float64{0, 180}, false},
		{photometry.TypeC, [2]float64{0, 0}, [2]float64{0, 180}, false},
		{photometry.TypeC, [2]float64{0, 360}, [2]float64{90, 90}, false},
	} {
		_, _, err := photometry.NewTable(photometry.Nodes{System: c.system, Horizontal: c.horizontal[:], Vertical: c.vertical[:],
			Candela: [][]float64{{1, 2}, {1, 2}}})
		if (err == nil) != c.good {
			t.Errorf("type %v, %v and %v: %v", c.system, c.horizontal, c.vertical, err)
		}
	}
}

// Two angles apart as far as may be: between I0 on the axis and I1 at an angle g the flux is
// 2 pi (I0 (1 - cos g) + (I1 - I0) (sin g - g cos g)/g).
func TestTableFluxOfOneStep(t *testing.T) {
	for _, degrees := range []float64{1, 2, 2.3, 2.6, 10, 60, 90, 135, 180} {
		g := degrees * math.Pi / 180
		for _, i := range [][2]float64{{1, 0}, {0, 1}, {3, 5}} {
			_, flux, err := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0}, Vertical: []float64{0, degrees}, Candela: [][]float64{i[:]}})
			if err != nil {
				t.Fatal(err)
			}
			sin, cos := math.Sincos(g)
			want := 2 * math.Pi * (i[0]*2*math.Pow(math.Sin(g/2), 2) + (i[1]-i[0])*(sin-g*cos)/g)
			within(t, fmt.Sprint(i, " over ", degrees), flux, want, 1e-9*want)
		}
	}
}

func BenchmarkTable(b *testing.B) {
	d, _, err := photometry.NewTable(randomNodes(rand.New(rand.NewPCG(1, 2)), photometry.TypeC))
	if err != nil {
		b.Fatal(err)
	}
	dir := r3.Unit(r3.Vec{X: .2, Y: .3, Z: -1})
	b.ReportAllocs()
	for b.Loop() {
		d.Candela(dir)
	}
}
