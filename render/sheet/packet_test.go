package sheet

import (
	"context"
	"fmt"
	"maps"
	"math"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/light"
	"scrimshaw/plan/match"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/supply"
	"scrimshaw/render/list"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// oddDay is two set-ups of two rooms: in feet, on two floors, with two cameras, three people of whom one lies and one is in one set-up alone, a circuit,
// and a set-up without anybody. Invented.
const oddDay = `scrimshaw: 1
title: The boat shed
units: ft
exposure: {iso: 800, fps: 24, shutter: 1/48, stop: T2.8, white: 4300 K, meter: dome}
rooms: {shed: {size: [16, 12], height: 9}, loft: {at: [17, 0], size: [9, 12], height: 8, base: 2}}
people: {anna: {at: [8, 7], faces: A}, bo: {at: [11, 8], pose: lying, faces: anna}}
cameras: {A: {at: [8, 1.5], looks: anna, lens: 35 mm}, B: {at: [3, 2], looks: anna, lens: 50 mm}}
circuits: {ring: {breaker: 16, at: {wall: shed.left, along: 2}}}
lights:
  key: {unit: soft-panel-200, at: [3, 5], height: 7, aim: anna, level: 60 %, colour: 4300 K, role: key, circuit: ring}
  top: {unit: fresnel-tungsten-300, at: [13, 3], height: 7, aim: anna}
setups:
  wide: {}
  close: {after: wide, change: {cameras: {A: {at: [8, 3], lens: 75 mm}}, lights: {key: {level: 20 %, colour: 5600 K}}, people: {cy: {at: [5, 10], faces: B}}}}
  empty: {after: close, change: {people: {anna: strike, bo: strike, cy: strike}, cameras: {A: {looks: [8, 7, 4]}, B: {looks: [8, 7, 4]}}, lights: {key: {aim: down}, top: {aim: down}}}}
`

// dayOf draws a scene as a day for a reader, each scene lit once.
func dayOf(t *testing.T, name, text string, o Options) ink.Document {
	t.Helper()
	if lit[name] == nil {
		setups, log := fixture.SetupsOf(t, text)
		for _, setup := range setups {
			s, err := study.Run(context.Background(), setup, study.Options{Fixed: true, Quality: light.Draft, Step: 0.2, AroundHeads: true})
			if err != nil {
				t.Fatal(err)
			}
			lit[name] = append(lit[name], Of(s, Options{Packet: true}))
		}
		if log.Failed() {
			t.Fatal(log.All())
		}
	}
	o.Packet, o.Font = true, fixture.Family(t)
	doc, found := Compose(lit[name], o)
	for _, d := range found {
		if d.Severity == source.Error || d.Code == "lettering-cut" {
			t.Errorf("%s for %q: %s", name, o.For, d.Message)
		}
	}
	return doc
}

// days are what the tests of a packet look at: a sample and an odd day.
func days(t *testing.T) map[string]string {
	t.Helper()
	text, err := samples.Text("two-sizes")
	if err != nil {
		t.Fatal(err)
	}
	return map[string]string{"two-sizes as a day": string(text), "an odd day": oddDay}
}

// TestPagesOfADayKeepTheRules: nothing meets, is lettered too small or leaves the frame, on any paper and in any look, but for the line at the foot.
func TestPagesOfADayKeepTheRules(t *testing.T) {
	for name, text := range days(t) {
		for _, o := range []Options{{}, {Paper: "A2", Theme: "night", For: forRental}, {Paper: "A4", Theme: "ink", For: forGrip}} {
			doc := dayOf(t, name, text, o)
			for i := range doc.Pages {
				p := &doc.Pages[i]
				kept := p.Items[:0:0]
				notChecked := 0
				for _, it := range p.Items {
					if it.Layer == ink.Ground {
						continue
					}
					if it.Text != nil && strings.HasPrefix(it.Text.S, "Not checked: ") {
						notChecked++
						continue
					}
					kept = append(kept, it)
				}
				if notChecked != 1 {
					t.Errorf("%s: %s says %d times what nobody has checked", name, p.Title, notChecked)
				}
				if p.Outline[0] == "Cover" || p.Outline[0] == "Matching" || p.Outline[0] == "Lists" {
					q := *p
					q.Items = kept
					checkPage(t, &q, fixture.Family(t))
				}
			}
		}
	}
}

// TestADayIsBound: cover, set-ups, matching and lists in their order; the contents name the sheet that each begins on, and all links lead somewhere.
func TestADayIsBound(t *testing.T) {
	for name, text := range days(t) {
		doc := dayOf(t, name, text, Options{})
		var order []string
		for _, p := range doc.Pages {
			if head := p.Outline[0]; len(order) == 0 || order[len(order)-1] != head {
				order = append(order, head)
			}
		}
		if order[0] != "Cover" || !slices.Equal(order[len(order)-2:], []string{"Matching", "Lists"}) || len(order) != 3+len(lit[name]) {
			t.Errorf("%s: the order is %v", name, order)
		}
		named := map[string]int{}
		for i, p := range doc.Pages {
			if _, twice := named[p.Name]; twice || p.Name == "" {
				t.Errorf("%s: two pages are called %q", name, p.Name)
			}
			named[p.Name] = i
			if sheet := fmt.Sprintf("%d / %d", i+1, len(doc.Pages)); !has(&doc.Pages[i], sheet) {
				t.Errorf("%s: page %d has no number", name, i+1)
			}
		}
		led := map[string]bool{}
		for i, p := range doc.Pages {
			for _, l := range p.Links {
				to, known := named[l.To]
				if !known {
					t.Errorf("%s: a link of %s leads to %q, which is no page", name, p.Title, l.To)
				}
				led[l.To] = true
				if i == 0 && !besideText(&p, l, fmt.Sprint(to+1)) {
					t.Errorf("%s: the contents do not say that %s begins on sheet %d", name, l.To, to+1)
				}
			}
		}
		for _, in := range lit[name] {
			if !led[in.Setup.Name] {
				t.Errorf("%s: nothing leads to %s", name, in.Setup.Name)
			}
		}
	}
}

// TestTheCoverHoldsWhatItCan: no page follows it that a smaller overview makes room for, and the contents name each person once.
func TestTheCoverHoldsWhatItCan(t *testing.T) {
	const name = "two-sizes as a day"
	doc := dayOf(t, name, days(t)[name], Options{})
	if doc.Pages[1].Outline[0] == "Cover" {
		t.Errorf("the cover takes two pages")
	}
	for _, want := range []string{"A 28 mm; mara, medium long shot; with tom; 2 lights", "Assumed in all set-ups"} {
		if !has(&doc.Pages[0], want) {
			t.Errorf("the cover does not say %q", want)
		}
	}
}

// TestTheFootNamesNoCoverThatIsNotThere: pages for a reader of one set-up have none.
func TestTheFootNamesNoCoverThatIsNotThere(t *testing.T) {
	const name = "an odd day"
	dayOf(t, name, oddDay, Options{})
	for _, packet := range []bool{true, false} {
		doc, _ := Compose(lit[name][:1], Options{Packet: packet, For: forElectric, Font: fixture.Family(t)})
		for i := range doc.Pages {
			foots := 0
			for _, it := range doc.Pages[i].Items {
				if it.Text != nil && strings.HasPrefix(it.Text.S, "Not checked: ") && strings.Contains(it.Text.S, "cover") == packet {
					foots++
				}
			}
			if foots != 1 {
				t.Errorf("packet %v: %s has %d feet that are right", packet, doc.Pages[i].Title, foots)
			}
		}
	}
}

// TestAmpsAreTheSameOnAllPages: what the page of circuits says a circuit carries is what the sheet of the set-up says, rounded up; what is left is rounded down.
func TestAmpsAreTheSameOnAllPages(t *testing.T) {
	const name = "an odd day"
	doc := dayOf(t, name, oddDay, Options{})
	circuits := slices.IndexFunc(doc.Pages, func(p ink.Page) bool { return strings.HasSuffix(p.Title, "Circuits") })
	sheet := slices.IndexFunc(doc.Pages, func(p ink.Page) bool { return p.Name == "wide" })
	load := supply.Of(lit[name][0].Setup).Loads[0]
	full := math.Ceil(10*load.Full) / 10
	for page, want := range map[int]string{circuits: fmt.Sprint(full), sheet: fmt.Sprint(full) + " A"} {
		if !has(&doc.Pages[page], want) {
			t.Errorf("%s does not say %q", doc.Pages[page].Title, want)
		}
	}
	if left := fmt.Sprint(math.Floor(10*(load.Circuit.Limit()-load.Full)) / 10); !has(&doc.Pages[circuits], left) {
		t.Errorf("the page of circuits does not say that %s A are left", left)
	}
}

// besideText says whether some text stands within a link.
func besideText(p *ink.Page, l ink.Link, s string) bool {
	return slices.ContainsFunc(p.Items, func(it ink.Item) bool {
		return it.Text != nil && it.Text.S == s && it.Text.At.X > l.Min.X && it.Text.At.X < l.Max.X && it.Text.At.Y > l.Min.Y && it.Text.At.Y < l.Max.Y
	})
}

// TestReadersGetTheirPages: each has what is listed for them, and nothing of the rest.
func TestReadersGetTheirPages(t *testing.T) {
	for reader, want := range map[string]struct{ with, without []string }{
		forElectric: {[]string{"Kit", "Lamps", "Circuits", "Set-up wide", "Illuminance on the floor", "unit", "cable", "bags"}, []string{"Matching", "bag", "rate", "or equal"}},
		forGrip:     {[]string{"Kit", "Set-up wide", "stand"}, []string{"Circuits", "Cues", "Lamps", "Matching", "Illuminance on the floor", "key side", "600 W LED point", "unit", "rate"}},
		forCamera:   {[]string{"Matching", "Set-up wide", "key side, stops over"}, []string{"Circuits", "Kit", "Lamps"}},
		forRental:   {[]string{"Kit", "Lamps", "rate"}, []string{"tilt°", "place", "next", "Matching", "Illuminance on the floor", "Grip"}},
		forClass:    {[]string{"Set-up wide", "Matching"}, []string{"Kit", "Lamps"}},
	} {
		doc := dayOf(t, "an odd day", oddDay, Options{For: reader})
		said := map[string]bool{}
		for i := range doc.Pages {
			for _, it := range doc.Pages[i].Items {
				if it.Text != nil {
					said[it.Text.S] = true
				}
			}
		}
		if !said[reader] {
			t.Errorf("the title blocks for %s do not say so", reader)
		}
		lacks := slices.ContainsFunc(slices.Collect(maps.Keys(said)), func(s string) bool { return strings.HasPrefix(s, "The volume is without") })
		if lacks != (reader == forRental) {
			t.Errorf("%s reads what the volume of all the van is without: %v", reader, lacks)
		}
		for _, s := range want.with {
			if !said[s] {
				t.Errorf("%s is without %q", reader, s)
			}
		}
		for _, s := range want.without {
			if said[s] {
				t.Errorf("%s has %q, too", reader, s)
			}
		}
	}
}

// TestSequencesAreNamedOnTheirSheets: a set-up says on its own sheet which it is cut together with, in metres and in feet, and Matching holds faces to the first
// of their sequence alone. The only lamp of the den goes from 40 % to 10 %, which is two stops.
func TestSequencesAreNamedOnTheirSheets(t *testing.T) {
	const den = `scrimshaw: 1
UNITS
exposure: {stop: T2.8, white: 4300 K}
people: {ada: {at: [9, 8], faces: A}}
cameras: {A: {at: [9, 2], looks: ada, lens: 35 mm}}
lights: {key: {unit: soft-panel-200, at: [4, 5], height: 7, aim: ada, level: 40 %, colour: 4300 K}}
setups: {one: {sequence: noon}, two: {after: one, change: {lights: {key: {level: 10 %}}}}, three: {after: one, sequence: night, change: {lights: {key: {level: 5 %}}}}}
`
	for _, units := range []string{"", "units: ft"} {
		doc := dayOf(t, "in sequences", strings.Replace(den, "UNITS", units, 1), Options{})
		said := map[string]int{}
		for i := range doc.Pages {
			for _, it := range doc.Pages[i].Items {
				if it.Text != nil {
					said[it.Text.S]++
				}
			}
		}
		for words, want := range map[string]bool{"Sequence noon": true, "Sequence night": true, "Sequence noon: ada, held to one": true, "Sequence night: ada, held to three": false, "1 key: level 40 %, was 10 %": true} {
			if (said[words] > 0) != want {
				t.Errorf("%q: %q is said %d times", units, words, said[words])
			}
		}
		if said["Sequence noon"] < 2 || said["Sequence night"] != said["Sequence noon"]/2 {
			t.Errorf("%q: sheets of two set-ups by noon, and one by night: %d, %d", units, said["Sequence noon"], said["Sequence night"])
		}
	}
}

// TestNoTwoPagesOfADayHaveOnePlaceInTheOutline: what runs over several pages has one entry and its further pages below it.
func TestNoTwoPagesOfADayHaveOnePlaceInTheOutline(t *testing.T) {
	for name, text := range days(t) {
		for _, reader := range append(ReaderNames(), "") {
			doc := dayOf(t, name, text, Options{For: reader, Paper: "A4"})
			for i := range doc.Pages {
				if twin := slices.IndexFunc(doc.Pages, func(p ink.Page) bool { return slices.Equal(p.Outline, doc.Pages[i].Outline) }); twin != i {
					t.Errorf("%s for %q: pages %d and %d are both %v", name, reader, twin+1, i+1, doc.Pages[i].Outline)
				}
			}
		}
	}
}

// TestFramesForStillsAreNamed: who finds an empty frame on the page of faces reads what it is for, and where the frames gave way nobody does. A day has
// them where one page holds all of its faces with them.
func TestFramesForStillsAreNamed(t *testing.T) {
	alone := strings.NewReplacer(", bo: {at: [11, 8], pose: lying, faces: anna}", "", ", bo: strike", "").Replace(oddDay)
	for name, text := range map[string]string{"an odd day": oddDay, "an odd day of one": alone} {
		doc := dayOf(t, name, text, Options{For: forCamera})
		for i := range doc.Pages {
			p := &doc.Pages[i]
			if frames := name == "an odd day of one"; p.Outline[0] == "Matching" && has(p, "The empty frames are for a still of each set-up.") != frames {
				t.Errorf("%s: %s has frames: %v, and says something else", name, p.Name, frames)
			}
		}
	}
}

// TestMatchingIsOfTheReadings: a column says the stops of the key and of the fill side that the face has in its set-up, and frames what lies more than a
// third of a stop from the first.
func TestMatchingIsOfTheReadings(t *testing.T) {
	dayOf(t, "an odd day", oddDay, Options{})
	var digests []section.Digest
	for i := range lit["an odd day"] {
		digests = append(digests, section.DigestOf(&lit["an odd day"][i]))
	}
	matched := section.Matching(digests)
	if faces := matched.Faces; len(faces) == 0 || faces[0].Person != "anna" || len(faces[0].Columns) != 4 || len(matched.Alone) != 1 || matched.Alone[0] != "In one set-up alone: cy (close)." {
		t.Fatalf("matched %v", matched)
	}
	overs := func(setup int) [2]float64 {
		f := lit["an odd day"][setup].Faces[0]
		return [2]float64{*f.Key.Over, *f.Fill.Over}
	}
	first, second := overs(0), overs(1)
	for i, c := range matched.Faces[0].Columns {
		want := first
		if i >= 2 {
			want = second
		}
		for k := range want {
			if said := strings.TrimPrefix(strings.Replace(c.Cells[k].Text, "−", "-", 1), "+"); said != fmt.Sprintf("%.1f", want[k]) {
				t.Errorf("column %d says %s of side %d, and it is %.2f", i, said, k, want[k])
			}
			if off := math.Abs(want[k]-first[k]) > 1.0/3; off != c.Cells[k].Off {
				t.Errorf("column %d: side %d is %.2f off, framed: %v", i, k, want[k]-first[k], c.Cells[k].Off)
			}
		}
		fixes := slices.DeleteFunc(slices.Clone(c.Fix), func(fix string) bool { return strings.HasPrefix(fix, "behind ") })
		if shifted := i >= 2; shifted != c.Cells[match.KeyColour].Off || shifted != (len(fixes) > 0) {
			t.Errorf("column %d: %+v, to match %v", i, c.Cells, c.Fix)
		}
	}
}

// TestSetUpsAreLetGo: of each set-up of a day little more than its pages stays, and those folded. What is kept of one is the same whether it is the
// third or the eighth.
func TestSetUpsAreLetGo(t *testing.T) {
	dayOf(t, "an odd day", oddDay, Options{})
	live := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	r := NewRun(Options{Packet: true, Font: fixture.Family(t)})
	r.Add(lit["an odd day"][0])
	for _, more := range []uint64{2, 5} {
		const most = 64 << 10
		was := live()
		for range more {
			r.Add(lit["an odd day"][0])
		}
		if now := live(); now > was+more*most {
			t.Errorf("%d set-ups more keep %d kB each, at most %d", more, (now-was)/more>>10, most>>10)
		}
	}
	runtime.KeepAlive(r)
}

// The sheets of a run are folded, and come out as those of Compose do, which lie open.
func TestRunsFoldTheirSheets(t *testing.T) {
	in := sampleInputs(t, "napkin")[0]
	o := Options{Font: fixture.Family(t)}
	open, _ := Compose([]Input{in, in}, o)
	r := NewRun(o)
	r.Add(in)
	r.Add(in)
	r.Redraw(0, in)
	folded, _ := r.Document()
	for i := range open.Pages {
		if n := len(open.Pages[i].Items); n < 20 {
			t.Errorf("page %d of Compose has %d marks open, want all", i+1, n)
		}
		if n := len(folded.Pages[i].Items); n > 20 {
			t.Errorf("page %d holds %d marks open, want its title block alone", i+1, n)
		}
		if !reflect.DeepEqual(folded.Pages[i].Strata(), open.Pages[i].Strata()) {
			t.Errorf("page %d is written otherwise", i+1)
		}
	}
	strips, lying := NewStripRun(o, 1), Strips([]Input{in}, o, 1)
	strips.Add(in)
	if kept := strips.Document(1).Pages[1]; len(kept.Items) > 0 || len(lying.Pages[1].Items) < 20 || !reflect.DeepEqual(kept.Strata(), lying.Pages[1].Strata()) {
		t.Errorf("a strip has %d marks open, and is written otherwise than one that lies open", len(kept.Items))
	}
}

// TestEveryListOfADayHasItsReaderAndItsTable: a list has a table of its name, whose columns it takes, and a reader; one that stands on the pages of
// another names it, and a reader names no list that is not there.
func TestEveryListOfADayHasItsReaderAndItsTable(t *testing.T) {
	names := map[string]bool{}
	for _, l := range dayLists() {
		names[l.name] = true
	}
	read := map[string]bool{}
	for _, r := range readers() {
		for _, name := range r.lists {
			read[name] = true
			if !names[name] {
				t.Errorf("the reader %q reads %s, which is no list of a day", r.name, name)
			}
		}
	}
	for _, l := range dayLists() {
		if !read[l.name] || l.on != "" && !names[l.on] {
			t.Errorf("nobody reads %s, or there is no list %q whose pages it stands on", l.name, l.on)
		}
		table := tableOf(list.New(), l.name)
		for _, c := range l.columns {
			for _, key := range c.keys {
				if !slices.ContainsFunc(table.Columns, func(c list.Column) bool { return c.Key == key }) {
					t.Errorf("%s has no column %s in its table %q", l.name, key, table.Name)
				}
			}
		}
	}
}
