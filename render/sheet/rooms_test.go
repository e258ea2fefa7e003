package sheet

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// lists is a scene with a sloping ceiling, a floor that lies lower, a room that stands askew, one of another shape, and
// somebody on a platform.
const lists = `scrimshaw: 1
exposure: {iso: 800, stop: T3.2, white: 4300 K}
rooms:
  loft: {size: [5, 4], height: {low: 1.9, high: 3.3, toward: top}}
  pit:  {at: [5.3, 0], size: [3, 4], base: -0.6}
  wing: {corners: [{a: [-1, -1]}, {b: [-4, 1]}, {c: [-6, -2]}, {d: [-3, -4]}]}
  bend: {corners: [{e: [0, 6]}, {f: [4, 6]}, {g: [4, 8]}, {h: [2, 8]}, {i: [2, 9]}, {j: [0, 9]}]}
furniture: {stand: {deck: [2, 2, 0.4], at: [2.5, 2.5]}}
people: {ada: {at: {top: stand}}, noor: {at: [6.5, 2], faces: A}}
cameras: {A: {at: [2.5, 0.8], looks: ada, lens: 35 mm}}
lights: {k: {unit: led-point-300-daylight, modifier: softbox-90, at: [1, 1], height: 1.5, aim: ada, level: 50 %}}
`

func TestListsOfRoomsSayWhatATapeReads(t *testing.T) {
	s, _ := fixture.SetupOf(t, lists)
	lit, err := study.Run(t.Context(), s, study.Options{Step: 0.5, Quality: light.Draft, Planes: []study.Plane{{Height: 0.9}}})
	if err != nil {
		t.Fatal(err)
	}
	in := Of(lit, Options{})
	said := strings.Join(strings.Fields(Text(Options{}, in)), " ")
	for _, want := range []string{
		"loft 5.00 × 4.00 1.90 to 3.30, up toward top", // a ceiling that slopes
		"wing 3.61 × 3.61 2.50",                        // a room that stands askew, by its own sides
		"bend 4.00 × 3.00 overall 2.50",
		"ILLUMINANCE ON THE LEVEL PLANE AT 0.90 M ABOVE EACH FLOOR",
		"eyes 1.59 m",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("the lists do not say %q", want)
		}
	}
	page := &sheetFor(t, in, Options{Font: fixture.Family(t)}).pages[0]
	for i := range page.Items {
		if it := &page.Items[i]; it.Object == "reading:ada.key" && it.Alt != "" && !strings.Contains(it.Alt, "1.59 m above what ada stands on") {
			t.Errorf("the key side says %q", it.Alt)
		}
	}
}

// TestRoomsAskewAreSizedAlongTheirWalls: the dimension lines on the plan are as long as the walls, and run along them.
func TestRoomsAskewAreSizedAlongTheirWalls(t *testing.T) {
	s, _ := fixture.SetupOf(t, lists)
	sheet := sheetFor(t, Input{Setup: s}, Options{Font: fixture.Family(t), Paper: "A3", Scale: "1:50"})
	said := 0
	for i := range sheet.pages[0].Items {
		it := &sheet.pages[0].Items[i]
		if it.Object != "room:wing" || it.Text == nil || it.Text.S == "wing" {
			continue
		}
		if said++; it.Text.S != "3.61 m" {
			t.Errorf("a side is %q, want 3.61 m", it.Text.S)
		}
		askew := math.Abs(math.Mod(it.Text.Angle+720, 90))
		if want := math.Atan2(2, 3) * 180 / math.Pi; !(math.Abs(askew-want) <= 0.1) && !(math.Abs(askew-(90-want)) <= 0.1) {
			t.Errorf("it is lettered at %.1f°", it.Text.Angle)
		}
	}
	if said != 2 {
		t.Errorf("%d sides have their length", said)
	}
}

// TestKeysSayWhetherTheStopIsReached: a map all over the working stop exceeds it everywhere, one all under it does not
// reach it; by stops the key letters every level as the map does, and the working stop as it was written.
func TestKeysSayWhetherTheStopIsReached(t *testing.T) {
	in := fixture.Example()
	grid := carto.Grid{Origin: r2.Vec{X: 0.1, Y: 0.1}, Step: 0.25, NX: 16, NY: 14, Value: make([]float32, 16*14)}
	for _, c := range []struct {
		low, high float32
		says      string
	}{{700, 3000, "T2.8 exceeded everywhere"}, {2, 60, "T2.8 not reached"}, {20, 3000, "heavy: T2.8"}} {
		for i := range grid.Value {
			grid.Value[i] = c.low + (c.high-c.low)*float32(i)/float32(len(grid.Value)-1)
		}
		in.Field = &Field{Name: "Illuminance on the floor", Grid: grid}
		in.Inset = nil
		said := Text(Options{}, in)
		for _, other := range []string{"exceeded everywhere", "not reached"} {
			if strings.Contains(said, other) != strings.Contains(c.says, other) {
				t.Errorf("from %v to %v lx: the key says\n%s", c.low, c.high, said)
			}
		}
		if !strings.Contains(said, c.says) {
			t.Errorf("from %v to %v lx: the key does not say %q", c.low, c.high, c.says)
		}
	}
	in.Setup.Exposure.Stop.N, in.Setup.Exposure.Stop.Written = 3.1748, 3.2
	page := &sheetFor(t, in, Options{Levels: "stop", Font: fixture.Family(t), Paper: "A3"}).pages[0]
	key, onMap := map[string]bool{}, map[string]bool{}
	for i := range page.Items {
		switch it := &page.Items[i]; {
		case it.Text == nil || !strings.HasPrefix(it.Text.S, "T"):
		case it.Layer == ink.Contours:
			onMap[it.Text.S] = true
		case it.Layer == ink.Collar && it.Text.Align == ink.Centre:
			key[it.Text.S] = true
		}
	}
	for s := range onMap {
		if !key[s] {
			t.Errorf("%s is on the map and not in its key", s)
		}
	}
	if !key["T3.2"] || len(onMap) < 4 {
		t.Errorf("the key letters %v, the map %v", keysOf(key), keysOf(onMap))
	}
}
