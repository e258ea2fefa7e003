package draw

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// vocabulary is a list of words of the language, what is drawn for one, and the symbol that has to be on the plan.
type vocabulary struct {
	name  string
	words []string
	set   func(in *section.Input, word string)
	key   string   // before the word, in the catalogue of symbols
	bare  []string // words that take no ground and have no symbol
}

// vocabularies are those whose words stand for something that a plan shows.
func vocabularies(t *testing.T) []vocabulary {
	held := func(in *section.Input, word string) { in.Setup.Lights = []plan.Light{mounted(word)} }
	return []vocabulary{
		{"mount", offered(t, "$defs", "mount"), held, "mount:", nil},
		{"pose", offered(t, "properties", "people", "additionalProperties", "properties", "pose"), func(in *section.Input, word string) {
			in.Setup.People = []plan.Person{{Name: "ada", Pose: term.Pose(word), Height: 1.7}}
		}, "person:", nil},
		{"opening", offered(t, "properties", "openings", "additionalProperties"), func(in *section.Input, word string) {
			in.Setup.Openings = []plan.Opening{{Name: "o", Kind: term.Opening(word), Right: r2.Vec{X: 1}, Outward: r2.Vec{Y: 1}, Depth: 0.2}}
		}, "opening:", nil},
		{"grip", offered(t, "properties", "grip", "additionalProperties"), func(in *section.Input, word string) {
			in.Setup.Grip = []plan.Grip{{Name: "g", Tag: "G1", Kind: term.Grip(word), Size: [2]float64{1, 1}, Frame: level()}}
		}, "grip:", nil},
		{"furniture", offered(t, "properties", "furniture", "additionalProperties"), func(in *section.Input, word string) {
			in.Setup.Furniture = []plan.Furniture{{Name: "f", Kind: term.Furniture(word), Size: [3]float64{1, 1, 1}, Z1: 1}}
		}, "furniture:", nil},
		{"meter", offered(t, "properties", "meters", "additionalProperties"), func(in *section.Input, word string) {
			in.Readings = []meter.Reading{{Name: "m", Kind: term.Meter(word)}}
		}, "reading:", nil},
		{"class of lamp", classes(), func(in *section.Input, word string) {
			l := mounted("stand")
			l.Head.Class, l.Head.ModifierLabel = term.Class(word), "shade"
			in.Setup.Lights = []plan.Light{l}
		}, "light:", nil},
	}
}

// classes are those of the heads in the catalogue of kit.
func classes() (all []string) {
	for _, c := range []term.Class{term.Bare, term.Lensed, term.Projected, term.Boxed, term.Linear, term.Panel, term.Lantern, term.Practical} {
		all = append(all, string(c))
	}
	return all
}

// offered is what the language offers at a place of its schema: the words themselves, and the keys of which one has
// to be given, but for the place.
func offered(t *testing.T, path ...string) (all []string) {
	t.Helper()
	var at any = scene.Schema()
	for _, key := range path {
		m, _ := at.(map[string]any)
		if at = m[key]; at == nil {
			t.Fatalf("the schema has no %s", strings.Join(path, "."))
		}
	}
	var take func(node any)
	take = func(node any) {
		switch n := node.(type) {
		case map[string]any:
			for _, list := range []string{"enum", "required"} {
				for _, w := range listOf(n[list]) {
					if s := fmt.Sprint(w); s != "at" && !slices.Contains(all, s) {
						all = append(all, s)
					}
				}
			}
			take(n["oneOf"])
			take(n["anyOf"])
		case []any:
			for _, one := range n {
				take(one)
			}
		case []map[string]any:
			for _, one := range n {
				take(one)
			}
		}
	}
	take(at)
	if len(all) < 2 {
		t.Fatalf("the schema offers %q at %s", all, strings.Join(path, "."))
	}
	return all
}

// listOf is a list of the schema, whatever its elements are.
func listOf(v any) (all []any) {
	switch v := v.(type) {
	case []any:
		return v
	case []string:
		for _, s := range v {
			all = append(all, s)
		}
	}
	return all
}

// level is a frame that looks along the floor.
func level() plan.Frame { return plan.Frame{Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}} }

// mounted is a lamp on a mount.
func mounted(word string) plan.Light {
	return plan.Light{Name: "lamp", Tag: "1", Level: 1, Frame: level(), Head: kit.Head{Class: term.Lensed},
		Mount: plan.Mount{Kind: term.Mount(word), Foot: 1, PoleEnds: []r2.Vec{{X: -1}, {X: 1}}}}
}

// drawnPlan draws a set-up on a page and returns the symbols that it shows.
func drawnPlan(t *testing.T, in section.Input) (map[string]bool, *ink.Page) {
	t.Helper()
	c, page := kitchenDrawing(t, in), &ink.Page{Width: 200, Height: 200}
	v := layout.ViewOf(box.Of(-3, -3, 3, 3), box.Of(0, 0, 200, 200), 30)
	Plan{c}.Draw(c.Pad.With(page), v, nil)
	Collar{c}.ScaleBar(c.Pad.With(page), 0, 20, 50, "A3")
	Collar{c}.North(c.Pad.With(page), box.At(180, 20))
	shown := map[string]bool{}
	for key := range c.uses {
		shown[key] = true
	}
	return shown, page
}

