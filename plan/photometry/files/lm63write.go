package files

import (
	"fmt"
	"strings"

	"scrimshaw/plan/photometry"
)

// wrapAt is where lines of numbers are broken: every edition allows at least 80 characters.
const wrapAt = 78

// Bytes gives the file: in the words of its edition, with the line ends that all editions name. Read
// again it says the same. It refuses values that no file can hold.
func (l *LM63) Bytes() ([]byte, error) {
	if err := l.check(); err != nil {
		return nil, fmt.Errorf("this cannot be written as LM-63: %w", err)
	}
	w := &writer{}
	if first := firstLines[l.Edition]; first != "" {
		w.line(first)
	}
	for _, k := range l.Keywords {
		w.keyword(k)
	}
	l.writeTilt(w)
	units := 2.0
	if l.Feet {
		units = 1
	}
	w.numbers(float64(l.Lamps), l.Lumens, l.Multiplier, float64(len(l.Vertical)), float64(len(l.Horizontal)),
		typeNumber(l.System), units, l.Width, l.Length, l.Height)
	w.numbers(l.Ballast, l.Second, l.Watts)
	w.numbers(l.Vertical...)
	w.numbers(l.Horizontal...)
	for _, row := range l.Candela {
		w.numbers(row...)
	}
	return encoded(w.String()), nil
}

// typeNumber is the photometric type as the file has it.
func typeNumber(s photometry.System) float64 { return float64(s) + 1 }

func (l *LM63) writeTilt(w *writer) {
	switch l.Tilt.Form {
	case TiltNone:
		w.line("TILT=NONE")
	case TiltFile:
		w.line("TILT=" + l.Tilt.File)
	case TiltInclude:
		w.line("TILT=INCLUDE")
		w.numbers(float64(l.Tilt.Geometry))
		w.numbers(float64(len(l.Tilt.Angles)))
		w.numbers(l.Tilt.Angles...)
		w.numbers(l.Tilt.Factors...)
	}
}

// check says what would not read back the same.
func (l *LM63) check() error {
	switch {
	case l.Edition > Edition2019 || l.System > photometry.TypeA || l.Tilt.Form > TiltFile:
		return fmt.Errorf("its edition, its type or its form of tilt is not one of the format's")
	case l.Lamps < 1:
		return fmt.Errorf("it has %d lamps", l.Lamps)
	case l.Tilt.Form == TiltInclude && (len(l.Tilt.Angles) == 0 || len(l.Tilt.Angles) != len(l.Tilt.Factors) || l.Tilt.Geometry < 1):
		return fmt.Errorf("its tilt needs a geometry and as many factors as angles")
	case l.Tilt.Form == TiltFile && (clean(l.Tilt.File) != l.Tilt.File || l.Tilt.File == "" || isTiltWord(l.Tilt.File)):
		return fmt.Errorf("%q cannot be the name of a tilt file", l.Tilt.File)
	}
	for i, k := range l.Keywords {
		if err := k.check(i == 0 && l.Edition == Edition1986); err != nil {
			return err
		}
	}
	lists := [][]float64{{l.Lumens, l.Multiplier, l.Width, l.Length, l.Height, l.Ballast, l.Second, l.Watts},
		l.Vertical, l.Horizontal, l.Tilt.Angles, l.Tilt.Factors}
	if err := finite(append(lists, l.Candela...)); err != nil {
		return err
	}
	_, err := l.Source()
	return err
}

func isTiltWord(s string) bool {
	return strings.EqualFold(s, "NONE") || strings.EqualFold(s, "INCLUDE")
}

// check says what keeps a keyword from being read back. first: it would be the first line.
func (k Keyword) check(first bool) error {
	bad := clean(k.Key) != k.Key || strings.ContainsAny(k.Key, "]") || strings.EqualFold(k.Key, "MORE")
	for i, s := range strings.Split(k.Text, "\n") {
		bad = bad || clean(s) != s || k.Key == "" && i == 0 && !plain(s, first)
	}
	if bad {
		return fmt.Errorf("the keyword %q %q would not read back the same", k.Key, k.Text)
	}
	return nil
}

// plain reports whether a line is read as a remark.
func plain(s string, first bool) bool {
	_, tilt := tiltLine(s)
	_, edition := editionOf(s)
	bracketed := strings.HasPrefix(s, "[") && strings.Contains(s, "]")
	return s != "" && !tilt && !bracketed && !(first && edition)
}

// finite refuses what is no number.
func finite(lists [][]float64) error {
	for _, list := range lists {
		for _, v := range list {
			if !(v-v == 0) {
				return fmt.Errorf("%g is not a number of a file", v)
			}
		}
	}
	return nil
}

// writer makes a file, line by line.
type writer struct{ strings.Builder }

func (w *writer) line(s string) {
	w.WriteString(s)
	w.WriteString("\r\n")
}

func (w *writer) keyword(k Keyword) {
	for i, s := range strings.Split(k.Text, "\n") {
		switch {
		case i > 0:
			w.line(strings.TrimSpace("[MORE] " + s))
		case k.Key == "":
			w.line(s)
		default:
			w.line(strings.TrimSpace("[" + k.Key + "] " + s))
		}
	}
}

// numbers writes a record, over several lines where it is long.
func (w *writer) numbers(list ...float64) {
	column := 0
	for i, v := range list {
		s := format(v)
		switch {
		case i == 0:
		case column+1+len(s) > wrapAt:
			w.WriteString("\r\n")
			column = 0
		default:
			w.WriteByte(' ')
			column++
		}
		w.WriteString(s)
		column += len(s)
	}
	w.WriteString("\r\n")
}
