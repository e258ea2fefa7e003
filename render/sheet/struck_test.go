package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// struckOf lists the letterings of pages that a line in the accent colour runs through at half their height, whole
// or the part that it covers.
func struckOf(t *testing.T, pages []ink.Page) []string {
	t.Helper()
	var all []string
	alarm := Options{}.Look().Alarm
	for n := range pages {
		p := &pages[n]
		for i := range p.Items {
			line := p.Items[i].Bounds(fixture.Family(t)).Box
			if it := &p.Items[i]; it.Text != nil || it.Stroke == nil || it.Stroke.Colour != alarm || box.Height(line) > 2*draw.Thin {
				continue
			}
			for _, l := range letteringOf(p, fixture.Family(t)) {
				b := ink.Extent{}
				b.Add(l.box...)
				middle := (line.Min.Y + line.Max.Y) / 2
				if middle > b.Box.Min.Y && middle < b.Box.Max.Y && line.Min.X > b.Box.Min.X-1 && line.Max.X < b.Box.Max.X+1 {
					all = append(all, covered(l.s, (line.Min.X-b.Box.Min.X)/box.Width(b.Box), (line.Max.X-b.Box.Min.X)/box.Width(b.Box)))
				}
			}
		}
	}
	return all
}

// covered is the part of a text between two shares of its width, by its characters.
func covered(s string, from, to float64) string {
	r := []rune(s)
	n := float64(len(r))
	first, last := int(math.Round(math.Max(from, 0)*n)), int(math.Round(math.Min(to, 1)*n))
	return strings.Trim(string(r[first:last]), " ,")
}

// Every figure that a key could change is struck through on paper and stays there to be read; no other is.
func TestFiguresAreStruck(t *testing.T) {
	doc := compose(t, fixture.Unfinished(), Options{})
	got := struckOf(t, doc.Pages)
	for _, want := range []string{"238 lx", "T2.8", "2.2 under key", "3340 K", "4.6 : 1", "2.2 stops", "2700 K"} {
		if !slices.ContainsFunc(got, func(s string) bool { return strings.Contains(want, s) && len(s) > len(want)/2 }) {
			t.Errorf("%s is not struck, of %q", want, got)
		}
	}
	for _, s := range got {
		for _, whole := range []string{"52.0 lx", "T1.4", "120 lx", "4010 K", "410 lx", "fill", "4300 K"} {
			if strings.Contains(s, whole) {
				t.Errorf("%q is struck, and nothing changes it", s)
			}
		}
	}
	if n := len(struckOf(t, compose(t, fixture.Example(), Options{}).Pages)); n > 0 {
		t.Errorf("%d figures are struck where everything is computed", n)
	}
}

// The sheet says what struck figures are without, in every form.
func TestWhatIsLeftOutIsSaid(t *testing.T) {
	in := fixture.Unfinished()
	text := Text(Options{}, in)
	for _, want := range []string{
		"✗ 238 lx", "✗ T2.8", "✗ 3340 K", "✗ Struck figures are without scrims of 2 soft.", "  ✗ Struck figures are without filter of A.",
		"✗ Not in this map: scrims of 2 soft.", "✗ Stops of this map are without filter of A.", "✗ 2700 ", "✗ Struck figures are without diffusion of 3 lamp.",
		"NOT COMPUTED\n  - Scrims of 2 soft: accessories of a lamp.\n  - Filter of A: filters before the lens.\n  - Diffusion of 3 lamp: cloth on lamps.\n  - Play of 1 day: effects.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the text does not say %q:\n%s", want, text)
		}
	}
	for _, whole := range []string{"✗ 410 lx", "✗ 52", "✗ 120 lx"} {
		if strings.Contains(text, whole) {
			t.Errorf("%s is marked, and nothing changes it", whole)
		}
	}
	var said, over []string
	for i, page := range compose(t, in, Options{}).Pages {
		for _, it := range page.Items {
			if it.Object == "reading:ruth.key" && it.Alt != "" && i == 0 {
				said = append(said, it.Alt)
			}
			if it.Object == "not-in-this-map" && it.Text != nil && i == 0 {
				over = append(over, it.Text.S)
			}
		}
	}
	if len(said) != 1 || !strings.Contains(said[0], "Struck: without scrims of 2 soft, not computed yet.") {
		t.Errorf("the key side says %q", said)
	}
	if got := strings.Join(over, " "); got != "Not in this map: scrims of 2 soft. Stops of this map are without filter of A." {
		t.Errorf("the map says %q", got)
	}
}

// The overprint keeps clear of symbols, walls and lettering at every scale and on every paper.
func TestOverprintKeepsClear(t *testing.T) {
	for _, o := range []Options{{}, {Paper: "A4"}, {Paper: "A2"}, {Paper: "A3", Scale: "1:50"}, {Paper: "A4 portrait", Scale: "1:100"}, {Scale: "1:20"}} {
		o.Font = fixture.Family(t)
		s := newSheet(fixture.Unfinished(), o, &faults{}).lay()
		s.draw()
		for i := range s.pages {
			checkPage(t, &s.pages[i], fixture.Family(t))
		}
		if s.layout.Tiles.Parts() == 1 {
			checkPlan(t, s, fixture.Family(t))
		}
	}
}
