package lens

import "math"

// Ripple is how the light of a lamp goes up and down by itself, as a share of its mean: in a sine, or in pulses that are on and off.
type Ripple struct {
	Hertz float64 // how often in a second; 0 of steady light
	Depth float64 // of a sine: the most less the least, by the sum of both, 0 to 1
	Duty  float64 // of pulses: the share of the time that they are on, 0 to 1; 0 of a sine
}

// Steady says whether the light does not go up and down.
func (r Ripple) Steady() bool {
	return !(r.Hertz > 0) || r.Duty == 0 && !(r.Depth > 0) || r.Duty >= 1
}

// Gathered is the light of an exposure of so many seconds, by that of steady light with the same mean; the middle of a crest comes a
// part of a period, 0 to 1, after the exposure begins. It is the mean of 1 + d cos over the time, d sin(pi f T)/(pi f T) of the
// wave; of pulses the share of the time that falls into them.
func (r Ripple) Gathered(crest, seconds float64) float64 {
	periods := r.Hertz * seconds
	if r.Steady() || !(periods > 0) {
		return 1
	}
	if r.Duty > 0 {
		on := func(x float64) float64 { return math.Floor(x)*r.Duty + min(x-math.Floor(x), r.Duty) }
		from := r.Duty/2 - crest
		return (on(from+periods) - on(from)) / (periods * r.Duty)
	}
	half := math.Pi * periods
	return 1 + r.Depth*math.Sin(half)/half*math.Cos(half-2*math.Pi*crest)
}

// Shutter is how a camera exposes: frames a second, for how long each row is, and how much later the last row of a frame is than
// its first.
type Shutter struct {
	FPS              float64 // 1/s
	Seconds, Readout float64 // s
}

// Swing is how much the light of a lamp differs in a picture, the most less the least by the mean.
type Swing struct {
	Frames float64 // share by which it differs from frame to frame, in the same row
	Rows   float64 // share by which it differs from row to row, in the same frame
	Beat   float64 // how often it comes and goes from frame to frame, 1/s; 0 where it stands
}

// crests is how many parts a period is looked at in; most of the rates at which frames fall into step with light divide it.
const crests = 360

// inStep is how near to a whole number, and to a simple ratio, the periods of a frame are that fall into step with it: mains keep
// their frequency closer than a clock shows, and what drifts more slowly than once in a thousand seconds is not seen.
const inStep = 1e-6

// Swing finds the worst that ripple does in a picture, whenever the camera starts.
func (s Shutter) Swing(r Ripple) (w Swing) {
	if r.Steady() {
		return w
	}
	var light [crests]float64
	for i := range light {
		light[i] = r.Gathered(float64(i)/crests, s.Seconds)
	}
	periods := r.Hertz / s.FPS
	if math.Abs(periods-math.Round(periods)) > inStep*max(1, periods) {
		w.Beat = math.Abs(r.Hertz - math.Round(periods)*s.FPS)
		w.Frames = swingAcross(&light, stepOf(periods), crests)
	}
	w.Rows = swingAcross(&light, 1, min(crests, 1+int(math.Round(r.Hertz*s.Readout*crests))))
	return w
}

// stepOf is how many of the crests apart frames fall: as many as a ratio of small numbers says, else one, for they come everywhere.
func stepOf(periods float64) int {
	for n := 2; n <= 12; n++ {
		if x := periods * float64(n); crests%n == 0 && math.Abs(x-math.Round(x)) < inStep*max(1, x) {
			return crests / n
		}
	}
	return 1
}

// swingAcross is the most that the light of an exposure differs between moments that lie so many steps apart, up to so many
// crests in all, wherever the first lies.
func swingAcross(light *[crests]float64, step, span int) (most float64) {
	for first := range light {
		low, high := light[first], light[first]
		for k := step; k < span; k += step {
			v := light[(first+k)%crests]
			low, high = min(low, v), max(high, v)
		}
		most = max(most, high-low)
		if span == crests && first >= step {
			break // the rest are the same moments
		}
	}
	return most
}

// SafeSeconds is the exposure time nearest to the shutter's, by ratio, that is a whole number of periods: each row of each frame
// gathers the same light. It is not ok where a frame is shorter than one.
func (s Shutter) SafeSeconds(hertz float64) (seconds float64, ok bool) {
	most := math.Floor(hertz/s.FPS + inStep)
	if !(hertz > 0) || most < 1 {
		return 0, false
	}
	return nearerCount(hertz*s.Seconds, most) / hertz, true
}

// SafeFPS is the frame rate nearest to the shutter's, by ratio, at which an exposure of the same angle is a whole number of
// periods.
func (s Shutter) SafeFPS(hertz float64) float64 {
	return s.Seconds * s.FPS * hertz / nearerCount(hertz*s.Seconds, math.Inf(1))
}

// nearerCount is the whole number, from 1 to a most, that is nearest to a number of periods by ratio.
func nearerCount(periods, most float64) float64 {
	low := min(max(1, math.Floor(periods)), most)
	high := min(low+1, most)
	if high*low < periods*periods {
		return high
	}
	return low
}
