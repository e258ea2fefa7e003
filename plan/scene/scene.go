// Package scene is a scene as written: every key of the language, typed, in SI units, with the
// place where it stands. Places are still relative; package plan resolves them to metres.
package scene

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Given is a value that may be left out. Span is where it was written; when Set is false it is
// the span of the thing that lacks it.
type Given[T any] struct {
	V    T
	Set  bool
	Span source.Span
}

// Or returns the written value, or def.
func (g Given[T]) Or(def T) T {
	if g.Set {
		return g.V
	}
	return def
}

// Ref is a name written where a thing is meant.
type Ref struct {
	Name string
	Span source.Span
}

// Thing is what every named thing of a scene has.
type Thing struct {
	Name string
	Path string      // "lights.key"
	Span source.Span // of its name
	Node *source.Node

	asks []ask // entries of the catalogue in keys that are computed later
}

func (t *Thing) self() *Thing { return t }

// Scene is one scene, or one set-up of it, as written. Lists keep the order of the file.
type Scene struct {
	Tree      *source.Node // merged
	Setup     string       // "" for the scene itself
	Title     Given[string]
	Feet      bool // lengths are printed in feet and inches
	Sheet     Sheet
	Site      *Site
	Exposure  Exposure
	Materials []Material
	Rooms     []Room
	Openings  []Opening
	Furniture []Furniture
	People    []Person
	Cameras   []Camera
	Lights    []Light
	Grip      []Grip
	Meters    []Meter
	Setups    []Setup
	Shown     []Ref           // cameras of this set-up; empty: all
	Stays     []Ref           // things frozen where they stood in the set-up before
	Kit       []Given[string] // paths of kit files
	// What follows is read and checked today, and computed later.
	Cues                   []Cue
	Circuits               []Circuit
	Line                   []Ref // two things, or none
	Prices                 Given[string]
	Haze                   Given[float64] // 1/m
	Wanted                 []Want
	MeasuredNames          []Ref
	Wants, Rates, Measured *source.Node
	Uncomputed             []Uncomputed // every such key that is written, in the order of the file
}

// Sheet is what the scene asks of the paper.
type Sheet struct {
	Production, Location, Revision, For, Date, By Given[string]
	Paper, Scale                                  Given[string]  // "A3", "1:50", `1/4"`
	Levels                                        Given[string]  // lx, fc, stop, stops
	Field                                         Given[string]  // floor, face
	Plane                                         Given[float64] // height of a horizontal plane, m
}

// Site is the world outside. Latitude and what follows are computed later.
type Site struct {
	Span                source.Span
	Ground              Given[float64] // level of the open ground, m
	North               Given[float64] // degrees clockwise from the sheet's up
	Latitude, Longitude Given[float64]
	Zone, When, Until   Given[string]
	Sky                 Given[string]
}

// Exposure is the camera's, or the scene's for every camera.
type Exposure struct {
	ISO, FPS Given[float64]
	Shutter  Given[Shutter]
	Stop     Given[Stop]
	White    Given[ColourWord]
	Meter    Given[string] // dome, flat
	Constant Given[float64]
}

// Shutter is an angle in degrees, or a time in seconds; one of them is zero.
type Shutter = unit.Shutter

// Stop is a T-stop: the figure as written and the exact N it stands for (T5.6 is 4 sqrt 2).
type Stop = unit.Stop

// ColourWord is a white as written: a CCT, and whether the word daylight stood before it.
type ColourWord = unit.Kelvin

// Material is a surface. Colour is a chromaticity; nil is neutral.
type Material struct {
	Thing
	Reflectance Given[float64]
	Colour      Given[MaterialColour]
}

// MaterialColour is a chromaticity: CIE 1931 x, y, written as `[x, y]`, `#rrggbb` (sRGB) or a CCT.
type MaterialColour struct {
	Text string
	XY   [2]float64
}

// RoomForm says which of size, corners or outline a room was given by.
type RoomForm uint8

// The forms of a room.
const (
	BySize RoomForm = iota
	ByCorners
	ByOutline
)

// Surface is a reflectance, or the name of a material.
type Surface struct {
	Reflectance float64
	Material    string
}

// Room is one room. At is its lower-left inside corner.
type Room struct {
	Thing
	At                    Given[[2]float64]
	Form                  RoomForm
	FormSpan              source.Span
	Size                  [2]float64
	Corners               []Corner
	Outline               []OutlineStep
	Height                Given[float64]
	Slope                 *Slope // instead of Height
	Base, Wall            Given[float64]
	Walls, Floor, Ceiling Given[string]
}

// Corner is one named inside corner.
type Corner struct {
	Name string
	At   [2]float64
	Span source.Span
}

// OutlineStep is one tape length: right, left, up or down the sheet.
type OutlineStep struct {
	Direction string
	Length    float64
	Span      source.Span
}

