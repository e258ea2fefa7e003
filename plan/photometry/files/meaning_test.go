package files_test

import (
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

// source gives the light of a file's text.
func sourceOf(t testing.TB, name, text string) photometry.Source {
	t.Helper()
	d, _ := read(t, name, text)
	s, err := d.Source()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The directions of the lamp frame by the angles of each type, after the mapping of the open glTF
// draft for light profiles: (0, 0) along the axis, the right at 90 horizontal of type B and of type A, and
// the up at 90 vertical of both; type C goes from C0 at the right to C90 at up.
func TestTypesPointWhereTheyShould(t *testing.T) {
	right, up, axis := r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: -1}
	text := func(kind int) string {
		return fmt.Sprintf("IESNA91\nTILT=NONE\n1 -1 1 3 3 %d 2 0 0 0\n1 1 0\n-90 0 90\n-90 0 90\n1 2 3\n4 5 6\n7 8 9\n", kind)
	}
	// Rows are horizontal angles: 5 is (0, 0), 8 is 90 horizontal, 6 is 90 vertical.
	for kind, system := range map[int]string{2: "B", 3: "A"} {
		s := sourceOf(t, "x.ies", text(kind))
		within(t, system+" axis", s.Intensity(axis), 5, 1e-9)
		if kind == 3 { // the pole lies along up: every horizontal angle meets there
			within(t, "A right", s.Intensity(right), 8, 1e-9)
			within(t, "A left", s.Intensity(r3.Scale(-1, right)), 2, 1e-9)
			half := r3.Unit(r3.Vec{Y: 1, Z: -1})
			within(t, "A halfway up", s.Intensity(half), 5.5, 1e-9)
			continue
		}
		within(t, "B up", s.Intensity(up), 6, 1e-9)
		within(t, "B down", s.Intensity(r3.Scale(-1, up)), 4, 1e-9)
		within(t, "B halfway right", s.Intensity(r3.Unit(r3.Vec{X: 1, Z: -1})), 6.5, 1e-9)
		within(t, "B behind", s.Intensity(r3.Vec{Z: 1}), 0, 0)
	}
	c := sourceOf(t, "x.ies", "IESNA91\nTILT=NONE\n1 -1 1 2 5 1 2 0 0 0\n1 1 0\n0 90\n0 90 180 270 360\n9 1 9 2 9 3 9 4 9 1\n")
	within(t, "C0", c.Intensity(right), 1, 1e-9)
	within(t, "C90", c.Intensity(up), 2, 1e-9)
	within(t, "C180", c.Intensity(r3.Scale(-1, right)), 3, 1e-9)
	within(t, "C225", c.Intensity(r3.Unit(r3.Vec{X: -1, Y: -1})), 3.5, 1e-9)
	within(t, "behind", c.Intensity(r3.Unit(r3.Vec{X: 1, Z: 0.001})), 0, 0)
}

// The same light as types A, B and C has one flux: a lobe, cos^10, that is the same all round.
func TestTypesAgreeOnFlux(t *testing.T) {
	const power = 10
	want := 2 * math.Pi * 1000 / (power + 1)
	for kind := 2; kind <= 3; kind++ {
		for _, from := range []int{-90, 0} {
			var angles, values []string
			for a := from; a <= 90; a++ {
				angles = append(angles, fmt.Sprint(a))
			}
			for h := from; h <= 90; h++ {
				for v := from; v <= 90; v++ { // of both types, the cosine from the axis is cos h cos v
					c := math.Cos(float64(h)*math.Pi/180) * math.Cos(float64(v)*math.Pi/180)
					values = append(values, fmt.Sprintf("%.6f", 1000*math.Pow(math.Max(c, 0), power)))
				}
			}
			s := sourceOf(t, "x.ies", fmt.Sprintf("IESNA91\nTILT=NONE\n1 -1 1 %d %d %d 2 0 0 0\n1 1 0\n%s\n%s\n%s\n", len(angles), len(angles), kind,
				strings.Join(angles, " "), strings.Join(angles, " "), strings.Join(values, "\n")))
			name := fmt.Sprint("type ", kind, " from ", from)
			within(t, name, s.Flux, want, 1e-3*want)
			beam, along := photometry.BeamAngle(s.Distribution)
			within(t, name+" beam", beam, 42.17, 0.04)
			within(t, name+" beam along", along, 42.17, 0.04)
			within(t, name+" integral", reference.SphereIntegral(s.Distribution), 1, 1e-4)
		}
	}
}

// The luminous opening by the signs of width, length and height: LM-63-2002, and the older ways to
// write a circle and a cylinder.
func TestOpenings(t *testing.T) {
	for _, c := range []struct {
		width, length, height float64
		want                  photometry.Opening
		lossy                 bool
	}{
		{0, 0, 0, photometry.Opening{}, false},
		{1, 2, 0, photometry.Opening{Form: photometry.Rectangle, Width: 2, Height: 1}, false},
		{1, 2, 3, photometry.Opening{Form: photometry.Rectangle, Width: 2, Height: 1}, true},
		{-1, -1, 0, photometry.Opening{Form: photometry.Disc, Width: 1}, false},
		{-1, 0, 0, photometry.Opening{Form: photometry.Disc, Width: 1}, false},
		{-1, -4, 0, photometry.Opening{Form: photometry.Disc, Width: 2}, true},
		{-1, -1, 4, photometry.Opening{Form: photometry.Sphere, Width: 2}, true},
		{-1, -1, -1, photometry.Opening{Form: photometry.Sphere, Width: 1}, false},
		{-1, -2, -3, photometry.Opening{Form: photometry.Sphere, Width: 2}, true},
		{-0.1, 2, -0.1, photometry.Opening{Form: photometry.Tube, Width: 2, Height: 0.1}, false},
		{0, 2, -0.1, photometry.Opening{Form: photometry.Tube, Width: 2, Height: 0.1}, false},
		{2, -0.1, -0.1, photometry.Opening{Form: photometry.Rectangle, Width: 0.1, Height: 2}, true},
		{-1, 0, -1, photometry.Opening{Form: photometry.Sphere, Width: 1}, true},
		{1, 0, 0, photometry.Opening{}, true},
	} {
		l := &files.LM63{Width: c.width, Length: c.length, Height: c.height}
		got, lost := l.Opening()
		if got != c.want || (lost != "") != c.lossy {
			t.Errorf("%g %g %g: %+v %q, want %+v", c.width, c.length, c.height, got, lost, c.want)
		}
		l.Feet = true
		got, _ = l.Opening()
		within(t, "in feet", got.Width, 0.3048*c.want.Width, 1e-12)
	}
}

// Factors by edition: the second ballast field counts in 1986 and 1991 only, and the generation code
// of 2019 never.
func TestFactorsByEdition(t *testing.T) {
	for e, want := range map[files.Edition]float64{
		files.Edition1986: 2 * 0.9 * 0.5, files.Edition1991: 2 * 0.9 * 0.5, files.Edition1995: 1.8, files.Edition2002: 1.8, files.Edition2019: 1.8,
	} {
		l := &files.LM63{Edition: e, Multiplier: 2, Ballast: 0.9, Second: 0.5}
		within(t, e.String(), l.Factor(), want, 1e-12)
	}
}

// Several lamp sets stand set by set or field by field; the light is that of the first.
func TestLampSetsInBothOrders(t *testing.T) {
	sets := "1\n2\nlamp\n1000\n3000 K\n1A\n40\n"
	for name, lines := range map[string]string{
		"set by set":     "2\n2\nlamp\n1000\n3000 K\n1A\n40\n1\nother\n500\n4000 K\n1B\n25\n",
		"field by field": "2\n2\n1\nlamp\nother\n1000\n500\n3000 K\n4000 K\n1A\n1B\n40\n25\n",
	} {
		d, _ := read(t, "x.ldt", strings.Replace(goodLDT, sets, lines, 1))
		want := []files.LampSet{{2, "lamp", 1000, "3000 K", "1A", 40}, {1, "other", 500, "4000 K", "1B", 25}}
		if got := d.(*files.LDT).Sets; len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
			t.Errorf("%s: %+v", name, got)
		}
		s, _ := d.Source()
		within(t, name, s.Intensity(toward(0, 0)), 300, 1e-9)
	}
}

