package formfactor_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/testdata/published"
)

// within fails unless got is want to a relative tolerance.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g to %g", what, got, want, tolerance)
	}
}

// printed fails unless got is want to half of the last of the decimals that a source prints.
func printed(t *testing.T, what string, got, want float64, decimals int) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.5001*math.Pow10(-decimals)) {
		t.Errorf("%s = %.12g, want %.*f", what, got, decimals, want)
	}
}

func label(row published.Row) string { return fmt.Sprint(row.Label, row.In) }

// face is the rectangle x0..x1, y0..y1 at height z, shining down.
func face(x0, x1, y0, y1, z float64) []r3.Vec {
	return []r3.Vec{{X: x0, Y: y0, Z: z}, {X: x0, Y: y1, Z: z}, {X: x1, Y: y1, Z: z}, {X: x1, Y: y0, Z: z}}
}

var up = r3.Vec{Z: 1}

func TestPolygonAgainstRectangles(t *testing.T) {
	for _, row := range published.Read(t, "formfactor.txt", "corner") {
		a, b, d := row.In[0], row.In[1], row.In[2]
		got := formfactor.Polygon(face(0, a, 0, b, d), r3.Vec{}, up)
		printed(t, label(row), got, row.Out[0], 10)
		x, y := a/d, b/d
		p, q := math.Hypot(1, x), math.Hypot(1, y)
		within(t, label(row), got, (x/p*math.Atan(y/p)+y/q*math.Atan(x/q))/2, 1e-13)
	}
	for _, row := range published.Read(t, "formfactor.txt", "perpendicular") {
		a, b, d := row.In[0], row.In[1], row.In[2]
		// The rectangle stands upright in y = 0 and shines along +y; the receptor looks up.
		upright := []r3.Vec{{}, {Z: b}, {X: a, Z: b}, {X: a}}
		got := formfactor.Polygon(upright, r3.Vec{Y: d}, up)
		printed(t, label(row), got, row.Out[0], 10)
		within(t, label(row), got, (math.Atan(a/d)-d/math.Hypot(d, b)*math.Atan(a/math.Hypot(d, b)))/2, 1e-12)
	}
	row := published.Read(t, "formfactor.txt", "centred")[0]
	h := row.In[1] / 2
	printed(t, label(row), row.In[0]*formfactor.Polygon(face(-h, h, -h, h, row.In[2]), r3.Vec{}, up), row.Out[0], 6)
	for _, row := range published.Read(t, "formfactor.txt", "unit square") {
		d := row.In[0]
		got := formfactor.Polygon(face(-.5, .5, -.5, .5, d), r3.Vec{}, up) * d * d
		within(t, label(row), got, row.Out[0], 1e-6)
	}
}

// A strip that runs on for 10,000 times its distance is endless to 1e-8.
func TestPolygonAgainstEndlessStrip(t *testing.T) {
	want := published.Read(t, "formfactor.txt", "strip")[0].Out[0]
	within(t, "strip", formfactor.Polygon(face(-1, 1, -1e4, 1e4, 1), r3.Vec{}, up), want, 1e-8)
}

func TestAreaSourceOfCIE171(t *testing.T) {
	lamp := face(1.5, 2.5, 1.5, 2.5, 3)
	for _, row := range published.Read(t, "formfactor.txt", "area source") {
		at := r3.Vec{X: row.In[0], Y: row.In[1], Z: row.In[2]}
		axis := r3.Vec{X: row.In[3], Y: row.In[4], Z: row.In[5]}
		got := 1000 * formfactor.Polygon(lamp, at, axis)
		if !(math.Abs(got-row.Out[0]) <= 0.005) {
			t.Errorf("%s = %.4f lx, want %.2f", label(row), got, row.Out[0])
		}
	}
}

func TestDiscOnAxis(t *testing.T) {
	for _, row := range published.Read(t, "formfactor.txt", "disc") {
		c := formfactor.Circle{Centre: r3.Vec{Z: row.In[2]}, Normal: r3.Vec{Z: -1}, Radius: row.In[1]}
		printed(t, label(row), row.In[0]*formfactor.Disc(c, r3.Vec{}, up), row.Out[0], 6)
	}
	want := published.Read(t, "formfactor.txt", "disc at five diameters")[0].Out[0]
	c := formfactor.Circle{Centre: r3.Vec{Z: 10}, Normal: r3.Vec{Z: -1}, Radius: 1}
	within(t, "five diameters", formfactor.Disc(c, r3.Vec{}, up)*100/math.Pi, want, 1e-6)
}

