package section

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
	"scrimshaw/symbols/ink"
)

// Matches are the faces of a day side by side, and what is held to nothing.
type Matches struct {
	Faces     []Matched
	Alone     []string // in sentences
	Sequenced bool     // a set-up says which others it is cut together with
	Cued      bool     // cues change the lights of one
}

// None says whether there is nothing to be said of a day.
func (m *Matches) None() bool { return len(m.Faces) == 0 && !m.Sequenced }

// Matched is one face in all set-ups of a sequence that have it, side by side.
type Matched struct {
	Person   string
	From     string // the set-up that the others are held to: the first with that face
	Sequence string // in words, "sequence night"; "" where the day has no sequences
	Columns  []MatchColumn
	Both     bool // cameras see it from before and from behind
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

// Matching puts the faces of a day side by side, those that two set-ups or more of a sequence have.
func Matching(all []Digest) *Matches {
	out := &Matches{Sequenced: slices.ContainsFunc(all, func(d Digest) bool { return d.Sequence != "" }), Cued: slices.ContainsFunc(all, func(d Digest) bool { return d.Cued })}
	var people, alone []string
	for i := range all {
		for k := range all[i].Looks {
			people = append(people, missing(people, all[i].Looks[k].Person)...)
		}
	}
	for _, cut := range sequencesOf(all) {
		words := ""
		if out.Sequenced {
			words = cut[0].sequenceWords()
		}
		if out.Sequenced && len(cut) == 1 {
			out.Alone = append(out.Alone, ink.Capital(words)+" is one set-up alone, "+cut[0].Name+", which is held to nothing.")
			continue
		}
		for _, p := range people {
			m := Matched{Person: p, Sequence: words}
			m.fill(cut)
			switch {
			case len(m.Columns) == 0:
			case m.From == m.Columns[len(m.Columns)-1].Setup:
				alone = append(alone, p+" ("+m.From+")")
			default:
				out.Faces = append(out.Faces, m)
			}
		}
	}
	if len(alone) > 0 {
		of := ""
		if out.Sequenced {
			of = " of a sequence"
		}
		out.Alone = append(out.Alone, "In one set-up"+of+" alone: "+strings.Join(alone, ", ")+".")
	}
	return out
}

// sequencesOf are the set-ups that are cut together, each by the first of them: one that comes back is one.
func sequencesOf(all []Digest) (out [][]*Digest) {
	at := map[string]int{}
	for i := range all {
		d := &all[i]
		if _, known := at[d.Sequence]; !known {
			at[d.Sequence] = len(out)
			out = append(out, nil)
		}
		out[at[d.Sequence]] = append(out[at[d.Sequence]], d)
	}
	return out
}

// sequenceWords name the sequence of a set-up that is its first; one that has no name bears that of the set-up.
func (d *Digest) sequenceWords() string {
	if d.Sequence == "" {
		return "sequence of " + d.Name
	}
	return "sequence " + d.Sequence
}

// fill puts a face into columns as it looks in set-ups that are cut together.
func (m *Matched) fill(cut []*Digest) {
	var from *match.Look
	for _, d := range cut {
		for k := range d.Looks {
			switch l := &d.Looks[k]; {
			case l.Person != m.Person:
				continue
			case from == nil:
				from, m.From = l, l.Setup
			case l.Back != from.Back:
				m.Both = true
			}
		}
	}
	for _, d := range cut {
		for k := range d.Looks {
			if l := &d.Looks[k]; l.Person == m.Person {
				m.Columns = append(m.Columns, m.column(l, from, d.Looks))
			}
		}
	}
}

// Title names a face with its sequence and what it is held to.
func (m *Matched) Title() string {
	if m.Sequence == "" {
		return m.Person + ", held to " + m.From
	}
	return ink.Capital(m.Sequence) + ": " + m.Person + ", held to " + m.From
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

// Notes explain the figures of the page, and say what is held to nothing; there are none where there is no face.
func (m *Matches) Notes() []string {
	if len(m.Faces) == 0 {
		return nil
	}
	to := "the first set-up that has the face"
	if m.Sequenced {
		to = "the first set-up of its sequence that has the face, and to none of another"
	}
	notes := []string{
		fmt.Sprintf("Each column is held to "+to+". Framed: more than a third of a stop or %d mired from it, with how much in brackets.", match.PassMired),
		"Key and fill side are stops from the camera's working stop, behind the head stops from grey, colours mired from the camera's white: plus is warmer. " +
			fmt.Sprintf("Steady within: by how many stops the light changes within %.0f cm of the face.", 100*meter.SteadyWithin),
		"To match is the least that a crew has to do: a level or a lamp's own white before a scrim, that before a gel; for one face, with all else as it is. " +
			"First the side of the key, by levels that make the lamps change places; then the face, how steady its light is, what stands behind it. What matches already is left so.",
	}
	if m.Cued {
		notes = append(notes, "Where a set-up has cues, its column is the light before the first of them.")
	}
	if slices.ContainsFunc(m.Faces, func(m Matched) bool { return m.Both }) {
		notes = append(notes, "From behind a head left and right of the picture are the other way round: there the side of the key is the person's own, and what stands behind is not held to the other wall.")
	}
	if slices.ContainsFunc(m.Faces, Matched.struck) {
		notes = append(notes, "Struck figures are without keys that are not computed yet: the sheet of the set-up names them.")
	}
	if slices.ContainsFunc(m.Faces, Matched.revised) {
		notes = append(notes, "A bar stands beside what is not as on the sheets before.")
	}
	return append(notes, m.Alone...)
}

// Nothing says that no face is held to another; nil where one is.
func (m *Matches) Nothing() *Section {
	if len(m.Faces) > 0 {
		return nil
	}
	return &Section{Title: "Nothing to match", Words: m.Alone}
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

// Mark puts bars beside the figures that the sheets before have not, as they read. Of a set-up that is new all of it is, and no figure has one.
func (m *Matches) Mark(was *Matches, isNew func(setup string) bool) {
	now, before := m.Faces, was.Faces
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
	s := &Section{Title: Joined(", ", "Matching", m.Sequence, m.Person), Tables: []Table{t}}
	for i := range m.Columns {
		if c := &m.Columns[i]; len(c.Fix) > 0 {
			s.Points = append(s.Points, "To match, "+Joined(" ", c.Setup, c.Camera)+": "+strings.Join(c.Fix, "; "))
		}
	}
	return s
}

// Text is the page of matching as plain text; "" where there is nothing to match.
func (m *Matches) Text() string {
	if m.None() {
		return ""
	}
	w := &printer{}
	for i := range m.Faces {
		w.section(matchSection(&m.Faces[i]))
	}
	w.section(cmp.Or(m.Nothing(), &Section{Title: "About matching", Words: m.Notes()}))
	return w.String()
}
