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
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/term"
)

// Words that have a bound hold on it: on one side of it as on it, and no longer past it.
func TestWordsAtTheirBounds(t *testing.T) {
	left, small, half := 0.4, 0.2, -0.5
	for _, c := range []struct{ what, got, want string }{
		{"a Duv that is worded at least", GapWords(colour.Gap{Duv: leastDuv}), "0.002 greener"},
		{"less than that", GapWords(colour.Gap{Mired: 0.4, Duv: 0.9 * leastDuv}), ""},
		{"half a mired, which rounds up", GapWords(colour.Gap{Mired: -0.5}), "1 mired cooler"},
		{"an angle at which directions part", (&Way{Angle: alikeAngle, Higher: 5}).Words(), "from 5° beside it: 5° higher; no size to compare"},
		{"less than a degree aside", (&Way{Angle: 30, Higher: 30, Right: &left}).Aside(), "30° higher"},
		{"half a degree aside, which rounds up", (&Way{Angle: 30, Right: &half}).Aside(), "1° farther to own left"},
		{"less than a degree of both", (&Way{Angle: 30, Higher: -0.3, Right: &small}).Aside(), "from the other side of the zenith"},
		{"a width that is alike", (&Way{Wide: 5, For: 4}).width(), "as wide: like shadows"},
		{"and the other way about", (&Way{Wide: 4, For: 5}).width(), "as wide: like shadows"},
		{"a point for a lamp", (&Way{For: 5}).width(), "no size to compare"},
		{"a lamp for a point", (&Way{Wide: 5}).width(), "no size to compare"},
		{"one unit", (&InHand{Unit: &Class{}, Smallest: &Class{Unit: "s", Mired: 0.4}, Count: 1}).SmallestWords(), "smallest that would do: s at 0 %, 0 W and 0 kg in place of 0 W and 0 kg"},
		{"two units", (&InHand{Unit: &Class{}, Smallest: &Class{Unit: "s", Mired: -0.4}, Count: 2}).SmallestWords(), "smallest that would do: s at 0 %, 0 W and 0 kg in place of 0 W and 0 kg, each of 2"},
		{"a catchlight in the middle", (&Catchlight{Numbered: "1 a", Size: 0.12}).words(), "1 a in the middle, 12 % of the iris wide"},
		{"one at an hour", (&Catchlight{Numbered: "1 a", Hour: 1, Size: 0.01}).words(), "1 a at 1 o'clock, 1 % of the iris wide"},
		{"a point in an eye", (&Catchlight{Numbered: "1 a", Hour: 12, Size: 0.004}).words(), "1 a at 12 o'clock, a point"},
		{"a white's own green", shiftWords(0.0042), "the same, as through 1/4 plus green"},
		{"magenta as much", shiftWords(-0.0042), "the same, as through 1/4 minus green"},
		{"half a mired warmer", (&Shift{Mired: 0.51}).words(), "1 mired warmer"},
		{"half a mired cooler", (&Shift{Mired: -0.51}).words(), "1 mired cooler"},
		{"less", (&Shift{Mired: -0.49}).words(), "the same"},
		{"no colour", (*Shift)(nil).words(), "of no colour temperature"},
		{"a light too green for one", shiftOf(&Reading{Duv: &small}, &plan.Exposure{White: colour.White{Kelvin: 4000}}, nil).words(), "of no colour temperature"},
		{"a camera without a white", shiftOf(&Reading{CCT: &left, Duv: &small}, &plan.Exposure{}, nil).words(), "of no colour temperature"},
		{"a spot by no exposure", GreyInWords(&plan.Exposure{}), "18 % in the light of the working stop, as a spot meter of K = 0.0 has it (0.18 C ÷ π, C = 0)."},
		{"a spot from no stop", (&Reading{Name: "m", Sees: &Sees{HandHeld: [2]float64{4, 4}}}).spotInWords(), "m reads nothing"},
		{"a spot", (&Reading{Name: "m", Sees: &Sees{Surface: "rug"}}).spotInWords(), "m reads rug"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
}

// shiftWords are the words of a light that is so green beside a white of its own temperature that is a little magenta itself.
func shiftWords(green float64) string {
	const own = -0.003
	shipped, err := kit.Shipped()
	if err != nil {
		return err.Error()
	}
	x := plan.Exposure{White: colour.White{Kelvin: 4000, Duv: own}}
	kelvin, duv := 4000.0, own+green
	return shiftOf(&Reading{CCT: &kelvin, Duv: &duv}, &x, shipped).words()
}

// Of gels that are as near the first is named, none where no gel is as near, and plus and minus green alone count.
func TestNearestGreen(t *testing.T) {
	var c kit.Catalogue
	if nearestGreen(0.004, nil) != "" {
		t.Error("no catalogue has a gel")
	}
	for _, g := range []struct {
		name string
		kind term.Gel
		duv  float64
	}{{"far", term.PlusGreen, 0.01}, {"first", term.PlusGreen, 0.004}, {"second", term.PlusGreen, 0.004}, {"blue", term.CTB, 0.003}, {"minus", term.MinusGreen, -0.004}} {
		gel := &kit.GelData{Kind: g.kind, Duv: g.duv}
		gel.Name = g.name
		c.Gels = append(c.Gels, gel)
	}
	for duv, want := range map[float64]string{0.003: "first", 0.005: "first", 0.002: "", 0.0021: "first", -0.003: "minus", -0.001: "", 0.03: "far"} {
		if got := nearestGreen(duv, &c); got != want {
			t.Errorf("%v is as green as %q, want %q", duv, got, want)
		}
	}
}

// The angle from the nose toward the key cheek says which side a camera looks from.
func TestLeans(t *testing.T) {
	for degrees, want := range map[float64]Lean{0: FromFront, 4.9: FromFront, -4.9: FromFront, 5.1: FromLit, -5.1: FromShadow, 90: FromLit, -90: FromShadow, 174.9: FromLit, -174.9: FromShadow, 175.1: FromBehind, -175.1: FromBehind} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		if got := leanOf(sin, cos); got != want {
			t.Errorf("at %v degrees it looks from %q, want %q", degrees, got, want)
		}
	}
	face := plan.Frame{Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}}
	for degrees, want := range map[float64]Side{9: TurnedTo, 11: PictureLeft, -9: TurnedTo, -11: PictureRight, 171: TurnedAway, 169: PictureLeft} {
		sin, cos := math.Sincos(degrees * math.Pi / 180) // from the key cheek's own direction toward the nose
		at := r3.Vec{X: 3 * cos, Y: 3 * sin}
		camera := plan.FrameAlong(at, r3.Scale(-1, at), 0, 0)
		if got, _ := seenFrom(&face, "right", &camera); got != want {
			t.Errorf("%v degrees before the cheek it is %q, want %q", degrees, got, want)
		}
	}
}

