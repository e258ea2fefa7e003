package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// Label is something to be written near an anchor, in one of several forms. Lengths are mm.
type Label struct {
	Anchor      r2.Vec  // what it is about; a leader ends where it meets Body on the way here
	Body        r2.Box  // the box of what is drawn there; the zero box is the anchor alone
	Forms       []Form  // best first
	Toward      *r2.Vec // the preferred direction of the label, a unit vector; nil: none
	Priority    float64 // how much it matters; 0 is taken as 1
	LinePenalty float64 // by how much more than others it avoids to cover lines; 0 is taken as 1
}

// Form is one form of a label: the full tag, the short tag, the number. Lengths are mm.
type Form struct {
	Size   r2.Vec  // of its box
	Leader float64 // it may stand off at the end of a leader up to this long; 0: only beside the body
}

// Placement is where a label went, in mm on paper.
type Placement struct {
	Form   int       // index into the label's forms; their number if none fitted, and it goes to the table
	On     bool      // it stands on the map
	Box    r2.Box    // where it stands
	Leader [2]r2.Vec // from the box to the body; equal ends: none
}

// Leads says whether the placement has a leader.
func (p Placement) Leads() bool { return p.On && p.Leader[0] != p.Leader[1] }

// PlaceOptions say what labels must keep clear of, in mm on paper.
type PlaceOptions struct {
	Area      r2.Box     // where labels must lie
	Gap       float64    // between boxes, mm; half of it to obstacles; 0: 1
	Obstacles []Obstacle // besides the labels' own bodies
	Rounds    int        // of local search, for each label; 0: 100
}

// candidate is one placement that a label could take.
type candidate struct {
	Placement
	cost   float64
	limits r2.Box // of box and leader
}

// formCost is what each step down the ladder costs, as mm of leader; the table costs twice as much.
const formCost = 130

// cost of the places beside a body, best first: to the right and up, then right, then left, over
// and under it (after Imhof 1975, "Positioning names on maps", The American Cartographer 2(2),
// p. 128).
var beside = []struct{ x, y, cost float64 }{
	{1, 0.5, 0}, {1, 0, 1}, {1, -0.5, 1.5}, {-1, 0.5, 2}, {-1, 0, 2.5}, {-1, -0.5, 3},
	{0.5, 1, 1.5}, {0, 1, 2}, {-0.5, 1, 2.5}, {0.5, -1, 3}, {0, -1, 3.5}, {-0.5, -1, 4},
	{1, 1, 1}, {-1, 1, 3}, {1, -1, 3}, {-1, -1, 4},
}

// bearings is in how many directions a label may stand off.
const bearings = 24

// enough is how many places a label has to choose from before its worse forms are tried in fewer.
const enough = 40

// candidates returns the places that label i could take by itself: inside the area, off the
// obstacles and off every body.
func (s *solver) candidates(i int) []candidate {
	var out []candidate
	l := s.labels[i]
	for form, r := range l.Forms {
		if r.Size.X <= 0 || r.Size.Y <= 0 {
			continue
		}
		stride := 1
		if len(out) >= enough {
			stride = 3
		}
		for _, b := range beside {
			s.offer(&out, i, form, besideBox(s.bodies[i], r.Size, r2.Vec{X: b.x, Y: b.y}, s.opts.Gap), b.cost)
		}
		for off := 4.0; off <= r.Leader; off *= 1 + 0.35*float64(stride) {
			for k := 0; k < bearings; k += stride {
				sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / bearings)
				s.offer(&out, i, form, offBox(s.bodies[i], r.Size, r2.Vec{X: cos, Y: sin}, off), 6)
			}
		}
	}
	return append(out, s.table(i))
}

// table is the candidate that is always free: the label goes off the map.
func (s *solver) table(i int) candidate {
	n := len(s.labels[i].Forms)
	return candidate{Placement: Placement{Form: n}, cost: s.priority(i) * formCost * float64(n+1)}
}

func (s *solver) priority(i int) float64 {
	if w := s.labels[i].Priority; w > 0 {
		return w
	}
	return 1
}

// besideBox returns a box of a size beside a body: at 1 it clears it on that side by the gap, at 0
// it is centred.
func besideBox(body r2.Box, size, at r2.Vec, gap float64) r2.Box {
	axis := func(low, high, size, at float64) float64 {
		if math.Abs(at) == 1 {
			return (low+high)/2 + at*((high-low)/2+gap+size/2)
		}
		return (low+high)/2 + at*size*0.8
	}
	return boxAround(r2.Vec{
		X: axis(body.Min.X, body.Max.X, size.X, at.X),
		Y: axis(body.Min.Y, body.Max.Y, size.Y, at.Y),
	}, size)
}

// offBox returns a box of a size that stands off a body in a unit direction.
func offBox(body r2.Box, size, d r2.Vec, off float64) r2.Box {
	half := r2.Scale(0.5, r2.Add(size, r2.Sub(body.Max, body.Min)))
	t := off + min(half.X/max(math.Abs(d.X), 1e-9), half.Y/max(math.Abs(d.Y), 1e-9))
	return boxAround(r2.Add(r2.Scale(0.5, r2.Add(body.Min, body.Max)), r2.Scale(t, d)), size)
}

