package files_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

// table is an LM-63 file of a photometric type by its angles: 100 cd along the axis of type C, then 20, 30 and so on,
// and i cd more in plane i.
func table(edition string, kind int, vertical, horizontal string) string {
	v, h := len(strings.Fields(vertical)), len(strings.Fields(horizontal))
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n[TEST] a\n[TESTLAB] b\n[ISSUEDATE] c\n[MANUFAC] d\nTILT=NONE\n1 -1 1 %d %d %d 2 0 0 0\n1 1 100\n%s\n%s\n", edition, v, h, kind, vertical, horizontal)
	for i := range h {
		if strings.HasSuffix(horizontal, " 360") && i == h-1 {
			i = 0 // the first once more
		}
		for j := range v {
			value := 100
			if j > 0 {
				value = 10*(j+1) + i
			}
			if kind != 1 {
				value = 100 + 10*j + i
			}
			fmt.Fprint(&b, value, " ")
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Angles that begin and end where the format has it are no quirk; those that do not are reported at their place.
func TestRangesOfAngles(t *testing.T) {
	for _, c := range []struct {
		edition              string
		kind                 int
		vertical, horizontal string
		want                 string // "" for nothing
	}{
		{"IESNA:LM-63-2002", 1, "0 45 90", "0", ""},
		{"IESNA:LM-63-2002", 1, "0 90 180", "0 90", ""},
		{"IESNA:LM-63-2002", 1, "90 135 180", "0 90 180", ""},
		{"IESNA:LM-63-2002", 1, "0 45 91", "0", "x.ies:9:1: warning: the vertical angles run from 0 to 91, not from 0 or 90 to 90 or 180"},
		{"IESNA:LM-63-2002", 1, "1 45 90", "0", "x.ies:9:1: warning: the vertical angles run from 1 to 90, not from"},
		{"IESNA:LM-63-1995", 1, "0 45 90", "90 180 270", ""},
		{"IESNA:LM-63-2002", 1, "0 45 90", "90 180 270", "x.ies:10:1: warning: horizontal angles from 90 are those of a file of 1995, mirrored at the planes 90 and 270"},
		{"IESNA:LM-63-1995", 1, "0 45 90", "-90 0 90", "x.ies:10:1: warning: horizontal angles from -90 are those of a file of 1995"},
		{"IESNA:LM-63-2002", 2, "-90 0 90", "-90 0 90", ""},
		{"IESNA:LM-63-2002", 3, "-90 0 90", "0 45 90", ""},
		{"IESNA:LM-63-2002", 3, "0 45 90", "0 45 90", "x.ies:9:1: warning: the vertical angles begin at 0; they are mirrored there"},
		{"IESNA:LM-63-2002", 2, "-90 0 80", "-90 0 90", "x.ies:9:1: warning: the vertical angles run from -90 to 80, not from -90 or 0 to 90; no light is taken beyond them"},
		{"IESNA:LM-63-2002", 2, "-90 0 90", "-80 0 90", "x.ies:10:1: warning: the horizontal angles run from -80 to 90, not from -90 or 0 to 90"},
		{"IESNA:LM-63-2002", 3, "-90 0 90", "0 45 89", "x.ies:10:1: warning: the horizontal angles run from 0 to 89, not from -90 or 0 to 90"},
	} {
		log := &source.Log{}
		if _, ok := files.Read(&source.File{Name: "x.ies", Text: []byte(table(c.edition, c.kind, c.vertical, c.horizontal))}, log); !ok {
			t.Fatalf("%+v: %s", c, said(log))
		}
		if got := said(log); c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s, type %d, %s by %s: got\n%swant %q", c.edition, c.kind, c.vertical, c.horizontal, got, c.want)
		}
	}
}

// What else is not as the format has it, or is lost, is reported at its place.
func TestMoreQuirks(t *testing.T) {
	for _, f := range []fault{
		{"no flux", "\n1 -1", "\n1 0", "x.ies:4:3", "the flux of a lamp is 0; the file is taken as absolute photometry", ""},
		{"no ballast factor", "\n1 1 100", "\n0 1 100", "x.ies:5:1", "a ballast factor of 0 would leave no light; it is taken as 1", ""},
		{"sides of a box", "2 0 0 0", "2 1 2 3", "x.ies:4:16", "the light of the luminous box's sides is computed as if it came from its face", ""},
		{"a round that does not close", "3 2 1 2 0 0 0\n1 1 100\n0 45 90\n0 90\n9 5 1\n9 4 2", "3 3 1 2 0 0 0\n1 1 100\n0 45 90\n0 180 360\n9 5 1\n9 4 2\n9 6 1", "x.ies:8:1", "the planes at 0 and 360, which are one, do not agree", ""},
		{"all keywords of 2002 but one", "IESNA91", "IESNA:LM-63-2002", "x.ies:1:1", "the edition of 2002 requires the keywords [TESTLAB], [ISSUEDATE], [MANUFAC]", ""},
		{"a second ballast field", "IESNA91\n[TEST] a\nTILT=NONE\n1 -1 1 3 2 1 2 0 0 0\n1 1 100", "IESNA:LM-63-1995\n[TEST] a\nTILT=NONE\n1 -1 1 3 2 1 2 0 0 0\n1 2 100", "x.ies:5:3", "the second ballast field is 2; the edition of 1995 does not use it, and it is ignored", ""},
	} {
		t.Run(f.name, func(t *testing.T) { f.warns(t, "x.ies", goodIES) })
	}
	for name, change := range map[string][2]string{
		"planes that agree to a hundredth": {"9 4 2", "8.95 4 2"}, "lamps that give just as much": {"\n1 -1", "\n1 24"},
	} {
		if _, warnings := read(t, "x.ies", strings.Replace(goodIES, change[0], change[1], 1)); len(warnings) > 0 {
			t.Errorf("%s: %q", name, warnings)
		}
	}
}

// Measured planes stand for others by where they begin and end: the light toward a plane is that of its mirror image.
func TestWhatPlanesStandFor(t *testing.T) {
	for _, c := range []struct {
		horizontal string
		image      func(c float64) float64 // the measured plane that stands for C, degrees from the first
	}{
		{"0", func(float64) float64 { return 0 }},
		{"0 30 90", func(c float64) float64 {
			if c > 180 {
				c = 360 - c
			}
			return min(c, 180-c)
		}},
		{"0 30 90 180", func(c float64) float64 { return min(c, 360-c) }},
		{"90 120 180 270", func(c float64) float64 {
			if c < 90 || c > 270 {
				c = 540 - c
			}
			return float64(int(c)%360) - 90
		}},
		{"-90 -60 0 90", func(c float64) float64 {
			if c > 180 {
				c -= 360
			}
			if c > 90 {
				c = 180 - c
			}
			if c < -90 {
				c = -180 - c
			}
			return c + 90
		}},
	} {
		s := sourceOf(t, "x.ies", table("IESNA:LM-63-1995", 1, "0 90", c.horizontal))
		planes := numbersOf(c.horizontal)
		for C := 0.0; C < 360; C += 15 {
			at := planes[0] + c.image(C)
			i := 0
			for i+2 < len(planes) && planes[i+1] <= at {
				i++
			}
			want := 20.0 + float64(i)
			if len(planes) > 1 {
				want += (at - planes[i]) / (planes[i+1] - planes[i])
			}
			within(t, fmt.Sprintf("planes %s toward C%g", c.horizontal, C), s.Intensity(toward(90, C)), want, 1e-6)
		}
	}
	for horizontal, ok := range map[string]bool{"0 120 240": true, "0 90 180 270": true, "10 90 180 270": true, "0 45 90 135 200": false, "0 10 20 100": false, "0 100": false, "0 180 270": true} {
		log := &source.Log{}
		if _, got := files.Read(&source.File{Name: "x.ies", Text: []byte(table("IESNA91", 1, "0 90", horizontal))}, log); got != ok {
			t.Errorf("planes %s are read: %v\n%s", horizontal, got, said(log))
		}
	}
}

func numbersOf(words string) (list []float64) {
	for _, w := range strings.Fields(words) {
		var v float64
		fmt.Sscan(w, &v)
		list = append(list, v)
	}
	return list
}

// A file reads the same whatever ends its lines, with a byte order mark before it, and with what old systems leave
// behind it.
func TestLinesEndInAnyWay(t *testing.T) {
	for name, text := range map[string]string{"x.ies": goodIES, "x.ldt": goodLDT} {
		want, _ := read(t, name, text)
		light, _ := want.Source()
		for what, change := range map[string]func(string) string{
			"CR LF": func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }, "CR": func(s string) string { return strings.ReplaceAll(s, "\n", "\r") },
			"no last end": func(s string) string { return strings.TrimSuffix(s, "\n") }, "blank lines and a mark behind": func(s string) string { return s + "\n  \n\t\n\x1a\n\f\n" },
			"a byte order mark": func(s string) string { return "\xef\xbb\xbf" + s },
		} {
			got, warnings := read(t, name, change(text))
			s, err := got.Source()
			if err != nil || s.Flux != light.Flux || got.Name() != want.Name() || got.Format() != want.Format() || len(warnings) > 0 {
				t.Errorf("%s with %s: %g lm, %q of %s, %v, %q", name, what, s.Flux, got.Name(), got.Format(), err, warnings)
			}
		}
	}
	// What a fault says of its place counts characters, whatever the line ends are.
	for name, text := range map[string]string{"UTF-8": "[TEST] ä\r\n", "LF": "[TEST] a\n"} {
		log := &source.Log{}
		files.Read(&source.File{Name: "x.ies", Text: []byte("IESNA91\n" + text + "[OTHER] ää\x00")}, log)
		if got := said(log); !strings.Contains(got, "x.ies:3:11: error: the file is not text") {
			t.Errorf("%s: %s", name, got)
		}
	}
	if d, _ := read(t, "x.ies", strings.Replace(goodIES, "[TEST] a", "[TEST] a\n[LUMINAIRE] gro\xdfe\v Lamp\x01e", 1)); d.Name() != "große Lampe" {
		t.Errorf("a name of another code page is %q", d.Name())
	}
}

// The figures of a file as they print, of each kind of light and of each form of opening.
func TestFacts(t *testing.T) {
	facts := func(text string) map[string]string {
		d, _ := read(t, "x.ies", text)
		f, err := files.FiguresOf(d)
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]string{}
		for _, fact := range f.Facts() {
			out[fact[0]] = fact[1]
		}
		return out
	}
	for name, c := range map[string]struct{ text, fact, want string }{
		"one plane":                 {table("IESNA91", 1, "0 45 90", "0"), "measured", "type C, 1 plane, 0° to 90°"},
		"a quarter, unfolded":       {table("IESNA91", 1, "0 45 90", "0 90"), "measured", "type C, 4 planes, 0° to 90°"},
		"type B":                    {table("IESNA91", 2, "-90 0 90", "-90 0 90"), "measured", "type B, 3 planes, -90° to 90°"},
		"absolute":                  {goodIES, "efficiency", "absolute photometry"},
		"of the lamps":              {strings.Replace(goodIES, "\n1 -1", "\n2 25", 1), "efficiency", "48.1 % of 50.0 lm"},
		"no opening":                {goodIES, "opening", "point"},
		"a face":                    {strings.Replace(goodIES, "2 0 0 0", "2 0.3 1.2 0", 1), "opening", "rectangle, 1.20 x 0.30 m (C0, C90)"},
		"a disc":                    {strings.Replace(goodIES, "2 0 0 0", "2 -0.5 -0.5 0", 1), "opening", "disc, 0.50 m"},
		"on the axis":               {goodIES, "peak", "9.00 cd, on the axis"},
		"off the axis":              {strings.Replace(goodIES, "9 5 1\n9 4 2", "1 5 1\n1 8 2", 1), "peak", "8.00 cd, 45° off the axis at C90"},
		"off the axis all round":    {"IESNA91\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 100\n0 45 90\n0\n1 8 2\n", "peak", "8.00 cd, 45° off the axis"},
		"straight behind":           {"IESNA91\nTILT=NONE\n1 -1 1 3 5 1 2 0 0 0\n1 1 100\n0 90 180\n0 90 180 270 360\n1 2 9 1 3 9 1 2 9 1 3 9 1 2 9\n", "peak", "9.00 cd, 180° off the axis"},
		"all round and behind":      {"IESNA91\nTILT=NONE\n1 -1 1 2 1 1 2 0 0 0\n1 1 100\n0 180\n0\n7 7\n", "beam, to 50 %", "none, it goes out behind"},
		"a beam by its planes":      {"IESNA91\nTILT=NONE\n1 -1 1 3 2 1 2 0 0 0\n1 1 0\n0 40 80\n0 90\n8 4 0 8 0 0\n", "beam, to 50 %", "80° at C0, 40° at C90"},
		"the same beam both ways":   {"IESNA91\nTILT=NONE\n1 -1 1 3 2 1 2 0 0 0\n1 1 0\n0 40 80\n0 90\n8 4 0 8 4 1\n", "beam, to 50 %", "80°"},
		"a power, and light for it": {goodIES, "power", "100 W, 0.24 lm/W"},
		"no power":                  {strings.Replace(goodIES, "1 1 100", "1 1 0", 1), "power", ""},
	} {
		if got := facts(c.text)[c.fact]; got != c.want {
			t.Errorf("%s: %s %q, want %q", name, c.fact, got, c.want)
		}
	}
}

