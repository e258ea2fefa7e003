package review

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// When a lamp shows in glass, as judgements of the trade (common practice): it adds a tenth to what is seen there, a seventh of a
// stop; and it is not so dark that the picture holds nothing of it.
const (
	leastGlint   = 0.1
	darkestGlint = -8.0 // stops from white
)

// reflected warns of equipment that a camera sees in a mirror, and of lamps whose light it sees in glass.
func reflected(c *checker, camera *plan.Camera) {
	for i := range c.set.Reflections {
		r := &c.set.Reflections[i]
		switch {
		case r.Camera != camera.Name:
		case r.Glass:
			inGlass(c, r, camera)
		default:
			what := c.shown("", r.Kind, r.Name, r.Parts, "shows")
			hint := ""
			if r.Own() {
				what = "camera " + r.Name + " sees itself"
			} else if r.Kind == frame.Light {
				hint = "write seen: true where it is meant to be in the picture"
			}
			c.add(source.Warning, CodeReflected, r.Span, r.Path, hint, "%s in the mirror %s, %s: %s of the frame%s",
				what, r.In, placeIn(r.Where, r.Camera), shareInWords(r.Share), outOfMirror(r, c.setup.Feet))
		}
	}
}

// outOfMirror words what takes a thing out of a mirror: "; move it 0.35 m camera left, or turn glass 2° clockwise".
func outOfMirror(r *meter.Reflection, feet bool) string {
	var ways []string
	if r.Move != nil {
		ways = append(ways, moved(r.Move, r.Kind, feet))
	}
	if t := r.Turn; t != nil {
		turn := map[frame.Turning]string{frame.Clockwise: "turn %s %s clockwise", frame.Counterclockwise: "turn %s %s counter-clockwise",
			frame.Down: "tilt %s %s down", frame.Upward: "tilt %s %s up"}[t.Way]
		ways = append(ways, fmt.Sprintf(turn, r.In, unit.FormatAngle(t.Degrees)))
	}
	if len(ways) == 0 {
		return ""
	}
	return "; " + strings.Join(ways, ", or ")
}

// inGlass warns of the light of a lamp in a pane, where that is bright enough to be seen against what is behind it.
func inGlass(c *checker, r *meter.Reflection, camera *plan.Camera) {
	x := camera.Exposure
	if !(r.Luminance > leastGlint*r.Behind) || x.Stop.N == 0 {
		return
	}
	white := lens.Stops(r.Luminance * lens.Grey / x.Metered().MidGrey(x.Stop.N))
	if white < darkestGlint {
		return
	}
	behind := fmt.Sprintf("behind it is nothing, and it shows unless the view there is brighter than %s", unit.FormatLuminance(r.Luminance/leastGlint))
	if r.Behind > 0 {
		over := lens.Stops(r.Luminance / r.Behind)
		behind = fmt.Sprintf("%.1f stops %s what is behind (%s)", math.Abs(over), overOrUnder(over), r.Surface)
	}
	c.addMost(r.Camera+" "+r.In+" "+r.Name, r.Luminance, source.Warning, CodeInGlass, r.Span, r.Path, "move it or the camera, flag it off the glass, tilt the sash, or write seen: true where it is meant to be in the picture",
		"%sthe light of %s shows in the glass of %s, %s: %s of the frame; the glass returns %s, which is %.1f stops %s white; %s",
		withoutPrefix(r.Uncomputed), c.setup.Numbered(r.Name), r.In, placeIn(r.Where, r.Camera), shareInWords(r.Share), unit.FormatPercent(r.Factor), math.Abs(white), overOrUnder(white), behind)
}
