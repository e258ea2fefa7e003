// Package explain shows how a reading comes about, light by light, as a calculation that can be done again from what it
// prints: what leaves the lamp, what of it goes toward the reading, how far and how steeply, what the panes leave, what
// comes back of surfaces; then the sum, and the stop that it calls for.
//
// A value of the engine that has no formula a pencil could follow is given as what it is: the share of an opening that is
// seen past everything in its way, what a lobe gives over a large opening by what it gives as a point, and what surfaces
// send back.
package explain

import (
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
)

// Explanation is one reading, explained.
type Explanation struct {
	Scene, Setup string
	Cue          string // after which it is read; "": in the set-up itself
	Reading      meter.Reading
	Place        []Step  // where it is, which way it faces
	Surface      string  // of a spot meter: what it looks at; "" where that has no name
	Lights       []Light // in the order of the scene
	Sum          []Step
	Exposure     []Step
}

// Light is what one light gives.
type Light struct {
	Name, Numbered string
	Label          string        // of its unit and modifier
	Value          float64       // lx, or cd/m² for a spot
	Lamp           []Step        // from the catalogue to what it sends out
	Straight       []Step        // from there to what would come if nothing stood in the way
	Ways           []Way         // what comes straight
	Returned       []meter.Share // what comes of it from surfaces: reflected, diffused by a cloth, or mirrored
	Total          []Step        // of ways and returns
	Why            string        // it gives nothing straight; "" where it does
	StandIn        *StandIn      // how it passes for what it stands for; nil where that is not judged at this face
}

// StandIn is how a light passes for something at the face that is read, as a calculation.
type StandIn struct {
	For   string // what it passes for, as the crew reads it
	Steps []Step
}

// Way is what comes straight from a lamp through the same panes.
type Way struct {
	Via   []string // names of panes
	Steps []Step
	Value float64 // lx, or cd/m² for a spot
}

// Step is one line of the calculation.
type Step struct {
	Words   string  // what it is
	Symbol  string  // by which later lines know it; "" where none asks for it
	Formula string  // in symbols of earlier lines; "" where the value is given
	In      []Input // what stands in the formula
	Value   float64 // in Unit: lx, m, °
	Unit    string  // "lx", "m"; "" for a number
	Source  string  // where the formula or the value is from, in words
	Struck  bool    // a key that is not computed yet could change the value
}

// Input is what stands in a formula for a symbol.
type Input struct {
	Symbol string
	Value  float64 // in the unit of the line that it is from: lx, m, °
}

// solidNames gives the names of solids.
func solidNames(names map[solid.ID]string, ids []solid.ID) (out []string) {
	for _, id := range ids {
		out = append(out, names[id])
	}
	return out
}
