package files

import (
	"math"
	"strings"

	"scrimshaw/plan/photometry"
)

// required are the keywords that LM-63-2002 asks for.
var required = []string{"TEST", "TESTLAB", "ISSUEDATE", "MANUFAC"}

// judge notes what is not as the format has it, in a file that could be read.
func (r *lm63Reader) judge() {
	l := r.out
	r.judgeKeywords()
	if l.Lumens == 0 {
		r.noteQuirk(r.lumensAt, CodeValue, "write -1 for absolute photometry", "the flux of a lamp is 0; the file is taken as absolute photometry")
	}
	for _, f := range []struct {
		v    float64
		at   part
		what string
	}{{l.Multiplier, r.multiplierAt, "candela multiplier"}, {l.Ballast, r.ballastAt, "ballast factor"}} {
		if !(f.v > 0) {
			r.noteQuirk(f.at, CodeValue, "", "a %s of %g would leave no light; it is taken as 1", f.what, f.v)
		}
	}
	if l.Second != 1 && (l.Edition == Edition1995 || l.Edition == Edition2002) {
		r.noteQuirk(r.secondAt, CodeUnused, "", "the second ballast field is %g; the edition of %s does not use it, and it is ignored", l.Second, l.Edition)
	}
	if _, lost := l.Opening(); lost != "" {
		r.noteQuirk(r.dimensionsAt, CodeUnused, "", "%s", lost)
	}
	r.judgeRanges()
	r.judgeValues()
}

// judgeKeywords notes keywords that the edition asks for.
func (r *lm63Reader) judgeKeywords() {
	l := r.out
	if l.Edition < Edition2002 {
		return
	}
	var missing []string
	for _, key := range required {
		if l.Get(key) == "" {
			missing = append(missing, "["+key+"]")
		}
	}
	if len(missing) > 0 {
		r.noteQuirk(part{}, CodeLabel, "", "the edition of %s requires the keywords %s", l.Edition, strings.Join(missing, ", "))
	}
}

// judgeRanges notes angles that do not begin and end where the format has it.
func (r *lm63Reader) judgeRanges() {
	l := r.out
	first, last := l.Vertical[0], l.Vertical[len(l.Vertical)-1]
	if l.System == photometry.TypeC {
		r.judgePlanes(first, last)
		return
	}
	for _, c := range []struct {
		kind   string
		angles []float64
		at     part
	}{{"vertical", l.Vertical, r.verticalAt}, {"horizontal", l.Horizontal, r.horizontalAt}} {
		first, last := c.angles[0], c.angles[len(c.angles)-1]
		if first != -90 && first != 0 || last != 90 {
			r.noteQuirk(c.at, CodeAngles, "", "the %s angles run from %g to %g, not from -90 or 0 to 90; no light is taken beyond them", c.kind, first, last)
		}
	}
	if first == 0 {
		r.noteQuirk(r.verticalAt, CodeAngles, "", "the vertical angles begin at 0; they are mirrored there")
	}
}

// judgePlanes notes angles of type C that do not begin and end where the format has it; first and last are the vertical ones.
func (r *lm63Reader) judgePlanes(first, last float64) {
	l := r.out
	if first != 0 && first != 90 || last != 90 && last != 180 {
		r.noteQuirk(r.verticalAt, CodeAngles, "", "the vertical angles run from %g to %g, not from 0 or 90 to 90 or 180; no light is taken beyond them", first, last)
	}
	if l.symmetry() == open {
		r.noteQuirk(r.horizontalAt, CodeAngles, "", "the last horizontal angle is %g; the first plane is taken again at 360", l.Horizontal[len(l.Horizontal)-1])
	}
	if l.Horizontal[0] == 90 && l.Edition != Edition1995 || l.Horizontal[0] == -90 {
		r.noteQuirk(r.horizontalAt, CodeAngles, "", "horizontal angles from %g are those of a file of 1995, mirrored at the planes 90 and 270", l.Horizontal[0])
	}
}

// judgeValues notes intensities that cannot be.
func (r *lm63Reader) judgeValues() {
	l := r.out
	at := part{r.candelaAt.start, r.candelaAt.start}
	poles, ends := false, false
	for i, row := range l.Candela {
		for _, v := range row {
			if v < 0 {
				r.noteQuirk(at, CodeValue, "", "a candela value below 0 is taken as no light")
			}
		}
		poles = poles || l.System == photometry.TypeC && l.Vertical[0] == 0 && differ(row[0], l.Candela[0][0])
		whole := i == len(l.Candela)-1 && i > 0 && l.Horizontal[i]-l.Horizontal[0] == 360
		for j := range row {
			ends = ends || whole && differ(row[j], l.Candela[0][j])
		}
	}
	if poles {
		r.noteQuirk(at, CodeBalance, "", "the planes do not agree on the intensity along the axis")
	}
	if ends {
		r.noteQuirk(at, CodeBalance, "", "the planes at %g and %g, which are one, do not agree", l.Horizontal[0], l.Horizontal[len(l.Horizontal)-1])
	}
}

// differ reports whether two intensities are apart by more than a rounding.
func differ(a, b float64) bool { return math.Abs(a-b) > 0.01*math.Max(math.Abs(a), math.Abs(b)) }

// checkLight makes the light of the file, to find whether it can be.
func (r *lm63Reader) checkLight() bool {
	l := r.out
	if l.symmetry() == unknown {
		first, last := l.Horizontal[0], l.Horizontal[len(l.Horizontal)-1]
		r.fault(r.horizontalAt, CodeAngles, "a horizontal angle may be missing or wrong",
			"the horizontal angles run from %g to %g; type C has one plane, or runs from 0 to 90, 180 or 360 (or from 90 to 270)", first, last)
		return false
	}
	if v, row, column := greatest(l.Candela); !r.strong(v*l.Factor(), r.nth(r.candelaAt, row*len(l.Vertical)+column)) {
		return false
	}
	s, err := l.Source()
	if err != nil {
		r.fault(part{r.candelaAt.start, r.candelaAt.start}, CodeValue, "", "%s", err)
		return false
	}
	if rated := l.Rated(); rated > 0 && s.Flux > 1.005*rated {
		r.noteQuirk(part{r.candelaAt.start, r.candelaAt.start}, CodeBalance, "the lumens, the number of lamps or the candela multiplier may be wrong",
			"the intensities add up to %.0f lm, more than the %.0f lm of the lamps", s.Flux, rated)
	}
	return true
}
