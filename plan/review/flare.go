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

// From how far under mid grey, in stops, a veil over the picture lifts its shadows to where one sees it; and how much more, in stops,
// a lamp may veil that is in the picture, where its glow belongs to it. Judgements of the trade (common practice).
const (
	veilUnder = 5.0
	glowMore  = 2.0
)

// flare warns of lamps whose light falls onto the lens of a camera, and of what shades it.
func flare(c *checker, camera *plan.Camera) {
	x := camera.Exposure
	if x.Stop.N == 0 {
		return
	}
	for i := range c.set.Flares {
		f := &c.set.Flares[i]
		if f.Camera != camera.Name {
			continue
		}
		veil := x.Metered().SpotOver(lens.Veil(f.Lux), x.Stop.N)
		l := c.setup.LightNamed(f.Light)
		of, place := camera.Name+" "+l.Name, ""
		if camera.Track != nil {
			place = ", most " + c.along(camera.Name, f.Along) + ","
		}
		gives := fmt.Sprintf("%s there%s; it lays a veil over the picture, %.1f stops %s grey", unit.FormatLux(f.Lux), againstKey(c, f, camera), math.Abs(veil), overOrUnder(veil))
		switch {
		case f.Within():
			if veil >= glowMore-veilUnder {
				c.addMost(of, f.Lux, source.Warning, CodeFlare, l.Span, l.Path, "dim it, turn it from the lens, or let it flare",
					"%s%s shines onto the lens of %s%s from within the frame: %s", withoutPrefix(f.Uncomputed), l.Numbered(), camera.Name, place, gives)
			}
		case veil >= -veilUnder:
			severity := source.Warning
			if f.Shade != nil && f.Shade.Ahead <= atMatteBox {
				severity = source.Info // what hangs on the camera anyway shades it
			}
			c.addMost(of, f.Lux, severity, CodeFlare, l.Span, l.Path, "",
				"%s%s shines onto the lens of %s%s from %s, %s off its axis and %s outside the frame: %s; %s", withoutPrefix(f.Uncomputed), l.Numbered(), camera.Name, place,
				f.From, unit.FormatAngle(f.OffAxis), unit.FormatAngle(f.OffFrame), gives, shadeWords(f, c.setup.Feet))
		}
	}
}

// againstKey says how the light on a lens compares with the key of whom the camera looks at: ", 1.2 stops over the key of ines".
func againstKey(c *checker, f *meter.Flare, camera *plan.Camera) string {
	key := c.reading(camera.Looks + ".key")
	if key == nil || !lit(key) {
		return ""
	}
	over := lens.Stops(f.Lux / *key.Lux)
	return fmt.Sprintf(", %.1f stops %s the key of %s", math.Abs(over), overOrUnder(over), camera.Looks)
}

// atMatteBox is how far before a lens what shades it still hangs on the matte box, m: common practice.
const atMatteBox = 0.2

// shadeWords says what keeps a lamp off a lens.
func shadeWords(f *meter.Flare, feet bool) string {
	s := f.Shade
	if s == nil {
		return "beside the frame no flag has room: flag it at the lamp, or move one of the two"
	}
	length := func(metres float64) string { return unit.FormatLength(metres, feet) }
	side := map[frame.Side]string{frame.LeftSide: "at the left edge", frame.RightSide: "at the right edge", frame.Top: "at the top", frame.Bottom: "at the bottom"}[s.Side]
	if s.Ahead <= atMatteBox {
		return fmt.Sprintf("an eyebrow of %s by %s on the matte box, %s, %s before the lens, shades it", length(s.Width), length(s.Height), side, length(s.Ahead))
	}
	return fmt.Sprintf("a flag of %s by %s, %s before the lens, %s of the frame, shades it", length(s.Width), length(s.Height), length(s.Ahead), side)
}
