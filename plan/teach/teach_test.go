package teach_test

import (
	"context"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"scrimshaw/plan/internal/truth/scenes"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/teach"
	"scrimshaw/plan/term"
	"scrimshaw/samples"
)

// lessons are those of the set-ups of a scene.
func lessons(t testing.TB, text string) []*meter.Lesson {
	t.Helper()
	return lessonsOf(t, text, teach.Pair{})
}

// lessonsOf are those about a pair.
func lessonsOf(t testing.TB, text string, of teach.Pair) (all []*meter.Lesson) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "scene.yaml", Text: []byte(text)}, log)
	for _, setup := range resolve.ResolveAll(document, nil, log) {
		s, err := study.Run(context.Background(), setup, study.Options{ReadingsOnly: true, Around: true, Quality: light.Draft})
		if err != nil {
			t.Fatal(err)
		}
		if err := teach.Add(context.Background(), s, of); err != nil {
			t.Fatal(err)
		}
		all = append(all, s.Readings.Lesson)
	}
	if log.Failed() {
		t.Fatal(log.All())
	}
	return all
}

// lesson is that of the only set-up of a scene.
func lesson(t testing.TB, text string) *meter.Lesson { t.Helper(); return lessons(t, text)[0] }

// figure is a figure of a lesson by its name.
func figure(t *testing.T, l *meter.Lesson, name string) meter.Figure {
	t.Helper()
	for i := range l.Sentences {
		for _, f := range l.Sentences[i].Figures {
			if f.Name == name {
				return f
			}
		}
	}
	t.Fatalf("no sentence has %s:\n%s", name, said(l))
	return meter.Figure{}
}

// said is all that a lesson says, a sentence a line.
func said(l *meter.Lesson) string {
	all := []string{l.Missing}
	for i := range l.Sentences {
		all = append(all, l.Sentences[i].About+": "+l.Sentences[i].Text)
	}
	return strings.Join(all, "\n")
}

// near fails where a figure is not what it has to be, to a share.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)+1e-9) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// dark is a head in the open before a camera that looks along the nose; nothing sends light back. LIGHTS stand for its lights; the
// eyes are 1.6 m high.
const dark = `{scrimshaw: 1, exposure: {stop: T2.8, iso: 800, fps: 25, shutter: 1/50, meter: flat},
	people: {ada: {at: [0, -0.1], faces: 0, eyes: 1.6}}, cameras: {A: {at: [0, 3], height: 1.6, lens: 50 mm, looks: ada}},
	lights: {LIGHTS}}`

// before puts lights before that head.
func before(lights string) string { return strings.Replace(dark, "LIGHTS", lights, 1) }

// at45 is a place so far from the face, 45° to one side of the nose: plus is the side on the sheet's right.
func at45(distance float64) string {
	return fmt.Sprintf("at: [%.9f, %.9f], height: 1.6, aim: [0, 0, 1.6]", distance*math.Sqrt2/2, math.Abs(distance)*math.Sqrt2/2)
}

// A point level with the eyes, square to one side of the face, gives by its distance squared, and a point has hard shadows.
func TestAPoint(t *testing.T) {
	const d = 1.7
	l := lesson(t, before("key: {output: {candela: 1000, shape: uniform}, "+at45(d)+"}"))
	near(t, "the key side", figure(t, l, "keySide").Value, 1000/(d*d), 1e-6)
	near(t, "its share", figure(t, l, "share").Value, 100, 1e-9)
	near(t, "its stop", figure(t, l, "keyStop").Value, math.Sqrt(1000/(d*d)*800/50/250), 1e-6)
	near(t, "its angle", figure(t, l, "turn").Value, 45, 1e-6)
	near(t, "its distance", figure(t, l, "distance").Value, d, 1e-6)
	near(t, "how far it is then", figure(t, l, "farther").Value, d+0.5, 1e-6)
	near(t, "what moving it costs", figure(t, l, "lost").Value, 2*math.Log2((d+0.5)/d), 1e-6)
	near(t, "the inverse square", figure(t, l, "inverseSquare").Value, 2*math.Log2((d+0.5)/d), 1e-6)
	if words := said(l); !strings.Contains(words, "hard edge") || !strings.Contains(words, "level with the eyes") || !strings.Contains(words, "No light reaches the fill side") {
		t.Errorf("it says\n%s", words)
	}
}

