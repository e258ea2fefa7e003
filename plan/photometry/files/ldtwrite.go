package files

import (
	"fmt"
	"strconv"
)

// Bytes gives the file, one value a line, the lamp sets set by set. Read again it says the same. It
// refuses values that no file can hold.
func (d *LDT) Bytes() ([]byte, error) {
	if err := d.check(); err != nil {
		return nil, fmt.Errorf("this cannot be written as EULUMDAT: %w", err)
	}
	w := &writer{}
	w.line(d.Company)
	w.counts(d.Kind, int(d.Symmetry), len(d.Planes))
	w.values(d.PlaneStep)
	w.counts(len(d.Angles))
	w.values(d.AngleStep)
	for _, s := range []string{d.Report, d.LuminaireName, d.Number, d.FileName, d.Date} {
		w.line(s)
	}
	w.values(d.Length, d.Width, d.Height, d.LuminousLength, d.LuminousWidth)
	w.values(d.LuminousHeights[:]...)
	w.values(d.Downward, d.Efficiency, d.Conversion, d.Tilt)
	w.counts(len(d.Sets))
	for _, s := range d.Sets {
		w.set(s)
	}
	w.values(d.DirectRatios[:]...)
	w.values(d.Planes...)
	w.values(d.Angles...)
	for _, row := range d.Candela {
		w.values(row...)
	}
	return encoded(w.String()), nil
}

// set writes a lamp set.
func (w *writer) set(s LampSet) {
	w.counts(s.Lamps)
	w.line(s.Kind)
	w.values(s.Lumens)
	w.line(s.Colour)
	w.line(s.Rendering)
	w.values(s.Watts)
}

func (w *writer) counts(list ...int) {
	for _, n := range list {
		w.line(strconv.Itoa(n))
	}
}

func (w *writer) values(list ...float64) {
	for _, v := range list {
		w.line(format(v))
	}
}

// check says what would not read back the same.
func (d *LDT) check() error {
	if d.Kind < 0 || d.Kind > 3 || d.Symmetry < NoSymmetry || d.Symmetry > AboutC0andC90 || len(d.Sets) == 0 {
		return fmt.Errorf("it has a type or symmetry that there is not, or no lamps")
	}
	words := []string{d.Company, d.Report, d.LuminaireName, d.Number, d.FileName, d.Date}
	lists := [][]float64{{d.PlaneStep, d.AngleStep, d.Length, d.Width, d.Height, d.LuminousLength, d.LuminousWidth,
		d.Downward, d.Efficiency, d.Conversion, d.Tilt}, d.LuminousHeights[:], d.DirectRatios[:], d.Planes, d.Angles}
	for _, s := range d.Sets {
		words = append(words, s.Kind, s.Colour, s.Rendering)
		lists = append(lists, []float64{s.Lumens, s.Watts})
	}
	for _, s := range words {
		if clean(s) != s {
			return fmt.Errorf("%q is not one line of text", s)
		}
	}
	if err := finite(append(lists, d.Candela...)); err != nil {
		return err
	}
	if _, n := d.stored(); n != len(d.Candela) {
		return fmt.Errorf("its symmetry asks for %d planes of intensities, and it has %d", n, len(d.Candela))
	}
	_, err := d.Source()
	return err
}
