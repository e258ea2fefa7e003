package section

import (
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
)

// Matched is one face in all set-ups that have it, side by side.
type Matched struct {
	Person  string
	From    string // the set-up that the others are held to: the first with that face
	Columns []MatchColumn
	Both    bool // cameras see it from before and from behind
}

// MatchColumn is a face as one camera sees it in one set-up.
type MatchColumn struct {
	Setup, Camera, Shot string
	Picture             float64 // the ratio of the width of the picture to its height; 0 where no camera sees the face
	Cells               []MatchCell
	Fix                 []string // what brings it to the first, a line a light and one of what that leaves
	Refixed             bool     // that is not as on the sheets before
}

// MatchCell is a figure, and how far it lies from that of the first set-up.
type MatchCell struct {
	Text, Apart string // Apart is "" where it passes
	Off         bool   // it does not pass
	Struck      bool
	Revised     bool // it is not as on the sheets before
}

// MatchLabels are the heads of the rows.
func MatchLabels() []string {
	return []string{"key side, stops over", "fill side", "key over fill", "behind, left", "behind, right", "key side, mired", "fill side, mired", "steady within", "key side is"}
}

// Matching puts the faces of a day side by side, those that two set-ups or more have.
func Matching(all []Digest) (out []Matched, alone []string) {
	var people []string
	looks := map[string][]*match.Look{}
	for i := range all {
		for k := range all[i].Looks {
			l := &all[i].Looks[k]
			if !slices.Contains(people, l.Person) {
				people = append(people, l.Person)
			}
			looks[l.Person] = append(looks[l.Person], l)
		}
	}
	for _, p := range people {
		own := looks[p]
		if own[0].Setup == own[len(own)-1].Setup {
			alone = append(alone, p+" ("+own[0].Setup+")")
			continue
		}
		m := Matched{Person: p, From: own[0].Setup}
		m.Both = slices.ContainsFunc(own, func(l *match.Look) bool { return l.Back != own[0].Back })
		for _, l := range own {
			m.Columns = append(m.Columns, m.column(l, own[0], looksIn(all, l.Setup)))
		}
		out = append(out, m)
	}
	return out, alone
}

// sideWords say on which side of the picture the key is: "left", "turned away from A"; where cameras see the face from before and from behind, the person's
// own side with it.
func (m *Matched) sideWords(l *match.Look) string {
	words := strings.TrimPrefix(string(l.Side), "camera ")
	if l.Side == meter.TurnedTo || l.Side == meter.TurnedAway {
		words = string(l.Side) + " " + shortPost(l.Camera)
	}
	switch {
	case !m.Both || words == "":
		return words
	case l.Back:
		return "own " + l.Own + ", from behind"
	}
	return words + ", own " + l.Own
}

// looksIn are the looks of one set-up.
func looksIn(all []Digest, setup string) []match.Look {
	for i := range all {
		if all[i].Name == setup {
			return all[i].Looks
		}
	}
	return nil
}

// column is one look beside the first.
func (m *Matched) column(l, from *match.Look, others []match.Look) MatchColumn {
	c := MatchColumn{Setup: l.Setup, Camera: shortPost(l.Camera), Picture: l.Picture}
	if l.Shot != nil {
		c.Shot = string(l.Shot.Size)
	}
	for r := range match.Rows {
		c.Cells = append(c.Cells, matchCell(l, from, r))
	}
	struck := l.Struck[match.Contrast] // which side is brighter hangs on the light of both
	c.Cells = append(c.Cells, MatchCell{Text: orDash(m.sideWords(l)), Off: l.Turned(from) && !struck && !from.Struck[match.Contrast], Struck: struck})
	if mend := l.MendTo(from, others); mend != nil {
		c.Fix = mendWords(mend, l, from)
	}
	return c
}

func matchCell(l, from *match.Look, r match.Row) MatchCell {
	c := MatchCell{Text: matchFigure(l.Figures[r], r), Struck: l.Struck[r], Off: l.Off(from, r)}
	if c.Off {
		c.Apart = "(" + matchFigure(l.Differs(from, r), r) + ")"
		if !strings.ContainsAny(c.Apart, "+−") {
			c.Apart = strings.Replace(c.Apart, "(", "(+", 1)
		}
	}
	return c
}

// Pictured says whether a camera sees the face in one of its set-ups.
func (m Matched) Pictured() bool {
	return slices.ContainsFunc(m.Columns, func(c MatchColumn) bool { return c.Picture > 0 })
}

