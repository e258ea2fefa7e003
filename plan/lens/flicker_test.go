package lens

import (
	"math"
	"math/rand"
	"testing"
)

// waveAt is the light of a ripple at a moment, s, by its mean: its first crest comes at nought.
func waveAt(r Ripple, t float64) float64 {
	x := t*r.Hertz - math.Floor(t*r.Hertz)
	switch {
	case r.Duty == 0:
		return 1 + r.Depth*math.Cos(2*math.Pi*x)
	case x < r.Duty/2 || x > 1-r.Duty/2:
		return 1 / r.Duty
	}
	return 0
}

// exposed integrates the wave over an exposure, step by step.
func exposed(r Ripple, from, seconds float64) float64 {
	const n = 40000
	sum := 0.0
	for i := range n {
		sum += waveAt(r, from+seconds*(float64(i)+0.5)/n) / n
	}
	return sum
}

// What Swing says of frames and of rows is what differs between rows that are exposed one by one over the
// wave: 40 rows of many frames, from many starts.
func TestSwingOfExposedRows(t *testing.T) {
	d := rand.New(rand.NewSource(7))
	one := func(all ...float64) float64 { return all[d.Intn(len(all))] }
	for range 40 {
		r := Ripple{Hertz: one(100, 120, 100, 300, 1000), Depth: 0.05 + 0.95*d.Float64()}
		if d.Intn(3) == 0 {
			r = Ripple{Hertz: r.Hertz, Duty: one(0.1, 0.3, 0.5, 0.8)}
		}
		s := Shutter{FPS: one(24, 25, 30, 24000.0/1001, 48, 50, 37.3), Readout: one(0.004, 0.008, 0.012, 0.02)}
		s.Seconds = one(90, 144, 172.8, 180, 270, 360) / 360 / s.FPS
		var want Swing
		const rows, frames = 40, 60
		for range 60 {
			start := d.Float64()
			var low, high [rows]float64
			for i := range frames {
				rowLow, rowHigh := math.Inf(1), 0.0
				for k := range rows {
					v := exposedQuick(r, start+float64(i)/s.FPS+s.Readout*float64(k)/(rows-1), s.Seconds)
					if i == 0 {
						low[k], high[k] = v, v
					}
					low[k], high[k] = min(low[k], v), max(high[k], v)
					rowLow, rowHigh = min(rowLow, v), max(rowHigh, v)
				}
				want.Rows = max(want.Rows, rowHigh-rowLow)
			}
			for k := range rows {
				want.Frames = max(want.Frames, high[k]-low[k])
			}
		}
		got := s.Swing(r)
		if !(math.Abs(got.Frames-want.Frames) <= 0.02*want.Frames+2e-3) || !(math.Abs(got.Rows-want.Rows) <= 0.02*want.Rows+2e-3) {
			t.Errorf("%+v by %+v: %+v, and row by row %+v", r, s, got, want)
		}
	}
}

// exposedQuick is exposed from a table of the wave's sum, made for each ripple once.
func exposedQuick(r Ripple, from, seconds float64) float64 {
	sum := sumsOf(r)
	at := func(t float64) float64 {
		x := t * r.Hertz
		whole := math.Floor(x)
		place := (x - whole) * float64(len(sum)-1)
		i := int(place)
		part := sum[i]
		if i+1 < len(sum) {
			part += (place - float64(i)) * (sum[i+1] - sum[i])
		}
		return whole*sum[len(sum)-1] + part
	}
	return (at(from+seconds) - at(from)) / (seconds * r.Hertz)
}

var sumCache = map[Ripple][]float64{}

// sumsOf are the sums of a wave up to each of many moments of its period.
func sumsOf(r Ripple) []float64 {
	if s, ok := sumCache[r]; ok {
		return s
	}
	const n = 20000
	sums := make([]float64, n+1)
	for i := range n {
		sums[i+1] = sums[i] + waveAt(r, (float64(i)+0.5)/n/r.Hertz)/n
	}
	sumCache[r] = sums
	return sums
}

