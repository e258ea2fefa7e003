package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// bySquares is the light of a face by 400 x 400 small squares of it, each a point: a sum that knows no rule and no crease.
func bySquares(e *Emitter, r *Receptor) (sum float64) {
	const n = 400
	f, o := e.Frame, e.Source.Opening
	for i := range n * n {
		x, y := (float64(i%n)+0.5)/n-0.5, (float64(i/n)+0.5)/n-0.5
		at := r3.Add(f.At, r3.Add(r3.Scale(x*o.Width, f.Right), r3.Scale(y*o.Height, f.Up())))
		way := r3.Sub(r.At, at)
		d := r3.Unit(way)
		cos := -r3.Dot(d, r.Axis)
		own := r3.Vec{X: r3.Dot(d, f.Right), Y: r3.Dot(d, f.Up()), Z: -r3.Dot(d, f.Axis)}
		sum += e.Source.Flux * e.Source.Distribution.Candela(own) * max(0, cos) / r3.Norm2(way) / (n * n)
	}
	return sum
}

// A face of measured light, the whole of it seen, from far and from near: its creases at each angle of the table are
// summed over to 1e-3.
func TestMeasuredFaceOnAReceptor(t *testing.T) {
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.4}), Source: photometry.Source{Flux: 3000, Distribution: measured(t, 1, 2),
		Opening: photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.7}}}
	for _, at := range []r3.Vec{{X: 3, Y: 0.4, Z: 1}, {X: 0.5, Y: -0.3, Z: 1.7}, {X: 0.15, Y: 0.2, Z: 1.5}, {X: 1, Y: 2, Z: 0.3}} {
		r := Receptor{At: at, Axis: r3.Unit(r3.Sub(e.Frame.At, at))}
		close(t, "measured face", lux(t, &solid.Set{}, e, r)/bySquares(&e, &r), 1, 1e-3)
	}
}

// A measured face that shines to both sides lights what stands behind it, past what stands there.
func TestTwoSidedFaceFromBehind(t *testing.T) {
	nodes := photometry.Nodes{Horizontal: []float64{0, 90, 180, 270, 360}}
	for g := 0.0; g <= 180; g += 10 {
		nodes.Vertical = append(nodes.Vertical, g)
	}
	for range nodes.Horizontal {
		var row []float64
		for _, g := range nodes.Vertical {
			row = append(row, 100*math.Abs(math.Cos(g*radian))*(1+0.5*math.Cos(g*radian)))
		}
		nodes.Candela = append(nodes.Candela, row)
	}
	nodes.Candela[1][16] += 20 // one plane of its own: no body of rotation
	d, flux, err := photometry.NewTable(nodes)
	if err != nil {
		t.Fatal(err)
	}
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5}), Source: photometry.Source{Flux: flux, Distribution: d,
		Opening: photometry.Opening{Form: photometry.Rectangle, Width: 0.8, Height: 0.6}}}
	behind := Receptor{At: r3.Vec{X: -1.2, Y: 0.3, Z: 1.2}, Axis: r3.Vec{X: 1}}
	want := bySquares(&e, &behind)
	if want < 10 {
		t.Fatalf("only %g lx behind the face", want)
	}
	close(t, "behind", lux(t, &solid.Set{}, e, behind)/want, 1, 1e-3)
	// A board before the lower half of the face, seen from the receptor, edge on the line to its middle.
	board := solid.Sheet{ID: 1, Corners: []r3.Vec{{X: -0.01, Y: -1, Z: 0}, {X: -0.01, Y: 1, Z: 0}, {X: -0.01, Y: 1, Z: 1.4975}, {X: -0.01, Y: -1, Z: 1.4975}}}
	half := lux(t, &solid.Set{Sheets: []solid.Sheet{board}}, e, behind)
	upper := e
	upper.Frame.At.Z, upper.Source.Opening.Height, upper.Source.Flux = 1.65, 0.3, flux/2
	close(t, "the upper half", half/bySquares(&upper, &behind), 1, 2e-3)
}

// A measured face whose table ends at 90 degrees, or is dark past it, has nothing for what stands behind it, even
// where its light goes out in its own plane; before it, it lights as its squares do.
func TestOneSidedFaceFromBehind(t *testing.T) {
	opening := photometry.Opening{Form: photometry.Rectangle, Width: 0.8, Height: 0.6}
	for name, vertical := range map[string][]float64{"to 90 degrees": {0, 45, 90}, "dark past 90 degrees": {0, 45, 90, 135, 180}} {
		for planes, horizontal := range map[string][]float64{"one plane": {0}, "planes": {0, 120, 360}} {
			nodes := photometry.Nodes{Horizontal: horizontal, Vertical: vertical}
			for i := range horizontal {
				row := make([]float64, len(vertical))
				copy(row, []float64{100, 80 + 5*float64(i%2), 60})
				nodes.Candela = append(nodes.Candela, row)
			}
			d, flux, err := photometry.NewTable(nodes)
			if err != nil {
				t.Fatal(err)
			}
			e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5}), Source: photometry.Source{Flux: flux, Distribution: d, Opening: opening}}
			for _, at := range []r3.Vec{{X: -1.2, Y: 0.3, Z: 1.2}, {X: -0.05, Z: 1.5}, {X: -3, Y: -2, Z: 2.5}} {
				if got := lux(t, &solid.Set{}, e, Receptor{At: at, Axis: r3.Unit(r3.Sub(e.Frame.At, at))}); got != 0 {
					t.Errorf("%s, %s: %g lx at %v behind the face", name, planes, got, at)
				}
			}
			before := Receptor{At: r3.Vec{X: 1.2, Y: 0.3, Z: 1.2}, Axis: r3.Vec{X: -1}}
			close(t, name+", "+planes+", before the face", lux(t, &solid.Set{}, e, before)/bySquares(&e, &before), 1, 1e-3)
		}
	}
}