// Off the axis, a parallel receptor has the closed form
// pi/2 (1 - (d²+h²-r²)/sqrt((d²+h²+r²)² - 4 r² h²)) (Siegel and Howell; from memory).
func TestDiscOffAxis(t *testing.T) {
	for _, c := range [][3]float64{{1, .5, .3}, {2, .5, 1.7}, {.2, 1, .9}, {3, .1, 1e-6}, {3, .1, 1e-9}} {
		d, r, h := c[0], c[1], c[2]
		want := math.Pi / 2 * (1 - (d*d+h*h-r*r)/math.Sqrt(math.Pow(d*d+h*h+r*r, 2)-4*r*r*h*h))
		disc := formfactor.Circle{Centre: r3.Vec{X: h, Z: d}, Normal: r3.Vec{Z: -1}, Radius: r}
		within(t, fmt.Sprint("disc", c), formfactor.Disc(disc, r3.Vec{}, up), want, 1e-9)
	}
}

// A polygon of many sides becomes a disc, clipped or not, whatever way the receptor looks. The
// polygon has the area of the disc, so what is left is of the fourth order in 1/sides.
func TestDiscAgainstPolygon(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	const sides = 2000
	for range 200 {
		c := formfactor.Circle{Centre: vector(r, 1), Normal: r3.Unit(vector(r, 1)), Radius: 0.1 + r.Float64()}
		radius := c.Radius * math.Sqrt(2*math.Pi/sides/math.Sin(2*math.Pi/sides))
		u := r3.Unit(r3.Cross(c.Normal, vector(r, 1)))
		v := r3.Cross(c.Normal, u)
		corners := make([]r3.Vec, sides)
		for i := range corners {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
			corners[i] = r3.Add(c.Centre, r3.Add(r3.Scale(radius*cos, u), r3.Scale(radius*sin, v)))
		}
		at, axis := vector(r, 3), r3.Unit(vector(r, 1))
		for _, pair := range [][2]float64{
			{formfactor.Disc(c, at, axis), formfactor.Polygon(corners, at, axis)},
			{formfactor.DiscDome(c, at, axis), formfactor.PolygonDome(corners, at, axis)},
		} {
			if !(math.Abs(pair[0]-pair[1]) <= 2e-6*math.Max(pair[1], 0.1)) {
				t.Errorf("%+v from %v toward %v: %.10g, by a polygon %.10g", c, at, axis, pair[0], pair[1])
			}
		}
	}
}

func TestLine(t *testing.T) {
	for _, row := range published.Read(t, "formfactor.txt", "line") {
		l, d := row.In[0], row.In[1]
		got := 1000 * formfactor.Line(r3.Vec{Z: d}, r3.Vec{X: l, Z: d}, r3.Vec{}, up)
		printed(t, label(row), got, row.Out[0], 6)
		sin, cos := math.Sincos(math.Atan(l / d))
		within(t, label(row), got, 1000/d*(math.Atan(l/d)+sin*cos)/2, 1e-13)
	}
	row := published.Read(t, "formfactor.txt", "tube")[0]
	h := row.In[0] / 2
	got := 1000 * formfactor.Line(r3.Vec{X: -h, Z: row.In[1]}, r3.Vec{X: h, Z: row.In[1]}, r3.Vec{}, up)
	printed(t, label(row), got, row.Out[0], 6)
	row = published.Read(t, "formfactor.txt", "endless line")[0]
	got = row.In[0] * formfactor.Line(r3.Vec{X: -1e6, Z: row.In[1]}, r3.Vec{X: 1e6, Z: row.In[1]}, r3.Vec{}, up)
	within(t, label(row), got, row.Out[0], 1e-9)
}

func TestSphere(t *testing.T) {
	row := published.Read(t, "formfactor.txt", "sphere")[0]
	got := row.In[0] * formfactor.Sphere(r3.Vec{Z: row.In[2]}, row.In[1], r3.Vec{}, up)
	printed(t, label(row), got, row.Out[0], 6)
}

