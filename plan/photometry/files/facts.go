package files

import (
	"fmt"
	"math"

	"scrimshaw/plan/unit"
)

// Facts are the figures as they print: a name and a value each.
func (f *Figures) Facts() [][2]string {
	facts := [][2]string{
		{"flux", unit.FormatFigures(f.Flux) + " lm"},
		{"peak", unit.FormatFigures(f.Peak) + " cd, " + f.peakPlace()},
		{"beam, to 50 %", bothWays(f.Beam)},
		{"field, to 10 %", bothWays(f.Field)},
	}
	if f.Rated != nil {
		facts = append(facts, [2]string{"efficiency", unit.FormatPercent(*f.Ratio) + " of " + unit.FormatFigures(*f.Rated) + " lm"})
	} else {
		facts = append(facts, [2]string{"efficiency", "absolute photometry"})
	}
	if f.Watts != nil {
		facts = append(facts, [2]string{"power", unit.FormatPower(*f.Watts) + ", " + unit.FormatFigures(f.Flux / *f.Watts) + " lm/W"})
	}
	return append(facts, [2]string{"opening", f.Opening.words()}, [2]string{"measured", f.measured()})
}

func (f *Figures) peakPlace() string {
	switch {
	case f.PeakAt[0] == 0:
		return "on the axis"
	case f.axial, f.PeakAt[0] == 180:
		return unit.FormatAngle(f.PeakAt[0]) + " off the axis"
	}
	return unit.FormatAngle(f.PeakAt[0]) + " off the axis at C" + unit.FormatNumber(f.PeakAt[1])
}

// bothWays prints an angle that may differ between the planes of C0 and of C90.
func bothWays(a [2]float64) string {
	if a[0] == 360 && a[1] == 360 {
		return "none, it goes out behind"
	}
	if math.Abs(a[0]-a[1]) < 0.05 {
		return unit.FormatAngle(a[0])
	}
	return unit.FormatAngle(a[0]) + " at C0, " + unit.FormatAngle(a[1]) + " at C90"
}

func (o Luminous) words() string {
	switch {
	case o.Width == 0:
		return o.Form
	case o.Height == 0:
		return o.Form + ", " + unit.FormatLength(o.Width, false)
	}
	return fmt.Sprintf("%s, %.2f x %.2f m (C0, C90)", o.Form, o.Width, o.Height)
}

// measured is the system and the reach of the table.
func (f *Figures) measured() string {
	planes := "1 plane"
	if f.Planes != 1 {
		planes = fmt.Sprintf("%d planes", f.Planes)
	}
	return fmt.Sprintf("type %s, %s, %s to %s", f.Type, planes, unit.FormatAngle(f.Angles[0]), unit.FormatAngle(f.Angles[1]))
}
