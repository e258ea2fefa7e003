package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// wide is an area in which nothing is near the rim.
var wide = r2.Box{Max: r2.Vec{X: 200, Y: 200}}

// light8 is a label about a body of 8 by 4 mm in the middle of the area, of one form.
func light8(size r2.Vec, leader float64) Label {
	at := r2.Vec{X: 100, Y: 100}
	return Label{Anchor: at, Body: boxAround(at, r2.Vec{X: 8, Y: 4}), Forms: []Form{{Size: size, Leader: leader}}}
}

// centre is the middle of a box.
func centre(b r2.Box) r2.Vec { return r2.Scale(0.5, r2.Add(b.Min, b.Max)) }

// Beside a body a box clears it by the gap on the side that it stands on, and by as much at a corner; in between it
// slides along the side by four fifths of its own size.
func TestBesideABody(t *testing.T) {
	body := r2.Box{Min: r2.Vec{X: 10, Y: 20}, Max: r2.Vec{X: 18, Y: 24}}
	size := r2.Vec{X: 20, Y: 5}
	for _, c := range []struct{ at, centre r2.Vec }{
		{r2.Vec{X: 1, Y: 0}, r2.Vec{X: 18 + 1.5 + 10, Y: 22}}, {r2.Vec{X: -1, Y: 0}, r2.Vec{X: 10 - 1.5 - 10, Y: 22}},
		{r2.Vec{X: 0, Y: 1}, r2.Vec{X: 14, Y: 24 + 1.5 + 2.5}}, {r2.Vec{X: 0, Y: -1}, r2.Vec{X: 14, Y: 20 - 1.5 - 2.5}},
		{r2.Vec{X: 1, Y: 0.5}, r2.Vec{X: 29.5, Y: 22 + 2}}, {r2.Vec{X: -0.5, Y: 1}, r2.Vec{X: 14 - 8, Y: 28}},
		{r2.Vec{X: 1, Y: 1}, r2.Vec{X: 29.5, Y: 28}},
	} {
		got := besideBox(body, size, c.at, 1.5)
		if r2.Norm(r2.Sub(centre(got), c.centre)) > 1e-9 || r2.Norm(r2.Sub(r2.Sub(got.Max, got.Min), size)) > 1e-9 {
			t.Errorf("at %v: %v, want it about %v", c.at, got, c.centre)
		}
	}
}

// A box that stands off in a direction touches its body once it is moved back by as much, neither before nor after.
func TestStandingOff(t *testing.T) {
	body := r2.Box{Min: r2.Vec{X: 10, Y: 20}, Max: r2.Vec{X: 18, Y: 24}}
	size := r2.Vec{X: 20, Y: 5}
	for k := range 72 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / 72)
		d := r2.Vec{X: cos, Y: sin}
		box := offBox(body, size, d, 12)
		for back, want := range map[float64]bool{12 - 1e-3: false, 12 + 1e-3: true} {
			by := r2.Scale(-back, d)
			if got := boxesOverlap(body, r2.Box{Min: r2.Add(box.Min, by), Max: r2.Add(box.Max, by)}); got != want {
				t.Errorf("toward %v, moved back by %g: touches %v", d, back, got)
			}
		}
	}
}

// cheapestOf are the places that a lone label could take, cheapest first.
func cheapestOf(l Label, opts PlaceOptions) []candidate {
	return newSolver([]Label{l}, opts).choices[0]
}

// Right is better than left and over is better than under, all else equal; to the right and a little up is best and
// costs nothing; the sixteen places differ.
func TestTheOrderOfPlacesBeside(t *testing.T) {
	choices := cheapestOf(light8(r2.Vec{X: 20, Y: 5}, 0), PlaceOptions{Area: wide, Gap: 1})
	if len(choices) != 17 || choices[16].On {
		t.Fatalf("%d places, want sixteen and the table", len(choices))
	}
	cost := map[r2.Vec]float64{}
	for _, c := range choices[:16] {
		if c.Leads() {
			t.Errorf("a leader beside the body: %+v", c)
		}
		d := r2.Sub(centre(c.Box), r2.Vec{X: 100, Y: 100})
		cost[r2.Vec{X: math.Round(d.X), Y: math.Round(d.Y)}] = c.cost
	}
	if len(cost) != 16 || choices[0].cost != 0 || !(math.Abs(centre(choices[0].Box).Y-102) <= 1e-9) || choices[0].Box.Min.X != 105 {
		t.Errorf("%d places, the best at %v costs %g", len(cost), choices[0].Box, choices[0].cost)
	}
	for d, c := range cost {
		if left, ok := cost[r2.Vec{X: -d.X, Y: d.Y}]; d.X > 0 && !(ok && left > c) {
			t.Errorf("at %v it costs %g, on the left %g", d, c, left)
		}
		if under, ok := cost[r2.Vec{X: d.X, Y: -d.Y}]; d.Y > 0 && !(ok && under > c) {
			t.Errorf("at %v it costs %g, under the body %g", d, c, under)
		}
	}
}

