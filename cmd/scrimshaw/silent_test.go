package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"scrimshaw/plan/meter"
)

// ground is a scene that every key of the language can be written into.
func ground() *flow {
	return flowOf("scrimshaw", "1",
		"rooms", flowOf("kitchen", flowOf("size", "[5, 4]")),
		"openings", flowOf("street", flowOf("window", "kitchen.left", "width", "1.2")),
		"furniture", flowOf("desk", flowOf("box", "[0.8, 0.6, 0.75]", "at", "[3.9, 1.9]")),
		"people", flowOf("ruth", flowOf("at", "[1.2, 2.0]", "faces", "A")),
		"cameras", flowOf("A", flowOf("at", "[3.3, 0.5]", "lens", "50 mm", "looks", "ruth")),
		"lights", flowOf("day", flowOf("unit", "led-point-300-bicolour", "at", "[4.2, 3.2]", "height", "2.2", "aim", "ruth", "level", "30 %")),
		"grip", flowOf("black", flowOf("flag", "[0.6, 0.6]", "at", "[2.6, 2.4]", "height", "1.8")),
		"meters", flowOf("top", flowOf("flat", "[2.9, 2.5, 0.76]", "facing", "up")))
}

// cast adds what the examples of the language name.
func cast(f *flow) {
	for i, name := range []string{"ada", "noor", "ines"} {
		f.at("people").put(name, flowOf("at", "["+[]string{"1.8", "2.5", "3.2"}[i]+", 3.4]"))
	}
	f.at("lights").put("lamp", flowOf("output", "{lumens: 470, shape: uniform}", "at", "{top: desk}", "level", "20 %"))
	f.at("lights").put("moon", flowOf("unit", "led-point-300-bicolour", "at", "{opening: street, out: 2}", "level", "20 %"))
}

// things are what the keys of a section are written on.
var things = map[string]string{"rooms": "kitchen", "openings": "street", "furniture": "desk", "people": "ruth", "cameras": "A",
	"lights": "day", "grip": "black", "meters": "top", "setups": "wide", "materials": "limewash", "circuits": "ring", "cues": "q2"}

// place is the path of a key in a scene.
func (w *written) place() []string {
	path := slices.Clone(w.path)
	for i, key := range path {
		if key == "*" {
			path[i] = cmp.Or(things[path[i-1]], things[path[0]])
		}
	}
	return path
}

// into writes a key into a scene, in place of the other forms of what it is on.
func (w *written) into(f *flow) {
	path := w.place()
	on, key := f.at(path[:len(path)-1]...), path[len(path)-1]
	if slices.Contains(w.forms, key) {
		on.drop(w.forms...)
	}
	switch w.name() {
	case "furniture.*.mirror":
		on.put("at", "{wall: kitchen.top}")
	case "setups.*.reverse":
		f.at("setups", "close").put("camera", "A")
	}
	on.put(key, w.example)
}

// without is the text of a scene whose figures are those that it has with the key while nothing computes it.
func (w *written) without(f *flow) string {
	switch black := f.at("grip", "black"); w.name() {
	case "grip.*.frame", "grip.*.net": // they stop no light
		defer f.put("grip", f.values["grip"])
		f.drop("grip")
	case "people.*.skin": // its light is counted, and its reading is not made
		w.into(f)
	case "grip.*.silver": // it is a card
		black.drop("flag")
		black.put("card", w.example)
		black.put("surface", "silver")
		defer black.drop("card", "surface")
		return f.text()
	case "furniture.*.mirror": // it is a board
		desk := f.at("furniture", "desk")
		desk.put("box", strings.Replace(w.example, ",", ", 0.03,", 1))
		desk.put("at", "{wall: kitchen.top}")
	}
	return f.text()
}

// ran is what a command said of a scene, and the files that it wrote.
type ran struct {
	status   int
	out, err string
	files    map[string]string
}

// runs are those that have been made: most keys are held to what is said of the same scene without them.
var runs sync.Map // of func() ran, by what is run on which text

// runOn runs a command in process on the text of a scene, or returns what it said when it ran before.
func runOn(t *testing.T, text string, args []string, outputs ...string) ran {
	t.Helper()
	key := strings.Join(slices.Concat(args, outputs, []string{text}), "\n")
	once, _ := runs.LoadOrStore(key, sync.OnceValue(func() ran { return runAnew(t, text, args, outputs...) }))
	return once.(func() ran)()
}