// axial is the form factor of a square, a m wide, from a point d m before its middle that faces it: the closed form of handbooks
// of radiative transfer for a corner of a parallel rectangle, four times.
func axial(a, d float64) float64 {
	x := a / 2 / d
	return 4 / (2 * math.Pi) * 2 * x / math.Sqrt(1+x*x) * math.Atan(x/math.Sqrt(1+x*x))
}

// A large face costs less by moving back than a point does, by the closed form of its form factor; from the face it is as wide
// as its sides make it, and a shadow's edge by similar triangles.
func TestASoftFace(t *testing.T) {
	const d, a = 1.2, 0.9
	l := lesson(t, before(fmt.Sprintf("key: {output: {luminance: 900, face: [%g, %g]}, %s}", a, a, at45(d))))
	near(t, "the key side", figure(t, l, "keySide").Value, 900*math.Pi*axial(a, d), 1e-4)
	near(t, "what moving it costs", figure(t, l, "lost").Value, math.Log2(axial(a, d)/axial(a, d+0.5)), 1e-3)
	if lost, point := figure(t, l, "lost").Value, figure(t, l, "inverseSquare").Value; !(lost < point-0.1) {
		t.Errorf("it costs %g, and the inverse square says %g", lost, point)
	}
	near(t, "its width", figure(t, l, "wide").Value, 2*math.Atan(a/2/d)*180/math.Pi, 1e-6)
	near(t, "its height", figure(t, l, "high").Value, 2*math.Atan(a/2/d)*180/math.Pi, 1e-6)
	near(t, "the edge", figure(t, l, "penumbra").Value, a*20/(d*1000-20)*1000, 1e-6)
}

// What each form of an opening looks like from the face: a disc, a tube on end and a sphere by the cone that touches it.
func TestWidths(t *testing.T) {
	const d = 1.5
	deg := 180 / math.Pi
	for output, want := range map[string][2]float64{
		"{lumens: 3000, disc: 0.8}":             {2 * math.Atan(0.4/d) * deg, 2 * math.Atan(0.4/d) * deg},
		"{luminance: 2000, face: [0.4, 1]}":     {2 * math.Atan(0.2/d) * deg, 2 * math.Atan(0.5/d) * deg},
		"{lumens: 3000, sphere: 0.5}":           {2 * math.Asin(0.25/d) * deg, 2 * math.Asin(0.25/d) * deg},
		"{candela: 100, shape: uniform}":        {0, 0},
		"{lumens: 3000, tube: 1.2}, roll: 90":   {0, 2 * math.Atan(0.6/d) * deg},
		"{luminance: 2000, face: [1, 0.4]}":     {2 * math.Atan(0.5/d) * deg, 2 * math.Atan(0.2/d) * deg},
		"{lumens: 3000, tube: 1.2, beam: null}": {2 * math.Atan(0.6/d) * deg, 0},
	} {
		output = strings.Replace(output, ", beam: null", "", 1)
		l := lesson(t, before("key: {output: "+output+", "+at45(d)+"}"))
		near(t, "the width of "+output, l.Lights[0].Wide, want[0], 1e-3)
		near(t, "the height of "+output, l.Lights[0].High, want[1], 1e-3)
	}
}

