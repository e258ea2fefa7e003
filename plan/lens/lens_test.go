package lens_test

import (
	"fmt"
	"math"
	"testing"

	"scrimshaw/plan/lens"
	"scrimshaw/testdata/published"
)

const footcandle = 10.763910416709722 // lx, from the exact foot of 0.3048 m

// within fails unless got is want to an absolute tolerance.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.9g, want %.9g to %g", what, got, want, tolerance)
	}
}

// label names a row in a failure.
func label(row published.Row) string { return fmt.Sprint(row.Label, row.In) }

func TestAngleOfView(t *testing.T) {
	for _, row := range published.Read(t, "format.txt", "view") {
		within(t, label(row)+" across", lens.AngleOfView(row.In[0], row.In[2]), row.Out[0], 0.005)
		within(t, label(row)+" up", lens.AngleOfView(row.In[1], row.In[2]), row.Out[1], 0.005)
	}
}

// What a lens sees across at a distance is what its angle of view spans there.
func TestFrameOfAngle(t *testing.T) {
	for _, row := range published.Read(t, "format.txt", "frame") {
		within(t, label(row), 2*row.In[2]*math.Tan(lens.AngleOfView(row.In[0], row.In[1])*math.Pi/360), row.Out[0], 5e-5)
	}
}

func TestCrop(t *testing.T) {
	for _, row := range published.Read(t, "format.txt", "crop") {
		w, h := lens.Crop(row.In[0], row.In[1], row.In[2])
		within(t, label(row)+" width", w, row.Out[0], 0.005)
		within(t, label(row)+" height", h, row.Out[1], 0.005)
	}
}

func TestShutter(t *testing.T) {
	for _, row := range published.Read(t, "exposure.txt", "shutter") {
		seconds := lens.ShutterSeconds(row.In[1], row.In[0])
		within(t, label(row), 1/seconds, row.Out[0], 1e-9)
		within(t, label(row)+" back", lens.ShutterDegrees(seconds, row.In[0]), row.In[1], 1e-9)
	}
	for _, row := range published.Read(t, "exposure.txt", "shutter stops") {
		got := lens.Stops(lens.ShutterSeconds(row.In[1], row.In[0]) / lens.ShutterSeconds(180, 24))
		within(t, label(row), got, row.Out[0], 5e-4)
	}
}

func TestEV(t *testing.T) {
	for _, row := range published.Read(t, "exposure.txt", "ev lux") {
		within(t, label(row), luxOfEV(row.In[0], lens.FlatConstant), row.Out[0], 1e-9)
	}
	for _, row := range published.Read(t, "exposure.txt", "ev luminance") {
		within(t, label(row), luxOfEV(row.In[0], lens.ReflectedConstant), row.Out[0], 1e-12)
	}
	row := published.Read(t, "exposure.txt", "sunny sixteen")[0]
	sunny := lens.Exposure{ISO: 100, Seconds: 0.01, Constant: lens.FlatConstant}
	within(t, "EV of sunny 16", lens.Stops(row.In[0]*row.In[0]/sunny.Seconds), row.Out[0], 5e-4)
	within(t, "lx of sunny 16", sunny.Lux(row.In[0]), row.Out[1], 1e-6)
}

// luxOfEV is the light that an exposure value, log2 of N²/t, stands for at ISO 100, by a meter's constant.
func luxOfEV(ev, constant float64) float64 {
	return lens.Exposure{ISO: 100, Seconds: math.Exp2(-ev), Constant: constant}.Lux(1)
}

func TestLuxForAStop(t *testing.T) {
	at := func(iso float64) lens.Exposure {
		return lens.Exposure{ISO: iso, Seconds: 1.0 / 48, Constant: lens.FlatConstant}
	}
	for _, row := range published.Read(t, "exposure.txt", "lux") {
		lux := at(row.In[0]).Lux(row.In[1])
		within(t, label(row), lux, row.Out[0], 1e-9)
		within(t, label(row)+" back", at(row.In[0]).Number(lux), row.In[1], 1e-12)
		within(t, label(row)+" over", at(row.In[0]).Over(lux, row.In[1]), 0, 1e-12)
	}
	for _, row := range published.Read(t, "exposure.txt", "footcandles") {
		within(t, label(row), at(row.In[0]).Lux(row.In[1])/footcandle, row.Out[0], 0.05)
	}
	row := published.Read(t, "exposure.txt", "exact mark")[0]
	within(t, "lx of exact 2.8", at(100).Lux(2*math.Sqrt2), row.Out[0], 1e-9)
	within(t, "fc of exact 2.8", at(100).Lux(2*math.Sqrt2)/footcandle, row.Out[1], 0.005)
}

// The handbooks' rule is the same relation with a constant of its own.
func TestWorkingRule(t *testing.T) {
	for _, row := range published.Read(t, "exposure.txt", "working rule") {
		x := lens.Exposure{ISO: row.In[0], Seconds: 1.0 / 48, Constant: 25 * footcandle}
		within(t, label(row), x.Lux(row.In[1])/footcandle, row.Out[0], 0.05)
	}
	constants := published.Read(t, "exposure.txt", "constants")
	for _, row := range constants {
		within(t, label(row), lens.Stops(row.In[1]/row.In[0]), row.Out[0], 5e-4)
	}
	usual := constants[len(constants)-1]
	within(t, "a flat receptor's constant", lens.FlatConstant, usual.In[0], 0)
	within(t, "a dome's constant", lens.DomeConstant, usual.In[1], 0)
}

