package files

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/source"
)

var errNoPlanes = errors.New("there are no planes of a known symmetry")

// shiftedLine is the likely cause of a line that cannot be.
const shiftedLine = "a line before it may be missing, or there is one too many"

// The lines of a file before the sets of lamps, and the ratios behind them.
const (
	headLines  = 26
	setLines   = 6
	ratioLines = 10
)

// ReadLDT reads a EULUMDAT file. It is not ok after an error, and the result is nil then.
func ReadLDT(f *source.File, log *source.Log) (*LDT, bool) {
	t, ok := newText(f, log)
	if !ok {
		return nil, false
	}
	defer t.tell()
	r := &ldtReader{text: t, out: &LDT{}}
	if !r.plausible() || !r.head() || !r.complete() {
		return nil, false
	}
	if !r.sets() || !r.ratios() || !r.planes() || !r.angles() || !r.candela() || !r.shine() {
		return nil, false
	}
	return r.out, true
}

// ldtReader reads one file line by line.
type ldtReader struct {
	*text
	out       *LDT
	next      int // line, from 0
	setCount  int
	planesAt  int
	anglesAt  int
	candelaAt int
}

// plausible refuses what is plainly another format.
func (r *ldtReader) plausible() bool {
	if len(r.lines) == 0 {
		r.fault(part{}, CodeFormat, "", "the file is empty")
		return false
	}
	if looksLikeIES(r.file.Text) {
		r.fault(part{}, CodeFormat, "it looks like IES LM-63: name it with the ending .ies", "this is no EULUMDAT file")
		return false
	}
	return true
}

// take is the next line.
func (r *ldtReader) take() (string, part) {
	s, p := r.line(r.next)
	r.next++
	return s, p
}

func (r *ldtReader) textLine(dst *string) { *dst, _ = r.take() }

// decimal reads a number with a point, or with a comma, which is noted.
func (r *ldtReader) decimal(s string, p part) (float64, bool) {
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		v, ok := number(strings.Replace(s, ",", ".", 1))
		if ok {
			r.odd(p, CodeQuirk, "", "the decimal comma is read as a point")
		}
		return v, ok
	}
	return number(s)
}

// need reads a line that must be a number.
func (r *ldtReader) need(what string) (float64, part, bool) {
	s, p := r.take()
	v, ok := r.decimal(s, p)
	if !ok {
		r.fault(p, CodeNumber, r.hintOfLine(s), "%s belongs in line %d, not %s", what, r.next, found(s))
	}
	return v, p, ok
}

// found is the text of a line in a message.
func found(s string) string {
	if s == "" {
		return "nothing"
	}
	return quoted(s)
}

// hintOfLine is a likely cause of a line that is no number.
func (r *ldtReader) hintOfLine(s string) string {
	switch {
	case strings.ContainsAny(s, " \t;") && len(strings.Fields(s)) > 1:
		return "the format has one number a line"
	case s == "":
		return "a line may be empty where a value belongs, or the file was cut off"
	}
	return shiftedLine
}

// may reads a line that should be a number, on which little hangs: an empty one is 0, and words
// behind a number are left out.
func (r *ldtReader) may(dst *float64, what string) bool {
	s, p := r.take()
	if s == "" {
		if r.next <= len(r.lines) {
			r.odd(p, CodeQuirk, "", "%s is left empty; it is taken as 0", what)
		}
		return true
	}
	v, ok := r.decimal(s, p)
	if !ok {
		if v, ok = r.decimal(leading(s), p); ok {
			r.odd(p, CodeQuirk, "", "%s has words after its number; they are ignored", what)
		}
	}
	if !ok {
		r.fault(p, CodeNumber, r.hintOfLine(s), "%s belongs in line %d, not %s", what, r.next, found(s))
	}
	*dst = v
	return ok
}

// count reads a whole number from least to most.
func (r *ldtReader) count(what string, least, most int) (int, part, bool) {
	v, p, ok := r.need(what)
	if !ok {
		return 0, p, false
	}
	n, ok := whole(v, most)
	if !ok || n < least {
		r.fault(p, CodeValue, shiftedLine, "%s is a whole number from %d to %d, not %s", what, least, most, quoted(r.words(p)))
		return 0, p, false
	}
	return n, p, true
}

