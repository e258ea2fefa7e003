package sheet

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// computed are the samples with their light, which is worked out once for all tests.
var computed = map[string][]Input{}

// eachSample draws every set-up of every sample.
func eachSample(t *testing.T, o Options, check func(t *testing.T, in Input, s *sheet)) {
	o.Font = family(t)
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			if computed[name] == nil {
				computed[name] = sampleInputs(t, name)
			}
			for _, in := range computed[name] {
				check(t, in, sheetFor(t, in, o))
			}
		})
	}
}

// TestContoursOfSamplesAreCalm holds contours to turns of at most 30° where pieces longer than 2 mm
// meet; cliffs are edges of shadow and may have corners.
func TestContoursOfSamplesAreCalm(t *testing.T) {
	const long, sharpest = 2.0, 30.0
	eachSample(t, Options{}, func(t *testing.T, _ Input, s *sheet) {
		v := s.fitter.view(&s.layout)
		for _, r := range s.d.reliefs(v) {
			for _, l := range r.lines {
				for i := 1; i+1 < len(l.Points); i++ {
					a, b := r2.Sub(l.Points[i], l.Points[i-1]), r2.Sub(l.Points[i+1], l.Points[i])
					turn := math.Abs(math.Atan2(r2.Cross(a, b), r2.Dot(a, b))) * 180 / math.Pi
					if r2.Norm(a) > long && r2.Norm(b) > long && turn > sharpest {
						t.Errorf("%s: a contour of %g lx turns by %.0f° at %v m", s.d.in.Setup.Name, l.Level, turn, v.metres(l.Points[i]))
					}
				}
			}
		}
	})
}

// TestPlansFillTheirPages measures what is drawn of the plan, words and lists left out, on the
// page of each sample as it comes.
func TestPlansFillTheirPages(t *testing.T) {
	f := family(t)
	eachSample(t, Options{}, func(t *testing.T, _ Input, s *sheet) {
		page := &s.pages[0]
		var drawn ink.Extent
		for i := range page.Items {
			if it := &page.Items[i]; it.Layer != ink.Collar {
				drawn.Join(it.Bounds(f))
			}
		}
		if got := width(drawn.Box) * height(drawn.Box) / (page.Width * page.Height); got < share {
			t.Errorf("the plan fills %.0f %% of %s, want %.0f %%", 100*got, page.Title, 100*share)
		}
	})
}

// TestListsAndTagsOutweighSmallPaper: no sample comes on a paper that sends the list of lights to a
// page of its own or takes the unit, the level or the colour out of a tag.
func TestListsAndTagsOutweighSmallPaper(t *testing.T) {
	eachSample(t, Options{}, func(t *testing.T, in Input, s *sheet) {
		if !has(&s.pages[0], s.d.lights().title) {
			t.Errorf("%s: the list of lights has spilled", s.pages[0].Title)
		}
		if s.d.shortened > 0 {
			t.Errorf("%s: %d labels are cut", s.pages[0].Title, s.d.shortened)
		}
	})
}

// TestListsComeOnTheSmallestPaperThatHoldsThem: a page of lists is no larger than it has to be, unless
// a paper was asked for.
func TestListsComeOnTheSmallestPaperThatHoldsThem(t *testing.T) {
	f := family(t)
	seen := false
	for _, paper := range []string{"", "A3"} {
		eachSample(t, Options{Paper: paper}, func(t *testing.T, _ Input, s *sheet) {
			for i := range s.pages[1:] {
				page := &s.pages[1+i]
				checkPage(t, page, f)
				seen = true
				if small := page.Width*page.Height < 300*211; small != (paper == "") {
					t.Errorf("%s on %v by %v mm, paper %q", page.Title, page.Width, page.Height, paper)
				}
			}
		})
	}
	if !seen {
		t.Error("no sample has lists that spill")
	}
}
