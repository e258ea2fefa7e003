package ink

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A page drawn at half its size and magnified has every mark where the page in full has it; lines stay as wide.
func TestMagnifiedMarksKeepTheirLines(t *testing.T) {
	drawn := func(s float64) *Page {
		var p Page
		c := NewCanvas(&p, Collar)
		c.Circle(Pen{Width: 0.35}, r2.Vec{X: 10 * s, Y: 20 * s}, 5*s)
		c.Text(Text{At: r2.Vec{X: 3 * s, Y: 4 * s}, S: "lamp", Size: 2.5 * s})
		c.Image(Image{Min: r2.Vec{X: s}, Max: r2.Vec{X: 9 * s, Y: s}, Width: 1, Height: 1, RGB: []byte{1, 2, 3}})
		return &p
	}
	full, half := drawn(1), drawn(0.5)
	before := half.Items[0].Path[0].P[0]
	kept := half.Items[0].Path
	half.Magnify(0, 2)
	if kept[0].P[0] != before {
		t.Error("a path that others hold was changed")
	}
	for i := range full.Items {
		a, b := full.Items[i], half.Items[i]
		for j := range a.Path {
			for k := range a.Path[j].P {
				if d := r2.Norm(r2.Sub(a.Path[j].P[k], b.Path[j].P[k])); d > 1e-9 {
					t.Fatalf("mark %d is %g mm off", i, d)
				}
			}
		}
		switch {
		case a.Stroke != nil && a.Stroke.Width != b.Stroke.Width:
			t.Errorf("the line is %g mm wide", b.Stroke.Width)
		case a.Text != nil && (a.Text.At != b.Text.At || math.Abs(a.Text.Size-b.Text.Size) > 1e-9):
			t.Errorf("the text is %v", b.Text)
		case a.Image != nil && (a.Image.Min != b.Image.Min || a.Image.Max != b.Image.Max):
			t.Errorf("the image is %v", b.Image)
		}
	}
}
