package meter

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// CueHeading words a cue with what it goes on and how long it takes: "q2, she sits, over 4 s".
func CueHeading(q *plan.Cue) string {
	parts := []string{q.Name}
	if on := q.OnWords(); on != "" {
		parts = append(parts, on)
	}
	return strings.Join(append(parts, q.OverWords()), ", ")
}

// Words say what a light does: "35 % → off", "30 % → 12 %, 2450 K → 2210 K".
func (m *CueMove) Words() string {
	var parts []string
	if m.From.Level != m.To.Level {
		parts = append(parts, levelInWords(m.From.Level)+" → "+levelInWords(m.To.Level))
	}
	from, to := m.From.whiteInWords(), m.To.whiteInWords()
	switch {
	case to == "" || to == from:
	case from == "":
		parts = append(parts, to)
	default:
		parts = append(parts, from+" → "+to)
	}
	if len(parts) == 0 { // a tint, or a white while it is off
		return "another white"
	}
	return strings.Join(parts, ", ")
}

// levelInWords prints a level as it is written.
func levelInWords(level float64) string {
	if level <= 0 {
		return "off"
	}
	return unit.FormatPercent(level)
}

func (s *CueSetting) whiteInWords() string {
	if s.Kelvin == nil {
		return ""
	}
	return unit.FormatKelvin(*s.Kelvin)
}

// ChangeWords word a change in stops: "+1.2", "0.0"; a dash where one of both is dark.
func (r *CueReading) ChangeWords() string {
	if r.Change == nil {
		return "–"
	}
	return signed(*r.Change)
}

// table writes what the cues do, a block each.
func (c *Cues) table(b *strings.Builder) {
	if c == nil {
		return
	}
	for i := range c.States {
		s := &c.States[i]
		if s.Cue == nil {
			b.WriteString("before the cues\n")
		} else {
			b.WriteString("cue " + CueHeading(s.Cue) + "\n")
		}
		for k := range s.Moves {
			b.WriteString("  " + s.Moves[k].Numbered + ": " + s.Moves[k].Words() + "\n")
		}
		rows := [][]string{{"  reading", "light", "T-stop", "over", "change", "CCT", "Duv", ""}}
		for k := range s.Readings {
			rows = append(rows, s.Readings[k].cueRow(i == 0))
		}
		aligned(b, rows)
	}
}

// cueRow is the row of a reading after a cue.
func (r *CueReading) cueRow(first bool) []string {
	own := r.row()
	change, side := "", ""
	if !first {
		change = Mark(r.ChangeWords(), r.StopsStruck())
	}
	if r.Side != "" {
		side = "own " + r.Side
	}
	return []string{"  " + own[0], own[1], own[stopColumn], own[overColumn], change, own[6], own[7], side}
}

// leastPlay is the least difference, in stops, that a light which plays makes to a reading that is listed: less is not seen.
const leastPlay = 0.05

// Shows says whether a light that plays shows in a reading.
func (r *PlayedReading) Shows() bool {
	return r.High.Over != nil && (r.Low.Over == nil || *r.High.Over-*r.Low.Over >= leastPlay)
}

// Words say how a light plays: "plays fire from 20 % to 60 %, 4 /s".
func (p *Played) Words() string {
	words := PlayWords(p.Play, p.Low, p.High)
	if p.Cue != "" {
		words += ", after " + p.Cue
	}
	return words
}

// PlayWords say how a light plays between two levels.
func PlayWords(play *plan.Play, low, high float64) string {
	return fmt.Sprintf("plays %s from %s to %s, %s", play.Kind, levelInWords(low), levelInWords(high), RateWords(play.Rate))
}

// RateWords word a rate: "4 /s", "once in 5 s".
func RateWords(rate float64) string {
	if rate < 1 {
		return "once in " + unit.FormatNumber(1/rate) + " s"
	}
	return unit.FormatNumber(rate) + " /s"
}

// table writes what a light does that plays.
func (p *Played) table(b *strings.Builder) {
	b.WriteString(p.Numbered + " " + p.Words() + "\n")
	rows := [][]string{{"  reading", "lowest", "T-stop", "mean", "T-stop", "highest", "T-stop", "stops", ""}}
	for i := range p.Readings {
		r := &p.Readings[i]
		if !r.Shows() {
			continue
		}
		row := []string{"  " + r.High.Name}
		for _, at := range []*Reading{&r.Low, &r.Mean, &r.High} {
			cells := at.row()
			row = append(row, cells[1], cells[stopColumn])
		}
		rows = append(rows, append(row, Mark(r.SpanWords(), r.High.StopsStruck()), ""))
	}
	if len(rows) == 1 {
		b.WriteString("  no reading shows it\n")
		return
	}
	aligned(b, rows)
}

// SpanWords say how many stops a reading goes up and down by; a dash where it goes dark.
func (r *PlayedReading) SpanWords() string {
	if r.Low.Over == nil || r.High.Over == nil {
		return "–"
	}
	return unit.FormatTenths(*r.High.Over - *r.Low.Over)
}
