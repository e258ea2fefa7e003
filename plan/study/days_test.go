package study_test

import (
	"context"
	"flag"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/days"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/samples"
)

// usualDays is how many random days the usual test tries.
const usualDays = 12

var (
	manyDays = flag.Int("days", usualDays, "how many random days are tried")
	daysFrom = flag.Uint64("days-from", 0, "the seed of the first")
)

// wholeDays says whether all set-ups of a day are tried, and not one of each.
func wholeDays() bool { return *manyDays > usualDays }

// setupsOf resolves the set-ups of a text; a fault of it fails the test.
func setupsOf(t testing.TB, text string, env scene.Env) []*plan.Setup {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	env.Kit = shipped
	log := &source.Log{}
	all := resolve.ResolveAll(scene.Open(env, &source.File{Name: "day.yaml", Text: []byte(text)}, log), nil, log)
	if log.Failed() {
		for _, d := range log.All() {
			if d.Severity == source.Error {
				t.Errorf("%v", d)
			}
		}
		t.Fatalf("it has errors:\n%s", text)
	}
	return all
}

// luxOf are the readings of a set-up by name.
func luxOf(t *testing.T, s *plan.Setup) map[string]float64 {
	t.Helper()
	lit, err := study.Run(context.Background(), s, study.Options{ReadingsOnly: true, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]float64{}
	for _, v := range lit.Readings.Readings {
		if v.Lux != nil {
			all[v.Name] = *v.Lux
		}
	}
	if len(all) == 0 {
		t.Fatal("nothing is read")
	}
	return all
}

// sameLux holds readings to others, so far as both have them.
func sameLux(t *testing.T, what string, got, want map[string]float64, slack float64) {
	t.Helper()
	for name, lux := range got {
		w, ok := want[name]
		if !ok || !(math.Abs(lux-w) <= slack*math.Max(math.Abs(w), 1)) {
			t.Errorf("%s: %s reads %.9g lx, and %.9g (%v)", what, name, lux, w, ok)
		}
	}
}

// flatOf is a set-up as a scene of its own: what stays is written where it stands.
func flatOf(s *plan.Setup) string {
	var shown []string
	for i := range s.Cameras {
		shown = append(shown, s.Cameras[i].Name)
	}
	given := map[string]string{}
	for _, ref := range s.Scene.Stays {
		for i := range s.Lights {
			if l := &s.Lights[i]; l.Name == ref.Name {
				f, path := l.Frame, "lights."+l.Name
				given[path+".at"] = fmt.Sprintf("[%.17g, %.17g]", f.At.X, f.At.Y)
				given[path+".aim"] = fmt.Sprintf("[%.17g, %.17g, %.17g]", f.At.X+f.Axis.X, f.At.Y+f.Axis.Y, f.At.Z+f.Axis.Z)
			}
		}
	}
	text := days.Flat(s.Scene.Tree, shown, given)
	if s.Line == nil { // a scene of its own may not name who is in other set-ups alone
		text = lineOfAction.ReplaceAllString(text, "")
	}
	return text
}

var lineOfAction = regexp.MustCompile(`(?m)^line: .*\n`)

// A set-up reads as the same scene written out flat does, on random days.
func TestSetupsReadAsFlatScenes(t *testing.T) {
	t.Parallel()
	for seed := *daysFrom; seed < *daysFrom+uint64(*manyDays); seed++ {
		all := setupsOf(t, days.Make(seed), scene.Env{})
		for i, s := range all {
			if !wholeDays() && i != int(seed)%len(all) {
				continue
			}
			flat := flatOf(s)
			sameLux(t, fmt.Sprintf("day %d, %s", seed, s.Name), luxOf(t, s), luxOf(t, setupsOf(t, flat, scene.Env{})[0]), 1e-6)
		}
	}
}

// So do the set-ups of every sample; of a usual run those that come last, which stand on all before them.
func TestSampleSetupsReadAsFlatScenes(t *testing.T) {
	t.Parallel()
	for _, name := range samples.Names() {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		all := setupsOf(t, string(text), scene.Env{})
		switch {
		case wholeDays():
		case len(all) == 1:
			continue // it is flat but for its defaults
		default:
			all = all[len(all)-1:]
		}
		for _, s := range all {
			sameLux(t, name+", "+s.Name, luxOf(t, s), luxOf(t, setupsOf(t, flatOf(s), scene.Env{})[0]), 1e-6)
		}
	}
}

// The reverse of a reverse is the set-up, to the places and the readings.
func TestReverseOfReverse(t *testing.T) {
	t.Parallel()
	for seed := *daysFrom; seed < *daysFrom+uint64(*manyDays); seed++ {
		text := days.Make(seed) + "  over: {reverse: {of: first}}\n  back: {reverse: {of: over}}\n"
		by := map[string]*plan.Setup{}
		for _, s := range setupsOf(t, text, scene.Env{}) {
			by[s.Name] = s
		}
		first, back, over := by["first"], by["back"], by["over"]
		for i := range first.Lights {
			if a, b := first.Lights[i].Frame, back.Lights[i].Frame; math.Abs(a.At.X-b.At.X)+math.Abs(a.At.Y-b.At.Y)+math.Abs(a.At.Z-b.At.Z)+math.Abs(a.Axis.X-b.Axis.X) > 1e-9 {
				t.Errorf("day %d: %s is at %v, and after two reverses at %v", seed, first.Lights[i].Name, a.At, b.At)
			}
		}
		if first.Lights[0].Frame.At == over.Lights[0].Frame.At {
			t.Errorf("day %d: the key did not go across", seed)
		}
		if seed%4 == 0 {
			sameLux(t, fmt.Sprintf("day %d", seed), luxOf(t, first), luxOf(t, back), 1e-9)
		}
	}
}

// mirrored is a scene that is its own image about the middle between the two, but for one lamp, its card and the camera, which a reverse takes across.
// Defaults, hands, rolls, leaves and marks are in it.
const mirrored = `scrimshaw: 1
materials: {dark: {reflectance: 0}}
rooms: {den: {at: [-3, 0], size: [6, 5], walls: dark, floor: dark, ceiling: dark}}
people:
  ada: {at: [-1, 3], faces: 160, marks: {sit: {at: [-1.5, 2], faces: 90}}}
  noor: {at: [1, 3], faces: 200, marks: {sit: {at: [1.5, 2], faces: 270}}}
cameras: {A: {at: [0, 0.5], looks: 0, lens: 28 mm}, B: {at: {by: ada, toward: noor, turn: 20, distance: 1.5}, lens: 35 mm}}
lights:
  key: {unit: fresnel-tungsten-650, at: {by: ada, toward: A, turn: 45 camera-left, distance: 1.5}, height: 2, roll: 15, barndoors: {left: 40, top: 70, turn: 10}}
  hair: {unit: profile-led-150, modifier: profile-lens-40, at: {by: ada.sit, turn: 140 own-left, distance: 1}, height: 2.2, aim: ada.sit, cuts: [{angle: 90, depth: 30 %}]}
grip: {board: {card: [1, 1], at: {by: ada, toward: A, turn: -60, distance: 1}}}
setups:
  first: {camera: B}
  over: {reverse: {of: first, swap: [[ada, noor]]}}
`

// A scene that is its own mirror image reads the same with names and hands exchanged.
func TestReverseOfAMirroredScene(t *testing.T) {
	t.Parallel()
	all := setupsOf(t, mirrored, scene.Env{})
	for i := range all[0].Lights {
		a, b := all[0].Lights[i].Frame, all[1].Lights[i].Frame
		for _, d := range []float64{a.At.X + b.At.X, a.At.Y - b.At.Y, a.At.Z - b.At.Z, a.Axis.X + b.Axis.X, a.Axis.Y - b.Axis.Y, a.Axis.Z - b.Axis.Z} {
			if !(math.Abs(d) <= 1e-9) {
				t.Errorf("%s is at %v and looks along %v, and across at %v along %v", all[0].Lights[i].Name, a.At, a.Axis, b.At, b.Axis)
			}
		}
	}
	first, over := luxOf(t, all[0]), luxOf(t, all[1])
	swapped := map[string]float64{}
	for name, lux := range first {
		who, part, _ := strings.Cut(name, ".")
		who = map[string]string{"ada": "noor", "noor": "ada"}[who]
		part = strings.NewReplacer("left", "right", "right", "left").Replace(part)
		swapped[who+"."+part] = lux
	}
	sameLux(t, "over", over, swapped, 0.02) // rays of a draft start at points that are not mirrored
}
