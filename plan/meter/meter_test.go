package meter

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// exposure is ISO 800 at 1/50 s and T2.8 for a flat receptor: E = C N²/(S t) = 125 lx.
var exposure = plan.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: lens.FlatConstant,
	Stop: scene.Stop{Written: 2.8, N: 2 * math.Sqrt2}}

// person is someone at a place, 1.6 m at the eyes, whose nose points along a bearing's unit vector.
func person(name string, at, nose r2.Vec) plan.Person {
	axis := r3.Vec{X: nose.X, Y: nose.Y}
	eyes := r3.Vec{X: at.X, Y: at.Y, Z: 1.6}
	return plan.Person{Name: name, At: at, Eyes: 1.6,
		Face: plan.Frame{At: r3.Add(eyes, r3.Scale(0.1, axis)), Axis: axis, Right: r3.Cross(axis, r3.Vec{Z: 1})}}
}

// bulb is a bare source of an intensity at a place.
func bulb(name string, at r3.Vec, candela float64, tint colour.RGB) plan.Light {
	return plan.Light{Name: name, Frame: plan.Frame{At: at, Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}}, RelativeOutput: tint,
		Head: kit.Head{Source: photometry.FromCandela(candela, photometry.Uniform{}, photometry.Opening{})}}
}

var white = colour.RGB{1, 1, 1}

// read computes every reading of a set-up.
func read(t testing.TB, s *plan.Setup) Set {
	t.Helper()
	w, err := light.Build(context.Background(), &s.Set, light.Options{Bodies: &s.Bodies})
	if err != nil {
		t.Fatal(err)
	}
	requests := Requests(s)
	b, err := w.Basis(context.Background(), light.Emitters(s), light.Targets{Points: Receptors(requests)})
	if err != nil {
		t.Fatal(err)
	}
	return Read(s, requests, b, light.LevelsOf(s.Lights))
}

func near(t *testing.T, what string, got *float64, want float64) {
	t.Helper()
	switch {
	case got == nil:
		t.Errorf("%s has no meaning, want %v", what, want)
	case !(math.Abs(*got-want) <= 1e-6*math.Max(1, math.Abs(want))):
		t.Errorf("%s: %v, want %v", what, *got, want)
	}
}

// Every plane of a face by the formula I cos t/d², for noses along all bearings and lamps all
// round, the directions worked out from angles and not from frames.
func TestFacePlanesByFormula(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		bearing := 360 * r.Float64()
		along := func(turn, tilt float64) r3.Vec {
			b, e := (bearing+turn)*math.Pi/180, tilt*math.Pi/180
			return r3.Vec{X: math.Sin(b) * math.Cos(e), Y: math.Cos(b) * math.Cos(e), Z: math.Sin(e)}
		}
		nose := along(0, 0)
		lamp := r3.Vec{X: 4 * r.Float64(), Y: 4 * r.Float64(), Z: 3 * r.Float64()}
		s := &plan.Setup{Exposure: exposure, People: []plan.Person{person("ines", r2.Vec{X: 2, Y: 2}, r2.Vec{X: nose.X, Y: nose.Y})},
			Lights: []plan.Light{bulb("a", lamp, 500, white)}}
		set := read(t, s)
		face := r3.Add(r3.Vec{X: 2, Y: 2, Z: 1.6}, r3.Scale(0.1, nose))
		way := r3.Sub(lamp, face)
		d := r3.Norm(way)
		lux := func(axis r3.Vec) float64 { return 500 * math.Max(0, r3.Dot(axis, way)/d) / (d * d) }
		left, right := lux(along(-45, 0)), lux(along(45, 0))
		for name, want := range map[string]float64{
			"left": left, "right": right, "key": math.Max(left, right), "fill": math.Min(left, right),
			"front": lux(along(0, 0)), "top": lux(r3.Vec{Z: 1}), "back": lux(along(180, 0)), "hair": lux(along(180, 45)),
			"edge": math.Max(lux(along(-135, 0)), lux(along(135, 0))),
		} {
			near(t, fmt.Sprintf("bearing %.1f, ines.%s", bearing, name), set.Named("ines."+name).Lux, want)
		}
	}
}

