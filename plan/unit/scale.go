package unit

import (
	"regexp"
	"strings"
)

// toTheFoot is what may follow the paper inches of an imperial scale.
var toTheFoot = regexp.MustCompile(`^(?:"|in|inch|inches)(?: *(?:to|per|=) *(?:the|a|1|1'(?:-?0")?)? *(?:foot|ft|')?)?$`)

// ParseScale reads the scale of a drawing as how many times larger the set is than the paper:
// `1:50` is 50, `1/4"` (to the foot) is 48.
func ParseScale(text string) (float64, error) {
	s := strings.ToLower(plain(text))
	v, rest, err := mixed(text, s)
	if err != nil {
		return 0, notAScale(text)
	}
	switch {
	case strings.HasPrefix(rest, ":"):
		set, after, err := leading(text, strings.TrimLeft(rest[1:], " "))
		if err != nil || after != "" || v <= 0 {
			return 0, notAScale(text)
		}
		return scaled(text, set/v)
	case toTheFoot.MatchString(rest) && v > 0:
		return scaled(text, 12/v)
	}
	return 0, notAScale(text)
}

// scaled refuses a scale that no plan is drawn at.
func scaled(text string, times float64) (float64, error) {
	if !(times >= 1 && times <= 10000) {
		return 0, fault("a scale is 1:1 to 1:10000", "%q is out of range", text)
	}
	return times, nil
}

func notAScale(text string) error {
	return fault(`write 1:50, or 1/4" for a quarter inch to the foot`, "%q is not a scale", text)
}
