package files_test

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

// The edition of 1986 has no first line and no keywords: its labels are remarks.
func TestEditionOf1986(t *testing.T) {
	text := "A lamp that nobody made\n  measured by nobody, 1986  \n\nTILT=INCLUDE\n2\n3\n0 45 90\n1 .9 .8\n" +
		"2, 400, 1.5, 3, 1, 1, 1, -1, 0, 0\n0.9 0.8 60\n0 45\n90\n0\n100 50\n0\n"
	d, warnings := read(t, "x.ies", text)
	l := d.(*files.LM63)
	if l.Edition != files.Edition1986 || len(l.Keywords) != 2 || l.Name() != "A lamp that nobody made" || l.Keywords[1].Text != "measured by nobody, 1986" {
		t.Errorf("%+v", l.Keywords)
	}
	s, _ := d.Source()
	within(t, "cd", s.Intensity(toward(45, 0)), 50*1.5*0.9*0.8, 1e-9) // both ballast factors count
	within(t, "rated", d.Rated(), 800, 0)
	if o := s.Opening; o.Form != photometry.Disc || math.Abs(o.Width-0.3048) > 1e-12 {
		t.Errorf("opening %+v", o)
	}
	if len(warnings) != 1 || !strings.Contains(warnings[0], "the lamp's light depends on its tilt") {
		t.Errorf("%q", warnings)
	}
	checkRewritten(t, "x.ies", d)
	out, _ := d.Bytes()
	if !strings.HasPrefix(string(out), "A lamp that nobody made\r\nmeasured by nobody, 1986\r\nTILT=INCLUDE\r\n2\r\n3\r\n0 45 90\r\n1 0.9 0.8\r\n2 400 1.5 3 1 1 1 -1 0 0\r\n") {
		t.Errorf("written as %q", out)
	}
}

// Records are broken where the oldest edition's lines end, between numbers.
func TestLongRecordsWrap(t *testing.T) {
	for line := range strings.SplitSeq(written([]float64{0, 90, 180}, 180, 0.5, cosine(3)), "\r\n") {
		if len(line) > 80 {
			t.Fatalf("a line of %d characters: %q", len(line), line)
		}
	}
}

// What would not read back the same is refused, with the reason.
func TestBadValuesAreNotWritten(t *testing.T) {
	for want, spoil := range map[string]func(*files.LM63){
		"its edition, its type":        func(l *files.LM63) { l.Edition = 9 },
		"it has 0 lamps":               func(l *files.LM63) { l.Lamps = 0 },
		"as many factors as angles":    func(l *files.LM63) { l.Tilt = files.Tilt{Form: files.TiltInclude, Geometry: 1, Angles: []float64{0}} },
		"cannot be the name of a tilt": func(l *files.LM63) { l.Tilt = files.Tilt{Form: files.TiltFile, File: "none"} },
		`the keyword "MORE"`:           func(l *files.LM63) { l.Keywords = []files.Keyword{{Key: "MORE"}} },
		`the keyword "A]"`:             func(l *files.LM63) { l.Keywords = []files.Keyword{{Key: "A]"}} },
		`the keyword "" "TILT=NONE"`:   func(l *files.LM63) { l.Keywords = []files.Keyword{{Text: "TILT=NONE"}} },
		`the keyword "T" "two  `:       func(l *files.LM63) { l.Keywords = []files.Keyword{{Key: "T", Text: "two  \nlines"}} },
		"NaN is not a number":          func(l *files.LM63) { l.Watts = math.NaN() },
		"+Inf is not a number":         func(l *files.LM63) { l.Candela[0][1] = math.Inf(1) },
		"2 horizontal angles have 1":   func(l *files.LM63) { l.Horizontal = []float64{0, 90} },
		"do not ascend":                func(l *files.LM63) { l.Vertical = []float64{0, 0} },
		"say nothing of the rest":      func(l *files.LM63) { l.Horizontal = []float64{0, 50}; l.Candela = append(l.Candela, l.Candela[0]) },
		"0 horizontal angles have 1":   func(l *files.LM63) { l.Horizontal = nil },
		"is not a number of a file":    func(l *files.LM63) { l.Vertical[1] = math.Inf(1) },
		"the table gives no light":     func(l *files.LM63) { l.Candela[0] = []float64{0, -5} },
		"2 vertical angles have 3":     func(l *files.LM63) { l.Candela[0] = []float64{1, 2, 3} },
		"beyond the sphere":            func(l *files.LM63) { l.Vertical[1] = 200 },
		"cannot be written as LM-63: ": func(l *files.LM63) { *l = files.LM63{} },
	} {
		l := &files.LM63{Edition: files.Edition1995, Lamps: 1, Lumens: -1, Multiplier: 1, Ballast: 1, Second: 1,
			Vertical: []float64{0, 90}, Horizontal: []float64{0}, Candela: [][]float64{{5, 1}}}
		if _, err := l.Bytes(); err != nil {
			t.Fatal(err)
		}
		spoil(l)
		if _, err := l.Bytes(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	for want, spoil := range map[string]func(*files.LDT){
		"it has no lamps":           func(d *files.LDT) { d.Sets = nil },
		"its type or its symmetry":  func(d *files.LDT) { d.Symmetry = 7 },
		"is not one line of text":   func(d *files.LDT) { d.Company = "two\nlines" },
		"NaN is not a number":       func(d *files.LDT) { d.Height = math.NaN() },
		"asks for 2 planes":         func(d *files.LDT) { d.Candela = d.Candela[:1] },
		"no planes of a known":      func(d *files.LDT) { d.Planes, d.Symmetry, d.Candela = nil, files.NoSymmetry, nil },
		"the table gives no light":  func(d *files.LDT) { d.Sets[0].Lumens = 0 },
		"is not a number of a file": func(d *files.LDT) { d.Sets[0].Watts = math.Inf(-1) },
	} {
		data, _ := read(t, "x.ldt", goodLDT)
		d := data.(*files.LDT)
		spoil(d)
		if _, err := d.Bytes(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
}

// The name of a luminaire, by whatever the file has of one.
func TestNames(t *testing.T) {
	for text, want := range map[string]string{
		strings.Replace(goodLDT, "\nname\n", "\n\n", 1): "number", goodLDT: "name",
		goodIES: "a", strings.Replace(goodIES, "[TEST] a", "[TEST] a\n[LUMINAIRE] wide\n[MORE] lamp", 1): "wide lamp",
	} {
		if d, _ := read(t, "lamp", text); d.Name() != want {
			t.Errorf("%q, want %q", d.Name(), want)
		}
	}
}
