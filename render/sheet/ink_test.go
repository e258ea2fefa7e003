package sheet

import (
	"flag"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/carto"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// shrunk is an outline drawn in a hair, so that what only touches does not count as meeting.
func shrunk(ring []r2.Vec) []r2.Vec {
	c := r2.Vec{}
	for _, p := range ring {
		c = r2.Add(c, r2.Scale(1/float64(len(ring)), p))
	}
	out := make([]r2.Vec, len(ring))
	for i, p := range ring {
		d := r2.Sub(p, c)
		out[i] = r2.Add(c, r2.Scale(math.Max(0, 1-0.02/r2.Norm(d)), d))
	}
	return out
}

// lettering is a text of a page with its box.
type lettering struct {
	s      string
	box    []r2.Vec
	layer  ink.Layer
	object string
}

func letteringOf(p *ink.Page, f *font.Family) (all []lettering) {
	for i := range p.Items {
		if t := p.Items[i].Text; t != nil {
			q := t.Corners(f)
			all = append(all, lettering{t.S, q[:], p.Items[i].Layer, p.Items[i].Object})
		}
	}
	return all
}

// checkPage holds a page to the rules of lettering and border.
func checkPage(t *testing.T, p *ink.Page, f *font.Family) {
	t.Helper()
	texts := letteringOf(p, f)
	inner := make([][]r2.Vec, len(texts))
	for i, a := range texts {
		inner[i] = shrunk(a.box)
	}
	for i, a := range texts {
		for j, b := range texts[i+1:] {
			if carto.Overlap(inner[i], inner[i+1+j]) {
				t.Errorf("%s: %q meets %q", p.Title, a.s, b.s)
			}
		}
		if f.CapHeight(1)*sizeOf(p, a.s) < draw.CapSmall-1e-9 {
			t.Errorf("%s: %q is lettered too small", p.Title, a.s)
		}
	}
	border := box.Of(layout.Binding, layout.Margin, p.Width-layout.Margin, p.Height-layout.Margin)
	for i := range p.Items {
		it := &p.Items[i]
		b := it.Bounds(f).Box
		slack := draw.FrameLine/2 + 0.01
		if b.Min.X < border.Min.X-slack || b.Min.Y < border.Min.Y-slack || b.Max.X > border.Max.X+slack || b.Max.Y > border.Max.Y+slack {
			t.Errorf("%s: %s lies outside the frame: %v", p.Title, describe(it), b)
		}
	}
}

func sizeOf(p *ink.Page, s string) float64 {
	least := math.Inf(1)
	for i := range p.Items {
		if t := p.Items[i].Text; t != nil && t.S == s {
			least = math.Min(least, t.Size)
		}
	}
	return least
}

func describe(it *ink.Item) string {
	if it.Text != nil {
		return fmt.Sprintf("text %q on %s", it.Text.S, it.Layer)
	}
	return fmt.Sprintf("a mark of %q on %s", it.Object, it.Layer)
}

// compose draws a set-up and fails on an error.
func compose(t *testing.T, in Input, o Options) ink.Document {
	t.Helper()
	doc, found := Compose([]Input{in}, o)
	for _, d := range found {
		if d.Severity == source.Error {
			t.Fatalf("%s: %s (%s)", d.Code, d.Message, d.Hint)
		}
	}
	return doc
}

// checkPlan holds the sheet of a plan to the rules of its panel: no lettering on a symbol or a wall,
// but for its own number, and the name of a wall.
func checkPlan(t *testing.T, s *sheet, f *font.Family) {
	t.Helper()
	page := &s.pages[0]
	v := s.fitter.View(&s.layout)
	stands := standsOf(s.d.In.Setup)
	for _, a := range letteringOf(page, f) {
		if a.layer == ink.Collar {
			continue
		}
		inner := shrunk(a.box)
		for i, d := range s.d.Stands {
			if a.object != stands[i] && carto.Overlap(inner, shrunk(d.Body)) {
				t.Errorf("%s: %q hides a symbol", page.Title, a.s)
			}
		}
		for _, w := range s.d.In.Setup.Walls {
			if w.Opening == "" && !strings.HasPrefix(a.object, "wall:") && carto.Overlap(inner, shrunk(v.All(w.Outline))) {
				t.Errorf("%s: %q lies on a wall", page.Title, a.s)
			}
		}
		if !box.AllIn(a.box, s.layout.Plan) {
			t.Errorf("%s: %q leaves the panel of the plan", page.Title, a.s)
		}
	}
	for _, corner := range s.layout.Corners {
		for _, a := range letteringOf(page, f) {
			if a.layer != ink.Collar && carto.Overlap(shrunk(a.box), box.Corners(corner)) {
				t.Errorf("%s: %q lies under the corner of text", page.Title, a.s)
			}
		}
	}
	for _, r := range s.layout.Rules {
		for _, a := range letteringOf(page, f) {
			if carto.Overlap(shrunk(a.box), r[:]) {
				t.Errorf("%s: %q meets a line of the sheet", page.Title, a.s)
			}
		}
	}
	if got := box.Width(s.layout.Plan) * box.Height(s.layout.Plan) / (page.Width * page.Height); got < layout.Share {
		t.Errorf("%s: the plan has %.0f %% of the page", page.Title, 100*got)
	}
}

// standsOf names what stands on a plan, in the order that it is drawn: a number may lie on its own symbol.
func standsOf(s *plan.Setup) (objects []string) {
	for range s.People {
		objects = append(objects, "")
	}
	for i := range s.Cameras {
		objects = append(objects, "camera:"+s.Cameras[i].Name)
	}
	for i := range s.Lights {
		objects = append(objects, "light:"+s.Lights[i].Name)
	}
	for i := range s.Grip {
		objects = append(objects, "grip:"+s.Grip[i].Name)
	}
	return objects
}

// sheetFor composes a set-up and returns what Compose throws away.
func sheetFor(t *testing.T, in Input, o Options) *sheet {
	t.Helper()
	log := &faults{}
	s := newSheet(in, o, log).lay()
	if s == nil {
		t.Fatalf("no sheet: %v", log.all)
	}
	s.enlargeLists()
	s.draw()
	s.number(draw.Folio{Drawing: 1, Sheet: 1, Sheets: len(s.pages)})
	return s
}

func TestLetteringKeepsApart(t *testing.T) {
	f := fixture.Family(t)
	for _, paper := range []string{"", "A4", "A4 landscape", "A3", "A3 portrait", "letter", "tabloid", "A2", "ANSI D"} {
		s := sheetFor(t, fixture.Example(), Options{Paper: paper, Font: f})
		checkPlan(t, s, f)
		for i := range s.pages {
			checkPage(t, &s.pages[i], f)
		}
	}
}

// crowds is how many crowds are held to the rules of lettering: .ci/long crowds tries two hundred.
var crowds = flag.Int("crowds", 24, "how many made-up crowds of 40 lights are laid out")

// TestCrowdsKeepApart holds made-up crowds of 40 lights, and a few smaller ones, to the same rules, and tells how far
// their labels fell.
func TestCrowdsKeepApart(t *testing.T) {
	f := fixture.Family(t)
	papers := []string{"A4", "A3", "letter", "A4 landscape"}
	cases, small := *crowds, 12
	if testing.Short() {
		cases, small = 8, 4
	}
	var forms [5]int
	for n := range cases + small {
		paper := papers[n%len(papers)]
		lights := 40
		if n >= cases {
			lights = 5 + 3*(n-cases)
		}
		t.Run(fmt.Sprint(n, " ", paper), func(t *testing.T) {
			s := sheetFor(t, crowd(int64(n), lights), Options{Paper: paper, Font: f})
			checkPlan(t, s, f)
			for i := range s.pages {
				checkPage(t, &s.pages[i], f)
			}
			for i, n := range s.d.Forms {
				forms[min(i, len(forms)-1)] += n
			}
		})
	}
	t.Logf("labels in each form: %v", forms)
}
