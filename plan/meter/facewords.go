package meter

import (
	"fmt"

	"scrimshaw/plan/unit"
)

// lines are what is said of a face: its contrast, in both conventions where its sides are not equal, and how each camera
// sees it.
func (f *Face) lines() []string {
	lines := append(f.contrastInWords(), f.aroundInWords()...)
	for i := range f.Views {
		v := &f.Views[i]
		lines = append(lines, "  "+v.inWords("own "+f.Side, f.Contrast != nil && unit.EqualStops(f.Contrast.Stops)))
		if v.White > 0 {
			fill := "dark"
			if f.Contrast != nil {
				fill = v.FillShift.words()
			}
			lines = append(lines, fmt.Sprintf("  from the %s of %s: key side %s; fill side %s", unit.FormatKelvin(v.White), v.Camera, v.KeyShift.words(), fill))
		}
		if v.Behind != nil {
			lines = append(lines, "  "+v.behindInWords())
		}
		if v.Catchlights != nil {
			lines = append(lines, "  "+v.eyesInWords())
		}
	}
	return lines
}

// contrastInWords words how the key side compares with the fill side.
func (f *Face) contrastInWords() []string {
	c, side := f.Contrast, f.Person+": key side "+f.Side
	if c == nil {
		return []string{side + ", and no light on the fill side"}
	}
	ratio := unit.FormatFigures(c.Ratio)
	if unit.EqualStops(c.Stops) {
		return []string{fmt.Sprintf("%s, equal to the fill side (%s : 1)", side, ratio)}
	}
	return []string{
		fmt.Sprintf("%s, %.1f stops over the fill side (%s : 1)", side, c.Stops, ratio),
		fmt.Sprintf("  key + fill : fill %s : 1, as both sides are metered; key : fill %s : 1, what the key side has more", ratio, unit.FormatFigures(c.KeyToFill())),
	}
}