// With a fill before the other side the ratio and what is left without it are sums of the two lights.
func TestWithoutTheFill(t *testing.T) {
	key := "key: {output: {candela: 1000, shape: uniform}, at: [-1, 2], height: 1.6, role: key}"
	fill := "fill: {output: {candela: 100, shape: uniform}, at: [1.5, 1.5], height: 1.6, role: fill}"
	l := lesson(t, before(key+", "+fill))
	lux := func(candela, x, y, side float64) float64 {
		d := math.Hypot(x, y)
		return candela / d / d * math.Max(0, (side*x+y)/math.Sqrt2/d)
	}
	keySide, fillSide, left := lux(1000, -1, 2, -1), lux(1000, -1, 2, 1)+lux(100, 1.5, 1.5, 1), lux(1000, -1, 2, 1)
	near(t, "the ratio", figure(t, l, "ratio").Value, keySide/fillSide, 1e-6)
	near(t, "key : fill", figure(t, l, "keyToFill").Value, keySide/fillSide-1, 1e-6)
	near(t, "the contrast", figure(t, l, "contrast").Value, math.Log2(keySide/fillSide), 1e-6)
	near(t, "what is left", figure(t, l, "withoutFill").Value, left, 1e-6)
	near(t, "its contrast", figure(t, l, "withoutFillContrast").Value, math.Log2(keySide/left), 1e-6)
	near(t, "the stop that is left", figure(t, l, "withoutFillStop").Value, math.Sqrt(left*800/50/250), 1e-6)
	near(t, "the key alone", figure(t, l, "alone").Value, math.Log2(keySide/left), 1e-6)

	off := lesson(t, before(key+", "+strings.Replace(fill, "role", "level: 0 %, role", 1)))
	if words := said(off); strings.Contains(words, "Without") || !strings.Contains(words, "No light fills: 100 % of that is light of 1 key") {
		t.Errorf("with the fill off it says\n%s", words)
	}
}

// Switching off the light that a sentence names changes that sentence.
func TestSwitchedOff(t *testing.T) {
	text, err := samples.Text("four-keys")
	if err != nil {
		t.Fatal(err)
	}
	two, _, _ := strings.Cut(string(text), "  side:\n") // the first two set-ups
	whole := lessons(t, two)
	for name, about := range map[string][]string{"level: 12 %": {"key", "sides", "ratio", "distance", "size"}, "level: 2 %": {"ratio"}, "level: 10 %": {"edge"}} {
		less := lessons(t, strings.Replace(two, name, "level: 0 %", 1))
		for _, a := range about {
			if was, is := sentence(whole[1], a), sentence(less[1], a); was == "" || was == is {
				t.Errorf("with the light at %s off, %s still says %q", name, a, is)
			}
		}
	}
}

// sentence is the one on a subject; "" where there is none.
func sentence(l *meter.Lesson, about string) string {
	for i := range l.Sentences {
		if l.Sentences[i].About == about {
			return l.Sentences[i].Text
		}
	}
	return ""
}

// mirroredScene is a head that looks past a camera, with a key, a fill and a light behind before a back wall; side turns it.
func mirroredScene(side float64) string {
	x := func(v float64) float64 { return side * v }
	return fmt.Sprintf(`{scrimshaw: 1, exposure: {stop: T2.8, iso: 800}, people: {ada: {at: [%g, 0], faces: %g}},
		cameras: {A: {at: [%g, 3], height: 1.5, lens: 50 mm, looks: ada}},
		lights: {key: {output: {luminance: 4000, face: [0.7, 0.5]}, at: [%g, 1.4], height: 2.1, aim: ada, role: key},
			fill: {output: {lumens: 700, disc: 0.5}, at: [%g, 1.6], height: 1.7, aim: ada, role: fill},
			rim: {output: {candela: 700, beam: 30, field: 50}, at: [%g, -1.5], height: 2.4, aim: ada, role: edge}}}`,
		x(0.2), 0+x(20), x(0.1), x(-1.6), x(1.2), x(1.1))
}

