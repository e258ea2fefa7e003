package meter

import (
	"scrimshaw/plan"
	"scrimshaw/plan/term"
)

// Cues is what the cues of a set-up do to its light.
type Cues struct {
	States []CueState // the first is the set-up as it is written, before all cues
	Axis   CueAxis
	Curves []Curve // of the key side of each face, where they are and at their marks; of the meters, where there are no faces
}

// CueState is the light after a cue.
type CueState struct {
	Cue      *plan.Cue // nil before the first
	Moves    []CueMove
	Readings []CueReading // key side, fill side and domes of each face, and the meters
}

// CueMove is what one light does.
type CueMove struct {
	Light    string
	Numbered string // the light as the crew reads it: "3 lamp"
	From, To CueSetting
	Whiter   bool // whether the cue sets its white, and does not only change what its level makes of it
}

// CueSetting is a light at a level.
type CueSetting struct {
	Level  float64  // share of its full output, 0 to 1
	Kelvin *float64 // white of its light at that level, after its gels, K; nil where it is off or has no colour temperature
}

// CueReading is a reading after a cue.
type CueReading struct {
	Reading
	Side   string   // of a key side, the person's own: "left" or "right"; "" where both are dark, and of all else
	Change *float64 // stops from the state before; nil of the first, and where one of both is dark
}

// CueAxis is the time axis of the curves, s: of the take, where all cues have times; else one in even steps on which the fades alone
// are to scale.
type CueAxis struct {
	Timed bool
	End   float64   // s
	Start []float64 // when each cue goes, s
}

// Curve is how far from the working stop the key side of a face is over time; where nobody has one, a meter that is no spot meter.
type Curve struct {
	Person  string // or one of their marks; the meter
	Meter   bool   // it is of a meter, for there are no faces
	Points  []CurvePoint
	Working float64 // the stop that they are counted from, N

	Uncomputed []plan.Uncomputed // keys that could change it and that nothing computes yet
}

// CurvePoint is a point of a curve. Where a cue snaps there are two at one time: before it and after it.
type CurvePoint struct {
	Seconds float64 // on the axis
	Lux     float64
	Over    *float64 // stops over the working stop; nil of no light
}

// Played is what a light does that changes by itself.
type Played struct {
	Light     string
	Numbered  string
	Play      *plan.Play
	Cue       string  // after which it is up, and read; "": it is so in the set-up itself
	Low, High float64 // levels, shares of its full output
	Readings  []PlayedReading
}

// PlayedReading is a reading while a light is at its lowest, in the mean over all levels between, and at its highest; the others are as they
// are set.
type PlayedReading struct {
	Low, Mean, High Reading
}

// CueLists says whether a reading is one of those that are given for each cue.
func CueLists(r *Reading) bool {
	return r.Person == "" || r.Name == r.Person+".key" || r.Name == r.Person+".fill" || r.Kind == term.DomeMeter
}
