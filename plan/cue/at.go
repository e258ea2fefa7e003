// Package cue says what cues do to the light of a set-up: its state after each of them, and on the way. All of it is the sum of a basis at
// other levels: no ray is followed for it.
package cue

import (
	"maps"
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
)

// Settings are what the lights that cues move are set to, by name.
type Settings map[string]plan.Setting

// After gives the settings after so many cues have gone; 0 before the first.
func After(s *plan.Setup, cues int) Settings {
	all := Settings{}
	for i := range s.Cues {
		for k := range s.Cues[i].Moves {
			name := s.Cues[i].Moves[k].Light
			all[name] = s.SettingAfter(s.LightNamed(name), cues)
		}
	}
	return all
}

// Levels are some levels with the lights that cues move at their settings.
func (x Settings) Levels(s *plan.Setup, d light.Levels) light.Levels {
	d = maps.Clone(d)
	for name, setting := range x {
		d[name] = s.LightNamed(name).OutputAt(setting)
	}
	return d
}

// Setup is a set-up with its lights at the settings: as if it were written so. What cues do after it is not in it.
func (x Settings) Setup(s *plan.Setup) *plan.Setup {
	stage := *s
	stage.Lights, stage.Cues = append([]plan.Light(nil), s.Lights...), nil
	for i := range stage.Lights {
		l := &stage.Lights[i]
		if setting, moved := x[l.Name]; moved {
			flux := l.Head.Source.Flux // the share that it gives at another white is in its output
			l.Head, _ = s.Lights[i].HeadAt(setting.White)
			l.Head.Source.Flux = flux
			l.Level, l.RelativeOutput, l.White, l.Ripple = setting.Level, s.Lights[i].OutputAt(setting), s.Lights[i].WhiteAt(setting), s.Lights[i].RippleAt(setting)
		}
	}
	return &stage
}

// timeline are the cues of a set-up with when each goes.
type timeline struct {
	setup  *plan.Setup
	starts []float64 // s
}

// at gives the settings at a time, s; with before, as they are before what snaps at that time has gone.
func (t *timeline) at(seconds float64, before bool) Settings {
	all := Settings{}
	for name := range After(t.setup, 0) {
		all[name] = t.of(t.setup.LightNamed(name), len(t.starts), seconds, before)
	}
	return all
}

// of is the setting of a light at a time, as the first so many cues leave it.
func (t *timeline) of(l *plan.Light, cues int, seconds float64, before bool) plan.Setting {
	for i := cues - 1; i >= 0; i-- {
		q := &t.setup.Cues[i]
		m := q.Move(l.Name)
		if m == nil || seconds < t.starts[i] || before && seconds == t.starts[i] {
			continue
		}
		if share := (seconds - t.starts[i]) / q.Over; q.Over > 0 && share < 1 {
			return between(l, t.of(l, i, t.starts[i], false), m.To, share)
		}
		return m.To
	}
	return l.Setting()
}

// between is the setting of a light a share of the way from one to another: its level by the even way, its white by the even way in
// mireds. A light that comes up has its new white from the start, and one that goes out keeps its old one.
func between(l *plan.Light, from, to plan.Setting, share float64) plan.Setting {
	s := plan.Setting{Level: l.Head.Levels.Held(from.Level + share*(to.Level-from.Level)), White: from.White}
	switch {
	case from.White == to.White || to.Level <= 0:
	case from.Level <= 0:
		s.White = to.White
	default:
		a, b := from.White.OnPlanck(), to.White.OnPlanck()
		mired := colour.Mired(a.Kelvin) + share*(colour.Mired(b.Kelvin)-colour.Mired(a.Kelvin))
		s.White = colour.White{Kelvin: colour.Mired(mired), Duv: a.Duv + share*(b.Duv-a.Duv)}
	}
	return s
}

// lasting is how much of the axis of a take whose cues have no times is not in fades, as a share of it.
const lasting = 0.5

// What a take lasts beyond its last cue: as a share of what went before, and at least in s.
const (
	beyond      = 0.08
	leastBeyond = 1.0
)

// lay puts cues on an axis: at their times, where all have one; else in even steps, with the fades to scale. end is where it ends.
func lay(s *plan.Setup) (t timeline, timed bool, end float64) {
	t = timeline{setup: s, starts: make([]float64, len(s.Cues))}
	timed = true
	fades := 0.0
	for i := range s.Cues {
		timed = timed && s.Cues[i].Seconds != nil
		fades += s.Cues[i].Over
	}
	if timed {
		for i := range s.Cues {
			t.starts[i] = *s.Cues[i].Seconds
			end = math.Max(end, t.starts[i]+s.Cues[i].Over)
		}
		return t, true, end + math.Max(leastBeyond, beyond*end)
	}
	step := 1.0
	if fades > 0 {
		step = fades * lasting / (1 - lasting) / float64(len(s.Cues)+1)
	}
	for i := range s.Cues {
		end += step
		t.starts[i] = end
		end += s.Cues[i].Over
	}
	return t, false, end + step
}
