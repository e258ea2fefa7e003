package sheet

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// TestPlanIsTrue measures the room on paper.
func TestPlanIsTrue(t *testing.T) {
	doc := compose(t, fixture.Example(), Options{Scale: "1:50", Paper: "A3"})
	var walls ink.Extent
	for i := range doc.Pages[0].Items {
		if it := &doc.Pages[0].Items[i]; strings.HasPrefix(it.Object, "wall:") {
			walls.Join(ink.Path(it.Path).Bounds())
		}
	}
	if w, h := box.Width(walls.Box), box.Height(walls.Box); !(math.Abs(w-4.6*20) <= 0.01) || !(math.Abs(h-4.0*20) <= 0.01) {
		t.Errorf("the room is %.3f by %.3f mm on paper, want 92 by 80", w, h)
	}
}

// TestLegendIsWhatIsDrawn compares the entries of the legend with the kinds of things in the
// set-up, found here by another way than the sheet does.
func TestLegendIsWhatIsDrawn(t *testing.T) {
	check := func(t *testing.T, in Input, s *sheet) {
		if got, want := legendOf(s.pages), signsWanted(in, s); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: the legend shows %v, the plan %v", s.pages[0].Title, keysOf(got), keysOf(want))
		}
	}
	check(t, Input{Setup: &plan.Setup{}}, sheetFor(t, Input{Setup: &plan.Setup{}}, Options{Font: fixture.Family(t)}))
	for n := range int64(6) {
		in := crowd(n, 8)
		check(t, in, sheetFor(t, in, Options{Font: fixture.Family(t), Paper: "A3"}))
	}
	eachSample(t, check)
	for _, name := range hardCases() {
		t.Run(name, func(t *testing.T) {
			in, s := hardCase(t, name)
			check(t, in, s)
		})
	}
}

// signsWanted are the signs that the legend of a sheet has to explain: the things of the set-up, each in its state, and
// the lines on its pages.
func signsWanted(in Input, s *sheet) map[string]bool {
	want := map[string]bool{}
	for i := range in.Setup.Lights {
		l := &in.Setup.Lights[i]
		want[lightSign(l)] = true
		if l.Head.Class != "practical" || l.Mount.Kind != "stand" && l.Mount.Kind != "floor" && l.Mount.Kind != "" {
			want["mount:"+string(l.Mount.Kind)] = true
		}
	}
	if slices.ContainsFunc(in.Setup.Circuits, func(c plan.Circuit) bool { return c.Outlet != nil }) {
		want["cable"] = true
	}
	for _, g := range in.Setup.Grip {
		kind := string(g.Kind)
		if kind == "card" && g.Surface == "black" {
			kind = "black"
		}
		want["grip:"+kind] = true
		if g.Mount.Kind != "" {
			want["mount:"+string(g.Mount.Kind)] = true
		}
	}
	peopleSigns(in.Setup, want)
	for _, o := range in.Setup.Openings {
		for _, d := range o.Dressing {
			want[map[bool]string{true: "dressing:blind", false: "dressing:curtain"}[d.Slat > 0]] = true
		}
		want["opening:"+string(o.Kind)] = true
	}
	for _, f := range in.Setup.Furniture {
		want["furniture:"+string(f.Kind)] = true
	}
	for _, r := range in.Readings {
		if r.Person == "" {
			want["reading:"+string(r.Kind)] = true
		}
	}
	for i := range s.pages {
		for key := range linesOn(&s.pages[i]) {
			want[key] = true
		}
	}
	movedSigns(in.Setup, want)
	return want
}

// movedSigns adds that of what moved since the set-up before: where none of it has room, too, for the legend says so.
func movedSigns(s *plan.Setup, want map[string]bool) {
	if s.Before == nil {
		return
	}
	for _, l := range change.Between(change.Of(s.Before), change.Of(s)).Lines {
		if m, moves := l.Move(); moves && m.Plan >= change.Unmoved && l.Sort != change.Mark {
			want["ghost"] = true
		}
	}
}

