package sheet

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// TestAsMuchLightHasOneTintOnAllPages looks at points of the floor on every page of a run: those within the middle
// of one stop from the working stop have one tint, and no other stop has it.
func TestAsMuchLightHasOneTintOnAllPages(t *testing.T) {
	ins := sampleInputs(t, "two-sizes")
	tints := map[int]ink.Colour{} // by the stop
	seen := 0
	for _, in := range ins {
		s := sheetFor(t, in, Options{Font: fixture.Family(t)})
		v := s.fitter.View(&s.layout)
		working := workingOf(in)
		g := &in.Field.Grid
		for j := 0; j < g.NY; j += 5 {
			for i := 0; i < g.NX; i += 5 {
				stops := math.Log2(float64(g.Value[j*g.NX+i]) / working)
				if within := stops - math.Floor(stops); g.Masked(i, j) || within < 0.25 || within > 0.75 || stops < -5 {
					continue
				}
				tint, ok := tintAt(&s.pages[0], v, g.At(i, j))
				if !ok {
					continue // beside the paper, or an edge of shadow
				}
				seen++
				stop := int(math.Floor(stops))
				if first, known := tints[stop]; known && first != tint {
					t.Errorf("%s: at %v, %+d stops, the floor is %v, elsewhere %v", in.Setup.Name, g.At(i, j), stop, tint, first)
				}
				tints[stop] = tint
			}
		}
	}
	for a, x := range tints {
		for b, y := range tints {
			if a != b && x == y {
				t.Errorf("%+d and %+d stops are both %v", a, b, x)
			}
		}
	}
	if seen < 500 || len(tints) < 5 {
		t.Errorf("%d points of %d stops", seen, len(tints))
	}
}

// workingOf is the illuminance of the working stop.
func workingOf(in Input) float64 {
	for _, l := range section.LevelsOf(&in) {
		if l.Working {
			return l.Lux
		}
	}
	return math.NaN()
}

// tintAt is the uppermost tint about a point of the plan; not where it changes within half a millimetre.
func tintAt(p *ink.Page, v layout.View, at r2.Vec) (tint ink.Colour, ok bool) {
	centre := v.Paper(at)
	for k := range 9 {
		c, found := tintUnder(p, r2.Add(centre, r2.Vec{X: 0.5 * float64(k%3-1), Y: 0.5 * float64(k/3-1)}))
		if !found || k > 0 && c != tint {
			return tint, false
		}
		tint = c
	}
	return tint, true
}

// tintUnder is the uppermost tint at a point on paper.
func tintUnder(p *ink.Page, at r2.Vec) (tint ink.Colour, ok bool) {
	for i := range p.Items {
		if it := &p.Items[i]; it.Layer == ink.Tint && it.Fill != nil && winding(it.Path, at) != 0 {
			tint, ok = *it.Fill, true
		}
	}
	return tint, ok
}

// winding is how often the rings of a path run round a point.
func winding(path []ink.Segment, at r2.Vec) (n int) {
	for _, run := range ink.Path(path).Flatten(0.1) {
		for i, a := range run.Points {
			b := run.Points[(i+1)%len(run.Points)]
			if side := r2.Cross(r2.Sub(b, a), r2.Sub(at, a)); a.Y <= at.Y && b.Y > at.Y && side > 0 {
				n++
			} else if a.Y > at.Y && b.Y <= at.Y && side < 0 {
				n--
			}
		}
	}
	return n
}