func TestFullStops(t *testing.T) {
	for k, want := range published.Read(t, "exposure.txt", "full stops")[0].Out {
		x := lens.Exposure{ISO: 100, Seconds: 1, Constant: 100}
		within(t, "full stop", x.Number(math.Exp2(float64(k))), want, 5e-5)
	}
}

func TestRatios(t *testing.T) {
	for _, row := range published.Read(t, "exposure.txt", "ratio") {
		within(t, label(row), lens.Stops(row.Out[0]), row.In[0], 0)
	}
	for _, row := range published.Read(t, "exposure.txt", "stops") {
		within(t, label(row), lens.Stops(row.In[0]), row.Out[0], 5e-4)
	}
}

// A filter that takes a stop before the lens asks for twice the light at an aperture, and opens the aperture by a stop.
func TestFiltersBeforeTheLens(t *testing.T) {
	plain := lens.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: lens.FlatConstant}
	for _, stops := range []float64{1, 0.3, 2.5} {
		filtered := plain
		filtered.Lost = stops
		within(t, "the light for a stop", filtered.Lux(4), plain.Lux(4)*math.Exp2(stops), 1e-9)
		within(t, "the aperture for a light", filtered.Number(500), plain.Number(500)/math.Exp2(stops/2), 1e-12)
		within(t, "a density that takes as much", lens.DensityStops(-math.Log10(filtered.Passes())), stops, 1e-12)
	}
}

// Light onto the front of a lens spreads as much as an even surround does that lights it as much: one of a luminance L gives pi L.
func TestVeil(t *testing.T) {
	for _, luminance := range []float64{1, 250} {
		within(t, "the veil", lens.Veil(math.Pi*luminance), lens.VeilingGlare*luminance, 1e-12)
	}
}

// A grey card under the light that the stop calls for reads mid grey on the spot meter.
func TestSpotAgreesWithIncident(t *testing.T) {
	row := published.Read(t, "exposure.txt", "grey card")[0]
	x := lens.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: lens.DomeConstant}
	n := x.Number(row.In[0])
	within(t, "mid grey", x.MidGrey(n), row.Out[0], 5e-4)
	within(t, "over mid grey", x.SpotOver(x.MidGrey(n), n), 0, 1e-12)
	within(t, "white paper over grey", x.SpotOver(0.9*row.In[0]/math.Pi, n), math.Log2(5), 1e-12)
}

// The stop of a hand-held spot meter follows its constant: at an exposure value it is that of the table, and where the meter's constant
// is the grey's own it is the working stop. The grey of C = 250 is a K of 14.3, of C = 340 one of 19.5.
func TestHandHeldSpotMeters(t *testing.T) {
	for _, row := range published.Read(t, "exposure.txt", "ev luminance") {
		x := lens.Exposure{ISO: 100, Seconds: 1.0 / 48, Constant: lens.FlatConstant}
		n := x.SpotNumber(row.Out[0], lens.ReflectedConstant)
		within(t, label(row)+" as EV", lens.Stops(n*n/x.Seconds), row.In[0], 1e-9)
		within(t, label(row)+" with K = 14", lens.Stops(n/x.SpotNumber(row.Out[0], lens.ReflectedConstant2)), lens.Stops(14/12.5)/2, 1e-12)
	}
	for constant, want := range map[float64]float64{lens.FlatConstant: 14.324, lens.DomeConstant: 19.481} {
		x := lens.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: constant, Lost: 1}
		within(t, "the K of grey", x.GreyConstant(), want, 5e-4)
		within(t, "a meter of that K on grey", x.SpotNumber(x.MidGrey(4), x.GreyConstant()), 4, 1e-12)
	}
	if n := (lens.Exposure{ISO: 100, Seconds: 1, Constant: 250}).SpotNumber(-1, 14); n != 0 {
		t.Errorf("the stop of less than no light is %g, want 0", n)
	}
}

// What a camera holds ends at the stops that it says, and a side that it does not say holds all.
func TestRange(t *testing.T) {
	r := lens.Range{Over: 6, Under: 8}
	if r.Clips(6) || !r.Clips(6.01) || r.Sinks(-8) || !r.Sinks(-8.01) || !r.Sinks(math.Inf(-1)) || r.Clips(-9) || r.Sinks(9) {
		t.Error("a range ends elsewhere than it says")
	}
	if (lens.Range{Over: 1}).Sinks(-50) || (lens.Range{Under: 1}).Clips(50) || (lens.Range{}).Known() || !(lens.Range{Under: 1}).Known() {
		t.Error("a side that is not known holds")
	}
}

func TestDarkness(t *testing.T) {
	x := lens.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: lens.FlatConstant}
	if n := x.Number(0); n != 0 {
		t.Errorf("the stop of no light is %g, want 0", n)
	}
	if n := x.Number(-1); n != 0 { // as rounding may leave it
		t.Errorf("the stop of less than no light is %g, want 0", n)
	}
	if over := x.Over(0, 2.8); !math.IsInf(over, -1) {
		t.Errorf("no light is %g stops over, want -Inf", over)
	}
}

func ExampleExposure() {
	x := lens.Exposure{ISO: 800, Seconds: lens.ShutterSeconds(180, 25), Constant: lens.FlatConstant}
	fmt.Printf("%.0f lx for T2.8; 500 lx is T%.1f, %.1f stops over\n",
		x.Lux(2*math.Sqrt2), x.Number(500), x.Over(500, 2*math.Sqrt2))
	// Output: 125 lx for T2.8; 500 lx is T5.7, 2.0 stops over
}

func BenchmarkNumber(b *testing.B) {
	x := lens.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: lens.DomeConstant}
	b.ReportAllocs()
	for b.Loop() {
		x.Number(500)
	}
}