// Each step down the ladder costs as much as 130 mm of leader and the table two; a label that matters twice as much
// costs twice; standing off costs six and each mm of leader one more; to lie away from its direction costs ten at most.
func TestWhatAPlaceCosts(t *testing.T) {
	opts := PlaceOptions{Area: wide, Gap: 1}
	l := light8(r2.Vec{X: 20, Y: 5}, 30)
	l.Forms = append(l.Forms, Form{Size: r2.Vec{X: 10, Y: 5}}, Form{}, Form{Size: r2.Vec{X: 10}}, Form{Size: r2.Vec{Y: 5}})
	least := map[int]float64{}
	for _, c := range cheapestOf(l, opts) {
		if was, ok := least[c.Form]; !ok || c.cost < was {
			least[c.Form] = c.cost
		}
		if !c.Leads() {
			continue
		}
		if length := r2.Norm(r2.Sub(c.Leader[1], c.Leader[0])); !(math.Abs(c.cost-6-length) <= 1e-9) || c.Form != 0 || length > 31 {
			t.Errorf("a leader of %g mm costs %g", length, c.cost)
		}
	}
	if least[0] != 0 || least[1] != 130 || least[5] != 6*130 || len(least) != 3 {
		t.Errorf("the rungs cost %v at least", least)
	}
	for priority, want := range map[float64]float64{0: 1, -3: 1, 1: 1, 2: 2, 0.5: 0.5} {
		l.Priority = priority
		choices := cheapestOf(l, opts)
		if got := choices[len(choices)-1]; got.On || got.cost != want*6*130 {
			t.Errorf("a priority of %g: the table costs %g", priority, got.cost)
		}
	}
	plain := light8(r2.Vec{X: 20, Y: 5}, 0)
	without := cheapestOf(plain, opts)
	for _, toward := range []r2.Vec{{X: 1}, {Y: -1}, {X: -0.6, Y: 0.8}} {
		plain.Toward = &toward
		for _, c := range cheapestOf(plain, opts) {
			for _, w := range without {
				if d := r2.Sub(centre(c.Box), plain.Anchor); c.On && w.Box == c.Box {
					want := w.cost + 5 - 5*r2.Dot(d, toward)/r2.Norm(d)
					if !(math.Abs(c.cost-want) <= 1e-9) {
						t.Errorf("at %v, better toward %v, it costs %g, want %g", d, toward, c.cost, want)
					}
				}
			}
		}
	}
	over := Label{Anchor: centre(without[0].Box), Body: plain.Body, Forms: plain.Forms, Toward: &r2.Vec{X: 1}}
	for _, c := range cheapestOf(over, opts) {
		if math.IsNaN(c.cost) {
			t.Errorf("a box on its own anchor costs %g", c.cost)
		}
	}
}

// Without a gap given there is one of a mm; a body of no size is the anchor.
func TestTheUsualGap(t *testing.T) {
	l := Label{Anchor: r2.Vec{X: 50, Y: 60}, Forms: []Form{{Size: r2.Vec{X: 20, Y: 5}}}}
	for _, gap := range []float64{0, -2, 1, 3} {
		want := gap
		if gap <= 0 {
			want = 1
		}
		if p := Place([]Label{l}, PlaceOptions{Area: wide, Gap: gap})[0]; !(math.Abs(p.Box.Min.X-50-want) <= 1e-9) {
			t.Errorf("a gap of %g leaves %g mm", gap, p.Box.Min.X-50)
		}
	}
}

