package clash_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// How many random scenes are looked at, and from which seed on.
var (
	manyScenes = flag.Int("clash-scenes", 300, "how many random scenes are looked for clashes")
	firstScene = flag.Uint64("clash-from", 0, "the seed of the first of them")
)

// within is how near the sampler and the package agree, m.
const within = 0.01

// In random scenes of all kinds it finds every overlap of bodies that points of them find, and no other.
func TestClashesAgainstPoints(t *testing.T) {
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	told, beside, scenes, kinds := 0, 0, 0, map[clash.Kind]int{}
	for seed := *firstScene; seed < *firstScene+uint64(*manyScenes); seed++ {
		text := randomScene(rand.New(rand.NewPCG(seed, 26)))
		log := &source.Log{}
		doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "-", Text: []byte(text)}, log)
		s := resolve.Resolve(doc, doc.Base(log), log)
		if s == nil || len(s.Lights) == 0 {
			t.Fatalf("scene %d does not resolve: %v\n%s", seed, log.All(), text)
		}
		scenes++
		told += compare(t, seed, text, s, kinds)
		beside += compareWalks(t, seed, text, s)
		if t.Failed() {
			break
		}
	}
	if scenes < *manyScenes && !t.Failed() || told < *manyScenes/2 {
		t.Errorf("%d clashes in %d scenes are too few to tell", told, scenes)
	}
	if beside < *manyScenes/4 && !t.Failed() {
		t.Errorf("%d things beside walks in %d scenes are too few to tell", beside, scenes)
	}
	for k := clash.Light; k <= clash.Ground; k++ {
		if kinds[k] == 0 && !t.Failed() {
			t.Errorf("%d clashes of kind %d are too few to tell: %v", kinds[k], k, kinds)
		}
	}
}

// compare holds what the package finds in a scene to what points of the bodies find.
func compare(t *testing.T, seed uint64, text string, s *plan.Setup, kinds map[clash.Kind]int) int {
	t.Helper()
	found := map[[2]clash.Side]float64{}
	for _, c := range clash.Find(s) {
		found[[2]clash.Side{c.Of, c.In}] = c.Deep
		kinds[c.In.Kind]++
		if c.Move != (r3.Vec{}) && (math.IsNaN(r3.Norm(c.Move)) || r3.Norm(c.Move) > 20) {
			t.Errorf("scene %d: %v is to be moved by %v", seed, c.Of, c.Move)
		}
	}
	crew, set := crewForms(s), setForms(s)
	deep := func(a, b clash.Side, others map[clash.Side][]form) float64 {
		most := math.Inf(-1)
		for _, f := range crew[a] {
			for _, g := range others[b] {
				if !apart(f, g) && !exempt(s, a, b, f, g) {
					most = max(most, lies(f, g))
				}
			}
		}
		return most
	}
	check := func(a, b clash.Side, others map[clash.Side][]form, slack float64) {
		is, points := found[[2]clash.Side{a, b}], deep(a, b, others)
		switch {
		case is > 0 && points < -within:
			t.Errorf("scene %d: %v lies by the package %.3f deep in %v, and no point does (%.3f)\n%s", seed, a, is, b, points, text)
		case is == 0 && points > slack+within:
			t.Errorf("scene %d: a point of %v lies %.3f deep in %v, and nothing tells\n%s", seed, a, points, b, text)
		}
	}
	for a := range crew {
		slack := clash.Slack
		if a.Kind == clash.Camera || a.Kind == clash.Ground {
			slack = 0.05
		}
		for b := range set {
			check(a, b, set, slack)
		}
		for b := range crew {
			if a.Kind > b.Kind || a.Kind == b.Kind && a.Name > b.Name {
				if b.Kind == clash.Camera || b.Kind == clash.Ground {
					slack = 0.05
				}
				check(a, b, crew, slack)
			}
		}
	}
	return len(found)
}

