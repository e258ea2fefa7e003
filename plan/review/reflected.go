package review

import (
	"fmt"
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// darkestGlint is how dark something may be in glass, stops from white, that a picture still holds: 5.5 under grey (common practice, from memory).
const darkestGlint = -8.0

// reflected warns of equipment that a camera sees in a mirror, and of lamps and of what light falls on that it sees in glass.
func reflected(c *checker, camera *plan.Camera) {
	for i := range c.set.Reflections {
		r := &c.set.Reflections[i]
		switch {
		case r.Camera != camera.Name:
		case r.Glass:
			inGlass(c, r, camera)
		default:
			what := c.shown(r.Mark, r.Kind, r.Name, r.Parts, "shows")
			hint := ""
			if r.Own() {
				what = "camera " + r.Name + " sees itself"
			} else if r.Kind == frame.Light {
				hint = "write seen: true where it is meant to be in the picture"
			}
			c.add(source.Warning, CodeReflected, r.Span, r.Path, hint, "%s in the mirror %s, %s: %s of the frame%s%s",
				what, r.In, placeIn(r.Where, r.Camera), shareInWords(r.Share), mostAlong(c, camera, r), outOfMirror(r, c.setup.Feet))
		}
	}
}

// mostAlong says where on its track a camera sees most of a reflection: ", most 1.20 m along its track"; "" of one that stands.
func mostAlong(c *checker, camera *plan.Camera, r *meter.Reflection) string {
	if camera.Track == nil {
		return ""
	}
	return ", most " + c.along(camera.Name, r.Along)
}

// outOfMirror words what takes a thing out of a mirror: "; move it 0.35 m camera left, or turn glass 2° clockwise".
func outOfMirror(r *meter.Reflection, feet bool) string {
	ways, spoilt := moves(r.Move, r.Kind, feet)
	if t := r.Turn; t != nil {
		turn := map[frame.Turning]string{frame.Clockwise: "turn %s %s clockwise", frame.Counterclockwise: "turn %s %s counter-clockwise",
			frame.Down: "tilt %s %s down", frame.Upward: "tilt %s %s up"}[t.Way]
		ways = append(ways, fmt.Sprintf(turn, r.In, unit.FormatAngle(t.Degrees)))
	}
	return inOneLine(ways, spoilt)
}

// inGlass warns of the light of a lamp in a pane, or of what light falls on, where that is bright enough to be seen against what is behind it.
func inGlass(c *checker, r *meter.Reflection, camera *plan.Camera) {
	x := camera.Exposure
	if !r.StandsOut() || x.Stop.N == 0 {
		return
	}
	grey := x.Metered().SpotOver(r.Luminance, x.Stop.N)
	white := grey + lens.Stops(lens.Grey)
	if white < darkestGlint {
		return
	}
	what, over, out := "the light of "+c.setup.Numbered(r.Name)+" shows", inStops(white, "white"), ""
	hint := "move it or the camera, flag it off the glass, tilt the sash"
	if len(r.Glints) > 0 {
		what, over, out = litInWords(c, r), inStops(grey, "grey"), outOfGlass(r, c.setup)
		hint = "keep the light off it, move the camera, tilt the sash"
	}
	if r.Kind == frame.Light {
		hint += ", or write seen: true where it is meant to be in the picture"
	}
	severity := source.Warning
	if len(r.Glints) > 0 && !(r.Behind > 0) {
		severity = source.Info // by day the view hides it, and nobody said how bright that is
	}
	c.addMost(r.Camera+" "+r.In+" "+r.Path, r.Luminance, severity, CodeInGlass, r.Span, r.Path, hint,
		"%s%s in the glass of %s, %s: %s of the frame%s; the glass returns %s, which is %s; %s%s",
		withoutPrefix(r.Uncomputed), what, r.In, placeIn(r.Where, r.Camera), shareInWords(r.Share), mostAlong(c, camera, r), unit.FormatPercent(r.Factor), over, behindInWords(r), out)
}

// litInWords words what light falls on that shows in glass: "G1 silk shows", of a lamp its cloth.
func litInWords(c *checker, r *meter.Reflection) string {
	if r.Kind == frame.Light {
		return "the cloth of " + c.setup.Numbered(r.Name) + " shows"
	}
	return c.shown("", r.Kind, r.Name, r.Parts, "shows")
}

// outOfGlass words the least move that takes a thing out of glass.
func outOfGlass(r *meter.Reflection, s *plan.Setup) string {
	return inOneLine(moves(frame.OutOfGlass(s, &r.Reflection), r.Kind, s.Feet))
}

// inStops words how far something lies from grey or white.
func inStops(stops float64, from string) string {
	return fmt.Sprintf("%.1f stops %s %s", math.Abs(stops), overOrUnder(stops), from)
}

// behindInWords sets what shows in glass beside what is behind it.
func behindInWords(r *meter.Reflection) string {
	if !(r.Behind > 0) {
		return "behind it is nothing, and it shows unless the view there is brighter than " + unit.FormatLuminance(r.Luminance/meter.LeastGlint)
	}
	return inStops(lens.Stops(r.Luminance/r.Behind), "what is behind ("+r.Surface+")")
}
