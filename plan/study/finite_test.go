package study_test

import (
	"context"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"scrimshaw/plan/internal/truth/scenes"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// numberless finds the first place under a value, by its exported fields, that is no number, or is endless.
func numberless(v reflect.Value, path string, met map[uintptr]bool) string {
	switch v.Kind() {
	case reflect.Float32, reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return fmt.Sprintf("%s is %g", path, f)
		}
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() || v.Kind() == reflect.Pointer && met[v.Pointer()] {
			return ""
		}
		if v.Kind() == reflect.Pointer {
			met[v.Pointer()] = true
		}
		return numberless(v.Elem(), path, met)
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if bad := numberless(v.Index(i), fmt.Sprintf("%s[%d]", path, i), met); bad != "" {
				return bad
			}
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			if bad := numberless(v.MapIndex(key), fmt.Sprintf("%s[%v]", path, key), met); bad != "" {
				return bad
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() {
				if bad := numberless(v.Field(i), path+"."+field.Name, met); bad != "" {
					return bad
				}
			}
		}
	}
	return ""
}

func holdFinite(t *testing.T, name string, lit *study.Study) {
	t.Helper()
	if bad := numberless(reflect.ValueOf(lit), "study", map[uintptr]bool{}); bad != "" {
		t.Errorf("%s: %s", name, bad)
	}
}

// No result of a study is infinite or no number, in random scenes of every kind.
func TestResultsAreNumbers(t *testing.T) {
	for _, kind := range scenes.Kinds {
		for seed := range 5 {
			text, s, err := scenes.Make(kind, seed)
			if err != nil {
				t.Fatal(err)
			}
			holdFinite(t, text, run(t, s, study.Options{Quality: light.Draft, Step: 0.2, Around: seed == 0}))
		}
	}
}

// hostileRoom is a room with a face in it, before a lamp, and LAMP and MORE where a case has its own.
const hostileRoom = "scrimshaw: 1\nrooms: {a: {size: [4, 3], walls: w, ceiling: w, floor: w}}\nmaterials: {w: {reflectance: 0.98}}\n" +
	"people: {ada: {at: [1, 1]}}\ncameras: {A: {at: [3, 2], lens: 32 mm}}\nmeters: {m: {flat: [2, 1.5, 1], facing: up}}\nlights: {l: {LAMP}}\nMORE\n"

// Nor in scenes that go to the ends of what the language allows.
func TestResultsOfHostileScenesAreNumbers(t *testing.T) {
	for _, c := range []struct{ lamp, more string }{
		{"output: {candela: 1e10, shape: uniform}, at: [2, 1], height: 1.5", "exposure: {constant: 1, iso: 1e7, fps: 0.01, shutter: 100 s, stop: T0.5}"},
		{"output: {candela: 0.001, shape: cosine}, at: [2, 1], height: 1.5", "exposure: {constant: 2000, iso: 1, fps: 100000, shutter: 1, stop: T64}"},
		{"output: {lux: 1e8, distance: 1000, beam: 0.5}, at: [2, 1], height: 1.5", ""},
		{"output: {luminance: 1e10, face: [50, 50]}, at: [2, 1], height: 1.5", ""},
		{"output: {lumens: 1e8, face: [0.005, 0.005]}, at: [2, 1.5], height: 1, aim: up", ""}, // the meter lies in its face
		{"output: {lumens: 1e8, disc: 0.005}, at: [2, 1.5], height: 1, aim: down", ""},
		{"output: {lumens: 1e8, tube: 50}, at: [2, 1.5], height: 1, aim: up", ""},
		{"output: {luminance: 1e10, sphere: 0.005}, at: [2, 1.5], height: 1", ""},
		{"output: {lumens: 1e8, shape: uniform}, at: [2, 1.5], height: 1, aim: up", ""},
		{"output: {lumens: 1e8, beam: 0.5, field: 300}, at: [2, 1.5], height: 1.001, aim: down", ""},
		{"output: {lumens: 1e8, shape: uniform}, at: [1.0894427190999916, 1.0447213595499958], height: 1.59, aim: up", ""}, // at the face
		{"output: {lumens: 1e8, shape: uniform}, at: [0, 0], height: 0", ""},                                               // in the corner
		{"output: {lumens: 1e8, shape: uniform}, at: [2, 1], level: 0.1 %", ""},
		{"output: {lumens: 1e8, shape: uniform}, at: [2, 1], level: 0 %", ""},
		{"output: {lumens: 1e8, shape: uniform}, at: [1e4, 1e4], height: 100", ""},
		{"unit: led-point-600-bicolour, at: [2, 1], height: 2", "furniture: {f: {box: [0.001, 0.001, 100], at: [1.5, 1]}, g: {cylinder: [0.001, 0.001], at: [1.6, 1]}}"},
		{"unit: led-point-600-bicolour, at: [2, 1], height: 2", "grip: {c: {card: [0.005, 50], at: [1.1, 1.1], height: 1.5}}"},
	} {
		text := strings.NewReplacer("LAMP", c.lamp, "MORE", c.more).Replace(hostileRoom)
		shipped, err := kit.Shipped()
		if err != nil {
			t.Fatal(err)
		}
		log := &source.Log{}
		document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
		s := resolve.Resolve(document, document.Base(log), log)
		if log.Failed() {
			t.Errorf("%s %+v", text, log.All())
			continue
		}
		lit, err := study.Run(context.Background(), s, study.Options{Quality: light.Draft, Step: 0.1, Around: true})
		if err != nil {
			t.Fatalf("%s%v", text, err)
		}
		holdFinite(t, text, lit)
	}
}
