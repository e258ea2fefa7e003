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

// mostCues is how many cues a sheet has one by one: of more it says the first, and of each reading how low and how high it goes.
const mostCues = 24

// cues are what goes in a take: the cues with what each light does and the graph of the key sides, and the stop of each reading after each.
func cues(in *Input, u Units) []*Section {
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
	if len(all.States[0].Readings) == 0 {
		return sections
	}
	if len(all.States)-1 > mostCues {
		return append(sections, &Section{Title: "Stops over all cues", Rank: layout.Wanted, Tables: []Table{rangeTable(all)}, Without: NonEmpty(leftOut(readingsOf(all.States)...))})
	}
	for first := 1; first < len(all.States); first += statesAcross - 1 {
		end := min(first+statesAcross-1, len(all.States))
		sections = append(sections, &Section{Title: "Stops and light after cues, and their change", Rank: layout.Wanted, Tables: []Table{stateTable(all, first, end, u)},
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
	if all.Curves[0].Meter {
		words = "meters in stops from " + unit.FormatStop(all.Curves[0].Working)
	}
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
		if i == mostCues {
			t.Entries = append(t.Entries, Entry{Cells: []string{"", fmt.Sprintf("and %d more, to %s, which meter has one by one", len(all.States)-1-i, all.States[len(all.States)-1].Cue.Name), ""}})
			break
		}
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

// stateTable is the stop of each reading before some states and after each of them, and below it its light and how many stops that is from the
// one before.
func stateTable(all *meter.Cues, first, end int, u Units) Table {
	t := Table{Columns: []Column{{Flexible: true}}}
	states := all.States[first-1 : end]
	for i := range states {
		t.Columns = append(t.Columns, Column{Head: stateName(&states[i]), Align: ink.Right})
	}
	for k := range states[0].Readings {
		e := Entry{Cells: []string{readingName(&states[0].Readings[k].Reading)}, Below: []string{""}, Of: []string{states[0].Readings[k].Reading.Name}}
		for i := range states {
			r := &states[i].Readings[k]
			e.Cells = append(e.Cells, stopOrLight(r))
			e.Struck = append(e.Struck, When(r.StopsStruck(), i+1)...)
			light := u.lightWords(&r.Reading)
			if i > 0 {
				light += "  " + signed(r.ChangeWords())
			}
			e.Below = append(e.Below, light)
		}
		t.Entries = append(t.Entries, e)
	}
	return t
}

// rangeTable is how low and how high each reading is before, between and after all cues, with the cue after which it is so first.
func rangeTable(all *meter.Cues) Table {
	t := Table{Columns: []Column{{Flexible: true}, {Head: "lowest", Align: ink.Right}, {Head: "after", Align: ink.Right}, {Head: "highest", Align: ink.Right}, {Head: "after", Align: ink.Right}}}
	for k := range all.States[0].Readings {
		low, high := 0, 0
		light := func(i int) float64 { return lightOf(&all.States[i].Readings[k].Reading) }
		for i := range all.States {
			if light(i) < light(low) {
				low = i
			}
			if light(i) > light(high) {
				high = i
			}
		}
		e := Entry{Cells: []string{readingName(&all.States[0].Readings[k].Reading)}}
		for _, i := range [...]int{low, high} {
			r := &all.States[i].Readings[k]
			e.Struck = append(e.Struck, When(r.StopsStruck(), len(e.Cells))...)
			e.Cells = append(e.Cells, stopOrLight(r), stateName(&all.States[i]))
		}
		t.Entries = append(t.Entries, e)
	}
	return t
}

// lightWords print the light of a reading: "301 lx".
func (u Units) lightWords(r *meter.Reading) string {
	if r.Luminance != nil {
		return unit.FormatLuminance(*r.Luminance)
	}
	return u.Lux(r.Lux)
}

// stateName is the cue of a state; "before" of the one before all.
func stateName(s *meter.CueState) string {
	if s.Cue == nil {
		return "before"
	}
	return s.Cue.Name
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
	names := in.runsOfCues(l)
	word := "cue "
	if len(in.Setup.CuesOf(l.Name)) > 1 {
		word = "cues "
	}
	return Joined("; ", Prefixed(word, strings.Join(names, ", ")), playWords(l))
}

// leastRun is how many cues in a row are named by their first and last alone.
const leastRun = 4

// runsOfCues are the names of the cues that a light moves in: of many in a row the first and the last.
func (in *Input) runsOfCues(l *plan.Light) (names []string) {
	all := in.Setup.Cues
	for i := 0; i < len(all); i++ {
		end := i
		for end < len(all) && all[end].Move(l.Name) != nil {
			end++
		}
		if end-i >= leastRun {
			names = append(names, all[i].Name+"–"+all[end-1].Name)
			i = end
			continue
		}
		for ; i < end; i++ {
			names = append(names, all[i].Name)
		}
	}
	return names
}

// mostMoves is how many moves of a light a list has one by one; of more it says in which cues and between which levels they are.
const mostMoves = 6

// moveRange says in which cues a light moves, and its lowest and highest level after one: "q1–q500, 10 % to 89 %".
func (in *Input) moveRange(l *plan.Light) string {
	low, high := 1.0, 0.0
	for i := range in.Setup.Cues {
		if m := in.Setup.Cues[i].Move(l.Name); m != nil {
			low, high = min(low, m.To.Level), max(high, m.To.Level)
		}
	}
	from, to := lightAt(l, plan.Setting{Level: low}), lightAt(l, plan.Setting{Level: high})
	return strings.Join(in.runsOfCues(l), ", ") + ", " + LightLevel(&from) + " to " + LightLevel(&to)
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
	if len(parts) > mostMoves {
		parts = []string{in.moveRange(l)}
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
