package scene

import "scrimshaw/plan/source"

// PlaceForm says how a place was written.
type PlaceForm uint8

// The forms of a place.
const (
	AtPoint   PlaceForm = iota // [x, y]
	FromThing                  // {from: NAME, shift: [dx, dy]}
	ByToward                   // {by: NAME, toward: NAME, turn: 45 camera-left, distance: 2}
	ByNose                     // {by: NAME, turn: 20 own-left, distance: 1}
	AtWall                     // {wall: ROOM.WALL, along: 1.2, in: 0.4}
	AtOpening                  // {opening: NAME, out: 2.5, along: -0.3}
	OnTop                      // {top: NAME, shift: [0.1, 0]}
)

// Place is somewhere in plan, still relative.
type Place struct {
	Form     PlaceForm
	Span     source.Span
	Point    [2]float64 // x, y on the sheet, m
	Thing    Ref        // from, by, wall, opening or top
	Toward   Ref
	Shift    [2]float64 // right and up the sheet, m
	Turn     Turn
	Distance Given[float64] // m
	Along    Along
	Out, In  Given[float64] // m, never negative; one of them for an opening
	Height   Given[float64] // of the aimed point above the floor there, m; only where a place stands in an aim
}

// Along is a distance from a wall's left end as seen from inside, or its centre.
type Along struct {
	Metres float64
	Centre bool
	Set    bool
	Span   source.Span
}

// Side says whose left or right a turn goes to.
type Side uint8

// The sides. Clockwise is a bare number. Left and Right are the walker's own hands.
const (
	Clockwise Side = iota
	CameraLeft
	CameraRight
	OwnLeft
	OwnRight
	Left
	Right
)

// Turn is an angle from a first look, degrees >= 0 except for Clockwise.
type Turn struct {
	Degrees float64
	Side    Side
	Set     bool
	Span    source.Span
}

// AimForm says how an aim was written.
type AimForm uint8

// The forms of an aim.
const (
	AtThing   AimForm = iota // NAME, NAME.top, ruth.sit
	AtPlace                  // a place with height
	AtXYZ                    // [x, y, z]
	AtBearing                // 90
	AimUp
	AimDown
	AimPanTilt // {pan: 30, tilt: -20}
	AtCeiling  // ROOM.ceiling with a place: {ceiling: ROOM, at: PLACE}
	AtXY       // [x, y]: level, in the direction of a point of the plan; of faces alone
	AimCeiling // the ceiling over the middle between a lamp and whom it is for; Thing is a thing of that name, which goes before the word
	AimFloor   // likewise the floor
)

// MeansOpening says whether an aim is the opening itself, and no place before it: {opening: NAME}.
func (a *Aim) MeansOpening() bool {
	return a.Form == AtPlace && a.Place.Form == AtOpening && !a.Place.Out.Set && !a.Place.In.Set
}

// Aim is where a lamp, a camera or a face points, still relative.
type Aim struct {
	Form      AimForm
	Span      source.Span
	Thing     Ref
	Place     Place
	Point     [3]float64 // x, y, z, m; of AtXY without z
	Pan, Tilt float64    // degrees: clockwise from the sheet's up; above the horizontal
}
