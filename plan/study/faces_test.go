package study_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/study"
	"scrimshaw/samples"
)

// spots are random points of a field with data.
type spots struct {
	at    []r3.Vec
	index []int
}

func spotsOf(f *study.Field, n int, rng *rand.Rand) (s spots) {
	for len(s.at) < n {
		i, j := rng.IntN(f.Lattice.NU), rng.IntN(f.Lattice.NV)
		if !f.Lattice.Masked(i, j) {
			s.at = append(s.at, f.Lattice.At(i, j))
			s.index = append(s.index, j*f.Lattice.NU+i)
		}
	}
	return s
}

// Over the samples' maps of faces, the light at 200 points of each is what a dome there reads that is turned to the
// lens of the camera named: straight light of points to 1e-3 away from edges of shadow; that of all lights within the
// stated error of fields; what comes back, over all samples, within its own. The contours' probe reads what the map has, or, where
// the points about a place differ, the light of a dome with what comes back by the map.
func TestFaceMapIsOfDomesTurnedToTheCamera(t *testing.T) {
	var returned []float64
	for _, name := range samples.Names() {
		if name == "night-log" {
			continue // its map of faces has hardly any straight light
		}
		t.Run(name, func(t *testing.T) { returned = append(returned, heldToDomes(t, setup(t, name))...) })
	}
	promised(t, "reflected light", returned, 0.015, 0.05)
}

// heldToDomes holds one map, and gives how far what comes back is off, as shares.
func heldToDomes(t *testing.T, s *plan.Setup) (returned []float64) {
	lit := run(t, s, study.Options{})
	f := lit.Face()
	if f == nil || f.Toward != s.Cameras[0].Name {
		t.Fatalf("the map is %+v", f)
	}
	back := backs(lit)[slices.IndexFunc(lit.Fields, func(g study.Field) bool { return g.Kind == study.AtFace })]
	where := spotsOf(f, 200, rand.New(rand.NewPCG(61, 62)))
	var to light.Targets
	for _, at := range where.at {
		to.Points = append(to.Points, light.Receptor{At: at, Axis: r3.Unit(r3.Sub(s.Cameras[0].Frame.At, at)), Response: light.Dome, Skip: f.Lattice.Skip})
	}
	single, err := lit.World.Basis(t.Context(), light.Emitters(s), to)
	if err != nil {
		t.Fatal(err)
	}
	probe, meter := lit.Probe(f), lit.World.Evaluator(light.Emitters(s), lit.Levels)
	hard := levelsOfPoints(s, lit.Levels)
	of := slices.IndexFunc(lit.Fields, func(g study.Field) bool { return g.Kind == study.AtFace })
	sharp, hardBack := make([]float32, len(f.Lux)), make([]float32, len(f.Lux))
	lit.Basis.Field(of, hard, sharp)
	lit.Basis.ReflectedField(of, hard, hardBack)
	var straight []float64
	for i, n := range where.index {
		fromLamps, fromSurfaces := parts(single, lit.Levels, i)
		direct, reflected := fromLamps.Y(), fromSurfaces.Y()
		if reflected > 1 {
			returned = append(returned, math.Abs(float64(back[n])/reflected-1))
		}
		if direct <= 5 {
			continue
		}
		off := math.Abs(float64(f.Lux[n]-back[n])/direct - 1)
		straight = append(straight, off)
		if atEdge(meter, to.Points[i], direct) {
			continue
		}
		probed := probe(r2.Vec{X: where.at[i].X, Y: where.at[i].Y})
		hardLight, _ := parts(single, hard, i)
		fromPoints := hardLight.Y()
		off = math.Abs(float64(sharp[n]-hardBack[n])-fromPoints) / direct
		if apart := min(math.Abs(probed/float64(f.Lux[n])-1), math.Abs(probed/(direct+float64(back[n]))-1)); off > 1e-3 || apart > 1e-3 {
			t.Errorf("at %v the straight light of points is %.2g off that of a dome, %.6g lx, and the probe %.2g", where.at[i], off, direct, apart)
		}
	}
	promised(t, "straight light", straight, 0.0025, 0.010)
	return returned
}

// promised holds errors, as shares, to a mean and a 95th percentile.
func promised(t *testing.T, what string, errors []float64, mean, p95 float64) {
	t.Helper()
	if len(errors) < 100 {
		t.Fatalf("%s: only %d points have any", what, len(errors))
	}
	average, at95 := meanAnd95(errors)
	t.Logf("%s: off by %.3f %% in the mean, %.2f %% at 95 of 100", what, 100*average, 100*at95)
	if average > mean || at95 > p95 {
		t.Errorf("%s: off by %.3f %% in the mean, %.2f %% at 95 of 100", what, 100*average, 100*at95)
	}
}

// meanAnd95 is the mean of some errors, and the one that 95 in 100 do not exceed. It sorts them.
func meanAnd95(errors []float64) (mean, at95 float64) {
	for _, e := range errors {
		mean += e / float64(len(errors))
	}
	slices.Sort(errors)
	return mean, errors[len(errors)*95/100]
}

// Every floor has a map at the height of the first person on it, or as high as the first person's where nobody is;
// the first person's floor comes first. A room too low for it has none, and under a slope it ends where the
// ceiling comes down to it. The open ground has one where somebody stands on it.
func TestFacesOnEveryFloor(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
site: {ground: -0.6}
rooms:
  den:    {size: [4, 3], height: {low: 1, high: 3, toward: right}}
  loft:   {at: [4.3, 0], size: [3, 3], height: 2.5, base: 0.4}
  cellar: {at: [0, 3.3], size: [4, 2], height: 2.5, base: -1}
  hatch:  {at: [4.3, 3.3], size: [3, 2], height: 1.1, base: 0.8}
people:
  noor: {at: [6, 1.5], pose: seated}
  ada:  {at: [3, 1.5]}
  june: {at: [6.5, 1.5]}
  bo:   {at: [9, 1]}
cameras: {A: {at: [5, 0.4], lens: 32 mm}}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [2.5, 1.5], height: 1.9, aim: down}}
`)
	lit := run(t, s, study.Options{Step: 0.25, Quality: light.Draft})
	type level struct{ base, over float64 }
	var got []level
	var den *study.Field
	for i := range lit.Fields {
		if f := &lit.Fields[i]; f.Kind == study.AtFace {
			got = append(got, level{f.Base, math.Round(100*(f.Z-f.Base)) / 100})
			if f.Base == 0 {
				den = f
			}
		}
	}
	if want := []level{{0.4, 1.2}, {-1, 1.2}, {0, 1.59}, {-0.6, 1.59}}; !slices.Equal(got, want) {
		t.Fatalf("maps by base and height over it %v, want %v", got, want)
	}
	if lit.Face().Base != 0.4 {
		t.Errorf("the map of faces is that over %g, not the first person's", lit.Face().Base)
	}
	// The ceiling rises from 1 m at x = 0 to 3 m at x = 4 and passes 1.59 m at x = 1.18.
	if near(den, 1.05, 2.5) || !near(den, 1.35, 2.5) {
		t.Error("the map of the den does not end where the ceiling comes down to it")
	}
}

// levelsOfPoints are the levels of the lights that count as points alone.
func levelsOfPoints(s *plan.Setup, all light.Levels) light.Levels {
	hard := light.Levels{}
	for _, e := range light.Emitters(s) {
		if e.Source.Opening.Form == photometry.Point {
			hard[e.Name] = all[e.Name]
		}
	}
	return hard
}
