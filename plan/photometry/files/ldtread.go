package files

import (
	"fmt"
	"math"

	"scrimshaw/plan/source"
)

// ReadLDT reads a EULUMDAT file. It is not ok after an error, and the result is nil then.
func ReadLDT(f *source.File, log *source.Log) (*LDT, bool) {
	t, ok := newText(f, log)
	if !ok {
		return nil, false
	}
	defer t.logQuirks()
	r := &ldtReader{text: t, out: &LDT{}}
	if !r.plausible() || !r.head() || !r.complete() {
		return nil, false
	}
	if !r.sets() || !r.ratios() || !r.planes() || !r.angles() || !r.candela() || !r.checkLight() {
		return nil, false
	}
	return r.out, true
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
	if !ok || !r.checkPlaneCount(planes, p) || !r.optionalNumber(&d.PlaneStep, turns, "the distance between C planes") {
		return false
	}
	angles, _, ok := r.count("the number of gamma angles", 2, len(r.lines))
	if !ok {
		return false
	}
	d.Planes, d.Angles = make([]float64, planes), make([]float64, angles)
	return r.optionalNumber(&d.AngleStep, turns, "the distance between gamma angles") && r.description()
}

// description reads what the file says of itself and of the luminaire, lines 8 to 26.
func (r *ldtReader) description() bool {
	d := r.out
	for _, s := range []*string{&d.Report, &d.LuminaireName, &d.Number, &d.FileName, &d.Date} {
		r.textLine(s)
	}
	if !r.sizes() {
		return false
	}
	if !(d.Conversion > 0) {
		_, p := r.line(r.next - 2)
		r.noteQuirk(p, CodeValue, "", "a conversion factor of %g would leave no light; it is taken as 1", d.Conversion)
	}
	var ok bool
	r.setCount, _, ok = r.count("the number of lamp sets", 1, len(r.lines))
	return ok
}

// sizes reads the sizes of the luminaire, lines 13 to 21, and the figures of all its light behind them.
func (r *ldtReader) sizes() bool {
	d := r.out
	for _, v := range []struct {
		at   *float64
		l    limits
		what string
	}{
		{&d.Length, millis, "the length of the luminaire"}, {&d.Width, millis, "the width of the luminaire"}, {&d.Height, millis, "the height of the luminaire"},
		{&d.LuminousLength, millis, "the length of the luminous area"}, {&d.LuminousWidth, millis, "the width of the luminous area"},
		{&d.LuminousHeights[0], millis, "the luminous height at C0"}, {&d.LuminousHeights[1], millis, "the luminous height at C90"},
		{&d.LuminousHeights[2], millis, "the luminous height at C180"}, {&d.LuminousHeights[3], millis, "the luminous height at C270"},
		{&d.Downward, percent, "the downward flux fraction"}, {&d.Efficiency, percent, "the light output ratio"},
		{&d.Conversion, ratios, "the conversion factor"}, {&d.Tilt, turns, "the tilt"},
	} {
		if !r.optionalNumber(v.at, v.l, v.what) {
			return false
		}
	}
	return true
}

// ratios reads the ten direct ratios.
func (r *ldtReader) ratios() bool {
	for i := range r.out.DirectRatios {
		if !r.optionalNumber(&r.out.DirectRatios[i], ratios, numbered("direct ratio #", i, ratioLines)) {
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
	return r.checkPlaneRange()
}

// checkPlaneRange refuses measured planes that do not run as the symmetry has them.
func (r *ldtReader) checkPlaneRange() bool {
	d := r.out
	first, n := d.stored()
	from, to := d.Planes[first], d.Planes[(first+n-1)%len(d.Planes)]
	if gap := 360 - (to - from); d.Symmetry == NoSymmetry && n > 1 && gap > 1.5*longest(d.Planes) {
		_, p := r.line(r.planesAt)
		r.noteQuirk(p, CodeAngles, "the symmetry indicator may be wrong", "without a symmetry the planes go all round, and here only from C%g to C%g; light is taken to change evenly between the two", from, to)
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
		r.noteQuirk(p, CodeAngles, "", "the gamma angles run from %g to %g, not from 0 or 90 to 90 or 180; no light is taken beyond them", first, last)
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
				r.noteQuirk(p, CodeValue, "", "an intensity below 0 is taken as no light")
			}
		}
	}
	return true
}

// checkLight makes the light of the file, to find whether it can be and whether its figures agree.
func (r *ldtReader) checkLight() bool {
	d := r.out
	_, at := r.line(r.candelaAt)
	v, row, column := greatest(d.Candela)
	if _, p := r.line(r.candelaAt + row*len(d.Angles) + column); !r.strong(v*d.Factor(), p) {
		return false
	}
	s, err := d.Source()
	if err != nil {
		r.fault(at, CodeValue, "", "%s", err)
		return false
	}
	if rated := d.Sets[0].Lumens; d.Efficiency > 0 {
		says := rated * d.Efficiency / 100
		if math.Abs(s.Flux-says) > 0.05*says {
			_, at = r.line(22)
			r.noteQuirk(at, CodeBalance, "the flux of the lamps, the light output ratio or the conversion factor may be wrong",
				"the intensities add up to %.0f lm; a light output ratio of %g %% of %g lm says %.0f lm", s.Flux, d.Efficiency, rated, says)
		}
	}
	return true
}