// swapped has left for right, and what is mirrored with them.
var swapped = strings.NewReplacer("left", "right", "right", "left", "10 o'clock", "2 o'clock", "2 o'clock", "10 o'clock", "11 o'clock", "1 o'clock",
	" 1 o'clock", " 11 o'clock", "9 o'clock", "3 o'clock", "3 o'clock", "9 o'clock")

// A mirrored scene mirrors the words, and no figure changes but the hours.
func TestMirroredWords(t *testing.T) {
	a, b := lesson(t, mirroredScene(1)), lesson(t, mirroredScene(-1))
	if got, want := said(b), swapped.Replace(said(a)); got != want || !strings.Contains(got, "camera left") || !strings.Contains(got, "o'clock") {
		t.Errorf("mirrored it says\n%s\nwant\n%s", got, want)
	}
	for i := range a.Lights {
		near(t, "the angle of "+a.Lights[i].Light, b.Lights[i].Turn, -a.Lights[i].Turn, 1e-6)
		near(t, "its angle from the nose", b.Lights[i].FromNose, -a.Lights[i].FromNose, 1e-6)
	}
}

// Where no light is called the key, the one that gives most is; a key that does not reach the face counts for nothing.
func TestWhoIsTheKey(t *testing.T) {
	weak := "weak: {output: {candela: 200, shape: uniform}, at: [1, 1.5], height: 1.6ROLE}"
	strong := "strong: {output: {candela: 900, shape: uniform}, at: [-1, 1.5], height: 1.6}"
	behind := "behind: {output: {candela: 900, shape: uniform}, at: [0.2, -3], height: 1.6, role: key}"
	for _, c := range []struct {
		lights, key string
		written     bool
	}{
		{strings.Replace(weak, "ROLE", "", 1) + ", " + strong, "strong", false},
		{strings.Replace(weak, "ROLE", ", role: key", 1) + ", " + strong, "weak", true},
		{strings.Replace(weak, "ROLE", ", role: {ada: key}", 1) + ", " + strong, "weak", true},
		{strong + ", " + behind, "strong", false},
		{strong, "strong", false},
	} {
		l := lesson(t, before(c.lights))
		if k := l.Role(term.Key); k == nil || k.Light != c.key || k.Written != c.written || &l.Lights[0] != k {
			t.Errorf("of %s the key is %+v", c.lights, k)
		}
		if beaten := strings.Contains(sentence(l, "key"), "2 strong gives it more, 96 %."); beaten != (c.key == "weak") {
			t.Errorf("of %s it says %s", c.lights, sentence(l, "key"))
		}
		if asked := strings.Contains(said(l), "as no light gives the key side more"); asked == c.written {
			t.Errorf("of %s it says\n%s", c.lights, said(l))
		}
	}
}

// Roles that nobody wrote are given to what plays them: the light on the other side fills, the one behind is the edge.
func TestUnwrittenRoles(t *testing.T) {
	l := lesson(t, before(`a: {output: {candela: 900, shape: uniform}, at: [-1, 1.5], height: 1.6}, b: {output: {candela: 200, shape: uniform}, at: [1, 1.5], height: 1.6},
		c: {output: {candela: 500, shape: uniform}, at: [1, -2], height: 2}`))
	for role, want := range map[term.Role]string{term.Key: "a", term.Fill: "b", term.Edge: "c"} {
		if got := l.Role(role); got == nil || got.Light != want || got.Written {
			t.Errorf("the %s is %+v, want %s", role, got, want)
		}
	}
}

