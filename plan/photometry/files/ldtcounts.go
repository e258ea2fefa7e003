package files

import "fmt"

// The lines of a file before the sets of lamps, and the ratios behind them.
const (
	headLines  = 26
	setLines   = 6
	ratioLines = 10
)

// checkPlaneCount refuses a number of planes that the symmetry cannot have.
func (r *ldtReader) checkPlaneCount(planes int, p part) bool {
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
		r.noteQuirk(p, CodeCount, "a count of planes, angles or lamp sets may be wrong", "%d lines follow the last intensity; they are ignored", have-want)
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