// An LM-63 file becomes EULUMDAT with its symmetry and its share of light downward, and its light stays.
func TestSymmetriesAreConverted(t *testing.T) {
	for _, c := range []struct {
		vertical, horizontal string
		want                 files.Symmetry
		planes               int
		down                 float64 // percent; below 0: not asked
	}{
		{"0 45 90", "0", files.AboutAxis, 1, 100}, {"0 45 90", "0 90", files.AboutC0andC90, 4, 100}, {"0 45 90", "0 45 180", files.AboutC0, 4, 100},
		{"0 45 90", "90 180 270", files.AboutC90, 4, 100}, {"0 45 90", "0 90 180 270 360", files.NoSymmetry, 4, 100},
		{"0 90 180", "0", files.AboutAxis, 1, -1}, {"90 135 180", "0", files.AboutAxis, 1, 0},
	} {
		d, _ := read(t, "x.ies", table("IESNA:LM-63-1995", 1, c.vertical, c.horizontal))
		before, _ := d.Source()
		converted, err := files.As(d, ".ldt")
		if err != nil {
			t.Fatal(err)
		}
		ldt := converted.(*files.LDT)
		if ldt.Symmetry != c.want || len(ldt.Planes) != c.planes {
			t.Errorf("planes %s: symmetry %d of %d planes, want %d of %d", c.horizontal, ldt.Symmetry, len(ldt.Planes), c.want, c.planes)
		}
		if c.down >= 0 {
			within(t, "downward of "+c.vertical, ldt.Downward, c.down, 0.005)
		}
		after, err := ldt.Source()
		if err != nil {
			t.Fatal(err)
		}
		for gamma := 0.0; gamma <= 180; gamma += 7 {
			for C := 0.0; C < 360; C += 20 {
				within(t, fmt.Sprint(c, " at ", gamma, C), after.Intensity(toward(gamma, C)), before.Intensity(toward(gamma, C)), 1e-3)
			}
		}
		if same, _ := files.As(ldt, ".ldt"); same != files.Data(ldt) {
			t.Error("a file in its own format was made anew")
		}
		if same, _ := files.As(d, ".ies"); same != d {
			t.Error("a file in its own format was made anew")
		}
	}
	// Even light all round: half of it goes down, wherever the angles of the table lie.
	for _, vertical := range []string{"0 90 180", "0 60 180", "0 20 100 180", "0 180"} {
		text := table("IESNA91", 1, vertical, "0")
		lines := strings.Split(strings.TrimSpace(text), "\n")
		lines[len(lines)-1] = strings.Repeat("50 ", len(strings.Fields(vertical)))
		d, _ := read(t, "x.ies", strings.Join(lines, "\n"))
		converted, err := files.As(d, ".ldt")
		if err != nil {
			t.Fatal(err)
		}
		within(t, "downward of even light by "+vertical, converted.(*files.LDT).Downward, 50, 0.005)
	}
}

