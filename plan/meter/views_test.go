package meter

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// lensAt is a camera at eye height that looks at a place, balanced to a white.
func lensAt(name string, at, to r2.Vec, white colour.White) plan.Camera {
	x := exposure
	x.White = white
	way := r2.Sub(to, at)
	return plan.Camera{Name: name, Exposure: x, Lens: 50, Gate: [2]float64{24, 14}, Frame: plan.FrameAlong(r3.Vec{X: at.X, Y: at.Y, Z: 1.6}, r3.Vec{X: way.X, Y: way.Y}, 0, 0)}
}

// A face in the origin looks up the sheet, its key 2 m off at 45° to the own left, its fill as far at the own right.
// The angles are known, so ratios, sides and colours can be worked out by hand; in the mirror all words are mirrored.
func TestFacesInBothConventions(t *testing.T) {
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	const keyKelvin, fillKelvin, white = 3200.0, 5600.0, 4300.0
	const green = 0.0042 // nearest is a quarter of plus green
	swapped := strings.NewReplacer("left", "right", "right", "left")
	for name, mirror := range map[string]float64{"as it is": 1, "mirrored": -1} {
		said := func(s string) string {
			if mirror < 0 {
				return swapped.Replace(s)
			}
			return s
		}
		at := func(x, y float64) r2.Vec { return r2.Vec{X: mirror * x, Y: y} }
		lamp := func(name string, p r2.Vec, candela float64, w colour.White) plan.Light {
			return bulb(name, r3.Vec{X: p.X, Y: p.Y, Z: 1.6}, candela, w.RGB())
		}
		off := math.Sqrt2
		s := &plan.Setup{Kit: shipped, Exposure: exposure, People: []plan.Person{person("ines", at(0, -0.1), r2.Vec{Y: 1})},
			Lights: []plan.Light{
				lamp("key", at(-off, off), 1200, colour.White{Kelvin: keyKelvin}),
				lamp("fill", at(off, off), 400, colour.White{Kelvin: fillKelvin, Duv: green}),
			}}
		balance := colour.White{Kelvin: white}
		for name, p := range map[string]r2.Vec{"A": at(-2, 3), "B": at(2, 3), "C": at(0, 3), "D": at(0, -3), "E": at(-3, 0), "F": at(3, 0)} {
			s.Cameras = append(s.Cameras, lensAt(name, p, r2.Vec{}, balance))
		}
		set := read(t, s)
		f := set.FaceOf("ines")
		if c := f.Contrast; f.Side != said("left") || !(math.Abs(c.Ratio-3) <= 1e-9) || !(math.Abs(c.Stops-math.Log2(3)) <= 1e-9) {
			t.Fatalf("%s: %+v", name, f)
		}
		if ratio, ok := f.KeyToFill(); !ok || !(math.Abs(ratio-2) <= 1e-9) {
			t.Fatalf("%s: key to fill is %g, %t", name, ratio, ok)
		}
		var b strings.Builder
		if err := WriteTable(&b, []Set{set}); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{
			"key + fill : fill 3.00 : 1, as both sides are metered; key : fill 2.00 : 1",
			"own left is camera right for A, which looks from the lit side",
			"own left is camera right for B, which looks from the shadow side",
			"own left is camera right for C, which looks straight at the nose",
			"own left is camera left for D, which looks from behind",
			"own left is turned to E, which looks from the lit side",
			"own left is turned away from F, which looks from the shadow side",
			"from the 4300 K of A: key side 80 mired warmer; fill side 54 mired cooler, as through 1/4 plus green",
		} {
			if want = said(want); !strings.Contains(b.String(), want) {
				t.Errorf("%s: it does not say %q:\n%s", name, want, b.String())
			}
		}
		holdShifts(t, f.Views, 1e6/keyKelvin-1e6/white, 1e6/fillKelvin-1e6/white, green)
	}
}

// holdShifts fails unless the colours of the sides lie so far from the white, in mireds, and the fill's is so green.
func holdShifts(t *testing.T, views []View, key, fill, green float64) {
	t.Helper()
	const cct = 0.01 // mired: what a temperature is known to
	if len(views) == 0 {
		t.Error("no camera sees the face")
	}
	for _, v := range views {
		if !(math.Abs(v.KeyShift.Mired-key) <= cct) || !(math.Abs(v.FillShift.Mired-fill) <= cct) {
			t.Errorf("key %+v, fill %+v", v.KeyShift, v.FillShift)
		}
		if !(math.Abs(v.FillShift.Duv-green) <= 1e-5) || v.KeyShift.Green != "" || v.FillShift.Green != "1/4 plus green" {
			t.Errorf("key %+v, fill %+v", v.KeyShift, v.FillShift)
		}
	}
}