// A sentence names the wall behind the lamp in place of a move that nobody can make.
func TestNoRoomBehindTheKey(t *testing.T) {
	l := lesson(t, `{scrimshaw: 1, rooms: {den: {size: [4, 4], height: 2.6}}, people: {ada: {at: [2, 2], faces: 180}}, cameras: {A: {at: [2, 0.3], height: 1.6, lens: 50 mm}},
		lights: {key: {output: {candela: 1000, beam: 60}, at: [2, 0.2], height: 1.6, aim: ada}}}`)
	if f := figure(t, l, "room"); !(math.Abs(f.Value-0.2) <= 1e-6) || !strings.Contains(sentence(l, "distance"), "key cannot go 0.50 m back: den.bottom is 0.20 m behind it.") {
		t.Errorf("it says %s", sentence(l, "distance"))
	}
}

// What moving the key costs in a room is what the scene with the key moved reads, its own diffusion with it, which is as large as
// it looks from the face.
func TestMovedInARoom(t *testing.T) {
	const room = `{scrimshaw: 1, rooms: {den: {size: [6, 5], height: 2.8}}, people: {ada: {at: [3, 2], faces: 180}}, cameras: {A: {at: [3, 0.3], height: 1.6, lens: 50 mm}},
		lights: {key: {KEY, height: 2, aim: ada, role: key}, wall: {output: {lumens: 4000, beam: 60}, at: [5, 4], height: 2.4, aim: [5, 5, 1]}}}`
	for _, lamp := range []string{
		"unit: led-point-300-bicolour, modifier: softbox-90",
		"unit: fresnel-tungsten-650",
		"output: {lumens: 4000, face: [0.5, 0.5]}, diffusion: half-diffusion",
	} {
		scene := func(at string) string { return strings.Replace(room, "KEY", lamp+", at: "+at, 1) }
		l := lesson(t, scene("[1.8, 0.9]"))
		face := [2]float64{3, 1.9} // 0.1 m before the axis of the head
		x, y := 1.8-face[0], 0.9-face[1]
		far := 0.5 / math.Hypot(x, y)
		moved := lesson(t, scene(fmt.Sprintf("[%.9f, %.9f]", 1.8+far*x, 0.9+far*y)))
		want := math.Log2(l.Lights[0].Key / moved.Lights[0].Key)
		if got := figure(t, l, "lost"); !(math.Abs(got.Value-want) <= 0.02) || !strings.HasSuffix(sentence(l, "distance"), "stops.") {
			t.Errorf("of %s it is %.4f stops, and the scene with it moved reads %.4f", lamp, got.Value, want)
		}
		near(t, "how far it is then", figure(t, l, "farther").Value, moved.Lights[0].Distance, 1e-4)
		if soft := strings.Contains(lamp, "diffusion"); l.Lights[0].By != "" || soft && !(l.Lights[0].Wide > 2*math.Atan(0.25/1.5)*180/math.Pi) {
			t.Errorf("its light is %+v", l.Lights[0])
		}
	}
}

// A key over the head is lifted: a pencil gets what the inverse square says from the two distances.
func TestAKeyOverheadIsLifted(t *testing.T) {
	l := lesson(t, before("key: {output: {candela: 1000, shape: uniform}, at: {by: ada, toward: A, distance: 0.15}, height: 4}"))
	if s := sentence(l, "distance"); !strings.HasPrefix(s, "Lifted by 0.50 m, 2.90 m from the face") {
		t.Errorf("it says %q", s)
	}
	near(t, "the inverse square", figure(t, l, "inverseSquare").Value, 2*math.Log2(figure(t, l, "farther").Value/figure(t, l, "distance").Value), 1e-9)
}

// Nothing to teach is said plainly.
func TestNothingToTeach(t *testing.T) {
	lamp := "key: {output: {candela: 1000, shape: uniform}, at: [1, 1], height: 1.6}"
	for text, want := range map[string]string{
		`{scrimshaw: 1, lights: {` + lamp + `}}`: "nobody is in the set-up",
		before(""):                               "no light is on",
		before(strings.Replace(lamp, "height", "level: 0 %, height", 1)):                                              "no light is on",
		before("key: {output: {candela: 1000, beam: 20, field: 30}, at: [1, 3], height: 1, aim: {pan: 90, tilt: 0}}"): "no light reaches a face",
	} {
		if l := lesson(t, text); !strings.Contains(l.Missing, want) || len(l.Sentences) > 0 || l.Person != "" {
			t.Errorf("of %s it says\n%s", text, said(l))
		}
	}
}

