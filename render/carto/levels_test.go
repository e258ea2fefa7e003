package carto

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scrimshaw/plan/unit"
)

func TestStopLevelsAreOneAStop(t *testing.T) {
	levels := StopLevels(235, 10, 2000, 20)
	if len(levels) != 8 || levels[0].Lux != 235.0/16 || levels[7].Lux != 235*8 {
		t.Fatalf("got %v", levels)
	}
	for i, l := range levels {
		if i > 0 && l.Lux != 2*levels[i-1].Lux {
			t.Errorf("%g is not twice %g", l.Lux, levels[i-1].Lux)
		}
		if l.Working != (l.Lux == 235) || math.Ldexp(235, l.Stop) != l.Lux {
			t.Errorf("level %+v", l)
		}
	}
}

func TestStopLevelsKeepNearTheWorkingStop(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		most      int
		from, to  int
	}{
		{100 / 64.0, 6400, 5, -2, 2},
		{100 / 64.0, 6400, 4, -1, 2}, // of two as far the darker goes
		{100, 6400, 3, 0, 2},
		{400, 6400, 2, 2, 3}, // all over it
		{1, 30, 2, -3, -2},   // all under it
		{0, 100, 40, -30, 0}, // the dark has no end, the stairs do
	} {
		got := StopLevels(100, c.low, c.high, c.most)
		if len(got) == 0 || got[0].Stop != c.from || got[len(got)-1].Stop != c.to {
			t.Errorf("%g..%g, at most %d: %v, want stops %d to %d", c.low, c.high, c.most, got, c.from, c.to)
		}
	}
}

func TestStopLevelsWithoutLight(t *testing.T) {
	for _, c := range [][3]float64{{0, 1, 2}, {-1, 1, 2}, {math.NaN(), 1, 2}, {math.Inf(1), 1, 2}, {100, 0, 0}, {100, 5, 3}, {100, math.NaN(), 1}} {
		if got := StopLevels(c[0], c[1], c[2], 9); got != nil {
			t.Errorf("%v: %v, want none", c, got)
		}
	}
}

// However far the light is from the working stop, the stairs of levels end: a ratio that no number holds once made
// them endless.
func TestStopLevelsOfAnyLight(t *testing.T) {
	for _, c := range []struct {
		working, low, high float64
		levels             int
	}{
		{1e-310, 1, 11000, 0}, {5e-324, 1, 1e300, 0}, {1e300, 1e-300, 1e-290, 0}, {100, 1, math.Inf(1), 0}, {100, 1, 1e30, 0}, {100, 1, 1e9, 8},
	} {
		got := StopLevels(c.working, c.low, c.high, 8)
		if len(got) != c.levels {
			t.Errorf("%+v: %v", c, got)
		}
		for _, l := range got {
			if !(l.Lux >= c.low && l.Lux <= c.high) {
				t.Errorf("%+v: %g", c, l.Lux)
			}
		}
	}
}

func TestLevelLabels(t *testing.T) {
	for _, c := range []struct {
		lux  float64
		stop int
		unit Unit
		want string
	}{
		{235, 0, Lux, "235"}, {470, 1, Lux, "470"}, {1880, 3, Lux, "1880"}, {117.5, -1, Lux, "118"},
		{58.75, -2, Lux, "59"}, {59.02, -2, Lux, "59"}, {7.34, -5, Lux, "7.3"}, {7.02, -5, Lux, "7"}, {0.459, -9, Lux, "0.46"},
		{30080, 7, Lux, "30100"}, {99.7, 0, Lux, "100"},
		{235, 0, Footcandles, "22"}, // 235 lx / 10.764 lx is 21.83
		{235, 0, TStop, "T2.8"}, {235, 1, TStop, "T4"}, {235, 2, TStop, "T5.6"}, {235, 4, TStop, "T11"}, {235, -3, TStop, "T1"},
		{235, 12, TStop, "over T64"}, {235, -4, TStop, "T0.7"},
		{235, 2, Stops, "+2"}, {235, 0, Stops, "0"}, {235, -3, Stops, "−3"},
	} {
		if got := (Level{Lux: c.lux, Stop: c.stop}).Label(c.unit, math.Sqrt(8)); got != c.want {
			t.Errorf("%g lx, %d stops in unit %d: %q, want %q", c.lux, c.stop, c.unit, got, c.want)
		}
	}
	if got := (Level{Stop: 0}).Label(TStop, unit.StopOf(3.2).N); got != "T2.8+⅓" {
		t.Errorf("T3.2 prints as %q, and everywhere else as a third", got)
	}
}

func TestSpanLeavesSpecksOut(t *testing.T) {
	g := Grid{Step: 1, NX: 100, NY: 10}
	for n := range 1000 {
		g.Value = append(g.Value, float32(n))
	}
	if low, high := Span(g, 0); low != 0 || high != 999 {
		t.Errorf("whole span %g..%g", low, high)
	}
	if low, high := Span(g, 0.01); low != 9 || high != 990 {
		t.Errorf("span without a hundredth %g..%g", low, high)
	}
	if low, high := Span(Grid{}, 0); low != 0 || high != 0 {
		t.Errorf("nothing spans %g..%g", low, high)
	}
}

func ExampleStopLevels() {
	for _, l := range StopLevels(235, 50, 1000, 12) {
		fmt.Println(l.Label(Lux, 0), l.Label(TStop, math.Sqrt(8)), l.Label(Stops, 0))
	}
	// Output:
	// 59 T1.4 −2
	// 118 T2 −1
	// 235 T2.8 0
	// 470 T4 +1
	// 940 T5.6 +2
}

// The value at a place is that of the sorted list, whatever the order and however many are equal.
func TestNthIsThatOfTheSortedList(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	for range 300 {
		all := make([]float32, 1+r.IntN(60))
		for i := range all {
			all[i] = float32(r.IntN(1 + r.IntN(40)))
		}
		if r.IntN(3) == 0 {
			slices.Sort(all)
		}
		sorted := slices.Sorted(slices.Values(all))
		for n := range sorted {
			if got := nth(slices.Clone(all), n); got != sorted[n] {
				t.Fatalf("of %v number %d is %g, want %g", all, n, got, sorted[n])
			}
		}
	}
}
