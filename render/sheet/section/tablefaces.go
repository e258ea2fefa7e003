package section

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// uncertainFrom is the stated error, as a share, from which on a reading is named as uncertain: a tenth of a stop.
const uncertainFrom = 0.07

// uncertain says how many readings have a large stated error, and which has the largest; "" where none has.
func uncertain(readings []*meter.Reading) string {
	var worst *meter.Reading
	many := 0
	for _, r := range readings {
		if r == nil || r.Error == nil || *r.Error < uncertainFrom {
			continue
		}
		many++
		if worst == nil || *r.Error > *worst.Error {
			worst = r
		}
	}
	switch {
	case worst == nil:
		return ""
	case many == 1:
		return fmt.Sprintf("Known less closely: %s to ±%.0f %%.", worst.Name, 100**worst.Error)
	}
	return fmt.Sprintf("Known less closely than ±%.0f %%: %d readings, %s to ±%.0f %%.", 100*uncertainFrom, many, worst.Name, 100**worst.Error)
}

// besides is how many of the first faces of some stand beside each other in one table.
func besides(faces []Face) int {
	const widest = 9 // letters of a name over a column of figures
	if len(faces) < 2 {
		return 1
	}
	for i := range faces[:2] {
		if f := &faces[i]; f.Key == nil || f.Fill == nil || utf8.RuneCountInString(f.Person) > widest {
			return 1
		}
	}
	return 2
}

// facesTable is a table of some faces, each with two columns: the figures of a reading. A face alone has more rows.
func (c Units) facesTable(faces []Face, alone bool) Table {
	t := Table{Columns: []Column{{Flexible: true}}}
	for i := range faces {
		light, stop := Column{Align: ink.Right}, Column{Align: ink.Right}
		if !alone {
			light.Head, stop.Head = faces[i].Person, "stops"
		}
		t.Columns = append(t.Columns, light, stop)
	}
	rows := faceRowsOf(faces, alone)
	if alone {
		rows = slices.Insert(rows, len(rows)-1, aloneRowsOf(&faces[0])...) // the last row is of colours
	}
	for _, row := range rows {
		e := Entry{Cells: []string{row.words}}
		for i := range faces {
			of := c.faceCells(&faces[i], row)
			if !alone {
				of.Cells = c.bareCells(of.Cells, row)
			}
			e.Of = append(e.Of, row.readings(&faces[i])...)
			for j, cell := range of.Cells {
				e.Cells = append(e.Cells, cell)
				if slices.Contains(of.Struck, j) {
					e.Struck = append(e.Struck, len(e.Cells)-1)
				}
			}
		}
		t.Entries = append(t.Entries, e)
	}
	return t
}

// atFaces are the readings of the list of faces.
func atFaces(in *Input) []*meter.Reading {
	var all []*meter.Reading
	for i := range in.Faces {
		f := &in.Faces[i]
		all = append(append(all, f.Key, f.Fill), f.Domes...)
	}
	return all
}

// faceRow is a row of a table of faces: what it says of each.
type faceRow struct {
	words string
	of    func(f *Face) *meter.Reading // nil: of both sides of a face
	shown faceFigure
	view  int // of what cameras see, the first that sees it so
}

// faceFigure says what a row shows.
type faceFigure uint8

const (
	oneReading faceFigure = iota
	contrastOfBoth
	colourOfBoth
	keyToFill
	seenByCamera
	noReading
)

// faceRowsOf are the rows that some faces have together.
func faceRowsOf(faces []Face, alone bool) []faceRow {
	if len(faces) == 1 && (faces[0].Key == nil || faces[0].Fill == nil) {
		return []faceRow{{words: orDash(faces[0].Skipped), shown: noReading}}
	}
	rows := []faceRow{
		{words: "key side", of: func(f *Face) *meter.Reading { return f.Key }},
		{words: "fill side", of: func(f *Face) *meter.Reading { return f.Fill }},
	}
	var toward []string
	for i := range faces {
		for _, d := range faces[i].Domes {
			if camera := towardOf(d.Name); !slices.Contains(toward, camera) {
				toward = append(toward, camera)
			}
		}
	}
	slices.Sort(toward)
	dome, colour := "dome toward ", "colour, key and fill"
	if !alone { // there is no more room
		dome, colour = "dome, ", "key, fill in K"
	}
	for _, camera := range toward {
		rows = append(rows, faceRow{words: dome + shortPost(camera), of: func(f *Face) *meter.Reading {
			i := slices.IndexFunc(f.Domes, func(d *meter.Reading) bool { return towardOf(d.Name) == camera })
			if i < 0 {
				return nil
			}
			return f.Domes[i]
		}})
	}
	return append(rows, faceRow{words: "key + fill : fill", shown: contrastOfBoth}, faceRow{words: colour, shown: colourOfBoth})
}

