package main

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	pages "scrimshaw/render/png"
	"scrimshaw/render/sheet"
	"scrimshaw/symbols/ink"
)

// A copier: it sees a page at so many pixels to the inch, blurred by so many mm, in black and white, and makes it an A
// size smaller.
const (
	copierDPI    = 300.0
	copierBlur   = 0.15
	copierShrink = 0.71
	copies       = 2

	keptLength = 0.80 // of contours, beams and throws on the last copy
	fewerRead  = 0.05 // of the lettering on the page that may be lost on the copy
	readHeight = 2.0  // mm of a capital: what is lettered larger is held to that
)

// grey is a picture in shades, 0 black to 1 paper, rows from the top.
type grey struct {
	wide, high int
	shade      []float64
}

// TestInkSurvivesACopier copies the first page of samples of every kind twice, each time onto paper an A size smaller.
func TestInkSurvivesACopier(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a minute")
	}
	reader := tool(t, "tesseract")
	before, after, all := 0, 0, 0
	for _, name := range pictured() {
		t.Run(name, func(t *testing.T) {
			page := &inked(t, name, sheet.Options{Theme: "ink"}).Pages[0]
			drawn, err := pages.Draw(page, pages.Options{DPI: copierDPI})
			if err != nil {
				t.Fatal(err)
			}
			plain(t, drawn)
			original := shades(drawn)
			last := original
			for range copies {
				last = last.copied()
			}
			for _, l := range []ink.Layer{ink.Contours, ink.Beams, ink.Throws} {
				if kept, of := keptOf(page, l, &original, &last); of > 0 {
					t.Logf("%s: %.1f %% of %.0f mm", l.Title(), 100*kept, of)
					if kept < keptLength {
						t.Errorf("%s: the copy keeps %.1f %%", l.Title(), 100*kept)
					}
				}
			}
			first, n := readOf(t, reader, page, &original)
			second, _ := readOf(t, reader, page, &last)
			before, after, all = before+first, after+second, all+n
			t.Logf("of %d letterings %d are read on the page, %d on the copy", n, first, second)
		})
	}
	if share := func(n int) float64 { return float64(n) / float64(all) }; all < 40 || share(before) < 0.6 || share(after) < share(before)-fewerRead {
		t.Errorf("of %d letterings %d are read on the page, %d on the copy", all, before, after)
	}
}

// inked is a sample as a document.
func inked(t *testing.T, name string, o sheet.Options) ink.Document {
	t.Helper()
	var ins []sheet.Input
	for _, lit := range litSample(t, name) {
		ins = append(ins, sheet.Of(lit, o))
	}
	out, faults := sheet.Compose(ins, o)
	if len(out.Pages) == 0 {
		t.Fatal(faults)
	}
	return out
}

// plain fails where a page has anything but black and white, and what lies between them at an edge.
func plain(t *testing.T, m *image.RGBA) {
	t.Helper()
	greys, flat := 0, 0
	b := m.Bounds()
	at := func(x, y int) color.RGBA { return m.RGBAAt(x, y) }
	for y := b.Min.Y + 1; y < b.Max.Y-1; y++ {
		for x := b.Min.X + 1; x < b.Max.X-1; x++ {
			c := at(x, y)
			if c.R != c.G || c.G != c.B {
				t.Fatalf("the pixel %d, %d is %v", x, y, c)
			}
			if c.R > 8 && c.R < 247 {
				greys++
				if at(x-1, y) == c && at(x+1, y) == c && at(x, y-1) == c && at(x, y+1) == c {
					flat++
				}
			}
		}
	}
	if float64(flat) > 0.002*float64(greys) {
		t.Errorf("%d of %d grey pixels lie among their like", flat, greys)
	}
}

func shades(m *image.RGBA) grey {
	b := m.Bounds()
	g := grey{b.Dx(), b.Dy(), make([]float64, 0, b.Dx()*b.Dy())}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			g.shade = append(g.shade, float64(m.RGBAAt(x, y).G)/255)
		}
	}
	return g
}

// at is the shade of a pixel; beside the page there is paper.
func (g *grey) at(x, y int) float64 {
	if x < 0 || y < 0 || x >= g.wide || y >= g.high {
		return 1
	}
	return g.shade[y*g.wide+x]
}

// copied is the copy of a page.
func (g grey) copied() grey {
	g = g.blurred(copierBlur * copierDPI / 25.4)
	for i, v := range g.shade {
		g.shade[i] = math.Round(v)
	}
	out := grey{wide: int(float64(g.wide) * copierShrink), high: int(float64(g.high) * copierShrink)}
	out.shade = make([]float64, 0, out.wide*out.high)
	for y := range out.high {
		for x := range out.wide {
			u, v := (float64(x)+0.5)/copierShrink-0.5, (float64(y)+0.5)/copierShrink-0.5
			i, j := int(math.Floor(u)), int(math.Floor(v))
			a, b := u-float64(i), v-float64(j)
			out.shade = append(out.shade, (1-a)*(1-b)*g.at(i, j)+a*(1-b)*g.at(i+1, j)+(1-a)*b*g.at(i, j+1)+a*b*g.at(i+1, j+1))
		}
	}
	return out
}

// blurred is a picture under a Gaussian of a standard deviation, pixels.
func (g grey) blurred(sigma float64) grey {
	reach := int(math.Ceil(3 * sigma))
	weights := make([]float64, 2*reach+1)
	sum := 0.0
	for i := range weights {
		d := float64(i-reach) / sigma
		weights[i] = math.Exp(-d * d / 2)
		sum += weights[i]
	}
	for i := range weights {
		weights[i] /= sum
	}
	return g.alongRows(weights).alongColumns(weights)
}

