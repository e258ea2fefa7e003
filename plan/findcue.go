package plan

import "scrimshaw/plan/term"

// CueNamed is the cue of a name, or nil.
func (s *Setup) CueNamed(name string) *Cue {
	for i := range s.Cues {
		if s.Cues[i].Name == name {
			return &s.Cues[i]
		}
	}
	return nil
}

// CuesOf are the names of the cues that a light moves in.
func (s *Setup) CuesOf(light string) (names []string) {
	for i := range s.Cues {
		if s.Cues[i].Move(light) != nil {
			names = append(names, s.Cues[i].Name)
		}
	}
	return names
}

// SettingAfter is what a light is set to after so many cues have gone; 0 before the first.
func (s *Setup) SettingAfter(l *Light, cues int) Setting {
	for i := cues - 1; i >= 0; i-- {
		if m := s.Cues[i].Move(l.Name); m != nil {
			return m.To
		}
	}
	return l.Setting()
}

// EverUp says whether a light is up in the set-up or after one of its cues.
func (s *Setup) EverUp(l *Light) bool {
	for cues := range len(s.Cues) + 1 {
		if s.SettingAfter(l, cues).Level > 0 {
			return true
		}
	}
	return false
}

// MostOut is the most that a light puts out in the set-up or after one of its cues: a multiple of its basis, as OutputAt.
func (s *Setup) MostOut(l *Light) (most float64) {
	for cues := range len(s.Cues) + 1 {
		most = max(most, l.OutputAt(s.SettingAfter(l, cues)).Y())
	}
	return most
}

// Dims says whether a light is below its full level, and up, in the set-up or after one of its cues, or fades.
func (s *Setup) Dims(l *Light) bool {
	part := func(level float64) bool { return level > 0 && level < 1 }
	for i := range s.Cues {
		if m := s.Cues[i].Move(l.Name); m != nil && (part(m.To.Level) || s.Cues[i].Fades() && m.From.Level != m.To.Level) {
			return true
		}
	}
	return part(l.Level) || l.Play != nil && (part(l.Play.Low) || part(l.Play.High))
}

// TakesDimmer says whether something stands before a light that dims it, of which a crew brings one: a filament has nothing of its own, and
// what cuts or lessens the wave of the mains stands before any lamp. Who writes dimmer: none brings none.
func (l *Light) TakesDimmer() bool {
	switch l.Dimming.Kind {
	case term.NoDimmer:
		return false
	case term.PhaseDimmer, term.TransformerDimmer:
		return true
	}
	return l.Head.Technology == term.Tungsten
}
