package sheet

// measure is the width of every column of text, mm: about fifty characters. Two of them stand beside
// each other on an A4 sheet upright, and five on an A3 sheet.
const measure = 69.0

// Distances in a column, mm.
const (
	blockGap   = 4.8 // above a heading
	blockSlack = 3.0 // by how much more a gap may grow where there is room
	headRise   = 5.4 // from the top of a heading to the top of what follows
	rowAir     = 1.2
)

// rank says how much a block belongs on the sheet of the plan.
type rank uint8

// The ranks: a block that must stand beside the plan, one that the plan is hard to use without, one
// that is wanted there, and one that may as well stand on a page of lists.
const (
	must rank = iota
	needed
	wanted
	other
)

// block is a headed piece of text as the flow of a page sees it: heights alone.
type block struct {
	rank rank
	head float64   // mm, the heading and what repeats with it where the block is split
	rows []float64 // mm each: none is split over columns
}
