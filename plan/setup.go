// Package plan resolves a scene to metres: rooms, openings and furniture become solids, people
// and cameras get faces and eyes, every light gets a place, an axis and a head.
package plan

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
)

// Setup is one set-up, resolved. Lengths are metres, heights are absolute z, angles degrees.
//
// Resolve fills it in. One that is made by hand needs an Exposure, and so does each of its Cameras: without it
// the readings have no T-stop (Stop and Over are nil), as nothing says how light becomes a stop.
type Setup struct {
	Name       string // "" where the scene has no set-ups
	Sequence   string // of set-ups that are cut together; "" where the scene writes none
	Title      string
	Scene      *scene.Scene
	Kit        *kit.Catalogue
	Prices     *kit.Prices // nil: the scene names no price file
	Rooms      []Room
	Walls      []WallPiece
	Openings   []Opening
	Furniture  []Furniture
	People     []Person
	Cameras    []Camera // those of this set-up
	Lights     []Light
	Grip       []Grip
	Meters     []Meter
	Circuits   []Circuit
	Cues       []Cue     // in the order in which they go
	Set        solid.Set // shades and reflects
	Bodies     solid.Set // seen by the spot meter and the strip, never shade: lamp bodies, stands
	Names      map[solid.ID]string
	Exposure   Exposure
	Line       *Line   // of action; nil: there is none
	Ground     float64 // z of the open ground, m
	North      float64 // degrees clockwise from the sheet's up
	Shooting   float64 // how long the site says is shot, h; 0: it does not say
	Feet       bool
	Assumed    []Assumption
	FaceHeight float64             // z of the first person's eyes, m; 0 where there is nobody
	Bounds     r2.Box              // of everything that stands, in plan, m
	Warnings   []source.Diagnostic // what resolving it warned of
	Uncomputed []Uncomputed        // keys that it writes and nothing computes yet

	Spots  map[string]Spot // where things stand, for a set-up after this one
	Sides  []CameraSide    // of the line of action: of the cameras of the set-ups before this one in the file
	Before *Setup          // what stood in the set-up before this one in the file, from which a sheet counts the changes, without its set; nil: there is none
}

// Remains is what a set-up leaves to those after it: what stood where, without the set that light is computed in.
func (s *Setup) Remains() *Setup {
	return &Setup{Name: s.Name, Spots: s.Spots, Furniture: s.Furniture, People: s.People, Cameras: s.Cameras, Lights: s.Lights,
		Grip: s.Grip, Openings: s.Openings, Circuits: s.Circuits, Cues: s.Cues, Exposure: s.Exposure, Uncomputed: s.Uncomputed}
}