// A number of lamps below 0 is absolute photometry: no flux of lamps, the same light.
func TestAbsoluteLDT(t *testing.T) {
	d, _ := read(t, "x.ldt", strings.Replace(goodLDT, "1\n2\nlamp", "1\n-2\nlamp", 1))
	s, _ := d.Source()
	within(t, "rated", d.Rated(), 0, 0)
	within(t, "cd", s.Intensity(toward(45, 90)), 150, 1e-9)
	l, err := d.(*files.LDT).LM63()
	if err != nil || l.Lumens != -1 || l.Lamps != 2 {
		t.Errorf("%+v, %v", l, err)
	}
}

// The measured half of each symmetry of EULUMDAT stands for the other.
func TestSymmetriesOfLDT(t *testing.T) {
	for symmetry, want := range map[int][4]float64{ // at C45, C135, C225, C315, gamma 90
		0: {15, 25, 35, 25}, 1: {10, 10, 10, 10}, 2: {15, 25, 25, 15}, 3: {25, 25, 15, 15}, 4: {15, 15, 15, 15},
	} {
		rows := []string{"9\n10\n", "9\n20\n", "9\n30\n", "9\n40\n"} // C0, C90, C180, C270; of 3: C270, C0, C90
		stored := map[int]int{0: 4, 1: 1, 2: 3, 3: 3, 4: 2}[symmetry]
		text := strings.Replace(goodLDT, "nobody\n3\n4\n4\n90\n3\n45", fmt.Sprintf("nobody\n3\n%d\n4\n90\n2\n90", symmetry), 1)
		head, _, _ := strings.Cut(text, "\n270\n0\n45\n90\n")
		s := sourceOf(t, "x.ldt", head+"\n270\n0\n90\n"+strings.Join(rows[:stored], ""))
		for i, v := range want {
			within(t, fmt.Sprint("symmetry ", symmetry, " quadrant ", i), s.Intensity(toward(90, 45+90*float64(i))), v, 1e-9)
		}
	}
}