// Slope is a ceiling that rises from Low to High toward a wall.
type Slope struct {
	Low, High float64
	Toward    Ref
	Span      source.Span
}

// Along is a distance from a wall's left end as seen from inside, or its centre.
type Along struct {
	Metres float64
	Centre bool
	Set    bool
	Span   source.Span
}

// Opening is a window, a door or a gap in a wall.
type Opening struct {
	Thing
	Kind                    term.Opening
	Wall                    Ref
	Along                   Along
	Width, Sill, Head       Given[float64]
	Panes                   Given[[2]int]
	Hinge, Swing            Given[string]  // left, right; in, out
	Ajar                    Given[float64] // degrees
	Glass                   Given[string]
	Escape                  Given[bool]
	Dressing, Gels, Outside *source.Node // later: checked by the loader, not computed yet
}

// Furniture is a solid thing. Kind says which form; W, D, H are its size (a cylinder: W and D the
// diameter; a mirror: D its thickness). Seat is of a sofa, Steps of stairs.
type Furniture struct {
	Thing
	Kind     string // box, cylinder, table, sofa, stairs, deck, mirror
	Size     [3]float64
	SizeSpan source.Span
	Seat     Given[float64]
	Steps    Given[int]
	At       Given[Place]
	Turn     Given[float64] // degrees clockwise
	Lift     Given[float64] // underside above the floor, m
	Material Given[string]
	Mirror   *source.Node // later
}

// Person is someone in the scene.
type Person struct {
	Thing
	At          Given[Place]
	Faces       Given[Aim]
	Height      Given[float64] // crown, standing
	Pose        Given[term.Pose]
	Eyes        Given[float64] // eye height above what the feet are on, m
	Skin, Wears Given[Surface]
	Marks, Walk *source.Node // later
	MarkPlaces  map[string]MarkPlace
	WalkPlaces  []Place
}

// MarkPlace is where a person is at a mark.
type MarkPlace struct {
	At    Given[Place]
	Faces Given[Aim]
	Pose  Given[term.Pose]
	Eyes  Given[float64]
	Span  source.Span
}

// Camera is one camera.
type Camera struct {
	Thing
	At                           Given[Place]
	Height                       Given[float64]
	Looks                        Given[Aim]
	Lens                         Given[float64] // mm
	Sensor                       Given[string]
	Aspect                       Given[float64]
	Exposure                     Exposure
	Track, Squeeze, Room, Filter *source.Node // later
	TrackPlaces                  []Place
}

// Light is one light.
type Light struct {
	Thing
	Unit                                                                          Given[string]
	Output                                                                        *kit.Output
	Modifier                                                                      Given[string]
	At                                                                            Given[Place]
	Height                                                                        Given[float64]
	Aim                                                                           Given[Aim]
	Roll                                                                          Given[float64]
	Colour                                                                        Given[ColourWord]
	Tint                                                                          Given[float64] // Duv, positive green
	Gels                                                                          []Ref
	Level                                                                         Given[float64] // 0..1
	Mount                                                                         Given[Mount]
	Role                                                                          []Role
	Note                                                                          Given[string]
	Count                                                                         Given[int]
	Tag                                                                           Given[string]
	Circuit                                                                       Given[string]
	Focus                                                                         Given[float64] // 0..1
	Barndoors, Scrims, Diffusion, Cuts, Breakup, Bulb, Shade, Plays, Seen, Dimmer *source.Node   // later
	SeenBy                                                                        []Ref          // the cameras that Seen lists
}

// Role is what a light does, for everyone or for one person.
type Role struct {
	Person Ref // Name "" for everyone
	Role   term.Role
}

// Mount is how a thing is held up.
type Mount struct {
	Kind  term.Mount
	On    Ref     // stand: a deck; clamp: a thing
	Arm   float64 // boom: length, m; lift: height, m
	Base  Given[Place]
	Walls []Ref // pole: two; wall: one
	Span  source.Span
}

// Grip is a thing that shapes light.
type Grip struct {
	Thing
	Kind    string // flag, card, frame, net, silver
	Size    [2]float64
	At      Given[Place]
	Height  Given[float64] // of its centre
	Faces   Given[Aim]
	Tilt    Given[float64]
	Roll    Given[float64]
	Surface Given[string]
	Cloth   Given[string]
	Mount   Given[Mount]
	Note    Given[string]
}

// Meter is one named reading.
type Meter struct {
	Thing
	Kind    string // flat, dome, spot
	At      Given[[3]float64]
	Opening Ref // of a spot: instead of At
	Facing  Given[Aim]
	From    Ref // of a spot: the camera
}

// Setup is one set-up as listed.
type Setup struct {
	Thing
	Cameras []Ref
	After   Ref
	Stays   []Ref
	Change  *source.Node
	// What follows is computed later.
	Reverse  *source.Node
	Reversed *Reverse
	Cues     []Cue
}