// A label keeps within the area to the last, on each side.
func TestLabelsKeepInside(t *testing.T) {
	size := r2.Vec{X: 20, Y: 5}
	best := cheapestOf(light8(size, 0), PlaceOptions{Area: wide, Gap: 1})[0].Box
	for name, c := range map[string]struct {
		area r2.Box
		want bool
	}{
		"just":      {best, true},
		"left of":   {r2.Box{Min: r2.Add(best.Min, r2.Vec{X: 1e-3}), Max: best.Max}, false},
		"under":     {r2.Box{Min: r2.Add(best.Min, r2.Vec{Y: 1e-3}), Max: best.Max}, false},
		"right of":  {r2.Box{Min: best.Min, Max: r2.Sub(best.Max, r2.Vec{X: 1e-3})}, false},
		"above":     {r2.Box{Min: best.Min, Max: r2.Sub(best.Max, r2.Vec{Y: 1e-3})}, false},
		"with room": {grown(best, 0.5), true},
	} {
		if got := cheapestOf(light8(size, 0), PlaceOptions{Area: c.area, Gap: 1})[0]; got.On != c.want {
			t.Errorf("%s the area: stands %v", name, got.On)
		}
	}
}

// A leader leaves its box two mm inside the ends of its upper or lower side, or from a side that faces the anchor, and
// ends where it meets the body.
func TestWhereLeadersLeave(t *testing.T) {
	s := newSolver([]Label{light8(r2.Vec{X: 20, Y: 5}, 60)}, PlaceOptions{Area: wide, Gap: 1})
	for name, c := range map[string]struct {
		box      r2.Box
		from, to r2.Vec
	}{
		"level, right":      {r2.Box{Min: r2.Vec{X: 120, Y: 98}, Max: r2.Vec{X: 140, Y: 103}}, r2.Vec{X: 120, Y: 100}, r2.Vec{X: 104, Y: 100}},
		"level, left":       {r2.Box{Min: r2.Vec{X: 60, Y: 98}, Max: r2.Vec{X: 80, Y: 103}}, r2.Vec{X: 80, Y: 100}, r2.Vec{X: 96, Y: 100}},
		"straight over":     {r2.Box{Min: r2.Vec{X: 90, Y: 120}, Max: r2.Vec{X: 110, Y: 125}}, r2.Vec{X: 100, Y: 120}, r2.Vec{X: 100, Y: 102}},
		"straight under":    {r2.Box{Min: r2.Vec{X: 90, Y: 75}, Max: r2.Vec{X: 110, Y: 80}}, r2.Vec{X: 100, Y: 80}, r2.Vec{X: 100, Y: 98}},
		"over to the right": {r2.Box{Min: r2.Vec{X: 118, Y: 120}, Max: r2.Vec{X: 138, Y: 125}}, r2.Vec{X: 120, Y: 120}, r2.Vec{X: 102, Y: 102}},
		"under to the left": {r2.Box{Min: r2.Vec{X: 62, Y: 75}, Max: r2.Vec{X: 82, Y: 80}}, r2.Vec{X: 80, Y: 80}, r2.Vec{X: 98, Y: 98}},
		"a narrow box over": {r2.Box{Min: r2.Vec{X: 119, Y: 120}, Max: r2.Vec{X: 123, Y: 125}}, r2.Vec{X: 120, Y: 120}, r2.Vec{X: 102, Y: 102}},
	} {
		if got := s.leader(0, c.box); r2.Norm(r2.Sub(got[0], c.from)) > 1e-9 || r2.Norm(r2.Sub(got[1], c.to)) > 1e-9 {
			t.Errorf("%s: from %v to %v, want %v to %v", name, got[0], got[1], c.from, c.to)
		}
	}
	for off, want := range map[float64]bool{1: false, 1.4: false, 1.6: true, 5: true} { // one and a half gaps
		leader := s.leader(0, r2.Box{Min: r2.Vec{X: 104 + off, Y: 98}, Max: r2.Vec{X: 124 + off, Y: 103}})
		if got := leader[0] != leader[1]; got != want {
			t.Errorf("%g mm off the body: leads %v", off, got)
		}
	}
}