// peopleSigns adds those of people, and of where they go.
func peopleSigns(s *plan.Setup, want map[string]bool) {
	for _, p := range s.People {
		want["person:"+string(p.Pose)] = true
		if len(p.Marks) > 0 {
			want["mark"] = true
		}
		if p.Walk != nil {
			want["walk"], want["walk:farthest"] = true, true
		}
	}
}

// lightSign is the sign of a light by how it is used.
func lightSign(l *plan.Light) string {
	kind, up := string(l.Head.Class), l.Frame.Axis.Z
	steep := math.Abs(up) > math.Sin(75*math.Pi/180)
	switch {
	case kind == "practical" && l.Head.ModifierLabel == "":
		kind = "bulb"
	case kind == "practical", kind == "lantern", kind == "linear", !steep:
	default:
		face := map[bool]string{true: "-soft"}[kind == "boxed"]
		if kind == "panel" {
			face = "-panel"
		}
		if face != "" && l.Head.Source.Opening.Form == photometry.Disc {
			face = "-round"
		}
		kind = map[bool]string{true: "up", false: "down"}[up > 0] + face
	}
	if l.Level == 0 {
		kind += "/off"
	}
	return "light:" + kind
}

// linesOn are the marks of a page that stand for no one thing, by their layers and pens.
func linesOn(p *ink.Page) map[string]bool {
	on := map[string]bool{}
	cliffs := map[float64]bool{}
	for i := range p.Items {
		it := &p.Items[i]
		switch {
		case it.Layer == ink.Throws && strings.HasPrefix(it.Object, "light:"):
			on["throw"] = true
		case it.Layer == ink.CameraWedge:
			on["view"] = true
		case it.Layer == ink.Tapes:
			on["tape"] = true
		case it.Layer == ink.Moves:
			on["ghost"] = true
		case it.Layer == ink.Beams && it.Stroke != nil:
			on[map[bool]string{true: "beam:tenth", false: "beam:half"}[it.Stroke.Dash != nil]] = true
		case strings.HasPrefix(it.Object, "room:") && it.Stroke != nil:
			on["size"] = true
		case it.Layer == ink.People && strings.HasPrefix(it.Object, "person:"), it.Layer == ink.Readings && strings.HasPrefix(it.Object, "reading:") && it.Stroke != nil && it.Stroke.Width == draw.Thick:
			on["reading:face"] = on["reading:face"] || it.Layer == ink.Readings
		case strings.HasPrefix(it.Object, "camera:") && it.Layer == ink.Symbols:
			on["camera"] = true
		case it.Layer == ink.People && strings.HasPrefix(it.Object, "track:"):
			on["track"] = true
		case it.Layer == ink.People && it.Object == "line":
			on["line"] = true
		case it.Layer == ink.Contours && it.Stroke != nil:
			cliffs[it.Stroke.Width] = true
		}
	}
	if cliffs[draw.Medium] { // the width of cliffs alone
		on["cliff"] = true
	}
	for key, yes := range on {
		if !yes {
			delete(on, key)
		}
	}
	return on
}

func legendOf(pages []ink.Page) map[string]bool {
	got := map[string]bool{}
	for i := range pages {
		for j := range pages[i].Items {
			if key, ok := strings.CutPrefix(pages[i].Items[j].Object, "legend:"); ok {
				got[key] = true
			}
		}
	}
	return got
}

func keysOf(m map[string]bool) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// TestTheSameInk composes twice.
func TestTheSameInk(t *testing.T) {
	for _, in := range []func() Input{fixture.Example, func() Input { return crowd(3, 25) }} {
		a, _ := Compose([]Input{in()}, Options{Date: "2031-05-14"})
		b, _ := Compose([]Input{in()}, Options{Date: "2031-05-14"})
		if !reflect.DeepEqual(a, b) {
			t.Error("two runs differ")
		}
	}
}

