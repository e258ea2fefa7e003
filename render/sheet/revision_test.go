package sheet

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// earlier is a set-up as a sheet before may have had it: its first light stood elsewhere, its first camera had another lens, its first piece of furniture was
// not there, its first person looked another way, and a lamp stood there that is gone. It returns the objects of the clouds that belong round them.
func earlier(now *plan.Setup) (*plan.Setup, map[string]r2.Vec) {
	was, clouds := *now, map[string]r2.Vec{}
	if len(was.Lights) > 0 {
		was.Lights = slices.Clone(was.Lights)
		l := &was.Lights[0]
		clouds["revision:light:"+l.Name] = plan.InPlan(l.Frame.At)
		l.Frame.At.X += 0.9
		gone := *l
		gone.Name, gone.Tag = "was-there", "99"
		gone.Frame.At.X, gone.Frame.At.Y = now.Lights[0].Frame.At.X+0.5, now.Lights[0].Frame.At.Y-0.5
		was.Lights = append(was.Lights, gone)
		clouds["revision:light:was-there"] = plan.InPlan(gone.Frame.At)
	}
	if len(was.Cameras) > 0 {
		was.Cameras = slices.Clone(was.Cameras)
		was.Cameras[0].Lens += 5
		clouds["revision:camera:"+was.Cameras[0].Name] = plan.InPlan(was.Cameras[0].Frame.At)
	}
	if len(was.Furniture) > 0 {
		clouds["revision:furniture:"+was.Furniture[0].Name] = was.Furniture[0].At
		was.Furniture = was.Furniture[1:]
	}
	if len(was.People) > 0 {
		was.People = slices.Clone(was.People)
		was.People[0].Faces += 40
		clouds["revision:person:"+was.People[0].Name] = was.People[0].At
	}
	return &was, clouds
}

// revisedOn are the marks of a page that say what was revised on its plan, by their objects.
func revisedOn(p *ink.Page) map[string][]*ink.Item {
	all := map[string][]*ink.Item{}
	for i := range p.Items {
		if it := &p.Items[i]; it.Layer == ink.Revisions {
			all[it.Object] = append(all[it.Object], it)
		}
	}
	return all
}

// bars counts the bars of a page beside rows of lists.
func bars(p *ink.Page) (n int) {
	for i := range p.Items {
		if p.Items[i].Object == "revised" {
			n++
		}
	}
	return n
}

// oddScenes are kinds of scenes: in feet on two floors with several cameras and people, with nobody, without rooms, and empty. Invented.
func oddScenes(t *testing.T) (all []*plan.Setup) {
	t.Helper()
	odd, _ := fixture.SetupsOf(t, oddDay)
	for _, text := range []string{
		"scrimshaw: 1\nlights: {a: {unit: led-panel-100, at: [0, 0], height: 2, aim: [2, 1, 1]}, b: {unit: led-tube-60, at: [3, 2], height: 2, aim: down}}\ncameras: {A: {at: [3, 0], lens: 32 mm, looks: [1, 1, 1]}}\n",
		"scrimshaw: 1\nrooms: {den: {size: [4, 3]}}\n",
	} {
		more, _ := fixture.SetupsOf(t, text)
		odd = append(odd, more...)
	}
	return odd
}

// TestCloudsStandRoundWhatWasRevised and round nothing else, on the plan and on the second map, where things are and where they were that are gone.
func TestCloudsStandRoundWhatWasRevised(t *testing.T) {
	inputs := []Input{fixture.Example()}
	for _, s := range oddScenes(t) {
		inputs = append(inputs, Input{Setup: s})
	}
	for i, in := range inputs {
		was, want := earlier(in.Setup)
		for _, theme := range []string{"day", "ink"} {
			in.Since = section.SinceOf("A", was, in.Setup, nil)
			s := sheetFor(t, in, Options{Font: fixture.Family(t), Paper: "A3", Theme: theme})
			v := s.fitter.View(&s.layout)
			for k := range s.pages {
				page := &s.pages[k]
				if what := page.Name; what != "" && what != "face" {
					continue
				}
				marks := revisedOn(page)
				got := slices.DeleteFunc(slices.Sorted(maps.Keys(marks)), func(o string) bool { return strings.HasPrefix(o, "ghost:") })
				if !slices.Equal(got, slices.Sorted(maps.Keys(want))) {
					t.Errorf("%d %s, page %q has clouds %v, want %v", i, theme, page.Name, got, slices.Sorted(maps.Keys(want)))
					continue
				}
				for object, at := range want {
					around := marks[object][len(marks[object])-1].Bounds(nil).Box
					if page.Name == "" && !box.Contains(around, v.Paper(at)) {
						t.Errorf("%d %s: the cloud of %s is at %v, and it stands at %v", i, theme, object, around, v.Paper(at))
					}
				}
			}
		}
	}
}