// The kind of a luminaire by its opening: round ones and short faces are points, long ones are linear; a housing has
// the size of its opening in mm.
func TestOpeningsAreConverted(t *testing.T) {
	for _, c := range []struct {
		size          string // width, length, height
		length, width float64
		kind          int
	}{
		{"0 0 0", 0, 0, 3}, {"-0.5 -0.5 0", 500, 0, 3}, {"0.5 0.6 0", 500, 600, 3}, {"0.3 1.2 0", 300, 1200, 2}, {"1.2 0.3 0", 1200, 300, 2},
		{"0.4 1.2 0", 400, 1200, 3}, {"-0.03 1.2 -0.03", 30, 1200, 2}, {"-0.3 -0.3 -0.3", 300, 0, 3},
	} {
		text := strings.Replace(table("IESNA91", 1, "0 45 90", "0 90"), "2 0 0 0", "2 "+c.size, 1)
		d, _ := read(t, "x.ies", text)
		converted, err := files.As(d, ".ldt")
		if err != nil {
			t.Fatal(err)
		}
		ldt := converted.(*files.LDT)
		if ldt.LuminousLength != c.length || ldt.LuminousWidth != c.width || ldt.Length != c.length || ldt.Width != c.width || int(ldt.Kind) != c.kind {
			t.Errorf("%s: %g by %g mm in %g by %g, kind %d", c.size, ldt.LuminousLength, ldt.LuminousWidth, ldt.Length, ldt.Width, ldt.Kind)
		}
		before, _ := d.Source()
		after, _ := ldt.Source()
		if before.Opening.Form != photometry.Sphere && before.Opening.Form != photometry.Tube && before.Opening != after.Opening {
			t.Errorf("%s: %+v became %+v", c.size, before.Opening, after.Opening)
		}
		back, err := files.As(ldt, ".ies")
		if err != nil {
			t.Fatal(err)
		}
		if again, _ := back.Source(); again.Opening.Form != photometry.Sphere && again.Opening != after.Opening {
			t.Errorf("%s: %+v became %+v on the way back", c.size, after.Opening, again.Opening)
		}
	}
}

