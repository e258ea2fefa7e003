package resolve

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// onStage is where a light stands on a stage with one camera, placed by a place.
const onStage = `units: %s
people: {ruth: {at: [%g, %g], faces: 33}}
furniture: {desk: {box: [%g, %g, %g], at: [%g, %g]}}
cameras: {A: {at: [%g, %g], looks: ruth, lens: 35 mm}%s}
lights: {lamp: {output: {candela: 100, shape: uniform}, at: %s, height: 5}}
%s`

// stageAt makes that scene, turned by degrees, with lengths in a unit of so many metres.
func stageAt(units string, metres, degrees float64, more, place, setups string) string {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	x := func(x, y float64) float64 { return (x*cos + y*sin) / metres }
	y := func(x, y float64) float64 { return (y*cos - x*sin) / metres }
	return fmt.Sprintf(onStage, units, x(1, 2), y(1, 2), 1/metres, 1/metres, 1/metres, x(1.8, 5.5), y(1.8, 5.5), x(2.2, -1.5), y(2.2, -1.5), more, place, setups)
}

// Where one camera is meant, camera-left and camera-right are of it: without a look it is looked at, and else the turn goes to that side of its
// picture; in feet, in a turned scene, and in a set-up that shows one of two cameras.
func TestSidesOfTheOneCamera(t *testing.T) {
	for _, c := range []struct {
		units           string
		metres, degrees float64
	}{{"m", 1, 0}, {"ft", 0.3048, 70}, {"m", 1, 200}} {
		place := func(p string) r2.Vec {
			s := resolved(t, stageAt(c.units, c.metres, c.degrees, "", p, ""))
			return plan.InPlan(s.Lights[0].Frame.At)
		}
		for _, by := range []string{"ruth", "desk"} {
			for _, side := range []string{"camera-left", "camera-right"} {
				near2(t, by+" "+side, place(fmt.Sprintf("{by: %s, turn: 55 %s, distance: 2}", by, side)), place(fmt.Sprintf("{by: %s, toward: A, turn: 55 %s, distance: 2}", by, side)), 1e-9)
			}
		}
		s := resolved(t, stageAt(c.units, c.metres, c.degrees, "", "[0, 0]", ""))
		camera, ruth, desk := &s.Cameras[0].Frame, s.People[0].At, s.Furniture[0].At
		look := r2.Unit(r2.Sub(desk, ruth))
		var across [2]float64
		for i, side := range [...]string{"camera-left", "camera-right"} {
			way := r2.Sub(place("{by: ruth, toward: desk, turn: 40 "+side+", distance: 2}"), ruth)
			near(t, "the angle from the look, "+side, math.Acos(r2.Dot(r2.Unit(way), look))*180/math.Pi, 40, 1e-6)
			across[i] = r3.Dot(plan.AtHeight(way, 0), camera.Right)
		}
		if across[1]-across[0] < 0.5*c.metres {
			t.Errorf("in the picture camera-right is %.2f to the right of ruth, and camera-left %.2f", across[1], across[0])
		}
		two := stageAt(c.units, c.metres, c.degrees, fmt.Sprintf(", B: {at: [%g, %g], looks: ruth, lens: 35 mm}", 9/c.metres, 9/c.metres), "{by: ruth, turn: 55 camera-left, distance: 2}", "setups: {one: {camera: A}}")
		near2(t, "in a set-up", plan.InPlan(setup(t, two, "one").Lights[0].Frame.At), place("{by: ruth, toward: A, turn: 55 camera-left, distance: 2}"), 1e-9)
	}
}

// A person and a card face a point of the plan: by its bearing, and level.
func TestFacingAPoint(t *testing.T) {
	s := resolved(t, `people: {ruth: {at: [1, 1], faces: [2, 2], marks: {there: {at: [3, 1], faces: [3, 0]}}}}
grip: {g: {card: [1, 1], at: [1, 3], height: 0.4, faces: [0, 3], tilt: 20}, h: {flag: [1, 1], at: [1, 3], height: 2.4, faces: [1, 2]}}`)
	near(t, "the bearing", s.People[0].Faces, 45, 1e-9)
	near(t, "at a mark", s.People[0].Marks[0].Faces, 180, 1e-9)
	near3(t, "the card", s.Grip[0].Frame.Axis, plan.Pointing(270, 20), 1e-9)
	near3(t, "the flag", s.Grip[1].Frame.Axis, r3.Vec{Y: -1}, 1e-9)
}