// compareWalks holds what walks lead through, and what they lead past too near for a body, to points of bodies that walk.
func compareWalks(t *testing.T, seed uint64, text string, s *plan.Setup) (found int) {
	t.Helper()
	for i := range s.People {
		w := s.People[i].Walk
		if w == nil {
			continue
		}
		told, ofTwo := map[string]bool{}, map[string]bool{} // of two that leave no way, one may be out of a body's by itself
		for _, b := range w.Beside {
			told[b.Name], ofTwo[b.Name] = true, b.Other != ""
			if b.Other != "" {
				told[b.Other], ofTwo[b.Other] = true, true
			}
		}
		found += len(told)
		for _, h := range w.Through {
			told[h.Name] = true
		}
		for side, forms := range setForms(s) {
			if side.Kind != clash.Set && (side.Kind != clash.Person || strings.Contains(side.Name, ".") || side.Name == s.People[i].Name) {
				continue
			}
			most := math.Inf(-1)
			for _, f := range forms {
				const coarse, fine = 0.08, 0.012
				deep := walksInto(w, f.(columnForm), coarse)
				if deep > -2*coarse {
					deep = walksInto(w, f.(columnForm), fine)
				}
				most = max(most, deep)
			}
			switch {
			case told[side.Name] && most < -within && !(ofTwo[side.Name] && most > -0.23):
				t.Errorf("scene %d: the package tells %s on the walk of %s, and no point of a body meets it (%.3f)\n%s", seed, side.Name, s.People[i].Name, most, text)
			case !told[side.Name] && most > clash.Slack+within:
				t.Errorf("scene %d: on the walk of %s a point of a body lies %.3f deep in %s, and nothing tells: %+v %+v\n%s", seed, s.People[i].Name, most, side.Name, w.Through, w.Beside, text)
			}
		}
	}
	return found
}

// lies is how deep the deepest point of one form lies in another. Points far apart tell soon of forms that are: how deep a point lies
// changes by less than twice its way.
func lies(f, g form) float64 {
	const coarse, fine = 0.08, 0.012
	most := deepest(f, g, coarse)
	if most < -2*coarse {
		return most
	}
	return deepest(f, g, fine)
}

func deepest(f, g form, step float64) float64 {
	most := math.Inf(-1)
	f.each(step, func(p r3.Vec) { most = max(most, g.inside(p)) })
	g.each(step, func(p r3.Vec) { most = max(most, f.inside(p)) })
	return most
}

// exempt are the pairs that may lie in each other, written again.
func exempt(s *plan.Setup, a, b clash.Side, f, g form) bool {
	mount := func(of clash.Side) plan.Mount {
		switch of.Kind {
		case clash.Light:
			return s.LightNamed(of.Name).Mount
		case clash.Grip:
			return s.GripNamed(of.Name).Mount
		}
		return plan.Mount{}
	}
	m, o := mount(a), mount(b)
	post, isTube := f.(tubeForm)
	upright := isTube && post.a.X == post.b.X && post.a.Y == post.b.Y
	switch {
	case a.Kind == clash.Ground || b.Kind == clash.Ground:
		return !between(s, a, b, f, g) && !between(s, b, a, g, f)
	case m.On != "" && m.On == b.Name, o.On != "" && o.On == a.Name:
		return true
	case m.Kind == term.Hand && b.Kind == clash.Person:
		return true
	case b.Kind == clash.Way && (a.Kind == clash.Camera && a.Name == b.Name || upright):
		return true
	}
	return false
}

// between says whether a form of the first stands up from the ground of the second: somebody, or a leaf that swings, from that of a camera; a post, or the base of a
// lift, from that of a camera, and the post of a camera from that of a stand.
func between(s *plan.Setup, a, b clash.Side, f, g form) bool {
	if b.Kind != clash.Ground || a.Kind == clash.Ground || a.Name == b.Name {
		return false
	}
	post, isTube := f.(tubeForm)
	base, isBox := f.(hornForm)
	upright := isTube && post.a.X == post.b.X && post.a.Y == post.b.Y || isBox && base.f.Axis == r3.Vec{Z: 1} && base.front == base.back && base.ahead > 0 && a.Kind != clash.Camera
	if s.CameraNamed(b.Name) == nil {
		return a.Kind == clash.Camera && upright
	}
	return a.Kind == clash.Person || a.Kind == clash.Swing || upright
}

