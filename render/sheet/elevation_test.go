package sheet

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// leftWall is the left wall of the example with light on it that falls off from the window.
func leftWall() Input {
	in := fixture.Example()
	in.Elevation = &Elevation{Room: "kitchen", Wall: "left"}
	in.Setup.Rooms[0].Walls = []plan.Wall{{Name: "left", Right: r2.Vec{Y: 3.6}, Outward: r2.Vec{X: -1}, Thickness: 0.2}}
	in.Inset, in.Floors, in.Beams, in.Views = nil, nil, nil, nil
	const step = 0.05
	g := carto.Grid{Origin: r2.Vec{X: step / 2, Y: step / 2}, Step: step, NX: 72, NY: 52, Value: make([]float32, 72*52), Mask: make([]uint64, (72*52+63)/64)}
	for n := range g.Value {
		p := g.At(n%g.NX, n/g.NX)
		d := r2.Norm2(r2.Sub(p, r2.Vec{X: 2.6, Y: 1.4}))
		g.Value[n] = float32(400 / (0.3 + d))
	}
	in.Field = &Field{Name: "Illuminance on the wall kitchen.left", Grid: g}
	return in
}

// TestElevationIsTrue measures the window on the sheet of its wall: from the left end, as seen from
// inside, and from the floor.
func TestElevationIsTrue(t *testing.T) {
	in := leftWall()
	f := fixture.Family(t)
	s := sheetFor(t, in, Options{Font: f})
	page := &s.pages[0]
	var wall, hole ink.Extent
	for i := range page.Items {
		switch it := &page.Items[i]; {
		case it.Object == "opening:street" && it.Path != nil:
			hole.Join(ink.Path(it.Path).Bounds())
		case it.Layer == ink.Tint && it.Path != nil:
			wall.Join(ink.Path(it.Path).Bounds())
		}
	}
	mm := 1000 / s.layout.Times
	// The left wall runs down the sheet as seen from inside: its left end is at (0, 0).
	window := in.Setup.Openings[0]
	if w := box.Width(hole.Box); !close(box.At(w, 0), box.At(1.4*mm, 0)) {
		t.Errorf("the window is %.3f mm wide, want %.3f", w, 1.4*mm)
	}
	if h := box.Height(hole.Box); !close(box.At(h, 0), box.At((window.Head-window.Sill)*mm, 0)) {
		t.Errorf("the window is %.3f mm high, want %.3f", h, (window.Head-window.Sill)*mm)
	}
	if !box.Contains(box.Inset(wall.Box, -1, -1), hole.Box.Min) || !box.Contains(box.Inset(wall.Box, -1, -1), hole.Box.Max) {
		t.Errorf("the window at %v lies outside its wall at %v", hole.Box, wall.Box)
	}
	for i := range s.pages {
		checkPage(t, &s.pages[i], f)
	}
	if !strings.Contains(page.Description, "wall kitchen.left") || !has(page, "Illuminance on the wall kitchen.left") {
		t.Errorf("the sheet does not say what it is of: %q", page.Description)
	}
}

// TestStripOfAWall: the picture for a phone shows the wall too, not its map over the plan.
func TestStripOfAWall(t *testing.T) {
	in := leftWall()
	f := fixture.Family(t)
	page := &Strips([]Input{in}, Options{Font: f}, 1).Pages[1]
	var wall, hole ink.Extent
	for i := range page.Items {
		switch it := &page.Items[i]; {
		case it.Object == "opening:street" && it.Path != nil:
			hole.Join(ink.Path(it.Path).Bounds())
		case it.Object == "wall:kitchen.left" && it.Path != nil:
			wall.Join(ink.Path(it.Path).Bounds())
		case it.Layer == ink.Beams || it.Layer == ink.Throws && strings.HasPrefix(it.Object, "light:"):
			t.Errorf("a wall shows the light of %s", it.Object)
		}
	}
	// 3.6 m and 0.12 m of the walls at its ends, against 1.4 m.
	if got, want := box.Width(hole.Box)/box.Width(wall.Box), 1.4/3.84; got < want-1e-3 || got > want+1e-3 {
		t.Errorf("the window takes %.4f of the wall, want %.4f", got, want)
	}
	if !has(page, "Illuminance on the wall kitchen.left") || !has(page, "3.60 m") || has(page, "Lights, in metres") {
		t.Errorf("the strip says\n%s", texts(page))
	}
	if !has(page, "Set-up 2, wall kitchen.left") || !has(page, "from inside") {
		t.Errorf("its head is cut:\n%s", texts(page))
	}
}

