package teach_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/teach"
	"scrimshaw/samples"
)

// Of kinds of scenes, in profile, over somebody's shoulder, back to back, seated and lying, a mirrored one mirrors the words.
func TestMirroredWordsOfKinds(t *testing.T) {
	for name, people := range map[string]func(side float64) string{
		"in profile": func(s float64) string { return fmt.Sprintf("ada: {at: [%g, 0], faces: %g}", 0.2*s, 85*s) },
		"over the shoulder": func(s float64) string {
			return fmt.Sprintf("ada: {at: [%g, 0], faces: bo}, bo: {at: [%g, 1.6], faces: ada}", 0.2*s, 0.6*s)
		},
		"back to back": func(s float64) string {
			return fmt.Sprintf("ada: {at: [%g, 0], faces: 0}, bo: {at: [%g, -0.6], faces: 180}", 0.2*s, 0.2*s)
		},
		"seated": func(s float64) string {
			return fmt.Sprintf("ada: {at: [%g, 0], faces: %g, pose: seated}", 0.2*s, -30*s)
		},
		"lying": func(s float64) string {
			return fmt.Sprintf("ada: {at: [%g, 0], faces: %g, pose: lying}", 0.2*s, 40*s)
		},
	} {
		says := func(side float64) string {
			text := mirroredScene(side)
			from, to := strings.Index(text, "people: {")+len("people: {"), strings.Index(text, "},\n\t\tcameras")
			return said(lesson(t, text[:from]+people(side)+text[to:]))
		}
		a, b := says(1), says(-1)
		if want := swapped.Replace(a); b != want || !strings.Contains(a, "key:") {
			t.Errorf("%s mirrored says\n%s\nwant\n%s", name, b, want)
		}
	}
}

// lessonWithout is the lesson of the first set-up of a sample with one light off; "": with all.
func lessonWithout(t *testing.T, document *scene.Document, off string) (*meter.Lesson, *plan.Setup) {
	t.Helper()
	name := ""
	if len(document.Setups) > 0 {
		name = document.Setups[0]
	}
	log := &source.Log{}
	s := resolve.ResolveAll(document, []string{name}, log)[0]
	for i := range s.Lights {
		if l := &s.Lights[i]; l.Name == off {
			l.Level, l.RelativeOutput = 0, colour.RGB{}
		}
	}
	lit, err := study.Run(context.Background(), s, study.Options{ReadingsOnly: true, Around: true, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	if err := teach.Add(context.Background(), lit, teach.Pair{}); err != nil {
		t.Fatal(err)
	}
	return lit.Readings.Lesson, s
}

// In samples of kinds all numbers of the sentences are figures, and with the light off that the sentence on the key names that sentence is another.
func TestSamplesSwitchedOff(t *testing.T) {
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	taught := 0
	for _, name := range []string{"ferry-office", "napkin", "night-log"} {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: name, Text: []byte(text)}, &source.Log{})
		whole, s := lessonWithout(t, document, "")
		holdsFigures(t, name, whole)
		if len(whole.Lights) == 0 || sentence(whole, "key") == "" {
			continue
		}
		taught++
		key := s.LightNamed(whole.Lights[0].Light)
		less, _ := lessonWithout(t, document, key.Name)
		for _, about := range []string{"key", "sides"} {
			if was, is := sentence(whole, about), sentence(less, about); was != "" && was == is && strings.Contains(was, key.Numbered()) {
				t.Errorf("%s: with %s off it still says %q", name, key.Numbered(), is)
			}
		}
	}
	if taught < 2 {
		t.Errorf("%d samples teach a key", taught)
	}
}