// TestNothingIsMarkedOfTheSameSheet: no cloud, no bar, and the list says so; of a set-up that is new all of it is.
func TestNothingIsMarkedOfTheSameSheet(t *testing.T) {
	for _, s := range append(oddScenes(t), fixture.Kitchen()) {
		for _, was := range []*plan.Setup{s, nil} {
			in := Input{Setup: s, Since: section.SinceOf("A", was, s, nil)}
			drawn := sheetFor(t, in, Options{Font: fixture.Family(t)})
			marks := 0
			for i := range drawn.pages {
				marks += len(revisedOn(&drawn.pages[i])) + bars(&drawn.pages[i])
			}
			want := "Nothing: the set-up is as it was."
			if was == nil {
				want = "All of it: this set-up is new."
			}
			if said := Text(Options{Font: fixture.Family(t)}, in); marks > 0 || strings.Contains(said, "\n|") || !strings.Contains(said, "REVISED SINCE A\n  "+want) {
				t.Errorf("%s: %d marks, and\n%s", s.Name, marks, said)
			}
		}
	}
}

// TestBarsStandBesideRevisedRows: of lights, cameras and readings that differ by more than a third of a stop, as many on paper as in the text.
func TestBarsStandBesideRevisedRows(t *testing.T) {
	in := fixture.Example()
	was, _ := earlier(in.Setup)
	before := slices.Clone(in.Readings)
	before[0].Lux, before[3].Lux = fixture.Number(238*1.2), fixture.Number(410*1.3) // of the key side 0.26 stops, of the meter 0.38
	in.Since = section.SinceOf("A", was, in.Setup, before)
	s := sheetFor(t, in, Options{Font: fixture.Family(t), Paper: "A3"})
	onPaper := 0
	for i := range s.pages {
		onPaper += bars(&s.pages[i])
	}
	var rows []string
	for line := range strings.SplitSeq(Text(Options{Font: fixture.Family(t)}, in), "\n") {
		if row, is := strings.CutPrefix(line, "| "); is {
			rows = append(rows, strings.Join(strings.Fields(row)[:1], " "))
		}
	}
	if want := []string{"1", "A", "table-top,", "table"}; !slices.Equal(rows, want) || onPaper != len(want)-1 { // furniture is listed in text alone
		t.Errorf("bars beside %v, %d of them on paper, want %v", rows, onPaper, want)
	}
	if said := Text(Options{}, in); !strings.Contains(said, "table-top 410 lx T2.8+⅔, was 533 lx T2.8+⅔; −0.4 stops\n") {
		t.Errorf("the reading is not told:\n%s", said)
	}
}

// TestADarkReadingIsToldWithoutStops: from light to dark there are no stops that could be counted.
func TestADarkReadingIsToldWithoutStops(t *testing.T) {
	in := fixture.Example()
	for _, c := range []struct{ was, is float64 }{{0, 12}, {12, 0}, {0, 0}} {
		in.Readings[3].Lux = fixture.Number(c.is)
		before := []meter.Reading{in.Readings[3]}
		before[0].Lux = fixture.Number(c.was)
		in.Since = section.SinceOf("A", in.Setup, in.Setup, before)
		said := Text(Options{Font: fixture.Family(t)}, in)
		if strings.Contains(said, "Inf") || strings.Contains(said, "NaN") || strings.Contains(said, "was 12.0 lx") != (c.was > 0) {
			t.Errorf("from %g to %g lx it says\n%s", c.was, c.is, said)
		}
	}
}

// heldTo is what sheets of some set-ups say, and the inputs of sheets that are held to them.
func heldTo(before, now []*plan.Setup) (since *Since, ins []Input) {
	since = NewSince(false)
	for _, s := range before {
		since.Add(s)
	}
	for _, s := range now {
		ins = append(ins, Input{Setup: s, Since: since.Of(s)})
	}
	return since, ins
}