// Gathered is the integral of the wave.
func TestGathered(t *testing.T) {
	for _, r := range []Ripple{{Hertz: 100, Depth: 1}, {Hertz: 120, Depth: 0.13}, {Hertz: 400, Duty: 0.35}} {
		for _, seconds := range []float64{1.0 / 48, 1.0 / 50, 1.0 / 500} {
			for _, crest := range []float64{0, 0.2, 0.7} {
				if got, want := r.Gathered(crest, seconds), exposed(r, -crest/r.Hertz, seconds); !(math.Abs(got-want) <= 2e-3) {
					t.Errorf("%+v, crest after %g, %g s: %.5f, and summed %.5f", r, crest, seconds, got, want)
				}
			}
		}
	}
}

// Light on 50 Hz mains is steady at 1/50 s and 1/100 s at any rate, and at 25 fps stands still from frame to frame at any angle, though
// not from row to row. At 24 fps and 180° a lamp that goes out a hundred times a second keeps sin(pi f T)/(pi f T) of its depth:
// 4.0 % of the mean either way, four times a second. Common practice, and the closed form.
func TestSafeShutters(t *testing.T) {
	full := Ripple{Hertz: 100, Depth: 1}
	for _, seconds := range []float64{1.0 / 50, 1.0 / 100} {
		if w := (Shutter{FPS: 24, Seconds: seconds, Readout: 0.012}).Swing(full); w.Frames > 1e-9 || w.Rows > 1e-9 {
			t.Errorf("at %g s %+v", seconds, w)
		}
	}
	if w := (Shutter{FPS: 25, Seconds: 1.0 / 60, Readout: 0.012}).Swing(full); w.Frames != 0 || w.Beat != 0 || w.Rows < 0.1 {
		t.Errorf("at 25 fps and 1/60 s %+v", w)
	}
	s := Shutter{FPS: 24, Seconds: 1.0 / 48, Readout: 0.012}
	x := math.Pi * 100 / 48
	if w := s.Swing(full); !(math.Abs(w.Frames-2*math.Sin(x)/x) <= 1e-4) || !(math.Abs(w.Beat-4) <= 1e-9) {
		t.Errorf("at 24 fps and 180° %+v, want %.4f four times a second", w, 2*math.Sin(x)/x)
	}
	if seconds, ok := s.SafeSeconds(100); !ok || !(math.Abs(seconds-1.0/50) <= 1e-12) {
		t.Errorf("safe at %g s", seconds)
	}
	if fps := s.SafeFPS(100); !(math.Abs(fps-25) <= 1e-9) {
		t.Errorf("safe at %g fps", fps)
	}
	if _, ok := (Shutter{FPS: 240, Seconds: 1.0 / 480}).SafeSeconds(100); ok {
		t.Error("a frame of 1/240 s holds no period of 1/100 s, and a safe time is offered")
	}
	for _, fps := range []float64{18, 24, 29.97, 48} {
		for _, degrees := range []float64{45, 144, 180, 300} {
			s := Shutter{FPS: fps, Seconds: degrees / 360 / fps, Readout: 0.01}
			seconds, ok := s.SafeSeconds(120)
			if !ok {
				t.Fatalf("none at %g fps", fps)
			}
			again, other := s, Shutter{FPS: s.SafeFPS(120), Readout: 0.01}
			again.Seconds, other.Seconds = seconds, degrees/360/other.FPS
			for _, safe := range []Shutter{again, other} {
				if w := safe.Swing(Ripple{Hertz: 120, Duty: 0.2}); w.Frames > 1e-9 || w.Rows > 1e-9 || safe.Seconds*safe.FPS > 1+1e-9 {
					t.Errorf("%+v is no safe shutter: %+v", safe, w)
				}
			}
		}
	}
	for _, steady := range []Ripple{{}, {Hertz: 100}, {Hertz: 100, Duty: 1}, {Depth: 1}} {
		if w := s.Swing(steady); w != (Swing{}) {
			t.Errorf("%+v swings by %+v", steady, w)
		}
	}
}

