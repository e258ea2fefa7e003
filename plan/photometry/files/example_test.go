package files_test

import (
	"fmt"
	"testing"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

func ExampleReadLM63() {
	text := "IESNA91\nTILT=NONE\n1 -1 1 8 1 1 2 0 0 0\n1 1 60\n0 5 10 20 30 45 65 90\n0\n1000 1100 1300 1150 930 650 350 0\n"
	log := &source.Log{}
	l, ok := files.ReadLM63(&source.File{Name: "lamp.ies", Text: []byte(text)}, log)
	if !ok {
		fmt.Println(log.All())
		return
	}
	s, err := l.Source()
	if err != nil {
		fmt.Println(err)
		return
	}
	beam, _ := photometry.BeamAngle(s.Distribution)
	fmt.Printf("%.0f lm, %.0f cd, beam %.1f°\n", s.Flux, s.Peak(), beam)
	// Output: 3056 lm, 1300 cd, beam 90.0°
}

func ExampleLM63_LDT() {
	l := &files.LM63{
		Edition: files.Edition2002, Lamps: 1, Lumens: 1000, Multiplier: 1, Ballast: 1, Second: 1, Watts: 12,
		Vertical: []float64{0, 45, 90}, Horizontal: []float64{0}, Candela: [][]float64{{500, 200, 0}},
	}
	d, err := l.LDT()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("symmetry %d, %.0f lm, light output ratio %.1f %%, %g cd/klm\n", d.Symmetry, d.Sets[0].Lumens, d.Efficiency, d.Candela[0])
	// Output: symmetry 1, 1000 lm, light output ratio 97.6 %, [500 200 0] cd/klm
}

func BenchmarkReadLM63(b *testing.B) {
	text := []byte(written([]float64{0, 45, 90, 135, 180, 225, 270, 315, 360}, 180, 1, cosine(2)))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := files.ReadLM63(&source.File{Name: "x.ies", Text: text}, &source.Log{}); !ok {
			b.Fatal("not read")
		}
	}
}

func ExampleFiguresOf() {
	text := "IESNA91\nTILT=NONE\n1 -1 1 8 1 1 2 0 0 0\n1 1 60\n0 5 10 20 30 45 65 90\n0\n1000 1100 1300 1150 930 650 350 0\n"
	l, ok := files.ReadLM63(&source.File{Name: "lamp.ies", Text: []byte(text)}, &source.Log{})
	if !ok {
		return
	}
	figures, err := files.FiguresOf(l)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range figures.Facts() {
		fmt.Println(f[0]+":", f[1])
	}
	// Output:
	// flux: 3060 lm
	// peak: 1300 cd, 10° off the axis
	// beam, to 50 %: 90°
	// field, to 10 %: 161.4°
	// efficiency: absolute photometry
	// power: 60 W, 50.9 lm/W
	// opening: point
	// measured: type C, 1 plane, 0° to 90°
}
