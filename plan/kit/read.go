package kit

import (
	"strings"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// quantity reads a number with its unit from least to most, both included. show prints a limit.
func quantity(what, like string, parse func(text string, feet bool) (float64, error),
	show func(float64) string, least, most float64) source.Reader[float64] {
	r := source.Reader[float64]{What: what, Like: like, Schema: func() map[string]any {
		return map[string]any{"type": []any{"number", "string"}}
	}}
	r.Read = func(n *source.Node, c *source.Context) (float64, bool) {
		if n.Kind != source.Scalar {
			c.Error(n, source.CodeWrongType, "write it like "+like, "%s belongs here, not %s", what, n.Kind)
			return 0, false
		}
		v, err := parse(n.Text, c.Feet != nil && c.Feet(n.Span.File))
		if err != nil {
			c.Refuse(n.Span, err)
			return 0, false
		}
		if v < least || v > most {
			c.Error(n, source.CodeOutOfRange, rangeHint(v > most, show(least), show(most)),
				"%s is from %s to %s, and %q is not", what, show(least), show(most), n.Text)
			return 0, false
		}
		return v, true
	}
	return r
}

// rangeHint is the hint for a number that is over or under its range.
func rangeHint(over bool, least, most string) string {
	if over {
		return "write " + most + " or less"
	}
	return "write " + least + " or more"
}

// withoutFileUnits adapts a parser that has no use for the file's units.
func withoutFileUnits(parse func(string) (float64, error)) func(string, bool) (float64, error) {
	return func(text string, _ bool) (float64, error) { return parse(text) }
}

func showLength(metres float64) string { return unit.FormatNumber(metres) + " m" }

func length(what, like string, least, most float64) source.Reader[float64] {
	return quantity(what, like, unit.ParseLength, showLength, least, most)
}

func angle(what, like string, least, most float64) source.Reader[float64] {
	return quantity(what, like, withoutFileUnits(unit.ParseAngle), unit.FormatAngle, least, most)
}

// beamAngle and fieldAngle read the full angles to 50 % and to 10 % of the peak: no lamp has narrower or wider ones.
func beamAngle(like string) source.Reader[float64]  { return angle("a beam angle", like, 0.5, 180) }
func fieldAngle(like string) source.Reader[float64] { return angle("a field angle", like, 0.5, 300) }

func flux(like string) source.Reader[float64] {
	return amount("a flux", like, 1e-3, photometry.MostLumens)
}

func amount(what, like string, least, most float64) source.Reader[float64] {
	return quantity(what, like, withoutFileUnits(unit.ParseNumber), unit.FormatNumber, least, most)
}

func watts(what, like string) source.Reader[float64] {
	return quantity(what, like, withoutFileUnits(unit.ParsePower), unit.FormatPower, 0, 1e6)
}

func mass(what, like string) source.Reader[float64] {
	return quantity(what, like, withoutFileUnits(unit.ParseMass), unit.FormatMass, 0, 1e4)
}

// minutes reads a time in minutes, as s.
func minutes(what, like string) source.Reader[*float64] {
	parse := func(text string) (float64, error) {
		number, named := strings.CutSuffix(strings.TrimSpace(text), "min")
		if !named {
			return 0, source.Errorf(source.CodeBadValue, "write it like "+like, "%q is no time in min", text)
		}
		return unit.ParseNumber(strings.TrimSpace(number))
	}
	show := func(v float64) string { return unit.FormatNumber(v) + " min" }
	return source.Converted(quantity(what, like, withoutFileUnits(parse), show, 0, 120), func(v float64) *float64 { v *= 60; return &v })
}

// share reads a part of a whole: 45 % or 0.45.
func share(what, like string) source.Reader[float64] {
	return quantity(what, like, withoutFileUnits(percentOrNumber), unit.FormatPercent, 0, 1)
}

func percentOrNumber(text string) (float64, error) {
	if strings.Contains(text, "%") {
		return unit.ParsePercent(text)
	}
	return unit.ParseNumber(text)
}

func kelvin(what, like string) source.Reader[float64] {
	parse := func(text string) (float64, error) {
		w, err := unit.ParseKelvin(text)
		return w.Kelvin, err
	}
	return quantity(what, like, withoutFileUnits(parse), unit.FormatKelvin, unit.CoolestWhite, unit.HottestWhite)
}

// array reads exactly n values of one kind.
func array[V any](what, like string, r source.Reader[V], n int) source.Reader[[]V] {
	return source.ListOf(what, like, r, n, n)
}

// pair reads two values of one kind.
func pair(what, like string, r source.Reader[float64]) source.Reader[[2]float64] {
	return source.Converted(array(what, like, r, 2), func(v []float64) [2]float64 { return [2]float64(v) })
}

// chromaticity reads CIE 1931 x, y: a colour that has light in it.
func chromaticity(what string) source.Reader[*[2]float64] {
	r := pair(what, "[0.45, 0.41]", amount("a chromaticity coordinate", "0.45", 0.001, 0.9))
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) ([2]float64, bool) {
		xy, ok := read(n, c)
		if ok && xy[0]+xy[1] > 1 {
			c.Error(n, source.CodeOutOfRange, "", "x and y of a chromaticity add up to 1 at most")
			return xy, false
		}
		return xy, ok
	}
	return source.Converted(r, func(xy [2]float64) *[2]float64 { return &xy })
}

// field is one line of a table of keys: the value that r reads goes where at points.
func field[T, V any](key string, r source.Reader[V], at func(*T) *V, doc string) source.Field[T] {
	return source.Field[T]{Key: key, Doc: doc, Example: r.Like, Schema: r.Schema, Read: source.Into(r, at)}
}

// required makes a key required.
func required[T any](f source.Field[T]) source.Field[T] {
	f.Required = true
	return f
}

// withDefault says what holds where a key is left out.
func withDefault[T any](f source.Field[T], def string) source.Field[T] {
	f.Default = def
	return f
}

// readsWithoutError reports whether read logged no error.
func readsWithoutError(c *source.Context, read func(*source.Context)) bool {
	inner := *c
	inner.Log = &source.Log{}
	read(&inner)
	for _, d := range inner.Log.All() {
		c.Log.Add(d)
	}
	return !inner.Log.Failed()
}
