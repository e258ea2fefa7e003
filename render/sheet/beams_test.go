package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// TestBeamsAreNumbered looks beside the beams of every sample for the number of their light.
func TestBeamsAreNumbered(t *testing.T) {
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		for i := range in.Beams {
			l := in.Setup.LightNamed(in.Beams[i].Light)
			drawn, numbered := false, false
			for j := range s.pages[0].Items {
				it := &s.pages[0].Items[j]
				if it.Layer != ink.Beams || it.Object != "light:"+l.Name {
					continue
				}
				drawn = drawn || it.Path != nil
				numbered = numbered || it.Text != nil && it.Text.S == l.Tag
			}
			if drawn && !numbered {
				t.Errorf("%s: nothing says whose the beam of %s is", s.pages[0].Title, l.Tag)
			}
		}
	})
}

// TestTheLegendShowsBeamsThatThePlanHas: in a colour that a beam of the plan is drawn in, and the line to a tenth only where one can be seen
// beside the line to half: of an image with a sharp edge both are one.
func TestTheLegendShowsBeamsThatThePlanHas(t *testing.T) {
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		shown, signs := map[bool][]ink.Colour{}, map[bool][]ink.Colour{} // by whether they are dashed
		for n := range s.pages {
			for i := range s.pages[n].Items {
				switch it := &s.pages[n].Items[i]; {
				case it.Path == nil || it.Stroke == nil:
				case it.Layer == ink.Beams:
					shown[it.Stroke.Dash != nil] = append(shown[it.Stroke.Dash != nil], it.Stroke.Colour)
				case it.Object == "legend:beam:half" || it.Object == "legend:beam:tenth":
					signs[it.Stroke.Dash != nil] = append(signs[it.Stroke.Dash != nil], it.Stroke.Colour)
				}
			}
		}
		for dashed, colours := range signs {
			if !slices.Contains(shown[dashed], colours[len(colours)-1]) {
				t.Errorf("%s: no beam is drawn as the legend shows one, dashed %v: %v of %v", s.pages[0].Title, dashed, colours, shown[dashed])
			}
		}
	})
}

// TestBeamsLeftOutHaveAStub: of a light whose beam is not drawn whole an arrow of 10 mm shows the direction, and its
// throw goes too.
func TestBeamsLeftOutHaveAStub(t *testing.T) {
	in := fixture.Example()
	for _, l := range in.Setup.Lights {
		from := plan.InPlan(l.Frame.At)
		to := r2.Add(from, r2.Scale(3, r2.Unit(plan.InPlan(l.Frame.Axis))))
		side := r2.Scale(0.6, r2.Vec{X: from.Y - to.Y, Y: to.X - from.X})
		in.Beams = append(in.Beams, section.Beam{Light: l.Name, Half: []r2.Vec{from, r2.Add(to, side), r2.Sub(to, side)}})
	}
	count := func(word string, layer ink.Layer) (n int) {
		s := sheetFor(t, in, Options{Paper: "A3", Beams: word, Font: fixture.Family(t)})
		for i := range s.pages[0].Items {
			if it := &s.pages[0].Items[i]; it.Layer == layer && it.Path != nil {
				n++
			}
		}
		return n
	}
	if all, none := count("all", ink.Throws), count("none", ink.Throws); all == 0 || none != 0 {
		t.Errorf("%d marks of throws with all beams, %d with none", all, none)
	}
	s := sheetFor(t, in, Options{Paper: "A3", Beams: "none", Font: fixture.Family(t)})
	stubs := 0
	for i := range s.pages[0].Items {
		it := &s.pages[0].Items[i]
		if it.Layer != ink.Beams || it.Path == nil {
			continue
		}
		stubs++
		if b := it.Bounds(nil).Box; r2.Norm(r2.Sub(b.Max, b.Min)) > 11 {
			t.Errorf("a stub of %s is %.1f mm long", it.Object, r2.Norm(r2.Sub(b.Max, b.Min)))
		}
	}
	if stubs == 0 || !legendOf(s.pages)["stub"] {
		t.Errorf("%d marks of stubs; the legend has %v", stubs, legendOf(s.pages))
	}
	if _, found := Compose([]Input{in}, Options{Beams: "some"}); len(found) != 1 || found[0].Code != "unknown-choice-of-beams" {
		t.Errorf("found %v", found)
	}
}

// TestTapesAreTrue: the distances that place a light are drawn to scale where the plan has room, each with its figure.
func TestTapesAreTrue(t *testing.T) {
	drawn := 0
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		v := s.fitter.View(&s.layout)
		figures := map[string]string{}
		long := map[string]float64{} // mm from end to end, by what they place
		for i := range s.pages[0].Items {
			it := &s.pages[0].Items[i]
			if it.Layer != ink.Tapes {
				continue
			}
			if it.Text != nil {
				figures[it.Object] += " " + it.Text.S
				continue
			}
			b := it.Bounds(nil).Box
			long[it.Object] = max(long[it.Object], b.Max.X-b.Min.X, b.Max.Y-b.Min.Y)
		}
		for i := range in.Setup.Lights {
			l := &in.Setup.Lights[i]
			said, ok := figures["light:"+l.Name]
			if !ok {
				continue
			}
			drawn++
			for _, d := range l.Placing {
				if !strings.Contains(said, s.d.Length(d.Metres)) {
					t.Errorf("%s: light %s is %s from %s, and the plan says%s", s.pages[0].Title, l.Tag, s.d.Length(d.Metres), d.From, said)
				}
				if long["light:"+l.Name] > (d.Metres+10)*v.Scale {
					t.Errorf("a line of light %s is %.1f mm long", l.Tag, long["light:"+l.Name])
				}
			}
		}
	})
	if drawn == 0 {
		t.Error("no sample has a tape")
	}
}

