package list_test

import (
	"fmt"
	"slices"
	"testing"
)

// Dimmers by hand: of each class the set-up with most of it, and all together are those of one set-up, not the sum of the classes. A lamp at full
// takes none, nor does a light of diodes; one without a circuit has no amperes that are known.
func TestDimmersByHand(t *testing.T) {
	d := dayOf(t, `scrimshaw: 1
circuits: {ring: {breaker: 63, volts: 230}}
lights:
  a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: ring, count: 3, level: 50 %}
  b: {unit: fresnel-tungsten-2000, at: [2, 0], height: 2, aim: down, circuit: ring}
  c: {unit: fresnel-tungsten-1000, at: [4, 0], height: 2, aim: down, level: 40 %}
  d: {unit: led-panel-100, at: [6, 0], height: 2, aim: down, circuit: ring, level: 50 %}
setups:
  one: {}
  two: {after: one, change: {lights: {a: {count: 1}, b: {level: 30 %}, c: {level: 100 %}}}}
  three: {after: two, change: {lights: {a: {count: 3}, c: strike}}}
`)
	var got []string
	for r := range d.Dimmers.Rows {
		line := ""
		for _, key := range []string{"what", "name", "ampsEach", "count", "setup", "numbers", "watts", "amps"} {
			line += d.Dimmers.Said(r, d.Dimmers.At(key)) + "|"
		}
		got = append(got, line)
	}
	// Three of 650 W and one of 1000 W in the first, which is on no circuit; 3 × 650 W and 2000 W at 230 V in the last: 17.18 A, up to a hundredth.
	want := []string{"dimmer 1 kW|dimmer-1000|4.5|4|one|1, 3|2950|–|", "dimmer 2 kW|dimmer-2000|9|1|two|2|2000|8.7|", "all together||–|4|three|1, 2|3950|17.18|"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	one := dayOf(t, "scrimshaw: 1\nlights: {a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, level: 50 %}}\n")
	if n := len(one.Dimmers.Rows); n != 1 {
		t.Errorf("one class has %d rows", n)
	}
}

// The van has as many dimmers of each class as are in use at one time, whichever list says it.
func TestDimmersAreThoseOfTheKit(t *testing.T) {
	for level := 10; level <= 100; level += 45 {
		d := dayOf(t, fmt.Sprintf(`scrimshaw: 1
lights:
  a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, count: 3, level: %d %%}
  b: {unit: practical-table, bulb: tungsten-60, at: [2, 0], count: 2, level: 100 %%}
setups: {one: {}, two: {after: one, change: {lights: {b: {level: 30 %%}, a: {count: 2}}}}}
`, level))
		inVan := map[string]string{}
		for r := range d.Kit.Rows {
			if d.Kit.Said(r, d.Kit.At("shelf")) == "dimmer" {
				inVan[d.Kit.Said(r, d.Kit.At("what"))] = d.Kit.Said(r, d.Kit.At("count"))
			}
		}
		for r := range d.Dimmers.Rows {
			what, count := d.Dimmers.Said(r, d.Dimmers.At("what")), d.Dimmers.Said(r, d.Dimmers.At("count"))
			if what != "all together" && inVan[what] != count {
				t.Errorf("at %d %%: %s of %s, and %s in the van", level, count, what, inVan[what])
			}
			delete(inVan, what)
		}
		if len(inVan) > 0 {
			t.Errorf("at %d %%: %v are in the van alone", level, inVan)
		}
	}
}
