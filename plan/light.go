package plan

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Light is one light, resolved.
type Light struct {
	Name, Path, Tag string
	Frame           Frame
	AimPoint        r3.Vec  // where its axis leads, m
	Aimed           bool    // whether the scene says where it is aimed
	Throw           float64 // from the lamp to the aim point, m; 0 where the aim is a bare direction
	Head            kit.Head
	Choice          kit.Choice // what the scene asks the catalogue for; of one that states its own output without a unit
	Level           float64    // share of the full output, 0 to 1
	Gels            []string
	Diffusion       []string     // cloth before the head, from it outward
	RelativeOutput  colour.RGB   // Head at Level: what multiplies the basis
	White           colour.White // at this level, after gels
	Mount           Mount
	Base            float64 // z of what its stand stands on, m
	Height          float64 // of the emitting face above the floor of the room it belongs to, m
	Roles           []scene.Role
	Note            string
	Count           int
	Circuit         string
	Cable           *Run    // from the outlet of that circuit; nil: nobody says where it is, or there is no way
	Mains           float64 // the voltage of its circuit, V; 0 where nothing says it
	Hertz           float64 // of the mains that it is on, 1/s; 0 on direct current
	Dimming         kit.Dimming
	Ripple          lens.Ripple // how its light goes up and down on them at its level
	Opening         string      // the opening it was placed by
	Seen            Seen        // whether it is meant to be in the picture
	Play            *Play       // how it changes by itself; nil: it does not
	StandsFor       *StandIn    // what it passes for; nil: itself
	Misplaced       bool        // outside all rooms, and lights no opening: a warning says so
	TakeDown        float64     // the wind at which it comes down outdoors, m/s; 0: none is known
	Placing         []Dimension // two distances that put it there with a tape
	Span            source.Span
}

// Seen says whether a light is meant to be in the picture.
type Seen struct {
	Written bool     // the scene says so, of the light and of what holds it
	Meant   bool     // it is
	By      []string // the cameras whose pictures those are; none: all
}

// For says whether it is meant to be in the picture of a camera.
func (s *Seen) For(camera string) bool {
	return s.Meant && (len(s.By) == 0 || slices.Contains(s.By, camera))
}

// StandIn is what a light passes for: another light, an opening, or a white alone.
type StandIn struct {
	Light, Opening string        // one of them, or none
	White          *colour.White // nil: that of the light, or of what comes in by the opening
	Span           source.Span
}

// hotWatts is the power from which a head of a filament or an arc is hot all round, W: common practice.
const hotWatts = 250

// GetsHot says whether the head is so hot that what burns keeps away from it.
func (l *Light) GetsHot() bool {
	return l.Head.Watts >= hotWatts && (l.Head.Technology == term.Tungsten || l.Head.Technology == term.Discharge)
}

// Leaves are the barn doors before the light, each by its corners, m.
func (l *Light) Leaves() [][]r3.Vec {
	if l.Head.Doors == nil {
		return nil
	}
	leaves := l.Head.Doors.Leaves()
	for _, corners := range leaves {
		for i, p := range corners {
			corners[i] = l.Frame.Place(p)
		}
	}
	return leaves
}

// Mount is how a light or grip is held, in metres.
type Mount struct {
	Kind     term.Mount
	Base     r2.Vec // where the stand, the boom's base, the clamp or what hangs from the ceiling is
	Arm      float64
	Foot     float64    // m, diameter of the ground that its stand takes, where it has one; of a lift the circle about its ground
	Ground   [2]float64 // width and depth of the ground that a lift takes, m
	Turn     float64    // the bearing that the depth of that lies along, degrees
	Lift     *kit.Item  // of the catalogue; nil of all else, and where no lift goes so high
	Stand    *kit.Stand // of the catalogue; nil where nothing says which
	Chosen   bool       // whether the scene names that stand
	On       string
	PoleEnds []r2.Vec // of a pole
}

// Dimension is a distance that a tape can measure.
type Dimension struct {
	From   string // "kitchen.left", "street, left jamb"
	Metres float64
	A, B   r2.Vec // its ends in plan, m
}