// TestEveryThingSpeaks looks for the sentence of every light, person, camera, grip and reading.
func TestEveryThingSpeaks(t *testing.T) {
	in := fixture.Example()
	doc := compose(t, in, Options{})
	said := map[string]string{}
	for i := range doc.Pages[0].Items {
		if it := &doc.Pages[0].Items[i]; it.Alt != "" {
			if before, twice := said[it.Object]; twice {
				t.Errorf("%s speaks twice: %q and %q", it.Object, before, it.Alt)
			}
			said[it.Object] = it.Alt
		}
	}
	for object, words := range map[string]string{
		"light:day":         "Light 1, 600 W LED point, lens 25: 5600 K, 100 %, 2.50 m high, throw 4.40 m.",
		"person:ruth":       "ruth, seated, eyes 1.20 m high.",
		"camera:A":          "Camera A, 35 mm lens, 1.25 m high, sees 39.2° across.",
		"grip:black":        "Grip G1, flag 1.20 m by 1.20 m, its middle 1.40 m high.",
		"reading:ruth.key":  "Reading ruth.key, flat, 1.20 m above the floor: 238 lx, T2.8, 0 stops from the working stop.",
		"reading:table-top": "Reading table-top, flat, 0.76 m above the floor: 410 lx, T2.8+⅔, +0.8 stops from the working stop.",
		"opening:street":    "window street, 1.40 m wide, sill 0.90 m, head 2.10 m.",
	} {
		if said[object] != words {
			t.Errorf("%s says %q, want %q", object, said[object], words)
		}
	}
}

func TestPapersAndScales(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(in *Input)
		o      Options
		size   r2.Vec
		words  string
	}{
		{"a small room", func(*Input) {}, Options{}, r2.Vec{X: 420, Y: 297}, "1 : 20 on A3"},
		{"a small room, on paper that most have", func(*Input) {}, Options{Paper: "A4 landscape"}, r2.Vec{X: 297, Y: 210}, "1 : 50 on A4"},
		{"a larger paper, a larger scale", func(*Input) {}, Options{Paper: "a3"}, r2.Vec{X: 420, Y: 297}, "1 : 20 on A3"},
		{"upright", func(*Input) {}, Options{Paper: "A4 portrait"}, r2.Vec{X: 210, Y: 297}, "1 : 50 on A4"},
		{"upright, any paper", func(*Input) {}, Options{Paper: "portrait"}, r2.Vec{X: 297, Y: 420}, "1 : 50 on A3"},
		{"a scale asked for needs a larger paper", func(*Input) {}, Options{Scale: "1:10"}, r2.Vec{X: 841, Y: 594}, "1 : 10 on A1"},
		{"letter", func(*Input) {}, Options{Paper: "ANSI A", Scale: "1:50"}, r2.Vec{X: 279.4, Y: 215.9}, "1 : 50 on letter"},
		{"in feet", func(in *Input) { in.Setup.Feet = true }, Options{}, r2.Vec{X: 431.8, Y: 279.4}, `1/2" = 1'-0" on tabloid`},
		{"in feet, on paper that was asked for", func(in *Input) { in.Setup.Feet = true }, Options{Paper: "A4"}, r2.Vec{X: 297, Y: 210}, `1/4" = 1'-0" on A4`},
		{"long and low: lists have no room on A4", func(in *Input) { away(in, 8) }, Options{}, r2.Vec{X: 420, Y: 297}, "1 : 50 on A3"},
		{"too large for a good scale on A4", func(in *Input) { away(in, 10) }, Options{}, r2.Vec{X: 420, Y: 297}, "1 : 50 on A3"},
		{"too large for a good scale", func(in *Input) { away(in, 16) }, Options{}, r2.Vec{X: 420, Y: 297}, "1 : 100 on A3"},
		{"the scene asks", func(in *Input) {
			in.Setup.Scene.Sheet.Paper, in.Setup.Scene.Sheet.Scale = fixture.Given("A2"), fixture.Given("1:50")
		}, Options{}, r2.Vec{X: 594, Y: 420}, "1 : 50 on A2"},
		{"the option wins over the scene", func(in *Input) { in.Setup.Scene.Sheet.Paper = fixture.Given("A2") },
			Options{Paper: "A4"}, r2.Vec{X: 297, Y: 210}, "1 : 50 on A4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := fixture.Example()
			c.change(&in)
			page := compose(t, in, c.o).Pages[0]
			if !(math.Abs(page.Width-c.size.X) <= 1e-9) || !(math.Abs(page.Height-c.size.Y) <= 1e-9) {
				t.Errorf("the page is %v by %v, want %v", page.Width, page.Height, c.size)
			}
			if !has(&page, c.words) {
				t.Errorf("no %q on the sheet", c.words)
			}
		})
	}
}

