package photometry_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/testdata/published"
)

// within fails unless got is want to an absolute tolerance.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.12g, want %.12g to %g", what, got, want, tolerance)
	}
}

func label(row published.Row) string { return fmt.Sprint(row.Label, row.In) }

// cosinePower is a distribution of another maker, with no Peak of its own.
type cosinePower float64

func (n cosinePower) Candela(dir r3.Vec) float64 {
	return (float64(n) + 1) / (2 * math.Pi) * math.Pow(math.Max(0, -dir.Z), float64(n))
}

func TestAnglesOfCosinePowers(t *testing.T) {
	for _, row := range published.Read(t, "distributions.txt", "cosine power") {
		d := cosinePower(row.In[0])
		across, along := photometry.BeamAngle(d)
		within(t, label(row)+" beam", across, row.Out[1], 0.005)
		within(t, label(row)+" beam along", along, row.Out[1], 0.005)
		across, _ = photometry.FieldAngle(d)
		within(t, label(row)+" field", across, row.Out[2], 0.005)
		s := photometry.FromCandela(1000, d, photometry.Opening{})
		within(t, label(row)+" flux", s.Flux, row.Out[0], 0.005)
		within(t, label(row)+" peak", s.Peak(), 1000, 1e-9)
	}
	lambert := published.Read(t, "distributions.txt", "cosine power")[0]
	within(t, "Lambert's flux", photometry.FromCandela(1000, photometry.Cosine{}, photometry.Opening{}).Flux, lambert.Out[0], 5e-5)
}

// All of the flux of a face goes out before it, however wide its lobe; a narrow one is that of a point.
func TestLobeOfAFace(t *testing.T) {
	for _, beam := range []float64{15, 60, 90, 120, 180} {
		d := photometry.NewFaceLobe(beam, 0)
		within(t, "integral", reference.SphereIntegral(d), 1, 2e-4)
		within(t, "behind", d.At(math.Pi/2+1e-9), 0, 0)
		within(t, "half at half the beam", d.At(beam/2*math.Pi/180)/d.Peak(), 0.5, 1e-12)
	}
	within(t, "narrow", photometry.NewFaceLobe(15, 28).Peak(), photometry.NewLobe(15, 28).Peak(), 1e-9)
}

func TestCone(t *testing.T) {
	for _, row := range published.Read(t, "distributions.txt", "cone") {
		s := photometry.FromCandela(1, reference.NewCone(2*row.In[0]), photometry.Opening{})
		within(t, label(row), s.Flux, row.Out[0], 5.1e-6)
		across, _ := photometry.BeamAngle(s.Distribution)
		within(t, label(row)+" beam", across, 2*row.In[0], 1e-9)
	}
	for _, row := range published.Read(t, "distributions.txt", "spot") {
		across, _ := photometry.BeamAngle(reference.NewCone(row.In[0]))
		within(t, label(row), 2*3*math.Tan(across/2*math.Pi/180), row.Out[0], 5.1e-5)
	}
}

func TestPointSource(t *testing.T) {
	row := published.Read(t, "distributions.txt", "point")[0]
	s := photometry.FromLux(row.Out[0], row.In[1], photometry.Uniform{}, photometry.Opening{})
	within(t, "cd", s.Intensity(r3.Vec{X: 1}), row.In[0], 1e-3)
	within(t, "lm", s.Flux, 4*math.Pi*row.In[0], 2e-3)
	for _, row := range published.Read(t, "distributions.txt", "inverse square") {
		near := photometry.FromLux(100, 1, photometry.Uniform{}, photometry.Opening{})
		far := photometry.FromLux(100, row.In[0], photometry.Uniform{}, photometry.Opening{})
		within(t, label(row), math.Log2(far.Flux/near.Flux), row.Out[0], 5e-4)
	}
}

// A lobe is 1/2 of its peak at half the beam angle and 1/10 at half the field angle.
func TestLobeFollowsItsAngles(t *testing.T) {
	for _, c := range [][2]float64{{0.5, 1}, {6, 9}, {15, 30}, {55, 80}, {60, 61}, {110, 170}, {120, 200}} {
		l := photometry.NewLobe(c[0], c[1])
		for _, p := range [][2]float64{{c[0], 0.5}, {c[1], 0.1}} {
			within(t, fmt.Sprintf("lobe %v at %g", c, p[0]), l.At(p[0]/2*math.Pi/180)/l.Peak(), p[1], 1e-9)
		}
		beam, _ := photometry.BeamAngle(l)
		within(t, fmt.Sprintf("beam of %v", c), beam, c[0], 1e-9)
		field, _ := photometry.FieldAngle(l)
		within(t, fmt.Sprintf("field of %v", c), field, c[1], 1e-9)
	}
}

