package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
)

// The passes share a few facts, each in a struct that knows those below it and none above: who reports a fault, what
// is named, what has been made, what the catalogue holds, what stays, where things stand, what they aim at.

// register is the scene as written, and what its names mean.
type register struct {
	*report.Reporter
	doc    *scene.Document // nil for a scene that was made by hand
	s      *scene.Scene
	things map[string]thing
	names  []string // of things, in the order of the file
}

// draft is the set-up on its way, and what is reported of it at its end.
type draft struct {
	*register
	out        *plan.Setup
	nextID     solid.ID
	assumed    map[string]bool    // what scene-wide assumptions have been made
	uncomputed []scene.Uncomputed // keys that are not computed yet, and that the loader cannot know of
}

// catalogue is what can be hired and what surfaces are made of: the kit's, and the scene's own.
type catalogue struct {
	*draft
	kit             *kit.Catalogue
	missingReported bool // the missing catalogue has been reported
}

// carryOver is the set-up before, and what stays as it was there.
type carryOver struct {
	*catalogue
	previous *plan.Setup
	kept     map[string]bool // things that stay
}

// placer finds where things stand and which way they face, in plan. Each is found when it is first asked for.
type placer struct {
	*carryOver
	stack   []dependency
	onStack map[dependency]bool
	spots   map[string]result[plan.Spot]
	facings map[string]result[float64]
	shapes  map[string]result[*plan.Furniture]
}

// aimer finds how high things are, and the points that are aimed at.
type aimer struct{ *placer }

// holder finds what lights and grip are held by, and how a tape puts them there.
type holder struct{ *aimer }

// dependency is one thing that can be asked: where something stands, or where it faces.
type dependency struct {
	what string // "place", "facing"
	of   string
}

func (q dependency) String() string {
	if q.what == "facing" {
		return "the facing of " + q.of
	}
	return q.of
}

// result is what is known; not ok after a fault, which has then been reported.
type result[T any] struct {
	v  T
	ok bool
}

// The passes.
type (
	roomPass struct{ *catalogue }
	wallPass struct { // walls, openings and the shell of the rooms
		*catalogue
		wallBlocks [][][]block // of each room and wall, the wall before it is cut at openings
		holes      []hole      // of each opening
	}
	furniturePass struct{ *placer }
	gatePass      struct{ *catalogue }
	peoplePass    struct{ *aimer }
	linePass      struct{ *draft }
	cameraPass    struct{ *aimer }
	lightPass     struct{ *holder }
	gripPass      struct{ *holder }
	exposurePass  struct{ *draft }
	meterPass     struct{ *aimer }
	finisher      struct{ *placer }
)