// A kind or a symmetry that the format does not know is not written, on either side of those it knows.
func TestKindsOutOfRange(t *testing.T) {
	for _, c := range []struct {
		kind     int
		symmetry files.Symmetry
		good     bool
	}{{0, files.AboutC0andC90, true}, {3, files.AboutC0andC90, true}, {-1, files.AboutC0andC90, false}, {4, files.AboutC0andC90, false}, {1, -1, false}, {1, 5, false}} {
		data, _ := read(t, "x.ldt", goodLDT)
		d := data.(*files.LDT)
		d.Kind, d.Symmetry = c.kind, c.symmetry
		if _, err := d.Bytes(); (err == nil) != c.good {
			t.Errorf("kind %d, symmetry %d: %v", c.kind, c.symmetry, err)
		}
	}
}

// No line of a written file is longer than the 80 characters that every edition of the format allows.
func TestWrittenLinesAreShort(t *testing.T) {
	var planes []float64
	for c := 0.0; c <= 360; c += 5 {
		planes = append(planes, c)
	}
	text := written(planes, 90, 2.5, func(gamma, c float64) float64 { return 1000 - gamma - c/7 })
	lines := strings.Split(text, "\n")
	long := slices.MaxFunc(lines, func(a, b string) int { return len(a) - len(b) })
	if len(long) > 80 {
		t.Errorf("a line of %d characters: %q", len(long), long)
	}
}