// Flux and peak agree by an independent sum: composite Simpson over 400,000 rings.
func TestLobeFlux(t *testing.T) {
	for _, c := range [][2]float64{{0.5, 1}, {6, 9}, {15, 30}, {55, 80}, {60, 60.5}, {110, 170}} {
		l := photometry.NewLobe(c[0], c[1])
		const n = 400_000
		h, sum := math.Pi/n, 0.0
		for i := 0; i <= n; i++ {
			w := 2.0 + 2*float64(i%2)
			if i == 0 || i == n {
				w = 1
			}
			sum += w * l.At(float64(i)*h) * math.Sin(float64(i)*h)
		}
		within(t, fmt.Sprintf("integral of %v", c), 2*math.Pi*sum*h/3, 1, 1e-9)
	}
}

// n = 2 is a Gaussian, whose integral over a narrow beam is pi tb²/ln 2.
func TestNarrowLobeIsGaussian(t *testing.T) {
	l := photometry.NewLobe(1, 0)
	half := 0.5 * math.Pi / 180
	within(t, "1/peak", 1/l.Peak(), math.Pi*half*half/math.Ln2, 1e-4*half*half)
	field, _ := photometry.FieldAngle(l)
	within(t, "field", field, photometry.DefaultField(1), 1e-9)
	within(t, "default field", photometry.DefaultField(1), 1.8226, 5e-5)
}

func distributions() map[string]photometry.Distribution {
	narrowGrid, _ := photometry.NewGrid(photometry.NewLobe(60, 90), 40, 40)
	honeycomb, _ := photometry.NewHoneycomb(photometry.NewLobe(60, 90), 60)
	eggcrate, _ := photometry.NewGrid(photometry.Cosine{}, 90, 60)
	r := rand.New(rand.NewPCG(20, 21))
	c, _, _ := photometry.NewTable(randomNodes(r, photometry.TypeC))
	b, _, _ := photometry.NewTable(randomNodes(r, photometry.TypeB))
	curve, _, _ := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0}, Vertical: []float64{0, 30, 70, 180}, Candela: [][]float64{{5, 9, 2, 1}}})
	scrimmed, _ := photometry.NewHalfScrim(photometry.NewLobe(40, 60), 0.5, 60, 12)
	skewed, _ := photometry.NewHalfScrim(c, 0.5, 60, 12)
	return map[string]photometry.Distribution{
		"half scrim": scrimmed, "half scrim of a table": skewed,
		"table": c, "table of type B": b, "curve": curve,
		"lobe": photometry.NewLobe(40, 60), "cosine": photometry.Cosine{}, "uniform": photometry.Uniform{},
		"cone": reference.NewCone(60), "tube": photometry.TubeCosine{}, "grid": eggcrate, "grid over a lobe": narrowGrid, "honeycomb": honeycomb,
	}
}

// Whatever its shape, a source of one lumen sends out one lumen.
func TestOneLumenIn(t *testing.T) {
	for name, d := range distributions() {
		within(t, name, reference.SphereIntegral(d), 1, 2e-4)
	}
	within(t, "lobe", reference.SphereIntegral(photometry.NewLobe(40, 60)), 1, 1e-9)
	within(t, "cosine", reference.SphereIntegral(photometry.Cosine{}), 1, 1e-9)
}

// Nothing is brighter than the peak, and nothing shines negatively.
func TestPeakIsThePeak(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	for name, d := range distributions() {
		peak := photometry.Peak(d)
		for range 2000 {
			dir := r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()})
			if v := d.Candela(dir); !(v >= 0 && v <= peak*(1+1e-9)) {
				t.Fatalf("%s: %g cd/lm toward %v, peak %g", name, v, dir, peak)
			}
		}
		if a, ok := d.(photometry.Axial); ok {
			within(t, name+" at 0.7", a.At(0.7), d.Candela(r3.Vec{Y: math.Sin(0.7), Z: -math.Cos(0.7)}), 1e-12)
		}
	}
}

