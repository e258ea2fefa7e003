package main

import (
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scrimshaw/cmd/internal/compare"
)

// Lines that run from right to left, and mixed ones, are the same in the files of every kind, as other programs draw
// them, and are found in a PDF as they are read.
func TestLinesThatRunLeft(t *testing.T) {
	rsvg, poppler, words := tool(t, "rsvg-convert"), tool(t, "pdftocairo"), tool(t, "pdftotext")
	fonts := typefaces(t)
	dir := t.TempDir()
	scene, base := filepath.Join(dir, "a.yaml"), filepath.Join(dir, "a")
	lines := []string{"אור יום בחדר 12.", "the אור at 12 (left)", "(key) חלון גדול"}
	text := fmt.Sprintf("scrimshaw: 1\ntitle: %q\nsheet: {production: %q, location: %q}\nlights: {l: {output: {lumens: 100, shape: uniform}, at: [0, 0], height: 2}}\n", lines[0], lines[1], lines[2])
	if err := os.WriteFile(scene, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if status, said := called(t, "draw", "--quality", "draft", scene, "-o", base+".svg", "-o", base+".png", "-o", base+".pdf"); status != exitFine || strings.Contains(said, "warning") {
		t.Fatal(said)
	}
	ours := decoded(t, base+".png")
	wide, high := fmt.Sprint(ours.Bounds().Dx()), fmt.Sprint(ours.Bounds().Dy())
	execute(t, fonts, rsvg, "-w", wide, "-h", high, "-o", base+".rsvg.png", base+".svg")
	sameWords(t, "SVG by librsvg and as PNG", decoded(t, base+".rsvg.png"), ours)
	execute(t, fonts, poppler, "-png", "-singlefile", "-scale-to-x", wide, "-scale-to-y", high, "-W", wide, "-H", high, base+".pdf", base+".poppler")
	sameWords(t, "PDF by poppler and as PNG", decoded(t, base+".poppler.png"), ours)
	execute(t, fonts, words, base+".pdf", base+".txt")
	for _, word := range []string{"יום", "חלון", "גדול"} {
		if found := read(t, base+".txt"); !strings.Contains(found, word) {
			t.Errorf("the PDF holds no %q:\n%s", word, found)
		}
	}
}

// sameWords fails where two pictures of a page differ by more than the edges of letters: words in another order do.
func sameWords(t *testing.T, what string, a, b image.Image) {
	t.Helper()
	const moved = 0.0005
	if d, err := compare.Images(a, b); err != nil || d.Apart > moved {
		t.Errorf("%s differ: %v, %v", what, d, err)
	}
}

// A warning names letters that are not joined as they should be.
func TestUnjoinedLettersAreTold(t *testing.T) {
	dir := t.TempDir()
	scene := filepath.Join(dir, "a.yaml")
	if err := os.WriteFile(scene, []byte("scrimshaw: 1\ntitle: نور\nlights: {l: {output: {lumens: 100, shape: uniform}, at: [0, 0], height: 2}}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, said := called(t, "draw", "--quality", "draft", scene, "-o", filepath.Join(dir, "a.svg"))
	if !strings.Contains(said, "are joined to their neighbours as a rule: they are lettered one by one [unshaped]") {
		t.Errorf("it says %q", said)
	}
}
