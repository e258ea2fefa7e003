package review

import (
	"fmt"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// visiblePulse is by how much light goes up and down, the most less the least by the mean, where a picture shows it: slow pulses
// and bands are seen from 1 to 2 % on (common practice).
const visiblePulse = 0.02

// flicker warns of lamps on mains that pulse in the pictures of a camera: of all together where that is read, and of one that
// shows in the picture by itself.
func flicker(c *checker, camera *plan.Camera) {
	for i := range c.set.Flickers {
		f := &c.set.Flickers[i]
		if f.Camera != camera.Name {
			continue
		}
		if pulses(f.Worst) {
			warnOfFlicker(c, camera, f.LampNamed(f.Lead), f.Worst, " at "+f.At, f.Safe)
		}
		for k := range f.Lamps {
			if p := &f.Lamps[k]; pulses(p.Swing) && seenBy(c.sights, p.Light, camera.Name) && !(p.Light == f.Lead && pulses(f.Worst)) {
				x := &camera.Exposure
				safe := meter.SteadyingOf(lens.Shutter{FPS: x.FPS, Seconds: x.Seconds, Readout: camera.Readout}, p.Ripple)
				warnOfFlicker(c, camera, p, p.Swing, " where it shows", safe)
			}
		}
	}
}

func pulses(w lens.Swing) bool { return max(w.Frames, w.Rows) >= visiblePulse }

// seenBy says whether something of a light shows in the picture of a camera, meant or not.
func seenBy(sights []frame.Sight, light, camera string) bool {
	for i := range sights {
		if s := &sights[i]; s.Name == light && s.Camera == camera && (s.Shown > 0 || s.Shows()) {
			return true
		}
	}
	return false
}

// warnOfFlicker tells what pulses, by how much, and at what shutter it does not.
func warnOfFlicker(c *checker, camera *plan.Camera, p *meter.Pulsing, w lens.Swing, where string, safe *meter.Steadying) {
	none := ""
	if safe != nil {
		none = "; none " + safe.Words()
	}
	x := &camera.Exposure
	c.addMost(camera.Name+" "+p.Light, max(w.Frames, w.Rows), source.Warning, CodeFlicker, camera.Span, "cameras."+camera.Name, "take one of these, or a lamp that is steady", "%s flickers for %s%s, at %s fps and %s: %s%s",
		p.Numbered, camera.Name, where, unit.FormatNumber(x.FPS), shutterWords(x), meter.SwingWords(w), none)
}

// shutterWords is a shutter by both of its names: "180° (1/48 s)".
func shutterWords(x *plan.Exposure) string {
	return fmt.Sprintf("%s (1/%s s)", unit.FormatAngle(x.Degrees), unit.FormatNumber(1/x.Seconds))
}