// TestTheDayIsHeldToTheSheetsBefore: the cover says which set-ups are new, gone, revised and as they were; the kit how many there were of what; and each title
// block what it is held to.
func TestTheDayIsHeldToTheSheetsBefore(t *testing.T) {
	now, _ := fixture.SetupsOf(t, strings.Replace(oddDay, "units: ft", "units: ft\nsheet: {revision: B}", 1))
	before, _ := fixture.SetupsOf(t, strings.NewReplacer("units: ft", "units: ft\nsheet: {revision: A}", "  empty:", "  bare:", "level: 20 %", "level: 25 %", "top: {unit: fresnel-tungsten-300", "old: {unit: fresnel-tungsten-650",
		"top: {aim: down}", "old: {aim: down}").Replace(oddDay))
	since, ins := heldTo(before, now)
	o := Options{Packet: true, Since: since, Font: fixture.Family(t)}
	doc, _ := Compose(ins, o)
	said := map[string]string{}
	for i := range doc.Pages {
		for k := range doc.Pages[i].Items {
			if text := doc.Pages[i].Items[k].Text; text != nil {
				said[doc.Pages[i].Name] += text.S + "\n"
			}
		}
		if p := &doc.Pages[i]; !strings.Contains(said[p.Name], "B, since A") {
			t.Errorf("the title block of %q does not say what it is held to", p.Name)
		}
	}
	for page, words := range map[string][]string{".cover": {"Revised since A", "New: empty.", "Gone: bare.", "Revised: wide (", "2 revisions; A", "new; A"}, ".kit": {"No more since A: 1 650 W fresnel", "wire scrims, lamp\nnew\n"}} {
		for _, w := range words {
			if !strings.Contains(said[page], w) && !strings.Contains(strings.ReplaceAll(said[page], "\n", " "), w) {
				t.Errorf("%s does not say %q:\n%s", page, w, said[page])
			}
		}
	}
}

// TestOnlyWhatTheVanNeedsOtherwiseIsMarked: one more tube of a kind that was there marks its row and no other, with how many it was, in the kit; what a list
// of circuits says of one that is as it was has no bar.
func TestOnlyWhatTheVanNeedsOtherwiseIsMarked(t *testing.T) {
	const text = "scrimshaw: 1\nrooms: {den: {size: [5, 4]}}\ncircuits: {ring: {breaker: 16}, bath: {breaker: 10}}\nlights:\n" +
		"  a: {unit: led-tube-60, at: [1, 1], height: 2, aim: down, gels: [full CTO], circuit: ring}\n  b: {unit: led-panel-100, at: [3, 3], height: 2, aim: down, circuit: bath}\nsetups: {one: {}, two: {}}\n"
	const more = "  c: {unit: led-tube-60, at: [4, 1], height: 2, aim: down, gels: [1/2 CTO], circuit: ring}\n"
	before, _ := fixture.SetupsOf(t, text)
	now, _ := fixture.SetupsOf(t, strings.Replace(text, "setups:", more+"setups:", 1))
	since, ins := heldTo(before, now)
	doc, _ := Compose(ins, Options{Packet: true, Since: since, Font: fixture.Family(t)})
	want := map[string][]string{".kit": {"was 1", "was 2", "was 2", "was 1", "new"}, ".circuits": nil}
	rows := map[string]int{".kit": 5, ".circuits": 3} // the tube, its stand, its bag and its stud, and the other gel below; the ring at its worst and in each set-up
	for i := range doc.Pages {
		p := &doc.Pages[i]
		if _, is := want[p.Name]; !is {
			continue
		}
		var said []string
		for k := range p.Items {
			if text := p.Items[k].Text; text != nil && (text.S == "new" || strings.HasPrefix(text.S, "was ")) {
				said = append(said, text.S)
			}
		}
		if n := bars(p); n != rows[p.Name] || !slices.Equal(said, want[p.Name]) {
			t.Errorf("%s has %d bars and says %q, want %d and %q", p.Name, n, said, rows[p.Name], want[p.Name])
		}
		delete(want, p.Name)
	}
	for name := range want {
		t.Errorf("there is no page %s", name)
	}
}

