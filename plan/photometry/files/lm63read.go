package files

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
)

// ReadLM63 reads a file of any edition. It is not ok after an error, and the result is nil then.
func ReadLM63(f *source.File, log *source.Log) (*LM63, bool) {
	t, ok := newText(f, log)
	if !ok {
		return nil, false
	}
	defer t.logQuirks()
	r := &lm63Reader{text: t, out: &LM63{}}
	if !r.labels() || !r.tilt() || !r.figures() || !r.angles() || !r.candela() {
		return nil, false
	}
	r.judge()
	if !r.checkLight() {
		return nil, false
	}
	return r.out, true
}

// tilt reads what belongs to the TILT= line.
func (r *lm63Reader) tilt() bool {
	tilt := &r.out.Tilt
	if tilt.Form != TiltInclude {
		return true
	}
	geometry, p, ok := r.count("the lamp-to-luminaire geometry", 1)
	if !ok {
		return false
	}
	if tilt.Geometry = geometry; geometry > 3 {
		r.noteQuirk(p, CodeValue, "1 is base up or down, 2 horizontal, 3 horizontal and tilting", "the lamp-to-luminaire geometry is 1, 2 or 3; the factors of tilt are left out")
	}
	n, _, ok := r.count("the number of tilt angles", 1)
	if !ok {
		return false
	}
	if tilt.Angles, p, ok = r.numbers(n, "tilt angle #"); !ok {
		return false
	}
	tilt.Factors, _, ok = r.numbers(n, "tilt factor #")
	if ok && !tilt.usable() {
		r.noteQuirk(p, CodeAngles, "", "the tilt angles do not ascend, or a factor is not from 0 to %d; the factors are left out", maxFactor)
	}
	return ok
}

// figures reads the ten and the three numbers before the angles.
func (r *lm63Reader) figures() bool {
	l := r.out
	lamps, p, ok := r.value("the number of lamps", 0, 1)
	if !ok {
		return false
	}
	if l.Lamps, ok = whole(lamps, 1<<20); !ok || l.Lamps < 1 {
		r.noteQuirk(p, CodeValue, "", "the number of lamps is %s; it is taken as 1", quoted(r.words(p)))
		l.Lamps = 1
	}
	vertical, horizontal := 0, 0
	return r.into(&l.Lumens, &r.lumensAt, fluxes, "the flux of a lamp") && r.into(&l.Multiplier, &r.multiplierAt, ratios, "the candela multiplier") &&
		r.counted(&vertical, "the number of vertical angles") && r.counted(&horizontal, "the number of horizontal angles") &&
		r.system() && r.units() && r.dimensions() &&
		r.into(&l.Ballast, &r.ballastAt, ratios, "the ballast factor") && r.into(&l.Second, &r.secondAt, ratios, "the second ballast field") &&
		r.into(&l.Watts, new(part), powers, "the input power") &&
		r.allocateAngles(vertical, horizontal)
}

func (r *lm63Reader) into(dst *float64, at *part, l limits, what string) (ok bool) {
	*dst, *at, ok = r.value(what, 0, 1)
	return ok && r.within(l, *dst, *at, what)
}

func (r *lm63Reader) counted(dst *int, what string) (ok bool) {
	*dst, r.countsAt, ok = r.count(what, 1)
	return ok
}

// allocateAngles makes the lists of angles, after a look at whether the file can hold their values.
func (r *lm63Reader) allocateAngles(vertical, horizontal int) bool {
	left := (len(r.file.Text) - r.next + 1) / 2
	if vertical > left || horizontal > left/vertical {
		r.fault(r.countsAt, CodeCount, "the file was cut off, or a number of angles is wrong",
			"%d horizontal by %d vertical angles need %d candela values, and the rest of the file has room for %d at most",
			horizontal, vertical, horizontal*vertical, left)
		return false
	}
	r.out.Vertical, r.out.Horizontal = make([]float64, vertical), make([]float64, horizontal)
	return true
}

// system reads the photometric type.
func (r *lm63Reader) system() bool {
	v, p, ok := r.value("the photometric type", 0, 1)
	if !ok {
		return false
	}
	switch v {
	case 1:
		r.out.System = photometry.TypeC
	case 2:
		r.out.System = photometry.TypeB
	case 3:
		r.out.System = photometry.TypeA
	default:
		r.fault(p, CodeValue, shiftedHint, "the photometric type is 1 (C), 2 (B) or 3 (A), not %s", quoted(r.words(p)))
		return false
	}
	return true
}

