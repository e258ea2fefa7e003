package resolve

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/source"
)

// A camera stands where its track starts, keeps its height and looks at what it looks at all along; by a bearing it keeps its direction.
func TestTracks(t *testing.T) {
	s := resolved(t, `
rooms: {den: {size: [6, 5]}}
people: {ada: {at: [3, 4]}}
cameras:
  A: {track: [[1, 1], {from: A, shift: [2, 0]}, {by: ada, toward: A, distance: 1.5}], lens: 35 mm}
  B: {at: [5, 1], track: [[5.005, 1], [5, 1], [5, 3]], looks: 0, height: 1.2, lens: 35 mm}
`)
	a, b := &s.Cameras[0], &s.Cameras[1]
	if got := a.Track.Corners; len(got) != 3 || got[0] != (r2.Vec{X: 1, Y: 1}) || r2.Norm(r2.Sub(got[1], r2.Vec{X: 3, Y: 1})) > 1e-9 || !(math.Abs(r2.Norm(r2.Sub(got[2], r2.Vec{X: 3, Y: 4}))-1.5) <= 1e-9) {
		t.Errorf("A moves by %v", got)
	}
	if got := b.Track.Corners; len(got) != 2 || got[0] != (r2.Vec{X: 5, Y: 1}) || got[1] != (r2.Vec{X: 5, Y: 3}) || b.Track.Length() != 2 {
		t.Errorf("B moves by %v", got)
	}
	face := s.People[0].Face.At
	for _, along := range []float64{0, 0.7, 2, 2.5} {
		at := a.OnTrack(along).Frame
		if r3.Norm(r3.Cross(at.Axis, r3.Unit(r3.Sub(face, at.At)))) > 1e-9 || at.At.Z != a.Frame.At.Z {
			t.Errorf("%g m along A is %+v", along, at)
		}
		if is := b.OnTrack(along).Frame; is.Axis != b.Frame.Axis || is.At.Z != b.Frame.At.Z {
			t.Errorf("%g m along B is %+v", along, is)
		}
	}
}

// A camera that stays keeps its track, and looks where it looked, even once whom it looked at is elsewhere; a track of the set-up's own holds.
func TestTracksThatStay(t *testing.T) {
	log := &source.Log{}
	all := ResolveAll(opened(t, `
rooms: {den: {size: [6, 5]}}
people: {ada: {at: [3, 3.8], faces: 180}}
cameras: {A: {track: [{from: ada, shift: [-1, -2.6]}, [4, 1]], lens: 40 mm}}
setups:
  one: {}
  stays: {after: one, stays: [A], change: {people: {ada: {at: [2, 3.5]}}}}
  goes: {after: one, change: {people: {ada: {at: [2, 3.5]}}}}
  other: {after: one, stays: [A], change: {people: {ada: {at: [2, 3.5]}}, cameras: {A: {track: [[2, 1.2], [2, 2]]}}}}
  turned: {after: one, stays: [A], change: {people: {ada: {at: [2, 3.5]}}, cameras: {A: {looks: ada}}}}
`, log), nil, log)
	if log.Failed() {
		t.Fatal(log.All())
	}
	was, face := all[0].Cameras[0].Track, all[1].People[0].Face.At
	for i, want := range map[int]struct {
		start, end r2.Vec
		aim        r3.Vec
	}{
		1: {was.Corners[0], was.Corners[1], *was.Aim}, 2: {r2.Vec{X: 1, Y: 0.9}, was.Corners[1], face},
		3: {was.Corners[0], r2.Vec{X: 2, Y: 2}, *was.Aim}, 4: {was.Corners[0], was.Corners[1], face},
	} {
		got := all[i].Cameras[0].Track
		if got == nil || r2.Norm(r2.Sub(got.Corners[0], want.start)) > 1e-9 || r2.Norm(r2.Sub(got.Corners[len(got.Corners)-1], want.end)) > 1e-9 || got.Aim == nil || r3.Norm(r3.Sub(*got.Aim, want.aim)) > 1e-9 {
			t.Errorf("in %s the track is %+v, want %+v", all[i].Name, got, want)
		}
	}
}

