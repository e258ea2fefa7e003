package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// walked is the kitchen with a walk in it, by one camera, and a mark.
func walked(over func(point int) float64) Input {
	in := fixture.Example()
	p := &in.Setup.People[0]
	p.Marks = []plan.Mark{{Name: "ruth.sink", At: r2.Vec{X: 3.3, Y: 2.3}, Pose: term.Standing, Eyes: 1.6, Faces: 90}}
	in.Walks = append(in.Walks, fixture.Walk(p, []string{"A"}, func(_, i int) float64 { return over(i) }, r2.Vec{X: 0.4, Y: 0.5}, r2.Vec{X: 2.9, Y: 0.5}, r2.Vec{X: 2.9, Y: 1.6}))
	return in
}

// itemsOf are the marks of an object on the pages of a sheet.
func itemsOf(s *sheet, object string) (all []*ink.Item) {
	for i := range s.pages {
		for k := range s.pages[i].Items {
			if it := &s.pages[i].Items[k]; it.Object == object {
				all = append(all, it)
			}
		}
	}
	return all
}

// middleOf is the middle of the box of a mark.
func middleOf(it *ink.Item) r2.Vec {
	b := it.Bounds(nil).Box
	return box.Middle(b.Min, b.Max)
}

// The graph of a walk has a dot at each place that is judged, as high as its stops by the scale that is lettered beside it,
// and as far along as its metres by the one below.
func TestTheGraphOfAWalk(t *testing.T) {
	in := walked(func(i int) float64 { return 1.7*math.Sin(float64(i)) - 0.4 })
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	figures := map[string]r2.Vec{}
	var dots []r2.Vec
	var capHalf float64
	for _, it := range itemsOf(s, "graph:ruth") {
		switch b := it.Bounds(fixture.Family(t)).Box; {
		case it.Text != nil:
			figures[it.Text.S] = it.Text.At
			capHalf = fixture.Family(t).CapHeight(it.Text.Size) / 2 // figures of stops stand with their middle on the line
		case it.Fill != nil && it.Stroke == nil && box.Width(b) < 1.2 && box.Height(b) < 1.2:
			dots = append(dots, middleOf(it))
		}
	}
	w := &in.Walks[0]
	rise := (figures["+2"].Y - figures["−2"].Y) / 4
	step := figures["3.60 m"].X - figures["0.00 m"].X
	if !(rise > 2) || !(step > 20) {
		t.Fatalf("the scales are lettered %v", figures)
	}
	judged := 0
	for i := range w.Points {
		if w.Points[i].In != "" {
			continue
		}
		want := r2.Vec{X: figures["0.00 m"].X + step*w.Points[i].Along/w.Length, Y: figures["0"].Y + capHalf + rise**w.Courses[0].Over[i]}
		if judged >= len(dots) || r2.Norm(r2.Sub(dots[judged], want)) > 0.02 {
			t.Fatalf("place %d is drawn at %v, want %v", i, dots, want)
		}
		judged++
	}
	if judged != len(dots) || judged == len(w.Points) {
		t.Errorf("%d dots of %d places", len(dots), judged)
	}
}

// The plan has the walk as a line with ticks, a diamond where it is farthest from the working stop, with its stops, and the mark
// with its name.
func TestWalksAndMarksOnThePlan(t *testing.T) {
	in := walked(func(i int) float64 { return -0.3 * float64(i) })
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	lines := itemsOf(s, "walk:ruth")
	if len(lines) == 0 || lines[0].Stroke == nil || len(lines[0].Stroke.Dash) == 0 || !strings.Contains(lines[0].Alt, "Walk of ruth, 3.60 m.") {
		t.Errorf("the walk is drawn as %+v", lines)
	}
	last := in.Walks[0].Points[len(in.Walks[0].Points)-1]
	worst := itemsOf(s, "walk:ruth:farthest")
	if len(worst) == 0 || !strings.Contains(worst[0].Alt, "2.4 stops under") {
		t.Fatalf("the farthest place is %+v", worst)
	}
	if at := s.fitter.View(&s.layout).Flat(last.At); r2.Norm(r2.Sub(middleOf(worst[0]), at)) > 0.01 {
		t.Errorf("the farthest place is marked at %v, want %v", middleOf(worst[0]), at)
	}
	said := map[string]bool{}
	for _, object := range []string{"walk:ruth:farthest", "mark:ruth.sink"} {
		for _, it := range itemsOf(s, object) {
			if it.Text != nil {
				said[it.Text.S] = true
			}
		}
	}
	if !said["ruth.sink"] || !said["ruth 2.4 stops under"] {
		t.Errorf("the plan says %v", said)
	}
}

// The text has every place of a walk.
func TestTheTextOfAWalk(t *testing.T) {
	in := walked(func(i int) float64 { return -0.3 * float64(i) })
	c := &in.Walks[0].Courses[0]
	c.Off = []meter.OffStop{{From: 2, To: 2, Over: c.Over[4]}, {From: 3, To: 3.6, Over: c.Over[8]}}
	text := Text(Options{}, in)
	for _, want := range []string{"WALK OF RUTH, 3.60 M\n", "1.00 m   112 lx", "−0.6", "in thing, not judged\n", "  for A: nearest at 0.00 m: on it; farthest from T2.8 at 3.60 m: 2.4 stops under\n", "  - For A: at 2.00 m: 1.2 stops under.\n  - For A: from 3.00 m to 3.60 m: 2.4 stops under.\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text does not say %q:\n%s", want, text)
		}
	}
}

// The letters of many cameras keep apart at the end of their lines.
func TestManyCamerasOnAGraph(t *testing.T) {
	in := walked(func(int) float64 { return 0 })
	var cameras []string
	for i := range 14 {
		cameras = append(cameras, fmt.Sprintf("%c", 'A'+i))
	}
	in.Walks[0] = fixture.Walk(&in.Setup.People[0], cameras, func(c, _ int) float64 { return 0.05 * float64(c%3) }, r2.Vec{X: 0.4, Y: 0.5}, r2.Vec{X: 2.9, Y: 0.5})
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	for i := range s.pages {
		checkPage(t, &s.pages[i], fixture.Family(t))
	}
	lettered := 0
	for _, it := range itemsOf(s, "graph:ruth") {
		if it.Text != nil && len(it.Text.S) == 1 && it.Text.S != "0" {
			lettered++
		}
	}
	if lettered != len(cameras) {
		t.Errorf("%d of %d cameras have a letter", lettered, len(cameras))
	}
}
