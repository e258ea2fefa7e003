package files_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

// lowFile is a file of LM-63 whose figures stand where NAMES are.
const lowFile = "IESNA91\n[TEST] a\nTILT=NONE\n1 LUMENS MULTIPLIER 3 1 1 2 SIDE 0.5 0\nBALLAST SECOND WATTS\n0 45 90\n0\nCANDELA 5 1\n"

// fill replaces the names in a text by their figures, and those that are left by 1.
func fill(text string, figures ...string) string {
	rest := []string{"LUMENS", "1000", "MULTIPLIER", "1", "SIDE", "0.5", "BALLAST", "1", "SECOND", "1", "WATTS", "1", "CANDELA", "10"}
	return strings.NewReplacer(append(figures, rest...)...).Replace(text)
}

// A figure that no lamp has is refused with its place and its range.
func TestFiguresBeyondTheirRange(t *testing.T) {
	for _, c := range []struct{ figure, is, want string }{
		{"CANDELA", "1e39", "x.ies:8:1: error: the greatest intensity of a file is from 0.000001 cd to 10000000000 cd, and here it is 1e+39 cd"},
		{"CANDELA", "1e60", "and here it is 1e+60 cd"},
		{"CANDELA", "1e308", "and here it is 1e+308 cd"},
		{"MULTIPLIER", "1e-300", "and here it is 1e-299 cd"},
		{"MULTIPLIER", "1e300", `x.ies:4:8: error: the candela multiplier is from -1000000 to 1000000, and "1e300" is not`},
		{"LUMENS", "-1e9", `x.ies:4:3: error: the flux of a lamp is from -100000000 lm to 100000000 lm, and "-1e9" is not`},
		{"SIDE", "-51", `x.ies:4:18: error: a side of the luminous opening is from -50 m to 50 m, and "-51" is not`},
		{"BALLAST", "1e7", "the ballast factor is from"},
		{"SECOND", "1e200", "the second ballast field is from"},
		{"WATTS", "2e6", "the input power is from -1000000 W to 1000000 W"},
	} {
		log := &source.Log{}
		_, ok := files.Read(&source.File{Name: "x.ies", Text: []byte(fill(lowFile, c.figure, c.is))}, log)
		if got := said(log); ok || !strings.Contains(got, c.want) {
			t.Errorf("%s %s: %v\n%swant %s", c.figure, c.is, ok, got, c.want)
		}
	}
	ldt := strings.Split("co\n3\n1\n1\n0\n3\n45\nr\nn\n1\nf\nd\n100\n100\n10\n90\n90\n0\n0\n0\n0\n100\n90\n1\n0\n1\n1\nlamp\n1000\nc\n1A\n9\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n45\n90\n500\n300\n0", "\n")
	for line, c := range map[int]struct{ is, want string }{
		13: {"1e30", "the length of the luminaire is from -50000 mm to 50000 mm"}, 16: {"60000", "the length of the luminous area is from"},
		23: {"1e9", "the light output ratio is from"}, 24: {"1e30", "the conversion factor is from"}, 25: {"400", "the tilt is from -360° to 360°"},
		29: {"1e30", "the flux of the lamps is from"}, 32: {"1e30", "the power of the lamps is from"}, 34: {"-1e300", "direct ratio 2 of 10 is from"},
		47: {"1e30", "x.ldt:47:1: error: the greatest intensity of a file is from"}, 48: {"1e300", "x.ldt:48:1: error: the greatest intensity of a file is from"},
	} {
		text := append([]string{}, ldt...)
		text[line-1] = c.is
		log := &source.Log{}
		_, ok := files.Read(&source.File{Name: "x.ldt", Text: []byte(strings.Join(text, "\n"))}, log)
		if got := said(log); ok || !strings.Contains(got, c.want) {
			t.Errorf("line %d %s: %v\n%swant %s", line, c.is, ok, got, c.want)
		}
	}
}

// An opening too small to be one is a point, whose luminance nobody asks for.
func TestSpeckIsAPoint(t *testing.T) {
	d, _ := read(t, "x.ies", fill(lowFile, "SIDE", "1e-300"))
	s, err := d.Source()
	if err != nil || s.Opening != (photometry.Opening{}) {
		t.Errorf("%+v, %v", s.Opening, err)
	}
}

// A file of blank lines is refused, or read, without room for each of them.
func TestManyBlankLines(t *testing.T) {
	ended := fill(lowFile) + strings.Repeat("\n", 15<<20)
	begun := strings.Repeat("\n", 15<<20) + fill(lowFile)
	for _, text := range []string{ended, begun} {
		used := testing.Benchmark(func(b *testing.B) {
			for range b.N {
				log := &source.Log{}
				_, ok := files.Read(&source.File{Name: "x.ies", Text: []byte(text)}, log)
				if want := text[0] != '\n'; ok != want || !ok && !strings.Contains(said(log), "more than 2097152 lines") {
					b.Fatal(ok, said(log))
				}
			}
		}).AllocedBytesPerOp()
		if most := int64(250 << 20); used > most {
			t.Errorf("%d MB are used", used>>20)
		}
	}
}

// Lamps of next to no lumens or watts state neither: an efficiency of them would be no number.
func TestFiguresOfNextToNothing(t *testing.T) {
	for _, of := range []string{"1e-300", "1e-7"} {
		d, _ := read(t, "x.ies", strings.NewReplacer("\n1 -1", "\n1 "+of, "1 1 100", "1 1 "+of).Replace(goodIES))
		f, err := files.FiguresOf(d)
		if err != nil {
			t.Fatal(err)
		}
		if f.Ratio != nil || f.Rated != nil || f.Watts != nil {
			t.Errorf("%s lm and W: figures %+v", of, f)
		}
	}
}
