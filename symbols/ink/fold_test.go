package ink_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// scribble is a page with every sort of mark, and some that show nothing.
func scribble(r *rand.Rand) *ink.Page {
	p := &ink.Page{Width: 200, Height: 100, Clips: [][]r2.Vec{{{X: 1, Y: 1}, {X: 9, Y: 1}, {X: 5, Y: 9}}}}
	at := func() r2.Vec { return r2.Vec{X: 200 * r.Float64(), Y: 100*r.Float64() - 3} }
	black, red := ink.Colour{}, ink.Colour{R: 250, G: 3}
	for i := range 60 {
		it := ink.Item{Layer: ink.Layer(r.IntN(int(ink.Collar) + 1)), Object: fmt.Sprint("light:", i%5), Clip: i % 2}
		switch i % 5 {
		case 0:
			it.Path, it.Stroke = []ink.Segment{{Op: ink.Move, P: [3]r2.Vec{at()}}, {Op: ink.Curve, P: [3]r2.Vec{at(), at(), at()}}, {Op: ink.Close}}, &ink.Stroke{Width: r.Float64(), Dash: []float64{1, 0.3}, Round: true}
		case 1:
			it.Path, it.Fill, it.Alt = []ink.Segment{{Op: ink.Move, P: [3]r2.Vec{at()}}, {Op: ink.Line, P: [3]r2.Vec{at()}}}, &black, "a sentence"
		case 2:
			it.Text = &ink.Text{At: at(), S: "T2.8 – “é”", Size: 2.1, Angle: 33.3, Bold: true, Align: ink.Right, Colour: red, Halo: &black}
		case 3:
			it.Image = &ink.Image{Min: at(), Max: at(), Width: 2, Height: 1, RGB: []byte{1, 2, 3, 4, 5, 6}}
		case 4: // nothing that shows
			it.Path, it.Stroke = []ink.Segment{{Op: ink.Move, P: [3]r2.Vec{{X: math.NaN()}}}}, &ink.Stroke{Width: 1}
		}
		p.Items = append(p.Items, it)
	}
	return p
}

// A folded page is written as it was before, with what was added between foldings, and takes its marks in order.
func TestFoldedPagesAreWrittenTheSame(t *testing.T) {
	for seed := range uint64(20) {
		p, q := scribble(rand.New(rand.NewPCG(seed, 1))), scribble(rand.New(rand.NewPCG(seed, 1)))
		more := scribble(rand.New(rand.NewPCG(seed, 2)))
		q.Fold()
		if len(q.Items) != 0 {
			t.Fatalf("%d marks lie open", len(q.Items))
		}
		for range 2 {
			p.Items, q.Items = append(p.Items, more.Items...), append(q.Items, more.Items...)
			before := *q
			q.Fold()
			if got, want := before.Strata(), p.Strata(); !reflect.DeepEqual(got, want) {
				t.Fatal("a page whose folding was copied is written otherwise")
			}
			if got, want := q.Strata(), p.Strata(); !reflect.DeepEqual(got, want) {
				t.Fatal("it is written otherwise")
			}
		}
	}
}
