package layout

// Measure is the width of every column of text, mm: about fifty characters. Two of them stand beside
// each other on an A4 sheet upright, and five on an A3 sheet.
const Measure = 69.0

// NoteMeasure is the most that running notes across a page are wide, mm: some 110 letters, beyond which an eye loses its line.
const NoteMeasure = 160.0

// BlockGap is the space above a heading, mm.
const BlockGap = 4.8

// Rank says how much a block belongs on the sheet of the plan.
type Rank uint8

// The ranks: a block that must stand beside the plan, the list of lights, one that the plan is hard to use without,
// one that is wanted there, and one that may as well stand on a page of lists.
const (
	must Rank = iota
	Listed
	Needed
	Wanted
	Other
)

// Block is a headed piece of text as the flow of a page sees it: heights alone.
type Block struct {
	Rank Rank
	Head float64   // mm, the heading and what repeats with it where the block is split
	Rows []float64 // mm each: none is split over columns
}
