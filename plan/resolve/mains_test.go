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

// The mains of a light have the frequency of its circuit, else that of the scene's lengths, which is said where it decides anything;
// on a battery a filament is steady.
func TestHertzOfMains(t *testing.T) {
	for _, c := range []struct {
		name, scene string
		hertz       float64
		assumed     bool
	}{
		{"metres", ``, 50, true},
		{"feet", `units: ft`, 60, true},
		{"its circuit", `circuits: {ring: {breaker: 16, hertz: 60}}`, 60, false},
		{"a generator that drifts", `circuits: {ring: {breaker: 16, hertz: 52, kind: generator}}`, 52, false},
		{"another circuit", `circuits: {ring: {breaker: 16, hertz: 60}, far: {breaker: 16, hertz: 50}}`, 60, false},
		{"a battery", `circuits: {ring: {breaker: 16, kind: battery}}`, 0, false},
	} {
		circuit := ""
		if strings.Contains(c.scene, "ring") {
			circuit = ", circuit: ring"
		}
		setup := resolved(t, c.scene+"\nlights: {l: {unit: practical-bulb, bulb: led-806, at: [1, 1], height: 1, level: 50 %, dimmer: phase"+circuit+"}}\n")
		l := &setup.Lights[0]
		if l.Hertz != c.hertz || l.Ripple.Hertz != 2*c.hertz || l.Ripple.Steady() != (c.hertz == 0) {
			t.Errorf("%s: %g Hz, %+v", c.name, l.Hertz, l.Ripple)
		}
		told := false
		for _, a := range setup.Assumed {
			told = told || a.What == "mains"
		}
		if told != c.assumed {
			t.Errorf("%s: mains are assumed: %t", c.name, told)
		}
	}
}
