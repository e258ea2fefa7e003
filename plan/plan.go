// Package plan resolves a scene to metres: rooms, openings and furniture become solids, people
// and cameras get faces and eyes, every light gets a place, an axis and a head.
package plan

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Setup is one set-up, resolved. Lengths are metres, heights are absolute z, angles degrees.
//
// Resolve fills it in. One that is made by hand needs an Exposure, and so does each of its Cameras: without it
// the readings have no T-stop (Stop and Over are nil), as nothing says how light becomes a stop.
type Setup struct {
	Name       string // "" where the scene has no set-ups
	Title      string
	Scene      *scene.Scene
	Kit        *kit.Catalogue
	Rooms      []Room
	Walls      []WallPiece
	Openings   []Opening
	Furniture  []Furniture
	People     []Person
	Cameras    []Camera // those of this set-up
	Lights     []Light
	Grip       []Grip
	Meters     []Meter
	Set        solid.Set // shades and reflects
	Bodies     solid.Set // seen by the spot meter and the strip, never shade: lamp bodies, stands
	Names      map[solid.ID]string
	Exposure   Exposure
	Ground     float64 // z of the open ground
	North      float64 // degrees clockwise from the sheet's up
	Feet       bool
	Assumed    []Assumption
	FaceHeight float64             // z of the first person's eyes; 0 where there is nobody
	Bounds     r2.Box              // of everything that stands, in plan
	Warnings   []source.Diagnostic // what resolving it warned of
	Uncomputed []Uncomputed        // keys that it writes and nothing computes yet

	spots map[string]spot // where things stand, for a set-up after this one
}

// Assumption is a default that decided a number.
type Assumption struct {
	Thing string // "lights.day" or ""
	What  string // "level"
	Value string // "100 %", ready to print
}

// Frame is a place with an orthonormal orientation. For a lamp, Axis is the aim, Right = Axis x z
// (bearing pan + 90 when the axis is vertical) turned by roll, and up is Right x Axis.
type Frame struct{ At, Axis, Right r3.Vec }

// Up returns Right x Axis.
func (f Frame) Up() r3.Vec { return r3.Cross(f.Right, f.Axis) }

// Room is one room. Inside runs counter-clockwise; Walls[i] stands between Inside[i] and the
// corner after it.
type Room struct {
	Name   string
	Inside []r2.Vec
	Parts  [][]r2.Vec // Inside, cut into convex rings
	Walls  []Wall
	Base   float64 // z of the floor
	Top    float64 // z of the ceiling at its highest
	Span   source.Span

	low  float64 // z of the ceiling at the origin
	rise r2.Vec  // and how it rises, m per m
}

// Wall is one wall by its inside face, left to right as seen from inside.
type Wall struct {
	Name        string // "left", "a-b", "w1"
	Left, Right r2.Vec
	Outward     r2.Vec // unit
	Thickness   float64
}

// WallPiece is a convex piece of wall as the plan's cut shows it. Opening is "" for solid wall,
// else the opening below or above which it lies.
type WallPiece struct {
	Outline []r2.Vec
	Z0, Z1  float64
	Room    string
	Wall    string
	Opening string
}

// Opening is a hole in a wall. Left and Right are its ends on the inside face, as seen from
// inside; Depth is how far the hole goes outward through everything it cuts.
type Opening struct {
	Name          string
	Kind          term.Opening
	Room, Wall    string
	Other         string // the room on the far side, "" for outside
	Left, Right   r2.Vec
	Outward       r2.Vec
	Depth         float64
	Sill, Head    float64 // absolute z
	Panes         [2]int
	HingeLeft     bool // as seen from inside
	SwingIn       bool
	Ajar          float64 // degrees; a door at 0 is shut and stops light
	Glass         string
	Transmittance float64
	Escape        bool
	IDs           []solid.ID // its pane, its leaf
	Span          source.Span
}

