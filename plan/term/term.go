// Package term holds the vocabularies of the language: what holds a lamp, how someone sits, what an opening is, what
// a light does, how light leaves a body. A word stands here once, and is read, checked and drawn from here.
package term

// Mount is what holds a light or a piece of grip.
type Mount string

// The mounts.
const (
	Stand   Mount = "stand"
	Floor   Mount = "floor"   // it stands by itself
	Hand    Mount = "hand"    // somebody holds it
	Ceiling Mount = "ceiling" // it hangs there, and takes no ground
	Boom    Mount = "boom"    // an arm from a stand
	Clamp   Mount = "clamp"   // it grips a thing
	Pole    Mount = "pole"    // between two walls
	Wall    Mount = "wall"    // a plate on a wall
	Lift    Mount = "lift"    // a platform that rises
)

// Mounts that are a word alone, and those that are written as a map; a stand is either.
var (
	PlainMounts  = []Mount{Stand, Floor, Hand, Ceiling}
	MappedMounts = []Mount{Stand, Boom, Clamp, Pole, Wall, Lift}
)

// OnLegs says whether the mount stands on legs that take a circle of ground.
func (m Mount) OnLegs() bool { return m == Stand || m == Boom || m == Lift }

// Pose is how someone holds the body.
type Pose string

// The poses.
const (
	Standing  Pose = "standing"
	Seated    Pose = "seated"
	Propped   Pose = "propped" // half sitting, legs along a bed
	Lying     Pose = "lying"   // on the back
	Crouching Pose = "crouching"
)

// Poses lists them, the usual one first.
var Poses = []Pose{Standing, Seated, Propped, Lying, Crouching}

// Opening is the kind of a hole in a wall.
type Opening string

// The kinds of an opening.
const (
	Window Opening = "window"
	Door   Opening = "door"
	Gap    Opening = "gap" // without a leaf
)

// Openings lists them.
var Openings = []Opening{Window, Door, Gap}

// Scrim is a round of wire mesh in a head, or one over the lower half of it.
type Scrim string

// The scrims.
const (
	SingleScrim     Scrim = "single"
	DoubleScrim     Scrim = "double"
	HalfSingleScrim Scrim = "half-single"
	HalfDoubleScrim Scrim = "half-double"
)

// Scrims lists them.
var Scrims = []Scrim{SingleScrim, DoubleScrim, HalfSingleScrim, HalfDoubleScrim}

// Half says whether the scrim covers the lower half only.
func (s Scrim) Half() bool { return s == HalfSingleScrim || s == HalfDoubleScrim }

// Grip is the kind of a thing that shapes light.
type Grip string

// The kinds of grip.
const (
	Flag   Grip = "flag"   // a black that stops light
	Card   Grip = "card"   // a white that returns light
	Frame  Grip = "frame"  // a frame with cloth
	Net    Grip = "net"    // it dims
	Silver Grip = "silver" // a board that mirrors and returns light
)

// Grips lists them.
var Grips = []Grip{Flag, Card, Frame, Net, Silver}

// Furniture is the form of a solid thing.
type Furniture string

// The forms of furniture.
const (
	Box      Furniture = "box"
	Cylinder Furniture = "cylinder"
	Table    Furniture = "table"
	Sofa     Furniture = "sofa"
	Stairs   Furniture = "stairs"
	Deck     Furniture = "deck" // a platform that things stand on
	Mirror   Furniture = "mirror"
)

// Furnitures lists them.
var Furnitures = []Furniture{Box, Cylinder, Table, Sofa, Stairs, Deck, Mirror}

// Role is what a light does.
type Role string

// The roles.
const (
	Key        Role = "key"
	Fill       Role = "fill"
	Edge       Role = "edge"
	Hair       Role = "hair"
	Eye        Role = "eye"
	Background Role = "background"
	Motivation Role = "motivation"
)

// Roles lists them.
var Roles = []Role{Key, Fill, Edge, Hair, Eye, Background, Motivation}

// Meter is what a meter measures.
type Meter string

// The kinds of a meter.
const (
	FlatMeter Meter = "flat" // illuminance on a plane
	DomeMeter Meter = "dome" // the incident dome
	SpotMeter Meter = "spot" // luminance of the first surface along a ray
)

// Meters lists them.
var Meters = []Meter{FlatMeter, DomeMeter, SpotMeter}

// Receptors are the meters that may give the stops of a file, the default first.
var Receptors = []Meter{DomeMeter, FlatMeter}