// away moves the first light so far off, m.
func away(in *Input, metres float64) { in.Setup.Lights[0].Frame.At.X = -metres }

func has(p *ink.Page, s string) bool {
	return slices.ContainsFunc(p.Items, func(it ink.Item) bool { return it.Text != nil && it.Text.S == s })
}

func TestWishesThatCannotBe(t *testing.T) {
	far := func(in *Input) { away(in, 900) }
	none := func(*Input) {}
	for _, c := range []struct {
		o          Options
		change     func(*Input)
		code, hint string
	}{
		{Options{Paper: "A9"}, none, "unknown-paper", "write one of A4, A3, A2, A1, letter, tabloid, ANSI C, ANSI D"},
		{Options{Paper: "tabloit"}, none, "unknown-paper", "did you mean tabloid? Write one of A4, A3, A2, A1, letter, tabloid, ANSI C, ANSI D"},
		{Options{Scale: "1:40"}, none, "unknown-scale", "did you mean 1:50?"},
		{Options{Scale: "half"}, none, "unknown-scale", "the scales are 1:10, 1:20, 1:25, 1:50, 1:100, 1:200"},
		{Options{Theme: "knight"}, none, "unknown-theme", ""},
		{Options{Levels: "lux"}, none, "unknown-measure-of-light", "did you mean lx? Write one of lx, fc, stop, stops"},
		{Options{}, far, "plan-too-large", "bring the things that stand far off nearer"},
		{Options{Paper: "A4", Scale: "1:10"}, func(in *Input) { away(in, 16) }, "plan-too-large", "it fits at 1:100"},
		{Options{Paper: "A4", Scale: "1:10"}, func(in *Input) { away(in, 60) }, "plan-too-large", "it comes in parts at 1:25"},
	} {
		in := fixture.Example()
		c.change(&in)
		doc, found := Compose([]Input{in}, c.o)
		if len(doc.Pages) > 0 || len(found) != 1 || found[0].Severity != source.Error || found[0].Code != c.code {
			t.Errorf("%+v: %d pages and %v, want the error %s", c.o, len(doc.Pages), found, c.code)
			continue
		}
		if c.hint != "" && found[0].Hint != c.hint {
			t.Errorf("%s: the hint is %q, want %q", c.code, found[0].Hint, c.hint)
		}
		// What does not fit is known from what stands alone.
		if early := Fits([]Input{{Setup: in.Setup}}, c.o); (c.code == "plan-too-large") != (len(early) == 1 && early[0].Code == c.code && early[0].Hint == found[0].Hint) {
			t.Errorf("%s: before light is computed Fits reports %+v", c.code, early)
		}
	}
}

// TestFaultsOfTheSceneKeepTheirPlace asks for an unknown paper in the scene itself.
func TestFaultsOfTheSceneKeepTheirPlace(t *testing.T) {
	in := fixture.Example()
	in.Setup.Scene.Sheet.Paper = fixture.Given("A33")
	in.Setup.Scene.Sheet.Paper.Span = source.Span{Line: 7, Col: 10}
	_, found := Compose([]Input{in}, Options{})
	if len(found) != 1 || found[0].Span.Line != 7 || found[0].Path != "sheet.paper" {
		t.Errorf("found %+v", found)
	}
}