// Gamma angles of EULUMDAT begin at 0 or 90 and end at 90 or 180; others are read, and told.
func TestRangesOfGamma(t *testing.T) {
	for angles, want := range map[string]string{
		"0\n45\n90": "", "0\n90\n180": "", "90\n135\n180": "", "90\n91\n180": "",
		"0\n45\n80":   "x.ldt:47:1: warning: the gamma angles run from 0 to 80, not from 0 or 90 to 90 or 180; no light is taken beyond them",
		"10\n45\n90":  "x.ldt:47:1: warning: the gamma angles run from 10 to 90, not from",
		"0\n45\n179":  "x.ldt:47:1: warning: the gamma angles run from 0 to 179, not from",
		"91\n92\n180": "x.ldt:47:1: warning: the gamma angles run from 91 to 180, not from",
	} {
		log := &source.Log{}
		text := strings.Replace(goodLDT, "270\n0\n45\n90\n", "270\n"+angles+"\n", 1)
		if _, ok := files.Read(&source.File{Name: "x.ldt", Text: []byte(text)}, log); !ok {
			t.Fatalf("%q: %s", angles, said(log))
		}
		if got := said(log); !strings.Contains(got, want) || want == "" && strings.Contains(got, "gamma angles") {
			t.Errorf("%q: %s", angles, got)
		}
	}
	for _, f := range []fault{
		{"no lamps", "1\n2\nlamp", "1\n0\nlamp", "x.ldt:29:1", "the number of lamps is 0", ""},
	} {
		f.warns(t, "x.ldt", goodLDT)
	}
}