// Somebody else, somebody at a mark and another camera are taught where they are named; what a set-up lacks is said.
func TestPairs(t *testing.T) {
	const two = `{scrimshaw: 1, people: {ada: {at: [0, 0], faces: 0, marks: {near: {at: [0, 1], faces: 0}}}, ben: {at: [3, 0], faces: 0}},
		cameras: {A: {at: [0, 4], height: 1.6, lens: 50 mm, looks: ada}, B: {at: [3, 4], height: 1.6, lens: 50 mm, looks: ben}, C: {at: [0, 4], height: 1.6, lens: 50 mm, looks: [0, 9, 1.6]}},
		lights: {key: {output: {candela: 900, shape: uniform}, at: [1.5, 2], height: 2, role: {ben: key}}}}`
	for of, want := range map[teach.Pair]string{
		{}:                           "ada A",
		{Person: "ben"}:              "ben B", // who has his face in frame, as A has not
		{Person: "ben", Camera: "A"}: "ben A",
		{Camera: "B"}:                "ada B",
		{Person: "ben", Camera: "B"}: "ben B",
		{Person: "ada.near"}:         "ada.near A",
		{Person: "cas"}:              "There is nothing to teach here: cas is not in the set-up.",
		{Camera: "Z"}:                "There is nothing to teach here: there is no camera Z in the set-up.",
		{Person: "ben", Camera: "C"}: "There is nothing to teach here: C does not see the face of ben.",
	} {
		l := lessonsOf(t, two, of)[0]
		if got := strings.TrimSpace(l.Person + " " + l.Camera + l.Missing); got != want {
			t.Errorf("of %+v it is %q, want %q", of, got, want)
		}
		if l.Missing == "" {
			holdsFigures(t, fmt.Sprint(of), l)
			if eyes := strings.Contains(said(l), "in the eyes"); eyes != (of != teach.Pair{Person: "ben", Camera: "A"} && of.Camera != "B" || of.Person == "ben" && of.Camera == "B") {
				t.Errorf("of %+v it says\n%s", of, said(l))
			}
			if k := l.Role(term.Key); k.Written != (of.Person == "ben") {
				t.Errorf("of %+v the key is %+v", of, k)
			}
		}
	}
}

// Without a camera angles count from the nose, and where it hangs over the head from where the person faces.
func TestWithoutACamera(t *testing.T) {
	none := strings.Replace(before("key: {output: {candela: 1000, shape: uniform}, "+at45(1.7)+"}"), "cameras: {A: {at: [0, 3], height: 1.6, lens: 50 mm, looks: ada}},", "", 1)
	l := lesson(t, none)
	if l.Camera != "" || !strings.Contains(said(l), "45° own right of where ada faces") || strings.Contains(said(l), "camera") {
		t.Errorf("without a camera it says\n%s", said(l))
	}
	over := strings.Replace(none, "lights:", "cameras: {A: {at: [0, 0], height: 4, lens: 32 mm, looks: ada}}, lights:", 1)
	if l := lesson(t, over); !strings.Contains(said(l), "45°") {
		t.Errorf("under a camera it says\n%s", said(l))
	}
}

