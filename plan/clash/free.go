package clash

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
)

// The ground of a stand is in the way of what lies between these heights over it, m (common practice): its legs go under what is higher
// and stand on what is lower.
const (
	groundFrom = 0.03
	groundTo   = 0.30
)

// groundSides is how many sides the circle of the legs has.
const groundSides = 12

// Room tells where what holds a thing has room: it lies in nothing of a set-up but other equipment and the room that moves need.
type Room struct{ set []*thing }

// RoomIn looks at a set-up as it stands.
func RoomIn(s *plan.Setup) *Room {
	r := &Room{}
	for _, o := range obstacles(s) {
		if o.Kind == Set || o.Kind == Person {
			r.set = append(r.set, o)
		}
	}
	return r
}

// Takes says whether what a mount is made of, and the ground of its legs, are free there, by the frame of what it holds and the z of what it stands on.
func (r *Room) Takes(m *plan.Mount, f plan.Frame, base float64) bool {
	held := thingOf(Side{Kind: Light}, *m, heldPieces(m, f, base))
	at := plan.AtHeight(m.Base, base+groundFrom)
	low := body.Circle(at, r3.Vec{X: 1}, r3.Vec{Y: 1}, m.Foot/2, groundSides)
	high := body.Circle(r3.Vec{X: at.X, Y: at.Y, Z: base + groundTo}, r3.Vec{X: 1}, r3.Vec{Y: 1}, m.Foot/2, groundSides)
	ground := thingOf(Side{Kind: Light}, plan.Mount{}, []body.Piece{body.Loft(body.Stand, low, high)})
	return held.allMeetings(r.set) == nil && ground.allMeetings(r.set) == nil
}
