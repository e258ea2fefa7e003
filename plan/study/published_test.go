package study_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/testdata/published"
)

// read resolves a scene and takes its readings.
func read(t testing.TB, text string) meter.Set {
	t.Helper()
	return run(t, laidOut(t, text), study.Options{ReadingsOnly: true}).Readings
}

// resolve resolves a scene.
func laidOut(t testing.TB, text string) *plan.Setup {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "scene.yaml", Text: []byte(text)}, log)
	s := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		t.Fatalf("%+v", log.All())
	}
	return s
}

// part is the light of a reading by one path.
func part(r *meter.Reading, path string) (sum float64) {
	for _, s := range r.Shares {
		if s.Path == path {
			sum += s.Lux
		}
	}
	return sum
}

// Case 5.2 of CIE 171:2006, written as a scene: a Lambertian point over open ground.
func TestPointSourceOfCIE171(t *testing.T) {
	var b strings.Builder
	b.WriteString("scrimshaw: 1\nlights: {a: {output: {candela: 1000, shape: cosine}, at: [0, 0], height: 3, aim: down}}\nmeters:\n")
	rows := published.Read(t, "light.txt", "diffuse point")
	for i, row := range rows {
		fmt.Fprintf(&b, "  m%d: {flat: [%g, %g, 0], facing: up}\n", i, row.In[0], row.In[1])
	}
	set := read(t, b.String())
	for i, row := range rows {
		if got := *set.Named(fmt.Sprintf("m%d", i)).Lux; !(math.Abs(got/row.Out[0]-1) <= 1e-6) {
			t.Errorf("%v: %g lx, want %g", row.In, got, row.Out[0])
		}
	}
}

// Case 5.3: a face of 1 by 1 m in the ceiling of a room, its direct light on a wall and on the floor.
func TestAreaSourceOfCIE171(t *testing.T) {
	var b strings.Builder
	b.WriteString("scrimshaw: 1\nmaterials: {none: {reflectance: 0.3}}\n" +
		"rooms: {r: {size: [4, 4], height: 3, walls: none, floor: none, ceiling: none}}\n" +
		"lights: {a: {output: {luminance: 1000, face: [1, 1]}, at: [2, 2], height: 3, aim: down}}\nmeters:\n")
	rows := published.Read(t, "formfactor.txt", "area source")
	for i, row := range rows {
		facing := "up"
		if row.In[4] == 1 {
			facing = "0" // up the sheet: away from the wall at y = 0
		}
		fmt.Fprintf(&b, "  m%d: {flat: [%g, %g, %g], facing: %s}\n", i, row.In[0], row.In[1], row.In[2], facing)
	}
	set := read(t, b.String())
	for i, row := range rows {
		if got := part(set.Named(fmt.Sprintf("m%d", i)), "direct"); !(math.Abs(got/row.Out[0]-1) <= 5e-3) {
			t.Errorf("%v: %g lx, want %g", row.In, got, row.Out[0])
		}
	}
}

// Case 5.8: a closed cube of 4 m. The mean over its sides is taken by a Gauss-Legendre rule of meters on
// each.
func TestClosedCubeOfCIE171(t *testing.T) {
	const n = 4
	x, w := make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, w, 0, 4)
	sides := []string{"[%g, %g, 0], facing: up", "[%g, %g, 4], facing: down",
		"[0, %g, %g], facing: 90", "[4, %g, %g], facing: 270", "[%g, 0, %g], facing: 0", "[%g, 4, %g], facing: 180"}
	for _, row := range published.Read(t, "interreflection.txt", "closed cube") {
		var b strings.Builder
		fmt.Fprintf(&b, "scrimshaw: 1\nmaterials: {p: {reflectance: %g}}\nrooms: {r: {size: [4, 4], height: 4, walls: p, floor: p, ceiling: p}}\n"+
			"lights: {a: {output: {lumens: 10000, shape: uniform}, at: [2, 2], height: 2, aim: down}}\nmeters:\n", row.In[0])
		for k, side := range sides {
			for i := range x {
				for j := range x {
					fmt.Fprintf(&b, "  m%d-%d-%d: {flat: %s}\n", k, i, j, fmt.Sprintf(side, x[i], x[j]))
				}
			}
		}
		set := read(t, b.String())
		mean := 0.0
		for k := range sides {
			for i := range x {
				for j := range x {
					mean += part(set.Named(fmt.Sprintf("m%d-%d-%d", k, i, j)), "reflected") * w[i] * w[j] / 96
				}
			}
		}
		t.Logf("reflectance %g: %.5g lx, %+.3f %%", row.In[0], mean, 100*(mean/row.Out[0]-1))
		if !(math.Abs(mean/row.Out[0]-1) <= 5e-3) {
			t.Errorf("reflectance %g: %g lx, want %g", row.In[0], mean, row.Out[0])
		}
	}
}