// What no camera can follow is refused, with the fix, and the message names what is in the way of one.
func TestTrackFaults(t *testing.T) {
	const room = "rooms: {den: {size: [6, 5]}}\npeople: {ada: {at: [3, 4], faces: 180}}\n"
	camera := func(track string) string {
		return room + "cameras: {A: {" + track + ", looks: 0, height: 1.4, lens: 35 mm}}\n"
	}
	for _, c := range []struct{ name, scene, want string }{
		{"a free track", camera("track: [[1, 1], [3, 1]]"), ""},
		{"neither", camera("room: 5 %"), `error missing-key a camera needs "at" [add at: [3.3, 0.5]]`},
		{"nowhere", camera("track: [[1, 1], [1, 1]]"), "error no-track the track of A goes nowhere [write two places that differ, or leave the track out]"},
		{"elsewhere", camera("at: [1, 1.5], track: [[1, 1], [3, 1]]"), "error track-start the track of A starts at [1, 1], and A stands at [1, 1.5] [start the track at [1, 1.5], or leave at out]"},
		{"too long", camera("track: [[1, 1], [61, 1]]"), "error track-long the track of A is 60.00 m long, and a track may be 50.00 m [leave out what is not in the shot, or make set-ups of its parts]"},
		{"by nobody", camera("track: [[1, 1], {from: adda, shift: [0, 1]}]"), "error unknown-name nothing is called adda [did you mean \"ada\"?]"},
		{"through whom it looks at", room + "cameras: {A: {track: [[3, 1], [3, 3.9]], lens: 35 mm}}", "error no-aim the track of A leads through the point that it looks at [lead the track round it, or look at something else]"},
		{"through somebody", room + "cameras: {A: {track: [[3, 1], [3, 4.5]], height: 1.4, looks: 0, lens: 35 mm}}", "warning track-through the track of A leads through ada, from 2.87 m to 3.13 m along it [lead it round ada]\n" +
			"warning camera-turned ada is behind A at the end [turn it: looks: ada]"},
		{"through furniture", camera("track: [[1, 1], [4, 1]]") + "furniture: {chest: {box: [1, 1, 0.5], at: [2.5, 1.4]}}", "warning track-through the track of A leads through chest, from 1.00 m to 2.00 m along it [lead it round chest]"},
		{"through a door that stands open as far as it goes", camera("track: [[4, 1], [1, 1]]") + "openings: {d: {door: den.bottom, along: 3, width: 1.2, swing: in, ajar: 90}}",
			"error track-through the track of A leads through d, from 1.00 m to 1.04 m along it [lead it past the leaf of d]"},
		{"under nothing that reaches down", camera("track: [[1, 1], [4, 1]]") + "furniture: {shelf: {box: [1, 1, 0.3], at: [2.5, 1.4], lift: 1.8}}", ""},
		{"over a carpet", camera("track: [[1, 1], [4, 1]]") + "furniture: {carpet: {box: [1, 1, 0.02], at: [2.5, 1.4]}}", ""},
		{"into a wall", camera("track: [[1, 1], [6.1, 1]]"), "error track-through the track of A leads through den.right, from 5.00 m to 5.10 m along it [lead it through a door or a gap]"},
		{"with a stand on it", camera("track: [[1, 1], [4, 1]]") + "lights: {k: {output: {candela: 9, shape: uniform}, at: [2, 1.6], height: 2, aim: down}}",
			"warning on-track the stand of 1 k stands on the track of A, 1.00 m along it: 0.23 m into the ground that the rails take [move it 0.29 m away from the rails, or hang it]"},
		{"with a lamp over it", camera("track: [[1, 1], [4, 1]]") + "lights: {k: {output: {candela: 9, shape: uniform}, at: [2, 1.6], height: 2.2, aim: down, mount: {wall: den.bottom}}}", ""},
		{"with a flag on it", camera("track: [[1, 1], [4, 1]]") + "grip: {f: {flag: [1, 1], at: [2, 1.2], height: 2, faces: 0}}",
			"warning on-track the stand of G1 f stands on the track of A, 1.00 m along it: 0.64 m into the ground that the rails take [move it 0.69 m away from the rails, or hang it]"},
		{"with a walk across it", "rooms: {den: {size: [6, 5]}}\npeople: {ada: {at: [3, 4], faces: 180, walk: [[3, 4], [3, 0.5]]}}\ncameras: {A: {track: [[1, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}}",
			"info walk-track the walk of ada crosses the track of A, 3.00 m along the walk and 2.00 m along the track [time the two, or lead one of them round]"},
		{"from behind a wall", "rooms: {den: {size: [6, 5]}, hall: {at: [6.3, 0], size: [6, 5]}}\nopenings: {way: {gap: den.right, along: 3, width: 1.6, head: 2.1}}\npeople: {ada: {at: [3, 4], faces: 180}}\n" +
			"cameras: {A: {track: [[9, 1.2], [1, 1.2]], looks: {pan: 0, tilt: 0}, height: 1.4, lens: 35 mm}}",
			"warning camera-blocked A at the start cannot see ada: hall.left stands between [move the camera to where it sees a person, or open a door or a gap on the way]"},
		{"down a step", "rooms: {den: {size: [6, 5]}, hall: {at: [6.3, 0], size: [6, 5], base: -0.2}}\nopenings: {way: {gap: den.right, along: 3, width: 1.6, head: 2.1}}\npeople: {ada: {at: [3, 4], faces: 180}}\n" +
			"cameras: {A: {track: [[1, 1.2], [9, 1.2]], looks: {pan: 0, tilt: 0}, height: 1.4, lens: 35 mm}}",
			"warning camera-blocked A at the end cannot see ada: hall.left stands between [move the camera to where it sees a person, or open a door or a gap on the way]\n" +
				"warning track-uneven the floor under the track of A lies 0.20 m lower from about 5.30 m along it [build the rails up, or end the track before it]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := found(t, c.scene, ""); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// The line of action runs between two people who are there; a set-up that lacks one of them has none.
func TestLineOfAction(t *testing.T) {
	const people = "people: {ada: {at: [1, 1], marks: {sit: {at: [2, 3]}}}, noor: {at: [4, 1]}}\nfurniture: {desk: {table: [1, 1, 0.7], at: [2, 2]}}\n"
	for _, c := range []struct{ name, scene, setup, want string }{
		{"two people", people + "line: [ada, noor]", "", ""},
		{"one at a mark", people + "line: [ada.sit, noor]", "", ""},
		{"one of them struck", people + "line: [ada, noor]\nsetups: {wide: {}, close: {change: {people: {noor: strike}}}}", "close", ""},
		{"an unknown name", people + "line: [ada, nor]", "", "error unknown-name nothing is called nor [did you mean \"noor\"?]"},
		{"a thing", people + "line: [ada, desk]", "", "error wrong-thing desk is a piece of furniture, where a person or a mark belongs [there are ada, noor]"},
		{"the same name twice", people + "line: [ada, ada]", "", "error line-one the line of action runs from ada to ada: it needs two people [name another person, or leave the line out]"},
		{"somebody and a mark of theirs", people + "line: [ada.sit, ada]", "", "error line-one the line of action runs from ada.sit to ada: it needs two people [name another person, or leave the line out]"},
		{"one name", people + "line: [ada]", "", "error wrong-type a line of action has 2 values, not 1 [write it like [ada, noor]]"},
		{"one place", "people: {ada: {at: [1, 1]}, noor: {at: [1, 1]}}\nline: [ada, noor]", "", "warning in-solid ada stands in noor [move ada clear of noor]\nwarning in-solid noor stands in ada [move noor clear of ada]\nerror same-place ada and noor are in one place: no line runs between them [move one of them, or name a mark]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := found(t, c.scene, c.setup); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
	log := &source.Log{}
	doc := opened(t, people+"line: [ada.sit, noor]\ncameras: {A: {at: [3, 5], lens: 35 mm}, B: {at: [3, 0], lens: 35 mm}}\n"+
		"setups: {wide: {camera: A}, close: {camera: B}, last: {camera: A, change: {people: {noor: strike}}}}", log)
	for i, name := range []string{"wide", "close", "last"} {
		all := ResolveAll(doc, []string{name}, log)
		if log.Failed() || len(all) != 1 {
			t.Fatal(log.All())
		}
		s := all[0]
		if i == 2 {
			if s.Line != nil {
				t.Error("a line runs to somebody who is struck")
			}
			continue
		}
		if s.Line == nil || s.Line.Ends[0] != (r2.Vec{X: 2, Y: 3}) || len(s.Sides) != i || i == 1 && (s.Sides[0].Setup != "wide" || s.Sides[0].Camera != "A") {
			t.Errorf("%s: %+v, sides %v", name, s.Line, s.Sides)
		}
	}
}
