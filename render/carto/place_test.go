package carto

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// crowd is a plan on A4 with n lights and half as many readings, walls, and lines to keep off.
func crowd(seed rng, n int) (labels []Label, opts PlaceOptions) {
	r := &seed
	opts = PlaceOptions{Area: r2.Box{Max: r2.Vec{X: 190, Y: 190}}, Gap: 1}
	for range 6 {
		a := r2.Vec{X: r.between(10, 180), Y: r.between(10, 180)}
		b := r2.Vec{X: r.between(0, 190), Y: r.between(0, 190)}
		opts.Obstacles = append(opts.Obstacles,
			Obstacle{Outline: ink.TurnedBox(a, r2.Vec{X: r.between(20, 80), Y: 3}, r.between(0, 180))},
			Obstacle{Outline: []r2.Vec{a, b}, Cost: 5, Leaders: true})
	}
	for i := range n {
		at := r2.Vec{X: r.between(20, 170), Y: r.between(20, 170)}
		l := Label{Anchor: at, Body: boxAround(at, r2.Vec{X: 6, Y: 5}), Forms: []Form{
			{Size: r2.Vec{X: 28, Y: 8}, Leader: 60}, {Size: r2.Vec{X: 16, Y: 4.5}, Leader: 60}, {Size: r2.Vec{X: 5, Y: 4}, Leader: 80},
		}}
		if r.next() < 0.5 {
			l.Toward = &r2.Vec{X: 0.6, Y: 0.8}
		}
		labels = append(labels, l)
		if i%2 == 0 {
			spot := r2.Vec{X: r.between(20, 170), Y: r.between(20, 170)}
			labels = append(labels, spotReading(spot, 1.6, r2.Vec{X: 14, Y: 3}, r2.Vec{X: 8, Y: 3}))
		}
	}
	return labels, opts
}

// faults lists what is wrong with where labels stand.
func faults(labels []Label, opts PlaceOptions, placed []Placement) (out []string) {
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for i, p := range placed {
		if !p.On {
			if p.Form != len(labels[i].Forms) {
				say("label %d is off the map on form %d", i, p.Form)
			}
			continue
		}
		if size, got := labels[i].Forms[p.Form].Size, r2.Sub(p.Box.Max, p.Box.Min); r2.Norm(r2.Sub(size, got)) > 1e-9 {
			say("label %d has a box of %v, want %v", i, got, size)
		}
		a := opts.Area
		if p.Box.Min.X < a.Min.X || p.Box.Min.Y < a.Min.Y || p.Box.Max.X > a.Max.X || p.Box.Max.Y > a.Max.Y {
			say("label %d leaves the area", i)
		}
		for j, other := range placed {
			if j == i || !other.On {
				continue
			}
			if boxesOverlap(p.Box, other.Box) {
				say("labels %d and %d overlap", i, j)
			}
			if p.Leads() && Overlap(p.Leader[:], BoxOutline(other.Box)) {
				say("the leader of %d runs through label %d", i, j)
			}
			if p.Leads() && other.Leads() && cross(p.Leader[0], p.Leader[1], other.Leader[0], other.Leader[1]) {
				say("the leaders of %d and %d cross", i, j)
			}
		}
		for j, l := range labels {
			if boxesOverlap(p.Box, l.Body) {
				say("label %d covers what %d is about", i, j)
			}
		}
		for _, o := range opts.Obstacles {
			if o.Cost == 0 && Overlap(BoxOutline(p.Box), o.Outline) {
				say("label %d covers an obstacle", i)
			}
		}
	}
	return out
}

func TestCrowdedSheetsHaveNoOverlaps(t *testing.T) {
	var forms [5]int
	scenes := 200
	if testing.Short() {
		scenes = 20
	}
	for seed := range rng(scenes) {
		labels, opts := crowd(seed, 40)
		opts.Rounds = 20 // enough to show what it keeps; the default only finds better places
		placed := Place(labels, opts)
		for _, f := range faults(labels, opts, placed) {
			t.Errorf("scene %d: %s", seed, f)
		}
		for i, p := range placed {
			if len(labels[i].Forms) == 3 {
				forms[p.Form]++
			}
		}
	}
	t.Logf("of %d tags on A4: %d full, %d short, %d numbers, %d in the table", 40*scenes, forms[0], forms[1], forms[2], forms[3])
	if forms[3]*50 > 40*scenes {
		t.Errorf("%d of %d tags fell to the table, want one in fifty at most", forms[3], 40*scenes)
	}
}

func TestALooseSheetKeepsFullTags(t *testing.T) {
	for seed := range rng(10) {
		labels, opts := crowd(seed, 8)
		for i, p := range Place(labels, opts) {
			if p.Form != 0 {
				t.Errorf("scene %d: label %d of 12 fell to form %d", seed, i, p.Form)
			}
		}
	}
}

func TestSearchIsNoWorseThanGreed(t *testing.T) {
	better := 0
	for seed := range rng(10) {
		labels, opts := crowd(seed, 40)
		greedy := newSolver(labels, opts)
		greedy.greedy()
		s := newSolver(labels, opts)
		s.greedy()
		s.anneal()
		s.descend()
		if s.total() > greedy.total() {
			t.Errorf("scene %d: the search ends at %.0f, greed at %.0f", seed, s.total(), greedy.total())
		}
		if s.total() < 0.95*greedy.total() {
			better++
		}
	}
	if better < 5 {
		t.Errorf("the search is better by a twentieth in %d of 10 scenes only", better)
	}
}

