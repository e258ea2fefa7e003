package section

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// statesAcross is how many states stand beside each other in a table of readings; more go into tables below.
const statesAcross = 4

// cues are what goes in a take: the cues with what each light does and the graph of the key sides, and the stop of each reading after each.
func cues(in *Input) []*Section {
	all := in.Cues
	if all == nil {
		return nil
	}
	listed := &Section{Title: "Cues", Rank: layout.Wanted, Tables: []Table{cueTable(all)}}
	if len(all.Curves) > 0 {
		listed.Figure, listed.Cues, listed.Words = CueFigure, all, []string{graphWords(all)}
		listed.Without = NonEmpty(withoutWords(all))
	}
	sections := []*Section{listed}
	for first := 1; first < len(all.States) && len(all.States[0].Readings) > 0; first += statesAcross - 1 {
		end := min(first+statesAcross-1, len(all.States))
		sections = append(sections, &Section{Title: "Stops after cues, and their change", Rank: layout.Wanted, Tables: []Table{stateTable(all, first, end)},
			Without: NonEmpty(leftOut(readingsOf(all.States[first-1 : end])...))})
	}
	return sections
}

// readingsOf are the readings of some states.
func readingsOf(states []meter.CueState) (all []*meter.Reading) {
	for i := range states {
		for k := range states[i].Readings {
			all = append(all, &states[i].Readings[k].Reading)
		}
	}
	return all
}

// withoutWords say what the lines of the graph are without; "" where they are whole.
func withoutWords(all *meter.Cues) string {
	var keys []plan.Uncomputed
	for i := range all.Curves {
		keys = append(keys, all.Curves[i].Uncomputed...)
	}
	if keys = plan.Unique(keys); len(keys) == 0 {
		return ""
	}
	return "The lines are without " + plan.ListUncomputed(keys) + "."
}

// graphWords say what the graph shows, and what of its axis is to scale.
func graphWords(all *meter.Cues) string {
	words := "key sides in stops from " + unit.FormatStop(all.Curves[0].Working)
	switch {
	case all.Axis.Timed:
		return words + ", by seconds of the take"
	case hasFades(all):
		return words + "; fades are to scale, the time between cues is not"
	}
	return words + ", cue by cue; time is not to scale"
}

func hasFades(all *meter.Cues) bool {
	for i := range all.States {
		if q := all.States[i].Cue; q != nil && q.Fades() {
			return true
		}
	}
	return false
}

// cueTable is the cues in their order, with what each light does.
func cueTable(all *meter.Cues) Table {
	t := Table{Columns: []Column{{Strong: true}, {Flexible: true}, {Align: ink.Right}}}
	for i := range all.States[1:] {
		state := &all.States[i+1]
		e := Entry{Cells: []string{state.Cue.Name, ink.Capital(state.Cue.OnWords()), state.Cue.OverWords()}, Of: []string{thingKey(change.Cue, state.Cue.Name)}}
		for k := range state.Moves {
			m := &state.Moves[k]
			e.Notes = append(e.Notes, m.Numbered+": "+m.Words())
		}
		if len(e.Notes) == 0 {
			e.Notes = []string{"changes nothing"}
		}
		t.Entries = append(t.Entries, e)
	}
	return t
}

// stateTable is the stop of each reading before some states and after each of them, and below it how many stops that is from the one before.
func stateTable(all *meter.Cues, first, end int) Table {
	t := Table{Columns: []Column{{Flexible: true}}}
	states := all.States[first-1 : end]
	for i := range states {
		head := "before"
		if q := states[i].Cue; q != nil {
			head = q.Name
		}
		t.Columns = append(t.Columns, Column{Head: head, Align: ink.Right})
	}
	for k := range states[0].Readings {
		e := Entry{Cells: []string{readingName(&states[0].Readings[k].Reading)}, Below: []string{"", ""}}
		for i := range states {
			r := &states[i].Readings[k]
			e.Cells = append(e.Cells, stopOrLight(r))
			e.Struck = append(e.Struck, When(r.StopsStruck(), i+1)...)
			if i > 0 {
				e.Below = append(e.Below, signed(r.ChangeWords()))
			}
		}
		t.Entries = append(t.Entries, e)
	}
	return t
}

