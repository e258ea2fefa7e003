package sheet

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// TestContoursOfSamplesAreCalm holds contours to turns of at most 30° where pieces longer than 2 mm
// meet; cliffs are edges of shadow and may have corners.
func TestContoursOfSamplesAreCalm(t *testing.T) {
	const long, sharpest = 2.0, 30.0
	eachSample(t, func(t *testing.T, _ Input, s *sheet) {
		v, seen := s.fitter.View(&s.layout), 0
		for _, line := range contoursOf(&s.pages[0]) {
			for i := 1; i+1 < len(line); i++ {
				a, b := r2.Sub(line[i], line[i-1]), r2.Sub(line[i+1], line[i])
				turn := math.Abs(math.Atan2(r2.Cross(a, b), r2.Dot(a, b))) * 180 / math.Pi
				if seen++; r2.Norm(a) > long && r2.Norm(b) > long && turn > sharpest {
					t.Errorf("%s: a contour turns by %.0f° at %v m", s.d.In.Setup.Name, turn, v.Metres(line[i]))
				}
			}
		}
		if seen == 0 {
			t.Errorf("%s has no contours", s.pages[0].Title)
		}
	})
}

// contoursOf are the contours on a page, without the cliffs, which have a pen of their own.
func contoursOf(p *ink.Page) (all [][]r2.Vec) {
	for i := range p.Items {
		it := &p.Items[i]
		if it.Layer == ink.Contours && it.Stroke != nil && (it.Stroke.Width == draw.Hair || it.Stroke.Width == draw.Thick) {
			all = append(all, ink.Path(it.Path).Points(0.01))
		}
	}
	return all
}

// TestPlansFillTheirPages measures what is drawn of the plan, words and lists left out, on the
// page of each sample as it comes.
func TestPlansFillTheirPages(t *testing.T) {
	f := fixture.Family(t)
	eachSample(t, func(t *testing.T, _ Input, s *sheet) {
		page := &s.pages[0]
		var drawn ink.Extent
		for i := range page.Items {
			if it := &page.Items[i]; it.Layer != ink.Collar {
				drawn.Join(it.Bounds(f))
			}
		}
		if got := box.Width(drawn.Box) * box.Height(drawn.Box) / (page.Width * page.Height); got < layout.Share {
			t.Errorf("the plan fills %.0f %% of %s, want %.0f %%", 100*got, page.Title, 100*layout.Share)
		}
	})
}

// TestListsAndTagsOutweighSmallPaper: no sample comes on a paper that sends the list of lights to a
// page of its own or takes the unit, the level or the colour out of a tag.
func TestListsAndTagsOutweighSmallPaper(t *testing.T) {
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		if !has(&s.pages[0], sectionOf(t, s.d.Report, "Lights").Title) {
			t.Errorf("%s: the list of lights has spilled", s.pages[0].Title)
		}
		if s.d.Lost > 0 {
			t.Errorf("%s: %d labels are cut", s.pages[0].Title, s.d.Lost)
		}
	})
}

// TestKeysHaveTheBandsOfTheirMaps paints the ground of each page of a map on a raster of 1 mm, walls and what stands over it, and holds the tints of
// the key to those that are left. The brightest band of the ironing room was in its key for five points of the lattice that no map draws.
func TestKeysHaveTheBandsOfTheirMaps(t *testing.T) {
	pages := 0
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		for i := range s.pages {
			page := &s.pages[i]
			inKey := map[ink.Colour]bool{}
			for _, tint := range s.d.Pad.Look.Ramp.Bands(section.LevelsOf(&in)) {
				for j := range page.Items {
					if it := &page.Items[j]; it.Layer == ink.Collar && it.Fill != nil && *it.Fill == tint {
						inKey[tint] = true
					}
				}
			}
			seen := tintsSeen(page)
			if len(inKey) == 0 || len(seen) < 2 {
				continue // a page of lists, or a map all in one band
			}
			pages++
			for tint := range inKey {
				if seen[tint] < 1 {
					t.Errorf("%s: the key has %v, and the map does not", page.Title, tint)
				}
			}
			for tint, n := range seen {
				if n > 8 && !inKey[tint] {
					t.Errorf("%s: the map has %d mm² of %v, and the key does not", page.Title, n, tint)
				}
			}
		}
	})
	if pages < 20 {
		t.Errorf("only %d maps have a key", pages)
	}
}

// tintsSeen is how much of each tint of a map shows past walls and furniture, mm².
func tintsSeen(page *ink.Page) map[ink.Colour]int {
	ground := map[[2]int]ink.Colour{}
	paint := func(layer ink.Layer, fill func(c ink.Colour, at [2]int)) {
		for i := range page.Items {
			it := &page.Items[i]
			if it.Layer != layer || it.Fill == nil || len(it.Path) == 0 {
				continue
			}
			var rings [][]r2.Vec
			for _, run := range ink.Path(it.Path).Flatten(0.05) {
				rings = append(rings, run.Points)
			}
			for _, run := range ink.Hatch(rings, 1, 90) {
				for x := math.Ceil(min(run[0].X, run[1].X)); x < max(run[0].X, run[1].X); x++ {
					fill(*it.Fill, [2]int{int(x), int(math.Round(run[0].Y))})
				}
			}
		}
	}
	paint(ink.Tint, func(c ink.Colour, at [2]int) { ground[at] = c })
	for _, over := range []ink.Layer{ink.Walls, ink.Furniture} {
		paint(over, func(_ ink.Colour, at [2]int) { delete(ground, at) })
	}
	seen := map[ink.Colour]int{}
	for _, c := range ground {
		seen[c]++
	}
	return seen
}