// A grid only takes away: the share that passes times what leaves is never over what entered.
func TestGridOnlyDarkens(t *testing.T) {
	for _, cut := range []float64{20, 40, 90, 150} {
		g, share := photometry.NewGrid(photometry.Cosine{}, cut, cut)
		if !(share > 0 && share < 1) {
			t.Errorf("share through a grid of %g degrees = %g", cut, share)
		}
		axis := r3.Vec{Z: -1}
		within(t, "on the axis", share*g.Candela(axis), photometry.Cosine{}.Candela(axis), 1e-12)
		edge := cut / 2 * math.Pi / 180
		base, across, along, gain := g.Parts()
		within(t, "gain on the axis", gain*base.Candela(axis), g.Candela(axis), 1e-12)
		within(t, "tangent across", across, math.Tan(edge), 1e-12)
		within(t, "tangent along", along, math.Tan(edge), 1e-12)
		within(t, "at the cut-off", g.Candela(r3.Vec{X: math.Sin(edge), Z: -math.Cos(edge)}), 0, 1e-12)
	}
	// A very open grid over a Lambertian face loses 1 - |tan| averaged: checked by the plain double sum.
	_, share := photometry.NewGrid(photometry.Cosine{}, 90, 90)
	const n = 1000
	sum := 0.0
	for i := range n {
		for j := range n {
			x, y := (float64(i)+.5)/n, (float64(j)+.5)/n
			r2 := 1 + x*x + y*y
			sum += (1 - x) * (1 - y) / (r2 * r2)
		}
	}
	within(t, "share", share, 4*sum/(n*n)/math.Pi, 1e-6)
	// The same light as a table, in steps of half a degree.
	var angles, candela []float64
	for i := range 181 {
		angles = append(angles, float64(i)/2)
		candela = append(candela, math.Cos(float64(i)*math.Pi/360))
	}
	table, _, err := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0}, Vertical: angles, Candela: [][]float64{candela}})
	if err != nil {
		t.Fatal(err)
	}
	_, measured := photometry.NewGrid(table, 90, 90)
	within(t, "share of a table", measured, share, 5e-5)
}

// What is stated of a face at a distance is what the closed forms give there.
func TestFromLuxAgreesWithFormFactors(t *testing.T) {
	down, up := r3.Vec{Z: -1}, r3.Vec{Z: 1}
	for _, distance := range []float64{0.5, 1, 2, 5} {
		at := r3.Vec{Z: -distance}
		face := photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.8}
		s := photometry.FromLux(500, distance, photometry.Cosine{}, face)
		corners := []r3.Vec{{X: -.6, Y: -.4}, {X: -.6, Y: .4}, {X: .6, Y: .4}, {X: .6, Y: -.4}}
		within(t, "face", s.Luminance()*formfactor.Polygon(corners, at, up), 500, 1e-7)

		disc := photometry.Opening{Form: photometry.Disc, Width: 1}
		s = photometry.FromLux(500, distance, photometry.Cosine{}, disc)
		circle := formfactor.Circle{Normal: down, Radius: 0.5}
		within(t, "disc", s.Luminance()*formfactor.Disc(circle, at, up), 500, 1e-7)

		tube := photometry.Opening{Form: photometry.Tube, Width: 1.2}
		s = photometry.FromLux(500, distance, photometry.TubeCosine{}, tube)
		perMetre := s.Flux / (math.Pi * math.Pi * 1.2)
		within(t, "tube", perMetre*formfactor.Line(r3.Vec{X: -.6}, r3.Vec{X: .6}, at, up), 500, 1e-7)

		ball := photometry.Opening{Form: photometry.Sphere, Width: 0.4}
		s = photometry.FromLux(500, distance, photometry.Uniform{}, ball)
		within(t, "sphere", s.Luminance()*formfactor.Sphere(r3.Vec{}, 0.2, at, up), 500, 1e-7)
	}
}

// From far away an opening is a point: E d² is its intensity.
// lopsided is light that is the same nowhere: it favours one side across and one along.
type lopsided struct{}