// Text that is not ASCII is that of Windows-1252 or UTF-8.
func TestEncodings(t *testing.T) {
	for _, company := range []string{"L\xfcster", "Lüster"} {
		d, _ := read(t, "x.ldt", strings.Replace(goodLDT, "nobody", company, 1))
		if got := d.(*files.LDT).Company; got != "Lüster" {
			t.Errorf("%q was read as %q", company, got)
		}
		text, _ := d.Bytes()
		if !strings.HasPrefix(string(text), "L\xfcster\r\n") {
			t.Errorf("written as %q", text[:8])
		}
	}
}

// A line whose bytes could be UTF-8 is not taken for it in a file that is not.
func TestOneEncodingAFile(t *testing.T) {
	text := strings.Replace(strings.Replace(goodLDT, "nobody", "\xc3\xa9", 1), "\nname\n", "\n\xfc\n", 1)
	d, _ := read(t, "x.ldt", text)
	if l := d.(*files.LDT); l.Company != "Ã©" || l.LuminaireName != "ü" {
		t.Errorf("%q, %q", l.Company, l.LuminaireName)
	}
	checkRewritten(t, "x.ldt", d)
}

// The downward flux fraction of a conversion is the share below the horizontal: of a uniform source one
// half.
func TestDownwardFraction(t *testing.T) {
	for last, want := range map[float64]float64{90: 100, 180: 50} {
		for _, step := range []float64{10, 20, 60} {
			if math.Mod(last, step) != 0 {
				continue
			}
			l, _ := read(t, "x.ies", written([]float64{0}, last, step, func(float64, float64) float64 { return 1 }))
			d, err := l.(*files.LM63).LDT()
			if err != nil {
				t.Fatal(err)
			}
			within(t, fmt.Sprint(last, step), d.Downward, want, 1e-9)
			within(t, "efficiency", d.Efficiency, 100, 1e-6)
		}
	}
}

// What a file costs to read grows as the file does, however many lines continue a keyword: the
// bytes set aside are held to a multiple of its length.
func TestLongKeywordIsReadInOneGo(t *testing.T) {
	const lines = 30000
	text := strings.Replace(goodIES, "[TEST] a", "[TEST] a"+strings.Repeat("\n[MORE] b", lines), 1)
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	d, _ := read(t, "long.ies", text)
	runtime.ReadMemStats(&after)
	if got, want := d.(*files.LM63).Get("TEST"), "a"+strings.Repeat("\nb", lines); got != want {
		t.Errorf("%d characters of %d were kept", len(got), len(want))
	}
	if took := after.TotalAlloc - before.TotalAlloc; took > 64*uint64(len(text)) {
		t.Errorf("reading %d bytes took %d of memory", len(text), took)
	}
}

// The factor of a tilt is linear between the angles of the file; angles up to 90 stand for those beyond.
func TestTiltFactors(t *testing.T) {
	whole := files.Tilt{Form: files.TiltInclude, Geometry: files.LampUpright, Angles: []float64{0, 60, 180}, Factors: []float64{1, 0.7, 0.9}}
	half := files.Tilt{Form: files.TiltInclude, Geometry: files.LampTips, Angles: []float64{0, 45, 90}, Factors: []float64{1, 0.9, 0.6}}
	for _, c := range []struct {
		tilt         *files.Tilt
		degrees, out float64
	}{
		{&whole, 0, 1}, {&whole, 30, 0.85}, {&whole, 60, 0.7}, {&whole, 120, 0.8}, {&whole, 180, 0.9},
		{&half, 45, 0.9}, {&half, 67.5, 0.75}, {&half, 90, 0.6}, {&half, 112.5, 0.75}, {&half, 180, 1},
	} {
		within(t, fmt.Sprintf("at %g", c.degrees), c.tilt.Factor(c.degrees), c.out, 1e-12)
	}
	if !whole.Known() || (&files.Tilt{Form: files.TiltInclude, Geometry: 4, Angles: []float64{0}, Factors: []float64{1}}).Known() ||
		(&files.Tilt{Form: files.TiltInclude, Geometry: 1, Angles: []float64{0, 0}, Factors: []float64{1, 1}}).Known() ||
		(&files.Tilt{Form: files.TiltInclude, Geometry: 1, Angles: []float64{0}, Factors: []float64{-1}}).Known() || (&files.Tilt{}).Known() {
		t.Error("factors are known of a table that ascends and a geometry that there is")
	}
}