// A face that looks up has its crown where its frame says: the planes turn with the head.
func TestLyingFace(t *testing.T) {
	p := person("noor", r2.Vec{}, r2.Vec{Y: 1})
	p.Face = plan.Frame{At: r3.Vec{Z: 0.7}, Axis: r3.Vec{Z: 1}, Right: r3.Vec{X: 1}} // the crown toward -y
	want := map[string]r3.Vec{"front": {Z: 1}, "back": {Z: -1}, "top": {Y: -1}}
	for _, o := range Requests(&plan.Setup{People: []plan.Person{p}}) {
		if w, ok := want[strings.TrimPrefix(o.Name, "noor.")]; ok && o.Receptor.Axis != w {
			t.Errorf("%s faces %v, want %v", o.Name, o.Receptor.Axis, w)
		}
	}
}

func TestDomesAndExposures(t *testing.T) {
	s := &plan.Setup{Exposure: exposure, People: []plan.Person{person("ines", r2.Vec{}, r2.Vec{Y: 1})},
		Lights: []plan.Light{bulb("a", r3.Vec{X: 3, Y: 0.1, Z: 1.6}, 900, white)}}
	fast := exposure
	fast.ISO = 1600
	s.Cameras = []plan.Camera{
		{Name: "A", Frame: plan.Frame{At: r3.Vec{Y: 4.1, Z: 1.6}}, Exposure: exposure},
		{Name: "B", Frame: plan.Frame{At: r3.Vec{X: -3, Y: 0.1, Z: 1.6}}, Exposure: fast}}
	set := read(t, s)
	a, b := set.Named("ines.dome.A"), set.Named("ines.dome.B")
	near(t, "dome square to the light", a.Lux, 50)
	near(t, "over", a.Over, math.Log2(50/125.0))
	near(t, "stop", a.Stop, math.Sqrt(50*800/50.0/250))
	near(t, "dome away from the light", b.Lux, 0)
	if b.Stop != nil || b.Over != nil || b.XY != nil || b.Duv != nil || b.CCT != nil || len(b.Shares) != 0 {
		t.Errorf("no light has a stop or a colour: %+v", b)
	}
	if near(t, "footcandles", a.Footcandles, 50/10.763910416709722); a.Luminance != nil {
		t.Errorf("an incident reading has luminance %v", *a.Luminance)
	}
	s.Lights[0].Frame.At = r3.Vec{X: -3, Y: 0.1, Z: 1.6}
	set = read(t, s)
	near(t, "dome in the light", set.Named("ines.dome.B").Lux, 100)
	near(t, "stop of the faster camera", set.Named("ines.dome.B").Stop, math.Sqrt(100*1600/50.0/250))
}

// One's own head does not shade one's face; somebody else's does.
func TestHeads(t *testing.T) {
	s := &plan.Setup{Exposure: exposure, Lights: []plan.Light{bulb("a", r3.Vec{Y: 3.1, Z: 1.6}, 900, white)},
		People: []plan.Person{person("ines", r2.Vec{}, r2.Vec{Y: 1}), person("noor", r2.Vec{Y: 2}, r2.Vec{Y: 1})}}
	for i := range s.People {
		p := &s.People[i]
		p.Own = []solid.ID{solid.ID(i + 1)}
		y := p.At.Y
		s.Set.Prisms = append(s.Set.Prisms, solid.Prism{ID: solid.ID(i + 1), Name: p.Name, Z0: 1.4, Z1: 1.8,
			Base: []r2.Vec{{X: -0.2, Y: y - 0.2}, {X: 0.2, Y: y - 0.2}, {X: 0.2, Y: y + 0.2}, {X: -0.2, Y: y + 0.2}}})
	}
	set := read(t, s)
	near(t, "behind another head", set.Named("ines.front").Lux, 0)
	near(t, "inside one's own", set.Named("noor.front").Lux, 900)
	if f := set.FaceOf("ines"); f != nil {
		t.Errorf("a dark face has a key side: %+v", f)
	}
}