// runAnew runs a command in process on the text of a scene, which stands as scene.yaml in a folder of its own.
func runAnew(t *testing.T, text string, args []string, outputs ...string) ran {
	t.Helper()
	dir := t.TempDir()
	path := filepath.Join(dir, "scene.yaml")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	args = append(append([]string{}, args...), path, "--faults", "line", "--quality", "draft")
	for _, name := range outputs {
		args = append(args, "-o", filepath.Join(dir, name))
	}
	var out, said bytes.Buffer
	r := ran{files: map[string]string{}}
	r.status = run(t.Context(), args, streams{in: strings.NewReader(""), out: &out, err: &said})
	r.out, r.err = out.String(), strings.ReplaceAll(said.String(), filepath.ToSlash(path), "scene.yaml")
	for _, name := range outputs {
		if data, err := os.ReadFile(filepath.Join(dir, name)); err == nil {
			r.files[name] = string(data)
		}
	}
	return r
}

// metered are the readings of one set-up as scripts get them.
type metered struct {
	Setup    *string
	Readings []struct {
		Name       string
		Lux, Over  *float64
		Luminance  *float64
		XY         []float64
		Uncomputed []struct{ Key, Waits, Changes string }
	}
}

func meteredOf(t *testing.T, text string) []metered {
	t.Helper()
	r := runOn(t, text, []string{"meter", "--json"})
	var sets []metered
	if err := json.Unmarshal([]byte(r.out), &sets); err != nil {
		t.Fatalf("%v: %s%s", err, r.out, r.err)
	}
	return sets
}

// alarmLine is a line in the accent colour, with which figures are struck through.
var alarmLine = regexp.MustCompile(`<path [^>]*stroke="#b21452"`)

// TestNoUncomputedKeyIsSilent writes every key that is not computed yet into a scene, by its example. Draw and meter
// warn of it at its place; the sheet names it with what it waits for. Where the warning says that figures are struck,
// the readings list the key and the sheet has the lines; where it does not, no figure is struck. The numbers are those
// of the scene without the key: one that changes them is computed, and is no more to be listed.
func TestNoUncomputedKeyIsSilent(t *testing.T) {
	n := 0
	for _, w := range language(t) {
		if w.waits == "" {
			continue
		}
		n++
		t.Run(w.name(), func(t *testing.T) {
			t.Parallel()
			f := ground()
			cast(f)
			if w.path[0] == "setups" {
				f.at("setups", "wide").put("camera", "A")
			}
			if w.name() == "site.when" { // without a latitude no sun is asked for, and no figure struck
				f.at("site").put("latitude", "59.9")
			}
			bare := w.without(f)
			w.into(f)
			w.check(t, f.text(), bare)
		})
	}
	if n < 10 {
		t.Errorf("only %d keys are not computed yet: are they all listed?", n)
	}
}

// check holds a scene with the key to what is promised of it.
func (w *written) check(t *testing.T, text, bare string) {
	drawn := runOn(t, text, []string{"draw"}, "a.txt", "a.svg")
	warning := w.warning(t, text)
	sets := meteredOf(t, text)
	reading, changes := w.firstOf(sets)
	explained := runOn(t, text, []string{"explain", reading})
	for name, said := range map[string]string{"draw": drawn.err, "meter": runOn(t, text, []string{"meter"}).err, "review": runOn(t, text, []string{"review"}).err, "explain": explained.err} {
		if strings.Count(said, warning) != 1 {
			t.Errorf("%s does not say once %q, but\n%s", name, warning, said)
		}
	}
	checkExplained(t, explained.out, changes)
	if w.name() == "setups.*.reverse" {
		if strings.Contains(drawn.files["a.txt"], "Set-up wide") || len(sets) != 1 || *sets[0].Setup != "close" {
			t.Errorf("the reverse is drawn or metered as though it were one")
		}
		return
	}
	w.checkSheet(t, drawn.files["a.txt"])
	struck := strings.Contains(drawn.err, warning+" (fix: until it is, the figures leave it out, and each figure that it could change is struck through)")
	if got := strings.Contains(drawn.files["a.txt"], meter.UncomputedMark); got != struck {
		t.Errorf("the warning says that figures are struck: %v; and marked in the text: %v", struck, got)
	}
	if got := alarmLine.MatchString(drawn.files["a.svg"]); got != struck {
		t.Errorf("the warning says that figures are struck: %v; and have lines on the sheet: %v", struck, got)
	}
	of := w.readings(sets)
	if (of > 0) != struck {
		t.Errorf("the warning says that figures are struck: %v; and %d readings list the key", struck, of)
	}
	if !sameFigures(sets, meteredOf(t, bare)) {
		t.Error("the figures are others than without the key: it is computed")
	}
}