// A face with one dark side is seen like any other: which cheek the key is on, how far it lies from the white, what is in the
// eyes. A camera that has it behind its lens, or level with that, has no view of it; what is in eyes is said of a camera
// without a white as well, and nowhere before a study has looked.
func TestViewsOfADarkSide(t *testing.T) {
	key := bulb("key", r3.Vec{X: -2, Y: -0.1, Z: 1.6}, 1200, colour.White{Kelvin: 4300}.RGB())
	s := &plan.Setup{Exposure: exposure, People: []plan.Person{person("ines", r2.Vec{Y: -0.1}, r2.Vec{Y: 1})}, Lights: []plan.Light{key}}
	white := colour.White{Kelvin: 4300}
	s.Cameras = []plan.Camera{
		lensAt("A", r2.Vec{Y: 3}, r2.Vec{}, white), lensAt("away", r2.Vec{Y: 3}, r2.Vec{Y: 9}, white),
		lensAt("beside", r2.Vec{Y: 3}, r2.Vec{X: 1, Y: 3}, white), lensAt("bare", r2.Vec{Y: 3}, r2.Vec{}, colour.White{})}
	set := read(t, s)
	f := set.FaceOf("ines")
	if f == nil || f.Contrast != nil || len(f.Views) != 2 || f.Views[0].KeyShift == nil || f.Views[0].FillShift != nil {
		t.Fatalf("%+v", f)
	}
	unseen := strings.Join(f.lines(), "\n")
	for i := range f.Views {
		f.Views[i].Catchlights = []Catchlight{}
	}
	f.Views[1].Catchlights = []Catchlight{{Light: "key", Numbered: "1 key", Hour: 3}}
	const want = `ines: key side left, and no light on the fill side
  own left is camera right for A, which looks straight at the nose
  from the 4300 K of A: key side the same; fill side dark
  own left is camera right for bare, which looks straight at the nose`
	if unseen != want {
		t.Errorf("before a study looks:\n%s", unseen)
	}
	seen := strings.Replace(want, "fill side dark\n", "fill side dark\n  eyes for A: no lamp shows in them\n", 1) + "\n  eyes for bare: 1 key at 3 o'clock, a point"
	if got := strings.Join(f.lines(), "\n"); got != seen {
		t.Errorf("got\n%s\nwant\n%s", got, seen)
	}
	if j := f.json(); j.Stops != nil || j.Ratio != nil || j.KeyToFill != nil || j.KeyAndFillToFill != nil || len(j.Cameras) != 2 || j.Key != "left" {
		t.Errorf("as JSON it is %+v", j)
	}
}

// TestNoKeyToFillWhereItWouldMislead: a lamp at 45° to either side lights that side alone. Readings tell a ratio of key to fill from 1 : 1 on, where the
// lamp that the scene calls the key lights the brighter side. "key : fill 0.2 : 1" was said of a key from the front, which lights both sides.
func TestNoKeyToFillWhereItWouldMislead(t *testing.T) {
	off := math.Sqrt2
	for _, c := range []struct {
		left, right float64 // cd
		key         string
		want        float64 // 0: not told
		words       string
	}{
		{1200, 400, "left", 2, "key : fill 2.00 : 1, what the key side has more"},
		{1200, 400, "", 2, "key : fill 2.00 : 1, what the key side has more"},
		{800, 400, "left", 1, "key : fill 1.00 : 1, what the key side has more"},
		{780, 400, "left", 0, "too even for a key : fill"},
		{1200, 400, "right", 0, "no key : fill, for what is called the key lights the other side more"},
	} {
		lamp := func(name string, x, candela float64) plan.Light {
			l := bulb(name, r3.Vec{X: x, Y: off, Z: 1.6}, candela, colour.White{Kelvin: 5600}.RGB())
			if name == c.key {
				l.Roles = []scene.Role{{Role: term.Key}}
			}
			return l
		}
		s := &plan.Setup{Exposure: exposure, People: []plan.Person{person("ines", r2.Vec{Y: -0.1}, r2.Vec{Y: 1})},
			Lights: []plan.Light{lamp("left", -off, c.left), lamp("right", off, c.right)}}
		set := read(t, s)
		f := set.FaceOf("ines")
		ratio, ok := f.KeyToFill()
		if ok != (c.want > 0) || ok && math.Abs(ratio-c.want) > 1e-9 || ok != (f.json().KeyToFill != nil) {
			t.Errorf("%+v: %g, %t", c, ratio, ok)
		}
		if said := strings.Join(f.lines(), "\n"); !strings.Contains(said, "as both sides are metered; "+c.words) {
			t.Errorf("%+v: it says\n%s", c, said)
		}
	}
}
