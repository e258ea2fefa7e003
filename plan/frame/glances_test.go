package frame_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// rollingBefore is a random scene with a mirror whose first camera rolls past it; nil where it has an error.
func rollingBefore(t *testing.T, seed int64) (s *staged, setup *plan.Setup) {
	t.Helper()
	s = mirrored(seed)
	s.items["cameras"] = s.items["cameras"][:1]
	c := s.items["cameras"][0]
	was := c.write
	c.write = func(i *item) string {
		return was(i) + fmt.Sprintf(", track: [[%.6f, %.6f], [%.6f, %.6f]]", i.at.X, i.at.Y, i.at.X+0.6, i.at.Y-0.5)
	}
	return s, laidOut(t, s)
}

// key names a reflection, of which a mirror with two sides has several.
func key(r *frame.Reflection) string { return fmt.Sprint(r.In, r.Kind, r.Name, r.Glass) }

// mostAlong is the most that each reflection takes from a camera that stands at places of its track, closer than it is looked from.
func mostAlong(setup *plan.Setup) map[string]float64 {
	most := map[string]float64{}
	long := setup.Cameras[0].Track.Length()
	const places = 15
	for i := range places + 1 {
		at := standing(setup, long*float64(i)/places)
		all := frame.InMirrors(at)
		for k := range all {
			most[key(&all[k])] = max(most[key(&all[k])], all[k].Share)
		}
	}
	return most
}

// What a camera sees in mirrors and panes from its track is the most of what it sees standing at places of it; a thing that is moved as is said shows from
// none of them any more.
func TestReflectionsAlongTracks(t *testing.T) {
	held, moves, away := 0, 0, 0
	for seed := int64(1); held < 3 || away == 0 && seed < 20; seed++ {
		s, setup := rollingBefore(t, seed)
		if setup == nil {
			continue
		}
		held++
		all, want := frame.Reflections(setup), mostAlong(setup)
		for i := range all {
			r := &all[i]
			if r.Kind == frame.Rails {
				continue // of one that stands there are none
			}
			const between = 0.1 // what a place between two of those may have more
			if got := want[key(r)]; r.Share < got*(1-between)-1e-5 && r.Along == 0 || r.Share > got*(1+between)+1e-5 {
				t.Errorf("seed %d: %s takes %.6f in %s at %.2f m, and standing %.6f at most", seed, r.Name, r.Share, r.In, r.Along, got)
			}
			if r.Along > 0 {
				away++
			}
			if m := r.Move; m != nil && (r.Kind == frame.Light || r.Kind == frame.Grip) && moves < 2 {
				moves++
				moved := laidOut(t, s.with(sections[r.Kind], s.find(sections[r.Kind], r.Name).moved(m.By)))
				if moved == nil {
					t.Errorf("seed %d: %s cannot be moved by %+v", seed, r.Name, m)
				} else if left := mostAlong(moved)[key(r)]; left > 1e-4 {
					t.Errorf("seed %d: %s still takes %.6f in %s after %+v", seed, r.Name, left, r.In, m)
				}
			}
		}
		for name, share := range want {
			if !slices.ContainsFunc(all, func(r frame.Reflection) bool { return key(&r) == name && r.Share > share*0.9-1e-5 }) && share > 1e-4 {
				t.Errorf("seed %d: %s takes %.6f standing, and rolling it is %v", seed, name, share, all)
			}
		}
	}
	if moves == 0 || away == 0 {
		t.Errorf("%d moves, %d not at the start: the scenes try too little", moves, away)
	}
}

// A move that is offered brings the thing into no other camera's picture; one that does says whose, and no other way is free of that.
func TestMovesAreJudgedByOtherCameras(t *testing.T) {
	clean, brought := 0, 0
	for seed := int64(1); clean < 8 || brought < 1; seed++ {
		s := stage(seed)
		setup := laidOut(t, s)
		if setup == nil || len(setup.Cameras) < 2 {
			continue
		}
		all := frame.Judge(setup)
		for i := range all {
			g := &all[i]
			if g.Move == nil || g.Kind != frame.Light && g.Kind != frame.Grip || clean >= 8 && g.Move.Clean() {
				continue
			}
			moved := laidOut(t, s.with(sections[g.Kind], s.find(sections[g.Kind], g.Name).moved(g.Move.By)))
			if moved == nil {
				continue
			}
			var names []string
			for _, is := range frame.Judge(moved) {
				if is.Kind == g.Kind && is.Name == g.Name && is.Camera != g.Camera && shownTo(&is, moved) && !shownTo(byCamera(all, &is), setup) {
					names = append(names, is.Camera)
				}
			}
			if clean++; !g.Move.Clean() {
				clean, brought = clean-1, brought+1
			}
			if !slices.Equal(names, g.Move.Brings) {
				t.Errorf("seed %d: %s moved by %+v shows to %v", seed, g.Name, g.Move, names)
			}
		}
		if seed > 400 {
			t.Fatalf("%d moves show to another camera in %d scenes", brought, seed)
		}
	}
}

