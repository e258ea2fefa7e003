package cue

import (
	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
)

// Lit is a set-up with its light, as far as cues ask for it.
type Lit struct {
	Setup    *plan.Setup
	Basis    *light.Basis
	Levels   light.Levels // of the lights that no cue moves
	Requests []meter.Request
}

// Of says what the cues of a set-up do; nil where it has none.
func (s *Lit) Of() *meter.Cues {
	if len(s.Setup.Cues) == 0 {
		return nil
	}
	all := &meter.Cues{States: []meter.CueState{{Readings: s.listed(0, nil)}}}
	for i := range s.Setup.Cues {
		q := &s.Setup.Cues[i]
		state := meter.CueState{Cue: q, Readings: s.listed(i+1, all.States[i].Readings)}
		for k := range q.Moves {
			state.Moves = append(state.Moves, s.move(&q.Moves[k]))
		}
		all.States = append(all.States, state)
	}
	t, timed, end := lay(s.Setup)
	all.Axis = meter.CueAxis{Timed: timed, End: end, Start: t.starts}
	all.Curves = s.curves(&t, end)
	for i := range all.Curves {
		all.Curves[i].Uncomputed = leftOut(all, &all.Curves[i])
	}
	return all
}

// leftOut are the keys that what a curve shows is without in one of the states.
func leftOut(all *meter.Cues, c *meter.Curve) (keys []plan.Uncomputed) {
	shown := c.Person + ".key"
	if c.Meter {
		shown = c.Person
	}
	for i := range all.States {
		for k := range all.States[i].Readings {
			if r := &all.States[i].Readings[k]; r.Name == shown {
				keys = append(keys, r.Uncomputed...)
			}
		}
	}
	return plan.Unique(keys)
}

// listed are the readings after so many cues, each with its change from before.
func (s *Lit) listed(cues int, before []meter.CueReading) (all []meter.CueReading) {
	set := s.read(After(s.Setup, cues))
	for i := range set.Readings {
		r := &set.Readings[i]
		if !meter.CueLists(r) {
			continue
		}
		one := meter.CueReading{Reading: *r}
		if f := set.FaceOf(r.Person); f != nil && r.Name == r.Person+".key" {
			one.Side = f.Side
		}
		if len(all) < len(before) {
			one.Change = stopsBetween(&before[len(all)].Reading, r)
		}
		all = append(all, one)
	}
	return all
}

// read takes the readings at some settings.
func (s *Lit) read(x Settings) meter.Set {
	return meter.ReadPoints(s.Setup, s.Requests, s.Basis, x.Levels(s.Setup, s.Levels))
}

// stopsBetween is how many stops a reading changes by; nil where one of both is dark.
func stopsBetween(a, b *meter.Reading) *float64 {
	if a.Over == nil || b.Over == nil {
		return nil
	}
	change := *b.Over - *a.Over
	return &change
}

// move says what a light does in a cue, with the white of its light.
func (s *Lit) move(m *plan.Move) meter.CueMove {
	l := s.Setup.LightNamed(m.Light)
	return meter.CueMove{Light: l.Name, Numbered: l.Numbered(), From: settingOf(l, m.From), To: settingOf(l, m.To), Whiter: m.From.White != m.To.White}
}

func settingOf(l *plan.Light, s plan.Setting) meter.CueSetting {
	out := meter.CueSetting{Level: s.Level}
	if w := l.WhiteAt(s).OnPlanck(); s.Level > 0 && w.Kelvin > 0 && w.Duv <= colour.MaxDuv && w.Duv >= -colour.MaxDuv {
		out.Kelvin = &w.Kelvin
	}
	return out
}
