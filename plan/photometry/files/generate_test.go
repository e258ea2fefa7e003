package files_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

// generator makes files at random, every form of them, that are as their format has it.
type generator struct{ *rand.Rand }

// figure is a number of few or many figures.
func (g generator) figure(most float64) float64 {
	v := g.Float64() * most
	if g.IntN(2) == 0 {
		v = math.Round(v*100) / 100
	}
	return v
}

// pick takes one of a list.
func pick[T any](g generator, list ...T) T { return list[g.IntN(len(list))] }

// words is a line of text, with letters beyond ASCII in some.
func (g generator) words() string {
	return pick(g, "lamp", "long arm", "1/2 flood, wide", "Größe 2 — klar", "été", "Ω 光", "\u0102", "[x", "a ] b", "-1") + pick(g, "", " 7", " (b)")
}

// between are angles from one end to the other, even or not.
func (g generator) between(from, to float64, most int) []float64 {
	n := 1 + g.IntN(most)
	list := []float64{from}
	if g.IntN(2) == 0 {
		for i := 1; i < n; i++ {
			list = append(list, from+(to-from)*float64(i)/float64(n))
		}
		return append(list, to)
	}
	for range n - 1 {
		list = append(list, from+(to-from)*(0.001+0.998*g.Float64()))
	}
	slices.Sort(list)
	return append(slices.Compact(list), to)
}

// rows are intensities of some height, all of the same on the axis, with darkness among them.
func (g generator) rows(planes, angles int, most float64) [][]float64 {
	rows := make([][]float64, planes)
	for i := range rows {
		for range angles {
			v := g.figure(most)
			if g.IntN(8) == 0 {
				v = 0
			}
			rows[i] = append(rows[i], v)
		}
		rows[i][0] = most
	}
	return rows
}

func (g generator) lm63() *files.LM63 {
	l := &files.LM63{
		Edition: files.Edition(g.IntN(5)), Lamps: 1 + g.IntN(4), Lumens: pick(g, -1, 800, 12345.678), Multiplier: pick(g, 1, 0.5, 14.7),
		System: photometry.System(g.IntN(3)), Feet: g.IntN(2) == 0, Ballast: pick(g, 1, 0.94), Second: pick(g, 1, 1, 0.88, 1.0001),
		Watts: g.figure(2000),
		Width: g.figure(2) * pick(g, -1.0, 0, 1), Length: g.figure(2) * pick(g, -1.0, 0, 1), Height: g.figure(2) * pick(g, -1.0, 0, 1),
	}
	for i := range g.IntN(6) {
		k := files.Keyword{Key: pick(g, "TEST", "MANUFAC", "LUMCAT", "_OWN", "OTHER"), Text: g.words()}
		if i == 0 && g.IntN(3) == 0 {
			k = files.Keyword{Text: "a remark"}
		}
		if g.IntN(4) == 0 {
			k.Text += "\n" + pick(g, "", "more of it", "TILT=NONE")
		}
		l.Keywords = append(l.Keywords, k)
	}
	g.tilt(l)
	if l.System == photometry.TypeC {
		l.Vertical = g.between(pick(g, 0.0, 0, 0, 90), 180, 20)
		l.Horizontal = pick(g, []float64{0}, g.between(0, 90, 6), g.between(0, 180, 6), g.between(0, 360, 9), g.between(90, 270, 6))
	} else {
		l.Vertical, l.Horizontal = g.between(pick(g, -90.0, 0), 90, 20), g.between(pick(g, -90.0, 0), 90, 20)
	}
	l.Candela = g.rows(len(l.Horizontal), len(l.Vertical), pick(g, 1.0, 500, 1e6))
	if last := len(l.Horizontal) - 1; l.Horizontal[last] == 360 {
		l.Candela[last] = l.Candela[0]
	}
	return l
}

func (g generator) tilt(l *files.LM63) {
	switch l.Tilt.Form = files.TiltForm(g.IntN(3)); l.Tilt.Form {
	case files.TiltFile:
		l.Tilt.File = "lamp.tlt"
	case files.TiltInclude:
		l.Tilt.Geometry = 1 + g.IntN(3)
		l.Tilt.Angles = g.between(0, 180, 8)
		for range l.Tilt.Angles {
			l.Tilt.Factors = append(l.Tilt.Factors, g.figure(1))
		}
	}
}

func (g generator) ldt() *files.LDT {
	d := &files.LDT{
		Company: g.words(), Kind: 1 + g.IntN(3), Symmetry: files.Symmetry(g.IntN(5)),
		Report: g.words(), LuminaireName: g.words(), Number: g.words(), FileName: pick(g, "", "x.ldt"), Date: g.words(),
		Length: g.figure(2000), Width: g.figure(500), Height: g.figure(100), LuminousLength: g.figure(2000), LuminousWidth: pick(g, 0, g.figure(500)),
		Downward: g.figure(100), Efficiency: g.figure(100), Conversion: pick(g, 1, 0.97), Tilt: pick(g, 0.0, 15),
		Angles: g.between(0, pick(g, 90.0, 180), 20),
	}
	for i := range d.LuminousHeights {
		d.LuminousHeights[i] = g.figure(50)
	}
	for i := range d.DirectRatios {
		d.DirectRatios[i] = g.figure(1)
	}
	for range 1 + g.IntN(3) {
		d.Sets = append(d.Sets, files.LampSet{
			Lamps: pick(g, 1, 2, -1), Kind: "lamp " + g.words(), Lumens: 1 + g.figure(1e5), Colour: g.words(), Rendering: pick(g, "1A", ""), Watts: g.figure(400),
		})
	}
	d.Planes = g.planes(d.Symmetry)
	stored := map[files.Symmetry]int{files.NoSymmetry: len(d.Planes), files.AboutAxis: 1, files.AboutC0: len(d.Planes)/2 + 1,
		files.AboutC90: len(d.Planes)/2 + 1, files.AboutC0andC90: len(d.Planes)/4 + 1}[d.Symmetry]
	d.Candela = g.rows(stored, len(d.Angles), pick(g, 1.0, 300, 9000))
	return d
}

// planes are all planes of a symmetry, evenly spaced or, where quarters repeat, not.
func (g generator) planes(s files.Symmetry) []float64 {
	if s == files.AboutAxis && g.IntN(2) == 0 {
		return []float64{0}
	}
	quarter := g.between(0, 90, 5)
	if s == files.NoSymmetry {
		quarter = []float64{0, 30, 60, 90}
	}
	n := len(quarter) - 1
	list := slices.Clone(quarter[:n])
	for i := n; i > 0; i-- {
		list = append(list, 180-quarter[i])
	}
	for _, q := range quarter[:n] {
		list = append(list, 180+q)
	}
	for i := n; i > 0; i-- {
		list = append(list, 360-quarter[i])
	}
	return list
}

// name tells one generated file from another in a failure.
func name(kind string, i int) string { return fmt.Sprintf("%s number %d", kind, i) }
