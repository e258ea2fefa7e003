package change

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/term"
)

// Sort is what a thing is.
type Sort string

// The sorts, in the order in which things of one stage are listed.
const (
	Light     Sort = "light"
	Grip      Sort = "grip"
	Camera    Sort = "camera"
	Exposure  Sort = "exposure" // what all cameras are set to
	Furniture Sort = "furniture"
	Opening   Sort = "opening"
	Person    Sort = "person"
	Mark      Sort = "mark"
	Circuit   Sort = "circuit"
	Cue       Sort = "cue" // at the board

	// What a sheet says and no crew touches between two set-ups.
	Meter    Sort = "meter"
	Room     Sort = "room"
	Material Sort = "material"
	Whole    Sort = "scene"   // what is said of all of it
	Waiting  Sort = "waiting" // a key that nothing computes yet
	Numbers  Sort = "numbers" // of all things whose number on the plan is another: no thing, and one line of a revision
)

// Sorts lists them.
var Sorts = []Sort{Light, Grip, Camera, Exposure, Furniture, Opening, Person, Mark, Circuit, Cue, Meter, Room, Material, Whole, Waiting, Numbers}

// Aspect is one side of how a thing is, which a change leaves as it was or not.
type Aspect string

// Value is what a thing has of an aspect: words of the catalogue or of the scene, and figures in metres, degrees, kelvins or shares, as the
// aspect says. The zero Value is that there is none.
type Value struct {
	Words   []string
	Figures []float64 // m, degrees, K, shares
}

// Fact is a value of an aspect.
type Fact struct {
	Aspect Aspect
	Value  Value
}

// Thing is something that a crew touches, as it is in one set-up.
type Thing struct {
	Sort      Sort
	Name, Tag string // of the file, and on the plan
	Facts     []Fact // all aspects of its sort, in one order

	by, at  []string // the things by which it is placed, and that it is aimed at
	on      string   // the thing that it stands or hangs on, or is clamped to
	ground  float64  // about how far it takes ground from where it stands, m
	hot     float64  // how long it stays hot once it is off, minutes; 0: nobody counts it as hot
	hands   []Reason // why one alone does not handle it
	lowFoot float64  // z of what it stands on, m
}

// Fact is the value of an aspect of a thing; the zero Value where it has none.
func (t *Thing) Fact(a Aspect) Value {
	for i := range t.Facts {
		if t.Facts[i].Aspect == a {
			return t.Facts[i].Value
		}
	}
	return Value{}
}

// words is a value of some words; none where there is nothing in them.
func words(all ...string) (v Value) {
	for _, w := range all {
		if w != "" {
			v.Words = append(v.Words, w)
		}
	}
	return v
}

// The aspects, and the work that changing each is.
const (
	Unit      Aspect = "unit"     // words: its name; figures: how many, and of a plain source its lumens
	Wears     Aspect = "modifier" // words: modifiers from the head outward; figures: of a shade, m and shares
	Bulb      Aspect = "bulb"     // words: its name; figures: W, lm, K
	Hold      Aspect = "hold"     // words: how it is held, its stand; figures: the arm, m
	Place     Aspect = "place"    // words: what it stands on; figures: its place, then that of what carries it, m
	Aim       Aspect = "aim"      // figures: unit vectors: the axis, and the right of what is not round
	Focus     Aspect = "focus"    // figures: shares of the way from spot to flood, and from sharp to soft
	Scrims    Aspect = "scrims"   // words
	Doors     Aspect = "doors"    // figures: degrees of top, bottom, left, right, and the turn of all
	Cuts      Aspect = "cuts"     // figures: degrees and share of each
	Pattern   Aspect = "pattern"  // figures: shares open and grain, and the seed
	Level     Aspect = "level"    // figures: a share
	White     Aspect = "white"    // figures: K and Duv, the tint
	Gels      Aspect = "gels"     // words
	Cloth     Aspect = "cloth"    // words; figures: of each curtain or blind its ends, foot, top, m, slats, m, and their tilt, degrees
	Feed      Aspect = "circuit"  // words: the circuit; of a circuit what it is, and figures: V, A, share, W, and the place of its outlet, m
	Dimmer    Aspect = "dimmer"   // words: its kind, with what it switches at
	Plays     Aspect = "plays"    // words: what; figures: shares, and 1/s
	Note      Aspect = "note"     // words
	Piece     Aspect = "piece"    // words: kind and entry of the catalogue; figures: size, m
	Surface   Aspect = "surface"  // words: the side that a board shows, the material of a thing
	Turn      Aspect = "turn"     // figures: degrees
	Lens      Aspect = "lens"     // words: filters; figures: mm and ratio of the squeeze
	Format    Aspect = "format"   // words: the sensor; figures: the aspect's ratio
	Track     Aspect = "track"    // figures: its corners, m
	Settings  Aspect = "settings" // figures: T-number, ISO, frames a second, s, K, Duv
	Pose      Aspect = "pose"     // words
	Walk      Aspect = "walk"     // figures: its corners, m
	Wardrobe  Aspect = "wardrobe" // figures: shares of light that skin and clothes return
	Leaf      Aspect = "leaf"     // figures: degrees that it stands open
	Glass     Aspect = "glass"    // words
	Comes     Aspect = "comes"    // the thing was not there
	Goes      Aspect = "goes"     // it is not there any more
	coordSize        = 3          // figures of a place in space
)