// stopOrLight is the stop of a reading; of a spot meter, which has none, its stops from grey.
func stopOrLight(r *meter.CueReading) string {
	if r.Luminance != nil {
		return overTenths(r.Over)
	}
	return Stop(r.Stop)
}

// readingName is the name of a reading in a narrow column: "ines, key side", "ines, toward A".
func readingName(r *meter.Reading) string {
	part := strings.TrimPrefix(r.Name, r.Person+".")
	camera, dome := strings.CutPrefix(part, "dome.")
	switch {
	case r.Person == "":
		return r.Name
	case dome:
		return r.Person + " toward " + plan.CameraWords(camera)
	}
	return fmt.Sprintf("%s, %s side", r.Person, part)
}

// played are the lights that change by themselves: between which stops each reading goes.
func played(in *Input) *Section {
	s := &Section{Title: "Lights that play", Rank: layout.Wanted}
	var shown []*meter.Reading
	for i := range in.Played {
		p := &in.Played[i]
		t := Table{Columns: []Column{{Flexible: true, Head: p.Numbered}, {Head: "lowest", Align: ink.Right}, {Head: "mean", Align: ink.Right},
			{Head: "highest", Align: ink.Right}, {Head: "stops", Align: ink.Right}}}
		for k := range p.Readings {
			r := &p.Readings[k]
			if !r.Shows() {
				continue
			}
			e := Entry{Cells: []string{readingName(&r.High), playedStop(&r.Low), playedStop(&r.Mean), playedStop(&r.High), r.SpanWords()}}
			e.Struck = When(r.High.StopsStruck(), 1, 2, 3, 4)
			shown = append(shown, &r.High)
			t.Entries = append(t.Entries, e)
		}
		words := p.Numbered + " " + p.Words()
		if len(t.Entries) == 0 {
			words += "; no reading shows it"
		} else {
			s.Tables = append(s.Tables, t)
		}
		s.Words = append(s.Words, words)
	}
	s.Without = NonEmpty(leftOut(shown...))
	return s
}

// playedStop is the stop of a reading; of a spot meter its stops from grey.
func playedStop(r *meter.Reading) string { return stopOrLight(&meter.CueReading{Reading: *r}) }

// cueWords say in which cues a light moves, and how it plays.
func (in *Input) cueWords(l *plan.Light) string {
	names := in.Setup.CuesOf(l.Name)
	word := "cue "
	if len(names) > 1 {
		word = "cues "
	}
	return Joined("; ", Prefixed(word, strings.Join(names, ", ")), playWords(l))
}

// cueMoves say what a light does in each cue, and how it plays.
func (in *Input) cueMoves(l *plan.Light) string {
	var parts []string
	for i := range in.Setup.Cues {
		q := &in.Setup.Cues[i]
		m := q.Move(l.Name)
		if m == nil {
			continue
		}
		to := lightAt(l, m.To)
		words := q.Name + " " + LightLevel(&to)
		if m.From.White != m.To.White && m.To.Level > 0 {
			words += ", " + LightColour(&to)
		}
		if q.Fades() {
			words += " " + q.OverWords()
		}
		parts = append(parts, words)
	}
	return Joined("; ", strings.Join(parts, "; "), playWords(l))
}

// lightAt is a light as it is at a setting.
func lightAt(l *plan.Light, s plan.Setting) plan.Light {
	at := *l
	at.Level, at.White = s.Level, l.WhiteAt(s)
	return at
}

// playWords say how a light plays at its level, of one that is off at its full light; "" of one that does not.
func playWords(l *plan.Light) string {
	if l.Play == nil {
		return ""
	}
	level := l.Level
	if level <= 0 {
		level = 1
	}
	low, high := l.Play.Range(l.Head.Levels, level)
	return meter.PlayWords(l.Play, low, high)
}
