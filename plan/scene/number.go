package scene

import (
	"errors"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// limits bound a number: from least to most, both allowed. Every quantity has both, far beyond what a set holds, so that
// what is computed from it stays within the range of numbers.
type limits struct {
	least, most float64
	under       string // the fix for a number that is too small, where it has one of its own
}

func between(least, most float64) limits { return limits{least: least, most: most} }

// lower gives limits a fix of their own for a number that is too small.
func (l limits) lower(fix string) limits {
	l.under = fix
	return l
}

// contains reports whether a number is within the limits.
func (l limits) contains(v float64) bool {
	return v >= l.least && v <= l.most
}

// hint says how to write a number that lies beyond the limits.
func (l limits) hint(text string, v float64, show func(float64) string) string {
	unsigned := strings.TrimLeft(text, "-\u2212 ")
	switch {
	case v > l.most:
		return "write " + show(l.most) + " or less"
	case l.under != "":
		return l.under
	case unsigned != text && l.contains(-v):
		return "did you mean " + unsigned + "?"
	}
	return "write " + show(l.least) + " or more"
}

// check refuses a number beyond its limits.
func (l limits) check(what, text string, v float64, show func(float64) string) error {
	if l.contains(v) {
		return nil
	}
	return source.Errorf(source.CodeOutOfRange, l.hint(text, v, show), "%s is %s to %s, and %q is not", what, show(l.least), show(l.most), text)
}

// measure is a way to write a number: how it is read and printed, and in which JSON types. One
// that JSON writes as a string alone needs its unit.
type measure struct {
	parse func(text string, feet bool) (float64, error)
	show  func(v float64, feet bool) string
	json  any

	lesser bool // a lesser unit may be meant where a bare number is too large
	share  bool // hundredths may be meant where a bare number is too large
}

// withoutFileUnits adapts the functions of a quantity that does not depend on the file's units.
func withoutFileUnits(parse func(string) (float64, error), show func(float64) string, json any) measure {
	return measure{
		parse: func(text string, _ bool) (float64, error) { return parse(text) },
		show:  func(v float64, _ bool) string { return show(v) },
		json:  json,
	}
}

// shareMeasure is a measure of shares of one.
func shareMeasure(m measure) measure {
	m.share = true
	return m
}

var numberOrText = []any{"number", "string"}

// The measures of the language. Lengths alone may be bare numbers that mean the file's units.
var (
	lengths  = measure{parse: unit.ParseLength, show: showLength, json: numberOrText, lesser: true}
	degrees  = withoutFileUnits(unit.ParseAngle, unit.FormatAngle, numberOrText)
	numbers  = withoutFileUnits(unit.ParseNumber, unit.FormatNumber, "number")
	focals   = withoutFileUnits(unit.ParseLens, unit.FormatLens, "string")
	levels   = withoutFileUnits(parseLevel, unit.FormatPercent, "string")
	percents = withoutFileUnits(unit.ParsePercent, unit.FormatPercent, "string")
	watts    = withoutFileUnits(unit.ParsePower, unit.FormatPower, "string")
	lux      = withoutFileUnits(unit.ParseIlluminance, unit.FormatLux, "string")
	aspects  = withoutFileUnits(unit.ParseAspect, unit.FormatAspect, numberOrText)
	shares   = shareMeasure(withoutFileUnits(parseShare, unit.FormatNumber, numberOrText))
	seconds  = withoutFileUnits(parseSeconds, showSeconds, "string")
	duvs     = withoutFileUnits(unit.ParseDuv, unit.FormatDuv, numberOrText)
)

// quantity reads a number in a measure, within limits. what has its article: "a height".
func quantity(what, like string, m measure, l limits) source.Reader[float64] {
	return scalar(what, like, map[string]any{"type": m.json}, func(text string, n *source.Node, c *source.Context) (float64, error) {
		feet := c.Feet != nil && c.Feet(n.Span.File)
		v, err := m.parse(text, feet)
		if err != nil {
			return 0, unitLess(m.json == "string", text, err)
		}
		err = l.check(what, text, v, func(v float64) string { return m.show(v, feet) })
		if err != nil && m.lesser {
			err = inLesserUnit(err, text, v, l, feet)
		}
		if err != nil && m.share {
			err = inHundredths(err, text, v, l)
		}
		return v, err
	})
}

// inLesserUnit offers centimetres, or inches, for a bare number that is too large a length.
func inLesserUnit(err error, text string, v float64, l limits, feet bool) error {
	name, part := "cm", 100.0
	if feet {
		name, part = "in", 12
	}
	var d *source.Diagnostic
	if _, unmarked := unit.ParseNumber(text); !errors.As(err, &d) || unmarked != nil || v <= l.most || v/part > l.most || v/part < l.least {
		return err
	}
	return withHint(d, "did you mean "+text+" "+name+"?")
}

// minHundredths is from where a share over one was meant in hundredths, and not as a little more than all.
const minHundredths = 2

// inHundredths offers a share of one, or per cent, for a bare number that is too large a share: 62 for 0.62.
func inHundredths(err error, text string, v float64, l limits) error {
	var d *source.Diagnostic
	if _, unmarked := unit.ParseNumber(text); !errors.As(err, &d) || unmarked != nil || v < minHundredths || !l.contains(v/100) {
		return err
	}
	return withHint(d, "write "+unit.FormatNumber(v/100)+", or "+text+" %")
}

// unitLess gives the fault of a bare number its own code, where a unit is needed.
func unitLess(needed bool, text string, err error) error {
	var d *source.Diagnostic
	if _, bare := unit.ParseNumber(text); needed && bare == nil && errors.As(err, &d) {
		return source.Errorf(CodeMissingUnit, d.Hint, "%s", d.Message)
	}
	return err
}

// parseLevel reads a level. One beyond its range is left to the limits, which say so.
func parseLevel(text string) (float64, error) {
	v, err := unit.ParseLevel(text)
	if err != nil {
		if beyond, bad := unit.ParsePercent(text); bad == nil {
			return beyond, nil
		}
	}
	return v, err
}

// showLength prints a limit, without the zeros of a figure to build by.
func showLength(metres float64, feet bool) string {
	switch {
	case feet && metres > 0 && metres < unit.Inch/2: // which no ruler shows
		return unit.FormatNumber(metres/unit.Inch) + `"`
	case feet:
		return unit.FormatFeet(metres)
	}
	return unit.FormatNumber(metres) + " m"
}

// parseShare reads a share of a whole: `0.6` or `60 %`.
func parseShare(text string) (float64, error) {
	if strings.Contains(text, "%") {
		return unit.ParsePercent(text)
	}
	return unit.ParseNumber(text)
}

// parseSeconds reads a time: `4 s`, `1.5 min`. A bare number is refused.
func parseSeconds(text string) (float64, error) {
	number := strings.TrimRight(text, " abcdefghijklmnopqrstuvwxyz")
	v, err := unit.ParseNumber(number)
	if err != nil {
		return 0, source.Errorf(source.CodeBadValue, "write it like 4 s", "%q is not a time", text)
	}
	switch strings.TrimSpace(text[len(number):]) {
	case "s":
		return v, nil
	case "min":
		return v * 60, nil
	case "":
		return 0, source.Errorf(CodeMissingUnit, "did you mean "+number+" s?", "a time needs s or min, and %q has none", text)
	}
	return 0, source.Errorf(source.CodeBadValue, "the units are s and min", "%q is not a time", text)
}

func showSeconds(v float64) string { return unit.FormatNumber(v) + " s" }