// A row marks all figures where a key could change the light, and the stops alone where it changes those.
func TestRowsMarkWhatCouldChange(t *testing.T) {
	lux := 125.0
	r := Reading{Name: "m", Lux: &lux, Footcandles: &lux, Stop: stops(2.8284), Over: stops(0), CCT: stops(3200), Duv: stops(0.001), Error: stops(0.01)}
	for change, want := range map[scene.Change]string{scene.OwnLight: "m|✗ 125 lx|✗ 1.0 %|✗ 125|✗ T2.8|✗ 0.0|✗ 3200 K|✗ +0.001|", scene.OwnStops: "m|125 lx|1.0 %|125|✗ T2.8|✗ 0.0|3200 K|+0.001|"} {
		r.Uncomputed = []plan.Uncomputed{uncomputed(scene.Later{Changes: change}, "k", "k")}
		if got := strings.Join(r.row(), "|"); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	r.Shares = []Share{{Light: "a", Lux: 3}, {Light: "b", Lux: 5}, {Light: "a", Path: "reflected", Lux: 4}}
	if given := r.contributions(); given["a"] != 7 || given["b"] != 5 {
		t.Errorf("lights give %v", given)
	}
}

// Light that is just enough to be read is, and a light as far from the locus as a colour temperature goes has one.
func TestReadingsAtTheirBounds(t *testing.T) {
	if r := took([]light.Term{{Light: "a"}}, minLight/white.Y()); *r.Lux < minLight && len(r.Shares) != 0 || *r.Lux >= minLight && len(r.Shares) != 1 {
		t.Errorf("%v lx has %d shares", *r.Lux, len(r.Shares))
	}
	for _, duv := range []float64{0.98 * colour.MaxDuv, 1.02 * colour.MaxDuv} {
		var r Reading
		r.setChromaticity(colour.White{Kelvin: 4000, Duv: duv}.XY())
		if has := r.CCT != nil; has != (duv < colour.MaxDuv) || !(math.Abs(*r.Duv-duv) <= 1e-4) {
			t.Errorf("Duv %v reads %v, with a colour temperature: %v", duv, *r.Duv, has)
		}
	}
}

// A face says how its light goes up and down, where its skin lies, and what a camera has behind it: what stands there and what does not.
func TestFacesInWords(t *testing.T) {
	f := Face{Person: "ada", Side: "left", Contrast: contrastOf(100, 100), Steadiness: stops(0.43), Skin: &Tone{Key: stops(1), Fill: stops(-0.5)}, Clothes: &Tone{Key: stops(0)},
		Views: []View{{Camera: "A", Key: PictureLeft, From: FromLit, Behind: []Behind{{PictureLeft, "wall", 3, stops(-1.2), stops(0.4)}, {Picture: PictureRight, Surface: "rug"}}},
			{Camera: "B.end", Key: TurnedTo, From: FromBehind, Behind: []Behind{{Picture: PictureLeft}, {PictureRight, "wall", 3, stops(2), nil}}},
			{Camera: "C", Key: PictureRight, From: FromLit, Outside: true, Behind: []Behind{{Picture: PictureLeft}}, Catchlights: []Catchlight{}}}}
	want := []string{"ada: key side left, equal to the fill side (1.00 : 1)", "  within 20 cm about the face the light goes up and down by 0.4 stops",
		"  skin, in stops: key side 1.0 over grey, fill side 0.5 under grey", "  clothes, in the light of the face, in stops: key side equal to grey, fill side dark",
		"  own left is camera left for A", "  behind the head for A: camera left wall, 1.2 under grey, 0.4 over that cheek; camera right rug, dark",
		"  own left is turned to B at the end, which looks from behind", "  behind the head for B at the end: camera left nothing that the scene has; camera right wall, 2.0 over grey",
		"  own left is camera right for C", "  outside the frame of C, which shows neither the eyes nor what is behind the head"}
	if got := strings.Join(f.lines(), "\n"); got != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", got, strings.Join(want, "\n"))
	}
}

