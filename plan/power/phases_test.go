package power

import (
	"math"
	"testing"

	"scrimshaw/testdata/published"
)

// waves are the steps of a whole turn by which the tests add up currents.
const waves = 3600

// rms is the root of the mean square of a current over a whole turn.
func rms(of func(turn float64) float64) float64 {
	sum := 0.0
	for i := range waves {
		v := of(2 * math.Pi * (float64(i) + 0.5) / waves)
		sum += v * v
	}
	return math.Sqrt(sum / waves)
}

// The neutral carries what the currents of three phases add up to, moment by moment, without harmonics and with thirds in step.
func TestNeutralMomentByMoment(t *testing.T) {
	for _, c := range []struct{ a, b, c, third float64 }{{10, 10, 10, 0}, {10, 0, 0, 0}, {10, 7, 0, 0.3}, {32, 20, 5, 0.27}, {12, 12, 12, 0.86}, {0, 0, 0, 0.3}} {
		amps := [3]float64{c.a, c.b, c.c}
		got := rms(func(turn float64) (sum float64) {
			for p, a := range amps {
				at := turn - float64(p)*2*math.Pi/3
				sum += math.Sqrt2 * a * (math.Sin(at) + c.third*math.Sin(3*at))
			}
			return sum
		})
		thirds := c.third * (c.a + c.b + c.c)
		if want := WithThirds(Neutral(amps), thirds); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("%v with %g of thirds: moment by moment %g A, by formula %g", amps, c.third, got, want)
		}
	}
	if got := Neutral([3]float64{9, 9, 9}); got != 0 {
		t.Errorf("three alike leave %g A", got)
	}
}

// A dimmer that cuts at any angle makes no more third harmonic than 1/pi of the full current, by sums over the wave, and at a right angle that.
func TestThirdOfDimmed(t *testing.T) {
	most := 0.0
	for degrees := 0; degrees <= 180; degrees += 5 {
		var sine, cosine float64
		for i := range waves {
			turn := 2 * math.Pi * (float64(i) + 0.5) / waves
			if math.Mod(turn, math.Pi) < float64(degrees)*math.Pi/180 {
				continue
			}
			sine += math.Sin(turn) * math.Sin(3*turn) * 2 / waves
			cosine += math.Sin(turn) * math.Cos(3*turn) * 2 / waves
		}
		most = math.Max(most, math.Hypot(sine, cosine))
	}
	if !(math.Abs(most-ThirdOfDimmed) <= 1e-4) {
		t.Errorf("the most third harmonic is %g of the full current, want %g", most, ThirdOfDimmed)
	}
}

// Cables of three phases lose what is published where all carry the same, and as much as one of two cores where one carries all.
func TestPhaseDrop(t *testing.T) {
	warm := published.Read(t, "power.txt", "warm")[0].Out[0]
	for _, r := range published.Read(t, "power.txt", "three-phase") {
		within(t, r, PhaseDrop(r.In[0], r.In[1], r.In[2], 0)/warm/(400/math.Sqrt(3)), 5e-5)
	}
	if got, want := PhaseDrop(20, 6, 16, 16), CableDrop(20, 6, 16); !(math.Abs(got-want) <= 1e-12) {
		t.Errorf("one phase alone loses %g V, want %g", got, want)
	}
}

// Factors by harmonics are those of the standard's table; supplies may have what their class may.
func TestHarmonics(t *testing.T) {
	for _, r := range published.Read(t, "power.txt", "harmonics") {
		factor, byNeutral := HarmonicFactor(r.In[0])
		if factor != r.Out[0] || byNeutral != (r.Out[1] == 1) {
			t.Errorf("with %g of thirds: %g, by the neutral %t, %s has %v", r.In[0], factor, byNeutral, r.Source, r.Out)
		}
	}
	if ThirdOfSupply(25, 0.5) != 0.86 || !(math.Abs(ThirdOfSupply(25.1, 0.9)-0.27) <= 1e-12) {
		t.Error("class C has 86 % up to 25 W and over that 30 % times the power factor")
	}
}

// A filament takes the product of its volts and its current.
func TestDimmedFilamentPower(t *testing.T) {
	for _, volts := range []float64{0.3, 0.5, 0.9, 1} {
		light := FilamentLight(volts)
		if got, want := DimmedFilamentPower(light), volts*DimmedFilament(light); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("at %g of its volts it takes %g of its power, want %g", volts, got, want)
		}
	}
	if DimmedFilamentPower(0) != 0 {
		t.Error("dark it takes something")
	}
}
