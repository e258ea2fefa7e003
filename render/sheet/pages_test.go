package sheet

import (
	"fmt"
	"image"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/png"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// TestARunComesOnOnePaper: a run comes out of one tray, with its lists.
func TestARunComesOnOnePaper(t *testing.T) {
	runs := [][]Input{{fixture.Example(), crowd(3, 20)}, {crowd(1, 30), {Setup: &plan.Setup{}}}}
	for i, run := range runs {
		doc := compose(t, run[0], Options{})
		if all, _ := Compose(run, Options{Font: fixture.Family(t)}); len(all.Pages) > 0 {
			doc = all
		}
		for j := range doc.Pages {
			p, first := &doc.Pages[j], &doc.Pages[0]
			if max(p.Width, p.Height) != max(first.Width, first.Height) || min(p.Width, p.Height) != min(first.Width, first.Height) {
				t.Errorf("run %d: %s comes on %v by %v mm, the first page on %v by %v", i, p.Title, p.Width, p.Height, first.Width, first.Height)
			}
		}
	}
}

// TestTheFirstPageCarriesWhatThePlanNeeds: readings, lights, legend and cautions stand beside the plan; what was
// assumed and what nobody checked on the page of the second map.
func TestTheFirstPageCarriesWhatThePlanNeeds(t *testing.T) {
	check := func(t *testing.T, in Input, s *sheet) {
		report := s.d.Report
		for _, part := range []string{"Lights", "Legend", "Cautions"} {
			if !has(&s.pages[0], sectionOf(t, report, part).Title) {
				t.Errorf("%s: %s is not on the first page", s.pages[0].Title, part)
			}
		}
		for _, q := range report.Sections() {
			if strings.HasPrefix(q.Title, "At the face") && !has(&s.pages[0], q.Title) {
				t.Errorf("%s: the readings are not on the first page", s.pages[0].Title)
			}
		}
		if in.Inset != nil && (has(&s.pages[0], "Assumed") || !has(&s.pages[1], "Assumed") || !strings.Contains(inOneLine(&s.pages[1]), in.Inset.Name)) {
			t.Errorf("%s: what was assumed does not stand beside the second map", s.pages[0].Title)
		}
	}
	eachSample(t, check)
	for _, name := range hardCases() {
		t.Run(name, func(t *testing.T) {
			in, s := hardCase(t, name)
			check(t, in, s)
		})
	}
}

// inOneLine is what a page letters, lines joined: a heading may take two.
func inOneLine(p *ink.Page) string { return strings.ReplaceAll(texts(p), "\n", " ") }

// TestTheSecondMapIsAsLargeAsThePlan: with its own lamps, numbers and lettered contours.
func TestTheSecondMapIsAsLargeAsThePlan(t *testing.T) {
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		if len(s.pages) < 2 || s.pages[1].Name != string(term.FaceMap) {
			t.Fatalf("%s: no map of the faces", s.pages[0].Title)
		}
		wide := func(p *ink.Page) r2.Vec {
			var walls ink.Extent
			for i := range p.Items {
				if strings.HasPrefix(p.Items[i].Object, "wall:") {
					walls.Join(ink.Path(p.Items[i].Path).Bounds())
				}
			}
			return r2.Sub(walls.Box.Max, walls.Box.Min)
		}
		if a, b := wide(&s.pages[0]), wide(&s.pages[1]); r2.Norm(r2.Sub(a, b)) > 1e-6 {
			t.Errorf("%s: the rooms are %v mm, and %v on the second map", s.pages[0].Title, a, b)
		}
		shown, lettered := map[string]bool{}, 0
		for i := range s.pages[1].Items {
			it := &s.pages[1].Items[i]
			if it.Text != nil {
				shown[it.Object+" "+it.Text.S] = true
				if it.Layer == ink.Contours {
					lettered++
				}
			}
		}
		for i := range in.Setup.Lights {
			if l := &in.Setup.Lights[i]; !shown["light:"+l.Name+" "+l.Tag] {
				t.Errorf("%s: light %s has no number", s.pages[1].Title, l.Tag)
			}
		}
		if lettered < 3 {
			t.Errorf("%s: %d contours are lettered", s.pages[1].Title, lettered)
		}
	})
}

// TestTheLegendExplainsTheSecondMapToo: a hard edge of shadow that only the second map shows.
func TestTheLegendExplainsTheSecondMapToo(t *testing.T) {
	in := fixture.Example()
	grid := fixture.Glow(in.Setup)
	for i := range grid.Value {
		grid.Value[i] = 5
		if i%grid.NX > grid.NX/2 {
			grid.Value[i] = 2000
		}
	}
	in.Inset.Grid = grid
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	if linesOn(&s.pages[0])["cliff"] || !linesOn(&s.pages[1])["cliff"] {
		t.Fatal("the edge is not on the second map alone")
	}
	if !legendOf(s.pages)["cliff"] {
		t.Error("the legend does not explain it")
	}
}