// The angles of each type go as far as its sphere does: a degree more is a fault at its place.
func TestBounds(t *testing.T) {
	for _, c := range []struct {
		kind                 int
		vertical, horizontal string
		want                 string
	}{
		{1, "0 90 180", "0 180 360", ""}, {1, "-1 90 180", "0", "the vertical angles of type C lie from 0 to 180, and -1 does not"},
		{1, "0 90 181", "0", "the vertical angles of type C lie from 0 to 180, and 181 does not"},
		{1, "0 90 180", "0 180 361", "the horizontal angles of type C lie from -180 to 360, and 361 does not"},
		{2, "-180 0 180", "-90 0 90", ""}, {3, "-90 0 90", "-180 0 180", ""},
		{2, "-181 0 90", "-90 0 90", "the vertical angles of type B lie from -180 to 180, and -181 does not"},
		{2, "-90 0 90", "-90 0 91", "the horizontal angles of type B lie from -90 to 90, and 91 does not"},
		{3, "-90 0 91", "-90 0 90", "the vertical angles of type A lie from -90 to 90, and 91 does not"},
		{3, "-90 0 90", "-90 0 181", "the horizontal angles of type A lie from -180 to 180, and 181 does not"},
	} {
		log := &source.Log{}
		_, ok := files.Read(&source.File{Name: "x.ies", Text: []byte(table("IESNA91", c.kind, c.vertical, c.horizontal))}, log)
		if got := said(log); ok != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("type %d, %s by %s: read %v\n%swant %q", c.kind, c.vertical, c.horizontal, ok, got, c.want)
		}
	}
}

// A factor below or at nothing counts as one, any other as itself: the light follows the product of the multiplier
// and the ballast factor, and in relative photometry the lamps are as rated.
func TestFactorsOfTheLight(t *testing.T) {
	plain := sourceOf(t, "x.ies", goodIES).Peak()
	for factors, want := range map[string]float64{"1 1": 1, "2 1": 2, "1 0.5": 0.5, "0.25 2": 0.5, "-1 1": 1, "1 -3": 1, "0 0": 1} {
		words := strings.Fields(factors)
		text := strings.Replace(goodIES, "1 -1 1 3", "1 -1 "+words[0]+" 3", 1)
		text = strings.Replace(text, "\n1 1 100\n", "\n"+words[1]+" 1 100\n", 1)
		within(t, "factors "+factors, sourceOf(t, "x.ies", text).Peak()/plain, want, 1e-12)
	}
}

// A file that ends where its angles could just fit is read as far as it goes, and blamed where it ends.
func TestFilesThatEndEarly(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"x.ies", "IESNA91\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 100\n0 4 9", "the file ends where horizontal angle belongs"},
		// A line of characters that no screen shows is left empty, though it is the last.
		{"x.ldt", goodLDT[:strings.Index(goodLDT, "date\n")] + "date\n\v", "the length of the luminaire is left empty; it is taken as 0"},
	} {
		log := &source.Log{}
		if _, ok := files.Read(&source.File{Name: c.name, Text: []byte(c.text)}, log); ok {
			t.Errorf("%s was read", c.name)
		}
		if !strings.Contains(said(log), c.want) {
			t.Errorf("%s: got\n%s\nwant %s", c.name, said(log), c.want)
		}
	}
}

// A point has no size, not one of less than nothing.
func TestSizeOfAConvertedPoint(t *testing.T) {
	d, _ := read(t, "x.ldt", strings.Replace(goodLDT, "\n500\n200\n", "\n0\n0\n", 1))
	converted, err := files.As(d, ".ies")
	if err != nil {
		t.Fatal(err)
	}
	l := converted.(*files.LM63)
	for _, size := range []float64{l.Width, l.Length, l.Height} {
		if size != 0 || math.Signbit(size) {
			t.Errorf("a point is %g by %g by %g m", l.Width, l.Length, l.Height)
		}
	}
}
