package resolve

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// sloped are closed rooms under sloping ceilings: rectangles, corners that turn in, walls askew, neighbours, a shut
// door.
var sloped = map[string]string{
	"a shed":         "rooms: {k: {size: [4, 3], height: {low: 1.2, high: 3.4, toward: right}}}",
	"steep":          "rooms: {k: {at: [0.3, 0.7], size: [2, 5], base: 0.35, height: {low: 0.5, high: 4.7, toward: top}}}",
	"an L":           "rooms: {k: {outline: [right 4, up 2, left 2, up 2, left 2, down 4], height: {low: 2, high: 3, toward: w2}}}",
	"a T":            "rooms: {k: {outline: [right 1.5, down 2, right 1.2, up 2, right 1.3, up 2, left 4, down 2], height: {low: 1.9, high: 3.3, toward: w7}}}",
	"askew":          "rooms: {k: {corners: [{a: [0, 0]}, {b: [4, -0.7]}, {c: [5.1, 2.9]}, {d: [1.3, 4.2]}], height: {low: 1.7, high: 3.1, toward: b-c}}}",
	"askew, turning": "rooms: {k: {corners: [{a: [0, 0]}, {b: [4, -0.7]}, {c: [5.1, 2.9]}, {d: [2.6, 1.9]}, {e: [1.3, 4.2]}], height: {low: 1.7, high: 3.1, toward: e-a}}}",
	"side by side": "rooms:\n  k: {size: [4, 3], height: {low: 1.8, high: 3, toward: right}}\n" +
		"  m: {at: [4.2, 0], size: [3, 3], height: {low: 1.6, high: 2.6, toward: top}}\n  n: {at: [0, 3.1], size: [4, 2], height: 2.2}",
	"a door": "rooms: {k: {size: [4, 3], height: {low: 2.1, high: 3, toward: right}}}\nopenings: {d: {door: k.top, along: 0.4, width: 0.8}}",
}

// No ray from the air of a room under a sloping ceiling leaves it, or meets a side that returns nothing.
func TestNothingLeavesUnderASlope(t *testing.T) {
	for name, text := range sloped {
		t.Run(name, func(t *testing.T) {
			s := resolved(t, text)
			bvh := solid.NewBVH(&s.Set)
			rng := rand.New(rand.NewPCG(71, 72))
			for range 100_000 {
				o := inAir(s, rng)
				up := 2*rng.Float64() - 1
				sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
				round := math.Sqrt(1 - up*up)
				d := r3.Vec{X: round * cos, Y: round * sin, Z: up}
				hit, ok := bvh.First(o, d, nil)
				if !ok || hit.Skin.Reflect == (colour.RGB{}) {
					t.Fatalf("a ray from %v along %v meets %+v", o, d, hit)
				}
			}
		})
	}
}

// inAir is a random place in the air of a room.
func inAir(s *plan.Setup, rng *rand.Rand) r3.Vec {
	for {
		room := &s.Rooms[rng.IntN(len(s.Rooms))]
		low, high := room.Inside[0], room.Inside[0]
		for _, c := range room.Inside {
			low, high = r2.Vec{X: min(low.X, c.X), Y: min(low.Y, c.Y)}, r2.Vec{X: max(high.X, c.X), Y: max(high.Y, c.Y)}
		}
		at := r3.Vec{
			X: low.X + rng.Float64()*(high.X-low.X), Y: low.Y + rng.Float64()*(high.Y-low.Y),
			Z: room.Base + rng.Float64()*(room.Top-room.Base),
		}
		if p := (r2.Vec{X: at.X, Y: at.Y}); room.Holds(p) && at.Z < room.CeilingAt(p)-1e-5 {
			return at
		}
	}
}