// anyReading is one that the ground has whatever is written into it.
const anyReading = "top"

// firstOf is the first reading that lists the key, and what of it the key could change; changes is "" where none does.
func (w *written) firstOf(sets []metered) (name, changes string) {
	path := strings.Join(w.place(), ".")
	for _, set := range sets {
		for _, r := range set.Readings {
			for _, u := range r.Uncomputed {
				if u.Key == path {
					return r.Name, u.Changes
				}
			}
		}
	}
	return anyReading, ""
}

// The figures of an explanation that stand for its light, and that stand for its stops. An equation may go on below its line.
var (
	lightFigures = regexp.MustCompile(`(?m)meter, .*(lx|cd/m²)|^  (all lights|this light).* = .*(\n {20,}= .*)*`)
	stopFigures  = regexp.MustCompile(`(?m)(lx|cd/m²), .*$|^  (over [a-z]+|stop that) .*(\n {20,}= .*)*`)
)

// checkExplained fails unless an explanation marks the figures of light that a key could change, those of stops, or none.
func checkExplained(t *testing.T, text, changes string) {
	t.Helper()
	for _, c := range []struct {
		figures *regexp.Regexp
		struck  bool
	}{{lightFigures, changes == "light"}, {stopFigures, changes != ""}} {
		found := c.figures.FindAllString(text, -1)
		if len(found) == 0 {
			t.Errorf("no figures are read in\n%s", text)
		}
		for _, line := range found {
			if value := line[strings.LastIndex(line, " = ")+1:]; strings.Contains(value, meter.UncomputedMark) != c.struck {
				t.Errorf("a key that could change %q leaves explain saying %q", changes, line)
			}
		}
	}
}

// warning is what the program says of a key, at its place in the text.
func (w *written) warning(t *testing.T, text string) string {
	t.Helper()
	key := w.path[len(w.path)-1]
	at := strings.Index(text, key+": "+w.example)
	if at < 0 {
		t.Fatalf("%s is not written in\n%s", key, text)
	}
	line := strings.Count(text[:at], "\n") + 1
	col := at - strings.LastIndexByte(text[:at], '\n')
	return fmt.Sprintf("scene.yaml:%d:%d: warning: %q is read but not computed yet: %s [not-computed-yet]", line, col, key, w.waits)
}

// checkSheet holds the list of what is not computed to the key and what it waits for.
func (w *written) checkSheet(t *testing.T, text string) {
	_, list, _ := strings.Cut(text, "\nNOT COMPUTED\n")
	list, _, _ = strings.Cut(list, "\n\n")
	words := w.path[len(w.path)-1]
	if w.name() == "site.when" {
		words = "sun and sky"
	}
	for line := range strings.SplitSeq(list, "\n") {
		if strings.Contains(strings.ToLower(line), words) && strings.Contains(line, w.waits) {
			return
		}
	}
	t.Errorf("the sheet does not name %s, which waits for %s:\n%s", words, w.waits, list)
}

// readings counts those that list the key.
func (w *written) readings(sets []metered) (n int) {
	path := strings.Join(w.place(), ".")
	for _, set := range sets {
		for _, r := range set.Readings {
			for _, u := range r.Uncomputed {
				if u.Key == path && u.Waits == w.waits && (u.Changes == "light" || u.Changes == "stops") {
					n++
				}
			}
		}
	}
	return n
}

// sameFigures says whether two runs read the same.
func sameFigures(a, b []metered) bool {
	figures := func(sets []metered) map[string][]float64 {
		all := map[string][]float64{}
		for i, set := range sets {
			for _, r := range set.Readings {
				name := fmt.Sprint(i, r.Name)
				all[name] = append(all[name], r.XY...)
				for _, v := range []*float64{r.Lux, r.Over, r.Luminance} {
					if v != nil {
						all[name] = append(all[name], *v)
					}
				}
			}
		}
		return all
	}
	return maps.EqualFunc(figures(a), figures(b), func(x, y []float64) bool { return slices.Equal(x, y) })
}
