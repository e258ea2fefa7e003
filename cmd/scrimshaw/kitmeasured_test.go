package main

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/testdata/published"
)

// lit computes the meters of a scene that has photometric files beside it.
func lit(t *testing.T, text string, files fstest.MapFS) *study.Study {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped, Files: files}, &source.File{Name: "x.yaml", Text: []byte(text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		t.Fatal(log.All())
	}
	s, err := study.Run(context.Background(), setup, study.Options{ReadingsOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// ies writes intensities of one plane in even steps up to last, degrees.
func ies(last, step float64, candela func(gamma float64) float64) *fstest.MapFile {
	var angles, values []string
	for i := 0; float64(i)*step <= last+1e-9; i++ {
		angles = append(angles, fmt.Sprint(float64(i)*step))
		values = append(values, fmt.Sprintf("%.9f", candela(float64(i)*step*math.Pi/180)))
	}
	return &fstest.MapFile{Data: []byte(fmt.Sprintf("IESNA91\nTILT=NONE\n1 -1 1 %d 1 1 2 0 0 0\n1 1 0\n%s\n0\n%s\n", len(angles), strings.Join(angles, "\n"), strings.Join(values, "\n")))}
}

// closedForm is a distribution that a formula gives.
type closedForm struct {
	name           string
	last           float64
	candela        func(float64) float64
	bend, greatest float64 // the second derivative; the angle up to which meters stand, degrees
}

// closedForms are those of the published figures.
func closedForms(t *testing.T) (forms []closedForm) {
	for _, row := range published.Read(t, "distributions.txt", "cosine power") {
		n := row.In[0]
		forms = append(forms, closedForm{fmt.Sprint("cosine ", n), 90, func(g float64) float64 { return 1000 * math.Pow(math.Max(0, math.Cos(g)), n) }, 1000 * n, 80})
	}
	for _, row := range published.Read(t, "distributions.txt", "cone") {
		forms = append(forms, closedForm{fmt.Sprint("cone ", row.In[0]), row.In[0], func(float64) float64 { return 1 }, 0, math.Min(80, row.In[0]*0.99)})
	}
	return forms
}

// A meter under a closed-form distribution, written as a file, reads I cos t / d² to the error of
// linear interpolation: a step squared times the greatest second derivative, over eight.
func TestMetersUnderClosedFormFiles(t *testing.T) {
	const height, step = 3.0, 1.0
	forms := closedForms(t)
	files := fstest.MapFS{}
	var text strings.Builder
	text.WriteString("scrimshaw: 1\nlights:\n")
	for i, f := range forms {
		files[fmt.Sprintf("f%d.ies", i)] = ies(f.last, step, f.candela)
		fmt.Fprintf(&text, "  l%d: {output: {ies: f%d.ies}, at: [%d, 0], height: %g, aim: down, roll: 20}\n", i, i, 500*i, height)
	}
	text.WriteString("meters:\n")
	const meters = 12
	for i, f := range forms {
		for k := range meters {
			angle := f.greatest * (float64(k) + 0.37) / meters * math.Pi / 180
			turn := 2.4 * float64(k)
			x, y := height*math.Tan(angle)*math.Cos(turn), height*math.Tan(angle)*math.Sin(turn)
			fmt.Fprintf(&text, "  m%d-%d: {flat: [%.9f, %.9f, 0], facing: up}\n", i, k, float64(500*i)+x, y)
		}
	}
	s := lit(t, text.String(), files)
	for i, f := range forms {
		for k := range meters {
			name := fmt.Sprintf("m%d-%d", i, k)
			own := 0.0
			for _, share := range s.Readings.Named(name).Shares {
				if share.Light == fmt.Sprintf("l%d", i) {
					own += share.Lux
				}
			}
			angle := f.greatest * (float64(k) + 0.37) / meters * math.Pi / 180
			weight := math.Pow(math.Cos(angle), 3) / (height * height)
			want, tolerance := f.candela(angle)*weight, (f.bend*math.Pow(step*math.Pi/180, 2)/8+1e-6)*weight
			if !(math.Abs(own-want) <= tolerance) {
				t.Errorf("%s at %.1f°: %.9g lx, want %.9g to %.2g", f.name, angle*180/math.Pi, own, want, tolerance)
			}
		}
	}
}

// Gamma 0 lies along the aim, C0 along the lamp's right and C90 along up; roll turns them clockwise
// as seen from behind.
func TestPlanesOfFilesInTheLampFrame(t *testing.T) {
	// C0, C90, C180, C270 at gamma 45 have 100, 200, 300 and 400 cd.
	text := "IESNA91\nTILT=NONE\n1 -1 1 3 5 1 2 0 0 0\n1 1 0\n0 45 90\n0 90 180 270 360\n" +
		"500 100 0 500 200 0 500 300 0 500 400 0 500 100 0\n"
	for roll, want := range map[int][4]float64{0: {100, 200, 300, 400}, 90: {200, 300, 400, 100}, 180: {300, 400, 100, 200}} {
		// The lamp looks up the sheet (+y): its right is +x, its up is +z. Meters stand a metre ahead and a
		// metre to the right, over, to the left and under, and face it.
		s := lit(t, fmt.Sprintf(`{scrimshaw: 1,
		  lights: {lamp: {output: {ies: sub/lamp.ies}, at: [0, 0], height: 2, aim: [0, 5, 2], roll: %d}},
		  meters: {right: {flat: [1, 1, 2], facing: lamp}, over: {flat: [0, 1, 3], facing: lamp},
		    left: {flat: [-1, 1, 2], facing: lamp}, under: {flat: [0, 1, 1], facing: lamp}}}`, roll),
			fstest.MapFS{"sub/lamp.ies": {Data: []byte(text)}})
		for i, name := range []string{"right", "over", "left", "under"} {
			if got := *s.Readings.Named(name).Lux * 2; !(math.Abs(got-want[i]) <= 1e-6) {
				t.Errorf("roll %d, %s: %.6f cd, want %g", roll, name, got, want[i])
			}
		}
	}
}

// The luminous opening of a file is the emitting face: close by, a meter reads the sum over the face of what
// each point of it sends, here by a fine sum of its own; behind, nothing, unless the file has light there.
func TestFaceOfMeasuredFile(t *testing.T) {
	lobe := func(gamma, c float64) float64 { // wide across, narrow along
		sin := math.Sin(c)
		return math.Pow(math.Max(0, math.Cos(gamma)), 2+10*sin*sin)
	}
	var rows strings.Builder
	const step = 5
	for c := 0; c <= 90; c += step {
		for g := 0; g <= 90; g += step {
			fmt.Fprintf(&rows, "%.6f\n", 1000*lobe(float64(g)*math.Pi/180, float64(c)*math.Pi/180))
		}
	}
	var angles []string
	for a := 0; a <= 90; a += step {
		angles = append(angles, fmt.Sprint(a))
	}
	list := strings.Join(angles, " ")
	for name, opening := range map[string]string{"rectangle": "0.4 0.8 0", "disc": "-0.5 -0.5 0"} {
		text := fmt.Sprintf("IESNA91\nTILT=NONE\n1 -1 1 %d %d 1 2 %s\n1 1 0\n%s\n%s\n%s", len(angles), len(angles), opening, list, list, rows.String())
		s := lit(t, `{scrimshaw: 1,
		  lights: {lamp: {output: {ies: lamp.ies}, at: [0, 0], height: 2, aim: [0, 5, 2]}},
		  meters: {near: {flat: [0.3, 0.5, 2.1], facing: [0.3, -5, 2.1]}, far: {flat: [1, 4, 1], facing: [1, -5, 1]}, behind: {flat: [0, -1, 2], facing: lamp}}}`,
			fstest.MapFS{"lamp.ies": {Data: []byte(text)}})
		source := s.Setup.Lights[0].Head.Source
		for meter, at := range map[string][3]float64{"near": {0.3, 0.5, 0.1}, "far": {1, 4, -1}} {
			got, want := *s.Readings.Named(meter).Lux, 0.0
			const n = 400
			for i := range n {
				for j := range n {
					u, v := (float64(i)+0.5)/n, (float64(j)+0.5)/n
					x, y := (u-0.5)*0.8, (v-0.5)*0.4
					if name == "disc" {
						sin, cos := math.Sincos(2 * math.Pi * v)
						x, y = 0.25*math.Sqrt(u)*cos, 0.25*math.Sqrt(u)*sin
					}
					way := r3.Vec{X: at[0] - x, Y: at[2] - y, Z: -at[1]}
					want += source.Intensity(r3.Unit(way)) * at[1] / math.Pow(r3.Norm(way), 3) / (n * n)
				}
			}
			if !(math.Abs(got-want) <= 2e-4*want) {
				t.Errorf("%s, %s: %.6g lx, a fine sum gives %.6g", name, meter, got, want)
			}
		}
		if got := *s.Readings.Named("behind").Lux; got != 0 {
			t.Errorf("%s: %g lx behind", name, got)
		}
	}
}

// A file that gives light behind a face as well lights what stands there.
func TestFaceOfMeasuredFileShinesBehind(t *testing.T) {
	both := "IESNA91\nTILT=NONE\n1 -1 1 3 1 1 2 0.4 0.8 0\n1 1 0\n0 90 180\n0\n100 0 60\n"
	s := lit(t, `{scrimshaw: 1, lights: {lamp: {output: {ies: lamp.ies}, at: [0, 0], height: 2, aim: [0, 5, 2]}},
	  meters: {behind: {flat: [0, -50, 2], facing: lamp}}}`, fstest.MapFS{"lamp.ies": {Data: []byte(both)}})
	if got := *s.Readings.Named("behind").Lux * 2500; !(math.Abs(got-60) <= 0.3) {
		t.Errorf("%g cd behind a face that shines to both sides, want 60", got)
	}
}
