package unit

import (
	"strings"

	"scrimshaw/plan/source"
)

// measure is a kind of quantity and the units that it may be written in.
type measure struct {
	name    string             // with its article: "a lens"
	units   map[string]float64 // lower case spelling to the factor that makes it SI
	listed  string             // the units a message offers: "W or kW"
	offered string             // the unit offered where a bare number stands; "" where bare numbers are read
	bare    float64            // factor of a bare number
}

// parse reads one number with one unit.
func (m *measure) parse(text string) (float64, error) {
	s := normalise(text)
	v, rest, err := leadingNumber(text, s)
	if err != nil {
		return 0, m.naming(err)
	}
	if rest == "" {
		return m.unmarked(text, s, v)
	}
	factor, ok := m.units[strings.ToLower(rest)]
	if !ok {
		return 0, m.unknown(text, rest)
	}
	return v * factor, nil
}

// unmarked is a number without a unit.
func (m *measure) unmarked(text, s string, v float64) (float64, error) {
	if m.offered == "" {
		return v * m.bare, nil
	}
	return 0, fault("did you mean "+s+" "+m.offered+"?", "%s needs %s, and %q has none", m.name, m.listed, text)
}

// unknown is a fault about a unit that m does not have.
func (m *measure) unknown(text, unit string) error {
	units := "the units are "
	if !strings.Contains(m.listed, " ") {
		units = "the unit is "
	}
	return fault(units+m.listed, "%q is not %s: %q is not one of its units", text, m.name, unit)
}

// naming names the quantity in a fault about its number.
func (m *measure) naming(err error) error {
	d := err.(*source.Diagnostic)
	return source.Errorf(d.Code, d.Hint, "%s, where %s belongs", d.Message, m.name)
}

// positive refuses a figure of zero or less.
func (m *measure) positive(text string) (float64, error) {
	v, err := m.parse(text)
	if err == nil && v <= 0 {
		return 0, fault(strings.TrimSpace("write more than 0 "+m.offered), "%s must be more than zero, and %q is not", m.name, text)
	}
	return v, err
}

// atLeastZero refuses a negative figure.
func (m *measure) atLeastZero(text string) (float64, error) {
	v, err := m.parse(text)
	if err == nil && v < 0 {
		return 0, fault("did you mean "+strings.TrimLeft(normalise(text), "- ")+"?", "%s cannot be negative, and %q is", m.name, text)
	}
	return v, err
}
