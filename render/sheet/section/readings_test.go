package section

import "testing"

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