func TestContrast(t *testing.T) {
	front := func(left, right float64) Set {
		// Lamps square to the two sides of a face that looks to +y.
		c := math.Sqrt(0.5)
		return read(t, &plan.Setup{Exposure: exposure, People: []plan.Person{person("ines", r2.Vec{}, r2.Vec{Y: 1})},
			Lights: []plan.Light{
				bulb("l", r3.Vec{X: -2 * c, Y: 0.1 + 2*c, Z: 1.6}, left, white),
				bulb("r", r3.Vec{X: 2 * c, Y: 0.1 + 2*c, Z: 1.6}, right, white)}})
	}
	for _, c := range []struct {
		left, right, stops float64
		side               string
	}{{400, 100, 2, "left"}, {100, 800, 3, "right"}, {300, 300, 0, "left"}} {
		set := front(c.left, c.right)
		got := set.FaceOf("ines")
		if got == nil || got.Side != c.side {
			t.Fatalf("%v : %v gives %+v, want the key on the %s", c.left, c.right, got, c.side)
		}
		near(t, "stops", &got.Contrast.Stops, c.stops)
		near(t, "ratio", &got.Contrast.Ratio, math.Exp2(c.stops))
		near(t, "key", set.Named("ines.key").Lux, math.Max(c.left, c.right)/4)
		if from := set.Named("ines.key").Shares; len(from) != 1 || from[0].Light != c.side[:1] {
			t.Errorf("the key's shares are %+v, want all from %s", from, c.side[:1])
		}
	}
}

// L = rho E/pi, and stops from mid grey by L = 0.18 C N²/(pi S t): a grey card in the light that
// the working stop asks for reads 0.
func TestSpot(t *testing.T) {
	grey := solid.Skin{Reflect: colour.RGB{0.18, 0.18, 0.18}}
	s := &plan.Setup{Exposure: exposure, Lights: []plan.Light{bulb("a", r3.Vec{Y: -2, Z: 1}, 500, white)},
		Set: solid.Set{Prisms: []solid.Prism{{ID: 1, Name: "card", Z1: 2, Skin: grey,
			Base: []r2.Vec{{X: -1}, {X: 1}, {X: 1, Y: 0.1}, {X: -1, Y: 0.1}}}}},
		Cameras: []plan.Camera{{Name: "A", Exposure: exposure}},
		Meters: []plan.Meter{
			{Name: "card", Kind: term.SpotMeter, Lens: r3.Vec{Y: -3, Z: 1}, At: r3.Vec{Z: 1}, Facing: r3.Vec{Y: 1}, From: "A"},
			{Name: "sky", Kind: term.SpotMeter, Lens: r3.Vec{Y: -3, Z: 1}, At: r3.Vec{Y: -3, Z: 9}, Facing: r3.Vec{Z: 1}, From: "A"}}}
	set := read(t, s)
	card := set.Named("card")
	near(t, "luminance", card.Luminance, 0.18*125/math.Pi)
	near(t, "over mid grey", card.Over, 0)
	if card.Lux != nil || card.Footcandles != nil || card.Stop != nil || card.Kind != "spot" {
		t.Errorf("a spot reading has illuminance: %+v", card)
	}
	near(t, "share in cd/m2", &card.Shares[0].Lux, 0.18*125/math.Pi)
	sky := set.Named("sky")
	if near(t, "luminance of nothing", sky.Luminance, 0); sky.Over != nil {
		t.Errorf("nothing lies %v over mid grey", *sky.Over)
	}
}

