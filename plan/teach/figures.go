package teach

import (
	"fmt"
	"math"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
)

// saying is a sentence, or some that belong together, in the making: what it prints of figures it keeps as data.
type saying struct{ meter.Sentence }

// add adds words, formatted; figures among the values are kept.
func (s *saying) add(format string, values ...any) {
	for _, v := range values {
		if f, is := v.(meter.Figure); is {
			s.Figures = append(s.Figures, f)
		}
	}
	s.Text += fmt.Sprintf(format, values...)
}

// whole is a figure printed without decimals.
func whole(name string, v float64, of, suffix string) meter.Figure {
	return meter.Figure{Name: name, Value: v, Unit: of, Words: unit.FormatWhole(v) + suffix}
}

// angle is printed in whole degrees: nobody sets a stand more closely.
func angle(name string, v float64) meter.Figure { return whole(name, math.Abs(v), "°", "°") }

func percent(name string, share float64) meter.Figure { return whole(name, 100*share, "%", " %") }

// stops are printed to a tenth, without their sign: words say whether over or under.
func stops(name string, v float64) meter.Figure {
	v = math.Abs(v)
	words := unit.FormatTenths(v) + " stops"
	if words == "1.0 stops" {
		words = "1.0 stop"
	}
	return meter.Figure{Name: name, Value: v, Unit: "stops", Words: words}
}

// ratio is printed to a tenth to one.
func ratio(name string, v float64) meter.Figure {
	return meter.Figure{Name: name, Value: v, Unit: "to one", Words: unit.FormatTenths(v) + " : 1"}
}

// millimetres are printed whole, and to a tenth below one.
func millimetres(name string, mm float64) meter.Figure {
	words := unit.FormatWhole(mm)
	if mm < 0.95 {
		words = unit.FormatTenths(mm)
	}
	return meter.Figure{Name: name, Value: mm, Unit: "mm", Words: words + " mm"}
}

// length is printed in the units of the scene.
func (t *teacher) length(name string, metres float64) meter.Figure {
	return meter.Figure{Name: name, Value: metres, Unit: "m", Words: unit.FormatLength(metres, t.feet)}
}

// illuminance is printed in the units of the scene.
func (t *teacher) illuminance(name string, lux float64) meter.Figure {
	f := meter.Figure{Name: name, Value: lux, Unit: "lx", Words: unit.FormatLux(lux)}
	if t.feet {
		f.Words = unit.FormatFootcandles(lux)
	}
	return f
}

// stop is the T-stop that an illuminance calls for.
func (t *teacher) stop(name string, lux float64) meter.Figure {
	n := t.study.Setup.Exposure.Metered().Number(lux)
	return meter.Figure{Name: name, Value: n, Unit: "T", Words: unit.FormatStop(n)}
}