func boxAround(c, size r2.Vec) r2.Box {
	return r2.Box{Min: r2.Sub(c, r2.Scale(0.5, size)), Max: r2.Add(c, r2.Scale(0.5, size))}
}

// offer appends the candidate of label i in a box, if nothing stands in its way.
func (s *solver) offer(out *[]candidate, i, form int, box r2.Box, cost float64) {
	c := candidate{Placement: Placement{Form: form, On: true, Box: box}}
	if !s.inside(box) || s.onBody(box) {
		return
	}
	over, free := s.obstacles.overBox(grown(box, s.opts.Gap/2))
	if !free {
		return
	}
	c.Leader = s.leader(i, box)
	length := 0.0
	if c.Leads() {
		length = r2.Norm(r2.Sub(c.Leader[1], c.Leader[0]))
		crossed, free := s.leaderWay(i, c.Leader)
		if !free {
			return
		}
		over += crossed
	}
	c.limits = grown(union(box, plane.Bounds(c.Leader[:])), s.opts.Gap)
	c.cost = s.priority(i) * (formCost*float64(form) + cost + length + max(1, s.labels[i].LinePenalty)*over + s.directionCost(i, box))
	*out = append(*out, c)
}

// directionCost is the cost of a label that lies off its preferred direction.
func (s *solver) directionCost(i int, box r2.Box) float64 {
	l := s.labels[i]
	if l.Toward == nil {
		return 0
	}
	d := r2.Sub(r2.Scale(0.5, r2.Add(box.Min, box.Max)), l.Anchor)
	length := r2.Norm(d)
	if length == 0 {
		return 0
	}
	return 5 * (1 - r2.Dot(d, *l.Toward)/length)
}

func (s *solver) inside(b r2.Box) bool {
	a := s.opts.Area
	return b.Min.X >= a.Min.X && b.Min.Y >= a.Min.Y && b.Max.X <= a.Max.X && b.Max.Y <= a.Max.Y
}

// onBody says whether a box covers any body.
func (s *solver) onBody(b r2.Box) (hit bool) {
	near := grown(b, s.opts.Gap/2)
	s.bodyBins.near(near, func(j int) bool {
		hit = boxesOverlap(near, s.bodies[j])
		return !hit
	})
	return hit
}

// leader returns the leader from a box to the body of label i; equal ends where the box stands
// beside the body.
func (s *solver) leader(i int, box r2.Box) (ends [2]r2.Vec) {
	body := s.bodies[i]
	if boxesOverlap(grown(body, 1.5*s.opts.Gap), box) {
		return ends
	}
	// It leaves a little inside the ends of the box's side, and points at the anchor.
	inset := min(2, (box.Max.X-box.Min.X)/4)
	inner := r2.Box{Min: r2.Vec{X: box.Min.X + inset, Y: box.Min.Y}, Max: r2.Vec{X: box.Max.X - inset, Y: box.Max.Y}}
	anchor := clampTo(s.labels[i].Anchor, body)
	from := clampTo(anchor, inner)
	if from.Y > box.Min.Y && from.Y < box.Max.Y { // it leaves by the left or right side
		from = clampTo(anchor, box)
	}
	return [2]r2.Vec{from, entry(from, anchor, body)}
}

// entry returns where the way from outside a box to a point of it enters the box.
func entry(from, to r2.Vec, box r2.Box) r2.Vec {
	d := r2.Sub(to, from)
	t := 0.0
	for _, axis := range [...][4]float64{{from.X, d.X, box.Min.X, box.Max.X}, {from.Y, d.Y, box.Min.Y, box.Max.Y}} {
		if axis[1] != 0 {
			in := min((axis[2]-axis[0])/axis[1], (axis[3]-axis[0])/axis[1])
			t = max(t, min(in, 1))
		}
	}
	return r2.Add(from, r2.Scale(t, d))
}

// leaderWay returns what the leader of label i costs on its way, and whether it may go there: it
// crosses no body, but one that it points into.
func (s *solver) leaderWay(i int, leader [2]r2.Vec) (cost float64, free bool) {
	free = true
	s.bodyBins.near(plane.Bounds(leader[:]), func(j int) bool {
		own := j == i || boxesOverlap(s.bodies[j], s.bodies[i])
		free = own || !crossesBox(leader[0], leader[1], s.bodies[j])
		return free
	})
	if !free {
		return 0, false
	}
	return s.obstacles.over(leader[:], true)
}

func union(a, b r2.Box) r2.Box {
	return r2.Box{
		Min: r2.Vec{X: min(a.Min.X, b.Min.X), Y: min(a.Min.Y, b.Min.Y)},
		Max: r2.Vec{X: max(a.Max.X, b.Max.X), Y: max(a.Max.Y, b.Max.Y)},
	}
}
