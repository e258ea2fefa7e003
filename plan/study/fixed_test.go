package study_test

import (
	"math"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// At fixed levels readings are the same to the last digit, what comes straight from the lights is the same, and what comes
// back but for what rays at hot spots leave open; colours and probes likewise.
func TestFixedLevels(t *testing.T) {
	for _, name := range []string{"napkin", "two-sizes", "spot-and-flood"} {
		s := setup(t, name)
		free, fixed := run(t, s, study.Options{Quality: light.Draft}), run(t, s, study.Options{Quality: light.Draft, Fixed: true})
		if !reflect.DeepEqual(free.Readings, fixed.Readings) {
			t.Errorf("%s: other readings at fixed levels", name)
		}
		backFree, backFixed := backs(free), make([]float32, 0)
		for k := range free.Fields {
			a, b := &free.Fields[k], &fixed.Fields[k]
			backFixed = append(backFixed[:0], make([]float32, len(b.Lux))...)
			fixed.Basis.ReflectedField(k, light.Levels{light.FromSurfaces: {1, 1, 1}}, backFixed)
			square, count := 0.0, 0
			for n := range a.Lux {
				direct, directFixed := a.Lux[n]-backFree[k][n], b.Lux[n]-backFixed[n]
				if !(math.Abs(float64(direct-directFixed)) <= 1e-4*float64(a.Lux[n])+1e-4) {
					t.Fatalf("%s, %s: %g lx straight from the lights, want %g", name, a.Name, directFixed, direct)
				}
				if backFree[k][n] > 0 {
					off := float64(backFixed[n]/backFree[k][n]) - 1
					square, count = square+off*off, count+1
				}
			}
			if off := math.Sqrt(square / float64(max(1, count))); off > 0.02 {
				t.Errorf("%s, %s: what comes back is %.2f %% off", name, a.Name, 100*off)
			}
		}
		sameColours(t, name, free, fixed)
		sameProbes(t, name, free, fixed)
	}
}

// Readings alone at fixed levels are those of maps as well: there is nothing to mix.
func TestFixedLevelsOfReadings(t *testing.T) {
	s := setup(t, "napkin")
	some := run(t, s, study.Options{Quality: light.Draft, ReadingsOnly: true, Fixed: true})
	if all := run(t, s, study.Options{Quality: light.Draft, ReadingsOnly: true}); !reflect.DeepEqual(all.Readings, some.Readings) {
		t.Error("other readings at fixed levels")
	}
}

// sameColours compares the chromaticities of the floor.
func sameColours(t *testing.T, name string, free, fixed *study.Study) {
	t.Helper()
	a, b := free.Colours(free.Floor()), fixed.Colours(fixed.Floor())
	for n := range a {
		for c := range a[n] {
			if !(math.Abs(a[n][c]*b[n].Y()-b[n][c]*a[n].Y()) <= 0.02*a[n].Y()*b[n].Y()) {
				t.Fatalf("%s: the floor has the colour %v at a point, want %v", name, b[n], a[n])
			}
		}
	}
}

// sameProbes compares the floor between its points.
func sameProbes(t *testing.T, name string, free, fixed *study.Study) {
	t.Helper()
	f := free.Floor()
	a, b := free.Probe(f), fixed.Probe(fixed.Floor())
	corner, step := f.Corner()
	for n := range 200 {
		at := r2.Add(corner, r2.Scale(step, r2.Vec{X: float64(f.Lattice.NU-1) * (0.5 + float64(n*37%200)) / 200, Y: float64(f.Lattice.NV-1) * (0.5 + float64(n)) / 200}))
		if got, want := b(at), a(at); !(math.Abs(got-want) <= 0.05*want+0.01) {
			t.Errorf("%s: the probe finds %g lx at %v, want %g", name, got, at, want)
		}
	}
}
