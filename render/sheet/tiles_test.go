package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/source"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// TestALargeSetComesInParts draws a plan too long for its paper: the parts, each within the frame,
// name each other, and all of the set is on one of them.
func TestALargeSetComesInParts(t *testing.T) {
	in := fixture.Example()
	away(&in, 60)
	f := fixture.Family(t)
	s := sheetFor(t, in, Options{Paper: "A4", Font: f})
	parts := s.layout.Tiles.Parts()
	if parts < 3 || s.layout.Times != 100 {
		t.Fatalf("%d parts at 1:%v", parts, s.layout.Times)
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
	if _, found := Compose([]Input{in}, Options{Paper: "A4", Font: f}); !slices.Contains(codesOf(found), "plan-in-parts") {
		t.Errorf("nothing said of the parts: %v", found)
	}
}

// checkClipped holds what is drawn of a page to the frame: an item with a clip is drawn inside it.
func checkClipped(t *testing.T, p *ink.Page) {
	t.Helper()
	border := box.Inset(box.Of(layout.Binding, layout.Margin, p.Width-layout.Margin, p.Height-layout.Margin), -draw.FrameLine/2-0.01, -draw.FrameLine/2-0.01)
	for i := range p.Items {
		it := &p.Items[i]
		b := it.Bounds(fixture.Family(t)).Box
		if it.Clip > 0 {
			var e ink.Extent
			e.Add(p.Clips[it.Clip-1]...)
			b = box.Of(math.Max(b.Min.X, e.Box.Min.X), math.Max(b.Min.Y, e.Box.Min.Y), math.Min(b.Max.X, e.Box.Max.X), math.Min(b.Max.Y, e.Box.Max.Y))
		}
		if !box.Contains(border, b.Min) || !box.Contains(border, b.Max) {
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
