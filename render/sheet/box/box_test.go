package box

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// A box round points leaves out what is not finite, and one of nothing is a square of 2 m about the origin.
func TestGatherer(t *testing.T) {
	g := Bounds{}
	if b := g.Box(); b != Of(-1, -1, 1, 1) {
		t.Errorf("the box of nothing is %v", b)
	}
	g.All([]r2.Vec{At(1, 2), At(math.NaN(), 0), At(3, 1), At(0, math.Inf(1))}, 0.5)
	if b := g.Box(); b != Of(0.5, 0.5, 3.5, 2.5) || Width(b) != 3 || Height(b) != 2 {
		t.Errorf("the box is %v", b)
	}
}

// A ring holds what lies inside it, in the arms of an L too and not in its notch.
func TestInRing(t *testing.T) {
	ring := []r2.Vec{At(0, 0), At(4, 0), At(4, 1), At(1, 1), At(1, 3), At(0, 3)}
	for p, want := range map[r2.Vec]bool{At(0.5, 2): true, At(3, 0.5): true, At(2, 2): false, At(-1, 0.5): false, At(5, 0.5): false} {
		if got := InRing(ring, p); got != want {
			t.Errorf("%v in the ring: %v, want %v", p, got, want)
		}
	}
}

// Turning a box by a quarter swaps its sides, and boxes share what both hold.
func TestTurnedAndCommon(t *testing.T) {
	g := Bounds{}
	g.All(ink.TurnedBox(At(1, 1), At(4, 2), 90), 0)
	if b := g.Box(); !(math.Abs(Width(b)-2) <= 1e-12) || !(math.Abs(Height(b)-4) <= 1e-12) {
		t.Errorf("turned it is %v", b)
	}
	if b, ok := Intersection(Of(0, 0, 2, 2), Of(1, -1, 3, 1)); !ok || b != Of(1, 0, 2, 1) {
		t.Errorf("they share %v, %v", b, ok)
	}
	if _, ok := Intersection(Of(0, 0, 1, 1), Of(1, 0, 2, 1)); ok {
		t.Error("boxes side by side share something")
	}
}
