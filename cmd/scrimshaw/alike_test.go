package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"io"
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

// TestRenderersAgree draws every sample and holds what other programs make of the files to each
// other and to this one: SVG in a browser to SVG by librsvg, PDF by poppler to the PNG of our own.
func TestRenderersAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a minute")
	}
	rsvg, poppler, browser := tool(t, "rsvg-convert"), tool(t, "pdftocairo"), tool(t, "chromium", "chromium-browser", "google-chrome")
	fonts := typefaces(t)
	window := openWindow(t, browser, fonts)
	runs := [][]string{{"map-room", "--theme", "night"}, {"two-sizes", "--theme", "ink", "--tint", "smooth"}}
	for _, name := range pictured() {
		runs = append(runs, []string{name})
	}
	for _, args := range runs {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			dir := t.TempDir()
			for i, base := range drawnPages(t, dir, args) {
				ours := decoded(t, base+".png")
				size := ours.Bounds().Size()
				wide, high := fmt.Sprint(size.X), fmt.Sprint(size.Y)

				execute(t, fonts, rsvg, "-w", wide, "-h", high, "-o", base+".rsvg.png", base+".svg")
				hold(t, filepath.Base(base)+".svg in a browser and by librsvg", window.shot(t, base+".svg", size), decoded(t, base+".rsvg.png"))

				number := fmt.Sprint(i + 1)
				execute(t, fonts, poppler, "-png", "-singlefile", "-f", number, "-l", number, "-scale-to-x", wide, "-scale-to-y", high, "-W", wide, "-H", high,
					filepath.Join(dir, "a.pdf"), base+".poppler")
				hold(t, filepath.Base(base)+".pdf by poppler and as PNG", decoded(t, base+".poppler.png"), ours)
			}
		})
	}
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

// drawnPages draws a sample as SVG, PNG and PDF and returns the pages' paths without their ending,
// in order.
func drawnPages(t *testing.T, dir string, args []string) (bases []string) {
	t.Helper()
	var said bytes.Buffer
	line := []string{"draw", "../../samples/" + args[0] + ".yaml"}
	for _, ending := range []string{".svg", ".png", ".pdf"} {
		line = append(line, "-o", filepath.Join(dir, "a"+ending))
	}
	std := streams{in: strings.NewReader(""), out: io.Discard, err: &said}
	if status := run(context.Background(), append(line, args[1:]...), std); status != 0 {
		t.Fatalf("draw ends with %d: %s", status, &said)
	}
	for _, l := range strings.Split(said.String(), "\n") {
		if path, ok := strings.CutPrefix(l, "wrote "); ok && strings.HasSuffix(path, ".svg") {
			bases = append(bases, strings.TrimSuffix(path, ".svg"))
		}
	}
	if len(bases) == 0 {
		t.Fatalf("no pages: %s", &said)
	}
	return bases
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