// MatchNotes explain the page.
func MatchNotes(matched []Matched, alone []string) []string {
	notes := []string{
		fmt.Sprintf("Each column is held to the first set-up that has the face. Framed: more than a third of a stop or %d mired from it, with how much in brackets.", match.PassMired),
		"Key and fill side are stops from the camera's working stop, behind the head stops from grey, colours mired from the camera's white: plus is warmer. " +
			fmt.Sprintf("Steady within: by how many stops the light changes within %.0f cm of the face.", 100*meter.SteadyWithin),
		"To match is the least that a crew has to do: a level or a lamp's own white before a scrim, that before a gel; for one face, with all else as it is. " +
			"First the side of the key, by levels that make the lamps change places; then the face, how steady its light is, what stands behind it. What matches already is left so.",
	}
	if slices.ContainsFunc(matched, func(m Matched) bool { return m.Both }) {
		notes = append(notes, "From behind a head left and right of the picture are the other way round: there the side of the key is the person's own, and what stands behind is not held to the other wall.")
	}
	if slices.ContainsFunc(matched, Matched.struck) {
		notes = append(notes, "Struck figures are without keys that are not computed yet: the sheet of the set-up names them.")
	}
	if slices.ContainsFunc(matched, Matched.revised) {
		notes = append(notes, "A bar stands beside what is not as on the sheets before.")
	}
	if len(alone) > 0 {
		notes = append(notes, "In one set-up alone: "+strings.Join(alone, ", ")+".")
	}
	return notes
}

// revised says whether any figure of a face is, or what brings it to the first.
func (m Matched) revised() bool {
	return slices.ContainsFunc(m.Columns, func(c MatchColumn) bool {
		return c.Refixed || slices.ContainsFunc(c.Cells, func(f MatchCell) bool { return f.Revised })
	})
}

// struck says whether any figure of a face is.
func (m Matched) struck() bool {
	return slices.ContainsFunc(m.Columns, func(c MatchColumn) bool {
		return slices.ContainsFunc(c.Cells, func(f MatchCell) bool { return f.Struck })
	})
}

// MarkMatching puts bars beside the figures that the sheets before have not, as they read. Of a set-up that is new all of it is, and no figure has one.
func MarkMatching(now, before []Matched, isNew func(setup string) bool) {
	held := map[[3]string]*MatchColumn{}
	key := func(m *Matched, c *MatchColumn) [3]string { return [...]string{m.Person, c.Setup, c.Camera} }
	for i := range before {
		for k := range before[i].Columns {
			held[key(&before[i], &before[i].Columns[k])] = &before[i].Columns[k]
		}
	}
	for i := range now {
		for k := range now[i].Columns {
			if c := &now[i].Columns[k]; !isNew(c.Setup) {
				c.mark(held[key(&now[i], c)])
			}
		}
	}
}

// mark puts bars beside the figures of a column that another has not; was may be nil.
func (c *MatchColumn) mark(was *MatchColumn) {
	for r := range c.Cells {
		q := &c.Cells[r]
		q.Revised = was == nil || q.Text != was.Cells[r].Text || q.Apart != was.Cells[r].Apart || q.Off != was.Cells[r].Off
	}
	c.Refixed = was == nil && len(c.Fix) > 0 || was != nil && !slices.Equal(c.Fix, was.Fix)
}

// matchSection is a face in all set-ups in words.
func matchSection(m *Matched) *Section {
	t := Table{Columns: []Column{{}}}
	labels := MatchLabels()
	for i := range m.Columns {
		t.Columns = append(t.Columns, Column{Head: Joined(" ", m.Columns[i].Setup, m.Columns[i].Camera)})
	}
	for r, label := range labels {
		e := Entry{Cells: []string{label}}
		for i := range m.Columns {
			c := &m.Columns[i].Cells[r]
			if c.Struck {
				e.Struck = append(e.Struck, i+1)
			}
			e.Revised = e.Revised || c.Revised
			text := Joined(" ", c.Text, c.Apart)
			if c.Off && c.Apart == "" {
				text += " (turned)"
			}
			e.Cells = append(e.Cells, text)
		}
		t.Entries = append(t.Entries, e)
	}
	s := &Section{Title: "Matching, " + m.Person, Tables: []Table{t}}
	for i := range m.Columns {
		if c := &m.Columns[i]; len(c.Fix) > 0 {
			s.Points = append(s.Points, "To match, "+Joined(" ", c.Setup, c.Camera)+": "+strings.Join(c.Fix, "; "))
		}
	}
	return s
}

// PrintMatching is the page of matching as plain text; "" where there is nothing to match.
func PrintMatching(matched []Matched, alone []string) string {
	if len(matched) == 0 {
		return ""
	}
	w := &printer{}
	for i := range matched {
		w.section(matchSection(&matched[i]))
	}
	w.section(&Section{Title: "About matching", Words: MatchNotes(matched, alone)})
	return w.String()
}
