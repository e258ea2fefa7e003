package inhand_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/term"
)

// once reads the catalogue.
var once = sync.OnceValues(kit.Shipped)

func shipped(t *testing.T) *kit.Catalogue {
	t.Helper()
	c, err := once()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// laidOut lays out a scene, or is nil where it has a fault.
func laidOut(t *testing.T, text string) *plan.Setup {
	t.Helper()
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped(t)}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		return nil
	}
	return setup
}

// lit computes the readings of a scene, and what its lights have in hand.
func lit(t *testing.T, text string) *study.Study {
	t.Helper()
	setup := laidOut(t, text)
	if setup == nil {
		t.Fatalf("a fault in\n%s", text)
	}
	s, err := study.Run(context.Background(), setup, study.Options{ReadingsOnly: true, InHand: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// near fails where a figure is off.
func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

const ada = "people: {ada: {at: [0, 0], faces: 0}}\n"

// hung is a scene with one light over 4 m from a face, in a black room.
func hung(of string) string {
	return ada + "rooms: {den: {at: [-4, -4], size: [8, 10], height: 4, walls: black, floor: black, ceiling: black}}\n" +
		"lights: {k: {" + of + ", at: [0, 4], height: 1.8, aim: ada}}\n"
}

// The stops to full and down are those of the light: of an even dimmer of the levels, of a curve of what it gives at them.
func TestUpAndDown(t *testing.T) {
	of := func(what string) *meter.InHand {
		all := lit(t, hung(what)).Readings.InHand
		if len(all) != 1 {
			t.Fatalf("%s: %+v", what, all)
		}
		return &all[0]
	}
	plain := of("output: {candela: 100, shape: uniform}, level: 25 %")
	near(t, "up", plain.Up, 2, 1e-9)
	if plain.Down != nil || plain.Unit != nil || plain.Smallest != nil || plain.Nearer != nil {
		t.Errorf("of a plain source: %+v", plain)
	}
	ballast := of("unit: discharge-575, level: 80 %")
	near(t, "up", ballast.Up, math.Log2(1/0.8), 1e-9)
	near(t, "down", *ballast.Down, math.Log2(0.8/0.5), 1e-9)
	fixed := of("unit: discharge-575-magnetic")
	near(t, "up", fixed.Up, 0, 1e-9)
	near(t, "down", *fixed.Down, 0, 1e-9)
	if all := lit(t, hung("unit: discharge-575, level: off")).Readings.InHand; len(all) > 0 {
		t.Errorf("off, it has %+v", all)
	}
}

// What is wanted of a key is what brings the key side to the working stop with all else as it is: the scene run again with so much more says
// so. A fill is wanted for nothing, and a key is not where the rest is too bright alone.
func TestWants(t *testing.T) {
	const text = "exposure: {stop: %s}\n" + ada + "lights:\n  k: {output: {candela: %g, shape: uniform}, at: [-1, 2], height: 1.6, aim: ada, level: 50 %%, role: key}\n" +
		"  f: {output: {candela: 100, shape: uniform}, at: [-1, 3], height: 1.6, aim: ada, role: fill}\n"
	first := lit(t, fmt.Sprintf(text, "T2.8", 500.0))
	k := &first.Readings.InHand[0]
	if len(k.Wants) != 1 || k.Wants[0].Person != "ada" || len(first.Readings.InHand[1].Wants) > 0 {
		t.Fatalf("%+v", first.Readings.InHand)
	}
	then := lit(t, fmt.Sprintf(text, "T2.8", 500*math.Exp2(k.Wants[0].More)))
	near(t, "over the working stop", *then.Readings.Named("ada.key").Over, 0, 1e-6)
	near(t, "short", k.Short(&k.Wants[0]), k.Wants[0].More-1, 1e-9)
	alone := &lit(t, fmt.Sprintf(text, "T0.5", 500.0)).Readings.InHand[0]
	if !alone.Wants[0].Alone || !strings.Contains(alone.WantWords(&alone.Wants[0]), "the other lights alone") {
		t.Errorf("%+v", alone.Wants)
	}
	two := strings.NewReplacer("role: key", "role: {bo: key}", "faces: 0}}", "faces: 0}, bo: {at: [-1, 0], faces: 0}}").Replace(fmt.Sprintf(text, "T2.8", 500.0))
	if other := lit(t, two).Readings.InHand[0].Wants; len(other) != 1 || other[0].Person != "bo" {
		t.Errorf("the key of another: %+v", other)
	}
}

// placed is a unit of the catalogue in the place of a light, by a scene that has it there.
type placed struct {
	unit  *kit.Unit
	level float64
	mass  float64
}

// lookAlike says whether two sources are used alike, as the documents state it.
func lookAlike(a, b *photometry.Source) bool {
	wide, high := photometry.BeamAngle(a.Distribution)
	across, along := photometry.BeamAngle(b.Distribution)
	apart := func(x, y float64) float64 {
		if x == y {
			return 1
		}
		return max(x, y) / min(x, y)
	}
	return a.Opening.Form == b.Opening.Form && max(apart(wide, across), apart(high, along)) <= 1.5 &&
		max(apart(a.Opening.Width, b.Opening.Width), apart(a.Opening.Height, b.Opening.Height)) <= 1.25
}

// smallest is the smallest unit for a light by brute force: for each unit of the catalogue a scene that has it with the same words beside, and of those that
// can be laid out, look alike and give as much along the axis at some level, a tenth of a percent apart or a step of the unit, the one with the least power.
func smallest(t *testing.T, unit, beside, colour string, level float64) (best placed) {
	t.Helper()
	at := func(name string, level float64) *plan.Light {
		s := laidOut(t, hung(fmt.Sprintf("unit: %s, %s, colour: %s, level: %.4g %%", name, beside, colour, 100*level)))
		if s == nil {
			return nil
		}
		return &s.Lights[0]
	}
	candela := func(l *plan.Light) float64 {
		return l.Head.Source.Intensity(r3.Vec{Z: -1}) * l.RelativeOutput.Y()
	}
	is := at(unit, level)
	best = placed{unit: shipped(t).Unit(unit), mass: is.Head.Mass, level: level}
	for _, u := range shipped(t).Units {
		full := at(u.Name, 1)
		if u.Class == term.Practical || full == nil || full.Head.Class != is.Head.Class || candela(full) < candela(is) || !lookAlike(&is.Head.Source, &full.Head.Source) ||
			u.Watts > best.unit.Watts || u.Watts == best.unit.Watts && full.Head.Mass >= best.mass {
			continue
		}
		low := 1.0
		for n := 1; n <= 1000; n++ { // of the levels that it can be set to the first that is enough
			share := float64(n) / 1000
			if enough := candela(full) * full.Head.RelativeOutput(share).Y() / full.Head.RelativeOutput(1).Y(); enough >= candela(is)*(1-1e-9) && at(u.Name, share) != nil {
				low = share
				break
			}
		}
		if white := at(u.Name, low).White.OnPlanck().Kelvin; math.Abs(1e6/white-1e6/is.White.OnPlanck().Kelvin) > 20 {
			continue
		}
		best = placed{u, low, full.Head.Mass}
	}
	return best
}

// The smallest unit is that of a search through the whole catalogue, scene by scene; and a scene that has it in the light's place, at that level, gives the face what the light gave, within what its beam and its steps leave.
func TestSmallestIsTheSmallestOfTheCatalogue(t *testing.T) {
	for _, c := range []struct {
		unit, beside, colour string
		level                float64
		same                 float64 // how far the two readings may be apart, as a ratio
	}{
		{"led-point-600-bicolour", "modifier: softbox-90", "4300 K", 0.3, 0.02},
		{"led-point-300-daylight", "modifier: softbox-90 + grid-40", "5600 K", 0.1, 0.02},
		{"fresnel-tungsten-1000", "focus: flood", "3200 K", 0.2, 0.1},
		{"discharge-1200", "focus: spot", "5600 K", 0.6, 0.1},
		{"led-point-60-bicolour", "modifier: softbox-60", "3200 K", 0.05, 0.02},
		{"profile-tungsten-575", "gels: [1/4 CTB]", "3200 K", 0.3, 0.1},
		{"soft-panel-400", "gels: []", "5600 K", 0.1, 0.1},
	} {
		s := lit(t, hung(fmt.Sprintf("unit: %s, %s, colour: %s, level: %g %%", c.unit, c.beside, c.colour, 100*c.level)))
		got, want := &s.Readings.InHand[0], smallest(t, c.unit, c.beside, c.colour, c.level)
		if want.unit.Name == c.unit {
			if got.Smallest != nil {
				t.Errorf("%+v with %s: %+v, and nothing smaller does", c.unit, c.beside, got.Smallest)
			}
			continue
		}
		if got.Smallest == nil || got.Smallest.Unit != want.unit.Name {
			t.Errorf("%s with %s: %+v, want %s at %.3f", c.unit, c.beside, got.Smallest, want.unit.Name, want.level)
			continue
		}
		t.Logf("%s with %s: %s", c.unit, c.beside, got.SmallestWords())
		near(t, c.unit+" level", got.Smallest.Level, want.level, 1e-9)
		then := lit(t, hung(fmt.Sprintf("unit: %s, %s, colour: %s, level: %.4g %%", got.Smallest.Unit, c.beside, c.colour, 100*got.Smallest.Level)))
		near(t, c.unit+" again", *then.Readings.Named("ada.front").Lux / *s.Readings.Named("ada.front").Lux, 1, c.same)
	}
}

// Of a key that is short at full the smallest unit that is not brings the key side to the working stop, and none of less power does: by scenes with them in its
// place.
func TestWhatIsEnough(t *testing.T) {
	const text = "exposure: {stop: T5.6}\n" + ada + "lights: {k: {unit: %s, modifier: softbox-90, colour: 4300 K, at: [0, 2.5], height: 1.6, aim: ada, role: key, level: %.4g %%}}\n"
	const unit = "led-point-150-bicolour"
	first := lit(t, fmt.Sprintf(text, unit, 80.0)) // its stops short are of its full light
	k := &first.Readings.InHand[0]
	got := k.Wants[0].Enough
	if got == nil || !(k.Short(&k.Wants[0]) > 0) {
		t.Fatalf("%+v", k)
	}
	then := lit(t, fmt.Sprintf(text, got.Unit, 100*got.Level))
	near(t, got.Unit+" over the working stop", *then.Readings.Named("ada.key").Over, 0, 0.03)
	for _, u := range shipped(t).Units { // nothing of less power that takes the modifier and the colour is as bright, not at full either
		if s := laidOut(t, fmt.Sprintf(text, u.Name, 100.0)); s != nil && u.Watts < got.Watts && s.Lights[0].White.OnPlanck().Kelvin == 4300 {
			if over := *lit(t, fmt.Sprintf(text, u.Name, 100.0)).Readings.Named("ada.key").Over; over > -0.03 {
				t.Errorf("%s, %g W, is %.3f stops over the working stop at full; %s draws %g W", u.Name, u.Watts, over, got.Unit, got.Watts)
			}
		}
	}
	if w := &lit(t, strings.Replace(fmt.Sprintf(text, unit, 80.0), "T5.6", "T45", 1)).Readings.InHand[0].Wants[0]; w.Enough != nil {
		t.Errorf("of the whole catalogue %+v would do for T45", w.Enough)
	}
	if w := &lit(t, strings.Replace(fmt.Sprintf(text, unit, 80.0), "T5.6", "T1", 1)).Readings.InHand[0].Wants[0]; w.Enough != nil {
		t.Errorf("a light that is not short needs no other: %+v", w.Enough)
	}
}

// A lamp of the set is what it is, and a light that states its own output has no class.
func TestWhatHasNoClass(t *testing.T) {
	for _, of := range []string{"unit: practical-floor, level: 1 %", "output: {lumens: 90, beam: 30}, level: 1 %"} {
		got := lit(t, hung(of)).Readings.InHand
		if stated := strings.HasPrefix(of, "output"); got[0].Unit != nil || got[0].Smallest != nil || got[0].OffColour != nil || got[0].Stated != stated {
			t.Errorf("%s: %+v", of, got[0])
		}
	}
}

// A soft light brought nearer gives what a scene with it there gives, and shows from a centimetre farther on.
func TestNearer(t *testing.T) {
	const text = "people: {ada: {at: [0, 0], faces: 0}}\ncameras: {A: {at: [-0.6, 3], height: 1.5, looks: ada, lens: 50 mm}}\n" +
		"lights: {k: {unit: led-point-300-bicolour, modifier: softbox-90, at: [%.6f, %.6f], height: %.6f, aim: ada, mount: hand, level: 10 %%}}\n"
	s := lit(t, fmt.Sprintf(text, 2.0, 2.4, 2.2))
	k := s.Setup.LightNamed("k")
	n := s.Readings.InHand[0].Nearer
	if n == nil || n.Camera != "A" || n.Person != "ada" || n.Metres < 0.1 {
		t.Fatalf("%+v", n)
	}
	at := r3.Add(k.Frame.At, r3.Scale(n.Metres, k.Frame.Axis))
	there := lit(t, fmt.Sprintf(text, at.X, at.Y, at.Z))
	gained := 0.0
	for _, side := range []string{"ada.left", "ada.right"} {
		if was := *s.Readings.Named(side).Lux; was > 0 {
			gained = max(gained, math.Log2(*there.Readings.Named(side).Lux/was))
		}
	}
	near(t, "stops", n.Stops, math.Log2(*there.Readings.Named("ada.key").Lux / *s.Readings.Named("ada.key").Lux), 5e-3)
	point := 2 * math.Log2(k.Throw/(k.Throw-n.Metres))
	if !(n.Stops < point-0.02) {
		t.Errorf("%.3f stops, and a point would gain %.3f", n.Stops, point)
	}
	if farther := there.Readings.InHand[0].Nearer; farther == nil || farther.Metres > 0.01+1e-9 {
		t.Errorf("from there it comes nearer still: %+v", farther)
	}
}

// What is hard, hangs on a wall, lights a thing or lights nobody does not come nearer.
func TestWhatComesNoNearer(t *testing.T) {
	const room = "rooms: {den: {at: [-3, -3], size: [6, 7]}}\nfurniture: {desk: {box: [1, 1, 0.7], at: [2, 2]}}\n" + ada + "lights: {k: {%s, at: [0, 3], height: 1.6}}\n"
	for _, of := range []string{
		"unit: fresnel-tungsten-650, aim: ada", "unit: pocket-led-10, aim: ada", "unit: soft-panel-200, aim: ada, mount: {wall: den.top}",
		"unit: soft-panel-200, aim: desk", "output: {lumens: 9000, face: [1, 1]}, aim: ada", "unit: soft-panel-200, aim: {pan: 180}", "unit: soft-panel-200, aim: [0, 3.9, 1.6]",
	} {
		if got := lit(t, fmt.Sprintf(room, of)).Readings.InHand[0].Nearer; got != nil {
			t.Errorf("%s: %+v", of, got)
		}
	}
	if got := lit(t, fmt.Sprintf(room, "unit: soft-panel-200, aim: ada")).Readings.InHand[0].Nearer; got == nil || got.Camera != "" {
		t.Errorf("without a camera: %+v", got)
	}
}

// Of a head with cloth on it the smallest unit is the one that gives the cloth as much light: in its place, at that level, it gives the face what the light
// gave, whatever its beam.
func TestSmallestBehindCloth(t *testing.T) {
	for _, c := range []struct{ unit, beside string }{
		{"led-point-600-daylight", "modifier: softbox-90, diffusion: half-diffusion, level: 8 %"},
		{"fresnel-tungsten-1000", "diffusion: full-diffusion, level: 20 %, focus: flood"},
		{"led-point-300-bicolour", "modifier: softbox-60, diffusion: quarter-diffusion, level: 5 %"},
	} {
		s := lit(t, hung("unit: "+c.unit+", "+c.beside))
		got := s.Readings.InHand[0].Smallest
		if got == nil {
			t.Errorf("%s with %s: %s", c.unit, c.beside, s.Readings.InHand[0].SmallestWords())
			continue
		}
		from, _, _ := strings.Cut(c.beside, ", level")
		_, focus, _ := strings.Cut(c.beside, "focus: ")
		if focus != "" {
			focus = ", focus: " + focus
		}
		then := lit(t, hung(fmt.Sprintf("unit: %s, %s, level: %.4g %%%s, colour: %.0f K", got.Unit, from, 100*got.Level, focus, s.Setup.Lights[0].Head.OwnWhite().OnPlanck().Kelvin)))
		ratio := *then.Readings.Named("ada.front").Lux / *s.Readings.Named("ada.front").Lux
		t.Logf("%s: %s, %.3f", c.unit, s.Readings.InHand[0].SmallestWords(), ratio)
		near(t, c.unit, ratio, 1, 0.02)
	}
}

// A filament that is dimmed is warmer than a smaller one that is less so: that one does but for its colour, as another run has it.
func TestDoesButForItsColour(t *testing.T) {
	s := lit(t, hung("unit: fresnel-tungsten-650, focus: flood, level: 8 %"))
	got := &s.Readings.InHand[0]
	if got.Smallest != nil || got.OffColour == nil || !strings.Contains(got.SmallestWords(), "would do in its colour: "+got.OffColour.Unit) {
		t.Fatalf("%+v", got)
	}
	then := lit(t, hung(fmt.Sprintf("unit: %s, focus: flood, colour: 3200 K, level: %.4g %%", got.OffColour.Unit, 100*got.OffColour.Level)))
	near(t, "mired", colour.Mired(*then.Readings.Named("ada.front").CCT)-colour.Mired(*s.Readings.Named("ada.front").CCT), got.OffColour.Mired, 0.5)
	if got.OffColour.Mired > -20 {
		t.Errorf("%+v passes", got.OffColour)
	}
}

// Cloth comes nearer with its head: what it gains is what a scene with both there gives.
func TestNearerWithCloth(t *testing.T) {
	const text = ada + "rooms: {den: {at: [-4, -4], size: [8, 10], height: 4, walls: black, floor: black, ceiling: black}}\n" +
		"cameras: {A: {at: [-0.6, 3], height: 1.5, looks: ada, lens: 28 mm}}\nlights: {k: {unit: fresnel-tungsten-650, diffusion: full-diffusion, at: [%.6f, %.6f], height: %.6f, aim: ada, mount: hand, level: 10 %%}}\n"
	s := lit(t, fmt.Sprintf(text, 2.0, 2.4, 2.2))
	k, n := s.Setup.LightNamed("k"), s.Readings.InHand[0].Nearer
	if n == nil || n.Camera != "A" || n.Metres < 0.1 {
		t.Fatalf("%+v", n)
	}
	at := r3.Add(k.Frame.At, r3.Scale(n.Metres, k.Frame.Axis))
	there := lit(t, fmt.Sprintf(text, at.X, at.Y, at.Z))
	near(t, "stops", n.Stops, math.Log2(*there.Readings.Named("ada.key").Lux / *s.Readings.Named("ada.key").Lux), 0.05)
	if farther := there.Readings.InHand[0].Nearer; farther == nil || farther.Metres > 0.01+1e-9 {
		t.Errorf("from there it comes nearer still: %+v", farther)
	}
}

// All is found for scenes without people, without rooms and without lights too, and in feet.
func TestOddScenes(t *testing.T) {
	for _, text := range []string{
		"", "rooms: {a: {size: [3, 3]}}\n", "lights: {k: {unit: soft-panel-200, at: [0, 0], height: 2, aim: down}}\n",
		"units: ft\n" + ada + "lights: {k: {unit: soft-panel-200, at: [0, 8], height: 6, count: 3}}\n",
	} {
		s := lit(t, text+"title: odd\n")
		var b strings.Builder
		if err := meter.WriteTable(&b, []meter.Set{s.Readings}); err != nil {
			t.Fatal(err)
		}
		if words := b.String(); slices.ContainsFunc([]string{"NaN", "Inf"}, func(bad string) bool { return strings.Contains(words, bad) }) {
			t.Errorf("%s\n%s", text, words)
		}
	}
}
