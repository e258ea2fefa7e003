package meter

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// sided are the four readings of a face that decide its sides.
func sided(left, right, edgeOnLeft, edgeOnRight float64) []Reading {
	of := func(plane string, lux float64) Reading {
		return Reading{Name: "ines." + plane, Person: "ines", Kind: "flat", Lux: &lux, Shares: []Share{{Light: plane, Lux: lux}}}
	}
	return []Reading{of("left", left), of("right", right), of(edgeLeft, edgeOnLeft), of(edgeRight, edgeOnRight)}
}

// What is not a hundredth of a stop brighter is a tie, and a tie goes left: so a symmetric scene has its key on the
// left whatever the last figures of its light are. The rule of the edge is the same.
func TestTiesGoLeft(t *testing.T) {
	const stop = 0.01
	for name, c := range map[string]struct {
		left, right float64
		side        string
		stops       float64
	}{
		"equal":                                {100, 100, "left", 0},
		"left by a little":                     {100 * math.Exp2(0.5*stop), 100, "left", 0.5 * stop},
		"left":                                 {100 * math.Exp2(2*stop), 100, "left", 2 * stop},
		"right by less than a tie":             {100, 100 * math.Exp2(0.99*stop), "left", 0},
		"right by just a tie":                  {1, 1 + tieRatio, "left", 0},
		"right by more than a tie":             {100, 100 * math.Exp2(1.02*stop), "right", 1.02 * stop},
		"right, by all that a dark left lacks": {0.001, 100, "right", math.Log2(1e5)},
	} {
		readings, face := arrangeFace("ines", sided(c.left, c.right, c.left, c.right))
		if face.Side != c.side || face.Person != "ines" {
			t.Errorf("%s: the key side of %s is %s, want %s", name, face.Person, face.Side, c.side)
		}
		near(t, name, &face.Contrast.Stops, c.stops)
		other := map[string]string{"left": "right", "right": "left"}[c.side]
		set := Set{Readings: readings}
		for reading, light := range map[string]string{"key": c.side, "fill": other, "edge": "edge-" + c.side, "left": "left", "right": "right"} {
			if got := set.Named("ines." + reading); got == nil || got.Shares[0].Light != light {
				t.Errorf("%s: ines.%s is %+v, want that of %s", name, reading, got, light)
			}
		}
		if len(readings) != 5 || readings[0].Name != "ines.key" || readings[1].Name != "ines.fill" {
			t.Errorf("%s: readings %v", name, readings)
		}
	}
}

// A dark side has no contrast: no light is no number of stops under the other. The brighter side is the key side still; of
// two dark ones none is.
func TestOneDarkSide(t *testing.T) {
	for _, c := range []struct {
		left, right, key float64
		side             string
	}{{80, 0, 80, "left"}, {0, 80, 80, "right"}, {0, 0, 0, ""}} {
		readings, face := arrangeFace("ines", sided(c.left, c.right, 1, 1))
		switch {
		case c.side == "" && face != nil:
			t.Errorf("a dark face has a key side: %+v", face)
		case c.side != "" && (face.Side != c.side || face.Contrast != nil):
			t.Errorf("%v : %v has its key on the %s, contrast %+v", c.left, c.right, face.Side, face.Contrast)
		}
		near(t, "key", readings[0].Lux, c.key)
		near(t, "fill", readings[1].Lux, 0)
	}
	_, face := arrangeFace("ines", sided(1, 0.25, 1, 1))
	near(t, "stops over little light", &face.Contrast.Stops, 2)
	set := Set{Faces: []Face{{Person: "noor"}, *face}}
	if set.FaceOf("ines").Contrast.Ratio != 4 || set.FaceOf("ada") != nil || set.Named("ada.key") != nil {
		t.Error("a face or a reading is found by another's name")
	}
}

// A camera where a face is has no direction from it, so the face has no dome toward it.
func TestNoDomeTowardACameraInTheFace(t *testing.T) {
	ines := person("ines", r2.Vec{}, r2.Vec{Y: 1})
	s := &plan.Setup{People: []plan.Person{ines}, Cameras: []plan.Camera{
		{Name: "A", Frame: ines.Face}, {Name: "B", Frame: plan.Frame{At: r3.Add(ines.Face.At, r3.Vec{Y: 1e-3})}}}}
	var domes []string
	for _, o := range Requests(s) {
		if o.Kind == "dome" {
			domes = append(domes, o.Name)
			if o.Receptor.Axis != (r3.Vec{Y: 1}) || o.Camera != "B" {
				t.Errorf("%+v", o)
			}
		}
	}
	if len(domes) != 1 || domes[0] != "ines.dome.B" {
		t.Errorf("domes %v, want that of B alone", domes)
	}
}

// A spot meter uses the exposure of its own camera, and the scene's where that has none.
func TestASpotGoesByItsCamera(t *testing.T) {
	slow, fast := exposure, exposure
	slow.ISO, fast.ISO = 200, 3200
	s := &plan.Setup{Exposure: exposure, Cameras: []plan.Camera{{Name: "A", Exposure: slow}, {Name: "B", Exposure: fast}, {Name: "C", Exposure: slow}},
		Meters: []plan.Meter{{Name: "b", Kind: term.SpotMeter, From: "B", At: r3.Vec{X: 4}, Lens: r3.Vec{X: 1}}, {Name: "none", Kind: term.SpotMeter},
			{Name: "flat", Kind: term.FlatMeter, At: r3.Vec{X: 3}}}}
	requests := Requests(s)
	if o := requests[0]; o.Exposure.ISO != 3200 || o.Camera != "B" || o.Receptor.At.X != 1 || len(o.positions()) != 2 {
		t.Errorf("the spot of B is %+v", o)
	}
	if o := requests[1]; o.Exposure.ISO != 800 || o.Camera != "" {
		t.Errorf("a spot without a camera is judged by %+v of %q", o.Exposure, o.Camera)
	}
	if places := requests[2].positions(); len(places) != 1 || places[0].X != 3 {
		t.Errorf("a flat meter is at %v", places)
	}
}

