package review_test

import (
	"fmt"
	"math"
	"testing"

	"scrimshaw/plan/review"
)

// dusk is a white card before a window, and a wall behind that which a lamp lights so much, cd; the card has so much light.
func dusk(card, wall float64) string {
	return fmt.Sprintf(`rooms: {den: {size: [4, 4]}}
openings: {sea: {window: den.top, width: 1.6, along: centre}}
furniture: {wall: {box: [6, 0.2, 3], at: [2, 6], material: white}}
cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}
grip: {board: {card: [0.4, 0.4], at: [2.6, 0.9], height: 1.5, faces: 0}}
lights:
  k: {output: {candela: %.9g, shape: uniform}, at: [2.6, 1.4], height: 2.3, aim: down, seen: true}
  l: {output: {candela: %.9g, shape: uniform}, at: [3.6, 5], height: 2.4, aim: wall, seen: true}
`, card, wall)
}

// toldInGlass says whether a review of a scene warns of the card in glass.
func toldInGlass(t *testing.T, text string) bool {
	t.Helper()
	s := lit(t, text)
	for _, d := range review.Check(s.Setup, &s.Readings) {
		if d.Code == review.CodeInGlass && d.Path == "grip.board" {
			return true
		}
	}
	return false
}

// lastTold is, by halving, up to which strength of a lamp a review warns, or from which.
func lastTold(t *testing.T, low, high float64, scene func(candela float64) string) float64 {
	t.Helper()
	first := toldInGlass(t, scene(low))
	if toldInGlass(t, scene(high)) == first {
		t.Fatalf("a review says the same at %g cd and at %g cd", low, high)
	}
	for high/low > 1.005 {
		if middle := math.Sqrt(low * high); toldInGlass(t, scene(middle)) == first {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// A review warns of what shows in glass up to where the view behind it is ten times as bright, and from 8 stops under white on.
func TestWhenGlassIsTold(t *testing.T) {
	wall := lastTold(t, 100, 1e6, func(candela float64) string { return dusk(300, candela) })
	for part, told := range map[float64]bool{0.99: true, 1.01: false} {
		s := lit(t, dusk(300, part*wall))
		for i := range s.Readings.Reflections {
			r := &s.Readings.Reflections[i]
			if r.Name != "board" {
				continue
			}
			if ratio := r.Behind / r.Luminance; (ratio < 10) != told || math.Abs(ratio/10-1) > 0.02 {
				t.Errorf("told %t where the view is %.3f times as bright", told, ratio)
			}
		}
	}
	card := lastTold(t, 0.01, 300, func(candela float64) string { return dusk(candela, 0.001) })
	s := lit(t, dusk(card, 0.001))
	x := s.Setup.Cameras[0].Exposure
	for i := range s.Readings.Reflections {
		if r := &s.Readings.Reflections[i]; r.Name == "board" {
			if white := x.Metered().SpotOver(r.Luminance, x.Stop.N) + math.Log2(0.18); math.Abs(white+8) > 0.01 {
				t.Errorf("told up to %.3f stops from white", white)
			}
		}
	}
}
