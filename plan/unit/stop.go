package unit

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Stop is an aperture: the figure as written, and the number N that it stands for. The marks of
// a lens are rounded names of exact powers of the root of two (T5.6 is 4 sqrt 2), so Written and
// N differ for a mark or a third between marks, and agree for any other figure.
type Stop struct {
	Written float64 // T-number
	N       float64 // T-number
}

// thirds are the names of the third stops from N = 0.5 upward, three a stop: the marks engraved
// on lenses and shown by cameras. Common practice; ISO 517 gives the full stops.
var thirds = [...]string{
	"0.5", "0.56", "0.63", "0.7", "0.8", "0.9", "1", "1.1", "1.2", "1.4", "1.6", "1.8",
	"2", "2.2", "2.5", "2.8", "3.2", "3.5", "4", "4.5", "5", "5.6", "6.3", "7.1",
	"8", "9", "10", "11", "13", "14", "16", "18", "20", "22", "25", "29",
	"32", "36", "40", "45", "51", "57", "64",
}

// aperture is a stop as written: its letter, its figure, and the part of a stop beyond it.
var aperture = regexp.MustCompile(`^(?:[TtFf] ?/? ?)?([0-9]*\.?[0-9]+)(?: *(?:and +(?:a +)?|\+ *)?(1/3|2/3|1/2|third|half))?$`)

// ParseStop reads an aperture: `T2.8`, `2.8`, `f/2.8`, `T2.8+⅓` or `T2.8 1/3` (a third of a
// stop smaller than T2.8). Marks and thirds mean exact powers of the root of two, other figures what
// they say.
func ParseStop(text string) (Stop, error) {
	m := aperture.FindStringSubmatch(normalise(text))
	if m == nil {
		return Stop{}, notAStop(text)
	}
	n, err := strconv.ParseFloat(m[1], 64)
	if err != nil || n < 0.5 || n > 64 {
		return Stop{}, fault("a stop is T0.5 to T64", "%q is out of range", text)
	}
	if m[2] != "" {
		return partStop(text, n, m[2])
	}
	return StopOf(n), nil
}

// notAStop says why a text is no aperture.
func notAStop(text string) error {
	if strings.Contains(text, ",") {
		return fault("use a point: "+strings.ReplaceAll(normalise(text), ",", "."), "%q has a comma in its number", text)
	}
	return fault("write T2.8 or T2.8 1/3", "%q is not a stop", text)
}

// StopOf gives the stop that the figure n stands for.
func StopOf(n float64) Stop {
	if i, ok := thirdNamed(n); ok {
		return Stop{Written: n, N: thirdStop(i)}
	}
	return Stop{Written: n, N: n}
}

// partStop is a mark and a part of a stop beyond it.
func partStop(text string, mark float64, part string) (Stop, error) {
	i, ok := thirdNamed(mark)
	if !ok {
		return Stop{}, fault("write "+FormatStop(mark), "%q counts from a figure that is no mark", text)
	}
	switch part {
	case "1/3", "third":
		i++
	case "2/3":
		i += 2
	default: // a half lies between thirds and has no mark of its own
		n := thirdStop(i) * math.Pow(2, 0.25)
		return Stop{Written: math.Round(n*10) / 10, N: n}, nil
	}
	if i >= len(thirds) {
		return Stop{}, fault("a stop is T0.5 to T64", "%q is out of range", text)
	}
	written, _ := strconv.ParseFloat(thirds[i], 64)
	return Stop{Written: written, N: thirdStop(i)}, nil
}

// thirdNamed finds the third stop that the figure n names.
func thirdNamed(n float64) (int, bool) {
	name := strconv.FormatFloat(n, 'f', -1, 64)
	for i, t := range thirds {
		if t == name {
			return i, true
		}
	}
	return 0, false
}

// thirdStop is the exact number of the i-th third from N = 0.5. Full stops are made from whole
// powers of two and one root, so that T4 is 4 to the last bit.
func thirdStop(i int) float64 {
	stops, third := i/3, i%3
	n := math.Ldexp(0.5, stops/2)
	if stops%2 == 1 {
		n *= math.Sqrt2
	}
	if third > 0 {
		n *= math.Pow(2, float64(third)/6)
	}
	return n
}
