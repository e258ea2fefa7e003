// Package scene is a scene as written: every key of the language, typed, in SI units, with the
// place where it stands. Places are still relative; package plan resolves them to metres.
package scene

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Scene is one scene, or one set-up of it, as written. Lists keep the order of the file.
type Scene struct {
	Tree      *source.Node // merged
	Setup     string       // "" for the scene itself
	Sequence  string       // that the set-up is in; "" where none is written
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
	Shown     []Ref               // cameras of this set-up; empty: all
	Stays     []Ref               // things frozen where they stood in the set-up before
	Uncrossed []Uncrossed         // of a reverse: what it leaves where it stood
	Exchanged map[string]Exchange // by thing that a reverse took across: who comes first for it in place of whom
	Kit       []Given[string]     // paths of kit files
	Line      []Ref               // of action: two people, or none
	Rates     []Rate              // how long changes take, in the order of the file
	Cues      []Cue               // with those of the set-up, in their order
	Circuits  []Circuit
	// What follows is read and checked today, and computed later.
	Prices          Given[string]
	Haze            Given[float64] // 1/m
	Wanted          []Want
	MeasuredNames   []Ref
	Wants, Measured *source.Node
	Uncomputed      []Uncomputed // every such key that is written, in the order of the file
}

// Sheet is what the scene asks of the paper.
type Sheet struct {
	Production, Location, Revision, For, Date, By Given[string]
	Paper, Scale                                  Given[string] // "A3", "1:50", `1/4"`
	Levels                                        Given[string] // lx, fc, stop, stops
	Field                                         Given[term.Map]
	Plane                                         Given[float64] // height of a horizontal plane, m
}

// Site is the world outside. Latitude and what follows are computed later.
type Site struct {
	Span                source.Span
	Ground              Given[float64] // level of the open ground, m
	North               Given[float64] // degrees clockwise from the sheet's up
	Latitude, Longitude Given[float64] // degrees north and east
	Zone, When, Until   Given[string]
	Sky                 Given[string]
}

// Exposure is the camera's, or the scene's for every camera.
type Exposure struct {
	ISO, FPS Given[float64] // exposure index; frames a second, 1/s
	Shutter  Given[Shutter]
	Stop     Given[Stop]
	White    Given[ColourWord]
	Meter    Given[term.Meter]
	Constant Given[float64] // C of the incident meter, lx·s·ISO (ISO 2720)
	Range    Given[Range]
}

// Range is what a camera holds about its grey, stops; 0 where it does not say.
type Range struct{ Over, Under float64 }

// Material is a surface. Colour is a chromaticity; nil is neutral.
type Material struct {
	Thing
	Reflectance Given[float64] // share, luminous, 0 to 1
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
	Reflectance float64 // share, luminous, 0 to 1
	Material    string
}

// Room is one room. At is its lower-left inside corner. Lengths and levels are in metres.
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
	At   [2]float64 // x, y, m
	Span source.Span
}

// OutlineStep is one tape length: right, left, up or down the sheet.
type OutlineStep struct {
	Direction string
	Length    float64 // m
	Span      source.Span
}

// Slope is a ceiling that rises from Low to High, metres above the floor, toward a wall.
type Slope struct {
	Low, High float64
	Toward    Ref
	Span      source.Span
}

// Opening is a window, a door or a gap in a wall.
type Opening struct {
	Thing
	Kind              term.Opening
	Wall              Ref
	Along             Along
	Width, Sill, Head Given[float64] // m; sill and head above the floor of the room
	Panes             Given[[2]int]
	Hinge, Swing      Given[string]  // left, right; in, out
	Ajar              Given[float64] // degrees
	Glass             Given[string]
	Escape            Given[bool]
	Dressing          []Dressing   // from the room outward
	Gels              []Ref        // on the glass
	Outside           *source.Node // later: checked by the loader, not computed yet
}

// Furniture is a solid thing. Kind says which form; Size is its width, depth and height (of a cylinder: the diameter
// twice; of a mirror: depth is thickness). Seat is the height of the seat of a sofa, Steps of stairs. Lengths are in metres.
type Furniture struct {
	Thing
	Kind     term.Furniture
	Size     [3]float64
	SizeSpan source.Span
	Seat     Given[float64]
	Steps    Given[int]
	At       Given[Place]
	Turn     Given[float64] // degrees clockwise
	Lift     Given[float64] // underside above the floor, m
	Material Given[string]
}

// Person is someone in the scene.
type Person struct {
	Thing
	At          Given[Place]
	Faces       Given[Aim]
	Height      Given[float64] // of the crown, standing, m
	Pose        Given[term.Pose]
	Eyes        Given[float64] // eye height above what the feet are on, m
	Skin, Wears Given[Surface]
	Marks, Walk *source.Node         // as written
	MarkPlaces  map[string]MarkPlace // by name
	WalkPlaces  []Place
	Seen        Given[bool] // whether they are meant to be in the picture
	SeenBy      []Ref       // the cameras whose pictures those are; none: all
}

