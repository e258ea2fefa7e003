package frame_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/frame"
)

// A thing is kept from being moved by what is in the way of its head, and of its post level with the floor; by the height of its stand, and by
// the outline of its room. It is not moved to where a camera rolls, though it may stand there, or pass there; and a camera may.
func TestWhatKeepsThingsWhereTheyAre(t *testing.T) {
	s := resolvedText(t, `rooms: {den: {size: [6, 5], height: 4}}
openings: {way: {gap: den.right, along: 3, width: 1.2, head: 2.6}}
furniture: {low: {box: [0.4, 0.4, 1], at: [2, 3.5]}, high: {box: [0.4, 0.4, 0.3], at: [3, 2.5], lift: 1.75}}
cameras: {A: {track: [[1, 0.9], [5, 0.9]], height: 1.4, lens: 28 mm, looks: 0}, B: {at: [5, 4.5], height: 1.4, looks: 180, lens: 28 mm}}
lights:
  k: {output: {candela: 100, shape: uniform}, at: [3, 3.5], height: 1.9, stand: light-stand, aim: 270}
  free: {output: {candela: 100, shape: uniform}, at: [5, 1.4], height: 1.9, mount: hand, aim: 270}
  rolled: {output: {candela: 100, shape: uniform}, at: [2, 1.2], height: 2.2, stand: light-stand, aim: 270}
`)
	const rails = 0.62/2 + 0.2 // m from the middle of a track, within which what stands is in the way of a camera
	const leaves, high = "it leaves its room there", "its stand goes no higher"
	for _, c := range []struct {
		kind frame.Kind
		name string
		by   r3.Vec
		why  string
		free bool
	}{
		{frame.Light, "k", r3.Vec{Y: 0.5}, "", true},
		{frame.Light, "k", r3.Vec{X: -2}, "low is in its way", false}, // its head passes over that, its post does not
		{frame.Light, "free", r3.Vec{X: -3, Y: 2.6}, "", true},
		{frame.Light, "free", r3.Vec{X: -3, Y: 1.65}, "high is in its way", false},
		{frame.Light, "k", r3.Vec{Z: 0.699}, "", true}, // the stand goes up to 2.6 m
		{frame.Light, "k", r3.Vec{Z: 0.701}, high, false},
		{frame.Light, "free", r3.Vec{Z: 1.5}, "", true}, // a hand goes up with what it holds
		{frame.Light, "k", r3.Vec{Z: -0.5}, "", true},
		{frame.Light, "free", r3.Vec{X: 2}, leaves, false},
		{frame.Light, "free", r3.Vec{X: 1.1}, "", true}, // in the gap it has not left
		{frame.Light, "k", r3.Vec{Y: 3}, "den.top is in its way", false},
		{frame.Light, "rolled", r3.Vec{X: 0.5}, "", true},
		{frame.Light, "k", r3.Vec{X: 1.5, Y: 0.9 + rails + 0.01 - 3.5}, "", true},
		{frame.Light, "k", r3.Vec{X: 1.5, Y: 0.9 + rails - 0.01 - 3.5}, "", false},
		{frame.Light, "k", r3.Vec{X: 1.5, Y: 0.9 - rails - 0.01 - 3.5}, "", true},
		{frame.Camera, "B", r3.Vec{X: -1, Y: -3.6}, "", true},
	} {
		why, free := frame.Keeps(s, c.kind, c.name, c.by)
		if why != c.why || free != c.free {
			t.Errorf("%s by %v: %q, free: %v; want %q, %v", c.name, c.by, why, free, c.why, c.free)
		}
	}
}