// A leader crosses no body of another, but may cross one that overlaps its own; a hard obstacle for leaders closes
// the way, and one with a price adds it.
func TestTheWayOfALeader(t *testing.T) {
	leader := [2]r2.Vec{{X: 130, Y: 100}, {X: 104, Y: 100}}
	body := func(x, y float64) Label { return Label{Body: boxAround(r2.Vec{X: x, Y: y}, r2.Vec{X: 4, Y: 4})} }
	across := func(cost float64, leaders bool) Obstacle {
		return Obstacle{Outline: []r2.Vec{{X: 115, Y: 90}, {X: 116, Y: 110}}, Cost: cost, Leaders: leaders}
	}
	for name, c := range map[string]struct {
		other    Label
		obstacle Obstacle
		cost     float64
		free     bool
	}{
		"nothing":                    {body(10, 10), Obstacle{}, 0, true},
		"another's body":             {body(117, 101), Obstacle{}, 0, false},
		"beside another's body":      {body(117, 103), Obstacle{}, 0, true},
		"a body on its own":          {body(105, 100), Obstacle{}, 0, true},
		"an obstacle for leaders":    {body(10, 10), across(0, true), 0, false},
		"one with a price":           {body(10, 10), across(7, true), 7, true},
		"one that only labels mind":  {body(10, 10), across(0, false), 0, true},
		"one that labels mind, dear": {body(10, 10), across(7, false), 0, true},
	} {
		s := newSolver([]Label{light8(r2.Vec{X: 20, Y: 5}, 60), c.other}, PlaceOptions{Area: wide, Gap: 1, Obstacles: []Obstacle{c.obstacle}})
		if cost, free := s.leaderWay(0, leader); free != c.free || cost != c.cost {
			t.Errorf("%s: costs %g, free %v", name, cost, free)
		}
	}
}

// Two candidates are in conflict where a box lies within the gap of the other, a leader runs within half a gap of the
// other's box, or their leaders cross; one off the map never is. Which is asked first does not matter.
func TestConflicts(t *testing.T) {
	const gap = 2
	at := func(x, y float64, leader ...r2.Vec) candidate {
		c := candidate{Placement: Placement{On: true, Box: boxAround(r2.Vec{X: x, Y: y}, r2.Vec{X: 10, Y: 4})}}
		copy(c.Leader[:], leader)
		c.limits = r2.Box{Min: r2.Vec{X: -1e3, Y: -1e3}, Max: r2.Vec{X: 1e3, Y: 1e3}}
		return c
	}
	a := at(50, 50)
	led := at(90, 50, r2.Vec{X: 85, Y: 50}, r2.Vec{X: 70, Y: 60})
	for name, c := range map[string]struct {
		a, b candidate
		want bool
	}{
		"the same":                   {a, a, true},
		"closer than the gap":        {a, at(61.9, 50), true},
		"just the gap apart":         {a, at(62, 50), false},
		"over it, closer":            {a, at(50, 55.9), true},
		"over it, the gap apart":     {a, at(50, 56), false},
		"no leaders, far":            {a, at(90, 50), false},
		"a leader past the box":      {at(84, 62), led, false},
		"a leader near the box":      {at(83, 57.5), led, true},
		"leaders that cross":         {led, at(70, 44, r2.Vec{X: 72, Y: 46}, r2.Vec{X: 80, Y: 60}), true},
		"leaders that do not":        {led, at(70, 40, r2.Vec{X: 72, Y: 42}, r2.Vec{X: 74, Y: 50}), false},
		"one of them off the map":    {a, candidate{}, false},
		"a leader over the corner":   {at(-30, 4, r2.Vec{X: -25, Y: 3}, r2.Vec{X: 40, Y: -5}), at(50, 50), false},
		"a leader through a far box": {at(50, 90, r2.Vec{X: 50, Y: 88}, r2.Vec{X: 50, Y: 20}), a, true},
	} {
		if got, back := inConflict(&c.a, &c.b, gap), inConflict(&c.b, &c.a, gap); got != c.want || back != c.want {
			t.Errorf("%s: in conflict %v, and the other way %v", name, got, back)
		}
	}
	far := at(61, 50)
	far.limits = r2.Box{Min: r2.Vec{X: 500, Y: 500}, Max: r2.Vec{X: 501, Y: 501}}
	near := at(50, 50)
	near.limits = grown(near.Box, gap)
	if inConflict(&near, &far, gap) {
		t.Error("candidates whose limits are apart are in conflict")
	}
}
