package files

import "strings"

// shiftedLineHint is the likely cause of a line that cannot be.
const shiftedLineHint = "a line before it may be missing, or there is one too many"

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
			r.noteQuirk(p, CodeQuirk, "", "the decimal comma is read as a point")
		}
		return v, ok
	}
	return number(s)
}

// requiredNumber reads a line that must be a number.
func (r *ldtReader) requiredNumber(what string) (float64, part, bool) {
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
	return shiftedLineHint
}

// optionalNumber reads a line that should be a number, on which little hangs: an empty one is 0, and words
// behind a number are left out.
func (r *ldtReader) optionalNumber(dst *float64, l limits, what string) bool {
	s, p := r.take()
	if s == "" {
		if r.next <= len(r.lines) {
			r.noteQuirk(p, CodeQuirk, "", "%s is left empty; it is taken as 0", what)
		}
		return true
	}
	v, ok := r.decimal(s, p)
	if !ok {
		if v, ok = r.decimal(leading(s), p); ok {
			r.noteQuirk(p, CodeQuirk, "", "%s has words after its number; they are ignored", what)
		}
	}
	if !ok {
		r.fault(p, CodeNumber, r.hintOfLine(s), "%s belongs in line %d, not %s", what, r.next, found(s))
	}
	*dst = v
	return ok && r.within(l, v, p, what)
}

// count reads a whole number from least to most.
func (r *ldtReader) count(what string, least, most int) (int, part, bool) {
	v, p, ok := r.requiredNumber(what)
	if !ok {
		return 0, p, false
	}
	n, ok := whole(v, most)
	if !ok || n < least {
		r.fault(p, CodeValue, shiftedLineHint, "%s is a whole number from %d to %d, not %s", what, least, most, quoted(r.words(p)))
		return 0, p, false
	}
	return n, p, true
}

// list reads a number a line.
func (r *ldtReader) list(dst []float64, what string) (ok bool) {
	for i := range dst {
		if dst[i], _, ok = r.requiredNumber(numbered(what, i, len(dst))); !ok {
			return false
		}
	}
	return true
}
