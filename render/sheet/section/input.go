package section

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
	"scrimshaw/render/carto"
)

// Input is one set-up with its results: all that a sheet says. Of fills it from a study. Lengths are
// metres in plan, light is lux. Only Setup is needed; what is left out is not drawn.
type Input struct {
	Setup    *plan.Setup
	Since    *Since          // what the sheet before says of it; nil: nobody asks
	Readings []meter.Reading // of every face and meter
	Faces    []Face          // one a person, and after it one of each of their marks
	Walks    []meter.Walk
	StandIns []meter.StandIn
	Cues     *meter.Cues    // what the cues of the set-up do; nil: it has none
	Played   []meter.Played // what lights do that change by themselves
	Tracks   []meter.Track  // what changes along the tracks of cameras
	Looks    []match.Look   // of faces to cameras, for the page that matches set-ups; none where there is no such page
	Lesson   *meter.Lesson  // nil where nobody asked for notes to learn from
	Field    *Field         // the map
	Floors   []Field        // the map on other levels of floor
	Inset    *Field         // a second map, drawn small: at the height of the faces
	Insets   []Field        // the second map on other levels of floor
	NoMains  bool           // its reader plugs nothing in: what circuits carry, what is on them and what lights draw is left out
	Holds    bool           // its reader sets stands: what holds a light stands with it, and how many bags
	// Elevation asks for a wall in place of the plan; Field is then over the wall.
	Elevation *Elevation
	Beams     []Beam
	Rims      []Rim
	Bounces   []Bounce
	Views     []View
	Cloths    []Cloth // of frames and nets
	// Notes, a sentence an item. Findings and cautions are given a capital and a full stop where they have none.
	Warnings  []string  // findings of the review that need attention
	Cautions  []Caution // of the trade, where they apply; the last says what comes first
	Unchecked []string  // what nobody has checked
}

// Caution is one of the trade, with the numbers of the lights and the grip that it is about.
type Caution struct {
	Tags  []string // none: it is about everybody
	Text  string
	Winds []Wind // at which wind each of some of them comes down
}

// Wind is the wind at which a thing comes down.
type Wind struct {
	Tag   string
	Speed float64 // m/s
	Words string
}

// Face is what the meter says at one person's face.
type Face struct {
	Person    string           // or the mark of one: "ruth.sit"
	Mark      bool             // nobody stands there on the plan
	Key, Fill *meter.Reading   // of the brighter and the darker side
	Domes     []*meter.Reading // toward the cameras that see it, or toward all
	Contrast  float64          // stops, key over fill; meaningless without both
	KeyToFill *float64         // the ratio of key to fill; nil where readings do not tell it
	Side      string           // of the key, the person's own: "left" or "right"; "" where both sides are dark
	Views     []meter.View     // how the cameras that see it do so
	Skipped   string           // why there are no readings, "" where there are
}

// Cloth is what the cloth of a piece of grip does to light, in stops.
type Cloth struct {
	Grip    string
	Lost    float64  // of what falls on it
	HotSpot *float64 // the most over the mean; nil where no lamp lights it
}

// Field is illuminance over the plan, lx.
type Field struct {
	Name   string // "Illuminance on the floor", "Incident dome at 1.24 m, at each point turned toward A"
	Grid   carto.Grid
	Level  *float64             // z of the level plane that it is on, m; nil: it is on what stands or on a wall
	Over   float64              // how high over its floor that plane is, m
	Colour []colour.RGB         // the light at the points of the grid, AP1; nil: nobody asks for its colour
	Probe  func(r2.Vec) float64 // the light at a point, for true edges; nil: the grid alone
	Toward *r2.Vec              // where the camera stands that its receptors are turned to, m; nil: they are not turned
	Coarse bool                 // whether the set is too large for points as close as usual

	Uncomputed []plan.Uncomputed // keys that could change it, or the stops that it is read in, and that nothing computes yet
}

// Beam is the light of one lamp in plan, cut by what it meets: a polygon that starts at the lamp, or
// at the left end of its emitting edge, and runs along the far side. Points are in metres.
type Beam struct {
	Light string
	Half  []r2.Vec // to half the intensity of the axis
	Tenth []r2.Vec // to a tenth
	Spot  bool     // steeper than 75°: the polygons are footprints and have no sides
}

// Bounce is the way of a light that is sent to a surface for what comes off it, and on to a face.
type Bounce struct {
	Light, Off, To string  // the names of the light, the surface and the person
	At, Face       r3.Vec  // where its axis lands, and the face, m
	On             float64 // from the one to the other, m
}

// BounceOf is the bounce of a light; nil where it has none.
func (in *Input) BounceOf(light string) *Bounce {
	for i := range in.Bounces {
		if in.Bounces[i].Light == light {
			return &in.Bounces[i]
		}
	}
	return nil
}

// Rim is a piece of the rim of what a projection spot throws, to half its light, on one face.
type Rim struct {
	Light string
	Level bool     // on a floor or on top of a thing
	Line  []r3.Vec // m
}

// View is what a camera sees in plan, cut by what it meets: a polygon that starts at the lens. Points
// are in metres.
type View struct {
	Camera  string
	Outline []r2.Vec
}

// Maps are those that are drawn to scale.
func (in *Input) Maps() []*Field { return together(in.Field, in.Floors) }

// SmallMaps are those that are drawn small.
func (in *Input) SmallMaps() []*Field { return together(in.Inset, in.Insets) }

// together is a map with those on other levels of floor.
func together(first *Field, others []Field) []*Field {
	var all []*Field
	if first != nil {
		all = append(all, first)
	}
	for i := range others {
		all = append(all, &others[i])
	}
	return all
}

// Elevation asks for a wall as seen from inside its room in place of the plan. The field of the
// input is then over the wall: x along it from its left end, y the height over the level of the set's
// zero, m.
type Elevation struct{ Room, Wall string }

// Wall is the wall that the sheet is of, with its room; ok is false where the set-up has none of that name.
func (in *Input) Wall() (room *plan.Room, wall *plan.Wall, ok bool) {
	if in.Elevation == nil {
		return nil, nil, false
	}
	for i := range in.Setup.Rooms {
		r := &in.Setup.Rooms[i]
		for j := range r.Walls {
			if w := &r.Walls[j]; r.Name == in.Elevation.Room && w.Name == in.Elevation.Wall {
				return r, w, true
			}
		}
	}
	return nil, nil, false
}
