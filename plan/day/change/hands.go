package change

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
)

// Reason is why one alone does not handle a thing.
type Reason string

// The reasons.
const (
	Heavy Reason = "heavy" // more than one lifts
	High  Reason = "high"  // more than one lifts over the shoulder
	OnArm Reason = "boom"  // a boom with its weight: one at the head, one at the stand
	Wide  Reason = "large" // a sheet that the wind takes, a piece that one cannot hold at both ends
	Lift  Reason = "lift"  // one on the platform, one on the ground
)

// From where on two people handle a thing: common practice. Mass is that of the head with what is on it, or of the piece, without its stand.
const (
	heavyMass    = 15.0 // kg
	highMass     = 8.0  // kg, over shoulderHigh
	shoulderHigh = 1.6  // m over what its stand stands on
	bulkySide    = 1.2  // m, the longest side of a piece of furniture
)

// How long a head stays too hot to touch once it is off, minutes: common practice by class, counted from the off, and no promise of safety.
const (
	hotBulb        = 5.0  // a filament or a globe up to smallHead
	hotTungsten    = 10.0 // up to largeHead
	hotTungstenBig = 15.0
	hotDischarge   = 15.0 // up to largeHead
	hotDischBig    = 20.0
)

// smallHead and largeHead part the classes of hot heads, W: common practice.
const (
	smallHead = 150.0
	largeHead = 1000.0
)

// hotMinutes is how long a light stays hot once it is off; 0 of one that is never up in its set-up, or that hardly gets warm.
func hotMinutes(s *plan.Setup, l *plan.Light) float64 {
	watts, discharge := l.Head.Watts, l.Head.Technology == term.Discharge
	switch {
	case !s.EverUp(l) || !discharge && l.Head.Technology != term.Tungsten:
		return 0
	case watts <= smallHead:
		return hotBulb
	case discharge && watts > largeHead:
		return hotDischBig
	case discharge:
		return hotDischarge
	case watts > largeHead:
		return hotTungstenBig
	}
	return hotTungsten
}

// touchesHead says whether a kind of work is done with hands on the head.
func touchesHead(w term.Work) bool {
	switch w {
	case term.Struck, term.Swapped, term.Moved, term.Fitted, term.Gelled, term.Clothed:
		return true
	}
	return false
}

// takesHands says whether a kind of work carries a thing.
func takesHands(w term.Work) bool {
	switch w {
	case term.Struck, term.Placed, term.Swapped, term.Moved:
		return true
	}
	return false
}

func handsOfLight(l *plan.Light) []Reason { return hands(l.Head.Mass, l.Frame.At.Z-l.Base, &l.Mount) }

func handsOfGrip(g *plan.Grip) []Reason {
	mass := 0.0
	if g.Item != nil {
		mass = g.Item.Mass
	}
	all := hands(mass, g.Frame.At.Z-g.Base, &g.Mount)
	if g.OnTwoStands() {
		all = append(all, Wide)
	}
	return all
}

func handsOfPiece(f *plan.Furniture) []Reason {
	if math.Max(f.Size[0], f.Size[1]) >= bulkySide || f.Kind == term.Mirror && f.Size[2] >= bulkySide {
		return []Reason{Wide}
	}
	return nil
}

// hands are the reasons that mass, height and mount give.
func hands(mass, height float64, m *plan.Mount) (all []Reason) {
	switch {
	case mass >= heavyMass:
		all = append(all, Heavy)
	case mass >= highMass && height > shoulderHigh:
		all = append(all, High)
	}
	switch m.Kind {
	case term.Boom:
		all = append(all, OnArm)
	case term.Lift:
		all = append(all, Lift)
	}
	return all
}
