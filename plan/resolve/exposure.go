package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// expose resolves the scene's exposure, and what each camera sets differently.
func (r *exposurePass) expose() {
	base := r.s.Exposure
	r.out.Exposure = r.exposure(base)
	r.inFrameTime(base, r.out.Exposure)
	r.assumeExposure(base, r.out.Exposure)
	if len(r.out.Cameras) > 0 { // stops that are no one camera's are judged through the filters of the first
		seeThrough(&r.out.Exposure, &r.out.Cameras[0].Filters)
	}
	for i := range r.out.Cameras {
		c := &r.out.Cameras[i]
		written := &r.s.Cameras[r.things[c.Name].index]
		leave := r.About(written.Path)
		r.oneMeter(&written.Exposure)
		c.Exposure = r.exposure(overlayExposure(base, written.Exposure))
		if seeThrough(&c.Exposure, &c.Filters) {
			r.Errorf(written.Filter[0].Span, CodeFilter, "leave a conversion out, or set exposure: {white: …} to what comes through",
				"no light looks like %s through %s: none is so warm or so cool", unit.FormatKelvin(c.Exposure.Balance.Kelvin), c.Filters.Names)
		}
		if written.Exposure.Shutter.Set || written.Exposure.FPS.Set {
			r.inFrameTime(written.Exposure, c.Exposure)
		}
		leave()
	}
}

// inFrameTime refuses a shutter that is open for longer than a frame lasts. w is what was written.
func (r *exposurePass) inFrameTime(w scene.Exposure, x plan.Exposure) {
	if x.Seconds*x.FPS <= 1+1e-9 {
		return
	}
	span := report.Either(w.Shutter.Set, w.Shutter.Span, w.FPS.Span)
	rate := unit.FormatNumber(x.FPS)
	r.Errorf(span, CodeShutterLong, "write 1/"+rate+", the longest, or an angle up to 360°",
		"a shutter of %s is open for longer than a frame lasts at %s fps", exposureTime(x.Seconds), rate)
}

// exposureTime prints seconds as they are written: 1/50 s, or 2 s.
func exposureTime(seconds float64) string {
	if per := 1 / seconds; seconds < 1 {
		return "1/" + unit.FormatNumber(per) + " s"
	}
	return unit.FormatNumber(seconds) + " s"
}

// overlayExposure is the scene's exposure with what a camera sets for itself.
func overlayExposure(base, own scene.Exposure) scene.Exposure {
	lay(&base.ISO, own.ISO)
	lay(&base.FPS, own.FPS)
	lay(&base.Shutter, own.Shutter)
	lay(&base.Stop, own.Stop)
	lay(&base.White, own.White)
	lay(&base.Range, own.Range)
	return base
}

func lay[T any](under *scene.Given[T], over scene.Given[T]) {
	if over.Set {
		*under = over
	}
}

// oneMeter refuses a second meter in a file.
func (r *exposurePass) oneMeter(own *scene.Exposure) {
	for _, span := range []source.Span{own.Meter.Span, own.Constant.Span} {
		if (own.Meter.Set && span == own.Meter.Span) || (own.Constant.Set && span == own.Constant.Span) {
			r.Errorf(span, CodeMeterConstant, "put it under the scene's exposure", "the meter and its constant hold for the whole file, not for one camera")
			return
		}
	}
}

func (r *exposurePass) exposure(w scene.Exposure) plan.Exposure {
	x := plan.Exposure{
		ISO: w.ISO.Or(scene.DefaultISO), FPS: w.FPS.Or(r.defaultFPS()),
		Stop: w.Stop.Or(scene.Stop{Written: scene.DefaultStop, N: scene.DefaultStopN}), Meter: w.Meter.Or(scene.DefaultReceptor),
	}
	switch s := w.Shutter.Value; {
	case w.Shutter.Set && s.Seconds > 0:
		x.Seconds, x.Degrees = s.Seconds, lens.ShutterDegrees(s.Seconds, x.FPS)
	default:
		x.Degrees = report.Either(w.Shutter.Set, s.Degrees, scene.DefaultShutter)
		x.Seconds = lens.ShutterSeconds(x.Degrees, x.FPS)
	}
	x.Constant = w.Constant.Or(report.Either(x.Meter == term.FlatMeter, lens.FlatConstant, lens.DomeConstant))
	x.Balance, _ = r.keyWhite()
	if w.White.Set {
		x.Balance = colour.White{Kelvin: w.White.Value.Kelvin, Duv: w.White.Value.Duv, Daylight: w.White.Value.Daylight}
	}
	x.White = x.Balance
	x.Range = lens.Range(w.Range.Value)
	return x
}

// keyWhite is the white of the first key light, else of the first light, and whose it is.
func (r *exposurePass) keyWhite() (w colour.White, whose string) {
	for i := range r.out.Lights {
		for _, role := range r.out.Lights[i].Roles {
			if role.Role == term.Key {
				return whiteUp(&r.out.Lights[i]), "the key's colour, "
			}
		}
	}
	if len(r.out.Lights) > 0 {
		return whiteUp(&r.out.Lights[0]), "the colour of " + r.out.Lights[0].Numbered() + ", "
	}
	return colour.White{Kelvin: scene.DefaultWhite}, ""
}

// whiteUp is the white of a light as it is set; of one that is off, that of its full light: a filament at nothing has no colour to set a
// camera to, and a cue may bring it up.
func whiteUp(l *plan.Light) colour.White {
	if l.Level <= 0 {
		return l.Head.WhiteAt(1)
	}
	return l.White
}

func (r *exposurePass) defaultFPS() float64 {
	return report.Either(r.sixtyHertz(), scene.FPSAt60Hz, scene.FPSAt50Hz)
}

// assumeExposure lists the defaults of the scene's exposure.
func (r *exposurePass) assumeExposure(w scene.Exposure, x plan.Exposure) {
	if !w.ISO.Set {
		r.assume("", "speed", "ISO "+unit.FormatNumber(x.ISO))
	}
	if !w.FPS.Set {
		r.assume("", "frame rate", unit.FormatNumber(x.FPS)+" fps, "+report.Either(r.sixtyHertz(), "60 Hz", "50 Hz")+" mains")
	}
	if !w.Shutter.Set {
		r.assume("", "shutter", unit.FormatAngle(x.Degrees))
	}
	if !w.Stop.Set {
		r.assume("", "stop", unit.FormatStop(x.Stop.N))
	}
	if !w.White.Set {
		_, whose := r.keyWhite()
		r.assume("", "white", whose+unit.FormatKelvin(x.White.Kelvin))
	}
	if !w.Constant.Set {
		r.assume("", "meter", string(x.Meter)+", C = "+unit.FormatNumber(x.Constant))
	}
}
