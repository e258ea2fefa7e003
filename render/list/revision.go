package list

import (
	"cmp"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/render/sheet/section"
)

// Revision is what of a day is not as on the sheets that the crew holds.
type Revision struct {
	Revision, Since string // of these sheets, "" none; and of those
	Setups          []RevisedSetup
}

// RevisedSetup is what of a set-up is not as on the sheet before. One that is new or gone has no rows.
type RevisedSetup struct {
	Name      string
	New, Gone bool
	Rows      []section.RevisionRow
}

// Add holds the next set-up to the sheet before.
func (r *Revision) Add(now *plan.Setup, before *section.Since) {
	s := RevisedSetup{Name: now.Name, New: before.Setup == nil}
	if !s.New {
		s.Rows = before.Rows(now, section.Units{Feet: now.Feet})
	}
	r.Setups = append(r.Setups, s)
}

// Lose notes the set-ups that only the sheets before have.
func (r *Revision) Lose(names []string) {
	for _, name := range names {
		r.Setups = append(r.Setups, RevisedSetup{Name: name, Gone: true})
	}
}

// text writes what was revised, set-up by set-up.
func (r *Revision) text(b *strings.Builder) {
	b.WriteString("REVISED SINCE " + r.Since + "\n")
	for i := range r.Setups {
		s := &r.Setups[i]
		b.WriteString("  " + cmp.Or(s.Name, "the scene as it stands") + ": " + s.state() + "\n")
		wide := 0
		for k := range s.Rows {
			wide = max(wide, len([]rune(s.Rows[k].Tag)))
		}
		for k := range s.Rows {
			row := &s.Rows[k]
			b.WriteString("   " + row.Tag + strings.Repeat(" ", wide-len([]rune(row.Tag))) + "  " + row.Words + "\n")
		}
	}
	b.WriteString("\n")
}

// state says a set-up in a word or two.
func (s *RevisedSetup) state() string {
	switch {
	case s.New:
		return "new"
	case s.Gone:
		return "gone"
	case len(s.Rows) == 0:
		return "as it was"
	}
	return section.Count(len(s.Rows), "revision")
}

// What JSON has of a revision.
type (
	jsonRevision struct {
		Revision string             `json:"revision"`
		Since    string             `json:"since"`
		Setups   []jsonRevisedSetup `json:"setups"`
	}
	jsonRevisedSetup struct {
		Setup   string        `json:"setup"`
		State   string        `json:"state"` // new, gone, revised, same
		Changes []jsonRevised `json:"changes"`
	}
	jsonRevised struct {
		Kind    string    `json:"kind"` // new, gone, changed
		Thing   string    `json:"thing"`
		Sort    string    `json:"sort"`
		Number  string    `json:"number"`
		Aspects []string  `json:"aspects"`
		Words   string    `json:"words"`
		Move    *jsonMove `json:"move"` // null: it keeps its place
		Follows string    `json:"follows"`
	}
)

func (r *Revision) json() *jsonRevision {
	if r == nil {
		return nil
	}
	out := &jsonRevision{Revision: r.Revision, Since: r.Since}
	for i := range r.Setups {
		s := &r.Setups[i]
		j := jsonRevisedSetup{Setup: s.Name, State: s.state(), Changes: []jsonRevised{}}
		switch {
		case len(s.Rows) > 0:
			j.State = "revised"
		case !s.New && !s.Gone:
			j.State = "same"
		}
		for k := range s.Rows {
			j.Changes = append(j.Changes, revisedOf(&s.Rows[k]))
		}
		out.Setups = append(out.Setups, j)
	}
	return out
}

func revisedOf(row *section.RevisionRow) jsonRevised {
	l := row.Line
	out := jsonRevised{Kind: "changed", Thing: l.Name, Sort: string(l.Sort), Number: l.Tag, Words: row.Words, Aspects: []string{}, Move: moveOf(l), Follows: l.Follows}
	switch {
	case l.Part(change.Comes) != nil:
		out.Kind = "new"
	case l.Part(change.Goes) != nil:
		out.Kind = "gone"
	}
	for i := range l.Parts {
		if out.Kind != "changed" {
			break // all of it
		}
		out.Aspects = append(out.Aspects, string(l.Parts[i].Aspect))
	}
	return out
}
