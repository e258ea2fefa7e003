package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// skewed is the light of a window behind a deep frame: it ends at other angles to its left, its right, its top and its
// foot, where it has a crease.
type skewed struct{}

// The tangents at which the light of skewed ends.
const skewedLeft, skewedRight, skewedDown, skewedUp = -0.5, 1.2, -0.8, 0.4

func (skewed) Candela(d r3.Vec) float64 {
	if d.Z >= 0 {
		return 0
	}
	x, y := d.X/-d.Z, d.Y/-d.Z
	return -d.Z * max(0, x-skewedLeft) * max(0, skewedRight-x) * max(0, y-skewedDown) * max(0, skewedUp-y)
}

// places lie before a face of 1.2 m by 0.8 m in its frame, right, up and ahead: where the ends of its light fall on the
// face, beside it, far off.
var places = []r3.Vec{
	{X: 0.1, Y: -0.15, Z: 0.5}, {X: -0.3, Y: 0.2, Z: 0.4}, {X: 0.4, Y: -0.3, Z: 0.25}, {X: 0.9, Y: 0.1, Z: 0.6}, {X: -0.4, Y: -0.7, Z: 0.8}, {X: 0.5, Y: -0.3, Z: 3},
}

// framed is a face or a disc of a distribution, askew in space, and a receptor at a place of its frame that looks at it
// from aside.
func framed(d photometry.Distribution, form photometry.Form, place r3.Vec, w Response) (Emitter, Receptor) {
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: -2, Z: 1.5}, r3.Vec{X: 3, Y: 1, Z: 0.4}),
		Source: photometry.Source{Flux: 1000, Distribution: d, Opening: photometry.Opening{Form: form, Width: 1.2, Height: 0.8}}}
	up := e.Frame.Up()
	at := r3.Add(e.Frame.At, r3.Add(r3.Scale(place.X, e.Frame.Right), r3.Add(r3.Scale(place.Y, up), r3.Scale(place.Z, e.Frame.Axis))))
	return e, Receptor{At: at, Axis: r3.Unit(r3.Add(r3.Scale(-1, e.Frame.Axis), r3.Add(r3.Scale(0.2, e.Frame.Right), r3.Scale(-0.3, up)))), Response: w}
}

// The light of a face that ends with a crease is summed between its creases, wherever on the face they fall: to a
// hundred-thousandth of a plain sum over a million points.
func TestLightEndsOnAFace(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 100, 60)
	for name, d := range map[string]photometry.Distribution{"skewed": skewed{}, "grid": grid} {
		for _, form := range []photometry.Form{photometry.Rectangle, photometry.Disc} {
			for i, place := range places[:cases(len(places), 2)] {
				for _, w := range []Response{Cosine, Dome} {
					e, r := framed(d, form, place, w)
					want := plainSum(&e, &r, cases(1000, 500))
					if want < 1 {
						t.Fatalf("%s, place %d: only %g lx", name, i, want)
					}
					close(t, fmt.Sprintf("%s, form %d, place %d, response %d", name, form, i, w), lux(t, &solid.Set{}, e, r)/want, 1, 1e-5)
				}
			}
		}
	}
}

// Past the angles at which its light ends a face gives nothing, to whichever side.
func TestNoLightPastItsEnds(t *testing.T) {
	for _, form := range []photometry.Form{photometry.Rectangle, photometry.Disc} {
		for _, place := range []r3.Vec{{X: 3, Z: 0.5}, {X: -2, Z: 0.5}, {Y: 2, Z: 0.5}, {Y: -2, Z: 0.5}, {X: 3, Y: 2, Z: 0.5}} {
			for _, w := range []Response{Cosine, Dome} {
				e, r := framed(skewed{}, form, place, w)
				if got := lux(t, &solid.Set{}, e, r); got != 0 {
					t.Errorf("form %d, place %v, response %d: %g lx", form, place, w, got)
				}
			}
		}
	}
}