func (lopsided) Candela(dir r3.Vec) float64 {
	return math.Max(0, -dir.Z) * (1 + 0.5*dir.X + 0.3*dir.Y + 0.2*dir.X*dir.Y)
}

// The light on the axis of an opening is the sum over its points, each lit by the whole of the lamp's distribution: what
// favours one side counts by where on the opening the light comes from.
func TestFromLuxOfALopsidedLamp(t *testing.T) {
	const distance, n = 0.7, 1500
	at := func(x, y float64) float64 { // by the point (x, y) of the opening
		to := r3.Vec{X: -x, Y: -y, Z: -distance}
		d := r3.Unit(to)
		return lopsided{}.Candela(d) * -d.Z / r3.Norm2(to)
	}
	face, disc, tube, all := 0.0, 0.0, 0.0, 0.0
	for i := range n {
		u := (float64(i) + 0.5) / n
		tube += at(1.1*(u-0.5), 0) / n
		for k := range n {
			v := (float64(k) + 0.5) / n
			face += at(1.1*(u-0.5), 0.6*(v-0.5)) / (n * n)
			sin, cos := math.Sincos(2 * math.Pi * v)
			disc += u * at(0.55*u*cos, 0.55*u*sin)
			all += u
		}
	}
	disc /= all
	for name, c := range map[string]struct {
		opening photometry.Opening
		lux     float64
	}{
		"face":  {photometry.Opening{Form: photometry.Rectangle, Width: 1.1, Height: 0.6}, face},
		"disc":  {photometry.Opening{Form: photometry.Disc, Width: 1.1}, disc},
		"tube":  {photometry.Opening{Form: photometry.Tube, Width: 1.1}, tube},
		"point": {photometry.Opening{}, at(0, 0)},
	} {
		within(t, name, photometry.FromLux(100, distance, lopsided{}, c.opening).Flux, 100/c.lux, 1e-5*100/c.lux)
	}
}

// A grid lets nothing out behind it, nor in its own plane, whatever shines into it; and a grid whose brightest light
// is off the axis knows how bright that is.
func TestGridIsDarkBehind(t *testing.T) {
	g, _ := photometry.NewGrid(photometry.Uniform{}, 90, 60)
	for _, dir := range []r3.Vec{{Z: 1}, {X: 1}, {X: 0.1, Z: 0.99}, {Y: 0.6, Z: 0.8}, {X: 0.28, Y: 0.96}} {
		within(t, fmt.Sprint("toward ", dir), g.Candela(dir), 0, 0)
	}
	within(t, "an even lamp's peak", photometry.Peak(g), g.Candela(r3.Vec{Z: -1}), 0)
	// A bowl (1 - z²) is dark on its axis and brightest where its cells begin to hide it.
	over, _ := photometry.NewGrid(bowl{}, 120, 120)
	best := 0.0
	for i := range 4000 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 8000)
		best = math.Max(best, over.Candela(r3.Vec{X: sin, Z: -cos}))
	}
	within(t, "a bowl's peak", photometry.Peak(over), best, 0.002*best)
	if axis := over.Candela(r3.Vec{Z: -1}); axis != 0 {
		t.Errorf("a bowl sends %g along its axis", axis)
	}
}

// bowl is light that grows away from the axis.
type bowl struct{}

func (bowl) Candela(dir r3.Vec) float64 { return 1 - dir.Z*dir.Z }

func TestFarOpeningsArePoints(t *testing.T) {
	for _, o := range []photometry.Opening{
		{Form: photometry.Rectangle, Width: 1, Height: 1}, {Form: photometry.Disc, Width: 1},
		{Form: photometry.Tube, Width: 1}, {Form: photometry.Sphere, Width: 1},
	} {
		s := photometry.FromLux(1, 1000, photometry.Lambertian(o.Form), o)
		within(t, fmt.Sprint(o), s.Intensity(r3.Vec{Z: -1}), 1e6, 2)
	}
}

func TestLuminanceAndFlux(t *testing.T) {
	for _, o := range []photometry.Opening{
		{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}, {Form: photometry.Disc, Width: 1},
		{Form: photometry.Tube, Width: 1.2, Height: 0.03}, {Form: photometry.Sphere, Width: 0.5},
	} {
		s := photometry.FromLuminance(1000, o)
		within(t, fmt.Sprint(o, " luminance"), s.Luminance(), 1000, 1e-9)
		within(t, fmt.Sprint(o, " flux"), s.Flux, 1000*math.Pi*o.Surface(), 1e-9)
	}
	if l := photometry.FromLumens(100, photometry.Uniform{}, photometry.Opening{}).Luminance(); l != 0 {
		t.Errorf("a point has no luminance, not %g", l)
	}
}

