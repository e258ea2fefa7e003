package main

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var (
	pathData = regexp.MustCompile(` d="([^"]*)"([^>]*)`)
	matrix   = regexp.MustCompile(`matrix\(([^)]*)\)`)
	number   = regexp.MustCompile(`-?[0-9.]+`)
)

// TestScaleBarOnPaper measures the scale bar in the files that come out, in SVG by its object, in
// PDF by a program that knows nothing of this one (poppler): one of its paths has to be as long as
// the bar, to a thousandth.
func TestScaleBarOnPaper(t *testing.T) {
	if _, err := exec.LookPath("pdftocairo"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal(err)
		}
		t.Skip("pdftocairo of poppler-utils is not installed")
	}
	for name, metres := range map[string]float64{"map-room": 1.0 / 25, "two-sizes": 4 * 0.3048 / 32} {
		t.Run(name, func(t *testing.T) {
			d := drawnSample(t, name)
			pdf, plan := filepath.Join(d.folder, "a.pdf"), slices.IndexFunc(d.pages, func(base string) bool { return strings.Contains(read(t, base+".svg"), "scale-bar") })
			svg, number := d.pages[max(0, plan)]+".svg", fmt.Sprint(plan+1)
			want := metres * 1000 // mm on paper
			if got := barWidth(t, svg); !(math.Abs(got-want) <= want/1000) {
				t.Errorf("in SVG the bar is %.4f mm long, want %.4f", got, want)
			}
			again := filepath.Join(t.TempDir(), "b.svg")
			if out, err := exec.Command("pdftocairo", "-svg", "-noshrink", "-f", number, "-l", number, pdf, again).CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, out)
			}
			const point = 25.4 / 72
			if got := nearestWidth(t, again, want/point, 1.6/point) * point; !(math.Abs(got-want) <= want/1000) {
				t.Errorf("in PDF the bar is %.4f mm long, want %.4f", got, want)
			}
		})
	}
}

// barWidth is the width of the group of the scale bar, in the units of the drawing.
func barWidth(t *testing.T, path string) float64 {
	text := read(t, path)
	at := strings.Index(text, `data-object="scale-bar"`)
	if at < 0 {
		t.Fatal("no scale bar")
	}
	group := text[at : at+strings.Index(text[at:], "</g>")]
	low, high := math.Inf(1), math.Inf(-1)
	for _, d := range pathData.FindAllStringSubmatch(group, -1) {
		w, _, from := extent(d[1])
		low, high = math.Min(low, from), math.Max(high, from+w)
	}
	return high - low
}

// nearestWidth is the width of the path of a height that comes nearest to one looked for.
func nearestWidth(t *testing.T, path string, want, high float64) float64 {
	best := math.Inf(1)
	for _, d := range pathData.FindAllStringSubmatch(read(t, path), -1) {
		scale := 1.0
		if m := matrix.FindStringSubmatch(d[2]); m != nil {
			scale, _ = strconv.ParseFloat(number.FindString(m[1]), 64)
		}
		w, h, _ := extent(d[1])
		if w, h = w*math.Abs(scale), h*math.Abs(scale); math.Abs(h-high) < high/50 && math.Abs(w-want) < math.Abs(best-want) {
			best = w
		}
	}
	return best
}

// extent is the width and height of path data of straight lines, and its left end.
func extent(d string) (w, h, left float64) {
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for i, s := range number.FindAllString(d, -1) {
		v, _ := strconv.ParseFloat(s, 64)
		low[i%2], high[i%2] = math.Min(low[i%2], v), math.Max(high[i%2], v)
	}
	return high[0] - low[0], high[1] - low[1], low[0]
}

func read(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
