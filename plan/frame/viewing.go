package frame

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/solid"
)

// leastShare is how much of a picture something takes at least that shows in it: two pixels of one that is 2048 wide.
const leastShare = 1e-6

// viewing is a set-up as cameras see it: its set without its equipment, past which things show.
type viewing struct {
	setup  *plan.Setup
	hides  *solid.Set // what hides things
	set    *solid.BVH
	viewer solid.Viewer
	past   []int32
}

// newViewing prepares a set-up. The set hides things: walls, furniture, people, what hangs in openings. Glass and sheers that pass
// more light straight than scattered do not, and one piece of equipment does not hide another, for either may be moved.
//
// Who should not be seen by the camera that looks may be moved likewise.
func newViewing(s *plan.Setup, camera string) *viewing {
	equipment := map[string]bool{}
	for i := range s.Lights {
		equipment[s.Lights[i].Name] = true
	}
	for i := range s.Grip {
		equipment[s.Grip[i].Name] = true
	}
	hides := solid.Set{Prisms: s.Set.Prisms}
	for i := range s.People {
		if p := &s.People[i]; !p.SeenBy(camera) {
			hides.Prisms = slices.DeleteFunc(slices.Clone(hides.Prisms), func(o solid.Prism) bool { return o.Name == p.Name })
		}
	}
	for _, sheet := range s.Set.Sheets {
		name, _, _ := strings.Cut(sheet.Name, ".")
		if !equipment[name] && !seenThrough(&sheet.Front) {
			hides.Sheets = append(hides.Sheets, solid.Sheet{ID: sheet.ID, Name: sheet.Name, Corners: sheet.Corners})
		}
	}
	set := solid.NewBVH(&hides)
	return &viewing{setup: s, hides: &hides, set: set, viewer: solid.Viewer{BVH: set}}
}

// seenThrough says whether a sheet passes more light straight than scattered, so that one recognises what is behind it.
func seenThrough(skin *solid.Skin) bool { return skin.Direct.Y() > skin.Diffuse.Y() }

// visible calls show with what of a flat figure is seen from a place past the set, part by part, until it returns false.
func (v *viewing) visible(from r3.Vec, figure []r3.Vec, show func(part []r3.Vec) bool) bool {
	shaft := solid.NewShaft(figure, []r3.Vec{from})
	v.past = v.set.Between(&shaft, nil, v.past[:0])
	if len(v.past) == 0 {
		return show(figure)
	}
	for _, part := range v.viewer.Visible(from, figure, v.past, false) {
		if !show(part.Corners) {
			return false
		}
	}
	return true
}

// shows says whether a picture shows something of some pieces.
func (v *viewing) shows(all []body.Piece, p picture) bool {
	sides := p.sides()
	sum := 0.0
	for i := range all {
		going := v.figures(&all[i], p.At, func(figure []r3.Vec) bool {
			within := clipped(figure, sides[:])
			if within == nil || p.share(within) <= leastShare/mostFigures {
				return true
			}
			return v.visible(p.At, within, func(part []r3.Vec) bool {
				sum += p.share(part)
				return sum <= leastShare
			})
		})
		if !going {
			return true
		}
	}
	return false
}

// mostFigures is how many flat figures a thing may have that together come to the least share: a ball that something cuts has a thousand.
const mostFigures = 2000

// figures calls show with each flat figure that a piece shows to a place, until it returns false. The rim of a ball lies behind what of it is nearest:
// where something of the set may cut the ball, its facets are shown.
func (v *viewing) figures(p *body.Piece, from r3.Vec, show func(figure []r3.Vec) bool) bool {
	if p.Radius > 0 {
		around := solid.NewBoxShaft(p.Corners())
		if v.past = v.set.Between(&around, nil, v.past[:0]); len(v.past) > 0 {
			return p.Facets(from, show)
		}
	}
	return p.Figures(from, show)
}

// seenPart is a flat figure that is seen past the set, and what it is of.
type seenPart struct {
	part    body.Part
	corners []r3.Vec
}

// seenOf lists all that is seen of some pieces from a place, whichever way one looks.
func (v *viewing) seenOf(all []body.Piece, from r3.Vec) (seen []seenPart) {
	for i := range all {
		v.figures(&all[i], from, func(figure []r3.Vec) bool {
			return v.visible(from, figure, func(part []r3.Vec) bool {
				seen = append(seen, seenPart{all[i].Part, append([]r3.Vec(nil), part...)})
				return true
			})
		})
	}
	return seen
}

// showsOf says whether a picture shows something of what is seen from its place.
func showsOf(seen []seenPart, p picture) bool {
	sides := p.sides()
	sum := 0.0
	for i := range seen {
		if within := clipped(seen[i].corners, sides[:]); within != nil {
			if sum += p.share(within); sum > leastShare {
				return true
			}
		}
	}
	return false
}

// inFrame says whether some pieces lie in a picture, were there no set before them.
func inFrame(all []body.Piece, p picture) bool {
	sides := p.sides()
	for i := range all {
		going := all[i].Figures(p.At, func(figure []r3.Vec) bool {
			within := clipped(figure, sides[:])
			return within == nil || p.share(within) <= leastShare
		})
		if !going {
			return true
		}
	}
	return false
}

// farthest is how far outside a picture things are measured, as a share of its width.
const farthest = 1.0

// outside is by how much of the picture's width, on each side, it would have to be wider to show what is seen; infinite where it
// would have to be more than three times as wide.
func outside(seen []seenPart, p picture) float64 {
	if !showsOf(seen, p.grown(farthest)) {
		return math.Inf(1)
	}
	low, high := 0.0, farthest
	for range 30 {
		if middle := (low + high) / 2; showsOf(seen, p.grown(middle)) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