// randomScene writes a scene with one or two rooms, in metres or feet, mirrored or not, full of things in each other's way.
func randomScene(r *rand.Rand) string {
	w := &writer{r: r, mirrored: r.IntN(2) == 1, feet: r.IntN(4) == 0}
	var b strings.Builder
	b.WriteString("scrimshaw: 1\n")
	if w.feet {
		b.WriteString("units: ft\n")
	}
	if r.IntN(8) > 0 {
		height := "height: " + w.length(2.6)
		if r.IntN(3) == 0 {
			height = fmt.Sprintf("height: {low: %s, high: %s, toward: top}", w.length(2.2), w.length(3.4))
		}
		den := "{at: " + w.at(0, 0, 6) + ", size: [" + w.length(6) + ", " + w.length(5) + "], "
		rooms := "den: " + den + height + "}"
		if w.lofty = !strings.Contains(height, "low") && r.IntN(3) == 0; w.lofty {
			rooms += ", loft: " + den + "base: " + w.length(2.8) + ", height: " + w.length(2.6) + "}"
		}
		b.WriteString("rooms: {" + rooms + "}\n")
		b.WriteString(fmt.Sprintf("openings: {door: {door: den.bottom, along: %s, width: %s, ajar: %d, swing: in}}\n", w.length(1+2*r.Float64()), w.length(0.9), r.IntN(4)*30))
	}
	b.WriteString("furniture:\n")
	if w.lofty {
		b.WriteString("  u: {box: [" + w.length(0.4) + ", " + w.length(0.4) + ", " + w.length(0.4) + "], at: {wall: loft.bottom, along: " + w.length(3) + "}}\n")
	}
	for i, form := range []string{"box: [%s, %s, %s]", "table: [%s, %s, %s]", "deck: [%s, %s, %s]"} {
		b.WriteString(fmt.Sprintf("  f%d: {"+form+", at: %s, turn: %d}\n", i, w.length(0.5+r.Float64()), w.length(0.4+r.Float64()), w.length(0.3+1.2*r.Float64()), w.somewhere(), r.IntN(180)))
	}
	b.WriteString("people:\n")
	for i := range r.IntN(3) {
		pose := term.Poses[r.IntN(len(term.Poses))]
		b.WriteString(fmt.Sprintf("  p%d: {at: %s, faces: %d, pose: %s, walk: [%s, %s, %s]}\n", i, w.place(), r.IntN(360), pose, w.place(), w.place(), w.place()))
	}
	b.WriteString("  q: {at: " + w.somewhere() + ", faces: 20, marks: {there: {at: " + w.somewhere() + "}}}\n")
	b.WriteString("cameras: {A: {track: [" + w.place() + ", " + w.place() + "], looks: {pan: 30, tilt: 0}, lens: 35 mm}, B: {at: " + w.somewhere() + ", height: " + w.length(0.6+r.Float64()) + ", looks: 10, lens: 35 mm}}\n")
	b.WriteString("lights:\n")
	for i := range 2 + r.IntN(3) {
		b.WriteString(fmt.Sprintf("  l%d: {unit: %s, at: %s, height: %s, aim: %s%s}\n", i, w.unit(), w.somewhere(), w.length(0.4+2.3*r.Float64()), w.aim(), w.mount()))
	}
	b.WriteString("grip:\n")
	for i := range 1 + r.IntN(2) {
		b.WriteString(fmt.Sprintf("  g%d: {flag: [%s, %s], at: %s, height: %s, faces: %d, tilt: %d%s}\n", i, w.length(0.4+r.Float64()), w.length(0.4+r.Float64()), w.somewhere(), w.length(0.4+1.8*r.Float64()), r.IntN(360), r.IntN(60), w.mount()))
	}
	return b.String()
}

// writer writes the places of a random scene.
type writer struct {
	r              *rand.Rand
	mirrored, feet bool
	lofty          bool // it has a floor over the room, with things on it
}

func (w *writer) length(m float64) string {
	if w.feet {
		m /= 0.3048
	}
	return fmt.Sprintf("%.4f", m)
}

func (w *writer) at(x, y, wide float64) string {
	if w.mirrored {
		x = -x - wide
	}
	return "[" + w.length(x) + ", " + w.length(y) + "]"
}

func (w *writer) place() string { return w.at(0.2+5.6*w.r.Float64(), 0.2+4.6*w.r.Float64(), 0) }

// somewhere is a place on either floor: upstairs off the box that stands at the wall there.
func (w *writer) somewhere() string {
	if !w.lofty || w.r.IntN(2) == 0 {
		return w.place()
	}
	x, y := 5.6*w.r.Float64()-2.8, 4.6*w.r.Float64()
	return "{from: u, shift: [" + w.length(x) + ", " + w.length(y) + "]}"
}

func (w *writer) aim() string {
	x := 6 * w.r.Float64()
	if w.mirrored {
		x = -x
	}
	return "[" + w.length(x) + ", " + w.length(5*w.r.Float64()) + ", " + w.length(2*w.r.Float64()) + "]"
}

func (w *writer) unit() string {
	all := []string{"led-tube-60", "led-panel-100", "soft-panel-200", "flex-mat-60x60", "lantern-100"}
	return all[w.r.IntN(len(all))]
}

func (w *writer) mount() string {
	switch w.r.IntN(6) {
	case 0:
		return fmt.Sprintf(", mount: {boom: %s}", w.length(0.8+1.5*w.r.Float64()))
	case 1:
		return fmt.Sprintf(", mount: {lift: %s}", w.length(2))
	case 2:
		return ", mount: hand"
	case 3:
		return ", mount: {clamp: f0}"
	}
	return ""
}