// The surface of an opening that shines, by the formulas of its form, and its largest measure.
func TestSurfaces(t *testing.T) {
	for _, c := range []struct {
		opening          photometry.Opening
		surface, largest float64
	}{
		{photometry.Opening{}, 0, 0}, {photometry.Opening{Form: photometry.Rectangle, Width: 0.5, Height: 3}, 1.5, 3},
		{photometry.Opening{Form: photometry.Disc, Width: 0.6}, math.Pi * 0.3 * 0.3, 0.6},
		{photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.05}, math.Pi * 0.05 * 1.2, 1.2},
		{photometry.Opening{Form: photometry.Sphere, Width: 0.4}, 4 * math.Pi * 0.2 * 0.2, 0.4},
	} {
		within(t, fmt.Sprint(c.opening), c.opening.Surface(), c.surface, 1e-12)
		within(t, fmt.Sprint(c.opening, " at most"), c.opening.Largest(), c.largest, 0)
	}
}

// The peak of a lamp that is brightest along its axis, or all round its right, is met there.
func TestPeakIsMet(t *testing.T) {
	for name, d := range map[string]photometry.Distribution{
		"cosine": photometry.Cosine{}, "uniform": photometry.Uniform{}, "cone": reference.NewCone(40), "tube": photometry.TubeCosine{}, "lobe": photometry.NewLobe(30, 50),
	} {
		within(t, name, photometry.Peak(d), d.Candela(r3.Vec{Z: -1}), 1e-15)
	}
}

func TestDipOnTheAxis(t *testing.T) {
	across, along := photometry.BeamAngle(ring{})
	within(t, "across", across, 80, 1e-6)
	within(t, "along", along, 80, 1e-6)
	if across, _ := photometry.BeamAngle(photometry.Uniform{}); across != 360 {
		t.Errorf("uniform light has a beam of %g, want 360", across)
	}
}

// ring shines between 20 and 40 degrees off the axis only.
type ring struct{}

func (ring) Candela(dir r3.Vec) float64 {
	t := math.Acos(-dir.Z) * 180 / math.Pi
	if t < 20-1e-9 || t > 40+1e-9 {
		return 0
	}
	return 1
}

func BenchmarkLobe(b *testing.B) {
	l := photometry.NewLobe(40, 60)
	dir := r3.Unit(r3.Vec{X: .2, Z: -1})
	b.ReportAllocs()
	for b.Loop() {
		l.Candela(dir)
	}
}

func BenchmarkNewLobe(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		photometry.NewLobe(40, 60)
	}
}

func BenchmarkNewGrid(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		photometry.NewGrid(photometry.Cosine{}, 90, 60)
	}
}

func ExampleFromLux() {
	s := photometry.FromLux(8000, 3, photometry.NewLobe(55, 80), photometry.Opening{})
	fmt.Printf("%.0f cd, %.0f lm\n", s.Peak(), s.Flux)
	// Output: 72000 cd, 56959 lm
}

// A lobe that falls steeply ends long before its last piece, which is next to nothing: it is not summed to its own
// last digit, which took twenty seconds.
func TestSteepLobes(t *testing.T) {
	for _, ratio := range []float64{1.02, 1.1, 1.2, 1.3, 1.5} {
		for _, beam := range []float64{3, 12, 18, 30, 70} {
			l := photometry.NewLobe(beam, ratio*beam)
			flux := 0.0
			const n = 200_000
			edge := math.Min(math.Pi, 3*ratio*beam*math.Pi/360)
			for i := range n {
				at := (float64(i) + 0.5) / n * edge
				flux += l.At(at) * math.Sin(at) * edge / n
			}
			if off := 2*math.Pi*flux - 1; !(math.Abs(off) <= 1e-5) {
				t.Errorf("beam %g, field %g: %g lm of 1", beam, ratio*beam, 2*math.Pi*flux)
			}
		}
	}
}