// Frames that fall into step with light see it in few moments of its period, n of them evenly spread. Of a sine that is on and off n
// odd moments differ by 2 cos(pi/2n) at most, even ones by 2, and all by 2 where no step of the table divides them: closed forms. What an
// exposure of T gathers is that by sin(pi f T)/(pi f T).
func TestFramesInStep(t *testing.T) {
	full := Ripple{Hertz: 100, Depth: 1}
	const seconds = 1.0 / 3000
	half := math.Pi * full.Hertz * seconds
	gathered := math.Sin(half) / half
	for n, want := range map[float64]float64{2: 2, 3: 2 * math.Cos(math.Pi/6), 4: 2, 5: 2 * math.Cos(math.Pi/10), 7: 2, 9: 2 * math.Cos(math.Pi/18)} {
		s := Shutter{FPS: full.Hertz / (4 + 1/n), Seconds: seconds}
		if got := s.Swing(full).Frames; !(math.Abs(got-want*gathered) <= 1e-3) {
			t.Errorf("%g moments: frames differ by %.4f, want %.4f", n, got, want*gathered)
		}
	}
	if got := (Shutter{FPS: full.Hertz / (4 + 1.0/3 + 1e-3), Seconds: seconds}).Swing(full).Frames; !(math.Abs(got-2*gathered) <= 1e-3) {
		t.Errorf("out of step frames differ by %.4f, want %.4f", got, 2*gathered)
	}
}

// Rows that are read out over a part of a period differ by a chord of the sine, 2 sin(pi f T) of the readout T.
func TestRowsOfAShortReadout(t *testing.T) {
	full := Ripple{Hertz: 100, Depth: 1}
	for _, degrees := range []float64{1, 30, 90, 180} {
		s := Shutter{FPS: 25, Seconds: 1e-6, Readout: degrees / 360 / full.Hertz}
		if got, want := s.Swing(full).Rows, 2*math.Sin(degrees*math.Pi/360); !(math.Abs(got-want) <= 1e-4) {
			t.Errorf("a readout over %g° of the wave: rows differ by %.5f, want %.5f", degrees, got, want)
		}
	}
}

// Light without ripple is steady, and an exposure of no time gathers what steady light gives.
func TestSteadyLight(t *testing.T) {
	for r, steady := range map[Ripple]bool{{}: true, {Hertz: 100}: true, {Depth: 1}: true, {Hertz: 100, Duty: 1}: true,
		{Hertz: 100, Duty: 0.99}: false, {Hertz: 100, Depth: 0.01}: false} {
		if r.Steady() != steady {
			t.Errorf("%+v is steady: %v", r, !steady)
		}
		if got := r.Gathered(0.2, 0); got != 1 {
			t.Errorf("%+v gathers %g in no time", r, got)
		}
	}
	if seconds, ok := (Shutter{FPS: 100, Seconds: 1.0 / 200}).SafeSeconds(100); !ok || !(math.Abs(seconds-0.01) <= 1e-12) {
		t.Errorf("a frame of one period: safe at %g s, %v", seconds, ok)
	}
}

// The whole number nearest by ratio is the next where the number of periods lies over the root of their product; it is no less than one and no more
// than a most.
func TestNearerCount(t *testing.T) {
	for _, c := range []struct{ periods, most, want float64 }{
		{0.3, 9, 1}, {1, 9, 1}, {1.41, 9, 1}, {1.42, 9, 2}, {2.44, 9, 2}, {2.46, 9, 3}, {5, 9, 5}, {5.47, 9, 5}, {5.48, 9, 6}, {8.6, 9, 9}, {20, 9, 9}, {1.9, 1, 1}, {99.49, math.Inf(1), 99}, {99.5, math.Inf(1), 100},
	} {
		if got := nearerCount(c.periods, c.most); got != c.want {
			t.Errorf("%g periods, %g at most: %g, want %g", c.periods, c.most, got, c.want)
		}
	}
}

// Frames fall into step with what pulses where their periods are whole to a millionth of themselves: one that drifts by less than that stands, and one
// that drifts by more comes and goes.
func TestHowCloseIsInStep(t *testing.T) {
	for _, periods := range []float64{4, 40} {
		for _, c := range []struct {
			off   float64 // share of the periods of a frame
			stays bool
		}{{0, true}, {0.9e-6, true}, {-0.9e-6, true}, {1.1e-6, false}, {-1.1e-6, false}} {
			r := Ripple{Hertz: 25 * periods * (1 + c.off), Depth: 1}
			w := Shutter{FPS: 25, Seconds: 1.0 / 333, Readout: 0.01}.Swing(r)
			if stays := w.Frames == 0 && w.Beat == 0; stays != c.stays {
				t.Errorf("%g periods a frame and %g of them: %+v", periods, c.off, w)
			} else if want := math.Abs(25 * periods * c.off); !stays && !(math.Abs(w.Beat-want) <= 1e-9) {
				t.Errorf("it comes and goes %g times a second, want %g", w.Beat, want)
			}
		}
	}
}
