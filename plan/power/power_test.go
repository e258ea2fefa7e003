package power

import (
	"math"
	"testing"
)

// What a load takes, by testdata/published: 1 kW is 8.333 A at 120 V and 4.348 A at 230 V, 2 kW 16.667 A at 120 V.
func TestCurrent(t *testing.T) {
	for _, c := range []struct{ watts, volts, factor, want float64 }{
		{1000, 120, 1, 8.333}, {1000, 230, 1, 4.348}, {2000, 120, 1, 16.667}, {575, 230, 0.5, 5},
	} {
		if got := Current(c.watts, c.volts, c.factor); math.Abs(got-c.want) > 5e-4 {
			t.Errorf("%g W at %g V and %g: %.4f A, want %g", c.watts, c.volts, c.factor, got, c.want)
		}
	}
}

// A filament at nine tenths of its volts gives 0.699 of its light (0.9 to 3.4); at a voltage it takes as much as the power
// law says, whether that is asked by the voltage or by the light.
func TestFilament(t *testing.T) {
	if got := FilamentLight(0.9); math.Abs(got-0.6989) > 1e-4 {
		t.Errorf("at nine tenths of its volts it gives %.4f", got)
	}
	for _, volts := range []float64{0.3, 0.5, 0.9, 1, 1.05} {
		want := math.Exp(0.54 * math.Log(volts))
		if got := DimmedFilament(FilamentLight(volts)); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %g of its volts it takes %g of its current, want %g", volts, got, want)
		}
	}
	if DimmedFilament(0) != 0 || DimmedFilament(1) != 1 {
		t.Error("dark it takes something, or at full not all")
	}
	if got := DimmedFilament(0.5); math.Abs(got-0.896) > 5e-4 {
		t.Errorf("at half its light it takes %.3f of its current", got)
	}
}

// A breaker of 16 A and type B rides through peaks up to 67.9 A.
func TestInrush(t *testing.T) {
	if !HoldsInrush(16, 67.8) || HoldsInrush(16, 67.9) {
		t.Error("a breaker of 16 A holds up to 67.88 A")
	}
}
