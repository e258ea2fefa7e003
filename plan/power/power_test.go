package power

import (
	"math"
	"testing"

	"scrimshaw/testdata/published"
)

// within holds a figure to a published one, to the digits that it has.
func within(t *testing.T, row published.Row, got, of float64) {
	t.Helper()
	if !(math.Abs(got-row.Out[0]) <= of) {
		t.Errorf("%s %v: %.5f, %s has %g", row.Label, row.In, got, row.Source, row.Out[0])
	}
}

func TestCurrent(t *testing.T) {
	for _, r := range published.Read(t, "power.txt", "current") {
		within(t, r, Current(r.In[0], r.In[1], r.In[2]), 5e-4)
	}
}

// What cable resists and loses is as published, warm by the ratio that copper has.
func TestCable(t *testing.T) {
	warm := published.Read(t, "power.txt", "warm")[0].Out[0]
	for _, r := range published.Read(t, "power.txt", "resistance") {
		within(t, r, 1000*Resistance(r.In[0]), 1e-9)
	}
	for _, r := range published.Read(t, "power.txt", "drop") {
		within(t, r, CableDrop(r.In[0], r.In[1], r.In[2])/warm, 1e-3)
	}
	if got, want := Resistance(3.3), 7.98*2.5/3.3/1000; !(math.Abs(got-want) <= 1e-12) {
		t.Errorf("3.3 mm² resist %g ohms a m, by 2.5 mm² they would %g", got, want)
	}
}

// A filament at nine tenths of its volts gives 0.699 of its light (0.9 to 3.4); at a voltage it takes as much as the power
// law says, whether that is asked by the voltage or by the light.
func TestFilament(t *testing.T) {
	if got := FilamentLight(0.9); !(math.Abs(got-0.6989) <= 1e-4) {
		t.Errorf("at nine tenths of its volts it gives %.4f", got)
	}
	for _, volts := range []float64{0.3, 0.5, 0.9, 1, 1.05} {
		want := math.Exp(0.54 * math.Log(volts))
		if got := DimmedFilament(FilamentLight(volts)); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("at %g of its volts it takes %g of its current, want %g", volts, got, want)
		}
	}
	if DimmedFilament(0) != 0 || DimmedFilament(1) != 1 {
		t.Error("dark it takes something, or at full not all")
	}
	if got := DimmedFilament(0.5); !(math.Abs(got-0.896) <= 5e-4) {
		t.Errorf("at half its light it takes %.3f of its current", got)
	}
}

// A breaker of 16 A and type B rides through peaks up to 67.9 A.
func TestInrush(t *testing.T) {
	if !HoldsInrush(16, 67.8) || HoldsInrush(16, 67.9) {
		t.Error("a breaker of 16 A holds up to 67.88 A")
	}
}