// TestElevationShowsTheOpeningsOfTheRoomBehind: a door is declared from one of the two rooms that it joins,
// and cuts the wall of both; one in another wall of the room behind is not on this wall.
func TestElevationShowsTheOpeningsOfTheRoomBehind(t *testing.T) {
	const scene = `scrimshaw: 1
rooms: {den: {size: [4, 3]}, hall: {at: [4.2, 0], size: [2, 3]}}
openings:
  pass: {door: hall.left, along: 0.5, width: 0.9}
  out:  {window: hall.right, along: 1, width: 1, sill: 0.4, head: 1.6}
`
	s, _ := fixture.SetupOf(t, scene)
	in := Input{Setup: s, Elevation: &Elevation{Room: "den", Wall: "right"}}
	sheet := sheetFor(t, in, Options{Font: fixture.Family(t)})
	page := &sheet.pages[0]
	var wall, hole ink.Extent
	for i := range page.Items {
		switch it := &page.Items[i]; {
		case it.Object == "opening:pass" && it.Path != nil:
			hole.Join(ink.Path(it.Path).Bounds())
		case it.Object == "wall:den.right" && it.Path != nil:
			wall.Join(ink.Path(it.Path).Bounds())
		case it.Object == "opening:out":
			t.Error("a window of the other room's far wall is drawn")
		}
	}
	// Seen from the den the right wall runs from y = 3 at its left end to 0. The left wall of the hall begins
	// at y = 0, so that the door reaches from 0.5 to 1.4.
	mm := 1000 / sheet.layout.Times
	if got, want := hole.Box.Min.X-wall.Box.Min.X, (3-1.4+0.12)*mm; !close(box.At(got, 0), box.At(want, 0)) {
		t.Errorf("the door begins %.2f mm from the left end, want %.2f", got, want)
	}
	if got, want := box.Width(hole.Box), 0.9*mm; !close(box.At(got, 0), box.At(want, 0)) {
		t.Errorf("the door is %.2f mm wide, want %.2f", got, want)
	}
	if !has(page, "pass") {
		t.Error("the door has no name")
	}
}

// TestElevationListsWhatWasAssumed: defaults decide the light on a wall as they do on the floor.
func TestElevationListsWhatWasAssumed(t *testing.T) {
	if said := Text(Options{}, leftWall()); !strings.Contains(said, "ASSUMED") || !strings.Contains(said, "0.5 reflectance") {
		t.Errorf("the sheet of a wall says\n%s", said)
	}
}

// TestElevationUnderASlope: a wall ends where its ceiling is, at either end, and says both heights.
func TestElevationUnderASlope(t *testing.T) {
	s, _ := fixture.SetupOf(t, "scrimshaw: 1\nrooms: {attic: {size: [5, 4], height: {low: 1.6, high: 3, toward: top}}}\n")
	for wall, c := range map[string]struct {
		says []string
	}{
		"right":  {[]string{"3.00 m", "1.60 m", "4.00 m"}},
		"bottom": {[]string{"1.60 m", "5.00 m"}},
	} {
		in := Input{Setup: s, Elevation: &Elevation{Room: "attic", Wall: wall}}
		sheet := sheetFor(t, in, Options{Font: fixture.Family(t)})
		page := &sheet.pages[0]
		for _, said := range c.says {
			if !has(page, said) {
				t.Errorf("%s does not say %s", wall, said)
			}
		}
		checkPage(t, page, fixture.Family(t))
	}
}

