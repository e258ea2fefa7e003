package source

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Int reads a whole number from least to most, both included.
func Int(what string, least, most int) Reader[int] {
	low, high := float64(least), float64(most)
	return scalar(what, showNumber(sample(low, high)), numberSchema("integer", low, high),
		func(n *Node) (int, *Diagnostic) {
			v, wrong := parseNumber(what, n)
			if wrong == nil && v != math.Trunc(v) {
				wrong = Errorf(CodeBadValue, "write "+showNumber(max(low, min(high, math.Round(v)))), "%s is a whole number, and %s is not", what, n.Text)
			}
			if wrong == nil {
				wrong = checkRange(what, n.Text, v, low, high)
			}
			if wrong != nil {
				return 0, wrong
			}
			return int(v), nil
		})
}

// decimal is how a number may be written. 010 is left out (eight to YAML 1.1, ten to others), as
// are 1_000 and 0x10.
var decimal = regexp.MustCompile(`^[+-]?((0|[1-9][0-9]*)(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?$`)

// parseNumber reads the text of n as a finite decimal number.
func parseNumber(what string, n *Node) (float64, *Diagnostic) {
	text := n.Text
	if word := strings.ToLower(strings.TrimLeft(text, "+-.")); word == "nan" || word == "inf" || word == "infinity" {
		return 0, Errorf(CodeNotFinite, "write a number, such as 1", "%s must be a finite number, not %s", what, text)
	}
	if !decimal.MatchString(text) {
		return 0, Errorf(CodeBadValue, numberHint(text), "%s is a number, and %q is not", what, text)
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, Errorf(CodeNotFinite, "write a smaller number", "%s must be a finite number, and %q is too large", what, text)
	}
	return v + 0, nil // + 0 drops the sign of a negative zero
}

// figures puts back the figures that letters are typed for: 1O, l2.
var figures = strings.NewReplacer("O", "0", "o", "0", "I", "1", "l", "1")

// numberHint says how to write what other programs would have read as a number.
func numberHint(text string) string {
	digits := strings.TrimLeft(text, "+-")
	switch {
	case strings.Contains(text, "_"):
		return "write the digits together: " + strings.ReplaceAll(text, "_", "")
	case decimal.MatchString(figures.Replace(text)):
		return "write " + figures.Replace(text)
	case strings.Contains(text, ","):
		return "use a point, and no marks between thousands"
	case strings.HasPrefix(digits, "0x"), strings.HasPrefix(digits, "0o"), strings.HasPrefix(digits, "0b"):
		return "write it as a decimal number"
	case strings.HasPrefix(digits, "0") && strings.Trim(digits, "0123456789.") == "":
		return "write it without the leading zero"
	}
	return ""
}

// checkRange refuses a number that is not from least to most.
func checkRange(what, text string, v, least, most float64) *Diagnostic {
	hint := "write " + showNumber(least) + " or more"
	if v > most {
		hint = "write " + showNumber(most) + " or less"
	}
	switch {
	case v >= least && v <= most:
		return nil
	case math.IsInf(most, 1):
		return Errorf(CodeOutOfRange, hint, "%s is %s or more, and %s is less", what, showNumber(least), text)
	case math.IsInf(least, -1):
		return Errorf(CodeOutOfRange, hint, "%s is %s or less, and %s is more", what, showNumber(most), text)
	}
	return Errorf(CodeOutOfRange, hint, "%s is from %s to %s, and %s is not", what, showNumber(least), showNumber(most), text)
}

// sample is a number between least and most that looks natural in an example.
func sample(least, most float64) float64 { return max(min(1, most), least) }

func showNumber(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