// The straight pieces of a mark, mm.
func piecesOf(it *ink.Item) (all [][]r2.Vec) {
	for i := 1; i < len(it.Path); i++ {
		if it.Path[i].Op == ink.Line {
			all = append(all, []r2.Vec{it.Path[i-1].P[0], it.Path[i].P[0]})
		}
	}
	return all
}

// No line of a beam runs over a head, and no tape runs through the name of a wall or an opening.
func TestLinesKeepOffHeadsAndNames(t *testing.T) {
	const head = 0.08 // m, a little less than its radius
	checked := 0
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		v, page := s.fitter.View(&s.layout), &s.pages[0]
		var names []r2.Box
		for i := range page.Items {
			if it := &page.Items[i]; it.Layer == ink.Notes && it.Text != nil && (strings.HasPrefix(it.Object, "wall:") || strings.HasPrefix(it.Object, "opening:")) {
				names = append(names, it.Bounds(fixture.Family(t)).Box)
			}
		}
		for i := range page.Items {
			it := &page.Items[i]
			for _, piece := range piecesOf(it) {
				for j := range in.Setup.People {
					who := &in.Setup.People[j]
					if it.Layer == ink.Beams && carto.Distance(v.Paper(who.At), piece[0], piece[1]) < head*v.Scale {
						t.Errorf("%s: a beam of %s runs over the head of %s", page.Title, it.Object, who.Name)
					}
				}
				for _, b := range names {
					if it.Layer == ink.Tapes && len(ink.ClipPolyline(piece, box.Corners(b))) > 0 {
						t.Errorf("%s: a tape of %s runs through the name in %v", page.Title, it.Object, b)
					}
				}
				checked++
			}
		}
	})
	if checked == 0 {
		t.Error("nothing is drawn in straight lines")
	}
}

// TestABeamThatPointsAtTheGroundIsNotFilled: the tube of the ferry office stands outside and points steeply down. A fill of its beam ended
// on the ground in a straight line across the window, as if no light of it went on; that of the head that points through the window stays.
func TestABeamThatPointsAtTheGroundIsNotFilled(t *testing.T) {
	in, s := sampleInputs(t, "ferry-office")[0], sampleSheets(t, "ferry-office")[0]
	for tag, want := range map[string]bool{"4": true, "5": false} {
		l := in.Setup.Lights[slices.IndexFunc(in.Setup.Lights, func(l plan.Light) bool { return l.Tag == tag })]
		filled := false
		for i := range s.pages[0].Items {
			it := &s.pages[0].Items[i]
			if it.Layer == ink.Wedges && it.Object == "light:"+l.Name && it.Fill != nil {
				filled = filled || math.Abs(plane.Area(ink.Path(it.Path).Points(1))) > 1000 // mm²: more than the band of any edge
			}
		}
		if filled != want {
			t.Errorf("the beam of %s is filled: %t", tag, filled)
		}
	}
}

// TestFiguresKeepOffCablesAndCurtains: no figure of a contour and no number of a beam of the samples stands on a cable or on the folds of a curtain,
// which would strike it through.
func TestFiguresKeepOffCablesAndCurtains(t *testing.T) {
	held := map[string]int{}
	eachSample(t, func(t *testing.T, _ Input, s *sheet) {
		for n := range s.pages {
			page := &s.pages[n]
			for i := range page.Items {
				kind, _, _ := strings.Cut(page.Items[i].Object, ":")
				if line := page.Items[i]; line.Path != nil && (kind == "cable" || kind == "dressing") {
					held[kind] += figuresOff(t, page, &line)
				}
			}
		}
	})
	if held["cable"] == 0 || held["dressing"] == 0 {
		t.Errorf("figures held to lines: %v", held)
	}
}

// figuresOff holds the figures of contours and beams off a line, and counts them.
func figuresOff(t *testing.T, page *ink.Page, line *ink.Item) (checked int) {
	t.Helper()
	points := ink.Path(line.Path).Points(0.1)
	for i := range page.Items {
		it := &page.Items[i]
		if it.Text == nil || it.Layer != ink.Contours && it.Layer != ink.Beams {
			continue
		}
		checked++
		paper := paperOfText(*it, fixture.Family(t))
		for k := 1; k < len(points); k++ {
			if carto.Overlap(points[k-1:k+1], paper) {
				t.Errorf("%s: %s runs through %q", page.Title, line.Object, it.Text.S)
				break
			}
		}
	}
	return checked
}