// A camera that sees a face from the end of its track alone is taught from there.
func TestSeenFromTheEndOfATrack(t *testing.T) {
	const door = `{scrimshaw: 1, rooms: {den: {size: [5, 4]}, hall: {at: [5.15, 0], size: [3, 4]}},
		openings: {d: {door: den.right, along: centre, ajar: 90}}, people: {ada: {at: [2.5, 3], faces: A}},
		cameras: {A: {track: [[7, 2], [4, 2]], lens: 32 mm, looks: ada}},
		lights: {key: {output: {candela: 1000, shape: uniform}, at: [2.5, 1], height: 2, role: key}}}`
	l := lessonsOf(t, door, teach.Pair{})[0]
	if l.Camera != "A.end" || !strings.Contains(said(l), "A at the end looks") {
		t.Errorf("for %q it says\n%s", l.Camera, said(l))
	}
	holdsFigures(t, "the end of a track", l)
	// The turn by hand: the lens is 1.5 m to the right of her and 1 m before her, the lamp 2 m before her.
	if got, want := math.Abs(l.Role(term.Key).Turn), math.Atan2(1.5, 1)*180/math.Pi; !(math.Abs(got-want) <= 5) {
		t.Errorf("the key stands %g° off the line to the end of the track, want some %g°", got, want)
	}
	for _, camera := range []string{"A", "A.end"} {
		if got := lessonsOf(t, door, teach.Pair{Camera: camera})[0]; said(got) != said(l) {
			t.Errorf("asked for %s it says\n%s", camera, said(got))
		}
	}
}

// Lengths are in the units of the scene, and a step back is two feet.
func TestFeet(t *testing.T) {
	l := lesson(t, `{scrimshaw: 1, units: ft, people: {ada: {at: [0, 0], faces: 0}}, lights: {key: {output: {candela: 1000, shape: uniform}, at: [4, 6], height: 6}}}`)
	if f := figure(t, l, "back"); f.Words != `2'0"` || !(math.Abs(f.Value-0.6096) <= 1e-9) {
		t.Errorf("it is moved %+v", f)
	}
	if words := said(l); !strings.Contains(words, " fc on the key side") || strings.Contains(words, " m ") || strings.Contains(words, " lx") {
		t.Errorf("it says\n%s", words)
	}
}

// Every digit of a sentence stands in one of its figures or in the name of a light, a camera, a person or a surface, and every
// figure says its value to its last digit.
func TestEveryNumberIsAFigure(t *testing.T) {
	names := []string{"four-keys", "ironing-room", "fitting-room", "two-sizes", "odd"} // the forms that sentences take
	for _, name := range names {
		texts := odd
		if name != "odd" {
			text, err := samples.Text(name)
			if err != nil {
				t.Fatal(err)
			}
			texts = []string{string(text)}
		}
		for _, text := range texts {
			for _, l := range lessons(t, text) {
				holdsFigures(t, name, l)
			}
		}
	}
}

// thing is the name of a thing or a room of a random scene, which has a number behind a letter.
var thing = regexp.MustCompile(`\b[a-z]+-?[0-9]+\b`)

func holdsFigures(t *testing.T, name string, l *meter.Lesson) {
	t.Helper()
	for _, s := range l.Sentences {
		rest := s.Text
		for _, f := range s.Figures {
			if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
				t.Errorf("%s: %s is %g in %q", name, f.Name, f.Value, s.Text)
			}
			before, after, found := strings.Cut(rest, f.Words)
			if !found {
				t.Errorf("%s: %q does not stand in %q", name, f.Words, s.Text)
			}
			rest = before + "#" + after
		}
		for i := range l.Lights {
			rest = strings.ReplaceAll(rest, l.Lights[i].Numbered, "*")
		}
		rest = thing.ReplaceAllString(rest, "*")
		if strings.ContainsAny(rest, "0123456789") {
			t.Errorf("%s: a number is no figure in %q", name, rest)
		}
	}
	for i := range l.Lights {
		t1 := &l.Lights[i]
		for _, v := range []float64{t1.Turn, t1.FromNose, t1.Height, t1.Wide, t1.High, t1.Distance, t1.Key, t1.Fill, t1.Back} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%s: of %s something is no number: %+v", name, t1.Light, t1)
			}
		}
	}
}