// shownTo says whether a camera sees a thing in its picture or the margin about it.
func shownTo(s *frame.Sight, setup *plan.Setup) bool {
	return s.Shows() || s.Near(setup.CameraNamed(s.Camera))
}

// byCamera is what the same camera sees of the same thing.
func byCamera(all []frame.Sight, of *frame.Sight) *frame.Sight {
	for i := range all {
		if s := &all[i]; s.Camera == of.Camera && s.Kind == of.Kind && s.Name == of.Name {
			return s
		}
	}
	return &frame.Sight{Outside: math.Inf(1)}
}

// Somebody whom a camera should not see shows in a mirror at a mark, too, and the rolling camera sees itself where it comes before the glass.
func TestMirrorsShowMarksAndTheCameraItself(t *testing.T) {
	setup := resolvedText(t, "rooms: {den: {size: [4, 4]}}\nfurniture: {glass: {mirror: [0.6, 1.4], at: {wall: den.top, along: 2.9}, lift: 0.4}}\n"+
		"people: {ada: {at: [0.5, 0.5], faces: 0, seen: false, marks: {gap: {at: [3.6, 1.2], faces: 0}}}}\n"+
		"cameras: {A: {track: [[0.9, 1], [3.2, 1]], height: 1.4, looks: {pan: 0, tilt: 0}, lens: 35 mm}}\n")
	var gap, itself *frame.Reflection
	all := frame.Reflections(setup)
	for i := range all {
		switch r := &all[i]; {
		case r.Mark == "ada.gap":
			gap = r
		case r.Own():
			itself = r
		}
	}
	if gap == nil || itself == nil {
		t.Fatalf("%+v", all)
	}
	if before := r3.Norm(r3.Vec{X: 0.9 + itself.Along - 3.2}); before > 0.6 {
		t.Errorf("it sees itself most %.2f m along", itself.Along)
	}
}

// What a camera is pointed at by name is not to be moved out of its mirror or its picture, for it turns after that. One that is pointed there by a place
// keeps its direction. A cable lies as its ends do, in a mirror too.
func TestWhatACameraTurnsWithIsNotMoved(t *testing.T) {
	const text = `
rooms: {den: {size: [6, 5]}}
furniture: {glass: {mirror: [2, 1.8], at: {wall: den.left, along: 1.5}, lift: 0.4}}
cameras:
  A: {at: [3, 1.5], height: 1.4, looks: LOOKS, lens: 18 mm, sensor: full-frame}
  B: {at: [4, 0.5], height: 1.4, looks: LOOKS, lens: 85 mm}
grip: {board: {card: [0.6, 0.6], at: [1.4, 3.2], height: 1.2, faces: 90}}
circuits: {wall: {at: [0.2, 4.5], breaker: 16}}
lights: {key: {unit: led-panel-100, at: [3.4, 3.4], height: 1.6, aim: 90, circuit: wall}}
`
	for looks, moves := range map[string]bool{"board": false, "[1.4, 3.2, 1.2]": true} {
		setup := laidOut(t, &staged{set: strings.ReplaceAll(text, "LOOKS", looks)})
		if setup == nil {
			t.Fatal("a fault in the scene")
		}
		all := frame.Reflections(setup)
		board := reflected(t, all, "A", frame.Grip, "board")
		if (board.Move != nil) != moves || board.Turn == nil {
			t.Errorf("looks: %s: out of the mirror the board is moved by %+v, or that turned by %+v", looks, board.Move, board.Turn)
		}
		if lead := reflected(t, all, "A", frame.Cable, "key"); lead.Move != nil || lead.Turn == nil {
			t.Errorf("looks: %s: the cable is moved out of the mirror by %+v, or that turned by %+v", looks, lead.Move, lead.Turn)
		}
		for _, g := range frame.Judge(setup) {
			if g.Camera == "B" && g.Name == "board" && (!g.Shows() || (g.Move != nil) != moves) {
				t.Errorf("looks: %s: out of the picture the board is moved by %+v", looks, g.Move)
			}
		}
	}
}

// reflected is what a camera sees of a thing in some mirror.
func reflected(t *testing.T, all []frame.Reflection, camera string, kind frame.Kind, name string) *frame.Reflection {
	t.Helper()
	for i := range all {
		if r := &all[i]; r.Camera == camera && r.Kind == kind && r.Name == name {
			return r
		}
	}
	t.Fatalf("no mirror shows %s", name)
	return nil
}
