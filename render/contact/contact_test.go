package contact

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"io"
	"runtime"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

// strip is a page of one colour.
func strip(high float64, c ink.Colour) ink.Page {
	p := ink.Page{Title: "A run, set-up one", Width: 80, Height: high}
	ink.NewCanvas(&p, ink.Tint).Rect(ink.Solid(c), r2.Vec{}, r2.Vec{X: 80, Y: high})
	return p
}

var (
	red   = ink.Colour{R: 200}
	green = ink.Colour{G: 200}
	paper = ink.Colour{R: 250, G: 250, B: 240}
)

func run() ink.Document {
	return ink.Document{Title: "A run", Pages: []ink.Page{strip(40, red), strip(120, green)}}
}

func drawn(t *testing.T, strips, sheets ink.Document, o Options) (image.Image, []byte) {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, strips, sheets, o); err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(b.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	return m, b.Bytes()
}

func is(m image.Image, x, y int, c ink.Colour) bool {
	return color.RGBAModel.Convert(m.At(x, y)) == color.RGBA{R: c.R, G: c.G, B: c.B, A: 0xFF}
}

// Strips fill the width one under another, with the ground round them and in their corners.
func TestStripsLieUnderEachOther(t *testing.T) {
	m, _ := drawn(t, run(), ink.Document{}, Options{Paper: paper, Ink: ink.Colour{R: 20, G: 20, B: 20}})
	const gap, wide = 20, 1040
	first, second := 40*wide/80, 120*wide/80
	if want := image.Rect(0, 0, Width, 3*gap+first+second); m.Bounds() != want {
		t.Fatalf("the picture is %v, want %v", m.Bounds(), want)
	}
	ground := between(paper, ink.Colour{R: 20, G: 20, B: 20}, 0.12)
	for _, at := range []struct {
		x, y int
		c    ink.Colour
	}{
		{540, gap + first/2, red}, {gap + 1, gap + first/2, red}, {Width - gap - 2, gap + first/2, red},
		{540, 2*gap + first + second/2, green},
		{540, gap / 2, ground}, {gap / 2, 300, ground}, {540, gap + first + gap/2, ground},
		{gap, gap, ground}, {Width - gap - 1, gap + first - 1, ground}, // corners
	} {
		if !is(m, at.x, at.y, at.c) {
			t.Errorf("at %d, %d the picture is %v, want %v", at.x, at.y, m.At(at.x, at.y), at.c)
		}
	}
}

// Sheets follow two by two, an odd one at the left, each over a caption on the colour of paper.
func TestSheetsFollowTwoByTwo(t *testing.T) {
	sheets := ink.Document{Title: "A run", Pages: []ink.Page{strip(64, red), strip(64, green), strip(64, red)}}
	m, _ := drawn(t, run(), sheets, Options{Paper: paper, Ink: ink.Colour{}})
	const gap, wide, half = 20, 1040, 510
	high := half*64/80 + 6*13 // the caption is 6 mm high, a millimetre 13 pixels
	top := 3*gap + 160*wide/80
	if got, want := m.Bounds().Dy(), top+2*(high+gap); got != want {
		t.Fatalf("the picture is %d high, want %d", got, want)
	}
	for _, at := range []struct {
		x, y int
		c    ink.Colour
	}{
		{gap + half/2, top + 100, red}, {2*gap + half + half/2, top + 100, green}, {gap + half/2, top + high + gap + 100, red},
		{gap + half - 8, top + high - 8, paper},
		{2*gap + half + half/2, top + high + gap + 100, between(paper, ink.Colour{}, 0.12)},
	} {
		if !is(m, at.x, at.y, at.c) {
			t.Errorf("at %d, %d the picture is %v, want %v", at.x, at.y, m.At(at.x, at.y), at.c)
		}
	}
}

func TestCaptionsNumberTheSheets(t *testing.T) {
	o := Options{}
	if err := o.complete(); err != nil {
		t.Fatal(err)
	}
	doc := ink.Document{Title: "A run", Pages: []ink.Page{{Title: "A run, Set-up close, lists"}, {Title: "A run"}, {Title: strings.Repeat("long ", 40)}}}
	for i, want := range [][2]string{{"1 / 3", "Set-up close, lists"}, {"2 / 3", "plan"}, {"3 / 3", "long long…"}} {
		p := newTable(o, 80).caption(doc, i, 39)
		got := [2]string{p.Items[1].Text.S, p.Items[2].Text.S}
		if i == 2 && strings.HasPrefix(got[1], "long long") && strings.HasSuffix(got[1], "…") {
			got[1] = want[1]
		}
		if got != want {
			t.Errorf("caption %d is %q, want %q", i, got, want)
		}
		if b := p.Bounds(o.Font).Box; b.Max.X > 39.001 || b.Min.X < -0.001 {
			t.Errorf("caption %d runs from %.1f to %.1f mm", i, b.Min.X, b.Max.X)
		}
	}
}

func TestTheSameBytes(t *testing.T) {
	_, a := drawn(t, run(), specimen.Document(), Options{})
	_, b := drawn(t, run(), specimen.Document(), Options{})
	if !bytes.Equal(a, b) {
		t.Error("two runs differ")
	}
	if !bytes.Contains(a, []byte("pHYs")) {
		t.Error("the picture has no resolution")
	}
}

func TestWhatCannotBeDrawn(t *testing.T) {
	for name, c := range map[string]struct {
		strips ink.Document
		o      Options
	}{
		"no strips":    {ink.Document{}, Options{}},
		"no size":      {ink.Document{Pages: []ink.Page{{}}}, Options{}},
		"negative":     {run(), Options{Width: -5}},
		"a few pixels": {run(), Options{Width: 5}},
		"a wall":       {run(), Options{Width: 1 << 20}},
		"a mile":       {ink.Document{Pages: []ink.Page{strip(80e3, red)}}, Options{}},
		"a tall pile":  {ink.Document{Pages: slices.Repeat([]ink.Page{strip(800, red)}, 8)}, Options{}},
	} {
		if err := Write(&bytes.Buffer{}, c.strips, ink.Document{}, c.o); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// A run that is too long is refused before any of it is drawn.
func TestTooLongARunIsNotDrawn(t *testing.T) {
	var long ink.Document
	for range 5 {
		long.Pages = append(long.Pages, strip(1000, red))
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	err := Write(io.Discard, long, ink.Document{}, Options{})
	runtime.ReadMemStats(&after)
	if err == nil || !strings.Contains(err.Error(), "the run is 65120 pixels long") {
		t.Errorf("%v", err)
	}
	if taken := (after.TotalAlloc - before.TotalAlloc) >> 20; taken > 20 { // a strip takes 54 MB
		t.Errorf("%d MB were taken for a picture that is not made", taken)
	}
}
