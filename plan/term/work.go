package term

// Work is what a crew does to a thing between two set-ups.
type Work string

// The kinds of work.
const (
	Struck   Work = "strike" // a thing leaves the set
	Placed   Work = "set"    // one comes onto it, with all that is on it
	Swapped  Work = "swap"   // another unit, modifier, bulb, piece, or another hold for it
	Moved    Work = "move"   // to another place or height
	Fitted   Work = "fit"    // doors, scrims, focus, cuts, a pattern
	Gelled   Work = "gel"    // gels on a light or on glass
	Clothed  Work = "cloth"  // cloth before a light, of a frame, in an opening
	Cabled   Work = "cable"  // to another circuit
	Levelled Work = "level"  // up, down, on or off
	Coloured Work = "colour" // another white or tint of a unit
	Aimed    Work = "aim"    // turned where it is
	Doored   Work = "door"   // a door or a casement opened or shut
	Marked   Work = "mark"   // where people are, look and walk
	Filmed   Work = "camera" // what a camera is, has and is set to
)

// Works lists them.
var Works = []Work{Struck, Placed, Swapped, Moved, Fitted, Gelled, Clothed, Cabled, Levelled, Coloured, Aimed, Doored, Marked, Filmed}