// TestElevationShowsWhatStandsBefore: what touches the wall hides it; what stands off it is dashed, whoever and
// whatever lamp stands in the room is in outline, and nothing of another room is shown.
func TestElevationShowsWhatStandsBefore(t *testing.T) {
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4]}, hall: {at: [5.3, 0], size: [2, 4]}}
openings: {bay: {window: den.top, along: 3.4, width: 1.2, sill: 0.9, head: 2}}
furniture:
  press: {box: [1, 0.5, 1.8], at: {wall: den.top, along: 1, in: 0}}
  chest: {box: [1, 0.5, 0.6], at: {wall: den.top, along: 3, in: 0.2}}
  bench: {box: [1, 0.5, 0.4], at: {wall: den.top, along: 4, in: 1.5}}
  trunk: {box: [1, 0.5, 0.4], at: [6, 1]}
people: {ada: {at: [2, 2]}, noor: {at: [6.3, 2]}}
lights:
  key:  {unit: led-point-150-daylight, modifier: softbox-60, at: [3, 1.5], height: 1.9, aim: ada}
  pane: {unit: practical-bulb, at: [1, 1], height: 2.1, mount: ceiling}
`)
	in := Input{Setup: s, Elevation: &Elevation{Room: "den", Wall: "top"}}
	page := &sheetFor(t, in, Options{Font: fixture.Family(t)}).pages[0]
	outlined := map[string]bool{}
	for i := range page.Items {
		it := &page.Items[i]
		if it.Path == nil {
			continue
		}
		hides, dashed := it.Fill != nil, it.Stroke != nil && len(it.Stroke.Dash) > 0
		switch it.Object {
		case "furniture:press":
			if !hides || dashed {
				t.Error("a press against the wall does not hide it")
			}
		case "furniture:chest", "furniture:bench":
			if hides || !dashed {
				t.Errorf("%s before the wall is not dashed", it.Object)
			}
		case "furniture:trunk", "person:noor":
			t.Errorf("%s in the hall is shown", it.Object)
		case "person:ada", "light:key", "light:pane":
			outlined[it.Object] = true
		}
	}
	if len(outlined) != 3 {
		t.Errorf("only %v are in outline", outlined)
	}
	for _, words := range []string{"press 1.80", "chest 0.60", "ada", "1", "2", // names and numbers
		"0.00  floor", "2.50  ceiling", "1.90  1 key", "2.10  2 pane", "0.90  bay sill", "2.00  bay head", // heights
		"3.40 m", "1.20 m", "0.90 m", "1.10 m"} { // of the opening, along and in height
		if !has(page, words) {
			t.Errorf("the sheet does not say %q:\n%s", words, texts(page))
		}
	}
	checkPage(t, page, fixture.Family(t))
}

// TestOpeningsOnAWallSayTheirSize, in a pane rather than across a bar.
func TestOpeningsOnAWallSayTheirSize(t *testing.T) {
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4]}}
openings: {bay: {window: den.top, along: 1, width: 1.6, sill: 0.8, head: 2, panes: [2, 2]}, slit: {window: den.top, along: 4, width: 0.1, sill: 0.8, head: 2}}
`)
	in := Input{Setup: s, Elevation: &Elevation{Room: "den", Wall: "top"}}
	page := &sheetFor(t, in, Options{Font: fixture.Family(t)}).pages[0]
	if !has(page, "bay") || !has(page, "1.60 × 1.20") || !has(page, "sill 0.80") || has(page, "slit") {
		t.Errorf("the sheet says\n%s", texts(page))
	}
}

// TestElevationSaysTheMostLight: contours say only what it is more than.
func TestElevationSaysTheMostLight(t *testing.T) {
	in := leftWall()
	most := float64(in.Field.Grid.Value[0])
	for _, v := range in.Field.Grid.Value {
		most = max(most, float64(v))
	}
	page := &sheetFor(t, in, Options{Font: fixture.Family(t)}).pages[0]
	if want := unit.FormatLux(most) + " at the brightest"; !has(page, want) {
		t.Errorf("the sheet does not say %q", want)
	}
}

// close says whether two points are one, to a tenth of a micrometre.
func close(a, b r2.Vec) bool { return r2.Norm(r2.Sub(a, b)) < 1e-4 }