// head reads the 26 lines before the sets of lamps.
func (r *ldtReader) head() bool {
	d := r.out
	r.textLine(&d.Company)
	var ok bool
	if d.Kind, _, ok = r.count("the type indicator", 0, 3); !ok {
		return false
	}
	symmetry, _, ok := r.count("the symmetry indicator", 0, 4)
	if !ok {
		return false
	}
	d.Symmetry = Symmetry(symmetry)
	planes, p, ok := r.count("the number of C planes", 1, len(r.lines))
	if !ok || !r.divides(planes, p) || !r.may(&d.PlaneStep, "the distance between C planes") {
		return false
	}
	angles, _, ok := r.count("the number of gamma angles", 2, len(r.lines))
	if !ok {
		return false
	}
	d.Planes, d.Angles = make([]float64, planes), make([]float64, angles)
	return r.may(&d.AngleStep, "the distance between gamma angles") && r.description()
}

// divides refuses a number of planes that the symmetry cannot have.
func (r *ldtReader) divides(planes int, p part) bool {
	by := map[Symmetry]int{AboutC0: 2, AboutC90: 4, AboutC0andC90: 4}[r.out.Symmetry]
	if by == 0 || planes%by == 0 {
		return true
	}
	hint := "the number of C planes or the symmetry indicator is wrong"
	if (planes-1)%by == 0 {
		hint = "C360 is C0 and not counted again"
	}
	r.fault(p, CodeCount, hint, "with the symmetry indicator %d the number of C planes is a multiple of %d, not %d", r.out.Symmetry, by, planes)
	return false
}

// description reads what the file says of itself and of the luminaire, lines 8 to 26.
func (r *ldtReader) description() bool {
	d := r.out
	for _, s := range []*string{&d.Report, &d.LuminaireName, &d.Number, &d.FileName, &d.Date} {
		r.textLine(s)
	}
	for _, v := range []struct {
		at   *float64
		what string
	}{
		{&d.Length, "the length of the luminaire"}, {&d.Width, "the width of the luminaire"}, {&d.Height, "the height of the luminaire"},
		{&d.LuminousLength, "the length of the luminous area"}, {&d.LuminousWidth, "the width of the luminous area"},
		{&d.LuminousHeights[0], "the luminous height at C0"}, {&d.LuminousHeights[1], "the luminous height at C90"},
		{&d.LuminousHeights[2], "the luminous height at C180"}, {&d.LuminousHeights[3], "the luminous height at C270"},
		{&d.Downward, "the downward flux fraction"}, {&d.Efficiency, "the light output ratio"},
		{&d.Conversion, "the conversion factor"}, {&d.Tilt, "the tilt"},
	} {
		if !r.may(v.at, v.what) {
			return false
		}
	}
	if !(d.Conversion > 0) {
		_, p := r.line(r.next - 2)
		r.odd(p, CodeValue, "", "a conversion factor of %g would leave no light; it is taken as 1", d.Conversion)
	}
	var ok bool
	r.setCount, _, ok = r.count("the number of lamp sets", 1, len(r.lines))
	return ok
}

// expected is how many lines the file has by its own counts, with a symmetry.
func (r *ldtReader) expected(s Symmetry) int {
	d := *r.out
	d.Symmetry = s
	_, stored := d.stored()
	return headLines + setLines*r.setCount + ratioLines + len(d.Planes) + len(d.Angles)*(1+stored)
}

// complete refuses a file that is too short, and notes lines behind its end.
func (r *ldtReader) complete() bool {
	want, have := r.expected(r.out.Symmetry), len(r.lines)
	if have > want {
		_, p := r.line(want)
		r.odd(p, CodeCount, "a count of planes, angles or lamp sets may be wrong", "%d lines follow the last intensity; they are ignored", have-want)
	}
	if have >= want {
		return true
	}
	r.fault(r.end(), CodeCount, r.hintOfLength(want-have), "the file has %d lines and needs %d for %s of %s with the symmetry indicator %d and %s",
		have, want, plural(len(r.out.Planes), "plane"), plural(len(r.out.Angles), "angle"), r.out.Symmetry, plural(r.setCount, "lamp set"))
	return false
}

