package png

import (
	"bytes"
	"errors"
	"flag"
	"image"
	"image/color"
	stdpng "image/png"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	"scrimshaw/render/pdf"
	"scrimshaw/render/svg"
	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

var update = flag.Bool("update", os.Getenv("UPDATE_GOLDEN") != "", "rewrite the goldens")

func family(t testing.TB) *font.Family {
	t.Helper()
	f, err := font.Default()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func written(t testing.TB, doc ink.Document, page int, opts Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, doc, page, opts); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decoded(t testing.TB, file []byte) image.Image {
	t.Helper()
	img, err := stdpng.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// drawn draws items on a page of 20 mm by 10 mm, 10 pixels to the millimetre.
func drawn(t testing.TB, draw func(c ink.Canvas)) *image.RGBA {
	t.Helper()
	page := ink.Page{Width: 20, Height: 10}
	draw(ink.NewCanvas(&page, ink.Notes))
	img, err := Draw(&page, Options{DPI: 254, Font: family(t)})
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// inked is the area that black covers on white, in square pixels.
func inked(img image.Image) float64 {
	sum := 0.0
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			sum += 1 - float64(color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y)/255
		}
	}
	return sum
}

// compare returns the mean difference of the pixels that both have, of 255, by their worst channel.
func compare(a, b image.Image) float64 {
	on := a.Bounds().Intersect(b.Bounds())
	sum := 0.0
	for y := on.Min.Y; y < on.Max.Y; y++ {
		for x := on.Min.X; x < on.Max.X; x++ {
			r1, g1, b1, _ := a.At(x, y).RGBA()
			r2, g2, b2, _ := b.At(x, y).RGBA()
			d := func(p, q uint32) float64 { return math.Abs(float64(p)-float64(q)) / 257 }
			sum += max(d(r1, r2), d(g1, g2), d(b1, b2))
		}
	}
	return sum / float64(on.Dx()*on.Dy())
}

func TestSpecimenLooksAsItDid(t *testing.T) {
	const golden = "testdata/specimen.png"
	got := written(t, specimen.Document(), 0, Options{DPI: 100})
	if *update {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if d := compare(decoded(t, got), decoded(t, want)); d > 0.02 {
		out := filepath.Join(t.ArtifactDir(), "specimen.png")
		if err := os.WriteFile(out, got, 0o644); err != nil {
			t.Error(err)
		}
		t.Errorf("%s differs by %.3f of 255 a pixel; set UPDATE_GOLDEN=1 if it is meant", golden, d)
	}
}

// tool runs a program that draws a file, in a folder of its own, and returns its picture.
func tool(t *testing.T, in []byte, name string, args ...string) image.Image {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("CI") != "" {
		t.Fatalf("%s is needed: %v", name, err)
	}
	if err != nil {
		t.Skipf("%s is not installed", name)
	}
	cmd := exec.Command(path, args...)
	cmd.Dir = t.TempDir()
	if err := os.WriteFile(filepath.Join(cmd.Dir, "in"), in, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	file, err := os.ReadFile(filepath.Join(cmd.Dir, "out.png"))
	if err != nil {
		t.Fatal(err)
	}
	return decoded(t, file)
}

// Another renderer draws the SVG of the same ink to the same picture. Rasters are left out: each
// renderer blends their pixels in its own way.
func TestPNGAndSVGAreOnePicture(t *testing.T) {
	doc := specimen.Document()
	var drawing bytes.Buffer
	if err := svg.Write(&drawing, doc, 0, svg.Options{Outlines: true}); err != nil {
		t.Fatal(err)
	}
	other := tool(t, drawing.Bytes(), "rsvg-convert", "-d", "200", "-p", "200", "-o", "out.png", "in")
	ours := decoded(t, written(t, doc, 0, Options{DPI: 200}))
	if d := compare(ours, other); d > 0.3 {
		t.Errorf("the two differ by %.3f of 255 a pixel", d)
	}
}

// So does a renderer of PDF, but that it draws thin lines in whole pixels and rasters as squares.
func TestPNGAndPDFAreOnePicture(t *testing.T) {
	doc := specimen.Document()
	var drawing bytes.Buffer
	if err := pdf.Write(&drawing, doc, pdf.Options{}); err != nil {
		t.Fatal(err)
	}
	other := tool(t, drawing.Bytes(), "pdftoppm", "-r", "200", "-png", "-singlefile", "in", "out")
	ours := decoded(t, written(t, doc, 0, Options{DPI: 200}))
	if d := compare(ours, other); d > 2.5 {
		t.Errorf("the two differ by %.3f of 255 a pixel", d)
	}
}

func TestAreasAreExact(t *testing.T) {
	black := ink.Solid(ink.Colour{})
	at := func(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }
	line := ink.Pen{Width: 0.5}
	round := ink.Pen{Width: 1, Round: true}
	for name, c := range map[string]struct {
		draw func(c ink.Canvas)
		want float64 // mm²
	}{
		"box":    {func(c ink.Canvas) { c.Rect(black, at(1.03, 2.07), at(5.06, 4.01)) }, 4.03 * 1.94},
		"circle": {func(c ink.Canvas) { c.Circle(black, at(5, 5), 3) }, math.Pi * 9},
		"ring": {func(c ink.Canvas) {
			c.Draw(black, append(ink.Circle(at(5, 5), 4), ink.Arc(at(5, 5), 2, 90, 450).Close()...))
		}, math.Pi * 12},
		"over the edge": {func(c ink.Canvas) { c.Rect(black, at(-500, 5), at(1e5, 1e5)) }, 20 * 5},
		"off the page":  {func(c ink.Canvas) { c.Rect(black, at(30, 5), at(40, 6)) }, 0},
		"two in one place": {func(c ink.Canvas) {
			c.Draw(black, append(ink.Rect(at(1, 1), at(3, 3)), ink.Rect(at(2, 2), at(4, 4))...))
		}, 7},
		"line":              {func(c ink.Canvas) { c.Polyline(line, at(2, 2), at(12, 7)) }, 0.5 * math.Hypot(10, 5)},
		"hairline":          {func(c ink.Canvas) { c.Polyline(ink.Pen{Width: 0.02}, at(2, 2), at(12, 7)) }, 0.02 * math.Hypot(10, 5)},
		"frame":             {func(c ink.Canvas) { c.Rect(ink.Pen{Width: 1}, at(2, 2), at(8, 8)) }, 49 - 25},
		"round frame":       {func(c ink.Canvas) { c.Rect(round, at(2, 2), at(8, 8)) }, 36 + 24*0.5 + math.Pi/4 - 25},
		"round line":        {func(c ink.Canvas) { c.Polyline(round, at(2, 5), at(12, 5)) }, 10 + math.Pi/4},
		"mitre":             {func(c ink.Canvas) { c.Polyline(ink.Pen{Width: 1}, at(2, 2), at(8, 2), at(8, 8)) }, 6 + 6 + 0.25 - 0.25},
		"bevel":             {func(c ink.Canvas) { c.Polyline(ink.Pen{Width: 1}, at(2, 2), at(8, 2), at(2, 2)) }, 6},
		"there and back":    {func(c ink.Canvas) { c.Polyline(round, at(2, 5), at(12, 5), at(2, 5)) }, 10 + math.Pi/4},
		"dots":              {func(c ink.Canvas) { c.Polyline(round.Dashed(0, 2), at(2, 5), at(12, 5)) }, 6 * math.Pi / 4},
		"dashes":            {func(c ink.Canvas) { c.Polyline(line.Dashed(2, 1), at(2, 5), at(12, 5)) }, 0.5 * 7},
		"odd dashes":        {func(c ink.Canvas) { c.Polyline(line.Dashed(1), at(2, 5), at(12, 5)) }, 0.5 * 5},
		"dashes round":      {func(c ink.Canvas) { c.Rect(line.Dashed(1, 1), at(2, 2), at(6, 6)) }, 0.5 * 8},
		"dashes by a frame": {func(c ink.Canvas) { c.At(at(5, 5), 0, 3).Polyline(line.Dashed(1, 1), at(-1, 0), at(1, 0)) }, 0.5 * 3},
		"clipped line": {func(c ink.Canvas) {
			c.Within(ink.Corners(at(4, 4.9), at(8, 8))...).Polyline(line, at(0, 5), at(20, 5))
		}, 4 * 0.35},
		"clipped circle": {func(c ink.Canvas) {
			c.Within(ink.Corners(at(5, 5), at(10, 10))...).Circle(black, at(5, 5), 3)
		}, math.Pi * 9 / 4},
	} {
		got := inked(drawn(t, c.draw)) / 100
		if !(math.Abs(got-c.want) <= 0.003*c.want+0.01) {
			t.Errorf("%s: %.4f mm² are black, want %.4f", name, got, c.want)
		}
	}
}

// The cover of single pixels, against 1,600 points in each.
func TestCoverIsTheShareOfAPixel(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	const size, n = 8, 40
	for range 50 {
		a, b, c := point(rnd, size), point(rnd, size), point(rnd, size)
		cover, got := newCover(size, size), [size][size]float64{}
		cover.polygon([]r2.Vec{a, b, c})
		cover.spans(func(y, from, to int, share float64) {
			for x := from; x < to; x++ {
				got[y][x] += share
			}
		})
		for y := range size {
			for x := range size {
				hits := 0
				for k := range n * n {
					p := r2.Vec{X: float64(x) + (float64(k%n)+0.5)/n, Y: float64(y) + (float64(k/n)+0.5)/n}
					s1, s2, s3 := r2.Cross(r2.Sub(b, a), r2.Sub(p, a)), r2.Cross(r2.Sub(c, b), r2.Sub(p, b)), r2.Cross(r2.Sub(a, c), r2.Sub(p, c))
					if s1 > 0 && s2 > 0 && s3 > 0 || s1 < 0 && s2 < 0 && s3 < 0 {
						hits++
					}
				}
				if want := float64(hits) / (n * n); !(math.Abs(got[y][x]-want) <= 0.03) {
					t.Fatalf("pixel %d %d of %v %v %v: %v, counted %v", x, y, a, b, c, got[y][x], want)
				}
			}
		}
	}
}

// point is a place on a picture or a little beside it.
func point(rnd *rand.Rand, size float64) r2.Vec {
	return r2.Vec{X: (size+4)*rnd.Float64() - 2, Y: (size+4)*rnd.Float64() - 2}
}

// A letter is as black as its outline is large.
func TestLettersAreTheirOutlines(t *testing.T) {
	text := ink.Text{At: r2.Vec{X: 2, Y: 3}, S: "H", Size: 6}
	got := inked(drawn(t, func(c ink.Canvas) { c.Text(text) })) / 100
	want := 0.0
	for _, run := range family(t).Outline(&text).Flatten(1e-4) {
		for i, p := range run.Points {
			want -= r2.Cross(p, run.Points[(i+1)%len(run.Points)]) / 2
		}
	}
	if want < 1 || !(math.Abs(got-want) <= 0.01*want) {
		t.Errorf("%.3f mm² are black, the outline has %.3f", got, want)
	}
}

func TestHalosHideWhatLiesBelow(t *testing.T) {
	white := ink.Colour{R: 255, G: 255, B: 255}
	img := drawn(t, func(c ink.Canvas) {
		c.Rect(ink.Solid(ink.Colour{}), r2.Vec{}, r2.Vec{X: 20, Y: 10})
		c.Text(ink.Text{At: r2.Vec{X: 2, Y: 3}, S: "l", Size: 8, Colour: ink.Colour{R: 255}, Halo: &white})
	})
	// The stem of the letter is 0.067 to 0.155 em from its left, on both sides of which lies the halo.
	row := 100 - 50
	for x, want := range map[int]color.RGBA{
		26: {255, 0, 0, 255}, 20: {255, 255, 255, 255}, 35: {255, 255, 255, 255}, 10: {0, 0, 0, 255}, 48: {0, 0, 0, 255},
	} {
		if got := img.RGBAAt(x, row); got != want {
			t.Errorf("pixel %d is %v, want %v", x, got, want)
		}
	}
}

func TestImages(t *testing.T) {
	quarters := ink.Image{Min: r2.Vec{X: 4, Y: 2}, Max: r2.Vec{X: 12, Y: 8}, Width: 2, Height: 2,
		RGB: []byte{255, 0, 0, 0, 255, 0, 0, 0, 255, 255, 255, 0}}
	img := drawn(t, func(c ink.Canvas) { c.Image(quarters) })
	for _, c := range []struct {
		x, y int
		want color.RGBA
	}{
		{42, 22, color.RGBA{255, 0, 0, 255}}, {117, 22, color.RGBA{0, 255, 0, 255}},
		{42, 77, color.RGBA{0, 0, 255, 255}}, {117, 77, color.RGBA{255, 255, 0, 255}},
		{38, 50, color.RGBA{255, 255, 255, 255}}, {122, 50, color.RGBA{255, 255, 255, 255}},
	} {
		if got := img.RGBAAt(c.x, c.y); got != c.want {
			t.Errorf("pixel %d %d is %v, want %v", c.x, c.y, got, c.want)
		}
	}
	// A board of single pixels, much finer than the picture's, is grey.
	fine := ink.Image{Max: r2.Vec{X: 10, Y: 10}, Width: 1000, Height: 1000}
	for i := range 1000 * 1000 {
		v := byte(255 * ((i + i/1000) % 2))
		fine.RGB = append(fine.RGB, v, v, v)
	}
	if got := drawn(t, func(c ink.Canvas) { c.Image(fine) }).RGBAAt(50, 50); got.R < 120 || got.R > 135 {
		t.Errorf("a fine board is %v", got)
	}
}

func TestResolution(t *testing.T) {
	for _, c := range []struct {
		opts          Options
		width, height int
		perMetre      uint32
	}{
		{Options{}, 1063, 709, 5906},
		{Options{DPI: 300}, 2126, 1417, 11811},
		{Options{Width: 900}, 900, 600, 5000},
		{Options{Width: 90, DPI: 600}, 90, 60, 500},
	} {
		file := written(t, specimen.Document(), 0, c.opts)
		if b := decoded(t, file).Bounds(); b.Dx() != c.width || b.Dy() != c.height {
			t.Errorf("%+v: %v pixels, want %d by %d", c.opts, b, c.width, c.height)
		}
		at := bytes.Index(file, []byte("pHYs")) + 4
		be := func(b []byte) uint32 { return uint32(b[0])<<24 | uint32(b[1])<<16 | uint32(b[2])<<8 | uint32(b[3]) }
		if x, y, unit := be(file[at:]), be(file[at+4:]), file[at+8]; x != c.perMetre || y != c.perMetre || unit != 1 {
			t.Errorf("%+v: %d by %d to unit %d, want %d to the metre", c.opts, x, y, unit, c.perMetre)
		}
	}
}

func TestFewColoursAreAPalette(t *testing.T) {
	page := ink.Page{Width: 100, Height: 100}
	ink.NewCanvas(&page, ink.Notes).Rect(ink.Solid(ink.Colour{R: 200}), r2.Vec{}, r2.Vec{X: 50, Y: 100})
	few := written(t, ink.Document{Pages: []ink.Page{page}}, 0, Options{})
	if _, ok := decoded(t, few).(*image.Paletted); !ok || len(few) > 5000 {
		t.Errorf("%T of %d bytes", decoded(t, few), len(few))
	}
	if many := written(t, specimen.Document(), 0, Options{}); len(many) > 200_000 {
		t.Errorf("the specimen has %d bytes", len(many))
	}
	for _, page := range []ink.Page{page, specimen.Page()} {
		img, err := Draw(&page, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if d := compare(img, decoded(t, written(t, ink.Document{Pages: []ink.Page{page}}, 0, Options{}))); d != 0 {
			t.Errorf("the file differs from the picture by %v", d)
		}
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	doc := specimen.Document()
	empty := ink.Document{Pages: []ink.Page{{Width: 10}}}
	for name, c := range map[string]struct {
		doc  ink.Document
		page int
		opts Options
		want string
	}{
		"no page":     {doc, 5, Options{}, "no page 6 in a document of 2"},
		"no size":     {empty, 0, Options{}, "10 by 0 mm"},
		"backwards":   {doc, 0, Options{DPI: -1}, "-1 pixels"},
		"narrow":      {doc, 0, Options{Width: -7}, "-7 pixels"},
		"no number":   {doc, 0, Options{DPI: math.NaN()}, "NaN"},
		"too many":    {doc, 0, Options{DPI: 5000}, "too many"},
		"without end": {doc, 0, Options{DPI: math.Inf(1)}, "too many"},
	} {
		if err := Write(io.Discard, c.doc, c.page, c.opts); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", name, err, c.want)
		}
	}
	if err := Write(broken{}, doc, 0, Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("a full disk gives %v", err)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestSameBytesFromManyGoroutines(t *testing.T) {
	opts := Options{Font: family(t), DPI: 60}
	want := written(t, specimen.Document(), 0, opts)
	var group sync.WaitGroup
	for range 6 {
		group.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, specimen.Document(), 0, opts); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("another result: %v", err)
			}
		})
	}
	group.Wait()
}
