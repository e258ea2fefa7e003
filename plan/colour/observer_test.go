package colour

import (
	"math"
	"testing"

	"scrimshaw/testdata/published"
)

func TestObserverSums(t *testing.T) {
	want := published.Read(t, "colour.txt", "observer sums")[0].Out
	var got [3]float64
	for _, row := range observer {
		for i := range got {
			got[i] += row[i]
		}
	}
	for i := range got {
		if !(math.Abs(got[i]-want[i]) <= 5e-6) {
			t.Errorf("sum %d of the observer = %.6f, want %.5f", i, got[i], want[i])
		}
	}
	if len(observer) != 95 {
		t.Errorf("%d rows, want 95", len(observer))
	}
}
