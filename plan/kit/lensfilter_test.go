package kit

import (
	"math"
	"testing"

	"scrimshaw/plan/lens"
)

// A filter is called as the trade calls it; a density is exact and the catalogue is typical.
func TestBeforeLens(t *testing.T) {
	c, err := Shipped()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []struct {
		name         string
		stops, mired float64
		typical      bool
	}{
		{"ND 0.6", 0.6 / math.Log10(2), 0, false},
		{"ND .6", 0.6 / math.Log10(2), 0, false},
		{"nd1.5", 1.5 / math.Log10(2), 0, false},
		{"polariser", 1.5, 0, true},
		{"5500 K to 3200 K", 0.67, 1e6/3200.0 - 1e6/5500, true},
		{"3200 K to 5500 K", 2, 1e6/5500.0 - 1e6/3200, true},
		{"1/2 CTO", math.Log2(1 / 0.71), (1e6/3200.0 - 1e6/5600) / 2, true},
	} {
		f, typical, ok := c.BeforeLens(want.name)
		if stops := lens.Stops(1 / f.Transmittance); !ok || typical != want.typical || !(math.Abs(stops-want.stops) <= 1e-9) || !(math.Abs(f.Mired-want.mired) <= 1e-9) {
			t.Errorf("%s: %.4f stops, %.3f mired, typical %v, known %v", want.name, stops, f.Mired, typical, ok)
		}
	}
	for _, name := range []string{"ND 8", "ND 0.0", "ND 5.0", "deep red", "silk", "NDx"} {
		if _, _, ok := c.BeforeLens(name); ok {
			t.Errorf("%s is a filter before a lens", name)
		}
	}
}