// A board hides the left, the right, the lower or the upper half of a face from a receptor: what is left is the light of a
// face of the other half.
func TestHalfOfAFaceThatIsNotSmooth(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 100, 60)
	for name, d := range map[string]photometry.Distribution{"skewed": skewed{}, "grid": grid, "lobe": photometry.NewFaceLobe(70, 120)} {
		for i, place := range places[:cases(len(places), 2)] {
			for _, w := range []Response{Cosine, Dome} {
				for _, half := range []r3.Vec{{X: -1}, {X: 1}, {Y: -1}, {Y: 1}} { // the side that is hidden
					e, r := framed(d, photometry.Rectangle, place, w)
					side := r3.Add(r3.Scale(half.X, e.Frame.Right), r3.Scale(half.Y, e.Frame.Up()))
					along := r3.Cross(side, e.Frame.Axis)
					corner := func(out, far float64) r3.Vec { // on the face, just before it
						return r3.Add(r3.Add(e.Frame.At, r3.Scale(1e-5, e.Frame.Axis)), r3.Add(r3.Scale(out, side), r3.Scale(far, along)))
					}
					board := solid.Sheet{ID: 1, Corners: []r3.Vec{corner(0, -1), corner(1, -1), corner(1, 1), corner(0, 1)}}
					got := lux(t, &solid.Set{Sheets: []solid.Sheet{board}}, e, r)
					left := e
					left.Source.Flux /= 2
					if half.X != 0 {
						left.Source.Opening.Width /= 2
						left.Frame.At = r3.Sub(left.Frame.At, r3.Scale(0.3, side))
					} else {
						left.Source.Opening.Height /= 2
						left.Frame.At = r3.Sub(left.Frame.At, r3.Scale(0.2, side))
					}
					want := lux(t, &solid.Set{}, left, r)
					if math.Abs(got-want) > 2e-4*lux(t, &solid.Set{}, e, r) {
						t.Errorf("%s, place %d, response %d, without the half at %v: %.8g lx, want %.8g", name, i, w, half, got, want)
					}
				}
			}
		}
	}
}

// A measured face of no narrow beam is summed as closely as lattices and surfaces ask for, before a plane and at a dome: as the squares of it add up, to
// three percent from half a size off. Behind a grid an opening that varies is summed as it varies.
func TestSumsBetweenCreases(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 100, 60)
	for name, c := range map[string]struct {
		d       photometry.Distribution
		profile Profile
		to      *precision
		slack   float64
	}{"measured": {measured(t, 1, 0.8), nil, coarsely(), 0.03}, "grid that varies": {grid, slanted{1.2}, exactly(), 3e-4}} {
		for _, form := range []photometry.Form{photometry.Rectangle, photometry.Disc} {
			for i, place := range places[:3] {
				for _, w := range []Response{Cosine, Dome} {
					e, r := framed(c.d, form, place, w)
					e.Profile = c.profile
					want := plainSum(&e, &r, 150)
					close(t, fmt.Sprintf("%s, form %d, place %d, response %d", name, form, i, w), newLamp(&e, 1, 1, 1).unoccluded(&r, c.to)/want, 1, c.slack)
				}
			}
		}
	}
}

// Of an opening that is some times as wide comes from as many times as far the square of that less: the rules that sum it know no metre.
func TestSumsBetweenCreasesKnowNoMetre(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 100, 60)
	for name, d := range map[string]photometry.Distribution{"skewed": skewed{}, "grid": grid, "measured": measured(t, 1, 0.8)} {
		for _, form := range []photometry.Form{photometry.Rectangle, photometry.Disc} {
			for _, to := range []*precision{coarsely(), exactly()} {
				for i, place := range places {
					e, r := framed(d, form, place, Cosine)
					want := newLamp(&e, 1, 1, 1).unoccluded(&r, to)
					for _, times := range []float64{1. / 8, 4} { // powers of two are exact
						e, r := framed(d, form, r3.Scale(times, place), Cosine)
						e.Source.Opening.Width, e.Source.Opening.Height = times*e.Source.Opening.Width, times*e.Source.Opening.Height
						close(t, fmt.Sprintf("%s, form %d, place %d, %g times", name, form, i, times), newLamp(&e, 1, 1, 1).unoccluded(&r, to)*times*times, want, 1e-9)
					}
				}
			}
		}
	}
}
