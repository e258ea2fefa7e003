package sheet

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// TestReadingsSayWhoseTheyAreOnBothMaps: where there are several people a reading has the name of the one whose face it is.
// On the second map it stood beside whom it was led past.
func TestReadingsSayWhoseTheyAreOnBothMaps(t *testing.T) {
	in, s := hardCase(t, "flat")
	for _, f := range in.Faces {
		for i := range s.pages[:2] {
			said := ""
			for _, it := range s.pages[i].Items {
				if it.Text != nil && it.Object == "reading:"+f.Person+".fill" {
					said += it.Text.S + " "
				}
			}
			if said != "" && !strings.Contains(said, f.Person) {
				t.Errorf("page %d: the fill side of %s says %q", i+1, f.Person, said)
			}
		}
	}
}

// TestAWallBetweenRoomsIsNamedInItsOwn: a name on the far side of a wall that two rooms share is read as the other room's.
func TestAWallBetweenRoomsIsNamedInItsOwn(t *testing.T) {
	in, s := hardCase(t, "flat")
	v := s.fitter.View(&s.layout)
	named := 0
	for _, it := range s.pages[0].Items {
		if it.Text == nil || !strings.HasPrefix(it.Object, "wall:") {
			continue
		}
		named++
		room, wall, _ := strings.Cut(strings.TrimPrefix(it.Object, "wall:"), ".")
		for i := range in.Setup.Rooms {
			if r := &in.Setup.Rooms[i]; r.Name != room && box.InRing(r.Inside, v.Metres(it.Text.At)) {
				t.Errorf("the name of the wall %s of %s stands in %s", wall, room, r.Name)
			}
		}
	}
	if named < 4 {
		t.Errorf("only %d walls are named", named)
	}
}

// TestSizesOfRoomsKeepOffDoors: the length of a wall was lettered across the leaf that stands open before it.
func TestSizesOfRoomsKeepOffDoors(t *testing.T) {
	in, s := hardCase(t, "flat")
	v := s.fitter.View(&s.layout)
	for _, it := range s.pages[0].Items {
		if it.Text == nil || it.Layer != ink.Notes || !strings.HasPrefix(it.Object, "room:") || !strings.HasSuffix(it.Text.S, " m") {
			continue
		}
		for i := range in.Setup.Openings {
			o := &in.Setup.Openings[i]
			hinge := r2.Add(o.Right, r2.Scale(o.Depth, o.Outward))
			if o.HingeLeft {
				hinge = r2.Add(o.Left, r2.Scale(o.Depth, o.Outward))
			}
			if far := r2.Norm(r2.Sub(v.Metres(it.Text.At), hinge)); o.Ajar > 0 && !o.SwingIn && far < o.Width() {
				t.Errorf("the size %s stands in the swing of %s", it.Text.S, o.Name)
			}
		}
	}
}

// TestNothingRunsThroughTheLengthOfAThrow: a leg of the stand points where the light does and runs along its throw. What
// runs through a figure strikes it.
func TestNothingRunsThroughTheLengthOfAThrow(t *testing.T) {
	in, s := hardCase(t, "flat")
	lengths := 0
	for i := range in.Setup.Lights {
		l := &in.Setup.Lights[i]
		for _, it := range s.pages[0].Items {
			if it.Text == nil || it.Object != "light:"+l.Name || it.Text.S != s.d.Length(l.Throw) {
				continue
			}
			lengths++
			if it.Layer <= ink.Symbols || it.Text.Halo == nil {
				t.Errorf("the throw of %s is lettered under what stands, or without a rim", l.Tag)
			}
		}
	}
	if lengths < 3 {
		t.Errorf("only %d throws are lettered", lengths)
	}
}

// TestNoRingsCloseAroundTheCamera: receptors that are turned to a camera look all ways about it, and drew rings there that
// look like a lamp. Rings that do hold a lamp stay.
func TestNoRingsCloseAroundTheCamera(t *testing.T) {
	in, s := hardCase(t, "stage")
	bare := *in.Inset
	bare.Toward = nil
	rings := func(s *sheet) (n int) {
		var mark ink.Extent
		page := &s.pages[1]
		for i := range page.Items {
			if it := &page.Items[i]; it.Layer == ink.Symbols && it.Object == "camera:"+in.Setup.Cameras[0].Name {
				mark.Join(it.Bounds(nil))
			}
		}
		camera := box.Middle(mark.Box.Min, mark.Box.Max)
		for _, line := range contoursOf(page) {
			far := 0.0
			for _, p := range line {
				far = max(far, r2.Norm(r2.Sub(p, camera))*s.layout.Times/1000)
			}
			if far < 1.1 {
				n++
			}
		}
		return n
	}
	if n := rings(s); n > 0 {
		t.Errorf("%d pieces of contours lie about the camera", n)
	}
	with := in
	with.Inset = &bare
	if n := rings(sheetFor(t, with, Options{Font: fixture.Family(t)})); n == 0 {
		t.Error("without the rule there are none either")
	}
}

