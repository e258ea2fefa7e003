package plan

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// Cue is one change of levels and colours inside a take. Cues go in their order, and each starts from the state that the one before it
// left, the first from the set-up itself.
type Cue struct {
	Name, Path string
	At         string   // the words that it goes on; "": nothing says any
	Seconds    *float64 // when it goes, from the start of the take, s; nil: nothing says it
	Over       float64  // how long it takes, s
	Moves      []Move   // in the order in which they are written, without those that change nothing
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

// Setting is what the light is set to in its set-up.
func (l *Light) Setting() Setting { return Setting{Level: l.Level, White: l.Head.OwnWhite()} }

// HeadAt is the head set to another white of its own, and how much light it gives then, at full, as a share of what it gives in its set-up.
func (l *Light) HeadAt(white colour.White) (kit.Head, float64) { return l.Head.SetTo(white) }

// OutputAt is what multiplies the basis of the light at a setting: as RelativeOutput at its own.
func (l *Light) OutputAt(s Setting) colour.RGB {
	head, share := l.HeadAt(s.White)
	return head.RelativeOutput(s.Level).Scale(share * float64(max(l.Count, 1)))
}

// RippleAt is how its light goes up and down on its mains at a setting, behind its dimmer.
func (l *Light) RippleAt(s Setting) lens.Ripple {
	head, _ := l.HeadAt(s.White)
	full := head.RelativeOutput(1).Y()
	if !(full > 0) {
		return lens.Ripple{}
	}
	return head.Ripple(l.Hertz, head.RelativeOutput(s.Level).Y()/full, l.Dimming)
}

// WhiteAt is the white of its light at a setting, after its gels.
func (l *Light) WhiteAt(s Setting) colour.White {
	head, _ := l.HeadAt(s.White)
	return head.WhiteAt(s.Level)
}
