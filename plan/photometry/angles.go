package photometry

import "math"

// Peak gives the greatest intensity of a distribution, cd/lm: by its own word where it has one,
// else the greatest on a grid of one degree.
func Peak(d Distribution) float64 {
	if p, ok := d.(interface{ Peak() float64 }); ok {
		return p.Peak()
	}
	return scanPeak(d)
}

// scanPeak is the greatest intensity on a grid of one degree.
func scanPeak(d Distribution) float64 {
	best := 0.0
	for c := range 360 {
		for t := range 181 {
			best = math.Max(best, d.Candela(direction(float64(c)*math.Pi/180, float64(t)*math.Pi/180)))
		}
	}
	return best
}

// BeamAngle gives the full angle, degrees, between the directions where the intensity has fallen
// to 50 % of its peak, in the plane of C0 (across) and of C90 (along). It is 360 where it never
// falls so far.
func BeamAngle(d Distribution) (across, along float64) { return spread(d, 0.5) }

// FieldAngle gives the full angle, degrees, between the directions where the intensity has fallen
// to 10 % of its peak, as BeamAngle does for 50 %.
func FieldAngle(d Distribution) (across, along float64) { return spread(d, 0.1) }

func spread(d Distribution, share float64) (across, along float64) {
	threshold := share * Peak(d)
	side := func(c float64) float64 { return outermost(d, c, threshold) * 180 / math.Pi }
	return side(0) + side(math.Pi), side(math.Pi/2) + side(3*math.Pi/2)
}

// outermost is the greatest angle from the axis, radians, at which the intensity in the half
// plane c reaches a threshold: coming from outside, so that a dip on the axis does no harm.
func outermost(d Distribution, c, threshold float64) float64 {
	const step = math.Pi / 3600
	reaches := func(t float64) bool { return d.Candela(direction(c, t)) >= threshold*(1-1e-12) }
	for i := 3600; i >= 0; i-- {
		inside := float64(i) * step
		if !reaches(inside) {
			continue
		}
		if i == 3600 {
			return math.Pi
		}
		outside := inside + step
		for range 50 {
			if middle := (inside + outside) / 2; reaches(middle) {
				inside = middle
			} else {
				outside = middle
			}
		}
		return inside
	}
	return 0
}

// Detail gives the size of the finest detail of a distribution by the distance, where it has edges; infinite where it has none.
func Detail(d Distribution) float64 {
	if p, ok := d.(interface{ Detail() float64 }); ok {
		return p.Detail()
	}
	return math.Inf(1)
}
