package study_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

const parlour = `scrimshaw: 1
rooms: {den: {size: [4, 3], height: 2.5}}
openings: {bay: {window: den.left, along: 1, width: 1, sill: 0.8, head: 2}}
furniture: {press: {box: [1, 0.5, 1.8], at: {wall: den.top, along: 1, in: 0}}}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [2, 1.2], height: 1.6, aim: down}}
`

// The field on a wall reads what a meter held to the wall reads, and has no data in an opening and behind
// what stands against the wall. Distances run from the left end as seen from inside.
func TestFieldOnAWall(t *testing.T) {
	s := laidOut(t, parlour+"meters: {m: {flat: [0, 2.5137, 1.5137], facing: 90}}\n")
	lit := run(t, s, study.Options{Planes: []study.Plane{{Wall: "den.left"}, {Wall: "den.top"}}})
	f := wallField(t, lit, "den.left")
	corner, step := f.Corner()
	value := func(f *study.Field, p r2.Vec) (lux float64, data bool) {
		i, j := int(math.Round((p.X-corner.X)/step)), int(math.Round((p.Y-corner.Y)/step))
		return float64(f.Lux[j*f.Lattice.NU+i]), !f.Lattice.Masked(i, j)
	}
	// The left wall seen from inside begins at y = 0.
	got, data := value(f, r2.Vec{X: 2.5137, Y: 1.5137})
	if want := *lit.Readings.Named("m").Lux; !data || !(math.Abs(got/want-1) <= 0.02) {
		t.Errorf("on the wall %g lx (%v), at the meter %g", got, data, want)
	}
	if _, data := value(f, r2.Vec{X: 1.5, Y: 1.4}); data {
		t.Error("a window has light on it")
	}
	top := wallField(t, lit, "den.top")
	if _, data := value(top, r2.Vec{X: 1, Y: 1}); data {
		t.Error("the wall behind a press has light on it")
	}
	if _, data := value(top, r2.Vec{X: 1, Y: 2.2}); !data {
		t.Error("the wall over a press has none")
	}
	if at := lit.Probe(f)(r2.Vec{X: 2.5137, Y: 1.5137}); !(math.Abs(at/got-1) <= 1e-3) {
		t.Errorf("the probe reads %g lx, the field %g", at, got)
	}
}

func TestFieldsOnOtherPlanes(t *testing.T) {
	s := laidOut(t, parlour)
	lit := run(t, s, study.Options{Planes: []study.Plane{
		{Height: 1}, {Upright: &study.Upright{Left: r2.Vec{X: 1, Y: 2}, Right: r2.Vec{X: 3, Y: 2}, Foot: 0.5, Height: 1}}}})
	level, upright := lit.Level(), &lit.Fields[len(lit.Fields)-1]
	if level.Z != 1 || level.Kind != study.OnPlane {
		t.Errorf("the level plane is %v at %g", level.Kind, level.Z)
	}
	eval := lit.World.Evaluator(light.Emitters(s), lit.Levels)
	for _, f := range []*study.Field{level, upright} {
		l := &f.Lattice
		back := make([]float32, len(f.Lux))
		for k := range lit.Fields {
			if &lit.Fields[k] == f {
				lit.Basis.ReflectedField(k, lit.Levels, back)
			}
		}
		for n := 0; n < len(f.Lux); n += 37 {
			if i, j := n%l.NU, n/l.NU; !l.Masked(i, j) {
				want := eval(light.Receptor{At: l.At(i, j), Axis: l.Normal})
				if got := float64(f.Lux[n] - back[n]); !(math.Abs(got-want) <= 1e-3*math.Max(want, 1)) {
					t.Errorf("%v at %v: %g lx, want %g", f.Kind, l.At(i, j), got, want)
				}
			}
		}
	}
	// Lamps below a plane count for what faces down, not for what faces up.
	if level.Lux[0] <= 0 {
		t.Error("no light on the level plane")
	}
}

func TestPlaneOfTheScene(t *testing.T) {
	s := laidOut(t, parlour+"sheet: {plane: 0.75}\n")
	if f := run(t, s, study.Options{}).Level(); f == nil || f.Z != 0.75 {
		t.Errorf("sheet.plane gives %+v", f)
	}
	if _, err := study.Run(context.Background(), s, study.Options{Planes: []study.Plane{{Wall: "den.north"}}}); err == nil {
		t.Error("a wall that is not there has a field")
	}
}

// A wall of a few centimetres has no room for a map, and the message names it.
func TestWallTooSmallForAMap(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms: {k: {outline: [right 3.6, up 2.0, left 0.06, up 1, left 3.54, down 3]}}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [2, 1.2], height: 1.6, aim: down}}
`)
	_, err := study.Run(context.Background(), s, study.Options{Planes: []study.Plane{{Wall: "k.w3"}}})
	if want := "the wall k.w3 is too small for a map: it has 0.06 m by 2.50 m, and the points of a map are 0.05 m apart"; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}

// A white card lifts the fill side of a face, a black flag in its place lowers it, against the bare room.
func TestCardLiftsAndFlagLowers(t *testing.T) {
	scene := func(grip string) string {
		return `scrimshaw: 1
rooms: {den: {size: [5, 4], height: 2.6}}
people: {ada: {at: [2.5, 2], faces: 180}}
cameras: {A: {at: [2.5, 0.3], lens: 32 mm}}
lights: {a: {output: {lux: 2000, distance: 2 m, beam: 30, field: 50}, at: [0.6, 1.2], height: 1.8, aim: ada}}
` + strings.ReplaceAll(grip, "AT", "at: [3.3, 1.9], height: 1.55, faces: ada")
	}
	fill := func(grip string) float64 {
		set := read(t, scene(grip))
		return *set.Named("ada.fill").Lux
	}
	bare := fill("")
	white, black := fill("grip: {c: {card: [1.2, 1.2], AT}}\n"), fill("grip: {c: {flag: [1.2, 1.2], AT}}\n")
	t.Logf("bare %.1f lx, white card %.1f, black flag %.1f", bare, white, black)
	if !(white > 1.1*bare && black < 0.95*bare) {
		t.Errorf("bare %g lx, white card %g, black flag %g", bare, white, black)
	}
	set := read(t, scene("grip: {c: {card: [1.2, 1.2], AT}}\n"))
	for _, share := range set.Named("ada.fill").Shares {
		if share.Path == "reflected" && share.From == "c" && share.Lux > 0.1*white {
			return
		}
	}
	t.Errorf("no share of the fill comes from the card: %+v", set.Named("ada.fill").Shares)
}

// wallField is the field on a wall by its name.
func wallField(t *testing.T, s *study.Study, name string) *study.Field {
	t.Helper()
	i := slices.IndexFunc(s.Fields, func(f study.Field) bool { return f.Kind == study.OnWall && f.Name == name })
	if i < 0 {
		t.Fatalf("no field on the wall %s", name)
	}
	return &s.Fields[i]
}