// TestACloudIsRoundWhatItIsRound: its line keeps off what it is about by more than it is thick, on all sides.
func TestACloudIsRoundWhatItIsRound(t *testing.T) {
	in := fixture.Example()
	was, _ := earlier(in.Setup)
	in.Since = section.SinceOf("A", was, in.Setup, nil)
	s := sheetFor(t, in, Options{Font: fixture.Family(t), Paper: "A3"})
	table := s.d.In.Setup.PieceNamed("table")
	v := s.fitter.View(&s.layout)
	corners := box.Corners(box.Around([]r2.Box{{Min: v.Paper(table.Parts[0].Outline[0]), Max: v.Paper(table.Parts[0].Outline[2])}}))
	cloud := revisedOn(&s.pages[0])["revision:furniture:table"]
	if len(cloud) != 1 {
		t.Fatalf("%d clouds round the table", len(cloud))
	}
	for _, piece := range piecesOf(cloud[0]) {
		for i := range corners {
			if d := carto.Distance(corners[i], piece[0], piece[1]); d < draw.Thin {
				t.Errorf("the cloud comes within %.2f mm of a corner of the table", d)
			}
		}
		if carto.Overlap(piece, corners) {
			t.Errorf("the cloud runs over the table at %v", piece)
		}
	}
}

// TestRevisionsCountUp in letters and figures.
func TestRevisionsCountUp(t *testing.T) {
	for is, want := range map[string]string{"": "A", "A": "B", "b": "c", "Z": "AA", "AZ": "BA", "ZZ": "AAA", "1": "2", "09": "10", "B2": "B3", "rev Z": "rev AA", "draft!": "", "4294967295": "4294967296", "99999999999999999999": ""} {
		if got := NextRevision(is); got != want {
			t.Errorf("after %q comes %q, want %q", is, got, want)
		}
	}
}

// TestTheLetterIsHeldToWhatDiffers: the same letter though something differs, an earlier one, and another though nothing does.
func TestTheLetterIsHeldToWhatDiffers(t *testing.T) {
	lettered := func(revision string) *plan.Setup {
		return &plan.Setup{Scene: &scene.Scene{Sheet: scene.Sheet{Revision: scene.Given[string]{Value: revision, Set: revision != ""}}}}
	}
	for _, c := range []struct {
		was, is string
		differs bool
		want    string
	}{
		{"A", "A", true, "this differs from the sheet before, and bears the same revision, A; the next is B: write sheet: {revision: B}"},
		{"", "", true, "this differs from the sheet before, and neither has a revision; the next is A: write sheet: {revision: A}"},
		{"final!", "final!", true, "this differs from the sheet before, and bears the same revision, final!; give it another"},
		{"B", "A", true, "revision A comes before B of the sheet that this is held to; is the order of the two files right?"},
		{"A", "", true, "this differs from the sheet before, which is revision A, and has no revision; the next is B: write sheet: {revision: B}"},
		{"final!", "", true, "this differs from the sheet before, which is revision final!, and has no revision; give it another"},
		{"A", "B", false, "nothing differs from the sheet before but the revision, B after A; "},
		{"A", "", false, "nothing differs from the sheet before but the revision, none after A; "},
		{"A", "B", true, ""}, {"A", "A", false, ""}, {"", "", false, ""}, {"", "A", true, ""},
	} {
		since := NewSince(true)
		since.Add(lettered(c.was))
		got := ""
		for _, d := range since.CheckRevision(lettered(c.is), c.differs) {
			got += d.Message + "; " + d.Hint
		}
		if got != c.want {
			t.Errorf("%q after %q says %q, want %q", c.is, c.was, got, c.want)
		}
	}
}

// TestOneSetupIsHeldToOne whatever the two are called; of several by their names.
func TestOneSetupIsHeldToOne(t *testing.T) {
	a, b := &plan.Setup{Name: "a"}, &plan.Setup{Name: "b"}
	for only, want := range map[bool]*plan.Setup{true: a, false: nil} {
		since := NewSince(only)
		since.Add(a)
		if got := since.Named("b"); (got == nil) != (want == nil) {
			t.Errorf("with one set-up each (%v) b is held to %v", only, got)
		}
		if got := since.Differs(b); got == only {
			t.Errorf("with one set-up each (%v) b differs: %v", only, got)
		}
		if gone := since.Gone([]string{"b"}); (len(gone) == 0) != only {
			t.Errorf("with one set-up each (%v) %v is gone", only, gone)
		}
	}
	if lines := change.Revision(change.OnPaper(a), change.OnPaper(b)); len(lines) > 0 {
		t.Errorf("of empty set-ups %v is revised", lines)
	}
}

