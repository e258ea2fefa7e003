package files_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

// toLDT is a file of LM-63 as EULUMDAT.
func toLDT(t *testing.T, text string) *files.LDT {
	t.Helper()
	d, _ := read(t, "x.ies", text)
	converted, err := files.As(d, ".ldt")
	if err != nil {
		t.Fatal(err)
	}
	return converted.(*files.LDT)
}

// The share that goes down is the same where the horizontal lies between two measured angles, by which the light changes
// evenly.
func TestDownwardFractionBetweenAngles(t *testing.T) {
	rising := func(gamma, _ float64) float64 { return 10 + gamma }
	at, between := toLDT(t, written([]float64{0}, 180, 10, rising)), toLDT(t, written([]float64{0}, 180, 20, rising))
	if at.Downward < 30 || at.Downward > 45 {
		t.Errorf("of a light that rises upward %g %% go down", at.Downward)
	}
	within(t, "between", between.Downward, at.Downward, 0.011)
}

// A step is stated where angles are even, whatever they begin with; 0 says that they are not.
func TestStepsOfConvertedAngles(t *testing.T) {
	for _, c := range []struct {
		vertical, horizontal string
		angle, plane         float64
	}{
		{"0 45 90", "0", 45, 0}, {"0 90", "0 90", 90, 90}, {"90 135 180", "0 90 180", 45, 90}, {"0 45 80 90", "0 45 90", 0, 45},
		{"0 10 90", "0 30 90", 0, 0}, {"0 30 60 90 180", "0 60 120 180 240 300 360", 0, 60},
	} {
		d := toLDT(t, table("IESNA91", 1, c.vertical, c.horizontal))
		if d.AngleStep != c.angle || d.PlaneStep != c.plane {
			t.Errorf("%s by %s: steps of %g and %g, want %g and %g", c.vertical, c.horizontal, d.AngleStep, d.PlaneStep, c.angle, c.plane)
		}
	}
}

// A sphere is as high as it is wide on every side; a face has no height. What is more than three times as long as it is
// wide is linear.
func TestHeightsAndKindsOfConvertedOpenings(t *testing.T) {
	for size, want := range map[string]struct {
		heights float64
		kind    int
	}{"-0.3 -0.3 -0.3": {300, 3}, "-0.3 -0.3 0": {0, 3}, "0.5 1.5 0": {0, 3}, "0.5 1.6 0": {0, 2}} {
		d := toLDT(t, strings.Replace(table("IESNA91", 1, "0 45 90", "0 90"), "2 0 0 0", "2 "+size, 1))
		h := want.heights
		if d.LuminousHeights != [4]float64{h, h, h, h} || d.Kind != want.kind {
			t.Errorf("%s: heights %v, kind %d", size, d.LuminousHeights, d.Kind)
		}
	}
}

// A luminaire without a number of lamps is rated by the flux that its file gives, and converted as absolute photometry.
func TestNoNumberOfLamps(t *testing.T) {
	d, warnings := read(t, "x.ldt", strings.Replace(goodLDT, "1\n2\nlamp", "1\n0\nlamp", 1))
	if len(warnings) != 1 || !strings.Contains(warnings[0], "the number of lamps is 0") {
		t.Errorf("%q", warnings)
	}
	within(t, "rated", d.Rated(), 1000, 0)
	l, err := d.(*files.LDT).LM63()
	if err != nil || l.Lamps != 1 || l.Lumens != -1 {
		t.Errorf("%+v, %v", l, err)
	}
}

// Lamp sets whose lines could be read both ways are read set by set; field by field where numbers of lamps are no whole
// numbers otherwise, or a power is no number.
func TestOrdersOfLampSets(t *testing.T) {
	for name, c := range map[string]struct {
		lines string
		first files.LampSet
		last  float64 // lumens of the last set
	}{
		"both would do":         {"2 1 2 1000 4 5 6 1 2 500 4 5 6", files.LampSet{Lamps: 1, Kind: "2", Lumens: 1000, Colour: "4", Rendering: "5", Watts: 6}, 500},
		"half a lamp otherwise": {"2 2 1 36 40 1000 500 3000.5 4000 80 90 40 25", files.LampSet{Lamps: 2, Kind: "36", Lumens: 1000, Colour: "3000.5", Rendering: "80", Watts: 40}, 500},
		"no power otherwise": {"3 1 1 1 36 36 lamp 1000 500 200 3000 4000 5000 80 80 80 40 25 10",
			files.LampSet{Lamps: 1, Kind: "36", Lumens: 1000, Colour: "3000", Rendering: "80", Watts: 40}, 200},
	} {
		d, _ := read(t, "x.ldt", strings.Replace(goodLDT, "1\n2\nlamp\n1000\n3000 K\n1A\n40\n", strings.ReplaceAll(c.lines, " ", "\n")+"\n", 1))
		sets := d.(*files.LDT).Sets
		if sets[0] != c.first || sets[len(sets)-1].Lumens != c.last {
			t.Errorf("%s: %+v", name, sets)
		}
	}
}

