package unit

import (
	"regexp"
	"strconv"
	"strings"
)

// Shutter is an angle in degrees or a time in seconds; the other is zero.
type Shutter struct{ Degrees, Seconds float64 }

// exposureTime is a time of the form 1/50 or 1/50 s.
var exposureTime = regexp.MustCompile(`^1 ?/ ?([0-9]+(?:\.[0-9]+)?) ?(?:s|sec|seconds?)?$`)

// minAngle is the smallest shutter angle, degrees: what is less is a time without its unit.
const minAngle = 1

// ParseShutter reads a shutter: `180`, `172.8°`, `1/50`, `1/48 s`, `0.02 s`.
func ParseShutter(text string) (Shutter, error) {
	s := strings.ToLower(normalise(text))
	if m := exposureTime.FindStringSubmatch(s); m != nil {
		per, err := strconv.ParseFloat(m[1], 64)
		if err != nil || per < 0.01 || per > 1e6 {
			return Shutter{}, fault("a time is 1/1000000 to 100 s", "%q is out of range", text)
		}
		return Shutter{Seconds: 1 / per}, nil
	}
	v, rest, err := leadingNumber(text, s)
	if err != nil {
		return Shutter{}, err
	}
	switch rest {
	case "", "°", "deg", "degree", "degrees":
		if v > 0 && v < minAngle {
			return Shutter{}, fault("did you mean "+strconv.FormatFloat(v, 'f', -1, 64)+" s?", "%q is too small for a shutter angle", text)
		}
		if v <= 0 || v > 360 {
			return Shutter{}, fault("a time is written 1/50", "a shutter angle is above 0° and at most 360°, and %q is not", text)
		}
		return Shutter{Degrees: v}, nil
	case "s", "sec", "second", "seconds":
		if v < 1e-6 || v > 100 {
			return Shutter{}, fault("a time is 1/1000000 to 100 s", "%q is out of range", text)
		}
		return Shutter{Seconds: v}, nil
	}
	return Shutter{}, fault("write 180, 172.8° or 1/50", "%q is not a shutter angle or time", text)
}
