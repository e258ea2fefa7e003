package meter

import (
	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
)

// Flicker is how lamps that go up and down on their mains show in the pictures of one camera.
type Flicker struct {
	Camera string
	Lamps  []Pulsing  // in the order of the scene
	Worst  lens.Swing // of all that is read, where it is most: what the lamps give there, each by its share
	At     string     // the name of that reading; "" where nothing is read
	Lead   string     // the lamp that does most of it there
	Safe   *Steadying // what ends the flicker of that lamp; nil where no shutter does
}

// Pulsing is one lamp that goes up and down, as a camera sees its own light.
type Pulsing struct {
	Light, Numbered string
	Ripple          lens.Ripple
	Swing           lens.Swing
}

// Steadying is a shutter, and a frame rate at the angle that the camera now has, at which the light of a lamp is steady.
type Steadying struct {
	Seconds, Degrees float64 // the exposure time nearest to the camera's; 0 where a frame is too short
	FPS              float64 // 1/s
	Kept             float64 // the angle that the camera now has, degrees
}

// flickersOf judges the lamps that are up by the shutters of all cameras; none where all are steady.
func flickersOf(s *plan.Setup, readings []Reading, levels light.Levels) (all []Flicker) {
	for i := range s.Cameras {
		c := &s.Cameras[i]
		x := &c.Exposure
		if !(x.FPS > 0) || !(x.Seconds > 0) {
			continue
		}
		shutter := lens.Shutter{FPS: x.FPS, Seconds: x.Seconds, Readout: c.Readout}
		one := Flicker{Camera: c.Name}
		for k := range s.Lights {
			if l := &s.Lights[k]; levels[l.Name].Y() > 0 && !l.Ripple.Steady() {
				one.Lamps = append(one.Lamps, Pulsing{Light: l.Name, Numbered: l.Numbered(), Ripple: l.Ripple, Swing: shutter.Swing(l.Ripple)})
			}
		}
		if len(one.Lamps) > 0 {
			one.judge(readings, shutter)
			all = append(all, one)
		}
	}
	return all
}

// judge finds where the lamps show most, and what ends it. Lamps on the same mains rise together, so that what they do adds up.
func (f *Flicker) judge(readings []Reading, shutter lens.Shutter) {
	lead := &f.Lamps[0]
	for i := range readings {
		r := &readings[i]
		w, most := f.swingAt(r)
		if max(w.Frames, w.Rows) > max(f.Worst.Frames, f.Worst.Rows) {
			f.Worst, f.At, lead = w, r.Name, most
		}
	}
	f.Lead = lead.Light
	f.Safe = SteadyingOf(shutter, lead.Ripple)
}

// SteadyingOf is what makes a lamp steady for a camera; nil where nothing does.
func SteadyingOf(shutter lens.Shutter, r lens.Ripple) *Steadying {
	if r.Steady() {
		return nil
	}
	safe := Steadying{FPS: shutter.SafeFPS(r.Hertz), Kept: lens.ShutterDegrees(shutter.Seconds, shutter.FPS)}
	if seconds, ok := shutter.SafeSeconds(r.Hertz); ok {
		safe.Seconds, safe.Degrees = seconds, lens.ShutterDegrees(seconds, shutter.FPS)
	}
	return &safe
}

// swingAt is what the lamps do to a reading, and the one that does most.
func (f *Flicker) swingAt(r *Reading) (w lens.Swing, lead *Pulsing) {
	given, all := r.contributions(), 0.0
	for i := range r.Shares {
		all += r.Shares[i].Lux
	}
	if !(all > 0) {
		return w, nil
	}
	most := -1.0
	for i := range f.Lamps {
		p := &f.Lamps[i]
		share := given[p.Light] / all
		w.Frames += share * p.Swing.Frames
		w.Rows += share * p.Swing.Rows
		if own := share * max(p.Swing.Frames, p.Swing.Rows); own > most {
			most, lead, w.Beat = own, p, p.Swing.Beat
		}
	}
	return w, lead
}

// LampNamed is what a lamp does; nil where it is steady.
func (f *Flicker) LampNamed(name string) *Pulsing {
	for i := range f.Lamps {
		if f.Lamps[i].Light == name {
			return &f.Lamps[i]
		}
	}
	return nil
}