// TestFurtherPagesAreWorthTheirPaper: at least 35 % of the cells of a centimetre within the frame of a page hold some
// ink.
func TestFurtherPagesAreWorthTheirPaper(t *testing.T) {
	const least = 0.35
	check := func(t *testing.T, s *sheet) {
		for i := range s.pages[1:] {
			if share := cellsUsed(t, &s.pages[1+i]); share < least && s.pages[1+i].Name != "" {
				t.Errorf("%s: %.0f %% of its cells are used", s.pages[1+i].Title, 100*share)
			}
		}
	}
	eachSample(t, func(t *testing.T, _ Input, s *sheet) { check(t, s) })
	for _, name := range hardCases() {
		t.Run(name, func(t *testing.T) {
			_, s := hardCase(t, name)
			check(t, s)
		})
	}
	for n := range int64(12) {
		t.Run(fmt.Sprint("crowd ", n), func(t *testing.T) {
			check(t, sheetFor(t, crowd(n, 4+int(n)*2), Options{Font: fixture.Family(t)}))
		})
	}
}

// cellsUsed is the share of the cells of a page within its frame that hold some ink.
func cellsUsed(t *testing.T, p *ink.Page) float64 {
	t.Helper()
	const cell, dpi = 10.0, 50.8 // mm; two pixels to the millimetre
	img, err := png.Draw(p, png.Options{DPI: dpi, Font: fixture.Family(t)})
	if err != nil {
		t.Fatal(err)
	}
	frame := box.Inset(layout.FrameOf(p.Width, p.Height), draw.FrameLine, draw.FrameLine)
	used, all := 0, 0
	for x := frame.Min.X; x+cell <= frame.Max.X; x += cell {
		for y := frame.Min.Y; y+cell <= frame.Max.Y; y += cell {
			all++
			if inked(img, image.Rect(int(2*x)+1, int(2*(p.Height-y-cell))+1, int(2*(x+cell)), int(2*(p.Height-y)))) {
				used++
			}
		}
	}
	return float64(used) / float64(all)
}

// inked says whether a part of a picture is not all white.
func inked(img *image.RGBA, part image.Rectangle) bool {
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if c := img.RGBAAt(x, y); c.R < 250 || c.G < 250 || c.B < 250 {
				return true
			}
		}
	}
	return false
}

// TestNoGroundIsCut: what stands, and the ground that it takes, lies within the panel of the plan, and under no list.
func TestNoGroundIsCut(t *testing.T) {
	check := func(t *testing.T, s *sheet) {
		for i := range s.pages {
			p := &s.pages[i]
			for j := range p.Items {
				it := &p.Items[j]
				switch it.Layer {
				case ink.Symbols, ink.People, ink.Furniture, ink.Walls:
					if it.Clip > 0 {
						t.Errorf("%s: %s is cut", p.Title, describe(it))
					}
				}
			}
		}
		for _, d := range s.d.Stands {
			for _, ring := range append([][]r2.Vec{d.Body}, d.Rest...) {
				var e ink.Extent
				e.Add(ring...)
				for _, c := range s.layout.Corners {
					if _, hidden := box.Intersection(e.Box, c); hidden {
						t.Errorf("%s: what stands at %v lies under a list", s.pages[0].Title, e.Box)
					}
				}
			}
		}
	}
	eachSample(t, func(t *testing.T, _ Input, s *sheet) { check(t, s) })
	for _, name := range hardCases() {
		t.Run(name, func(t *testing.T) {
			_, s := hardCase(t, name)
			check(t, s)
		})
	}
	for _, mount := range []term.Mount{term.Stand, term.Boom, term.Lift, term.Floor, term.Hand, term.Wall, term.Clamp, term.Ceiling} {
		for _, at := range []r2.Vec{{}, {X: 9}, {X: -6, Y: 8}, {Y: -7}} {
			in := fixture.Example()
			l := &in.Setup.Lights[0]
			l.Frame.At.X, l.Frame.At.Y = at.X, at.Y
			l.Mount = plan.Mount{Kind: mount, Base: at, Foot: 2}
			if mount == term.Boom {
				l.Mount.Base = r2.Add(at, r2.Vec{X: 1.2, Y: 1})
			}
			t.Run(fmt.Sprint(mount, at), func(t *testing.T) { check(t, sheetFor(t, in, Options{Font: fixture.Family(t)})) })
		}
	}
}

// TestHardCasesKeepApart holds the hard cases to the rules of lettering, and every face to its readings on the plan.
func TestHardCasesKeepApart(t *testing.T) {
	f := fixture.Family(t)
	for _, name := range hardCases() {
		t.Run(name, func(t *testing.T) {
			in, s := hardCase(t, name)
			checkPlan(t, s, f)
			for i := range s.pages {
				checkPage(t, &s.pages[i], f)
			}
			for i := range in.Faces {
				for _, side := range []string{".key", ".fill"} {
					if object := "reading:" + in.Faces[i].Person + side; !lettered(&s.pages[0], object) {
						t.Errorf("%s is not on the plan", object)
					}
				}
			}
		})
	}
}

func lettered(p *ink.Page, object string) bool {
	for i := range p.Items {
		if p.Items[i].Object == object && p.Items[i].Text != nil {
			return true
		}
	}
	return false
}
