package resolve

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// The largest scene that is let through takes a few seconds, not minutes: 500 rooms side by side,
// each with an opening, a flight of stairs, a person and a lamp.
func TestLargestSceneIsBounded(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	var rooms, openings, furniture, people, lights strings.Builder
	for i := range 500 {
		x, y := float64(i%25)*3.2, float64(i/25)*3.2
		fmt.Fprintf(&rooms, "  r%d: {at: [%g, %g], size: [3, 3]}\n", i, x, y)
		fmt.Fprintf(&openings, "  o%d: {gap: r%d.top, width: 1}\n", i, i)
		fmt.Fprintf(&furniture, "  f%d: {stairs: [1, 1, 1], steps: 10, at: [%g, %g]}\n", i, x+2, y+2)
		fmt.Fprintf(&people, "  p%d: {at: [%g, %g]}\n", i, x+1, y+1)
		fmt.Fprintf(&lights, "  l%d: {output: {candela: 9, shape: uniform}, at: [%g, %g], height: 2}\n", i, x+1, y+2)
	}
	text := "rooms:\n" + rooms.String() + "openings:\n" + openings.String() + "furniture:\n" + furniture.String() +
		"people:\n" + people.String() + "lights:\n" + lights.String()
	log := &source.Log{}
	doc := opened(t, text, log)
	s := doc.Scene("", log)
	start := time.Now()
	out := Resolve(doc, s, log)
	if took := time.Since(start); took > 60*time.Second {
		t.Errorf("took %v", took)
	} else {
		t.Logf("took %v", took)
	}
	if len(out.Rooms) != 500 || len(out.Lights) != 500 {
		t.Errorf("%d rooms, %d lights\n%.500s", len(out.Rooms), len(out.Lights), told(log))
	}
}

func TestMoreWallsThanAnySceneHas(t *testing.T) {
	var rooms []scene.Room
	for i := range 30 {
		ring := make([]r2.Vec, 100)
		for k := range ring {
			ring[k] = r2.Add(r2.Vec{X: float64(20 * i)}, r2.Scale(5, plane.Direction(-3.6*float64(k))))
		}
		rooms = append(rooms, cornerRoom(fmt.Sprintf("r%d", i), ring))
	}
	_, log := roomsOnly(t, rooms...)
	if !strings.Contains(told(log), "error too-many") {
		t.Errorf("told\n%s", told(log))
	}
}