func TestSheetsAreNumberedThrough(t *testing.T) {
	one, two := fixture.Example(), crowd(5, 30)
	doc, _ := Compose([]Input{one, two}, Options{Paper: "A4", Date: "2031-05-14"})
	if len(doc.Pages) < 4 {
		t.Fatalf("%d pages", len(doc.Pages))
	}
	for i := range doc.Pages {
		p := &doc.Pages[i]
		want := fmt.Sprintf("%d / %d", i+1, len(doc.Pages))
		if !has(p, want) {
			t.Errorf("page %d does not say it is %s", i+1, want)
		}
		for _, s := range []string{"Production", "Low Water", "Revision", "B", "Date", "2031-05-14"} {
			if !has(p, s) {
				t.Errorf("page %d lacks %q of the title block", i+1, s)
			}
		}
	}
}

// Several set-ups are the headings of the outline, and their pages are told apart under them; one has no heading.
func TestPagesStandUnderTheirSetUp(t *testing.T) {
	one, two := fixture.Example(), crowd(5, 120)
	one.Setup.Name, two.Setup.Name = "wide", "close"
	under := func(ins ...Input) (all []string) {
		doc, _ := Compose(ins, Options{Paper: "A4"})
		for i := range doc.Pages {
			all = append(all, strings.Join(doc.Pages[i].Outline, ": "))
		}
		return all
	}
	got := under(one, two)
	for _, want := range []string{"Set-up wide: Plan", "Set-up close: Plan", "Set-up close: Lists", "Set-up close: Lists, page 2"} {
		if !slices.Contains(got, want) {
			t.Errorf("no %q among %q", want, got)
		}
	}
	if sorted := slices.Sorted(slices.Values(got)); len(slices.Compact(sorted)) != len(got) {
		t.Errorf("two pages stand at one place: %q", got)
	}
	if alone := strings.Join(under(two), ""); alone != "" {
		t.Errorf("a set-up alone has the heading %q", alone)
	}
}

// TestDrawingKeepsItsNumber: a set-up drawn alone bears the number that it has among all of the file.
func TestDrawingKeepsItsNumber(t *testing.T) {
	numbers := func(ins []Input) (all []string) {
		doc, _ := Compose(ins, Options{Paper: "A3"})
		for i := range doc.Pages {
			items := doc.Pages[i].Items
			for j := range items {
				if items[j].Text != nil && items[j].Text.S == "Drawing" && !strings.Contains(doc.Pages[i].Name, ".") {
					all = append(all, doc.Pages[i].Title+" "+items[j+1].Text.S)
				}
			}
		}
		return all
	}
	ins := sampleInputs(t, "two-sizes")
	all := numbers(ins)
	if len(all) < 2 || len(all) != len(ins) {
		t.Fatalf("the drawings are %q", all)
	}
	for i := range ins {
		if one := numbers(ins[i : i+1]); len(one) != 1 || one[0] != all[i] {
			t.Errorf("drawn alone it is %q, in the run %q", one, all[i])
		}
	}
}

// TestOneTray draws two set-ups of which only one needs the larger paper.
func TestOneTray(t *testing.T) {
	large := fixture.Example()
	away(&large, 10)
	doc, _ := Compose([]Input{fixture.Example(), large}, Options{})
	for i := range doc.Pages {
		if p := &doc.Pages[i]; math.Min(p.Width, p.Height) != 297 {
			t.Errorf("page %d is %v by %v", i+1, p.Width, p.Height)
		}
	}
}

