package sheet

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// marksOf are the filled or stroked shapes of an object on a layer.
func marksOf(p *ink.Page, object string, layer ink.Layer) (all []*ink.Item) {
	for i := range p.Items {
		if it := &p.Items[i]; it.Object == object && it.Layer == layer && it.Text == nil {
			all = append(all, it)
		}
	}
	return all
}

// TestFacesAreMarkedOnTheHead: only meters of the scene stand as meters on the plan; the sides of a
// face are strokes at the edge of the head.
func TestFacesAreMarkedOnTheHead(t *testing.T) {
	in := example()
	s := sheetFor(t, in, Options{Paper: "A3", Font: family(t)})
	v := viewOf(s.fitter.extent, s.layout.plan, s.layout.times)
	head := v.mm(in.Setup.People[0].At)
	for _, name := range []string{"reading:ruth.key", "reading:ruth.fill"} {
		marks := marksOf(&s.pages[0], name, ink.Readings)
		if len(marks) == 0 {
			t.Fatalf("%s has no mark", name)
		}
		if marks[0].Fill != nil {
			t.Errorf("%s is filled, as a meter is", name)
		}
		b := marks[0].Bounds(nil).Box
		if far := r2.Norm(r2.Sub(middle(b.Min, b.Max), head)); far > math.Max(0.09*v.scale, 0.9)+2.5 {
			t.Errorf("%s stands %.1f mm off the head", name, far)
		}
	}
	if meters := marksOf(&s.pages[0], "reading:table-top", ink.Readings); len(meters) == 0 || meters[0].Fill == nil {
		t.Error("the meter has lost its mark")
	}
}
