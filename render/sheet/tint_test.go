package sheet

import (
	"context"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/study"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// tinted is the tints that the pages of a run were seen to have.
type tinted struct {
	byStop map[int]ink.Colour
	points int
}

// TestAsMuchLightHasOneTintOnAllPages looks at points of every map of a run, the floor, the faces and a wall: those within
// the middle of one stop from the working stop have one tint, and no other stop has it.
func TestAsMuchLightHasOneTintOnAllPages(t *testing.T) {
	run := tinted{byStop: map[int]ink.Colour{}}
	for _, in := range append(sampleInputs(t, "two-sizes"), wallsOf(t, "two-sizes", "parlour.top", "parlour.right")...) {
		s := sheetFor(t, in, Options{Font: fixture.Family(t)})
		seen := run.points
		run.look(t, &s.pages[0], s, in.Field, workingOf(in))
		s.left = slices.Concat(s.layout.Left, s.later) // as when the second map was laid out
		if second := s.secondMap(); second != nil {
			run.look(t, &s.pages[1], second, in.Inset, workingOf(in))
		} else if in.Elevation == nil {
			t.Errorf("%s has no second map", in.Setup.Name)
		}
		if run.points < seen+50 {
			t.Errorf("%s, %+v: only %d points are looked at", in.Setup.Name, in.Elevation, run.points-seen)
		}
	}
	for a, x := range run.byStop {
		for b, y := range run.byStop {
			if a != b && x == y {
				t.Errorf("%+d and %+d stops are both %v", a, b, x)
			}
		}
	}
	if run.points < 1200 || len(run.byStop) < 6 {
		t.Errorf("%d points of %d stops", run.points, len(run.byStop))
	}
}

// look notes the tints of a page, which maps a field.
func (r *tinted) look(t *testing.T, p *ink.Page, s *sheet, f *Field, working float64) {
	t.Helper()
	v, g := s.fitter.View(&s.layout), &f.Grid
	for j := 0; j < g.NY; j += 4 {
		for i := 0; i < g.NX; i += 4 {
			stops := math.Log2(float64(g.Value[j*g.NX+i]) / working)
			if within := stops - math.Floor(stops); g.Masked(i, j) || within < 0.25 || within > 0.75 || stops < -5 {
				continue
			}
			tint, ok := tintAt(p, v, g.At(i, j))
			if !ok {
				continue // beside the paper, or an edge of shadow
			}
			r.points++
			stop := int(math.Floor(stops))
			first, known := r.byStop[stop]
			if known && first != tint && r.ofNeighbour(tint, f, i, j, working) {
				continue
			}
			if known && first != tint {
				t.Errorf("%s: at %v, %+d stops, %s is %v, elsewhere %v", p.Title, g.At(i, j), stop, f.Name, tint, first)
			}
			r.byStop[stop] = tint
		}
	}
}

// ofNeighbour says whether a tint is the one of a neighbour whose light is over a stop off: the edge of a shadow runs between, and a map places that
// to a step of its lattice.
func (r *tinted) ofNeighbour(tint ink.Colour, f *Field, i, j int, working float64) bool {
	g := &f.Grid
	own := float64(g.Value[j*g.NX+i])
	for _, n := range [...][2]int{{i - 1, j}, {i + 1, j}, {i, j - 1}, {i, j + 1}} {
		if n[0] < 0 || n[1] < 0 || n[0] >= g.NX || n[1] >= g.NY || g.Masked(n[0], n[1]) {
			continue
		}
		v := float64(g.Value[n[1]*g.NX+n[0]])
		if math.Abs(math.Log2(v/own)) > 1 && r.byStop[int(math.Floor(math.Log2(v/working)))] == tint {
			return true
		}
	}
	return false
}

// wallsOf are the sheets of walls in the first set-up of a sample.
func wallsOf(t *testing.T, name string, walls ...string) (ins []Input) {
	t.Helper()
	text, err := samples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	setups, log := fixture.SetupsOf(t, string(text), "wide")
	if len(setups) == 0 {
		t.Fatal(log.All())
	}
	for _, wall := range walls {
		lit, err := study.Run(context.Background(), setups[0], study.Options{Planes: []study.Plane{{Wall: wall}}})
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, Of(lit, Options{}))
	}
	return ins
}

// workingOf is the illuminance of the working stop, which need not be among the levels of the map.
func workingOf(in Input) float64 {
	for _, l := range section.LevelsOf(&in) {
		return l.Lux * math.Exp2(-float64(l.Stop))
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
