package plan

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Furniture is a thing that stands, with the parts that its outline is drawn from.
type Furniture struct {
	Name   string
	Kind   term.Furniture
	At     r2.Vec     // its centre in plan, m
	Turn   float64    // degrees clockwise; at 0 its back is to the sheet's up
	Size   [3]float64 // width, depth, height, m
	Base   float64    // z of what it stands on, m
	Z0, Z1 float64    // z of its underside and its top, m
	// Material is that of its surface, as the scene names it; "" where it does not.
	Material string
	Parts    []Part
	IDs      []solid.ID
	Span     source.Span
}

// Seat is how high the seat of a sofa is above its underside, m; 0 of all else.
func (f *Furniture) Seat() float64 {
	for i := range f.Parts {
		if f.Parts[i].Kind == SeatPart {
			return f.Parts[i].Z1 - f.Parts[i].Z0
		}
	}
	return 0
}

// Steps is how many steps stairs have; 0 of all else.
func (f *Furniture) Steps() (n int) {
	for i := range f.Parts {
		if f.Parts[i].Kind == StepPart {
			n++
		}
	}
	return n
}

// PartKind is what a prism is of a thing or of a person.
type PartKind string

// The kinds of parts.
const (
	BodyPart  PartKind = "body" // all of a thing
	TopPart   PartKind = "top"  // of a table
	LegPart   PartKind = "leg"  // of a table
	SeatPart  PartKind = "seat" // of a sofa, as are back and arm
	BackPart  PartKind = "back"
	ArmPart   PartKind = "arm"
	StepPart  PartKind = "step"
	HeadPart  PartKind = "head" // of a person, as are torso and legs
	TorsoPart PartKind = "torso"
	LegsPart  PartKind = "legs"
)

// Part is one convex prism of a thing, for drawing.
type Part struct {
	Kind    PartKind
	Outline []r2.Vec // in plan, m
	Z0, Z1  float64  // z of its underside and its top, m
}

// Person is someone, with the face that readings are taken at.
type Person struct {
	Name   string
	At     r2.Vec  // the head's axis in plan, m
	Base   float64 // z of what the feet are on, m
	Pose   term.Pose
	Height float64 // of the crown above the floor, standing, m
	Crown  float64 // z of the crown in this pose, m
	Eyes   float64 // z of the eyes in this pose, m
	Faces  float64 // bearing of the nose, degrees clockwise from the sheet's up
	Face   Frame   // At: 0.10 m before the head's axis at eye height; Axis: the nose
	Own    []solid.ID
	Parts  []Part
	Marks  []Mark // in the order of the scene
	Walk   *Walk  // nil: there is none
	Seen   Seen   // whether they are meant to be in the picture; where nothing is written they are
	Span   source.Span

	Skin, Clothes float64 // shares of the light that they return; 0 where the scene does not say
}

// SeenBy says whether somebody is meant to be in the picture of a camera, or of one at the end of its track.
func (p *Person) SeenBy(camera string) bool { return !p.Seen.Written || p.Seen.For(CameraOf(camera)) }