func TestPlacesAreTheSameEachTime(t *testing.T) {
	labels, opts := crowd(5, 40)
	first := Place(labels, opts)
	if !reflect.DeepEqual(first, Place(labels, opts)) {
		t.Error("two runs differ")
	}
}

func TestTheLadder(t *testing.T) {
	at := r2.Vec{X: 10, Y: 10}
	label := Label{Anchor: at, Body: boxAround(at, r2.Vec{X: 4, Y: 4}), Forms: []Form{{Size: r2.Vec{X: 30, Y: 8}}, {Size: r2.Vec{X: 12, Y: 4}}, {Size: r2.Vec{X: 4, Y: 3}}}}
	for width, want := range map[float64]int{60: 0, 30: 1, 18.5: 2, 14: 3} {
		p := Place([]Label{label}, PlaceOptions{Area: r2.Box{Min: r2.Vec{X: 6, Y: 6}, Max: r2.Vec{X: width, Y: 14}}})[0]
		if p.Form != want || p.On != (want < 3) {
			t.Errorf("in %g mm: form %d, want %d", width, p.Form, want)
		}
	}
	if got := Place(nil, PlaceOptions{}); len(got) != 0 {
		t.Errorf("no labels, %d placements", len(got))
	}
	if got := Place([]Label{{Anchor: at}}, PlaceOptions{}); got[0].On || got[0].Form != 0 {
		t.Errorf("a label without forms: %+v, want it in the table", got[0])
	}
}

func TestLeadersPointAtTheirBody(t *testing.T) {
	// A wall all round the light, so that the tag must stand off.
	at := r2.Vec{X: 50, Y: 50}
	label := Label{Anchor: at, Body: boxAround(at, r2.Vec{X: 4, Y: 4}), Forms: []Form{{Size: r2.Vec{X: 20, Y: 6}, Leader: 40}}}
	wall := Obstacle{Outline: BoxOutline(boxAround(at, r2.Vec{X: 16, Y: 16}))}
	p := Place([]Label{label}, PlaceOptions{Area: r2.Box{Max: r2.Vec{X: 100, Y: 100}}, Obstacles: []Obstacle{wall}})[0]
	if !p.Leads() {
		t.Fatalf("no leader: %+v", p)
	}
	end, start := p.Leader[1], p.Leader[0]
	if d := Distance(end, clampTo(end, label.Body), end); d > 1e-9 || clampTo(end, boxAround(at, r2.Vec{X: 3.9, Y: 3.9})) == end {
		t.Errorf("the leader ends at %v, not on the rim of the body", end)
	}
	if clampTo(start, p.Box) != start {
		t.Errorf("the leader starts at %v, off the box %v", start, p.Box)
	}
	if turn(start, end, at) > 1e-6 {
		t.Errorf("the leader does not point at the anchor")
	}
}

func BenchmarkPlace(b *testing.B) {
	labels, opts := crowd(1, 40)
	b.ReportAllocs()
	for b.Loop() {
		Place(labels, opts)
	}
}

// The first clear place of a label, and who stands in its way, are what asking every pair of labels gives, whatever has been
// moved and taken back; also of labels with more places than a word has bits.
func TestClearAsAllConflicts(t *testing.T) {
	r := rng(8)
	var labels []Label
	for range 80 {
		at := r2.Vec{X: r.between(10, 150), Y: r.between(10, 90)}
		size := r2.Vec{X: r.between(8, 30), Y: r.between(3, 8)}
		labels = append(labels, Label{Anchor: at, Body: boxAround(at, r2.Vec{X: 3, Y: 3}), Forms: []Form{{Size: size, Leader: 60}}})
	}
	s := newSolver(labels, PlaceOptions{Area: r2.Box{Max: r2.Vec{X: 160, Y: 100}}})
	s.greedy()
	passed, far := 0, 0
	for range 2000 {
		i := int(s.random() * float64(len(labels)))
		before := slices.Clone(s.at)
		s.move(i, int(s.random()*float64(len(s.choices[i]))))
		if s.random() < 0.5 {
			if s.undo(); !slices.Equal(s.at, before) {
				t.Fatalf("%v after all was taken back, want %v", s.at, before)
			}
		}
		i = int(s.random() * float64(len(labels)))
		meets := func(c *candidate) (those []int) {
			for j := range labels {
				if j != i && inConflict(c, s.now(j), s.opts.Gap) {
					those = append(those, j)
				}
			}
			return those
		}
		want := slices.IndexFunc(s.choices[i], func(c candidate) bool { return len(meets(&c)) == 0 })
		if got := s.cheapest(i); got != want {
			t.Fatalf("label %d finds place %d clear, want %d", i, got, want)
		}
		if got, want := s.conflicts.conflicting(i, s.at), meets(s.now(i)); !slices.Equal(got, want) {
			t.Fatalf("%v are in the way of label %d, want %v", got, i, want)
		}
		passed += min(want, 1)
		if s.at[i] >= 64 {
			far++
		}
	}
	if passed < 200 || passed > 1800 || far < 20 {
		t.Errorf("%d of 2000 labels cannot take their first place, %d stand at a place past a word: the scene tells nothing", passed, far)
	}
}

// Few labels get all rounds; a crowd shares moves, and each label of a multitude still gets some.
func TestRoundsOfACrowd(t *testing.T) {
	for labels, want := range map[int]int{50: 50 * 600, 60: 36000, 1000: 36000, 2000: 60000} {
		if got := (&solver{labels: make([]Label, labels), opts: PlaceOptions{Rounds: 600}}).rounds(); got != want {
			t.Errorf("%d moves of %d labels, want %d", got, labels, want)
		}
	}
}
