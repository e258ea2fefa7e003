package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// cuePass takes the cues, and how lights play by themselves.
type cuePass struct{ *lightPass }

// cue resolves every cue: what each light goes from, and to what.
func (r *cuePass) cue() {
	r.play()
	now := map[string]plan.Setting{}
	for i := range r.out.Lights {
		now[r.out.Lights[i].Name] = r.out.Lights[i].Setting()
	}
	for i := range r.s.Cues {
		written := &r.s.Cues[i]
		leave := r.About(written.Path)
		cue := plan.Cue{Name: written.Name, Path: written.Path, At: written.At.Value.Words, Over: written.Over.Value, Span: written.Span}
		if written.At.Value.Timed {
			cue.Seconds = &written.At.Value.Seconds
		}
		for k := range written.Lights {
			if move, ok := r.move(&written.Lights[k], now); ok {
				cue.Moves, now[move.Light] = append(cue.Moves, move), move.To
			}
		}
		r.out.Cues = append(r.out.Cues, cue)
		leave()
	}
}

// move is what a light does in a cue; not ok where it does nothing, or is not in this set-up, which a check tells.
func (r *cuePass) move(written *scene.CueLight, now map[string]plan.Setting) (plan.Move, bool) {
	l := r.out.LightNamed(written.Light.Name)
	if l == nil {
		return plan.Move{}, false
	}
	from := now[l.Name]
	to := plan.Setting{Level: written.Level.Or(from.Level), White: from.White}
	if written.Colour.Set {
		w := written.Colour.Value
		to.White = colour.White{Kelvin: w.Kelvin, Duv: w.Duv + r.tintOf(l), Daylight: w.Daylight}
	}
	if written.Tint.Set {
		to.White = to.White.OnPlanck()
		to.White.Duv = written.Tint.Value
	}
	r.checkSetting(l, written.Level.Span, written, to)
	r.assumeMains(&r.s.Lights[r.things[l.Name].index], l.RippleAt(to))
	return plan.Move{Light: l.Name, From: from, To: to, Span: written.Span}, from != to
}

// tintOf is the tint that a light has in its set-up, Duv: another white keeps it.
func (r *cuePass) tintOf(l *plan.Light) float64 {
	return r.s.Lights[r.things[l.Name].index].Tint.Value
}

// settingCodes are the faults that the catalogue finds of a level and a white; those of all else belong to the light itself.
var settingCodes = map[string]bool{kit.CodeLevelRange: true, kit.CodeWhiteRange: true, kit.CodeTintRange: true}

// checkSetting tells a level, a white or a tint that a unit cannot be set to, with the nearest that it can.
func (r *cuePass) checkSetting(l *plan.Light, level source.Span, written *scene.CueLight, to plan.Setting) {
	light := &r.s.Lights[r.things[l.Name].index]
	if light.Output != nil {
		return
	}
	choice := r.choice(light)
	choice.Path, choice.Level, choice.LevelSpan = r.Path, &to.Level, level
	if written != nil && (written.Colour.Set || written.Tint.Set) {
		choice.White, choice.Tint, choice.WhiteSpan, choice.TintSpan = &to.White, 0, written.Colour.Span, written.Span
	}
	own := &source.Log{}
	r.kit.Head(choice, own)
	for _, d := range own.All() {
		if settingCodes[d.Code] && !(d.Code == kit.CodeTintRange && choice.TintSpan == light.Tint.Span) && !(d.Code == kit.CodeWhiteRange && choice.WhiteSpan == light.Colour.Span) {
			r.Log.Add(d)
		}
	}
}

// play finds between which levels lights go by themselves.
func (r *cuePass) play() {
	for i := range r.s.Lights {
		written := &r.s.Lights[i]
		l := r.out.LightNamed(written.Name)
		if l == nil || !written.Plays.Set {
			continue
		}
		leave := r.About(written.Path)
		l.Play = r.playOf(l, &written.Plays)
		leave()
	}
}

// playOf is how one light plays, its levels as shares of its own.
func (r *cuePass) playOf(l *plan.Light, written *scene.Given[scene.Play]) *plan.Play {
	w, full := &written.Value, l.Level
	if full <= 0 {
		full = 1
	}
	usual := scene.PlayDefaults[w.Kind]
	p := &plan.Play{Kind: w.Kind, High: w.High.Or(full) / full, Rate: w.Rate.Or(usual.Rate), Span: written.Span}
	p.Low = w.Low.Or(usual.Low*p.High*full) / full
	for _, level := range []scene.Given[float64]{w.Low, w.High} {
		if level.Set {
			r.checkSetting(l, level.Span, nil, plan.Setting{Level: level.Value})
		}
	}
	if p.Low > p.High {
		r.Errorf(w.Low.Span, CodePlay, "write low as the lower of the two", "%s plays between a low level and a high one, and its low is above its high", l.Name)
	}
	low, high := p.Range(l.Head.Levels, full)
	r.assumePlay(l, w, low, high, p.Rate)
	return p
}

// assumePlay lists the defaults of a play.
func (r *cuePass) assumePlay(l *plan.Light, w *scene.Play, low, high, rate float64) {
	if !w.Low.Set {
		r.assume(l.Path, "lowest level", unit.FormatPercent(low))
	}
	if !w.High.Set && l.Level <= 0 {
		r.assume(l.Path, "highest level", unit.FormatPercent(high))
	}
	if !w.Rate.Set {
		r.assume(l.Path, "rate", unit.FormatNumber(rate)+" /s")
	}
}
