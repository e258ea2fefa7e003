package main

import (
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scrimshaw/cmd/internal/compare"
)

// How much the same page may differ between two renderers at the resolution that a PNG has unasked:
// alike by the mean difference in linear light, and by the share of pixels that differ by more than
// an eighth of its range; apart by the share of those that no edge a pixel aside explains.
const (
	alike = 0.02
	apart = 0.002
)

// TestRenderersAgree draws samples with every mark among them, and holds what other programs make of the files to each
// other and to this one: SVG in a browser to SVG by librsvg, PDF by poppler to the PNG of our own.
func TestRenderersAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a minute")
	}
	rsvg, poppler, browser := tool(t, "rsvg-convert"), tool(t, "pdftocairo"), tool(t, "chromium", "chromium-browser", "google-chrome")
	fonts := typefaces(t)
	window := openWindow(t, browser, fonts)
	runs := otherLooks()
	for _, name := range pictured() {
		runs = append(runs, []string{name})
	}
	for _, args := range runs {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			d, dir := drawnSample(t, args[0], args[1:]...), t.TempDir()
			for i, page := range d.pages {
				base := filepath.Join(dir, filepath.Base(page))
				ours := decoded(t, page+".png")
				size := ours.Bounds().Size()
				wide, high := fmt.Sprint(size.X), fmt.Sprint(size.Y)

				execute(t, fonts, rsvg, "-w", wide, "-h", high, "-o", base+".rsvg.png", page+".svg")
				hold(t, filepath.Base(base)+".svg in a browser and by librsvg", window.shot(t, page+".svg", size), decoded(t, base+".rsvg.png"))

				// Poppler sets each letter to a quarter of a pixel, ours to its place: it draws twice as large, and the mean of four pixels is held to one.
				number, wide2, high2 := fmt.Sprint(i+1), fmt.Sprint(2*size.X), fmt.Sprint(2*size.Y)
				execute(t, fonts, poppler, "-png", "-singlefile", "-f", number, "-l", number, "-scale-to-x", wide2, "-scale-to-y", high2, "-W", wide2, "-H", high2,
					filepath.Join(d.folder, "a.pdf"), base+".poppler")
				hold(t, filepath.Base(base)+".pdf by poppler and as PNG", compare.Halved(decoded(t, base+".poppler.png")), ours)
			}
		})
	}
}

// otherLooks are samples drawn in looks other than the usual one.
func otherLooks() [][]string {
	return [][]string{{"map-room", "--theme", "night"}, {"two-sizes", "--setup", "wide", "--theme", "ink", "--tint", "smooth"}}
}

// hold fails where two pictures of a page differ too much.
func hold(t *testing.T, what string, a, b image.Image) {
	t.Helper()
	d, err := compare.Images(a, b)
	if err != nil {
		t.Errorf("%s: %v", what, err)
		return
	}
	t.Logf("%s: %v", what, d)
	if d.Mean > alike || d.Share > alike || d.Apart > apart {
		t.Errorf("%s differ: %v, want under %.1f, %.1f and %.1f %%", what, d, 100*alike, 100*alike, 100*apart)
	}
}

func decoded(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	m, err := png.Decode(f)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return m
}