func TestColourOfAReading(t *testing.T) {
	flat := func(tints ...colour.RGB) *Reading {
		s := &plan.Setup{Exposure: exposure, Meters: []plan.Meter{{Name: "m", Kind: term.FlatMeter, Facing: r3.Vec{Z: 1}}}}
		for i, tint := range tints {
			s.Lights = append(s.Lights, bulb(fmt.Sprint("l", i), r3.Vec{Z: 2}, 400, tint))
		}
		set := read(t, s)
		return &set.Readings[0]
	}
	tungsten, daylight := colour.White{Kelvin: 3200}, colour.White{Kelvin: 5600, Daylight: true}
	r := flat(tungsten.RGB())
	if !(math.Abs(*r.CCT-3200) <= 1) || !(math.Abs(*r.Duv) <= 2e-5) {
		t.Errorf("3200 K reads %v K, Duv %v", *r.CCT, *r.Duv)
	}
	// Equal lights mix by their tristimulus values: each contributes x/y : 1 : z/y.
	r = flat(tungsten.RGB(), daylight.RGB())
	a, b := tungsten.XY(), daylight.XY()
	sum := 1/a[1] + 1/b[1]
	near(t, "x of a mix", &r.XY[0], (a[0]/a[1]+b[0]/b[1])/sum)
	near(t, "y of a mix", &r.XY[1], 2/sum)
	near(t, "its light", r.Lux, 200)
	// Far off the locus a colour temperature has no meaning; the distance from it has.
	r = flat(colour.FromXY([2]float64{0.25, 0.65}, 1))
	if r.CCT != nil || r.Duv == nil || *r.Duv < colour.MaxDuv {
		t.Errorf("green light reads CCT %v, Duv %v", r.CCT, r.Duv)
	}
}

// A window of two panes is one way for light.
func windowScene() *plan.Setup {
	pane := func(id solid.ID, y float64) solid.Sheet {
		h := solid.Sheet{ID: id, Name: "street", Corners: []r3.Vec{{X: 1, Y: y, Z: 0}, {X: 1, Y: y + 1, Z: 0}, {X: 1, Y: y + 1, Z: 2}, {X: 1, Y: y, Z: 2}}}
		h.Front.Direct = colour.RGB{0.8, 0.8, 0.8}
		h.Back = h.Front
		return h
	}
	lamp := bulb("day", r3.Vec{Z: 1}, 900, white)
	lamp.Head.Source.Opening = photometry.Opening{Form: photometry.Sphere, Width: 0.8}
	return &plan.Setup{Title: "Two panes", Name: "wide", Exposure: exposure,
		Names:  map[solid.ID]string{1: "street", 2: "street"},
		Set:    solid.Set{Sheets: []solid.Sheet{pane(1, -1), pane(2, 0)}},
		Lights: []plan.Light{lamp, bulb("fill", r3.Vec{X: 3.5, Z: 3}, 20, colour.White{Kelvin: 3200}.RGB())},
		Meters: []plan.Meter{
			{Name: "table", Kind: term.FlatMeter, At: r3.Vec{X: 3, Y: 0.01, Z: 1}, Facing: r3.Vec{X: -1}},
			{Name: "dark", Kind: term.DomeMeter, At: r3.Vec{X: 300, Z: -500}, Facing: r3.Vec{Z: -1}}}}
}

func TestSharesAreMergedByName(t *testing.T) {
	set := read(t, windowScene())
	shares := set.Named("table").Shares
	if len(shares) != 1 || !slices.Equal(shares[0].Via, []string{"street"}) {
		t.Fatalf("shares %+v, want one through street", shares)
	}
	if got := shares[0].Lux; math.Abs(got-80) > 0.4 { // seen through both panes, so sampled
		t.Errorf("%v lx through the window, want 900/9 by 0.8", got)
	}
	sum := 0.0
	for _, s := range shares {
		sum += s.Lux
	}
	near(t, "sum of shares", &sum, *set.Named("table").Lux)
}

// golden compares with a file, or writes it where UPDATE_GOLDEN is set.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := "testdata/" + name
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s:\n%s\nwant:\n%s", name, got, want)
	}
}

// uncomputed is a key that nothing computes yet.
func uncomputed(l scene.Later, path, words string) plan.Uncomputed {
	return plan.Uncomputed{Uncomputed: scene.Uncomputed{Later: l, Path: path}, Words: words}
}

