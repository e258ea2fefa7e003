package clash

import (
	"scrimshaw/plan"
	"scrimshaw/plan/body"
)

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
	ground := thingOf(Side{Kind: Light}, plan.Mount{}, []body.Piece{body.Prism(body.Stand, body.GroundOf(m), base+body.LegStep, base+body.LegClearance)})
	return held.allMeetings(r.set) == nil && ground.allMeetings(r.set) == nil
}
