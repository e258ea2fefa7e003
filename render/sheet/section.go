package sheet

// section is a headed piece of the collar as data: the same section is laid out as a block on
// paper and printed as text.
type section struct {
	title  string
	alarm  bool     // in the accent colour
	rank   rank     // how much it belongs on the sheet of the plan
	figure figure   // what only a drawing shows; it stands first
	said   []string // the same in words, for text alone
	words  []string // plain paragraphs, second rank
	tables []table
	lacks  []string // what struck figures are without, in the accent colour
	points []string // paragraphs with a mark
}

// figure is what a section shows beside its words.
type figure uint8

// The figures: tints and contours of the map, the second map with its own, and the signs of the plan.
const (
	noFigure figure = iota
	levelFigure
	smallMapFigure
	signFigure
)

// speaks says whether there is anything in words.
func (s *section) speaks() bool {
	return len(s.said) > 0 || len(s.words) > 0 || len(s.points) > 0 || len(s.lacks) > 0 || s.hasRows()
}

func (s *section) hasRows() bool {
	for _, t := range s.tables {
		if len(t.entries) > 0 {
			return true
		}
	}
	return false
}
