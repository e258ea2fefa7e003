package rig

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// Wind pressure by ASCE 7: 0.613 v² Pa, and 0.00256 V² psf by miles an hour, which is 47.880 Pa.
func TestWindPressure(t *testing.T) {
	for speed, want := range map[float64]float64{5: 15.3, 8: 39.2, 10: 61.3, 15: 137.9, 20: 245.2} {
		near(t, "q", WindPressure(speed), want, 0.05)
	}
	const mile, psf = 0.44704, 47.880
	near(t, "q of 20 mph", WindPressure(20*mile), 0.00256*20*20*psf, 0.1)
}

// Sheets of 12, 8 and 20 ft a side, at a coefficient of 1 as the pressure alone and at that of a plate.
func TestWindForce(t *testing.T) {
	for side, want := range map[float64][2]float64{3.6576: {524.8, 820.1}, 2.4384: {233.3, 364.5}, 6.096: {1457.9, 2278.0}} {
		f := Facing{Area: side * side, Drag: 1}
		near(t, "at 8 m/s", WindForce(f, 8), want[0], 0.1)
		near(t, "at 10 m/s", WindForce(f, 10), want[1], 0.1)
	}
	near(t, "a plate", WindForce(Facing{Area: 3.6576 * 3.6576, Drag: Plate}, 8), 629.8, 0.1)
}

// A sheet of 12 ft, its middle at 3 m, in a wind of 8 m/s over a lever of 0.5 m wants 321.1 kg: 524.85 N by 3 m are 1574.5 N m.
func TestOverturning(t *testing.T) {
	sheet := []Facing{{Area: 3.6576 * 3.6576, Height: 3, Drag: 1}}
	f := Footing{Foot: 2, Feet: 3} // three feet on a circle of 1 m radius tip over a line 0.5 m from its middle
	near(t, "lever", f.Lever(), 0.5, 1e-12)
	near(t, "ballast", Ballast(f, sheet, 8), 321.1, 0.1)
	f.Mass = Ballast(f, sheet, 8)
	near(t, "it tips at", TipsAt(f, sheet), 8, 1e-9)
	near(t, "it comes down at", TakeDownAt(8), 8/1.5, 1e-9)
	near(t, "nothing to the wind", TipsAt(f, nil), 0, 0)
	f.Feet = 4
	near(t, "four feet", f.Lever(), math.Sqrt2/2, 1e-12)
}

// 10 kg at 2.0 m are held by 25 kg at 0.8 m: 196.13 N m on either side.
func TestBoomBalance(t *testing.T) {
	near(t, "counterweight", Counterweight(10, 2, CounterArm), 25, 1e-12)
	near(t, "moment", Moment(10, 2), 196.13, 0.005)
	near(t, "moment behind", Moment(25, CounterArm), 196.13, 0.005)
}

// By hand: 8 kg are 78.45 N; at 0.4 each of two ends bears half by 98.07 N.
func TestPoleForce(t *testing.T) { near(t, "pole", PoleForce(8, WallFriction), 98.07, 0.005) }