// A symmetry that the format does not know has no planes, on either side of those it knows.
func TestPlanesOfNoSymmetry(t *testing.T) {
	for symmetry, ok := range map[files.Symmetry]bool{-1: false, files.AboutC0andC90: true, 5: false} {
		data, _ := read(t, "x.ldt", goodLDT)
		d := *data.(*files.LDT)
		d.Symmetry = symmetry
		if _, err := d.Nodes(); (err == nil) != ok {
			t.Errorf("symmetry %d: %v", symmetry, err)
		}
	}
}

// openLDT is a EULUMDAT file without a symmetry: planes, and 10 cd/klm more in each.
func openLDT(planes string) string {
	list := strings.Fields(planes)
	var rows strings.Builder
	for i := range list {
		fmt.Fprintf(&rows, "%d\n%d\n", 10*(i+1), 10*(i+1))
	}
	head := strings.Replace(goodLDT, "nobody\n3\n4\n4\n90\n3\n45", fmt.Sprintf("nobody\n3\n0\n%d\n0\n2\n90", len(list)), 1)
	head, _, _ = strings.Cut(head, "\n0\n90\n180\n270\n")
	return head + "\n" + strings.Join(list, "\n") + "\n0\n90\n" + rows.String()
}

// Planes without a symmetry that leave a gap are reported, and light changes evenly across it; one and a half steps
// are no gap.
func TestGapsBetweenPlanes(t *testing.T) {
	for planes, gap := range map[string]string{
		"0 120 240": "", "0 144": "", "0 143": "only from C0 to C143", "90 180 270": "only from C90 to C270", "30 150 270": "", "45": "",
	} {
		_, warnings := read(t, "x.ldt", openLDT(planes))
		i := slices.IndexFunc(warnings, func(w string) bool { return strings.Contains(w, "the planes go all round") })
		if (i >= 0) != (gap != "") || gap != "" && !strings.Contains(warnings[i], gap) {
			t.Errorf("planes %s: %q", planes, warnings)
		}
	}
	s := sourceOf(t, "x.ldt", openLDT("90 180 270"))
	for C, want := range map[float64]float64{90: 10, 180: 20, 270: 30, 0: 20, 315: 25, 45: 15} {
		within(t, fmt.Sprint("toward C", C), s.Intensity(toward(90, C)), want, 1e-9)
	}
}

// The plane that does not fit a symmetry is reported at its line: that of C270 comes last in the list and first in the light.
func TestFirstPlaneOfAHalf(t *testing.T) {
	text := strings.Replace(goodLDT, "nobody\n3\n4\n", "nobody\n3\n3\n", 1)
	text = strings.Replace(text, "\n270\n0\n", "\n271\n0\n", 1) + "1\n1\n1\n"
	log := &source.Log{}
	if _, ok := files.Read(&source.File{Name: "x.ldt", Text: []byte(text)}, log); ok {
		t.Fatal("a half that begins at C271 was read")
	}
	line := slices.Index(strings.Split(text, "\n"), "271") + 1
	if got := said(log); !strings.Contains(got, fmt.Sprintf("x.ldt:%d:1: error", line)) || !strings.Contains(got, "from C270 to C90, and here from C271 to C90") {
		t.Errorf("said of line %d:\n%s", line, got)
	}
}

// No light in a direction, no light output ratio and the third geometry of tilt are as the formats have them.
func TestNothingIsSaidOfWhatMayBe(t *testing.T) {
	for name, c := range map[string][4]string{
		"no light":   {"x.ldt", "\n100\n300\n150\n50\n", "\n0\n300\n150\n0\n", "below 0"},
		"no ratio":   {"x.ldt", "\n100\n94\n1\n0\n", "\n100\n0\n1\n0\n", "add up to"},
		"geometry 3": {"x.ies", "TILT=NONE\n", "TILT=INCLUDE\n3\n2\n0 90\n1 0.9\n", "geometry"},
	} {
		good := map[string]string{"x.ldt": goodLDT, "x.ies": goodIES}[c[0]]
		text := strings.Replace(good, c[1], c[2], 1)
		if text == good {
			t.Fatalf("%s: nothing is changed", name)
		}
		if _, warnings := read(t, c[0], text); strings.Contains(strings.Join(warnings, "\n"), c[3]) {
			t.Errorf("%s: %q", name, warnings)
		}
	}
}
