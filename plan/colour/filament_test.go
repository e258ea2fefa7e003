package colour

import (
	"math"
	"testing"

	"scrimshaw/testdata/published"
)

// The light of a black body is held to the one that defined the candela, and the law to what others have worked out
// and measured.
func TestFilament(t *testing.T) {
	const km, firstRadiance = 683, 1.191042972e-16 // lm/W; c1L = 2 h c², W m²/sr
	for _, row := range published.Read(t, "filament.txt", "black body") {
		light := km * firstRadiance / math.Pow(middleWavelength, 5) * wavelengthStep * math.Exp(logLight(row.In[0]))
		if !(math.Abs(light/row.Out[0]-1) <= 5e-3) {
			t.Errorf("a black body at %g K has %.0f cd/m², want %.0f (%s)", row.In[0], light, row.Out[0], row.Source)
		}
	}
	for _, row := range published.Read(t, "filament.txt", "dimmed") {
		if got := Dimmed(row.In[0], row.In[1]); !(math.Abs(got-row.Out[0]) <= 0.06) {
			t.Errorf("%g K at %g of its light is %.2f K, want %.1f", row.In[0], row.In[1], got, row.Out[0])
		}
	}
	rows := published.Read(t, "filament.txt", "tungsten")
	full := rows[len(rows)-1]
	for _, row := range rows {
		if got := Dimmed(full.In[0], row.Out[0]/full.Out[0]); !(math.Abs(got/row.In[0]-1) <= 0.01) {
			t.Errorf("tungsten of %g K at %g of its light is %.0f K, want %.0f", full.In[0], row.Out[0]/full.Out[0], got, row.In[0])
		}
	}
	// Near full, temperature goes with a power of light.
	row := published.Read(t, "filament.txt", "powers of the voltage")[0]
	if got, want := math.Log(Dimmed(row.In[0], 0.95)/row.In[0])/math.Log(0.95), row.Out[1]/row.Out[0]; !(math.Abs(got/want-1) <= 0.02) {
		t.Errorf("at %g K temperature goes with the %.4fth power of light, want %.4f", row.In[0], got, want)
	}
}

// A filament gets colder all the way down, gives the light that was asked for, and is never colder than it is followed.
func TestFilamentColdensAllTheWay(t *testing.T) {
	for _, full := range []float64{1500, 2700, 2856, 3000, 3200, 3400, 6500} {
		last := full
		for share := 0.995; share >= 1e-4; share *= 0.97 {
			got := Dimmed(full, share)
			if !(got < last) && got != minFilamentKelvin || got < minFilamentKelvin {
				t.Fatalf("%g K at %g of its light is %g K, before it %g", full, share, got, last)
			}
			if light := math.Exp(logLight(got) - logLight(full)); got > minFilamentKelvin && math.Abs(light/share-1) > 1e-8 {
				t.Fatalf("%g K at %g of its light is %g K, which has %g of it", full, share, got, light)
			}
			last = got
		}
	}
	for _, c := range []struct{ kelvin, share, want float64 }{
		{3200, 1, 3200}, {3200, 2, 3200}, {3200, 0, minFilamentKelvin}, {3200, -1, minFilamentKelvin}, {3200, math.NaN(), minFilamentKelvin},
		{3200, 1e-300, minFilamentKelvin}, {900, 0.5, 900}, {minFilamentKelvin, 0.5, minFilamentKelvin},
	} {
		if got := Dimmed(c.kelvin, c.share); got != c.want {
			t.Errorf("%g K at %g of its light is %g K, want %g", c.kelvin, c.share, got, c.want)
		}
	}
}

func BenchmarkDimmed(b *testing.B) {
	for b.Loop() {
		Dimmed(3200, 0.1)
	}
}
