package sheet

import (
	"strings"
	"testing"

	"scrimshaw/render/carto"
	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// TestStripsAreReadOnAPhone: in a picture 1080 pixels wide no capital is lower than 22 pixels, which
// a phone of three pixels to the point shows as one of 10 point type.
func TestStripsAreReadOnAPhone(t *testing.T) {
	f := family(t)
	for _, name := range samples.Names() {
		doc := Strips(sampleInputs(t, name), Options{Font: f}, 2)
		for i := range doc.Pages {
			p := &doc.Pages[i]
			if p.Width != StripWide {
				t.Errorf("%s is %.1f mm wide, want %.1f", p.Title, p.Width, StripWide)
			}
			texts := letteringOf(p, f)
			for j, a := range texts {
				if px := f.CapHeight(sizeOf(p, a.s)) * 1032 / StripWide; px < 22 {
					t.Errorf("%s: the capitals of %q are %.1f pixels high", p.Title, a.s, px)
				}
				if !allIn(a.box, box(0, 0, p.Width, p.Height)) {
					t.Errorf("%s: %q leaves the strip", p.Title, a.s)
				}
				for _, b := range texts[j+1:] {
					if carto.Overlap(shrunk(a.box), shrunk(b.box)) {
						t.Errorf("%s: %q meets %q", p.Title, a.s, b.s)
					}
				}
			}
		}
	}
}

// TestStripsSayTheKeyLines: each set-up's lights, and what the meter says at each face.
func TestStripsSayTheKeyLines(t *testing.T) {
	f := family(t)
	for _, name := range samples.Names() {
		ins := sampleInputs(t, name)
		doc := Strips(ins, Options{Font: f}, 4)
		if len(doc.Pages) != len(ins)+1 {
			t.Fatalf("%s: %d strips of %d set-ups", name, len(doc.Pages), len(ins))
		}
		if said := texts(&doc.Pages[0]); !strings.Contains(strings.ReplaceAll(said, "\n", " "), doc.Title) {
			t.Errorf("%s: the head is without the title: %s", name, said)
		}
		for i, in := range ins {
			c := newComposer(in, Options{Font: f}, &faults{})
			page := &doc.Pages[i+1]
			for _, e := range c.lights().tables[0].entries {
				for _, cell := range e.cells[2:] {
					if !has(page, cell) {
						t.Errorf("%s: light %s is without its %q", page.Title, e.cells[0], cell)
					}
				}
			}
			for j := range in.Faces {
				for _, e := range c.faceRows(&in.Faces[j]) {
					for _, cell := range e.cells {
						if cell != "" && !has(page, cell) {
							t.Errorf("%s: %s is without %q", page.Title, in.Faces[j].Person, cell)
						}
					}
				}
			}
		}
	}
}

// TestStripsWithNothing: no set-up, no typeface, a word that is no theme.
func TestStripsWithNothing(t *testing.T) {
	f := family(t)
	for name, doc := range map[string]ink.Document{
		"no set-ups":  Strips(nil, Options{Font: f}, 0),
		"no typeface": Strips([]Input{example()}, Options{}, 1),
		"no theme":    Strips([]Input{example()}, Options{Font: f, Theme: "nacht"}, 1),
	} {
		if len(doc.Pages) != 0 {
			t.Errorf("%s: %d pages", name, len(doc.Pages))
		}
	}
}

// TestCautionsAreSaidOnceInARun where the set-ups have the same.
func TestCautionsAreSaidOnceInARun(t *testing.T) {
	doc := Strips([]Input{example(), example()}, Options{Font: family(t)}, 2)
	if !has(&doc.Pages[1], "Local codes and licensed practice come first.") || !has(&doc.Pages[2], "As for the set-up before.") {
		t.Errorf("%s\n\n%s", texts(&doc.Pages[1]), texts(&doc.Pages[2]))
	}
}