// A lamp aims at the middle of an opening, or so far beside it or as high as the scene says; from either side.
func TestAimAtAnOpening(t *testing.T) {
	for _, c := range []struct {
		aim  string
		want r3.Vec
	}{
		{"{opening: bay}", r3.Vec{X: 0, Y: 2, Z: 1.6}}, {"{opening: bay, height: 1}", r3.Vec{X: 0, Y: 2, Z: 1.1}}, {"{opening: bay, along: 0.3}", r3.Vec{X: 0, Y: 2.3, Z: 1.6}},
	} {
		for _, at := range []string{"{opening: bay, out: 2}", "[4, 1]"} {
			s := resolved(t, stage+"lights: {lamp: {output: {candela: 100, shape: uniform}, at: "+at+", height: 1.6, aim: "+c.aim+"}}")
			near3(t, c.aim, s.Lights[0].AimPoint, c.want, 1e-9)
		}
	}
	s := resolved(t, "rooms: {den: {size: [4, 4]}}\nopenings: {bay: {window: den.top, width: 1}}\npeople: {ruth: {at: [1, 1], faces: {opening: bay}}}")
	near(t, "a face at an opening", s.People[0].Faces, 18.4349488, 1e-6)
}

// assumedOf is what the set-up assumed of a thing.
func assumedOf(s *plan.Setup, path, what string) string {
	for _, a := range s.Assumed {
		if a.Thing == path && a.What == what {
			return a.Value
		}
	}
	return ""
}

// The words ceiling and floor aim at the point over or under the middle between a lamp and whom it is for, in flat rooms, under slopes, round a corner and
// with nobody there.
func TestAimAtTheCeiling(t *testing.T) {
	const den = "rooms: {den: {at: [1, 1], size: [6, 4], height: %s, base: 0.5}, yard: {at: [20, 0], size: [2, 2]}}\n%slights: {k: {output: {candela: 100, beam: 40}, at: [2, 2], height: 1.5, aim: %s}}"
	const ruth = "people: {far: {at: [21, 1]}, ruth: {at: [6, 4], faces: 0}}\n"
	for _, c := range []struct {
		height, people, aim string
		want                r3.Vec
		assumed             string
	}{
		{"3", ruth, "ceiling", r3.Vec{X: 4, Y: 3.05, Z: 3.5}, "the ceiling half way to ruth"},
		{"3", ruth, "floor", r3.Vec{X: 4, Y: 3.05, Z: 0.5}, "the floor half way to ruth"},
		{"{low: 2, high: 4, toward: right}", ruth, "ceiling", r3.Vec{X: 4, Y: 3.05, Z: 0.5 + 3}, "the ceiling half way to ruth"},
		{"3", "", "ceiling", r3.Vec{X: 3, Y: 2.5, Z: 3.5}, "the ceiling half way to the middle of den"},
		{"3", "people: {far: {at: [21, 1]}}\n", "ceiling", r3.Vec{X: 3, Y: 2.5, Z: 3.5}, "the ceiling half way to the middle of den"},
		{"3", ruth, "den.ceiling", r3.Vec{X: 4, Y: 3, Z: 3.5}, ""},
	} {
		s := resolved(t, fmt.Sprintf(den, c.height, c.people, c.aim))
		near3(t, c.aim+" under "+c.height, s.Lights[0].AimPoint, c.want, 1e-9)
		if got := assumedOf(s, "lights.k", "aim"); got != c.assumed {
			t.Errorf("assumed %q, want %q", got, c.assumed)
		}
	}
	s := resolved(t, `rooms: {den: {corners: [{a: [0, 0]}, {b: [6, 0]}, {c: [6, 1]}, {d: [1, 1]}, {e: [1, 6]}, {f: [0, 6]}]}}
people: {ruth: {at: [0.5, 5.5]}}
lights: {k: {output: {candela: 100, beam: 40}, at: [5.5, 0.5], height: 1.5, aim: ceiling}}`)
	near3(t, "round a corner", s.Lights[0].AimPoint, r3.Vec{X: 5.5, Y: 0.5, Z: 2.5}, 1e-9)
	rug := resolved(t, "furniture: {floor: {box: [2, 2, 0.1], at: [3, 3]}}\nlights: {k: {output: {candela: 100, beam: 40}, at: [1, 1], height: 1.5, aim: floor}}")
	near3(t, "a thing of that name", rug.Lights[0].AimPoint, r3.Vec{X: 3, Y: 3, Z: 0.05}, 1e-9)
}