// Furniture is a thing that stands, with the parts that its outline is drawn from.
type Furniture struct {
	Name   string
	Kind   string
	At     r2.Vec
	Turn   float64 // degrees clockwise; at 0 its back is to the sheet's up
	Size   [3]float64
	Base   float64 // z of what it stands on
	Z0, Z1 float64
	Parts  []Part
	IDs    []solid.ID
	Span   source.Span
}

// Part is one convex prism of a thing, for drawing: Kind is "top", "leg", "seat", "back", "arm", "step", "body".
type Part struct {
	Kind    string
	Outline []r2.Vec
	Z0, Z1  float64
}

// Person is someone, with the face that readings are taken at.
type Person struct {
	Name   string
	At     r2.Vec  // the head's axis in plan
	Base   float64 // z of what the feet are on
	Pose   term.Pose
	Height float64 // of the crown above the floor, standing, m
	Crown  float64 // z of the crown in this pose
	Eyes   float64 // z
	Faces  float64 // bearing of the nose
	Face   Frame   // At: 0.10 m before the head's axis at eye height; Axis: the nose
	Own    []solid.ID
	Parts  []Part // Kind "head", "torso", "legs"
	Span   source.Span
}

// Camera is one camera: Frame.At is the entrance of the lens.
type Camera struct {
	Name       string
	Frame      Frame
	Base       float64 // z of what it stands on
	Height     float64 // of the lens above the floor of the room it belongs to
	Lens       float64 // mm
	Sensor     string
	Gate       [2]float64 // mm, after cropping to Aspect
	Aspect     float64
	HAOV, VAOV float64 // degrees
	Exposure   Exposure
	Span       source.Span
}

// Light is one light, resolved.
type Light struct {
	Name, Path, Tag string
	Frame           Frame
	AimPoint        r3.Vec
	Throw           float64 // m, lamp to aim point; 0 where the aim is a bare direction
	Head            kit.Head
	Level           float64 // 0..1
	Gels            []string
	Drive           colour.RGB   // Head at Level: what multiplies the basis
	White           colour.White // at this level, after gels
	Mount           Mount
	Base            float64 // z of what its stand stands on
	Height          float64 // of the emitting face above the floor of the room it belongs to
	Roles           []scene.Role
	Note            string
	Count           int
	Circuit         string
	Opening         string      // the opening it was placed by
	Astray          bool        // outside all rooms, and lights no opening: a warning has told so
	Placing         []Dimension // two distances that put it there with a tape
	Span            source.Span
}

// Mount is how a light or grip is held, in metres.
type Mount struct {
	Kind term.Mount
	Base r2.Vec // where the stand, the boom's base, the clamp or what hangs from the ceiling is
	Arm  float64
	Foot float64 // m, diameter of the ground that its stand takes, where it has one
	On   string
	Ends []r2.Vec // of a pole
}

// Dimension is a distance that a tape can measure.
type Dimension struct {
	From   string // "kitchen.left", "street, left jamb"
	Metres float64
	A, B   r2.Vec // its ends in plan
}

// Grip is a flag, card, frame, net or silver, resolved.
type Grip struct {
	Name, Tag            string
	Kind                 string
	Size                 [2]float64
	Frame                Frame   // At the centre, Axis the face's normal
	Base                 float64 // z of what it stands on
	Height               float64 // of the centre above the floor of the room it belongs to
	Mount                Mount
	Cloth, Surface, Note string
	IDs                  []solid.ID
	Placing              []Dimension
	Span                 source.Span
}

// Meter is one reading to take. At is where a flat or dome meter is held, and the point that a
// spot meter is pointed at from the lens of its camera.
type Meter struct {
	Name   string
	Kind   MeterKind
	At     r3.Vec // the point that is read
	Facing r3.Vec // unit; of a spot, from the lens to the point
	From   string // of a spot: the camera
	Lens   r3.Vec // of a spot: where the camera's lens is, from which it looks
	Span   source.Span
}

// Exposure is resolved, with the defaults applied.
type Exposure struct {
	ISO, FPS float64
	Seconds  float64 // shutter time
	Degrees  float64 // shutter angle
	Stop     scene.Stop
	White    colour.White
	Meter    string // dome, flat
	Constant float64
}