// Each closed form against a sum over small pieces of the source, with the receptor turned at
// random so that its plane often cuts the source.
func TestAgainstSums(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 40 {
		at, axis := vector(r, 2), r3.Unit(vector(r, 1))
		centre := r3.Add(vector(r, 1), r3.Vec{Z: 4})

		corner, u := r3.Unit(vector(r, 1)), r3.Vec{}
		u = r3.Unit(r3.Cross(corner, vector(r, 1)))
		v := r3.Cross(corner, u)
		flat, dome := sumRectangle(centre, u, v, at, axis)
		corners := []r3.Vec{
			r3.Sub(r3.Sub(centre, u), v), r3.Sub(r3.Add(centre, u), v),
			r3.Add(r3.Add(centre, u), v), r3.Add(r3.Sub(centre, u), v),
		}
		agree(t, "polygon", formfactor.Polygon(corners, at, axis), flat)
		agree(t, "polygon, dome", formfactor.PolygonDome(corners, at, axis), dome)

		flat, dome = sumLine(centre, r3.Add(centre, u), at, axis)
		agree(t, "line", formfactor.Line(centre, r3.Add(centre, u), at, axis), flat)
		agree(t, "line, dome", formfactor.LineDome(centre, r3.Add(centre, u), at, axis), dome)

		flat, dome = sumCap(centre, 0.8, at, axis)
		agree(t, "sphere", formfactor.Sphere(centre, 0.8, at, axis), flat)
		agree(t, "sphere, dome", formfactor.SphereDome(centre, 0.8, at, axis), dome)
	}
}

// agree allows for the coarse sums, which clip whole pieces.
func agree(t *testing.T, what string, got, sum float64) {
	t.Helper()
	if !(math.Abs(got-sum) <= 2e-4*math.Max(sum, 0.05)) {
		t.Errorf("%s: %.8g, by a sum %.8g", what, got, sum)
	}
}

// weigh adds one small piece of source that sends intensity to the receptor from offset.
func weigh(offset, axis r3.Vec, intensity float64) (flat, dome float64) {
	d2 := r3.Dot(offset, offset)
	cos := r3.Dot(offset, axis) / math.Sqrt(d2)
	return intensity * math.Max(cos, 0) / d2, intensity * (1 + cos) / 2 / d2
}

func sumRectangle(centre, u, v, at, axis r3.Vec) (flat, dome float64) {
	const n = 300
	normal := r3.Cross(u, v)
	for i := range n {
		for j := range n {
			x, y := (2*float64(i)+1)/n-1, (2*float64(j)+1)/n-1
			offset := r3.Sub(r3.Add(centre, r3.Add(r3.Scale(x, u), r3.Scale(y, v))), at)
			cos := -r3.Dot(normal, offset) / r3.Norm(offset)
			f, d := weigh(offset, axis, math.Max(cos, 0)*4/(n*n))
			flat, dome = flat+f, dome+d
		}
	}
	return flat, dome
}

func sumLine(a, b, at, axis r3.Vec) (flat, dome float64) {
	const n = 20000
	along := r3.Sub(b, a)
	length := r3.Norm(along)
	for i := range n {
		offset := r3.Sub(r3.Add(a, r3.Scale((float64(i)+.5)/n, along)), at)
		sin := r3.Norm(r3.Cross(along, offset)) / (length * r3.Norm(offset))
		f, d := weigh(offset, axis, sin*length/n)
		flat, dome = flat+f, dome+d
	}
	return flat, dome
}

// sumCap sums the sphere's cap of the receptor's sky, of luminance 1.
func sumCap(centre r3.Vec, radius float64, at, axis r3.Vec) (flat, dome float64) {
	const n = 400
	toward := r3.Sub(centre, at)
	half := math.Asin(radius / r3.Norm(toward))
	w := r3.Unit(toward)
	u := r3.Unit(r3.Cross(w, r3.Vec{X: .3, Y: .9, Z: .1}))
	v := r3.Cross(w, u)
	for i := range n {
		t := half * (float64(i) + .5) / n
		for j := range n {
			sin, cos := math.Sincos(2 * math.Pi * (float64(j) + .5) / n)
			ring := r3.Add(r3.Scale(cos, u), r3.Scale(sin, v))
			dir := r3.Add(r3.Scale(math.Cos(t), w), r3.Scale(math.Sin(t), ring))
			f, d := weigh(dir, axis, math.Sin(t)*half/n*2*math.Pi/n)
			flat, dome = flat+f, dome+d
		}
	}
	return flat, dome
}

