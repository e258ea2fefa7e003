package resolve

import (
	"strings"
	"testing"
)

// A light that names no circuit has the voltage of all of them, where they agree and each is known, whichever comes first.
func TestMainsOfALight(t *testing.T) {
	const high, low, battery = "ring: {breaker: 16, volts: 230}", "tap: {breaker: 20, hertz: 60}", "cells: {breaker: 20, kind: battery}"
	for circuits, want := range map[string]float64{
		high: 230, low: 120, battery: 0,
		high + ", wall: {breaker: 16, volts: 230}": 230,
		high + ", " + low:                          0, low + ", " + high: 0,
		high + ", " + battery: 0, battery + ", " + high: 0,
	} {
		for circuit, want := range map[string]float64{"": want, ", circuit: ring": 230, ", circuit: tap": 120} {
			if circuit != "" && !strings.Contains(circuits, strings.TrimPrefix(circuit, ", circuit: ")) {
				continue
			}
			s := resolved(t, "circuits: {"+circuits+"}\nlights: {k: {output: {candela: 100, shape: uniform}, at: [0, 0], height: 2, aim: down"+circuit+"}}\n")
			if got := s.Lights[0].Mains; got != want {
				t.Errorf("{%s}%s: %g V, want %g", circuits, circuit, got, want)
			}
		}
	}
}
