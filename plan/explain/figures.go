package explain

import (
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan/meter"
)

// figuresPrinted are the figures of a value that count, and printedPlaces the most places behind its point.
const (
	figuresPrinted = 6
	printedPlaces  = 9
)

// figure prints a value to figuresPrinted figures, without zeros at its end and never with an exponent.
func figure(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return strconv.FormatFloat(v+0, 'g', -1, 64)
	}
	places := figuresPrinted - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if places <= 0 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	s := strconv.FormatFloat(v, 'f', min(places, printedPlaces), 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// inNumbers is the formula with figures in the place of symbols.
func (s *Step) inNumbers() string {
	var b strings.Builder
	eachWord(s.Formula, func(word string, name bool) {
		v, known := s.input(word)
		switch {
		case !name || !known:
			b.WriteString(word)
		case v < 0:
			b.WriteString("(" + figure(v) + ")")
		default:
			b.WriteString(figure(v))
		}
	})
	return b.String()
}

// equation is the step as the parts of an equation: its symbol, the formula, the formula in numbers, and the value.
func (s *Step) equation() (parts []string) {
	if s.Symbol != "" {
		parts = append(parts, s.Symbol)
	}
	if s.Formula != "" {
		parts = append(parts, s.Formula)
		if len(s.In) > 0 && s.Formula != s.In[0].Symbol {
			parts = append(parts, s.inNumbers())
		}
	}
	value := figure(s.Value)
	switch s.Unit {
	case "":
	case "°":
		value += s.Unit
	default:
		value += " " + s.Unit
	}
	return append(parts, meter.Mark(value, s.Struck))
}
