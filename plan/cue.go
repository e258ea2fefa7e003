package plan

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Cue is one change of levels and colours inside a take. Cues go in their order, and each starts from the state that the one before it
// left, the first from the set-up itself.
type Cue struct {
	Name, Path string
	At         string   // the words that it goes on; "": nothing says any
	Seconds    *float64 // when it goes, from the start of the take, s; nil: nothing says it
	Over       float64  // how long it takes, s
	Moves      []Move   // in the order in which they are written; what changes nothing is none
	Span       source.Span
}

// Move is what one light does in a cue.
type Move struct {
	Light    string
	From, To Setting
	Span     source.Span
}

// Setting is what a light is set to.
type Setting struct {
	Level float64      // share of its full output, 0 to 1
	White colour.White // of the lamp itself, before its gels
}

// Fades says whether the cue takes time.
func (q *Cue) Fades() bool { return q.Over > 0 }

// Move is what a light does in the cue; nil: nothing.
func (q *Cue) Move(light string) *Move {
	for i := range q.Moves {
		if q.Moves[i].Light == light {
			return &q.Moves[i]
		}
	}
	return nil
}

// OnWords say what a cue goes on: "at 12 s", "as she sits"; "" where nothing says it.
func (q *Cue) OnWords() string {
	if q.Seconds != nil {
		return "at " + unit.FormatNumber(*q.Seconds) + " s"
	}
	return q.At
}

// OverWords say how long a cue takes: "over 4 s", "snap".
func (q *Cue) OverWords() string {
	if !q.Fades() {
		return "snap"
	}
	return "over " + unit.FormatNumber(q.Over) + " s"
}

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

// Levels are those that a light has in the set-up and after each of its cues, each once.
func (s *Setup) Levels(l *Light) []float64 {
	all := []float64{l.Level}
	for i := range s.Cues {
		if m := s.Cues[i].Move(l.Name); m != nil && !slices.Contains(all, m.To.Level) {
			all = append(all, m.To.Level)
		}
	}
	return all
}

// EverUp says whether a light is up in the set-up or after one of its cues.
func (s *Setup) EverUp(l *Light) bool { return slices.Max(s.Levels(l)) > 0 }

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

// Setting is what the light is set to in its set-up.
func (l *Light) Setting() Setting { return Setting{Level: l.Level, White: l.Head.OwnWhite()} }

// HeadAt is the head set to another white of its own, and how much light it gives then, at full, as a share of what it gives in its set-up.
func (l *Light) HeadAt(white colour.White) (kit.Head, float64) { return l.Head.SetTo(white) }

// OutputAt is what multiplies the basis of the light at a setting: as RelativeOutput at its own.
func (l *Light) OutputAt(s Setting) colour.RGB {
	head, share := l.HeadAt(s.White)
	return head.RelativeOutput(s.Level).Scale(share * float64(max(l.Count, 1)))
}

// WhiteAt is the white of its light at a setting, after its gels.
func (l *Light) WhiteAt(s Setting) colour.White {
	head, _ := l.HeadAt(s.White)
	return head.WhiteAt(s.Level)
}

// Play is how a light changes by itself.
type Play struct {
	Kind      term.Play
	Low, High float64 // shares of the light's level that it goes between; of one that is off in its set-up, of its full light
	Rate      float64 // how often it goes up and down, 1/s
	Span      source.Span
}

// Range is between which levels a light plays that is set to one: none above its full output, and none below the least that its unit holds.
func (p *Play) Range(levels kit.Levels, level float64) (low, high float64) {
	high = min(1, p.High*level)
	low = min(p.Low*level, high)
	return max(low, min(levels.Least, high)), high
}