// Every word of the language for something on the plan has a symbol, which the plan shows and the legend explains.
func TestWordsHaveSymbols(t *testing.T) {
	for _, v := range vocabularies(t) {
		for _, word := range v.words {
			in := section.Input{Setup: &plan.Setup{}}
			v.set(&in, word)
			shown, _ := drawnPlan(t, in)
			known := slices.ContainsFunc(symbols.Catalogue(), func(e symbols.Entry) bool { return e.Key == v.key+word })
			drawn := !slices.Contains(v.bare, word)
			if known != drawn || shown[v.key+word] != drawn {
				t.Errorf("the %s %q: catalogued %v, on the plan %v, want %v", v.name, word, known, shown[v.key+word], drawn)
			}
		}
	}
}

// Every symbol of the catalogue is drawn on some sheet.
func TestSymbolsAreDrawn(t *testing.T) {
	shown := map[string]bool{}
	take := func(in section.Input) {
		uses, page := drawnPlan(t, in)
		for key := range uses {
			shown[key] = true
		}
		for i := range page.Items {
			shown[page.Items[i].Object] = true // north and the scale bar have no sign
		}
	}
	for _, v := range vocabularies(t) {
		for _, word := range v.words {
			in := section.Input{Setup: &plan.Setup{}}
			v.set(&in, word)
			take(in)
		}
	}
	for _, class := range classes() {
		for _, form := range []photometry.Form{photometry.Point, photometry.Disc} {
			for _, z := range []float64{-1, 1} {
				l := mounted("stand")
				l.Head.Class, l.Frame.Axis, l.Head.Source.Opening.Form = term.Class(class), r3.Vec{Z: z}, form
				l.Head.ModifierLabel = "" // a bare bulb, where it is a practical
				take(section.Input{Setup: &plan.Setup{Lights: []plan.Light{l}}})
			}
		}
	}
	black := plan.Grip{Name: "g", Tag: "G1", Kind: term.Card, Size: [2]float64{1, 1}, Frame: level(), Surface: "black", Reflects: 0.03}
	take(section.Input{Setup: &plan.Setup{Grip: []plan.Grip{black}}})
	take(fixture.Example()) // throws and faces
	casement := plan.Opening{Kind: "window", Ajar: 40, Right: r2.Vec{X: 1}, Outward: r2.Vec{Y: 1}, Depth: 0.2, Escape: true}
	take(section.Input{Setup: &plan.Setup{Openings: []plan.Opening{casement}}})
	dressed := plan.Opening{Kind: "window", Right: r2.Vec{X: 1}, Outward: r2.Vec{Y: 1}, Depth: 0.2,
		Dressing: []plan.Dressing{{Cloth: "sheer", B: r2.Vec{X: 0.5}}, {Slat: 0.05, B: r2.Vec{X: 1}}}}
	take(section.Input{Setup: &plan.Setup{Openings: []plan.Opening{dressed}}})
	goes := section.Input{Setup: &plan.Setup{People: []plan.Person{{Name: "ada", Marks: []plan.Mark{{Name: "ada.sit"}}}}}}
	goes.Walks = []meter.Walk{fixture.Walk(&goes.Setup.People[0], []string{"A"}, func(int, int) float64 { return 1 }, r2.Vec{}, r2.Vec{X: 2})}
	take(goes)
	rolls := plan.Camera{Name: "A", Frame: level(), Track: &plan.Track{Corners: []r2.Vec{{}, {X: 2.5}}}}
	take(section.Input{Setup: &plan.Setup{Cameras: []plan.Camera{rolls}, Line: &plan.Line{Ends: [2]r2.Vec{{Y: 2}, {X: 2, Y: 2}}}}})
	take(section.Input{Setup: &plan.Setup{Circuits: []plan.Circuit{{Name: "ring", Breaker: 16, Outlet: &r2.Vec{}}}}})
	shown["light:off"] = darkIsOpen(t)
	for _, e := range symbols.Catalogue() {
		if !shown[e.Key] {
			t.Errorf("%s is in the catalogue, and no sheet draws it", e.Key)
		}
	}
}

// darkIsOpen says whether a lamp that is off has an edge without the colour that it has when it is on.
func darkIsOpen(t *testing.T) bool {
	t.Helper()
	fills := func(level float64) (n int) {
		l := mounted("stand")
		l.Level, l.Head.Class, l.Head.RGB = level, term.Boxed, colour.White{Kelvin: 3200}.RGB()
		_, page := drawnPlan(t, section.Input{Setup: &plan.Setup{Lights: []plan.Light{l}}})
		for i := range page.Items {
			if it := &page.Items[i]; it.Object == "light:lamp" && it.Layer == ink.Symbols && it.Fill != nil && it.Fill.R > it.Fill.B {
				n++
			}
		}
		return n
	}
	return fills(0) == 0 && fills(1) > 0
}
