package clash

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// thing is a body that stands somewhere, piece by piece.
type thing struct {
	Side
	mount  plan.Mount
	at     r2.Vec // where its head, its sheet or its lens is, m
	pieces []body.Hull
	box    r3.Box
	slack  float64 // how deep it lies in something before that counts, m
	prop   bool    // it belongs to the set: nobody hangs it
	tripod bool    // it is the ground of the legs of a camera
}

// thingOf makes the pieces of a thing ready.
func thingOf(side Side, mount plan.Mount, pieces []body.Piece) *thing {
	t := &thing{Side: side, mount: mount, slack: Slack}
	for _, p := range pieces {
		t.add(p)
	}
	return t
}

// add adds a piece.
func (t *thing) add(p body.Piece) {
	h := body.HullOf(p)
	if t.pieces == nil {
		t.box = h.Box
	}
	t.box = body.Around(t.box, h.Box)
	t.pieces = append(t.pieces, h)
}

// equipment is all that a crew puts up. What is not known of a lamp but its light has the body of that alone.
func equipment(s *plan.Setup) (all []*thing) {
	for i := range s.Lights {
		l := &s.Lights[i]
		t := thingOf(Side{Light, l.Name}, l.Mount, lampPieces(s, l))
		t.at = plan.InPlan(l.Frame.At)
		if t.prop = l.Head.Class == term.Practical; t.prop {
			t.slack = assumedSlack
		}
		all = append(all, t)
	}
	for i := range s.Grip {
		g := &s.Grip[i]
		t := thingOf(Side{Grip, g.Name}, g.Mount, append(body.SheetsOf(g), heldPieces(&g.Mount, g.Frame, g.Base)...))
		t.at = plan.InPlan(g.Frame.At)
		all = append(all, t)
	}
	return append(append(all, cameras(s)...), tripods(s)...)
}

// cameras are all cameras where they stand, those on tracks at both ends.
func cameras(s *plan.Setup) (all []*thing) {
	for _, c := range s.CameraPosts() {
		t := thingOf(Side{Camera, c.Name}, plan.Mount{}, body.CameraAt(&c, r3.Vec{}))
		t.at, t.slack = plan.InPlan(c.Frame.At), assumedSlack
		all = append(all, t)
	}
	return all
}

// tripods are what the legs of cameras take of the floor.
func tripods(s *plan.Setup) (all []*thing) {
	for i := range s.Cameras {
		c := &s.Cameras[i]
		if legs := body.LegsOfCamera(c); legs != nil && c.Frame.At.Z > c.Base {
			t := thingOf(Side{Ground, c.Name}, plan.Mount{}, []body.Piece{body.GroundPiece(legs, c.Base)})
			t.at, t.slack, t.tripod = plan.InPlan(c.Frame.At), assumedSlack, true
			all = append(all, t)
		}
	}
	return all
}

// grounds are what stands and lifts take of the floor: a camera that stands between their legs has no room for its own.
func grounds(s *plan.Setup) (all []*thing) {
	add := func(name string, m *plan.Mount, base float64, prop bool) {
		if m.Kind.OnLegs() && !prop {
			all = append(all, thingOf(Side{Ground, name}, *m, []body.Piece{body.GroundPiece(m, base)}))
		}
	}
	for i := range s.Lights {
		l := &s.Lights[i]
		add(l.Name, &l.Mount, l.Base, l.Head.Class == term.Practical)
	}
	for i := range s.Grip {
		g := &s.Grip[i]
		add(g.Name, &g.Mount, g.Base, false)
	}
	return all
}

// lampPieces are the head of a lamp with its doors and its cloth, and what holds it up.
func lampPieces(s *plan.Setup, l *plan.Light) (all []body.Piece) {
	if l.Head.Body != ([3]float64{}) {
		all = append(all, body.HeadOf(l)...)
	}
	for _, leaf := range l.Leaves() {
		all = append(all, body.Flat(body.Head, leaf))
	}
	if len(l.Diffusion) > 0 {
		for i := range s.Set.Sheets {
			if strings.HasPrefix(s.Set.Sheets[i].Name, l.Name+".") {
				all = append(all, body.Flat(body.Head, s.Set.Sheets[i].Corners))
			}
		}
	}
	return append(all, heldPieces(&l.Mount, l.Frame, l.Base)...)
}

