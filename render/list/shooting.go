package list

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/section"
)

// Shooting is a day as it is shot: its set-ups in order, and what is done between each and the next.
type Shooting struct {
	Scene  string // the title
	Setups []string
	Steps  []Step    // one fewer than set-ups
	Since  *Revision // what is not as on the sheets before; nil: nobody asks

	rates  []scene.Rate
	states []*change.State
	last   *plan.Setup
}

// Step is what is done between two set-ups.
type Step struct {
	List *change.List
	Rows []section.ChangeRow
}

// Add takes the next set-up into the day. What of it the next needs is kept, and no set.
func (d *Shooting) Add(s *plan.Setup) {
	if s.Scene != nil {
		d.Scene, d.rates = words(s.Scene.Title.Value).Text, s.Scene.Rates
	}
	d.Scene = cmp.Or(d.Scene, words(s.Title).Text)
	d.Setups = append(d.Setups, s.Name)
	now := change.Of(s)
	if d.last != nil {
		list := change.Between(d.states[len(d.states)-1], now)
		d.Steps = append(d.Steps, Step{list, section.ChangeRows(d.last, s, list, section.Units{Feet: s.Feet})})
	}
	d.states, d.last = append(d.states, now), s.Remains()
}

// Facts is how many facts of things the day compares where all its set-ups are compared with each other.
func (d *Shooting) Facts() (n int) {
	for _, s := range d.states {
		n += len(s.Things)
	}
	return n * len(d.states)
}

// notCounted says what the work of a day is without.
const notCounted = "What is rigged for the first set-up and wrapped after the last is not counted. Any order can be shot: that a set-up is written after another does not bind it."

// sum is the work of all steps.
func (d *Shooting) sum() (s change.Sum) {
	for i := range d.Steps {
		s.Add(d.Steps[i].List.Sum())
	}
	return s
}

// leastMinutes is the least time that a list prints, minutes: what is less prints as 0.
const leastMinutes = 0.05

// swapWords says what a swap saves.
func (d *Shooting) swapWords(s *change.Swap) string {
	all := d.sum()
	var saves []string
	if m := all.Minutes - s.Sum.Minutes; math.Abs(m) >= leastMinutes {
		saves = append(saves, section.Minutes(m))
	}
	switch n := all.Lines - s.Sum.Lines; {
	case n > 0 || n == 0 && saves == nil:
		saves = append(saves, section.Count(n, "change"))
	case n < 0:
		saves = append(saves, "and takes "+section.Count(-n, "change")+" more")
	}
	return fmt.Sprintf("Swap %s and %s: saves %s", d.Setups[s.First], d.Setups[s.Second], strings.Join(saves, ", "))
}

