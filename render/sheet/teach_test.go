package sheet

import (
	"context"
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
	"scrimshaw/plan/teach"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// taught are the set-ups of a scene, each with a lesson, at draft.
func taught(t *testing.T, text string) (all []Input) {
	t.Helper()
	setups, log := fixture.SetupsOf(t, text)
	if log.Failed() {
		t.Fatal(log.All())
	}
	for _, s := range setups {
		lit, err := study.Run(context.Background(), s, study.Options{ReadingsOnly: true, Around: true, Quality: light.Draft})
		if err != nil {
			t.Fatal(err)
		}
		if err := teach.Add(context.Background(), lit, teach.Pair{}); err != nil {
			t.Fatal(err)
		}
		all = append(all, Of(lit, Options{Notes: notesTeach}))
	}
	return all
}

// teachPagesOf are the pages to learn from of a run.
func teachPagesOf(t *testing.T, ins []Input, o Options) (pages []ink.Page) {
	t.Helper()
	o.Font, o.Notes = fixture.Family(t), notesTeach
	doc, found := Compose(ins, o)
	for _, d := range found {
		if d.Severity == 0 || d.Code == "nothing-to-teach" {
			t.Log(d)
		}
	}
	for _, p := range doc.Pages {
		if strings.HasSuffix(p.Name, ".teach") {
			pages = append(pages, p)
		}
	}
	return pages
}

// randomHead is a scene of one head with some lights about it, some behind each other.
func randomHead(seed int64) string {
	rng := rand.New(rand.NewSource(seed))
	outputs := []string{"{candela: 900, shape: uniform}", "{luminance: 3000, face: [0.9, 0.6]}", "{lumens: 2000, disc: 0.7}", "{lumens: 2000, tube: 1.2}", "{lumens: 2000, sphere: 0.6}"}
	var lights []string
	for i := range 1 + rng.Intn(6) {
		lights = append(lights, fmt.Sprintf("l%d: {output: %s, at: [%.2f, %.2f], height: %.2f, aim: ada}", i+1, outputs[rng.Intn(len(outputs))],
			8*rng.Float64()-4, 8*rng.Float64()-4, 0.3+3*rng.Float64()))
	}
	poses := []string{"standing", "seated", "propped", "lying", "crouching"}
	camera := fmt.Sprintf("cameras: {A: {at: [%.2f, %.2f], height: %.2f, lens: 50 mm, looks: ada}},", 4*rng.Float64()-2, 1+3*rng.Float64(), 0.5+2*rng.Float64())
	if seed%5 == 0 {
		camera = ""
	}
	return fmt.Sprintf("{scrimshaw: 1, people: {ada: {at: [0, 0], faces: %d, pose: %s}}, %s lights: {%s}}", 20*rng.Intn(5)-40, poses[rng.Intn(len(poses))], camera, strings.Join(lights, ", "))
}

// On the page to learn from no lettering meets other lettering, a ray or an arc, none is too small, nothing leaves the frame, and
// every light of the lesson that has a place has its number; on any paper, about heads of every pose.
func TestTeachPageKeepsApart(t *testing.T) {
	papers := []string{"A4", "letter", "A3", "A2"}
	lost := 0
	for seed := range int64(20) {
		ins := taught(t, randomHead(seed))
		if ins[0].Lesson.Missing != "" {
			continue
		}
		pages := teachPagesOf(t, ins, Options{Paper: papers[seed%4], Theme: []string{"day", "ink"}[seed%3%2]})
		if len(pages) != 1 {
			t.Fatalf("seed %d: %d pages", seed, len(pages))
		}
		checkPage(t, &pages[0], fixture.Family(t))
		lost += checkRays(t, seed, &pages[0], &ins[0])
	}
	if lost > 0 {
		t.Errorf("%d tags of lights have no place", lost)
	}
}

// checkRays holds the lettering of a page off its rays, and counts the lights that have no tag.
func checkRays(t *testing.T, seed int64, p *ink.Page, in *Input) (lost int) {
	t.Helper()
	texts := letteringOf(p, fixture.Family(t))
	for i := range p.Items {
		it := &p.Items[i]
		if it.Layer != ink.Beams || len(it.Path) != 2 {
			continue
		}
		ray := []carto.Obstacle{{Outline: ink.Path(it.Path).Points(0.01)}}
		for _, a := range texts {
			if carto.Overlap(shrunk(a.box), ray[0].Outline) {
				t.Errorf("seed %d: %q lies on a ray", seed, a.s)
			}
		}
	}
	for i := range in.Lesson.Lights {
		l := &in.Lesson.Lights[i]
		if l.At != nil && !slices.ContainsFunc(texts, func(a lettering) bool { return a.object == "light:"+l.Light && a.s == l.Tag }) {
			lost++
		}
	}
	return lost
}

// The sentences stand whole on their page, in the text, and on the page for a phone; where there is nothing to teach the list says
// why, and there is no page.
func TestTeachSentencesStandEverywhere(t *testing.T) {
	o := Options{Font: fixture.Family(t), Notes: notesTeach}
	ins := taught(t, randomHead(1))
	page := teachPagesOf(t, ins, o)[0]
	var set []string
	for _, a := range letteringOf(&page, o.Font) {
		set = append(set, a.s)
	}
	columns := Columns(ins, o)
	var cards []string
	for _, s := range columns[0].Sections {
		cards = append(cards, s.Points...)
	}
	for _, sentence := range section.LessonWords(ins[0].Lesson) {
		if !strings.Contains(strings.Join(set, " "), sentence) {
			t.Errorf("the page does not say %q", sentence)
		}
		if !strings.Contains(Text(o, ins...), sentence) {
			t.Errorf("the text does not say %q", sentence)
		}
		if !slices.Contains(cards, sentence) {
			t.Errorf("the page for a phone does not say %q", sentence)
		}
	}
	plain := o
	plain.Notes = ""
	if text := Text(plain, Input{Setup: ins[0].Setup, Readings: ins[0].Readings, Faces: ins[0].Faces}); strings.Contains(text, "NOTES") {
		t.Error("nobody asked for notes, and the text has them")
	}
	empty := taught(t, "{scrimshaw: 1, lights: {key: {output: {candela: 900, shape: uniform}, at: [0, 0], height: 2}}}")
	if pages := teachPagesOf(t, empty, o); len(pages) != 0 || !strings.Contains(Text(o, empty...), "There is nothing to teach here: nobody is in the set-up") {
		t.Errorf("with nobody there are %d pages, and the text says\n%s", len(pages), Text(o, empty...))
	}
}

// What is written and not computed yet is named beside the sentences, on their page and in the text.
func TestTeachSaysWhatItIsWithout(t *testing.T) {
	ins := taught(t, "{scrimshaw: 1, haze: 0.02, people: {ada: {at: [0, 0], faces: 0}}, lights: {key: {output: {candela: 900, shape: uniform}, at: [1, 2], height: 2}}}")
	const want = "Every figure of the notes is without haze, which nothing computes yet."
	o := Options{Font: fixture.Family(t), Notes: notesTeach}
	var set []string
	page := teachPagesOf(t, ins, o)[0]
	for _, a := range letteringOf(&page, o.Font) {
		set = append(set, a.s)
	}
	if !strings.Contains(strings.Join(set, " "), want) || !strings.Contains(Text(o, ins...), want) {
		t.Errorf("the page says %q, and the text\n%s", set, Text(o, ins...))
	}
}

// Every set-up has its page after its lists, and the rest of the run stays as it is.
func TestTeachAddsAPage(t *testing.T) {
	text := "{scrimshaw: 1, people: {ada: {at: [0, 0], faces: 0}}, lights: {key: {output: {candela: 900, shape: uniform}, at: [1, 2], height: 2}}, " +
		"setups: {one: {}, two: {change: {lights: {key: {at: [-1, 2]}}}}}}"
	ins := taught(t, text)
	o := Options{Font: fixture.Family(t)}
	with := o
	with.Notes = notesTeach
	bare, _ := Compose(without(ins), o)
	doc, _ := Compose(ins, with)
	var names, rest []string
	for _, p := range doc.Pages {
		names = append(names, p.Name)
		if !strings.HasSuffix(p.Name, ".teach") {
			rest = append(rest, p.Name)
		}
	}
	var before []string
	for _, p := range bare.Pages {
		before = append(before, p.Name)
	}
	if !slices.Equal(rest, before) || !slices.Contains(names, "one.teach") || !slices.Contains(names, "two.teach") {
		t.Errorf("the pages are %q, and without notes %q", names, before)
	}
}

// without are inputs without their lessons.
func without(ins []Input) []Input {
	all := slices.Clone(ins)
	for i := range all {
		all[i].Lesson = nil
	}
	return all
}