// readings are the names of those that a row shows of a face.
func (row *faceRow) readings(f *Face) (names []string) {
	all := []*meter.Reading{f.Key, f.Fill}
	switch {
	case row.shown == oneReading:
		all = []*meter.Reading{row.of(f)}
	case row.shown == noReading:
		return nil
	}
	for _, r := range all {
		if r != nil {
			names = append(names, r.Name)
		}
	}
	return names
}

// faceCells are the two figures of a face in a row.
func (c Units) faceCells(f *Face, row faceRow) Entry {
	switch row.shown {
	case noReading:
		return Entry{Cells: []string{"", ""}}
	case keyToFill:
		return Entry{Cells: []string{"", tenths(*f.KeyToFill) + " : 1"}, Struck: When(f.Key.Struck() || f.Fill.Struck(), 1)}
	case seenByCamera:
		return Entry{Cells: seenWords(f, row.view), Struck: When(f.Key.Struck() || f.Fill.Struck(), 0)}
	case contrastOfBoth:
		stops, ratio := contrastWords(f)
		return Entry{Cells: []string{stops, ratio}, Struck: When(f.Key.Struck() || f.Fill.Struck(), 0, 1)}
	case colourOfBoth:
		return Entry{Cells: []string{kelvin(f.Key.CCT), kelvin(f.Fill.CCT)}, Struck: append(When(f.Key.Struck(), 0), When(f.Fill.Struck(), 1)...)}
	}
	r := row.of(f)
	if r == nil {
		return Entry{Cells: []string{"–", ""}}
	}
	return Entry{Cells: []string{c.Lux(r.Lux), Stop(r.Stop)}, Struck: append(When(r.Struck(), 0), When(r.StopsStruck(), 1)...)}
}

// bareCells are the figures of a face in a table whose title and heads have the units of its columns, so that two faces stand beside each other: a
// ratio is one of light, and what it is in stops stands under those.
func (c Units) bareCells(cells []string, row faceRow) []string {
	switch row.shown {
	case contrastOfBoth:
		return []string{cells[1], strings.TrimSuffix(cells[0], " stops")}
	case colourOfBoth:
		return []string{strings.TrimSuffix(cells[0], " K"), strings.TrimSuffix(cells[1], " K")}
	}
	return []string{strings.TrimSuffix(cells[0], " "+c.lightUnit()), cells[1]}
}

// contrastWords says a contrast in stops and as a ratio; dashes where a side is dark.
func contrastWords(f *Face) (stops, ratio string) {
	if !Lit(f.Key) || !Lit(f.Fill) {
		return "–", "–"
	}
	ratio = tenths(*f.Key.Lux / *f.Fill.Lux) + " : 1"
	if unit.EqualStops(f.Contrast) {
		return "equal", ratio
	}
	return signed(tenths(f.Contrast)) + " stops", ratio
}

// aloneRowsOf are what a table of one face says besides: the contrast by its other name, where cameras see the key cheek, and the
// lamps that they see in the eyes, of cameras that have them in frame.
func aloneRowsOf(f *Face) (rows []faceRow) {
	if f.Key == nil || f.Fill == nil || f.Side == "" {
		return nil
	}
	if f.KeyToFill != nil {
		rows = append(rows, faceRow{words: "key : fill", shown: keyToFill})
	}
	for i := range f.Views {
		if f.Views[i].Outside {
			continue
		}
		said := seenWords(f, i)
		alike := func(row faceRow) bool { return row.shown == seenByCamera && slices.Equal(seenWords(f, row.view), said) }
		if at := slices.IndexFunc(rows, alike); at >= 0 {
			rows[at].words += ", " + shortPost(f.Views[i].Camera)
			continue
		}
		rows = append(rows, faceRow{words: "key and eyes from " + shortPost(f.Views[i].Camera), shown: seenByCamera, view: i})
	}
	return rows
}
