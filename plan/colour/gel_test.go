package colour

import (
	"math"
	"testing"
)

// What is before the lens makes of that light the white again that it came from.
func TestBeforeLensUndoesTheFilters(t *testing.T) {
	for _, stack := range [][]Filter{
		{{Mired: 1e6/3200.0 - 1e6/5600, Transmittance: 0.55}},
		{{Mired: -50, Duv: 0.008, Transmittance: 0.5}, {Mired: 20, Transmittance: 0.8}},
	} {
		for _, w := range []White{{Kelvin: 3200}, {Kelvin: 4300, Duv: 0.002}, {Kelvin: 5600, Daylight: true}} {
			before, held := BeforeLens(w, stack)
			after, want := ThroughGels(before, stack).White, w.OnPlanck()
			if held || !(math.Abs(Mired(after.Kelvin)-Mired(want.Kelvin)) <= 1e-6) || !(math.Abs(after.Duv-want.Duv) <= 1e-9) {
				t.Errorf("%v comes through as %v, held %v", w, after, held)
			}
		}
	}
	tungsten, _ := BeforeLens(White{Kelvin: 3200}, []Filter{{Mired: 1e6/3200.0 - 1e6/5600, Transmittance: 0.55}})
	if !(math.Abs(tungsten.Kelvin-5600) <= 1e-6) {
		t.Errorf("behind a full conversion a camera at 3200 K sees %g K as white", tungsten.Kelvin)
	}
	daylight := White{Kelvin: 5600, Daylight: true}
	if same, held := BeforeLens(daylight, []Filter{{Transmittance: 0.25}}); same != daylight || held {
		t.Errorf("an ND makes %v of %v", same, daylight)
	}
	if _, held := BeforeLens(White{Kelvin: 10000}, []Filter{{Mired: 200, Transmittance: 0.5}}); !held {
		t.Error("light of less than no mireds is white")
	}
}
