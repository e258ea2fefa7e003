package section

import (
	"testing"

	"scrimshaw/plan/meter"
)

// A reading that the engine knows less closely than to a tenth of a stop is named.
func TestUncertainReadingsAreNamed(t *testing.T) {
	known := func(name string, off float64) *meter.Reading {
		return &meter.Reading{Name: name, Error: &off}
	}
	dark := &meter.Reading{}
	for want, readings := range map[string][]*meter.Reading{
		"":                                      {known("ada.key", 0.069), dark},
		"Known less closely: ada.fill to ±9 %.": {known("ada.key", 0.01), known("ada.fill", 0.09)},
		"Known less closely than ±7 %: 2 readings, noor.key to ±12 %.": {known("noor.key", 0.12), known("ada.fill", 0.07), dark},
	} {
		if got := uncertain(readings); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestColumnsHaveAsManyPlaces: the stops of a column are all to a tenth.
func TestColumnsHaveAsManyPlaces(t *testing.T) {
	for v, want := range map[float64]string{-3: "−3.0", -0.84: "−0.8", 2: "+2.0", 0: "0.0", -0.01: "0.0"} {
		if got := overTenths(&v); got != want {
			t.Errorf("%g is %q, want %q", v, got, want)
		}
	}
	if got := overTenths(nil); got != "–" {
		t.Errorf("nothing is %q", got)
	}
}