// works are what changing an aspect is, of any thing but people.
var works = map[Aspect]term.Work{
	Unit: term.Swapped, Wears: term.Swapped, Bulb: term.Swapped, Hold: term.Swapped, Piece: term.Swapped, Glass: term.Swapped,
	Place: term.Moved, Turn: term.Moved, Aim: term.Aimed,
	Focus: term.Fitted, Scrims: term.Fitted, Doors: term.Fitted, Cuts: term.Fitted, Pattern: term.Fitted, Note: term.Fitted, Surface: term.Fitted,
	Level: term.Levelled, White: term.Coloured, Gels: term.Gelled, Cloth: term.Clothed, Feed: term.Cabled, Dimmer: term.Cabled, Plays: term.Levelled, Leaf: term.Doored,
	Lens: term.Filmed, Format: term.Filmed, Track: term.Filmed, Settings: term.Filmed,
}

// workOf is what changing an aspect of a thing of a sort is.
func workOf(sort Sort, a Aspect) term.Work {
	switch sort {
	case Person, Mark:
		return term.Marked
	case Camera:
		if a == Comes || a == Goes {
			return term.Filmed
		}
	case Circuit:
		return term.Cabled
	case Cue:
		return term.Levelled
	}
	switch a {
	case Comes:
		return term.Placed
	case Goes:
		return term.Struck
	}
	return works[a]
}

// Below these nobody moves or turns a thing.
const (
	Unmoved  = 0.01 // m
	Unturned = 0.5  // degrees
)

// exactly is by how much figures may differ that are read by nobody's eye: the noise of computing them.
const exactly = 1e-9

// same says whether a value is to a crew what another is.
func (a Aspect) same(v, w Value) bool {
	if !slices.Equal(v.Words, w.Words) || len(v.Figures) != len(w.Figures) {
		return false
	}
	switch a {
	case Place, Track, Walk:
		return a.near(v.Figures, w.Figures)
	case Aim, Facing:
		return directionsAgree(v.Figures, w.Figures)
	case Turn, Leaf:
		return anglesAgree(v.Figures, w.Figures)
	}
	return slices.EqualFunc(v.Figures, w.Figures, func(x, y float64) bool { return math.Abs(x-y) <= exactly*math.Max(1, math.Abs(x)) })
}

// near says whether no place of one list lies so far from that of another that somebody would move a thing. The places of a track and of a walk
// are of the plan.
func (a Aspect) near(v, w []float64) bool {
	size := coordSize
	if a != Place {
		size = 2
	}
	for i := 0; i+size <= len(v); i += size {
		var sum float64
		for k := i; k < i+size; k++ {
			sum += (v[k] - w[k]) * (v[k] - w[k])
		}
		if math.Sqrt(sum) >= Unmoved {
			return false
		}
	}
	return true
}

// directionsAgree says whether unit vectors point the same way, each as far as somebody turns a thing.
func directionsAgree(v, w []float64) bool {
	for i := 0; i+coordSize <= len(v); i += coordSize {
		if AngleBetween(vector(v[i:]), vector(w[i:])) >= Unturned {
			return false
		}
	}
	return true
}

func anglesAgree(v, w []float64) bool {
	return slices.EqualFunc(v, w, func(x, y float64) bool { return math.Abs(math.Remainder(x-y, 360)) < Unturned })
}

// AngleBetween is the angle between two vectors, degrees; between nothing and a vector it is half a turn.
func AngleBetween(a, b r3.Vec) float64 {
	switch {
	case a == b:
		return 0
	case r3.Norm(a) == 0 || r3.Norm(b) == 0:
		return 180
	}
	return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)) * 180 / math.Pi
}

func vector(v []float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

func figuresOf(all ...r3.Vec) (v []float64) {
	for _, p := range all {
		v = append(v, p.X, p.Y, p.Z)
	}
	return v
}

func planFigures(all []r2.Vec) (v []float64) {
	for _, p := range all {
		v = append(v, p.X, p.Y)
	}
	return v
}
