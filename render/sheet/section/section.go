package section

import (
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/layout"
)

// Section is a headed piece of the collar as data: the same section is laid out as a block on
// paper and printed as text.
type Section struct {
	Title    string
	Alarm    bool        // in the accent colour
	Rank     layout.Rank // how much it belongs on the sheet of the plan
	Figure   Figure      // what only a drawing shows; it stands first
	Walk     *meter.Walk // that a WalkFigure is of
	Cues     *meter.Cues // that a CueFigure is of
	textOnly []string    // the same in words, for text alone
	Words    []string    // plain paragraphs, second rank
	Tables   []Table
	Without  []string // what struck figures are without, in the accent colour
	Points   []string // paragraphs with a mark

	textTables []Table // figures that a drawing shows by its figure, for text alone
}

// Figure is what a section shows beside its words.
type Figure uint8

// The figures: tints and contours of the map, the second map with its own, the signs of the plan, the graph of a walk, and that of cues.
const (
	noFigure Figure = iota
	LevelFigure
	SmallMapFigure
	SignFigure
	WalkFigure
	CueFigure
)

// speaks says whether there is anything in words.
func (s *Section) speaks() bool {
	return len(s.textOnly) > 0 || len(s.Words) > 0 || len(s.Points) > 0 || len(s.Without) > 0 || s.hasRows()
}

func (s *Section) hasRows() bool {
	for _, t := range s.Tables {
		if len(t.Entries) > 0 {
			return true
		}
	}
	return false
}