// alongRows sums each pixel and its neighbours to the left and right by their weights.
func (g grey) alongRows(weights []float64) grey {
	reach := len(weights) / 2
	out := grey{g.wide, g.high, make([]float64, len(g.shade))}
	line := slices.Repeat([]float64{1}, g.wide+2*reach)
	for y := range g.high {
		copy(line[reach:], g.shade[y*g.wide:(y+1)*g.wide])
		row := out.shade[y*g.wide : (y+1)*g.wide]
		for i, w := range weights {
			for x, v := range line[i : i+g.wide] {
				row[x] += w * v
			}
		}
	}
	return out
}

// alongColumns sums each pixel and its neighbours above and below by their weights.
func (g grey) alongColumns(weights []float64) grey {
	reach := len(weights) / 2
	out := grey{g.wide, g.high, make([]float64, len(g.shade))}
	paper := slices.Repeat([]float64{1}, g.wide)
	for y := range g.high {
		row := out.shade[y*g.wide : (y+1)*g.wide]
		for i, w := range weights {
			from := paper
			if v := y + i - reach; v >= 0 && v < g.high {
				from = g.shade[v*g.wide : (v+1)*g.wide]
			}
			for x, v := range from {
				row[x] += w * v
			}
		}
	}
	return out
}

// pixel is where a point of a page lies on a picture of it, whatever its size.
func (g *grey) pixel(page *ink.Page, p r2.Vec) (x, y int) {
	return int(p.X / page.Width * float64(g.wide)), int((page.Height - p.Y) / page.Height * float64(g.high))
}

// dark says whether there is ink at a point of a page or right beside it.
func (g *grey) dark(page *ink.Page, p r2.Vec) bool {
	x, y := g.pixel(page, p)
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			if g.at(x+dx, y+dy) < 0.5 {
				return true
			}
		}
	}
	return false
}

// keptOf is how much of the lines of a layer that show on the page show on the copy too, and how long they are, mm.
func keptOf(page *ink.Page, l ink.Layer, original, last *grey) (share, of float64) {
	const step = 0.2 // mm
	kept := 0.0
	for i := range page.Items {
		it := &page.Items[i]
		if it.Layer != l || it.Stroke == nil {
			continue
		}
		for _, run := range ink.Path(it.Path).Flatten(0.05) {
			for j := 1; j < len(run.Points); j++ {
				a, b := run.Points[j-1], run.Points[j]
				for d := 0.0; d < r2.Norm(r2.Sub(b, a)); d += step {
					p := r2.Add(a, r2.Scale(d, r2.Unit(r2.Sub(b, a))))
					if original.dark(page, p) {
						of += step
						if last.dark(page, p) {
							kept += step
						}
					}
				}
			}
		}
	}
	return kept / math.Max(of, step), of
}

// readOf is how much of the level lettering of a page a program reads off a picture of it, of how much.
func readOf(t *testing.T, reader string, page *ink.Page, g *grey) (read, all int) {
	t.Helper()
	family, err := font.Default()
	if err != nil {
		t.Fatal(err)
	}
	var texts []string
	var lines []image.Image
	for i := range page.Items {
		text := page.Items[i].Text
		if text == nil || text.Angle != 0 || family.CapHeight(text.Size) <= readHeight || len(letters(text.S)) < 3 {
			continue
		}
		texts, lines = append(texts, text.S), append(lines, g.cut(page, text.Corners(family)))
	}
	for i, got := range readLines(t, reader, lines) {
		if strings.Contains(letters(got), letters(texts[i])) {
			read++
		}
	}
	return read, len(texts)
}

// letters are those of a text, and its figures.
func letters(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}

// cut is the part of a picture about a lettering, enlarged to the size that the reader likes.
func (g *grey) cut(page *ink.Page, corners [4]r2.Vec) *image.Gray {
	const margin, lines = 0.8, 60.0 // mm; pixels of a line
	x0, y1 := g.pixel(page, r2.Sub(corners[0], r2.Vec{X: margin, Y: margin}))
	x1, y0 := g.pixel(page, r2.Add(corners[2], r2.Vec{X: margin, Y: margin}))
	times := math.Max(1, lines/float64(y1-y0))
	m := image.NewGray(image.Rect(0, 0, int(float64(x1-x0)*times)+40, int(float64(y1-y0)*times)+40))
	for y := range m.Rect.Dy() {
		for x := range m.Rect.Dx() {
			u, v := x0+int(float64(x-20)/times), y0+int(float64(y-20)/times)
			shade := 1.0
			if x >= 20 && y >= 20 && u < x1 && v < y1 {
				shade = g.at(u, v)
			}
			m.SetGray(x, y, color.Gray{Y: uint8(255 * shade)})
		}
	}
	return m
}

// readLines is what a program reads off pictures of a line each.
func readLines(t *testing.T, reader string, lines []image.Image) []string {
	t.Helper()
	dir := t.TempDir()
	var list strings.Builder
	for i, m := range lines {
		path := filepath.Join(dir, fmt.Sprintf("%d.png", i))
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := png.Encode(f, m); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		fmt.Fprintln(&list, path)
	}
	names, found := filepath.Join(dir, "list.txt"), filepath.Join(dir, "found")
	if err := os.WriteFile(names, []byte(list.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	execute(t, "OMP_THREAD_LIMIT=1", reader, names, found, "--psm", "7", "--dpi", "300")
	got := strings.Split(strings.TrimSuffix(read(t, found+".txt"), "\f"), "\f")
	if len(got) != len(lines) {
		t.Fatalf("of %d lines %d are read", len(lines), len(got))
	}
	return got
}