// Class says how light leaves a body, and so how it is drawn.
type Class string

// The classes of body.
const (
	Bare      Class = "bare"      // an open-faced or bare source
	Lensed    Class = "lensed"    // a lens in front: beam set by focus
	Projected Class = "projected" // an image of a gate: hard edge, cuts
	Boxed     Class = "boxed"     // a soft face on a box
	Linear    Class = "linear"    // a tube
	Panel     Class = "panel"     // a flat array of emitters
	Lantern   Class = "lantern"   // a soft sphere
	Practical Class = "practical" // a lamp that belongs to the set
)

// Classes lists them.
var Classes = []Class{Bare, Lensed, Projected, Boxed, Linear, Panel, Lantern, Practical}

// Technology is what makes the light of a lamp.
type Technology string

// The technologies.
const (
	LED         Technology = "led"
	Tungsten    Technology = "tungsten"
	Discharge   Technology = "discharge"
	Fluorescent Technology = "fluorescent"
)

// Technologies lists them.
var Technologies = []Technology{LED, Tungsten, Discharge, Fluorescent}

// Dimmer is what a lamp is dimmed by.
type Dimmer string

// The dimmers.
const (
	PhaseDimmer       Dimmer = "phase"       // cuts a part of each half cycle of the mains off
	PulseDimmer       Dimmer = "pwm"         // switches it on and off
	CurrentDimmer     Dimmer = "current"     // gives less of an even current
	TransformerDimmer Dimmer = "transformer" // gives less of the whole wave
	NoDimmer          Dimmer = "none"
)

// Dimmers lists them.
var Dimmers = []Dimmer{PhaseDimmer, PulseDimmer, CurrentDimmer, TransformerDimmer, NoDimmer}

// Play is how a light changes by itself.
type Play string

// The plays of light.
const (
	Fire    Play = "fire"
	Candle  Play = "candle"
	Screen  Play = "screen"  // pictures that change
	Passing Play = "passing" // headlamps, a train
	Pulse   Play = "pulse"   // a beacon, a sign
)

// Plays lists them.
var Plays = []Play{Fire, Candle, Screen, Passing, Pulse}

// Feed is what feeds a circuit.
type Feed string

// The kinds of feed.
const (
	Mains     Feed = "mains"
	Generator Feed = "generator"
	Battery   Feed = "battery"
)

// Feeds lists them.
var Feeds = []Feed{Mains, Generator, Battery}

// Phase is one of the three of a supply.
type Phase string

// The phases, by their names of IEC 60445.
const (
	PhaseOne   Phase = "L1"
	PhaseTwo   Phase = "L2"
	PhaseThree Phase = "L3"
)

// Phases lists them.
var Phases = []Phase{PhaseOne, PhaseTwo, PhaseThree}

// Gel is what a gel does to light.
type Gel string

// The kinds of a gel.
const (
	CTO        Gel = "cto" // warmer
	CTB        Gel = "ctb" // cooler
	PlusGreen  Gel = "plus-green"
	MinusGreen Gel = "minus-green"
	ND         Gel = "nd"     // less of the same
	Colour     Gel = "colour" // a strong colour, by its chromaticity
)

// Gels lists them.
var Gels = []Gel{CTO, CTB, PlusGreen, MinusGreen, ND, Colour}

// Map is what a sheet maps.
type Map string

// The maps.
const (
	FloorMap Map = "floor" // illuminance on the floor
	FaceMap  Map = "face"  // the incident dome at face height
)

// Maps lists them, the default first.
var Maps = []Map{FloorMap, FaceMap}

// Focus is a word for an end of a zoom, or of the edge of an image.
type Focus string

// The ends of a zoom, and those of an edge.
const (
	Spot  Focus = "spot"  // its narrowest beam
	Flood Focus = "flood" // its widest
	Sharp Focus = "sharp" // an image in focus
	Soft  Focus = "soft"  // one as far out of focus as the lens goes
)

// Focuses lists them.
var Focuses = []Focus{Spot, Flood, Sharp, Soft}

// Words are terms as the strings that a file has.
func Words[T ~string](terms []T) []string {
	words := make([]string, len(terms))
	for i, t := range terms {
		words[i] = string(t)
	}
	return words
}

// Walls are the names of the walls of a room with four, counterclockwise from the lower one.
func Walls() []string { return []string{"bottom", "right", "top", "left"} }
