package meter

import (
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// Of a cue the key and the fill of each face are listed, what domes read there, and the meters.
func TestWhatCuesList(t *testing.T) {
	for _, c := range []struct {
		r     Reading
		lists bool
	}{
		{Reading{Name: "ada.key", Person: "ada", Kind: term.FlatMeter}, true}, {Reading{Name: "ada.fill", Person: "ada", Kind: term.FlatMeter}, true},
		{Reading{Name: "ada.dome.A", Person: "ada", Kind: term.DomeMeter}, true}, {Reading{Name: "table", Kind: term.FlatMeter}, true},
		{Reading{Name: "ada.hair", Person: "ada", Kind: term.FlatMeter}, false}, {Reading{Name: "ada.sit.key", Person: "ada", Kind: term.FlatMeter}, false},
	} {
		if CueLists(&c.r) != c.lists {
			t.Errorf("%s is listed: %v", c.r.Name, !c.lists)
		}
	}
}

// A cue says when it goes and how long it takes, and what each of its lights does, in the words that a crew reads.
func TestCuesInWords(t *testing.T) {
	for want, q := range map[string]*plan.Cue{
		"q1, at 12.5 s, over 4 s": {Name: "q1", Seconds: stops(12.5), Over: 4}, "q2, she sits, snap": {Name: "q2", At: "she sits"}, "q3, over 1 s": {Name: "q3", Over: 1},
	} {
		if got := CueHeading(q); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	for _, c := range []struct {
		from, to CueSetting
		want     string
	}{
		{CueSetting{Level: 0.35, Kelvin: stops(3000)}, CueSetting{}, "35 % → off"},
		{CueSetting{}, CueSetting{Level: 0.5, Kelvin: stops(3200)}, "off → 50 %, 3200 K"},
		{CueSetting{Level: 0.3, Kelvin: stops(2450)}, CueSetting{Level: 0.12, Kelvin: stops(2210)}, "30 % → 12 %, 2450 K → 2210 K"},
		{CueSetting{Level: 0.3, Kelvin: stops(5600)}, CueSetting{Level: 0.6, Kelvin: stops(5600)}, "30 % → 60 %"},
		{CueSetting{Level: 1, Kelvin: stops(5600)}, CueSetting{Level: 1, Kelvin: stops(3200)}, "5600 K → 3200 K"},
		{CueSetting{Level: 1}, CueSetting{Level: 1}, "another white"},
	} {
		if got := (&CueMove{From: c.from, To: c.to}).Words(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	for rate, want := range map[float64]string{4: "4 /s", 1: "1 /s", 0.5: "once in 2 s", 0.2: "once in 5 s"} {
		if got := RateWords(rate); got != want {
			t.Errorf("a rate of %v is %q, want %q", rate, got, want)
		}
	}
}

// The table has a block for the state before all cues and one for each: what the lights do, and what that does to readings.
func TestCuesAsATable(t *testing.T) {
	key := func(lux, over float64) Reading {
		return Reading{Name: "ada.key", Lux: &lux, Footcandles: &lux, Stop: stops(2.8284), Over: &over, CCT: stops(3200)}
	}
	filtered := key(250, 1)
	filtered.Uncomputed = []plan.Uncomputed{uncomputed(scene.Later{Changes: scene.OwnStops}, "cameras.A.filter", "filter of A")}
	c := Cues{States: []CueState{
		{Readings: []CueReading{{Reading: key(125, 0), Side: "left"}}},
		{Cue: &plan.Cue{Name: "q1", Over: 2}, Moves: []CueMove{{Numbered: "1 day", From: CueSetting{Level: 0.5}, To: CueSetting{Level: 1}}},
			Readings: []CueReading{{Reading: filtered, Side: "right", Change: stops(1)}, {Reading: Reading{Name: "table"}}}}}}
	const want = `before the cues
  reading   light  T-stop  over  change     CCT  Duv
  ada.key  125 lx    T2.8   0.0          3200 K       own left
cue q1, over 2 s
  1 day: 50 % → 100 %
  reading   light  T-stop    over  change     CCT  Duv
  ada.key  250 lx  ✗ T2.8  ✗ +1.0  ✗ +1.0  3200 K       own right
  table                                 –
`
	var b strings.Builder
	c.table(&b)
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", &b, want)
	}
}

// A light that plays is listed at the readings that it shows in, at its lowest, in the mean and at its highest; where it shows in none
// that is said.
func TestPlaysAsATable(t *testing.T) {
	at := func(name string, lux, over float64) Reading {
		return Reading{Name: name, Lux: &lux, Footcandles: &lux, Stop: stops(2.8284), Over: &over}
	}
	p := Played{Numbered: "2 fire", Play: &plan.Play{Kind: term.Fire, Rate: 4}, Low: 0.2, High: 0.6, Cue: "q2", Readings: []PlayedReading{
		{at("table", 100, 0), at("table", 100, 0), at("table", 101, 0.01)},
		{at("ada.key", 25, -2.25), at("ada.key", 50, -1.25), at("ada.key", 75, -0.65)},
		{Reading{Name: "wall"}, at("wall", 2, -3), at("wall", 4, -2)},
	}}
	const want = `2 fire plays fire from 20 % to 60 %, 4 /s, after q2
  reading   lowest  T-stop     mean  T-stop  highest  T-stop  stops
  ada.key  25.0 lx    T2.8  50.0 lx    T2.8  75.0 lx    T2.8    1.6
  wall                      2.00 lx    T2.8  4.00 lx    T2.8      –
`
	var b strings.Builder
	p.table(&b)
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", &b, want)
	}
	p.Readings, p.Cue, p.Low, p.Play.Rate = p.Readings[:1], "", 0, 0.25
	b.Reset()
	p.table(&b)
	if got, want := b.String(), "2 fire plays fire from off to 60 %, once in 4 s\n  no reading shows it\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	dark := PlayedReading{Low: at("table", 1, -7)}
	if dark.SpanWords() != "–" {
		t.Errorf("as it goes dark it changes by %s", dark.SpanWords())
	}
}
