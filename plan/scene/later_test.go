package scene

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// keyed are the keys of every table by the table's name.
func keyed() map[string]map[string]probe {
	held := map[string]map[string]probe{}
	for _, table := range tables() {
		own, ok := table.(interface{ probes() []probe })
		if !ok {
			continue
		}
		for _, p := range own.probes() {
			if held[p.table] == nil {
				held[p.table] = map[string]probe{}
			}
			held[p.table][p.key] = p
		}
	}
	return held
}

// Every line of the list is of a key that there is, once, with words that say more than the key does, and what it
// changes fits the map that it stands in.
func TestTheListOfLaterKeys(t *testing.T) {
	held := keyed()
	seen := map[string]bool{}
	fits := map[Change][]string{
		OwnLight: {"light"}, OpeningLight: {"opening"}, SkyLight: {"site"},
		AllLight: {"scene"}, OwnStops: {"camera"},
	}
	for _, l := range laters {
		name := l.Table + "/" + l.Key
		if _, known := held[l.Table][l.Key]; !known {
			t.Errorf("%s: there is no such key", name)
		}
		if seen[name] {
			t.Errorf("%s stands twice in the list", name)
		}
		seen[name] = true
		if len(l.Waits) < 5 || l.Waits == l.Key {
			t.Errorf("%s waits for %q, which says nothing", name, l.Waits)
		}
		if tables := fits[l.Changes]; l.Changes != NoFigure && !slices.Contains(tables, l.Table) {
			t.Errorf("%s is no key of %v", name, tables)
		}
	}
}

// The tables say of the keys of the list, and of no others, that they are not computed, and what to do meanwhile.
func TestTablesFollowTheList(t *testing.T) {
	for table, keys := range keyed() {
		for key, p := range keys {
			if listed := laterNamed(table, key) != nil; p.later != listed {
				t.Errorf("%s/%s: in the list %v, and the table says %v", table, key, listed, p.later)
			}
		}
	}
}

// A scene lists what it writes and nobody computes: of itself and of its set-up.
func TestUncomputedOfASetup(t *testing.T) {
	d := opened(t, `scrimshaw: 1
cameras: {A: {at: [3, 1], lens: 35 mm}}
lights: {k: {unit: led-point-300-bicolour, at: [0, 0]}}
grip: {f: {silver: [1, 1], at: [1, 1]}}
haze: 0.02
setups:
  wide: {}
  close: {after: wide, change: {strike: [f], lights: {k: {dimmer: pwm}}, site: {sky: clear}}}
`)
	for setup, want := range map[string]string{
		"":      "haze",
		"wide":  "haze",
		"close": "haze site.sky",
	} {
		var got []string
		for _, u := range d.Scene(setup, &source.Log{}).Uncomputed {
			got = append(got, u.Path)
			if u.Span.Text() != u.Key || u.Waits == "" {
				t.Errorf("%s stands at %q and waits for %q", u.Path, u.Span.Text(), u.Waits)
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("of %q: %v, want %s", setup, got, want)
		}
	}
}