func TestCautionsStandBesideThePlan(t *testing.T) {
	for _, in := range []Input{fixture.Example(), crowd(2, 12), crowd(7, 20)} {
		page := compose(t, in, Options{}).Pages[0]
		last := slices.ContainsFunc(page.Items, func(it ink.Item) bool {
			return it.Text != nil && strings.HasPrefix(it.Text.S, "Local codes and licensed practice") // in large lettering it takes two lines
		})
		if !has(&page, "Cautions") || !last {
			t.Error("the cautions are not on the sheet of the plan")
		}
	}
}

func TestTextHoldsEveryValue(t *testing.T) {
	text := Text(Options{Date: "2031-05-14"}, fixture.Example())
	for _, want := range []string{
		"The kitchen, late afternoon, Set-up 2", "Working stop T2.8, ISO 800, white 4300 K", "24 fps, 180°, 1/48 s, dome meter, C = 340",
		"Low Water, Quay house, ground floor, revision B, 2031-05-14, for electric, grip, by M. Aldous",
		"contours at ", "238 lx", "T2.8", "2.2 stops", "4.6 : 1", "3340 K",
		"600 W LED point", "lens 25, 1/2 CTO; at ruth, 17° down, pan 96°; two bags, tie off", "2.00 from street, outside, 1.30 from kitchen.top",
		"G1", "1.20 × 1.20", "39.2° × 16.9°", "table-top, flat", "410 lx",
		"- Stand of 2 is 0.3 m outside frame left: do not pan past 6°.", "walls 0.5 reflectance; ceiling 0.8; floor 0.2", "Floor load, house wiring, wind.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the text lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "LEGEND") {
		t.Error("a legend of signs in a text")
	}
}

// TestBareSetups composes what has next to nothing in it.
func TestBareSetups(t *testing.T) {
	for name, in := range map[string]Input{
		"nothing":     {Setup: &plan.Setup{}},
		"one person":  {Setup: &plan.Setup{People: fixture.Kitchen().People}, Faces: []Face{{Person: "ruth", Contrast: math.NaN()}}},
		"a dark room": {Setup: fixture.Kitchen(), Field: &Field{Name: "Illuminance on the floor", Grid: fixture.Glow(&plan.Setup{})}},
		"NaN":         {Setup: &plan.Setup{Title: "\x00", People: []plan.Person{{At: r2.Vec{X: math.NaN()}}}}},
	} {
		if doc, found := Compose([]Input{in}, Options{}); len(doc.Pages) == 0 {
			t.Errorf("%s: no pages: %v", name, found)
		}
	}
}

func TestLongWordsAreCutAloud(t *testing.T) {
	in := fixture.Example()
	in.Setup.Title = strings.Repeat("lightinterminable", 12)
	doc, found := Compose([]Input{in}, Options{})
	if len(found) == 0 || found[0].Code != "lettering-cut" || found[0].Severity != source.Warning {
		t.Errorf("found %v", found)
	}
	for i := range doc.Pages {
		checkPage(t, &doc.Pages[i], fixture.Family(t))
	}
}