// TestNamesOfRoomsKeepOffLifts: the name of the stage stood under a lift.
func TestNamesOfRoomsKeepOffLifts(t *testing.T) {
	_, s := hardCase(t, "stage")
	for i := range s.pages {
		for _, it := range s.pages[i].Items {
			if it.Text == nil || it.Object != "room:stage" || it.Text.S != "stage" {
				continue
			}
			corners := it.Text.Corners(fixture.Family(t))
			for _, d := range s.d.Stands {
				for _, ground := range d.Rest {
					if i == 0 && carto.Overlap(corners[:], ground) {
						t.Errorf("the name of the stage stands on the ground of a lift: %v", corners)
					}
				}
			}
		}
	}
}

// TestSizesOfRoomsStandClearOfTheirWalls: the size of a room is lettered 8 mm or more from its walls, on the samples.
func TestSizesOfRoomsStandClearOfTheirWalls(t *testing.T) {
	const clear = 8.0 // mm
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		v := s.fitter.View(&s.layout)
		for _, it := range s.pages[0].Items {
			if it.Text == nil || it.Layer != ink.Notes || !strings.HasPrefix(it.Object, "room:") || it.Text.S == strings.TrimPrefix(it.Object, "room:") {
				continue
			}
			corners := it.Text.Corners(fixture.Family(t))
			middle := box.Middle(corners[0], corners[2])
			for i := range in.Setup.Walls {
				ring := v.All(in.Setup.Walls[i].Outline)
				for j := range ring {
					if d := carto.Distance(middle, ring[j], ring[(j+1)%len(ring)]); d < clear-it.Text.Size/2 {
						t.Errorf("%s: %q is %.1f mm from a wall", s.pages[0].Title, it.Text.S, d)
					}
				}
			}
		}
	})
}

// TestNamesOfOutletsKeepOffCables: the name of an outlet stood on the cable that begins there, and the two were one dotted smear.
func TestNamesOfOutletsKeepOffCables(t *testing.T) {
	outlets := 0
	eachSample(t, func(t *testing.T, _ Input, s *sheet) {
		page := &s.pages[0]
		for i := range page.Items {
			it := &page.Items[i]
			if it.Text == nil || !strings.HasPrefix(it.Object, "circuit:") {
				continue
			}
			outlets++
			corners := it.Text.Corners(fixture.Family(t))
			for j := range page.Items {
				cable := &page.Items[j]
				if cable.Text != nil || !strings.HasPrefix(cable.Object, "cable:") {
					continue
				}
				for _, piece := range piecesOf(cable) {
					if carto.Overlap(piece, shrunk(corners[:])) {
						t.Errorf("%s: %q lies on %s", page.Title, it.Text.S, cable.Object)
					}
				}
			}
		}
	})
	if outlets < 5 {
		t.Errorf("only %d names of outlets", outlets)
	}
}

// TestCamerasEndBeforeTheWall: the body of the camera in the six lines reached into the wall behind it.
func TestCamerasEndBeforeTheWall(t *testing.T) {
	cameras := 0
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		v, page := s.fitter.View(&s.layout), &s.pages[0]
		for i := range page.Items {
			it := &page.Items[i]
			if it.Layer != ink.Symbols || !strings.HasPrefix(it.Object, "camera:") {
				continue
			}
			cameras++
			for _, p := range ink.Path(it.Path).Points(0.05) {
				for j := range in.Setup.Walls {
					if w := &in.Setup.Walls[j]; w.Opening == "" && box.InRing(v.All(w.Outline), p) {
						t.Errorf("%s: %s reaches into a wall at %v", page.Title, it.Object, p)
					}
				}
			}
		}
	})
	if cameras < 20 {
		t.Errorf("only %d marks of cameras", cameras)
	}
}

// TestUnitsAreReadInOneLine: in large lettering the unit of a light was broken into three lines beside its figures.
func TestUnitsAreReadInOneLine(t *testing.T) {
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		for i := range in.Setup.Lights {
			if unit := s.d.UnitLabel(&in.Setup.Lights[i]); !has(&s.pages[0], unit) {
				t.Errorf("%s: %q is broken", s.pages[0].Title, unit)
			}
		}
	})
}