// poleEnd is how much of a pole at each wall belongs to its feet, m: they press on the wall.
const poleEnd = 0.02

// heldPieces are what holds a thing up. A pole is as long as what is clear between its feet.
func heldPieces(m *plan.Mount, f plan.Frame, base float64) []body.Piece {
	held := *m
	if m.Kind == term.Pole && len(m.PoleEnds) == 2 {
		way := r2.Sub(m.PoleEnds[1], m.PoleEnds[0])
		if long := r2.Norm(way); long > 2*poleEnd {
			in := r2.Scale(poleEnd/long, way)
			held.PoleEnds = []r2.Vec{r2.Add(m.PoleEnds[0], in), r2.Sub(m.PoleEnds[1], in)}
		}
	}
	return body.HoldersOf(&held, f, base)
}

// obstacles is all that equipment meets but other equipment: the set, people where they are and at their marks, who walks, doors that
// swing, and cameras on their tracks. Cloth that hangs in openings gives way, and does not count.
func obstacles(s *plan.Setup) (all []*thing) {
	soft, index := softOf(s), map[Side]int{}
	add := func(side Side, p body.Piece) {
		at, known := index[side]
		if !known {
			index[side] = len(all)
			all = append(all, thingOf(side, plan.Mount{}, []body.Piece{p}))
			return
		}
		all[at].add(p)
	}
	for i := range s.Set.Prisms {
		if p := &s.Set.Prisms[i]; !soft[p.ID] {
			add(Side{Set, p.Name}, body.Prism(body.Whole, p.Base, p.Z0, p.Z1))
		}
	}
	for i := range s.Set.Sheets {
		if p := &s.Set.Sheets[i]; !soft[p.ID] && !ofALight(s, p.Name) {
			add(Side{Set, p.Name}, body.Flat(body.Whole, p.Corners))
		}
	}
	for _, p := range s.Posts() {
		for _, part := range p.Parts {
			add(Side{Person, p.Name}, body.Prism(body.Whole, part.Outline, part.Z0, part.Z1))
		}
		for _, part := range p.Parts {
			add(Side{Over, p.Name}, body.Prism(body.Whole, part.Outline, part.Z1, highOver(s, &p)))
		}
	}
	return append(append(all, moving(s)...), grounds(s)...)
}

// highOver is the z up to which things hang over somebody, m: the ceiling of the room, or what is higher than anything hangs.
func highOver(s *plan.Setup, p *plan.Person) float64 {
	const sky = 50 // m
	if room := s.RoomAt(p.Face.At); room != nil {
		return max(room.CeilingAt(p.At), p.Crown)
	}
	return p.Crown + sky
}

// softOf are the solids that are no obstacles, or are looked at elsewhere: people, grip, and cloth in openings.
func softOf(s *plan.Setup) map[solid.ID]bool {
	soft := map[solid.ID]bool{}
	add := func(ids []solid.ID) {
		for _, id := range ids {
			soft[id] = true
		}
	}
	for i := range s.People {
		add(s.People[i].Own)
	}
	for i := range s.Grip {
		add(s.Grip[i].IDs)
	}
	for i := range s.Openings {
		for k := range s.Openings[i].Dressing {
			add(s.Openings[i].Dressing[k].IDs)
		}
	}
	return soft
}

// ofALight says whether a sheet is the cloth on a lamp.
func ofALight(s *plan.Setup, sheet string) bool {
	name, _, dotted := strings.Cut(sheet, ".")
	return dotted && slices.ContainsFunc(s.Lights, func(l plan.Light) bool { return l.Name == name })
}
