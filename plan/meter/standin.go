package meter

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
)

// StandIn is how a light that passes for something does so.
type StandIn struct {
	Light    string
	Numbered string // the light as the crew reads it: "2 page"
	For      string // what it passes for, likewise: "1 desk-lamp", "street", "2900 K"
	Faces    []Passing
	Unknown  string // why its colour is compared with nothing; "" where it is
}

// Passing is how a light passes for something at one face.
type Passing struct {
	Person  string
	Share   float64         // share of the light on both sides of the face that the light gives, 0 to 1
	Gap     *colour.Gap     // between the light and what it passes for, both as they come to the face; nil where one has no colour temperature
	Whites  [2]colour.White // the two there, as the nearest Planckian, where there is a gap
	Gels    Cure            // the gels that close it best, in place of those that it wears; it changes nothing where none help
	Setting *Cure           // the white of its own that closes it best; nil where it has no other that helps
	Way     *Way            // how it comes from elsewhere; nil of a white, which comes from nowhere

	Uncomputed []plan.Uncomputed // keys that could change the light on the face and that nothing computes yet
}

// Cure is a change of a light's colour, and what it leaves.
type Cure struct {
	Off   []string     // gels that come off
	Gels  []string     // of the catalogue that go on
	White *kit.Setting // K and Duv, of a setting
	Left  *colour.Gap  // nil where there is no colour temperature
	Stops float64      // that it costs; less than none where it gives light
}

// Way is how the direction and the size of a light differ at a face from those of what it passes for. Where it comes off a surface it comes from
// the middle of what it lights there.
type Way struct {
	Angle  float64  // between the two, degrees
	Higher float64  // how far it comes from higher, degrees
	Right  *float64 // how far from farther to the person's own right, degrees; nil where one comes from near the zenith or from below
	Wide   float64  // how wide it looks from the face, degrees (photometry.ApparentWidth)
	For    float64  // how wide what it passes for looks, degrees

	Toward [2]r3.Vec  // where the two come from, as seen from the face: unit vectors
	Size   [2]float64 // solid angles of the two, sr
}

// PassAngle is how far, in degrees, a light may come from beside what it passes for before the shadows tell: common practice.
const PassAngle = 30

// Softer gives how many times as wide a light looks as what it passes for; 0 where one of them has no size.
func (w *Way) Softer() float64 {
	if !(w.Wide > 0) || !(w.For > 0) {
		return 0
	}
	return w.Wide / w.For
}

// Passes says whether a light is taken for what it passes for.
func (p *Passing) Passes() bool {
	return (p.Gap == nil || p.Gap.Passes()) && (p.Way == nil || p.Way.Angle <= PassAngle)
}

// Changes says whether anything is changed.
func (c *Cure) Changes() bool { return len(c.Off) > 0 || len(c.Gels) > 0 || c.White != nil }

// Cure is the change that one would make: the unit's own white, which takes no gel, where that leaves a light that passes or no larger a gap than gels
// do; else gels; nil where neither helps.
func (p *Passing) Cure() *Cure {
	own := p.Setting
	switch {
	case own != nil && (!p.Gels.Changes() || p.Gels.Left == nil || own.Left != nil && (own.Left.Passes() || own.Left.Size() <= p.Gels.Left.Size())):
		return own
	case p.Gels.Changes():
		return &p.Gels
	}
	return nil
}

// Main is the face that the light gives the largest share of, or nil where there is nobody.
func (s *StandIn) Main() *Passing {
	var main *Passing
	most := math.Inf(-1)
	for i := range s.Faces {
		if p := &s.Faces[i]; p.Share > most {
			main, most = p, p.Share
		}
	}
	return main
}
