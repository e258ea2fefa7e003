package resolve

import (
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// What is wrong with circuits is an error with the fix.
func TestCircuitFaults(t *testing.T) {
	const lamp = "lights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, circuit: a}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"no breaker", "circuits: {a: {volts: 230}}\n", "nothing says what a carries (add breaker:, as breaker: 16)"},
		{"an item without amps", "circuits: {a: {item: gaffer-tape}}\n", "nothing says what a carries (add breaker:, as breaker: 16)"},
		{"no such item", "circuits: {a: {item: generator-200}}\n", `the kit has no item "generator-200" (did you mean "generator-2000"?)`},
		{"a ring", "circuits: {a: {breaker: 16, from: b}, b: {breaker: 16, from: a}}\n", "circuits feed each other: a from b (take from: off the one that nothing here feeds)"},
		{"by nothing", "circuits: {a: {breaker: 16, from: hoose}, house: {breaker: 63}}\n", `nothing is called hoose, where a circuit belongs (did you mean "house"?)`},
		{"two phases", "circuits: {a: {breaker: 16, phases: 2}}\n", "a circuit has one phase or three (write phases: 3, or make each of the two a circuit)"},
		{"volts between phases", "circuits: {a: {breaker: 16, phases: 3, volts: 400}}\n", "400 V is the voltage between two phases, and here that from one to the neutral belongs (write the volts from one phase to the neutral, as volts: 230)"},
		{"three from one", "circuits: {house: {breaker: 63}, a: {breaker: 16, phases: 3, from: house}}\n", "a has three phases, and house, which feeds it, one (feed it from one of three phases, or leave out phases:)"},
		{"a phase of one", "circuits: {house: {breaker: 63}, a: {breaker: 16, phase: L1, from: house}}\n", "a is on no phase of its own: nothing with three phases feeds it, or it has all of them (leave it out, or write phases: 3 into what feeds it)"},
		{"no phase of three", "circuits: {house: {breaker: 63, phases: 3}, a: {breaker: 16, from: house}}\n", "house has three phases, and nothing says on which of them a is (add phase: L1, L2 or L3)"},
		{"a light on three", "circuits: {a: {breaker: 16, phases: 3}}\n" + lamp, "a has three phases, and a light is on one of them (write a circuit with from: a and phase: L1, and put the light on that)"},
		{"as it should be", "circuits: {house: {breaker: 63, phases: 3}, a: {from: house, phase: L3}}\n" + lamp, ""},
	} {
		log := &source.Log{}
		doc := opened(t, c.scene, log)
		Resolve(doc, doc.Base(log), log)
		var told []string
		for _, d := range log.All() {
			if d.Severity == source.Error {
				told = append(told, d.Message+" ("+d.Hint+")")
			}
		}
		if got := strings.Join(told, "\n"); got != c.want {
			t.Errorf("%s: told\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}