// A picture lists what takes a percent of it or more, says whose faces it does not judge, and of a range its known sides alone.
func TestPicturesAtTheirBounds(t *testing.T) {
	for want, p := range map[string]*Picture{
		"": {Surfaces: []Surface{{Name: "mote", Share: 0.0099}, {Share: 1}}},
		"  in its picture, stops from grey  of the frame  mean  brightest  darkest\n  rug                                       1 %  dark       dark     dark\n": {Surfaces: []Surface{{Name: "rug", Share: leastListed}}},
		"  over the 6 stops that A holds: nothing that is looked at\n":                                                                                           {Camera: "A", Range: lens.Range{Over: 6}},
		"  under the 8 stops that A holds: nothing that is looked at\n":                                                                                          {Camera: "A", Range: lens.Range{Under: 8}},
	} {
		var b strings.Builder
		if p.table(&b); b.String() != want {
			t.Errorf("got\n%q\nwant\n%q", b.String(), want)
		}
	}
	for share, want := range map[float64]float64{0.0094: 0.009, 0.0096: 0.01, 0.01: 0.01, 0.0149: 0.01, 0.0151: 0.02, 0.0004: 0, 0.0006: 0.001} {
		if got := roundedShare(share); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("%v is printed as %v, want %v", share, got, want)
		}
	}
	if got := (&Beyond{Over: stops(7.1), Share: 0}).Words(); got != "7.1 stops over grey" {
		t.Error(got)
	}
}

