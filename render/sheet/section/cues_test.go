package section_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// afterMany is the kitchen with so many cues, each of which takes its lamp a percent up and the reading of a meter ten lux.
func afterMany(cues int) section.Input {
	in := fixture.Example()
	name := in.Setup.Lights[0].Name
	lux := func(v float64) []meter.CueReading {
		stop := math.Sqrt(v / 10)
		return []meter.CueReading{{Reading: meter.Reading{Name: "m", Lux: &v, Stop: &stop}}}
	}
	in.Cues = &meter.Cues{States: []meter.CueState{{Readings: lux(10)}}}
	in.Setup.Cues = make([]plan.Cue, cues)
	for i := range in.Setup.Cues {
		q := &in.Setup.Cues[i]
		*q = plan.Cue{Name: fmt.Sprint("q", i+1), Moves: []plan.Move{{Light: name, To: plan.Setting{Level: float64(i+1) / 100}}}}
		in.Cues.States = append(in.Cues.States, meter.CueState{Cue: q, Readings: lux(10 * float64(i+2))})
		in.Cues.Axis.Start = append(in.Cues.Axis.Start, float64(i))
	}
	return in
}

// A few cues stand one by one; of many the first, how far each reading goes, and in the row of a light the first and the last.
func TestManyCuesAreSummedUp(t *testing.T) {
	for cues, want := range map[int]struct{ lists, last, rows string }{
		3:  {"Cues, Stops and light after cues, and their change", "q3", "cues q1, q2, q3"},
		24: {"Cues" + strings.Repeat(", Stops and light after cues, and their change", 8), "q24", "cues q1–q24"},
		25: {"Cues, Stops over all cues", "and 1 more, to q25, which meter has one by one", "cues q1–q25"},
	} {
		in := afterMany(cues)
		var lists, rows []string
		for _, s := range reportOf(in).Sections() {
			if strings.Contains(strings.ToLower(s.Title), "cues") {
				lists = append(lists, s.Title)
				last := s.Tables[0].Entries[len(s.Tables[0].Entries)-1]
				if got := strings.Join(last.Cells, " "); s.Title == "Cues" && !strings.Contains(got, want.last) {
					t.Errorf("%d cues: the last row is %q", cues, got)
				}
				if got := strings.Join(last.Cells[1:], " "); s.Title == "Stops over all cues" && got != "T1 before T4+⅔ q25" {
					t.Errorf("%d cues: the reading goes %q", cues, got)
				}
			}
			if strings.HasPrefix(s.Title, "Lights") && len(s.Tables) > 0 {
				for _, e := range s.Tables[0].Entries {
					rows = append(rows, e.Notes...)
				}
			}
		}
		if got := strings.Join(lists, ", "); got != want.lists {
			t.Errorf("%d cues: the lists are %q", cues, got)
		}
		if got := strings.Join(rows, "; "); !strings.Contains(got, want.rows) {
			t.Errorf("%d cues: the rows of the lights say %q", cues, got)
		}
	}
}