// In random scenes every number of a sentence is one of its figures, too, and every figure is a number.
func TestRandomScenes(t *testing.T) {
	const seeds = 1 // of each kind
	for _, kind := range scenes.Kinds {
		for seed := range seeds {
			text, s, err := scenes.Make(kind, seed)
			if err != nil {
				t.Fatal(err)
			}
			lit, err := study.Run(context.Background(), s, study.Options{ReadingsOnly: true, Around: true, Quality: light.Draft})
			if err != nil {
				t.Fatal(err)
			}
			if err := teach.Add(context.Background(), lit, teach.Pair{}); err != nil {
				t.Fatal(err)
			}
			holdsFigures(t, text, lit.Readings.Lesson)
		}
	}
}

// hostile is a room with a face in it and a lamp at the ends of what the language allows.
func hostile(lamp, exposure string) string {
	return "scrimshaw: 1\nrooms: {a: {size: [4, 3]}}\npeople: {ada: {at: [1, 1]}}\ncameras: {A: {at: [3, 2], lens: 32 mm}}\nlights: {l: {" + lamp + "}}\n" + exposure + "\n"
}

// odd are scenes that no sentence may stumble over.
var odd = []string{
	before("key: {output: {candela: 1000, shape: uniform}, at: [0, 0.001], height: 1.6}"),               // in the face
	before("key: {output: {candela: 1000, shape: uniform}, at: [0, 0], height: 3, aim: down}"),          // over it
	before("key: {output: {lumens: 1000, sphere: 1.2}, at: [0.3, 0.2], height: 1.6}"),                   // a sphere about it
	before("key: {output: {lumens: 1000, face: [2, 2]}, at: [0, 0.01], height: 1.6, aim: [0, 0, 1.6]}"), // nearer than a nose
	before("key: {unit: practical-table, at: [0.6, 0.4], height: 1.2}"),
	before("key: {output: {candela: 1000, shape: uniform}, at: [0, -2], height: 1.6}"), // right behind
	hostile("output: {candela: 1e10, shape: uniform}, at: [2, 1], height: 1.5", "exposure: {constant: 1, iso: 1e7, fps: 0.01, shutter: 100 s, stop: T0.5}"),
	hostile("output: {candela: 0.001, shape: cosine}, at: [2, 1], height: 1.5", "exposure: {constant: 2000, iso: 1, fps: 100000, shutter: 1, stop: T64}"),
	hostile("output: {luminance: 1e10, face: [50, 50]}, at: [2, 1], height: 1.5", ""),
	hostile("output: {luminance: 1e10, sphere: 0.005}, at: [2, 1.5], height: 1", ""),
	hostile("output: {lumens: 1e8, shape: uniform}, at: [1.0894427190999916, 1.0447213595499958], height: 1.59, aim: up", ""),
	hostile("output: {lumens: 1e8, shape: uniform}, at: [1e4, 1e4], height: 100", ""),
	strings.Replace(before("key: {output: {candela: 900, beam: 40}, at: [1, 1], height: 2.5, aim: ada}"), "eyes: 1.6", "pose: lying", 1),
	strings.Replace(before("key: {output: {candela: 900, beam: 40}, at: [1, 1], height: 2.5, aim: ada}"), "eyes: 1.6", "pose: propped", 1),
	before(`a: {output: {candela: 100, shape: uniform}, at: [1, 1], height: 2}, b: {output: {candela: 110, shape: uniform}, at: [1.2, 1], height: 2}, c: {output: {candela: 120, shape: uniform}, at: [1.3, 1], height: 2},
		d: {output: {candela: 100, shape: uniform}, at: [-1, 1], height: 2}, e: {output: {candela: 110, shape: uniform}, at: [-1.2, 1], height: 2}, f: {output: {candela: 120, shape: uniform}, at: [-1.3, -1], height: 2},
		g: {output: {candela: 100, shape: uniform}, at: [1, -1], height: 2}`),
}
