package carto

import (
	"math"
	"strconv"

	"scrimshaw/plan/unit"
)

// Level is one contour's value.
type Level struct {
	Lux     float64
	Stop    int  // whole stops over the working stop's illuminance
	Working bool // the working stop itself, drawn bold
}

// Unit is what levels are lettered in.
type Unit uint8

// The units.
const (
	Lux         Unit = iota // "235"
	Footcandles             // "22"
	TStop                   // "T2.8": the stop at which this light is exposed as the working stop is at its own
	Stops                   // "+1", "0", "−2" from the working stop
)

// StopLevels returns the levels one a stop, anchored at the illuminance of the working stop, that lie
// between low and high lx, lowest first. Where they are more than most, those furthest from the
// working stop are left out, of two as far the darker one. No working stop, no levels.
func StopLevels(working, low, high float64, most int) []Level {
	if !(working > 0) || math.IsInf(working, 0) || !(high >= low) || !(high > 0) || most < 1 {
		return nil
	}
	from := max(-mostStops, int(math.Ceil(stopsOver(math.Max(low, high*0x1p-30), working)-1e-9)))
	to := min(mostStops, int(math.Floor(stopsOver(high, working)+1e-9)))
	for to-from >= most {
		if to > -from {
			to--
		} else {
			from++
		}
	}
	var levels []Level
	for n := from; n <= to; n++ {
		levels = append(levels, Level{Lux: math.Ldexp(working, n), Stop: n, Working: n == 0})
	}
	return levels
}

// mostStops is how many stops from the working stop a level can be. It bounds the levels whatever light a field holds.
const mostStops = 30

// stopsOver gives by how many stops light is over the working stop's, and no more than one beyond mostStops. It takes
// the difference of logarithms, for the ratio may be too large for a number.
func stopsOver(lux, working float64) float64 {
	return math.Min(math.Max(math.Log2(lux)-math.Log2(working), -mostStops-1), mostStops+1)
}

// Span returns the values between which the field lies, but for a share of its points at either
// end that would add levels for specks: 0.002 is two in a thousand. Both are zero where there is
// no data.
func Span(g Grid, share float64) (low, high float64) {
	if !g.usable() {
		return 0, 0
	}
	all := make([]float32, 0, g.NX*g.NY)
	for n := range g.NX * g.NY {
		if !g.masked(n) {
			all = append(all, g.Value[n])
		}
	}
	if len(all) == 0 {
		return 0, 0
	}
	skip := int(math.Min(math.Max(share, 0), 0.5) * float64(len(all)-1))
	return float64(nth(all, skip)), float64(nth(all, len(all)-1-skip))
}

// nth returns the value that would stand at place n if all were sorted, and moves them about (Hoare 1961,
// "Algorithm 65: find", CACM 4(7), p. 321): a sheet asks for the span of its fields many times.
func nth(all []float32, n int) float32 {
	low, high := 0, len(all)-1
	for low < high {
		i, j, middle := low, high, all[low+(high-low)/2]
		for i <= j {
			for all[i] < middle {
				i++
			}
			for all[j] > middle {
				j--
			}
			if i <= j {
				all[i], all[j] = all[j], all[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case n <= j:
			high = j
		case n >= i:
			low = i
		default:
			return all[n]
		}
	}
	return all[n]
}

// Values returns the levels in lx, for Trace.
func Values(levels []Level) []float64 {
	out := make([]float64, len(levels))
	for i, l := range levels {
		out[i] = l.Lux
	}
	return out
}

// Label letters a level; n is the N of the working stop, for TStop.
func (l Level) Label(u Unit, n float64) string {
	switch u {
	case Footcandles:
		return unit.FormatBrief(l.Lux / unit.Footcandle)
	case TStop:
		return unit.FormatStop(n * math.Pow(2, float64(l.Stop)/2))
	case Stops:
		return signed(l.Stop)
	}
	return unit.FormatBrief(l.Lux)
}

// signed writes whole stops with their sign, a true minus; none for zero.
func signed(n int) string {
	switch {
	case n > 0:
		return "+" + strconv.Itoa(n)
	case n < 0:
		return "−" + strconv.Itoa(-n)
	}
	return "0"
}
