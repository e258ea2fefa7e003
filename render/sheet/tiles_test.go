package sheet

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/symbols/ink"
)

// TestPartsCoverThePlan splits extents at random: every point of one lies in a part, and the parts'
// own pieces, up to the match lines, lie beside each other without a gap.
func TestPartsCoverThePlan(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for n := range 200 {
		extent := box(-3, 2, -3+80*random.Float64(), 2+60*random.Float64())
		panel := box(20, 30, 150+200*random.Float64(), 140+150*random.Float64())
		split, ok := tiled(extent, panel, 100)
		if !ok {
			if split.parts() <= mostParts {
				t.Fatalf("case %d: not split, with %d parts", n, split.parts())
			}
			continue
		}
		for range 50 {
			p := r2.Vec{X: extent.Min.X + random.Float64()*width(extent), Y: extent.Min.Y + random.Float64()*height(extent)}
			owners := 0
			for i := range split.parts() {
				if contains(split.own(i), p) {
					owners++
					if !contains(split.part(i), p) {
						t.Fatalf("case %d: part %d owns what it does not show", n, i)
					}
				}
			}
			if owners != 1 {
				t.Fatalf("case %d: %v lies in %d parts' own pieces", n, p, owners)
			}
		}
	}
}

// TestALargeSetComesInParts draws a plan too long for its paper: the parts, each within the frame,
// name each other, and all of the set is on one of them.
func TestALargeSetComesInParts(t *testing.T) {
	in := example()
	away(&in, 60)
	f := family(t)
	s := sheetFor(t, in, Options{Paper: "A4", Font: f})
	parts := s.layout.tiles.parts()
	if parts < 3 || s.layout.times != 100 {
		t.Fatalf("%d parts at 1:%v", parts, s.layout.times)
	}
	seen := map[string]bool{}
	for i := range parts {
		page := &s.pages[i]
		checkClipped(t, page)
		if i > 0 && !has(page, fmt.Sprintf("match line: part %d", i)) || i < parts-1 && !has(page, fmt.Sprintf("match line: part %d", i+2)) {
			t.Errorf("%s does not name its neighbours", page.Title)
		}
		if !strings.HasSuffix(page.Title, fmt.Sprintf("part %d of %d", i+1, parts)) {
			t.Errorf("part %d is called %q", i+1, page.Title)
		}
		for j := range page.Items {
			seen[page.Items[j].Object] = true
		}
	}
	for i := range in.Setup.Lights {
		if name := "light:" + in.Setup.Lights[i].Name; !seen[name] {
			t.Errorf("%s is on no part", name)
		}
	}
	if _, found := Compose(in, Options{Paper: "A4", Font: f}); !slices.Contains(codesOf(found), "plan-in-parts") {
		t.Errorf("nothing said of the parts: %v", found)
	}
}

// checkClipped holds what is drawn of a page to the frame: an item with a clip is drawn inside it.
func checkClipped(t *testing.T, p *ink.Page) {
	t.Helper()
	border := inset(box(binding, margin, p.Width-margin, p.Height-margin), -frame/2-0.01, -frame/2-0.01)
	for i := range p.Items {
		it := &p.Items[i]
		b := it.Bounds(family(t)).Box
		if it.Clip > 0 {
			var e ink.Extent
			e.Add(p.Clips[it.Clip-1]...)
			b = box(math.Max(b.Min.X, e.Box.Min.X), math.Max(b.Min.Y, e.Box.Min.Y), math.Min(b.Max.X, e.Box.Max.X), math.Min(b.Max.Y, e.Box.Max.Y))
		}
		if !contains(border, b.Min) || !contains(border, b.Max) {
			t.Errorf("%s: %s lies outside the frame: %v", p.Title, describe(it), b)
		}
	}
}

func codesOf(found []source.Diagnostic) []string {
	var codes []string
	for i := range found {
		codes = append(codes, found[i].Code)
	}
	return codes
}