// A camera without a track has no track, one without a lens no sizes on it; a face is looked at along it that is meant to be in the picture
// and has a darker side; and what changes at one place stays in its order.
func TestTracksOfFewThings(t *testing.T) {
	s := pushed(r2.Vec{X: -2, Y: -3}, r2.Vec{X: 2, Y: -3})
	s.Cameras = append([]plan.Camera{{Name: "still", Lens: 35}}, s.Cameras...)
	bo := s.People[0]
	bo.Name, bo.Seen = "bo", plan.Seen{Written: true}
	s.People = append([]plan.Person{bo}, s.People...)
	uneven := contrastOf(200, 100)
	faces := []Face{{Person: "bo", Side: "left", Contrast: uneven}, {Person: "gone", Contrast: uneven}, {Person: "ada", Side: "right", Contrast: contrastOf(10, 10)}, {Person: "ada", Side: "left"}}
	tracks := tracksOf(s, faces)
	set := Set{Tracks: tracks}
	if len(tracks) != 1 || set.TrackOf("A") != &tracks[0] || set.TrackOf("still") != nil {
		t.Fatalf("tracks %+v", tracks)
	}
	sides := 0
	for _, c := range tracks[0].Changes {
		if c.From != "" {
			sides++
		}
		if c.Person != "ada" {
			t.Errorf("%+v", c)
		}
	}
	if sides != 2 { // from the dark side to the nose and on to the key side, of the face that has one
		t.Errorf("changes %+v", tracks[0].Changes)
	}
	s.Cameras[1].Lens = 0
	if c := tracksOf(s, nil)[0].Changes; len(c) != 0 {
		t.Errorf("without a lens it frames %+v", c)
	}
	var one Track
	for _, c := range []TrackChange{{Along: 2, Person: "a"}, {Along: 1, Person: "b"}, {Along: 2, Person: "c"}, {Along: 1.5, Person: "d"}} {
		one.add(c)
	}
	var order []string
	for _, c := range one.Changes {
		order = append(order, c.Person)
	}
	if got := strings.Join(order, ""); got != "bdac" {
		t.Errorf("changes come as %s", got)
	}
	for want, c := range map[string]TrackChange{"A looks straight at the nose of a": {Person: "a", From: FromFront}, "A looks from behind a": {Person: "a", From: FromBehind},
		"A looks from the shadow side of a": {Person: "a", From: FromShadow}, "close-up of a": {Person: "a", Size: shot.CloseUp}} {
		if got := c.words("A"); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// A set finds what it is asked for by name, in the order of the roles asked for where it is by role, and nothing of another name.
func TestWhatASetFinds(t *testing.T) {
	set := Set{Walks: []Walk{{Person: "a"}, {Person: "b", Points: []WalkPoint{{Left: Reading{Name: "l"}, Right: Reading{Name: "r"}, Domes: []Reading{{Name: "d"}}}}}}, StandIns: []StandIn{{Light: "x"}, {Light: "y"}}, Readings: []Reading{{Name: "m"}}}
	if set.WalkOf("b") != &set.Walks[1] || set.WalkOf("c") != nil || set.StandInOf("y") != &set.StandIns[1] || set.StandInOf("z") != nil {
		t.Error("a walk or a light is found by another's name")
	}
	p := &set.Walks[1].Points[0]
	for name, want := range map[string]*Reading{"l": &p.Left, "r": &p.Right, "d": &p.Domes[0], "m": &set.Readings[0], "n": nil} {
		if set.Named(name) != want {
			t.Errorf("%s is %+v", name, set.Named(name))
		}
	}
	l := Lesson{Lights: []LessonLight{{Light: "a", Role: term.Fill}, {Light: "b", Role: term.Key}, {Light: "c", Role: term.Key}}}
	if l.Role(term.Key).Light != "b" || l.Role(term.Key, term.Fill).Light != "a" || l.Role(term.Hair) != nil || (Figure{Words: "4 : 1"}).String() != "4 : 1" {
		t.Error("a light is found by another role")
	}
	s := StandIn{Faces: []Passing{{Person: "a", Share: 0.2}, {Person: "b", Share: 0.2}}}
	if s.Main().Person != "a" || (&StandIn{}).Main() != nil {
		t.Error("of two faces that get as much the first is the main one")
	}
	mid, far := &colour.Gap{Mired: 40}, &colour.Gap{Mired: 60}
	white, gels := &Cure{White: &kit.Setting{Kelvin: 3200}, Left: mid}, Cure{Gels: []string{"1/4 CTO"}, Left: mid}
	if p := (&Passing{Setting: white, Gels: gels}); p.Cure() != white {
		t.Error("a white leaves no larger a gap than gels do, and takes none")
	}
	if gels.Left = far; (&Passing{Setting: white, Gels: gels}).Cure() != white {
		t.Error("a white closes more")
	}
	gels.Left = nil
	if (&Passing{Setting: white, Gels: gels}).Cure() != white {
		t.Error("gels that leave no colour temperature are no help")
	}
	if p := (&Passing{Gels: gels}); p.Cure() != &p.Gels {
		t.Error("where a unit has no other white, gels help")
	}
}

// The table has what cameras make of it where there are readings, and where there are none: their own flicker, track and picture.
func TestCamerasInTheTable(t *testing.T) {
	set := Set{Cameras: []shot.Shot{{Camera: "A", Lens: "35 mm"}, {Camera: "B", Lens: "50 mm"}}, Flickers: []Flicker{{Camera: "B", Lamps: []Pulsing{{Numbered: "1 a"}}}},
		Tracks: []Track{{Camera: "B", Length: 2}}, Pictures: []Picture{{Camera: "A", Range: lens.Range{Over: 6}}, {Camera: "B", Range: lens.Range{Over: 7}}}}
	var b strings.Builder
	set.cameras(&b)
	var got []string
	for _, line := range strings.Split(b.String(), "\n") {
		if !strings.HasPrefix(line, "  ") {
			line, _, _ = strings.Cut(line, " sees")
		}
		got = append(got, line)
	}
	const want = "camera A: 35 mm\n  over the 6 stops that A holds: nothing that is looked at\ncamera B: 50 mm\n  flicker of 1 a: none at this shutter\n  on a track of 2.00 m\n  over the 7 stops that B holds: nothing that is looked at\n"
	if strings.Join(got, "\n") != want {
		t.Errorf("got\n%s", strings.Join(got, "\n"))
	}
	lux := 1.0
	set = Set{Readings: []Reading{{Name: "m", Lux: &lux, Footcandles: &lux, Sees: &Sees{Surface: "rug"}}}, InHand: []InHand{{Numbered: "1 a"}}}
	b.Reset()
	set.table(&b)
	if got := b.String(); strings.Count(got, "in hand\n  1 a: at full, dims to nothing\n") != 1 || !strings.Contains(got, "\nm reads rug\n") {
		t.Errorf("got\n%s", got)
	}
	set.InHand = nil
	b.Reset()
	if set.table(&b); strings.Contains(b.String(), inHandTitle) {
		t.Errorf("without lights it is headed:\n%s", b.String())
	}
}
