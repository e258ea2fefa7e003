package files

// The codes of the faults that this package finds.
const (
	CodeFormat  = "photometry-format"  // not a file of this kind
	CodeNumber  = "photometry-number"  // something else where a number belongs
	CodeCount   = "photometry-count"   // fewer or more values than the file announces
	CodeAngles  = "photometry-angles"  // angles that do not ascend, or leave their range
	CodeValue   = "photometry-value"   // a value that has no meaning
	CodeQuirk   = "photometry-quirk"   // not as the format has it, but understood
	CodeLabel   = "photometry-label"   // words that are missing or too long
	CodeUnused  = "photometry-unused"  // understood, and not reckoned with
	CodeBalance = "photometry-balance" // figures of the file that contradict each other
)