// WriteText writes the day for a crew, with a box to tick a line.
func (d *Shooting) WriteText(w io.Writer) error {
	var b strings.Builder
	if d.Scene != "" {
		b.WriteString(d.Scene + "\n\n")
	}
	if d.Since != nil {
		d.Since.text(&b)
	}
	for i, name := range d.Setups {
		fmt.Fprintf(&b, "%d  %s\n", i+1, cmp.Or(name, "the scene as it stands"))
		if i < len(d.Steps) {
			d.Steps[i].write(&b, d.Setups[i+1])
		}
	}
	if len(d.Steps) > 0 {
		all := d.sum()
		b.WriteString("\nTHE DAY\n  " + section.SumWords(&all) + "\n")
	}
	swaps := change.NewOrder(d.states).Swaps()
	for i := range swaps {
		b.WriteString("  " + d.swapWords(&swaps[i]) + "\n")
	}
	if len(swaps) == 0 && len(d.Setups) > 2 {
		b.WriteString("  No swap of two set-ups saves any of that\n")
	}
	b.WriteString("\n" + notCounted + "\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// write writes the lines of a step.
func (s *Step) write(b *strings.Builder, to string) {
	sum := s.List.Sum()
	if sum.Lines == 0 {
		b.WriteString("   to " + to + ": nothing changes\n\n")
		return
	}
	b.WriteString("   to " + to + ": " + section.SumWords(&sum) + "\n")
	wide := 0
	for i := range s.Rows {
		wide = max(wide, len([]rune(s.Rows[i].Tag)))
	}
	for i := range s.Rows {
		r := &s.Rows[i]
		line := fmt.Sprintf("   %s %s%s  %s", section.TickBox, r.Tag, strings.Repeat(" ", wide-len([]rune(r.Tag))), joined("; ", r.Words, r.Where, r.Time))
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	b.WriteString("\n")
}

// What JSON has of a day: minutes are there only where the scene gives rates.
type (
	jsonDay struct {
		Scene  string             `json:"scene"`
		Setups []string           `json:"setups"` // in the order that is given
		Rates  map[string]float64 `json:"rates"`  // minutes by kind of change, the scene's own; null: it gives none
		Steps  []jsonStep         `json:"steps"`
		Work   jsonWork           `json:"work"`
		Swaps  []jsonSwap         `json:"swaps"` // the best first
		Since  *jsonRevision      `json:"since"` // null: nobody asks
	}
	jsonStep struct {
		From    string       `json:"from"`
		To      string       `json:"to"`
		Changes []jsonChange `json:"changes"` // in the order of work
		Work    jsonWork     `json:"work"`
	}
	jsonWork struct {
		Changes int            `json:"changes"`
		Kinds   map[string]int `json:"kinds"`
		Minutes *float64       `json:"minutes"` // by the rates; null: none of the changes has one
		Unrated int            `json:"unrated"` // changes of kinds without a rate
	}
	jsonChange struct {
		Kind       string    `json:"kind"`
		Thing      string    `json:"thing"` // its name in the file
		Sort       string    `json:"sort"`  // light, grip, camera, furniture …
		Number     string    `json:"number"`
		Aspects    []string  `json:"aspects"` // what of it differs
		Words      string    `json:"words"`
		Place      string    `json:"place"` // two distances by tape
		Move       *jsonMove `json:"move"`  // null: it keeps its place
		Follows    string    `json:"follows"`
		People     int       `json:"people"` // that it takes at least
		Why        []string  `json:"why"`    // it takes two
		HotMinutes *float64  `json:"hotMinutes"`
		TakeOff    []string  `json:"takeOffFirst"` // the names of what stands on it
		Minutes    *float64  `json:"minutes"`
	}
	jsonMove struct {
		From       []float64 `json:"from"` // x, y, z, m
		To         []float64 `json:"to"`   // m
		PlanMetres float64   `json:"planMetres"`
		RiseMetres float64   `json:"riseMetres"`
	}
	jsonSwap struct {
		Setups       []string `json:"setups"` // the two that change places
		Order        []string `json:"order"`
		Work         jsonWork `json:"work"`
		SavesChanges int      `json:"savesChanges"` // less than 0: it takes more, and saves minutes
		SavesMinutes *float64 `json:"savesMinutes"`
	}
)

// WriteJSON writes the day for programs.
func (d *Shooting) WriteJSON(w io.Writer) error {
	all := d.sum()
	out := jsonDay{Scene: d.Scene, Setups: d.Setups, Steps: []jsonStep{}, Work: workOf(all), Swaps: []jsonSwap{}, Since: d.Since.json()}
	if len(d.rates) > 0 {
		out.Rates = map[string]float64{}
	}
	for _, r := range d.rates {
		out.Rates[string(r.Work)] = r.Minutes
	}
	for i := range d.Steps {
		out.Steps = append(out.Steps, d.Steps[i].json())
	}
	for _, s := range change.NewOrder(d.states).Swaps() {
		order := append([]string{}, d.Setups...)
		order[s.First], order[s.Second] = order[s.Second], order[s.First]
		swap := jsonSwap{Setups: []string{d.Setups[s.First], d.Setups[s.Second]}, Order: order, Work: workOf(s.Sum), SavesChanges: all.Lines - s.Sum.Lines}
		if len(d.rates) > 0 {
			swap.SavesMinutes = tenth(all.Minutes - s.Sum.Minutes)
		}
		out.Swaps = append(out.Swaps, swap)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func workOf(s change.Sum) jsonWork {
	w := jsonWork{Changes: s.Lines, Kinds: map[string]int{}, Unrated: s.Unrated}
	for i, n := range s.Kinds {
		if n > 0 {
			w.Kinds[string(term.Works[i])] = n
		}
	}
	if s.Unrated < s.Lines {
		w.Minutes = tenth(s.Minutes)
	}
	return w
}

// tenth is a time without the noise of its sum.
func tenth(minutes float64) *float64 { return number(minutes, 3).Number }

func (s *Step) json() jsonStep {
	out := jsonStep{From: s.List.Before, To: s.List.Now, Changes: []jsonChange{}, Work: workOf(s.List.Sum())}
	for i := range s.Rows {
		if l := s.Rows[i].Line; l != nil {
			out.Changes = append(out.Changes, changeOf(l, &s.Rows[i]))
		}
	}
	return out
}

func changeOf(l *change.Line, said *section.ChangeRow) jsonChange {
	c := jsonChange{Kind: string(l.Work), Thing: l.Name, Sort: string(l.Sort), Number: l.Tag, Words: said.Words, Place: said.Where, Follows: l.Follows, People: 1,
		Aspects: []string{}, Why: []string{}, TakeOff: append([]string{}, l.Holds...), Minutes: l.Rate}
	for i := range l.Parts {
		c.Aspects = append(c.Aspects, string(l.Parts[i].Aspect))
	}
	for _, r := range l.Hands {
		c.Why, c.People = append(c.Why, string(r)), 2
	}
	if l.HotMinutes > 0 {
		c.HotMinutes = &l.HotMinutes
	}
	c.Move = moveOf(l)
	return c
}

// moveOf is how the thing of a line goes from one place to another; nil where it keeps its own.
func moveOf(l *change.Line) *jsonMove {
	m, ok := l.Move()
	if !ok {
		return nil
	}
	place := func(x, y, z float64) []float64 {
		return []float64{*number(x, 3).Number, *number(y, 3).Number, *number(z, 3).Number}
	}
	return &jsonMove{place(m.From.X, m.From.Y, m.From.Z), place(m.To.X, m.To.Y, m.To.Z), *number(m.Plan, 3).Number, *number(m.Rise, 3).Number}
}