// hintOfLength is a likely cause of missing lines.
func (r *ldtReader) hintOfLength(missing int) string {
	for s := NoSymmetry; s <= AboutC0andC90; s++ {
		if s != r.out.Symmetry && r.expected(s) == len(r.lines) {
			return fmt.Sprintf("the symmetry indicator %d would fit", s)
		}
	}
	switch missing {
	case ratioLines:
		return "the ten direct ratios may be missing"
	case ratioLines + 3*r.setCount:
		return "the ten direct ratios and the lamps' colour, rendering and watts may be missing"
	}
	return "the file was cut off, or lines are missing"
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// ratios reads the ten direct ratios.
func (r *ldtReader) ratios() bool {
	for i := range r.out.DirectRatios {
		if !r.may(&r.out.DirectRatios[i], numbered("direct ratio #", i, ratioLines)) {
			return false
		}
	}
	return true
}

// list reads a number a line.
func (r *ldtReader) list(dst []float64, what string) (ok bool) {
	for i := range dst {
		if dst[i], _, ok = r.need(numbered(what, i, len(dst))); !ok {
			return false
		}
	}
	return true
}

// planes reads the C planes.
func (r *ldtReader) planes() bool {
	d := r.out
	r.planesAt = r.next
	if !r.list(d.Planes, "C plane #") {
		return false
	}
	if d.Symmetry == AboutAxis {
		return true // one plane stands for all
	}
	if !r.ordered(d.Planes, r.planesAt, "C planes", 360) {
		return false
	}
	first, n := d.stored()
	from, to := d.Planes[first], d.Planes[(first+n-1)%len(d.Planes)]
	if gap := 360 - (to - from); d.Symmetry == NoSymmetry && n > 1 && gap > 1.5*longest(d.Planes) {
		_, p := r.line(r.planesAt)
		r.odd(p, CodeAngles, "the symmetry indicator may be wrong", "without a symmetry the planes go all round, and here only from C%g to C%g; light is taken to change evenly between the two", from, to)
	}
	ends := map[Symmetry][2]float64{AboutC0: {0, 180}, AboutC90: {270, 90}, AboutC0andC90: {0, 90}}
	if want, half := ends[d.Symmetry]; half && (from != want[0] || to != want[1]) {
		_, p := r.line(r.planesAt + first)
		r.fault(p, CodeAngles, "the number of C planes or the symmetry indicator is wrong",
			"with the symmetry indicator %d the measured planes run from C%g to C%g, and here from C%g to C%g", d.Symmetry, want[0], want[1], from, to)
		return false
	}
	return true
}

// angles reads the gamma angles.
func (r *ldtReader) angles() bool {
	d := r.out
	r.anglesAt = r.next
	if !r.list(d.Angles, "gamma angle #") || !r.ordered(d.Angles, r.anglesAt, "gamma angles", 180) {
		return false
	}
	if first, last := d.Angles[0], d.Angles[len(d.Angles)-1]; first != 0 && first != 90 || last != 90 && last != 180 {
		_, p := r.line(r.anglesAt)
		r.odd(p, CodeAngles, "", "the gamma angles run from %g to %g, not from 0 or 90 to 90 or 180; no light is taken beyond them", first, last)
	}
	return true
}

// ordered refuses angles that do not ascend from 0 to most.
func (r *ldtReader) ordered(angles []float64, line int, what string, most float64) bool {
	for i, a := range angles {
		_, p := r.line(line + i)
		switch {
		case i > 0 && a <= angles[i-1]:
			r.fault(p, CodeAngles, "a line may be missing, or a count wrong", "the %s must ascend, and %g comes after %g", what, a, angles[i-1])
		case a < 0 || a > most:
			r.fault(p, CodeAngles, "a line may be missing, or a count wrong", "the %s lie from 0 to %g, and %g does not", what, most, a)
		default:
			continue
		}
		return false
	}
	return true
}

// candela reads the intensities.
func (r *ldtReader) candela() bool {
	d := r.out
	first, n := d.stored()
	r.candelaAt = r.next
	for i := range n {
		row := make([]float64, len(d.Angles))
		start := r.next
		if !r.list(row, fmt.Sprintf("intensity # of C%g", d.Planes[(first+i)%len(d.Planes)])) {
			return false
		}
		d.Candela = append(d.Candela, row)
		for j, v := range row {
			if v < 0 {
				_, p := r.line(start + j)
				r.odd(p, CodeValue, "", "an intensity below 0 is taken as no light")
			}
		}
	}
	return true
}

// shine makes the light of the file, to find whether it can be and whether its figures agree.
func (r *ldtReader) shine() bool {
	d := r.out
	_, at := r.line(r.candelaAt)
	s, err := d.Source()
	if err != nil {
		r.fault(at, CodeValue, "", "%s", err)
		return false
	}
	if rated := d.Sets[0].Lumens; d.Efficiency > 0 {
		says := rated * d.Efficiency / 100
		if math.Abs(s.Flux-says) > 0.05*says {
			_, at = r.line(22)
			r.odd(at, CodeBalance, "the flux of the lamps, the light output ratio or the conversion factor may be wrong",
				"the intensities add up to %.0f lm; a light output ratio of %g %% of %g lm says %.0f lm", s.Flux, d.Efficiency, rated, says)
		}
	}
	return true
}
