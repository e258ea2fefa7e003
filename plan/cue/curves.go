package cue

import (
	"slices"

	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
)

// steps is how many pieces a fade has in a curve.
const steps = 12

// moment is a time on the axis, before or after what snaps there.
type moment struct {
	seconds float64
	before  bool
}

// moments are where curves have points: both sides of where a cue begins and ends, and between these, where one is on its way, in steps.
func (t *timeline) moments(end float64) (all []moment) {
	breaks := []float64{0, end}
	for i, start := range t.starts {
		breaks = append(breaks, start, start+t.setup.Cues[i].Over)
	}
	slices.Sort(breaks)
	breaks = slices.Compact(breaks)
	for i, at := range breaks {
		all = append(all, moment{at, true}, moment{at, false})
		if i+1 < len(breaks) && t.moves(at) {
			for k := 1; k < steps; k++ {
				all = append(all, moment{at + (breaks[i+1]-at)*float64(k)/steps, false})
			}
		}
	}
	return all
}

// moves says whether a cue is on its way from a time on.
func (t *timeline) moves(from float64) bool {
	for i, start := range t.starts {
		if q := &t.setup.Cues[i]; start <= from && from < start+q.Over {
			return true
		}
	}
	return false
}

// curves are the key sides of the faces over time; where there are none, the meters.
func (s *Lit) curves(t *timeline, end float64) (all []meter.Curve) {
	moments := t.moments(end)
	levels := make([]light.Levels, len(moments))
	for i, m := range moments {
		levels[i] = t.at(m.seconds, m.before).Levels(s.Setup, s.Levels)
	}
	for i := range s.Requests {
		left := &s.Requests[i]
		right := slices.IndexFunc(s.Requests, func(o meter.Request) bool { return o.Name == left.Person+".right" })
		if left.Person == "" || left.Name != left.Person+".left" || right < 0 {
			continue
		}
		all = append(all, s.curve(meter.Curve{Person: left.Person}, moments, func(k int) float64 {
			lux := s.lux(i, levels[k])
			if other := s.lux(right, levels[k]); meter.RightIsKey(lux, other) {
				return other
			}
			return lux
		}))
	}
	if len(all) > 0 {
		return all
	}
	for i := range s.Requests {
		if r := &s.Requests[i]; r.Person == "" && r.Kind != term.SpotMeter {
			all = append(all, s.curve(meter.Curve{Person: r.Name, Meter: true}, moments, func(k int) float64 { return s.lux(i, levels[k]) }))
		}
	}
	return all
}

// curve fills in the points of a curve; lux is the light at the moment of a place in the list, lx.
func (s *Lit) curve(c meter.Curve, moments []moment, lux func(k int) float64) meter.Curve {
	c.Working = s.Setup.Exposure.Stop.N
	for k, m := range moments {
		p := meter.CurvePoint{Seconds: m.seconds, Lux: lux(k)}
		p.Over = meter.FiniteOrNil(s.Setup.Exposure.Metered().Over(p.Lux, c.Working))
		c.Points = append(c.Points, p)
	}
	return c
}

// lux is the light at a receptor at some levels, lx.
func (s *Lit) lux(receptor int, levels light.Levels) float64 {
	total, _ := s.Basis.Point(receptor, levels)
	return total.Y()
}