// MarkPlace is where a person is at a mark.
type MarkPlace struct {
	At    Given[Place]
	Faces Given[Aim]
	Pose  Given[term.Pose]
	Eyes  Given[float64] // eye height as of a Person, m
	Span  source.Span
}

// Camera is one camera.
type Camera struct {
	Thing
	At          Given[Place]
	Height      Given[float64] // of the lens above the floor, m
	Looks       Given[Aim]
	Lens        Given[float64] // mm
	Sensor      Given[string]
	Aspect      Given[float64] // ratio of width to height
	Exposure    Exposure
	Squeeze     Given[float64] // of an anamorphic lens: ratio of what is seen across to its picture in the gate
	Filter      []Ref          // before the lens: in the kit, or an ND by its density
	Room        Given[float64] // margin about the frame, share of its width
	Track       *source.Node   // as written
	TrackPlaces []Place
}

// StandIn is what a light passes for: a lamp or an opening of the scene, a white, or an opening with the white that comes in by it.
type StandIn struct {
	Thing  Ref               // no name: the white alone
	Colour Given[ColourWord] // not set: that of the thing's own light
}

// Light is one light.
type Light struct {
	Thing
	Unit        Given[string]
	Output      *kit.Output
	Modifier    Given[string]
	At          Given[Place]
	Height      Given[float64] // of the emitting face above the floor, m
	Aim         Given[Aim]
	Roll        Given[float64] // degrees clockwise as seen from behind
	Colour      Given[ColourWord]
	Tint        Given[float64] // Duv, positive green
	Gels        []Ref
	Level       Given[float64] // share of the full output, 0 to 1
	Mount       Given[Mount]
	Role        []Role
	Note        Given[string]
	Count       Given[int]
	Tag         Given[string]
	Circuit     Given[string]
	Stand       Given[string]
	Focus       Given[float64] // share of the way from spot, 0, to flood, 1; of a projection spot that does not zoom, as Edge
	FocusOfZoom bool           // whether Focus is of a zoom alone: spot or flood says it, or it stands beside an edge
	Edge        Given[float64] // of the image of a projection spot: share of the way from sharp, 0, to soft, 1
	Cuts        []Cut          // in the image of a projection spot
	Breakup     *Breakup       // the pattern in its gate; nil: none
	Bulb        *kit.BulbChoice
	Shade       *kit.ShadeChoice
	Doors       *kit.Opened
	Scrims      *kit.ScrimChoice
	Diffusion   []Ref       // cloth before the head, from it outward
	Seen        Given[bool] // whether it is meant to be in the picture
	SeenBy      []Ref       // the cameras whose pictures those are; none: all
	Dimmer      Given[kit.Dimming]
	Plays       Given[Play] // how it changes by itself
	StandsFor   Given[StandIn]
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
	Kind    term.Grip
	Item    Given[string] // its name in the kit, where that says its size
	Size    [2]float64    // width and height, m
	At      Given[Place]
	Height  Given[float64] // of its centre above the floor, m
	Faces   Given[Aim]
	Tilt    Given[float64] // degrees above the horizontal
	Roll    Given[float64] // degrees clockwise as seen from behind
	Surface Given[string]
	Cloth   Given[string]
	Mount   Given[Mount]
	Stand   Given[string]
	Note    Given[string]
}

// Meter is one named reading.
type Meter struct {
	Thing
	Kind    term.Meter
	At      Given[[3]float64] // x, y, z, m
	Opening Ref               // of a spot: instead of At
	Facing  Given[Aim]
	From    Ref // of a spot: the camera
}

// Setup is one set-up as listed.
type Setup struct {
	Thing
	Cameras  []Ref
	After    Ref
	Sequence Given[string] // which set-ups it is cut together with
	Stays    []Ref
	Change   *source.Node
	Cues     *source.Node // a change of the cues, as written
	Reverse  *source.Node
	Reversed *Reverse
}

// From is the set-up that this one starts from, by its name; no name for the scene.
func (s *Setup) From() Ref {
	if s.Reversed != nil {
		return s.Reversed.Of
	}
	return s.After
}

// Cue is one change of levels and colours inside a take. Cues go in the order in which they are written, and each starts from
// the state that the one before it left.
type Cue struct {
	Thing
	At     Given[CueAt]
	Over   Given[float64] // s that it takes
	Lights []CueLight
}

// CueAt is what a cue goes on: words of the script, or a time.
type CueAt struct {
	Words   string
	Timed   bool
	Seconds float64 // from the start of the take, s, where it is timed
}

// CueLight is what one light does in a cue. What is not set stays as it was.
type CueLight struct {
	Light  Ref
	Span   source.Span    // of its new state
	Level  Given[float64] // share of the full output, 0 to 1
	Colour Given[ColourWord]
	Tint   Given[float64] // Duv, positive green

	Elsewhere bool // a light of that name is in the file, in this set-up or another
}

// Play is how a light changes by itself.
type Play struct {
	Kind      term.Play
	Low, High Given[float64] // levels that it goes between, shares of the full output
	Rate      Given[float64] // how often it goes up and down, 1/s
}