// walled is a room with a thing of every sort before and in its top wall.
const walled = `scrimshaw: 1
rooms: {den: {size: [5, 4], height: 2.6}, hut: {at: [5.15, 0], size: [2, 2]}}
openings: {bay: {window: den.top, along: 1, width: 1.5, sill: 0.9, head: 2}}
furniture: {desk: {table: [1.4, 0.7, 0.75], at: [3.8, 3.6]}}
people: {ada: {at: [2.5, 2.4]}}
lights: {one: {unit: led-panel-100, at: [0.8, 2.8], height: 2.1, aim: ada}, two: {unit: led-tube-60, at: [4.4, 1], height: 1.6, aim: ada}}
grip: {card: {card: [0.6, 0.6], at: [3.2, 2.5], height: 1.3}}
meters: {wall: {flat: [4.5, 4, 1.7], facing: 180}, top: {flat: [3.8, 3.4, 0.8], facing: up}}
`

// TestCloudsStandRoundWhatWasRevisedOnAWall, on it and before it, and round nothing else, with the outline of what is gone or stood elsewhere; where a length is
// written in feet, too.
func TestCloudsStandRoundWhatWasRevisedOnAWall(t *testing.T) {
	for _, c := range []struct{ was, is, want string }{
		{"4, 1.7]", "4, 1.7]", ""},
		{"width: 1.5", "width: 1.2", "opening:bay"},
		{"[0.8, 2.8], height: 2.1", "[1.3, 2.8], height: 6 ft", "light:one, was here"},
		{"two: {unit: led-tube-60", "two: {unit: led-panel-100", "light:two"},
		{", two: {unit: led-tube-60, at: [4.4, 1], height: 1.6, aim: ada}", "", "light:two, was here"},
		{", two:", ", three: {unit: led-tube-60, at: [3, 1], height: 1, aim: up}, two:", "light:three"}, // and a number
		{"at: [3.8, 3.6]", "at: [3.5, 3.6]", "furniture:desk, was here"},
		{"at: [2.5, 2.4]}", "at: [2.5, 2.4], height: 1.6}", "grip:card; light:one; light:two; person:ada"},
		{"card: [0.6, 0.6]", "card: [0.9, 0.6]", "grip:card"},
		{"[4.5, 4, 1.7]", "[4.1, 4, 1.5]", "meter:wall, was here"},
		{"[3.8, 3.4, 0.8]", "[3.8, 3.2, 0.8]", ""}, // of the desk, not of the wall
		{"size: [5, 4]", "size: [4.7, 4]", "wall:den.top"},
		{"height: 2.6}", "height: 2.8}", "wall:den.top"},
		{"size: [2, 2]", "size: [2, 3]", ""}, // another room
		{", hut: {at: [5.15, 0], size: [2, 2]}", "", ""},
	} {
		before, _ := fixture.SetupOf(t, walled)
		now, _ := fixture.SetupOf(t, strings.Replace(walled, c.was, c.is, 1))
		in := Input{Setup: now, Elevation: &Elevation{Room: "den", Wall: "top"}, Since: section.SinceOf("A", before, now, nil)}
		s := sheetFor(t, in, Options{Font: fixture.Family(t)})
		marks := revisedOn(&s.pages[0])
		var got []string
		for _, object := range slices.Sorted(maps.Keys(marks)) {
			said := strings.TrimPrefix(object, "revision:")
			if slices.ContainsFunc(marks[object], func(it *ink.Item) bool { return len(it.Stroke.Dash) > 0 }) {
				said += ", was here"
			}
			got = append(got, said)
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%q for %q has clouds %q, want %q", c.is, c.was, strings.Join(got, "; "), c.want)
		}
	}
}

// TestARoomThatIsGoneHasACloud as far as it lies on the paper, and its outline of then.
func TestARoomThatIsGoneHasACloud(t *testing.T) {
	before, _ := fixture.SetupOf(t, walled)
	now, _ := fixture.SetupOf(t, strings.Replace(walled, ", hut: {at: [5.15, 0], size: [2, 2]}", "", 1))
	in := Input{Setup: now, Since: section.SinceOf("A", before, now, nil)}
	s := sheetFor(t, in, Options{Font: fixture.Family(t), Paper: "A3"})
	v := s.fitter.View(&s.layout)
	marks := revisedOn(&s.pages[0])["revision:room:hut"]
	if len(marks) != 2 || len(marks[0].Stroke.Dash) == 0 {
		t.Fatalf("round the hut that is gone there are %d marks, want its outline and a cloud", len(marks))
	}
	if around := marks[1].Bounds(nil).Box; !box.Contains(around, v.Paper(r2.Vec{X: 5.4, Y: 1})) {
		t.Errorf("the cloud is at %v, and the hut stood at %v", around, v.Paper(r2.Vec{X: 5.4, Y: 1}))
	}
}