func TestWritten(t *testing.T) {
	faces := windowScene()
	faces.Name = ""
	faces.People = []plan.Person{person("ines", r2.Vec{X: 2.5, Y: -1}, r2.Vec{X: -1})}
	faces.Cameras = []plan.Camera{{Name: "A", Lens: 40, Squeeze: 2, Gate: [2]float64{24.89, 18.66}, HAOV: 63.8, VAOV: 26.2, Confusion: 0.0207, Looks: "ines", Frame: plan.FrameAlong(r3.Vec{X: 1.5, Y: -4, Z: 1.5}, r3.Vec{Y: 1}, 0, 0), Exposure: exposure}}
	faces.Meters = nil
	bare := *faces
	bare.Title, bare.Name = "Not all computed", "late"
	bare.Lights = slices.Clone(faces.Lights)
	bare.Lights[1].Path = "lights.fill"
	bare.Uncomputed = []plan.Uncomputed{
		uncomputed(scene.Later{Table: "camera", Key: "filter", Waits: "filters before the lens", Changes: scene.OwnStops}, "cameras.A.filter", "filter of A"),
		uncomputed(scene.Later{Table: "light", Key: "scrims", Waits: "accessories of a lamp", Changes: scene.OwnLight}, "lights.fill.scrims", "scrims of 2 fill"),
	}
	sets := []Set{read(t, windowScene()), read(t, faces), {Scene: "Empty"}, read(t, &bare)}
	var b bytes.Buffer
	if err := WriteJSON(&b, sets); err != nil {
		t.Fatal(err)
	}
	golden(t, "readings.json", b.Bytes())
	b.Reset()
	if err := WriteTable(&b, sets); err != nil {
		t.Fatal(err)
	}
	golden(t, "readings.txt", b.Bytes())
}

func BenchmarkRead(b *testing.B) {
	s := windowScene()
	for i := range 4 {
		s.People = append(s.People, person(fmt.Sprint("p", i), r2.Vec{X: 2 + float64(i), Y: 1}, r2.Vec{X: -1}))
	}
	w, err := light.Build(context.Background(), &s.Set, light.Options{})
	if err != nil {
		b.Fatal(err)
	}
	requests := Requests(s)
	basis, err := w.Basis(context.Background(), light.Emitters(s), light.Targets{Points: Receptors(requests)})
	if err != nil {
		b.Fatal(err)
	}
	d := light.LevelsOf(s.Lights)
	b.ReportAllocs()
	for b.Loop() {
		Read(s, requests, basis, d)
	}
}

func ExampleRead() {
	// A meter on the floor, two metres under a bare bulb of 500 cd.
	s := &plan.Setup{
		Exposure: plan.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: 250, Stop: scene.Stop{N: 2}},
		Lights:   []plan.Light{bulb("bulb", r3.Vec{Z: 2}, 500, white)},
		Meters:   []plan.Meter{{Name: "rug", Kind: term.FlatMeter, Facing: r3.Vec{Z: 1}}},
	}
	world, err := light.Build(context.Background(), &s.Set, light.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	requests := Requests(s)
	b, err := world.Basis(context.Background(), light.Emitters(s), light.Targets{Points: Receptors(requests)})
	if err != nil {
		fmt.Println(err)
		return
	}
	set := Read(s, requests, b, light.LevelsOf(s.Lights))
	rug := set.Named("rug")
	fmt.Printf("%.0f lx, T%.2f, %+.1f stops\n", *rug.Lux, *rug.Stop, *rug.Over)
	// Output:
	// 125 lx, T2.83, +1.0 stops
}

// A tie is stated in words: figures that round to nothing would carry a sign.
func TestTheTableTellsATie(t *testing.T) {
	reading := func(stops float64) string {
		var b strings.Builder
		set := Set{Readings: []Reading{{Name: "ada.key", Person: "ada", Kind: "flat"}},
			Faces: []Face{{Person: "ada", Side: "left", Contrast: &Contrast{Stops: stops, Ratio: math.Exp2(stops)}}}}
		if err := WriteTable(&b, []Set{set}); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	if got := reading(0.03); !strings.Contains(got, "key side left, equal to the fill side (1.02 : 1)") {
		t.Errorf("got %q", got)
	}
	if got := reading(0.3); !strings.Contains(got, "0.3 stops over the fill side") {
		t.Errorf("got %q", got)
	}
}
