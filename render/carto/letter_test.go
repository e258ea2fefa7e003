package carto

import (
	"math"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// figures gives each line a figure of its level's width at 2.2 mm.
func figures(l Line) r2.Vec {
	return r2.Vec{X: 1.3 * float64(len(Level{Lux: l.Level}.Label(Lux, 1))), Y: 1.8}
}

func drawn(seed rng) []Line {
	lines := contours(Denoise(studio(seed, 200, 160, 0.01), 0.03), stops12, Paper(20))
	return OnPaper(lines, func(p r2.Vec) r2.Vec { return r2.Add(r2.Vec{X: 20, Y: 20}, r2.Scale(20, p)) })
}

func TestLetteringIsUprightStraightAndFree(t *testing.T) {
	count := 0
	for seed := range rng(8) {
		lines := drawn(seed)
		walls := []Obstacle{
			{Outline: BoxOutline(r2.Box{Min: r2.Vec{X: 60, Y: 20}, Max: r2.Vec{X: 75, Y: 120}})},
			{Outline: []r2.Vec{{X: 20, Y: 100}, {X: 220, Y: 60}}},
			{Outline: []r2.Vec{{X: 150, Y: 50}, {X: 190, Y: 60}, {X: 160, Y: 90}}},
		}
		letters := Letter(lines, LetterOptions{Size: figures, Obstacles: walls})
		count += len(letters)
		for n, l := range letters {
			if l.Angle <= -90 || l.Angle > 90 {
				t.Errorf("seed %d: a figure stands at %.0f°", seed, l.Angle)
			}
			for _, o := range walls {
				if Overlap(l.Outline(), o.Outline) {
					t.Errorf("seed %d: a figure covers an obstacle at %v", seed, l.At)
				}
			}
			for m, other := range letters[:n] {
				if Overlap(l.Outline(), other.Outline()) {
					t.Errorf("seed %d: figures %d and %d overlap", seed, n, m)
				}
				same := lines[l.Line].Index == lines[other.Line].Index
				if d := r2.Norm(r2.Sub(l.At, other.At)); same && d < 30 {
					t.Errorf("seed %d: two figures of one level are %.0f mm apart", seed, d)
				}
			}
			for _, p := range measureLine(lines[l.Line]).cut(l.From, l.To).Points {
				if off := across(p, l); off > 0.7+1e-9 {
					t.Errorf("seed %d: the line strays %.2f mm from its figure", seed, off)
				}
			}
		}
		// Nothing runs through a figure once the lines are cut.
		for _, line := range Cut(lines, letters) {
			for i := range line.spans() {
				a, b := line.span(i)
				for _, l := range letters {
					if Overlap(l.Outline(), []r2.Vec{a, b}) {
						t.Errorf("seed %d: a line of %g runs through the figure at %v", seed, line.Level, l.At)
					}
				}
			}
		}
	}
	if count < 8*12 {
		t.Errorf("%d figures on 8 sheets, want a dozen each", count)
	}
}

// across returns how far p lies from the base of a lettering.
func across(p r2.Vec, l Lettering) float64 {
	sin, cos := math.Sincos(l.Angle * math.Pi / 180)
	d := r2.Sub(p, l.At)
	return math.Abs(d.Y*cos - d.X*sin)
}

func TestCutTakesTheGapsOut(t *testing.T) {
	lines := drawn(3)
	letters := Letter(lines, LetterOptions{Size: figures})
	before, after, gaps := 0.0, 0.0, 0.0
	for _, l := range lines {
		before += l.Length()
	}
	for _, l := range Cut(lines, letters) {
		after += l.Length()
	}
	for _, l := range letters {
		gaps += l.To - l.From
		if want := l.Size.X + 1.4; !(math.Abs(l.To-l.From-want) <= 1e-9) {
			t.Errorf("a gap of %.2f mm for a figure of %.2f mm", l.To-l.From, l.Size.X)
		}
	}
	if len(letters) == 0 || !(math.Abs(before-after-gaps) <= 1e-6*before) {
		t.Errorf("%.3f mm of line less %.3f mm of gaps leave %.3f mm", before, gaps, after)
	}
}

func TestLongLinesAreLetteredAgain(t *testing.T) {
	l := Line{Level: 100, Points: []r2.Vec{{X: 0}, {X: 400}}}
	letters := Letter([]Line{l}, LetterOptions{Size: figures})
	if len(letters) != 4 {
		t.Errorf("%d figures on 400 mm, want 4", len(letters))
	}
	if short := Letter([]Line{{Level: 100, Points: []r2.Vec{{X: 0}, {X: 8}}}}, LetterOptions{Size: figures}); len(short) != 0 {
		t.Errorf("%d figures on 8 mm, want none", len(short))
	}
}

func TestLetteringIsTheSameEachTime(t *testing.T) {
	lines := drawn(2)
	first := Letter(lines, LetterOptions{Size: figures})
	if !reflect.DeepEqual(first, Letter(lines, LetterOptions{Size: figures})) {
		t.Error("two runs differ")
	}
	if Letter(nil, LetterOptions{Size: figures}) != nil || Letter(lines, LetterOptions{}) != nil {
		t.Error("nothing to letter, yet figures")
	}
}

func TestUpright(t *testing.T) {
	for _, c := range []struct {
		d    r2.Vec
		want float64
	}{{r2.Vec{X: 1}, 0}, {r2.Vec{X: -1}, 0}, {r2.Vec{Y: 1}, 90}, {r2.Vec{Y: -1}, 90}, {r2.Vec{X: -1, Y: 1}, -45}, {r2.Vec{X: -1, Y: -1}, 45}} {
		if got := Upright(c.d); !(math.Abs(got-c.want) <= 1e-9) {
			t.Errorf("%v reads at %g°, want %g°", c.d, got, c.want)
		}
	}
}

func BenchmarkLetter(b *testing.B) {
	lines := drawn(2)
	b.ReportAllocs()
	for b.Loop() {
		Letter(lines, LetterOptions{Size: figures})
	}
}