func vector(r *rand.Rand, size float64) r3.Vec {
	return r3.Vec{X: size * r.NormFloat64(), Y: size * r.NormFloat64(), Z: size * r.NormFloat64()}
}

// A face and a disc shine from one side; a receptor that looks away gets nothing.
func TestDarkSides(t *testing.T) {
	lamp, disc := face(-1, 1, -1, 1, 2), formfactor.Circle{Centre: r3.Vec{Z: 2}, Normal: r3.Vec{Z: -1}, Radius: 1}
	above, down := r3.Vec{Z: 3}, r3.Vec{Z: -1}
	for what, got := range map[string]float64{
		"behind the face":          formfactor.Polygon(lamp, above, down),
		"behind the face, dome":    formfactor.PolygonDome(lamp, above, down),
		"behind the disc":          formfactor.Disc(disc, above, down),
		"behind the disc, dome":    formfactor.DiscDome(disc, above, down),
		"looking away":             formfactor.Polygon(lamp, r3.Vec{}, down),
		"looking away from disc":   formfactor.Disc(disc, r3.Vec{}, down),
		"looking away from sphere": formfactor.Sphere(r3.Vec{Z: 2}, .1, r3.Vec{}, down),
		"inside a sphere":          formfactor.Sphere(r3.Vec{Z: 2}, 3, r3.Vec{}, up),
		"looking away from a line": formfactor.Line(r3.Vec{Z: 2}, r3.Vec{X: 1, Z: 2}, r3.Vec{}, down),
		"on the line's course":     formfactor.Line(r3.Vec{Z: 2}, r3.Vec{Z: 3}, r3.Vec{}, up),
		"no polygon":               formfactor.Polygon(lamp[:2], r3.Vec{}, up),
		"a line without length":    formfactor.Line(r3.Vec{Z: 2}, r3.Vec{Z: 2}, r3.Vec{}, up),
	} {
		if got != 0 {
			t.Errorf("%s: %g, want 0", what, got)
		}
	}
}

// Two halves give what the whole gives, and a room closed around a receptor gives pi.
func TestPolygonAdds(t *testing.T) {
	at, axis := r3.Vec{X: .2, Y: .3}, r3.Unit(r3.Vec{X: .7, Y: -.2, Z: .4})
	whole := formfactor.Polygon(face(-1, 1, -1, 1, 1), at, axis)
	halves := formfactor.Polygon(face(-1, .1, -1, 1, 1), at, axis) + formfactor.Polygon(face(.1, 1, -1, 1, 1), at, axis)
	within(t, "halves", halves, whole, 1e-12)

	box := face(-1, 1, -1, 1, 1)
	sum := formfactor.Polygon(box, r3.Vec{}, up)
	for i := range box {
		a, b := box[(i+1)%4], box[i]
		sum += formfactor.Polygon([]r3.Vec{a, b, {X: b.X, Y: b.Y, Z: -1}, {X: a.X, Y: a.Y, Z: -1}}, r3.Vec{}, up)
	}
	within(t, "closed box", sum, math.Pi, 1e-12)
}

func BenchmarkPolygon(b *testing.B) {
	lamp := face(-.6, .6, -.6, .6, 2)
	b.ReportAllocs()
	for b.Loop() {
		formfactor.Polygon(lamp, r3.Vec{X: 1}, up)
	}
}

func BenchmarkDisc(b *testing.B) {
	c := formfactor.Circle{Centre: r3.Vec{Z: 2}, Normal: r3.Vec{Z: -1}, Radius: .6}
	b.ReportAllocs()
	for b.Loop() {
		formfactor.Disc(c, r3.Vec{X: 1}, up)
	}
}

func BenchmarkLine(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		formfactor.Line(r3.Vec{X: -.6, Z: 2}, r3.Vec{X: .6, Z: 2}, r3.Vec{X: 1}, up)
	}
}

func ExamplePolygon() {
	softbox := []r3.Vec{{X: -.6, Y: -.6}, {X: .6, Y: -.6}, {X: .6, Y: .6}, {X: -.6, Y: .6}} // shines along +z
	lux := 1000 * formfactor.Polygon(softbox, r3.Vec{Z: 2}, r3.Vec{Z: -1})
	fmt.Printf("%.1f lx at 2 m, not the %.0f of a point\n", lux, 1000*1.2*1.2/4)
	// Output: 321.6 lx at 2 m, not the 360 of a point
}