// units reads in what the opening is measured.
func (r *lm63Reader) units() bool {
	v, p, ok := r.value("the type of units", 0, 1)
	if !ok {
		return false
	}
	r.out.Feet = v == 1
	if v != 1 && v != 2 {
		r.noteQuirk(p, CodeValue, "", "the type of units is 1 (feet) or 2 (metres), not %s; metres are taken", quoted(r.words(p)))
	}
	return true
}

// dimensions reads the luminous opening.
func (r *lm63Reader) dimensions() bool {
	l := r.out
	v, at, ok := r.numbers(3, "dimension # of the luminous opening")
	if !ok {
		return false
	}
	l.Width, l.Length, l.Height = v[0], v[1], v[2]
	r.dimensionsAt = part{at.start, r.next}
	sides := metres
	if l.Feet {
		sides = feet
	}
	for i, side := range v {
		if !r.within(sides, side, r.nth(at, i), "a side of the luminous opening") {
			return false
		}
	}
	return true
}

// angles reads both lists of angles.
func (r *lm63Reader) angles() (ok bool) {
	l := r.out
	if l.Vertical, r.verticalAt, ok = r.numbers(len(l.Vertical), "vertical angle #"); !ok {
		return false
	}
	r.verticalAt.end = r.next
	if l.Horizontal, r.horizontalAt, ok = r.numbers(len(l.Horizontal), "horizontal angle #"); !ok {
		return false
	}
	r.horizontalAt.end = r.next
	if l.System == photometry.TypeC {
		return r.ordered(l.Vertical, r.verticalAt, "vertical", 0, 180) && r.ordered(l.Horizontal, r.horizontalAt, "horizontal", -180, 360)
	}
	turn, tip := r.rangesOfPlanes()
	return r.ordered(l.Vertical, r.verticalAt, "vertical", -turn, turn) && r.ordered(l.Horizontal, r.horizontalAt, "horizontal", -tip, tip)
}

// rangesOfPlanes are how far the vertical and the horizontal angle of types A and B can go.
func (r *lm63Reader) rangesOfPlanes() (vertical, horizontal float64) {
	if r.out.System == photometry.TypeB {
		return 180, 90
	}
	return 90, 180
}

// ordered refuses angles that do not ascend from least to most.
func (r *lm63Reader) ordered(angles []float64, at part, kind string, least, most float64) bool {
	for i, a := range angles {
		switch {
		case i > 0 && a <= angles[i-1]:
			r.fault(r.nth(at, i), CodeAngles, r.hintOfOrder(), "the %s angles must ascend, and %g comes after %g", kind, a, angles[i-1])
		case a < least || a > most:
			r.fault(r.nth(at, i), CodeAngles, r.hintOfOrder(), "the %s angles of type %s lie from %g to %g, and %g does not", kind, r.out.System, least, most, a)
		default:
			continue
		}
		return false
	}
	return true
}

// hintOfOrder is a likely cause of angles in disorder.
func (r *lm63Reader) hintOfOrder() string {
	if r.decimalCommas() {
		return "commas separate numbers in this format: write decimals with a point"
	}
	return "a number of angles may be wrong, or a value missing"
}

// decimalCommas reports whether a text looks as if its commas were decimal.
func (r *lm63Reader) decimalCommas() bool {
	b := r.file.Text
	for i := r.verticalAt.start + 1; i+1 < len(b); i++ {
		if b[i] == ',' && digit(b[i-1]) && digit(b[i+1]) {
			return true
		}
	}
	return false
}

// candela reads the intensities, a row for each horizontal angle.
func (r *lm63Reader) candela() bool {
	l := r.out
	r.candelaAt = part{r.next, r.next}
	for _, h := range l.Horizontal {
		row, at, ok := r.numbers(len(l.Vertical), "candela value # at the horizontal angle "+format(h))
		if !ok {
			return false
		}
		if r.candelaAt.end == r.candelaAt.start {
			r.candelaAt = at
		}
		l.Candela = append(l.Candela, row)
	}
	if p, more := r.token(); more {
		extra := 1
		for _, ok := r.token(); ok; _, ok = r.token() {
			extra++
		}
		r.noteQuirk(p, CodeCount, r.hintOfOrder(), "%d more words follow the last candela value; they are ignored", extra)
	}
	return true
}