// took is what a reading is made of light by a few terms of known size, lx.
func took(terms []light.Term, lux ...float64) Reading {
	b := &light.Basis{Terms: terms, Gains: []colour.RGB{white}}
	d := light.Levels{}
	for i := range terms {
		b.Points = append(b.Points, []colour.RGB{white.Scale(lux[i])})
		d[terms[i].Light] = white
	}
	s := &plan.Setup{Exposure: exposure, Names: map[solid.ID]string{0: "nothing", 1: "street", 2: "kitchen.floor"}}
	set := Read(s, []Request{{Name: "m", Kind: "flat", Exposure: exposure}}, b, d)
	return set.Readings[0]
}

// A share names the surface that its light left last, if it left one: direct light left none.
func TestASharesSurface(t *testing.T) {
	for path, from := range map[light.Path]string{light.Direct: "", light.Diffused: "kitchen.floor", light.Mirrored: "kitchen.floor", light.Reflected: "kitchen.floor"} {
		r := took([]light.Term{{Light: "day", Path: path, Via: []solid.ID{1}, From: 2}}, 30)
		if s := r.Shares[0]; s.From != from || s.Path != path.String() || s.Light != "day" || s.Via[0] != "street" {
			t.Errorf("%v: %+v, want it from %q", path, s, from)
		}
	}
}

// Light below a thousand-millionth of a lux is rounding: it is no reading and no share of one. Shares that came the
// same way are one; those of another light, path, pane or surface are not.
func TestSharesThatCount(t *testing.T) {
	day := light.Term{Light: "day", Path: light.Reflected, From: 2}
	for _, lux := range []float64{0, 0.99e-9} {
		r := took([]light.Term{day}, lux)
		if *r.Lux != 0 || r.Stop != nil || r.Over != nil || r.XY != nil || r.Error != nil || len(r.Shares) != 0 {
			t.Errorf("%g lx reads %v with %v", lux, *r.Lux, r.Shares)
		}
	}
	if r := took([]light.Term{day}, 1.01e-9); *r.Lux == 0 || len(r.Shares) != 1 || r.Stop == nil {
		t.Errorf("a little light reads %v with %v", *r.Lux, r.Shares)
	}
	lamp, direct, pane, wall := day, day, day, day
	lamp.Light, direct.Path, pane.Via, wall.From = "lamp", light.Mirrored, []solid.ID{1}, 1
	r := took([]light.Term{day, lamp, direct, pane, wall, day}, 1, 2, 4, 8, 16, 32)
	if len(r.Shares) != 5 {
		t.Fatalf("shares %+v, want five", r.Shares)
	}
	for i, want := range []float64{33, 2, 4, 8, 16} {
		near(t, r.Shares[i].pathInWords(), &r.Shares[i].Lux, want)
	}
	near(t, "their sum", r.Lux, 63)
}

// Stops over the working stop carry their sign, and what rounds to none carries none.
func TestSignsOfStops(t *testing.T) {
	for stops, want := range map[float64]string{0: "0.0", 0.049: "0.0", -0.049: "0.0", 0.051: "+0.1", -0.051: "-0.1", 1.26: "+1.3", -12: "-12.0"} {
		if got := signed(stops); got != want {
			t.Errorf("%g stops print as %q, want %q", stops, got, want)
		}
	}
}

// Errors are printed to a tenth of a percent, and never as less than that.
func TestErrorsInWords(t *testing.T) {
	for share, want := range map[float64]string{0: "0.1 %", 0.0004: "0.1 %", 0.0026: "0.3 %", 0.0123: "1.2 %", 0.5: "50.0 %"} {
		if got := (&Reading{Error: &share}).PlusMinus(); got != want {
			t.Errorf("%g prints as %q, want %q", share, got, want)
		}
	}
	if got := (&Reading{}).PlusMinus(); got != "" {
		t.Errorf("no error prints as %q", got)
	}
}

// Figures of JSON keep nine digits, and places a nanometre, without negative zeros; what no number stands for is
// left as it is.
func TestFiguresOfJSON(t *testing.T) {
	third := 1.0 / 3
	near(t, "a third", RoundedOrNull(&third), 0.333333333)
	if *RoundedOrNull(&third) != 0.333333333 || Rounded(-1234567890.12) != -1234567890 || Rounded(0.1+0.2) != 0.3 || RoundedOrNull(nil) != nil {
		t.Errorf("%v, %v", *RoundedOrNull(&third), Rounded(-1234567890.12))
	}
	if v := Rounded(math.Inf(1)); !math.IsInf(v, 1) {
		t.Errorf("no bound is %v", v)
	}
	got := triple(r3.Vec{X: -1e-12, Y: 1.23456789049, Z: -2})
	if got != [3]float64{0, 1.23456789, -2} || math.Signbit(got[0]) {
		t.Errorf("%v", got)
	}
}