// TestTextsWrapBeforeTheyAreCut: what two lines of the title block or of a tag hold is not cut.
func TestTextsWrapBeforeTheyAreCut(t *testing.T) {
	in := fixture.Example()
	in.Setup.Scene.Sheet.Production = fixture.Given("The Long Breakfast of the Lamplighter's Daughter")
	in.Setup.Scene.Sheet.Location = fixture.Given("14 Harbour Terrace, ground floor rear kitchen")
	in.Setup.Lights[0].Note = "sodium street, keep clear of path"
	doc, found := Compose([]Input{in}, Options{Paper: "A3"})
	if len(found) > 0 {
		t.Errorf("found %v", found)
	}
	var all []string
	for i := range doc.Pages[0].Items {
		if it := doc.Pages[0].Items[i].Text; it != nil {
			all = append(all, it.S)
		}
	}
	said := strings.Join(all, "\n")
	for _, want := range []string{"The Long Breakfast of the\nLamplighter's Daughter", "14 Harbour Terrace,\nground floor rear kitchen", "1/2 CTO; sodium street,\nkeep clear of path"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
	checkPage(t, &doc.Pages[0], fixture.Family(t))
}

func TestLevelsAreLetteredAsAsked(t *testing.T) {
	for levels, want := range map[string][]string{
		"":      {"163", "in lx, one line a stop; heavy: T2.8"},
		"lx":    {"163"},
		"fc":    {"15.2", "22.1 fc"},
		"stop":  {"T2.8", "T4"},
		"stops": {"0", "+1", "−1"},
	} {
		page := compose(t, fixture.Example(), Options{Levels: levels}).Pages[0]
		for _, s := range want {
			if !has(&page, s) {
				t.Errorf("--levels %q: no %q on the sheet", levels, s)
			}
		}
	}
}

func TestMissingGlyphsAreTold(t *testing.T) {
	in := fixture.Example()
	in.Setup.Title = "台所"
	_, found := Compose([]Input{in}, Options{})
	var codes []string
	for _, d := range found {
		codes = append(codes, d.Code+" "+d.Message)
	}
	want := []string{
		`missing-glyph the typeface Liberation Sans has no glyphs for Han (台所)`,
	}
	if !slices.Equal(codes, want) {
		t.Errorf("found %q, want %q", codes, want)
	}
}

// TestThemes composes in every look: only the inks differ, and how large and heavy the lists of a copier are, which may shorten a label, and break lines
// elsewhere: its words are the same.
func TestThemes(t *testing.T) {
	beside := func(doc *ink.Document) (words, lines []string) {
		for i := range doc.Pages {
			for j := range doc.Pages[i].Items {
				if it := &doc.Pages[i].Items[j]; it.Text != nil && it.Layer == ink.Collar && it.Text.S != "(continued)" {
					lines = append(lines, it.Text.S)
					words = append(words, strings.Fields(it.Text.S)...)
				}
			}
		}
		slices.Sort(words)
		return words, lines
	}
	day := compose(t, fixture.Example(), Options{})
	words, lines := beside(&day)
	for _, name := range ThemeNames() {
		doc := compose(t, fixture.Example(), Options{Theme: name})
		gotWords, gotLines := beside(&doc)
		if !slices.Equal(gotWords, words) || name != "ink" && !slices.Equal(gotLines, lines) {
			t.Errorf("%s letters another sheet than day: %q, want %q", name, gotLines, lines)
		}
		if name != "ink" && texts(&doc.Pages[0]) != texts(&day.Pages[0]) {
			t.Errorf("%s letters another plan than day", name)
		}
	}
}

func texts(p *ink.Page) string {
	var all []string
	for i := range p.Items {
		if t := p.Items[i].Text; t != nil {
			all = append(all, t.S)
		}
	}
	return strings.Join(all, "\n")
}

// TestNightSparesTheEye holds the night look to reds: no ink has more green or blue than red.
func TestNightSparesTheEye(t *testing.T) {
	doc := compose(t, fixture.Example(), Options{Theme: "night"})
	for i := range doc.Pages[0].Items {
		it := &doc.Pages[0].Items[i]
		for _, c := range inksOf(it) {
			if c.G > c.R || c.B > c.R || int(c.R)+int(c.G)+int(c.B) > 500 {
				t.Fatalf("%s is drawn in %v", describe(it), c)
			}
		}
	}
}

func inksOf(it *ink.Item) (all []ink.Colour) {
	if it.Fill != nil {
		all = append(all, *it.Fill)
	}
	if it.Stroke != nil {
		all = append(all, it.Stroke.Colour)
	}
	if it.Text != nil {
		all = append(all, it.Text.Colour)
	}
	return all
}

func BenchmarkCompose(b *testing.B) {
	for _, c := range []struct {
		name string
		in   Input
	}{{"kitchen", fixture.Example()}, {"crowd of 40", crowd(1, 40)}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Compose([]Input{c.in}, Options{Paper: "A3"})
			}
		})
	}
}