// Where it does not say, a lamp aims at somebody in its room, before an opening in the room behind that; else at the first whose face it sees, and else
// at the first.
func TestWhomALampIsFor(t *testing.T) {
	const house = `rooms: {den: {size: [4, 4]}, hall: {at: [5, 0], size: [4, 4]}}
openings: {w: {window: hall.right, width: 2, sill: 0.5, head: 2.2}}
people: {ada: {at: [1, 2]}, bo: {at: [6, 2]}, cy: {at: [8, 1]}}
lights: {k: {output: {candela: 100, beam: 40}, at: %s, height: 1.5}}`
	for _, c := range []struct{ at, want string }{
		{"[3, 3]", "ada"}, {"[8, 3]", "bo"}, {"{opening: w, out: 2}", "bo"}, {"[12, 2]", "bo"}, {"[-9, 2]", "ada"}, {"[8.3, -9]", "ada"},
	} {
		s := resolved(t, fmt.Sprintf(house, c.at))
		if got := assumedOf(s, "lights.k", "aim"); got != c.want {
			t.Errorf("%s: aims at %q, want %q", c.at, got, c.want)
			continue
		}
		near3(t, c.at, s.Lights[0].AimPoint, s.Post(c.want).Face.At, 1e-9)
	}
}

// A change that gives a place without a form changes keys of the one that stands, and says what the whole place would.
func TestAChangeOfOneKeyOfAPlace(t *testing.T) {
	const text = `rooms: {den: {size: [6, 6]}}
openings: {w: {window: den.left, width: 2}}
people: {ruth: {at: {wall: den.top, along: 2, in: 1}, faces: 180, marks: {sit: {at: {by: desk, toward: ruth, distance: 1}}}}}
furniture: {desk: {box: [1, 1, 1], at: {from: ruth, shift: [2, -3]}}}
cameras: {A: {at: {by: ruth, distance: 3}, looks: ruth, lens: 35 mm}}
lights: {key: {output: {candela: 100, beam: 40}, at: {by: ruth, toward: A, turn: 55 camera-right, distance: 2}, height: 2},
  day: {output: {candela: 100, beam: 40}, at: {opening: w, out: 2, along: 0.2}, height: 1.5, aim: w}}
grip: {card: {card: [1, 1], at: {by: ruth, turn: 30 own-left, distance: 1}}}
setups: {wide: {camera: A}, close: {after: wide, change: %s}}`
	parts := `{lights: {key: {at: {distance: 1.5}}, day: {at: {in: 0.5}}}, people: {ruth: {at: {along: 2.5}, marks: {sit: {at: {distance: 1.2}}}}},
  furniture: {desk: {at: {shift: [2, -2]}}}, cameras: {A: {at: {turn: 10}}}, grip: {card: {at: {turn: 40 own-left}}}}`
	whole := `{lights: {key: {at: {by: ruth, toward: A, turn: 55 camera-right, distance: 1.5}}, day: {at: {opening: w, in: 0.5, along: 0.2}}},
  people: {ruth: {at: {wall: den.top, along: 2.5, in: 1}, marks: {sit: {at: {by: desk, toward: ruth, distance: 1.2}}}}},
  furniture: {desk: {at: {from: ruth, shift: [2, -2]}}}, cameras: {A: {at: {by: ruth, turn: 10, distance: 3}}}, grip: {card: {at: {by: ruth, turn: 40 own-left, distance: 1}}}}`
	log := &source.Log{}
	setupOf := func(change string) *plan.Setup { return setup(t, strings.Replace(text, "%s", change, 1), "close") }
	some, all := setupOf(parts), setupOf(whole)
	if log.Failed() {
		t.Fatal(told(log))
	}
	for i := range all.Lights {
		near3(t, all.Lights[i].Name, some.Lights[i].Frame.At, all.Lights[i].Frame.At, 0)
	}
	near2(t, "ruth", some.People[0].At, all.People[0].At, 0)
	near2(t, "her mark", some.People[0].Marks[0].At, all.People[0].Marks[0].At, 0)
	near2(t, "desk", some.Furniture[0].At, all.Furniture[0].At, 0)
	near3(t, "A", some.Cameras[0].Frame.At, all.Cameras[0].Frame.At, 0)
	near3(t, "card", some.Grip[0].Frame.At, all.Grip[0].Frame.At, 0)
}
