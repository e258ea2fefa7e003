package passing_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// lit computes the readings of a scene.
func lit(t *testing.T, text string) *study.Study {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		t.Fatalf("%s\n%v", text, log.All())
	}
	s, err := study.Run(context.Background(), setup, study.Options{ReadingsOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// passing is how the light k passes at the one face where it is judged.
func passing(t *testing.T, text string) *meter.Passing {
	t.Helper()
	s := lit(t, text).Readings.StandInOf("k")
	if s == nil || len(s.Faces) != 1 {
		t.Fatalf("%s\n%+v", text, s)
	}
	return &s.Faces[0]
}

// near fails where a figure is off.
func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

const ada = "people: {ada: {at: [0, 0], faces: 0}}\n"

// A head of 5600 K that plays a lamp of 3200 K is 133.9 mired cooler, and full CTO takes that away for the light that it takes. With it
// on the head, in another run, the gap is as the first run says.
func TestColourOfALamp(t *testing.T) {
	const lamps = ada + "lights:\n  lamp: {output: {candela: 100, shape: uniform}, colour: 3200 K, at: [-1, 2], height: 1.6, aim: ada}\n" +
		"  k: {unit: led-point-150-daylight, at: [1, 2], height: 1.6, aim: ada, stands-for: lamp%s}\n"
	p := passing(t, fmt.Sprintf(lamps, ""))
	near(t, "mired", p.Gap.Mired, 1e6/5600-1e6/3200, 0.2)
	near(t, "Duv", p.Gap.Duv, 0, 1e-4)
	if strings.Join(p.Gels.Gels, "+") != "full CTO" || p.Setting != nil || p.Passes() {
		t.Errorf("%+v", p)
	}
	near(t, "stops", p.Gels.Stops, -math.Log2(0.55), 1e-9)
	after := passing(t, fmt.Sprintf(lamps, ", gels: [full CTO]"))
	near(t, "mired with the gel", after.Gap.Mired, p.Gels.Left.Mired, 1e-6)
	near(t, "Duv with the gel", after.Gap.Duv, p.Gels.Left.Duv, 1e-9)
	if len(after.Gels.Gels) > 0 {
		t.Errorf("%v is added to what is right", after.Gels.Gels)
	}
}

// A unit of two colours is set to the white of a filament at its level, which is warmer than at full; set so, in another run, it leaves and gives
// what the first run says.
func TestSettingForADimmedLamp(t *testing.T) {
	const lamps = ada + "lights:\n  lamp: {unit: practical-table, at: [-1, 2], height: 1.6, level: 20 %%}\n" +
		"  k: {unit: led-point-300-bicolour, at: [1, 2], height: 1.6, aim: ada, stands-for: lamp%s}\n"
	s := lit(t, fmt.Sprintf(lamps, ""))
	p := &s.Readings.StandInOf("k").Faces[0]
	near(t, "mired", p.Gap.Mired, 1e6/5600-1e6/colour.Dimmed(2700, 0.2), 1)
	if p.Setting == nil || p.Setting.White.Kelvin != 2700 {
		t.Fatalf("%+v, and a filament at 20 %% has %.0f K", p.Setting, colour.Dimmed(2700, 0.2))
	}
	set := lit(t, fmt.Sprintf(lamps, ", colour: 2700 K"))
	after := &set.Readings.StandInOf("k").Faces[0]
	near(t, "mired as set", after.Gap.Mired, p.Setting.Left.Mired, 1e-6)
	given := func(s *study.Study) (sum float64) {
		for _, share := range s.Readings.Named("ada.front").Shares {
			if share.Light == "k" {
				sum += share.Lux
			}
		}
		return sum
	}
	near(t, "stops", math.Log2(given(s)/given(set)), p.Setting.Stops, 1e-6)
}

// Glass that tints and walls in the way count: the colour is that of the light as it comes. Behind gelled panes a lamp of the same white
// is warmer by the gel.
func TestColourThroughGlass(t *testing.T) {
	const text = "rooms: {den: {at: [-3, -3], size: [6, 4], walls: black, floor: black, ceiling: black}}\nopenings: {w: {window: den.top, along: centre, width: 2, gels: [1/2 CTO]}}\n" + ada +
		"lights:\n  lamp: {output: {candela: 100, shape: uniform}, at: [-1, -0.9], height: 1.6, aim: ada}\n" +
		"  k: {output: {candela: 1000, shape: uniform}, at: [0, 3], height: 1.6, aim: ada, stands-for: lamp}\n"
	p := passing(t, text)
	near(t, "mired", p.Gap.Mired, 133.9/2, 2)
	if strings.Join(p.Gels.Gels, "+") != "1/2 CTB" {
		t.Errorf("%v", p.Gels.Gels)
	}
}

// The direction and the width of two bulbs before a face come from their places; mirrored, left is right.
func TestWayFromABulb(t *testing.T) {
	const text = "people: {ada: {at: [%g, -0.1], faces: 0}}\nlights:\n  lamp: {output: {luminance: 900, sphere: 0.2}, at: [%g, 2], height: %g, mount: hand, aim: down}\n" +
		"  k: {output: {luminance: 900, sphere: 0.4}, at: [%g, 2], height: %g, mount: hand, aim: down, stands-for: lamp}\n"
	for _, side := range []float64{1, -1} {
		s := lit(t, fmt.Sprintf(text, side*5, side*4.5, 1.6, side*6.2, 2.4))
		face := s.Setup.People[0].Face.At
		is, lamp := r3.Sub(s.Setup.LightNamed("k").Frame.At, face), r3.Sub(s.Setup.LightNamed("lamp").Frame.At, face)
		w := s.Readings.StandInOf("k").Faces[0].Way
		near(t, "angle", w.Angle, math.Acos(r3.Dot(is, lamp)/r3.Norm(is)/r3.Norm(lamp))*180/math.Pi, 1e-9)
		near(t, "higher", w.Higher, (math.Asin(is.Z/r3.Norm(is))-math.Asin(lamp.Z/r3.Norm(lamp)))*180/math.Pi, 1e-9)
		near(t, "right", *w.Right, (math.Atan2(is.X, is.Y)-math.Atan2(lamp.X, lamp.Y))*180/math.Pi, 1e-9)
		near(t, "width", w.Wide, 2*math.Asin(0.2/r3.Norm(is))*180/math.Pi, 1e-9)
		near(t, "width of the lamp", w.For, 2*math.Asin(0.1/r3.Norm(lamp))*180/math.Pi, 1e-9)
		if right := *w.Right > 0; right != (side > 0) {
			t.Errorf("%g: it comes %g° from the right", side, *w.Right)
		}
	}
}

// Softer is by what is seen of an opening: a face turned aside by 60° looks as wide as one of half its width.
func TestWidthOfAFaceTurnedAside(t *testing.T) {
	const text = ada + "lights:\n  lamp: {output: {lumens: 900, face: [0.05, 0.1]}, at: [0, 9], height: 1.59, mount: hand, aim: {pan: 180}}\n" +
		"  k: {output: {lumens: 900, face: [0.1, 0.1]}, at: [0, 9], height: 1.59, mount: hand, aim: {pan: %g}, stands-for: lamp}\n"
	straight, aside := passing(t, fmt.Sprintf(text, 180.0)).Way, passing(t, fmt.Sprintf(text, 120.0)).Way
	near(t, "straight", straight.Softer(), math.Sqrt2, 1e-3)
	near(t, "aside", aside.Softer(), 1, 1e-3)
	near(t, "angle", aside.Angle, 0, 1e-9)
}

// A lamp that counts as a point is as wide as its lens; a tube and a shade as what they look like; one of no size is no wider than another.
func TestWidthOfOtherOpenings(t *testing.T) {
	const text = ada + "lights:\n  lamp: {output: {luminance: 900, sphere: 0.1}, at: [0, 4], height: 1.59, mount: hand, aim: down}\n  k: {%s, at: [0, 4], height: 1.59, mount: hand, stands-for: lamp%s}\n"
	s := lit(t, fmt.Sprintf(text, "unit: fresnel-tungsten-650", ", aim: ada"))
	k := s.Setup.LightNamed("k")
	distance := r3.Norm(r3.Sub(k.Frame.At, s.Setup.People[0].Face.At))
	near(t, "lens", s.Readings.StandInOf("k").Faces[0].Way.Wide, 2*math.Atan(k.Head.Aperture/2/distance)*180/math.Pi, 1e-3)
	tube := lit(t, fmt.Sprintf(text, "unit: led-tube-120", ", aim: ada"))
	bar := tube.Setup.LightNamed("k").Head.Source.Opening
	near(t, "tube", tube.Readings.StandInOf("k").Faces[0].Way.Wide, photometry.ApparentWidth(bar.Width*bar.Height/(distance*distance)), 0.1)
	shade := lit(t, fmt.Sprintf(text, "unit: practical-table", ""))
	o := shade.Setup.LightNamed("k").Head.Source.Opening
	near(t, "shade", shade.Readings.StandInOf("k").Faces[0].Way.Wide, photometry.ApparentWidth(o.Width*o.Height/(distance*distance)), 0.1)
	if point := passing(t, fmt.Sprintf(text, "output: {candela: 900, shape: uniform}", ", aim: down")).Way; point.Softer() != 0 || !strings.Contains(point.Words(), "no size to compare") {
		t.Errorf("a point: %s", point.Words())
	}
}

// Off a card the light comes from the card, as wide as that: evenly lit from afar. So does what a frame of cloth sends on, and a mirror shows the
// lamp where its image is.
func TestWayByACard(t *testing.T) {
	const text = "people: {ada: {at: [0, -0.1], faces: 0, height: 1.7}}\nlights:\n  lamp: {output: {luminance: 900, sphere: 0.1}, at: [0, 2], height: 1.59, mount: hand, aim: down}\n" +
		"  k: {output: {candela: 9000, beam: %g, field: %g}, at: [%s], height: %g, mount: hand, aim: g, stands-for: lamp}\n" +
		"grip: {g: {%s, at: [1, 1.5], height: 1.59, faces: %s}}\n"
	card := passing(t, fmt.Sprintf(text, 8.0, 10.0, "-6, 6", 1.59, "card: [0.5, 0.5]", "[-0.8, 0.8, 1.59]")).Way
	figure := func(s *study.Study) (toward r3.Vec, wide float64) {
		face, g := s.Setup.People[0].Face.At, &s.Setup.Grip[0]
		return r3.Unit(r3.Sub(g.Frame.At, face)), photometry.ApparentWidth(photometry.SolidAngle(face, g.Corners()))
	}
	s := lit(t, fmt.Sprintf(text, 8.0, 10.0, "-6, 6", 1.59, "card: [0.5, 0.5]", "[-0.8, 0.8, 1.59]"))
	toward, wide := figure(s)
	lamp := r3.Unit(r3.Sub(s.Setup.LightNamed("lamp").Frame.At, s.Setup.People[0].Face.At))
	near(t, "off a card", card.Angle, math.Acos(r3.Dot(toward, lamp))*180/math.Pi, 1)
	near(t, "wide as the card", card.Wide, wide, 0.03*wide)

	s = lit(t, fmt.Sprintf(text, 60.0, 90.0, "2, 3", 1.59, "frame: [0.5, 0.5], cloth: full-diffusion", "ada"))
	toward, wide = figure(s)
	cloth := s.Readings.StandInOf("k").Faces[0].Way
	near(t, "through a frame", cloth.Angle, math.Acos(r3.Dot(toward, lamp))*180/math.Pi, 1e-6)
	near(t, "wide as the frame", cloth.Wide, wide, 1e-6)
}

// A glass shows a lamp where its image is, as far behind as the lamp is before, and as wide as it looks from there.
func TestWayByAMirror(t *testing.T) {
	const text = "rooms: {den: {at: [-3, -2], size: [6, 4], height: 2.6, walls: black, floor: black, ceiling: black}}\nfurniture: {glass: {mirror: [1.5, 1.5], at: {wall: den.right, along: centre, in: 0}, lift: 0.85}}\n" +
		"people: {ada: {at: [0, -0.1], faces: 90}}\nlights:\n  lamp: {output: {luminance: 900, sphere: 0.1}, at: [1, 1.5], height: 1.59, mount: hand, aim: down}\n" +
		"  k: {output: {lumens: 3000, face: [0.4, 0.4]}, at: [-1, 1.2], height: 1.6, mount: hand, aim: {pan: 90}, stands-for: lamp}\n" +
		"grip: {f: {flag: [0.6, 0.6], at: [-0.5, 0.7], height: 1.6, faces: ada}}\n"
	s := lit(t, text)
	glass := 0.0
	for _, sheet := range s.Setup.Set.Sheets {
		if strings.HasPrefix(sheet.Name, "glass") {
			glass = sheet.Corners[0].X
		}
	}
	k, face := s.Setup.LightNamed("k").Frame.At, s.Setup.People[0].Face.At
	image := r3.Sub(r3.Vec{X: 2*glass - k.X, Y: k.Y, Z: k.Z}, face)
	lamp := r3.Sub(s.Setup.LightNamed("lamp").Frame.At, face)
	w := s.Readings.StandInOf("k").Faces[0].Way
	near(t, "angle", w.Angle, math.Acos(r3.Dot(image, lamp)/r3.Norm(image)/r3.Norm(lamp))*180/math.Pi, 1e-6)
	cos := image.X / r3.Norm(image)
	near(t, "width", w.Wide, photometry.ApparentWidth(0.16*cos/r3.Norm2(image)), 0.05)
}

// A light plays a window by what other light comes in there: through glass, through a gap, off a curtain. Where none does the scene
// has to say its colour: the light that plays it does not count.
func TestWayOfAWindow(t *testing.T) {
	const text = "rooms: {den: {at: [-3, -3], size: [6, 4], walls: black, floor: black, ceiling: black}}\nopenings: {w: {%s: den.top, along: centre, width: 2, sill: 1, head: 2%s}}\n" + ada +
		"lights:\n  sky: {output: {candela: 1000, shape: uniform}, colour: 7000 K, at: [0, %g], height: 1.6, aim: ada}\n" +
		"  k: {output: {lumens: 900, face: [0.5, 0.5]}, colour: 5600 K, at: [0.2, 0.6], height: 1.6, aim: ada, mount: hand, stands-for: %s}\n"
	for _, c := range []struct{ kind, dressing string }{{"window", ""}, {"gap", ""}, {"window", ", dressing: [{cloth: sheer}]"}} {
		s := lit(t, fmt.Sprintf(text, c.kind, c.dressing, 3.0, "w"))
		p := &s.Readings.StandInOf("k").Faces[0]
		near(t, c.kind+c.dressing, p.Gap.Mired, 1e6/5600-1e6/7000, 2)
		face := s.Setup.People[0].Face.At
		middle := r3.Unit(r3.Sub(r3.Vec{X: 0, Y: 1, Z: 1.5}, face))
		is := r3.Unit(r3.Sub(s.Setup.LightNamed("k").Frame.At, face))
		near(t, "angle", p.Way.Angle, math.Acos(r3.Dot(middle, is))*180/math.Pi, 1e-6)
		if p.Way.For < p.Way.Wide {
			t.Errorf("the window is %g° wide, the light %g°", p.Way.For, p.Way.Wide)
		}
	}
	none := lit(t, fmt.Sprintf(text, "window", "", -1.0, "w")).Readings.StandInOf("k")
	if !strings.HasPrefix(none.Unknown, "no other light comes in by w: write its colour") || none.Faces[0].Gap != nil || none.Faces[0].Way == nil {
		t.Errorf("%+v", none)
	}
	// A lamp in the room that lights a meter beyond the window brings nothing in.
	out := lit(t, fmt.Sprintf(text, "window", "", -1.0, "w")+"meters: {m: {dome: [1.8, 4, 1.5], facing: 180}}\n").Readings
	if s := out.StandInOf("k"); s.Unknown == "" || s.Faces[0].Gap != nil || *out.Named("m").Lux < 1 {
		t.Errorf("%+v", s)
	}
	said := passing(t, fmt.Sprintf(text, "window", "", -1.0, "{opening: w, colour: 4000 K}"))
	near(t, "as the scene says", said.Gap.Mired, 1e6/5600-1e6/4000, 0.2)
}

// A white comes from nowhere; a strong colour has no gap and no gel; a light that is off passes for nothing; without people there is no
// face.
func TestWhatIsNotCompared(t *testing.T) {
	const lamp = "lights:\n  k: {output: {candela: 900, shape: uniform}, at: [0, 2], height: 1.6, aim: down, stands-for: 2900 K%s}\n"
	if p := passing(t, ada+fmt.Sprintf(lamp, "")); p.Way != nil || p.Gap == nil {
		t.Errorf("%+v", p)
	}
	p := passing(t, ada+fmt.Sprintf(lamp, ", gels: [deep blue]"))
	if p.Gap != nil || len(p.Gels.Gels) > 0 || p.ColourWords() != "no two colour temperatures to compare" || p.CureWords() != nil {
		t.Errorf("%+v", p)
	}
	if s := lit(t, ada+fmt.Sprintf(lamp, ", level: off")); len(s.Readings.StandIns) > 0 {
		t.Errorf("%+v", s.Readings.StandIns)
	}
	s := lit(t, fmt.Sprintf(lamp, "")).Readings.StandIns
	if len(s) != 1 || len(s[0].Faces) > 0 || s[0].Main() != nil || s[0].For != "2900 K" {
		t.Errorf("%+v", s)
	}
}

// It is judged where it tells: at the face that it is aimed at, not where a trace of it comes off walls; where it tells nowhere, at the
// face with the most of it; and where nothing comes at all, as it leaves. Feet change nothing.
func TestWhereItIsJudged(t *testing.T) {
	const text = "units: ft\nrooms: {den: {at: [-10, -10], size: [20, 20]}}\npeople: {ada: {at: [0, 0], faces: 0}, tom: {at: [5, -6], faces: 90}}\n" +
		"lights:\n  lamp: {output: {candela: 900, shape: uniform}, at: [1, 6], height: 5, aim: down}\n" +
		"  k: {output: {candela: 900, beam: 10, field: 20}, at: [-1, 6], height: 5, aim: %s, stands-for: lamp, mount: hand}\n"
	s := lit(t, fmt.Sprintf(text, "ada")).Readings.StandInOf("k")
	if len(s.Faces) != 1 || s.Faces[0].Person != "ada" || s.Numbered != "2 k" || s.For != "1 lamp" {
		t.Errorf("%+v", s)
	}
	away := lit(t, fmt.Sprintf(text, "{pan: 0, tilt: 0}")).Readings.StandInOf("k")
	if len(away.Faces) != 1 || away.Faces[0].Gap == nil {
		t.Errorf("%+v", away)
	}
	dark := passing(t, "rooms: {a: {size: [3, 3]}, b: {at: [5, 0], size: [3, 3]}}\npeople: {ada: {at: [1.5, 1.5], faces: 0}}\nlights:\n"+
		"  lamp: {output: {candela: 9, shape: uniform}, colour: 3200 K, at: [6, 2], height: 1.5, aim: down}\n"+
		"  k: {output: {candela: 9, shape: uniform}, colour: 5600 K, at: [6.5, 2], height: 1.5, aim: down, stands-for: lamp}\n")
	if dark.Share != 0 {
		t.Errorf("%+v", dark)
	}
	near(t, "as it leaves", dark.Gap.Mired, 1e6/5600-1e6/3200, 0.2)
}

// A light tells at a face from a twentieth of the light there on.
func TestATwentiethTells(t *testing.T) {
	const text = "people: {ada: {at: [0, 0], faces: 0}, tom: {at: [2, -2], faces: 0}}\nlights:\n  lamp: {output: {candela: 900, shape: uniform}, at: [1, 6], height: 1.6, aim: down}\n" +
		"  k: {output: {candela: 900, shape: uniform}, at: [0, 2], height: 1.6, aim: ada, stands-for: lamp, level: %.3g %%}\n"
	for _, c := range []struct {
		level float64
		faces int
	}{{30, 2}, {1.5, 1}} {
		s := lit(t, fmt.Sprintf(text, c.level)).Readings.StandInOf("k")
		if len(s.Faces) != c.faces {
			t.Errorf("at %g %% it is judged at %d faces: %+v", c.level, len(s.Faces), s.Faces)
		}
		for _, p := range s.Faces {
			if c.faces == 2 && p.Share < 0.05 {
				t.Errorf("%s gets %.3f of its light from it", p.Person, p.Share)
			}
		}
	}
	share := lit(t, fmt.Sprintf(text, 4.0)).Readings
	for _, p := range share.StandInOf("k").Faces {
		if p.Share < 0.05 {
			t.Errorf("%s is among the faces with %.3f", p.Person, p.Share)
		}
	}
}

// From near the zenith a light comes from no side.
func TestWayFromOverhead(t *testing.T) {
	const text = "people: {ada: {at: [0, -0.1], faces: 0}}\nlights:\n  lamp: {output: {candela: 90, shape: uniform}, at: [-2, 2], height: 1.6, mount: hand, aim: down}\n" +
		"  k: {output: {candela: 90, shape: uniform}, at: [0.5, %g], height: 3.6, mount: hand, aim: down, stands-for: lamp}\n"
	if w := passing(t, fmt.Sprintf(text, 0.1)).Way; w.Right != nil || w.Higher < 70 {
		t.Errorf("%+v", w)
	}
	if w := passing(t, fmt.Sprintf(text, 1.0)).Way; w.Right == nil || !(*w.Right > 0) {
		t.Errorf("%+v", w)
	}
	if w := passing(t, strings.Replace(fmt.Sprintf(text, 1.0), "faces: 0", "faces: 0, pose: lying", 1)).Way; w.Angle <= 0 {
		t.Errorf("of somebody who lies: %+v", w)
	}
}

// Whatever stands where, figures are numbers: lamps in one place, in the face, of no size, of strong colours, behind cloth on all sides.
func TestHostilePlaces(t *testing.T) {
	for _, text := range []string{
		"lamp: {output: {luminance: 9, sphere: 0.3}, at: [0, 0.1], height: 1.59, mount: hand, aim: down}\n  k: {output: {luminance: 9, sphere: 0.3}, at: [0, 0.1], height: 1.59, mount: hand, aim: up, stands-for: lamp}",
		"lamp: {output: {lumens: 9, tube: 1}, at: [0, 1], height: 1.59, mount: hand, aim: ada}\n  k: {output: {lumens: 9, tube: 1}, at: [1, 0.0969], height: 1.59, mount: hand, aim: {pan: 0}, stands-for: lamp}",
		"lamp: {output: {candela: 9, shape: uniform}, gels: [deep red], at: [0, 1], height: 1.59, mount: hand, aim: ada}\n  k: {output: {candela: 9, shape: uniform}, gels: [deep green, deep blue], at: [1, 1], height: 1.59, mount: hand, aim: ada, stands-for: lamp}",
		"lamp: {unit: practical-table, at: [0, 1], height: 1.59, level: 0.001 %}\n  k: {unit: practical-bulb, diffusion: [half-diffusion], at: [1, 1], height: 1.59, mount: hand, level: 0.001 %, stands-for: lamp}",
		"lamp: {output: {candela: 9, shape: uniform}, colour: 40000 K, at: [0, 1], height: 1.59, mount: hand, aim: ada}\n  k: {output: {candela: 9, shape: uniform}, colour: 1000 K, at: [0, 1], height: 1.59, mount: hand, aim: [0, 1, 0], stands-for: lamp}",
	} {
		s := lit(t, ada+"lights:\n  "+text+"\n")
		var b strings.Builder
		if err := meter.WriteJSON(&b, []meter.Set{s.Readings}); err != nil {
			t.Errorf("%s: %v", text, err)
		}
		b.Reset()
		if err := meter.WriteTable(&b, []meter.Set{s.Readings}); err != nil || strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), "Inf") || !strings.Contains(b.String(), "2 k stands for 1 lamp") {
			t.Errorf("%s: %v\n%s", text, err, b.String())
		}
	}
}
