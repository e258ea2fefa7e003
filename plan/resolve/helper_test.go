package resolve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

var shipped = sync.OnceValues(kit.Shipped)

// opened reads a scene from text, without its first line.
func opened(t testing.TB, text string, log *source.Log) *scene.Document {
	t.Helper()
	k, err := shipped()
	if err != nil {
		t.Fatal(err)
	}
	return scene.Open(scene.Env{Kit: k}, &source.File{Name: "-", Text: []byte("scrimshaw: 1\n" + text)}, log)
}

// resolved reads and resolves a scene that has no errors.
func resolved(t testing.TB, text string) *plan.Setup {
	t.Helper()
	log := &source.Log{}
	doc := opened(t, text, log)
	s := Resolve(doc, doc.Scene("", log), log)
	if log.Failed() {
		t.Fatalf("scene has errors:\n%s\nin\n%s", told(log), text)
	}
	return s
}

// told lists findings, one a line, as severity code line:col message [hint].
func told(log *source.Log) string {
	var b strings.Builder
	for _, d := range log.All() {
		b.WriteString(tell(d))
	}
	return b.String()
}

func tell(d source.Diagnostic) string {
	line := d.Severity.String() + " " + d.Code + " " + place(d.Span) + " " + d.Message
	if d.Hint != "" {
		line += " [" + d.Hint + "]"
	}
	for _, r := range d.Related {
		line += " (" + place(r.Span) + " " + r.Message + ")"
	}
	return line + "\n"
}

func place(s source.Span) string {
	if !s.Valid() {
		return "?"
	}
	// The first line of a file is the version's.
	return fmt.Sprintf("%d:%d", s.Line-1, s.Col)
}

func near(t testing.TB, what string, got, want, slack float64) {
	t.Helper()
	if !(math.Abs(got-want) <= slack) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

func near2(t testing.TB, what string, got, want r2.Vec, slack float64) {
	t.Helper()
	if !(r2.Norm(r2.Sub(got, want)) <= slack) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func near3(t testing.TB, what string, got, want r3.Vec, slack float64) {
	t.Helper()
	if !(r3.Norm(r3.Sub(got, want)) <= slack) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// ring makes a ring of x, y, x, y, ...
func ringAt(xy ...float64) []r2.Vec {
	var ring []r2.Vec
	for i := 0; i < len(xy); i += 2 {
		ring = append(ring, r2.Vec{X: xy[i], Y: xy[i+1]})
	}
	return ring
}

// star is a random simple ring of n corners round a centre, counter-clockwise.
func star(rnd *rand.Rand, n int, centre r2.Vec, least, most float64) []r2.Vec {
	ring := make([]r2.Vec, n)
	for i := range ring {
		a := 2 * math.Pi * (float64(i) + 0.8*rnd.Float64()) / float64(n)
		radius := least + (most-least)*rnd.Float64()
		ring[i] = r2.Add(centre, r2.Vec{X: radius * math.Cos(a), Y: radius * math.Sin(a)})
	}
	return ring
}

// cornerRoom is a room with given corners, clockwise or not.
func cornerRoom(name string, corners []r2.Vec) scene.Room {
	room := scene.Room{Thing: scene.Thing{Name: name, Path: "rooms." + name}, Form: scene.ByCorners}
	for i, c := range corners {
		room.Corners = append(room.Corners, scene.Corner{Name: "p" + strconv.Itoa(i), At: [2]float64{c.X, c.Y}})
	}
	return room
}

// roomsOnly resolves rooms alone.
func roomsOnly(t testing.TB, rooms ...scene.Room) (*plan.Setup, *source.Log) {
	t.Helper()
	log := &source.Log{}
	return Resolve(nil, &scene.Scene{Rooms: rooms}, log), log
}
