package sheet

import (
	"strings"
	"testing"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// TestStripsAreReadOnAPhone: in a picture 1080 pixels wide no capital is lower than 22 pixels, which
// a phone of three pixels to the point shows as one of 10 point type.
func TestStripsAreReadOnAPhone(t *testing.T) {
	f := fixture.Family(t)
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
				if !box.AllIn(a.box, box.Of(0, 0, p.Width, p.Height)) {
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
	f := fixture.Family(t)
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
			c := newSheet(in, Options{Font: f}, &faults{}).d
			page := &doc.Pages[i+1]
			for _, e := range sectionOf(t, c.Report, "Lights").Tables[0].Entries {
				for _, cell := range e.Cells[2:] {
					if !has(page, cell) {
						t.Errorf("%s: light %s is without its %q", page.Title, e.Cells[0], cell)
					}
				}
			}
			for _, table := range sectionOf(t, c.Report, "At the face").Tables {
				for _, e := range table.Entries {
					for _, cell := range e.Cells {
						if cell != "" && !has(page, cell) {
							t.Errorf("%s: %s is without %q", page.Title, table.Columns[0].Head, cell)
						}
					}
				}
			}
		}
	}
}

// TestStripsWithNothing: no set-up, no typeface, a word that is no theme.
func TestStripsWithNothing(t *testing.T) {
	f := fixture.Family(t)
	for name, doc := range map[string]ink.Document{
		"no set-ups":  Strips(nil, Options{Font: f}, 0),
		"no typeface": Strips([]Input{fixture.Example()}, Options{}, 1),
		"no theme":    Strips([]Input{fixture.Example()}, Options{Font: f, Theme: "nacht"}, 1),
	} {
		if len(doc.Pages) != 0 {
			t.Errorf("%s: %d pages", name, len(doc.Pages))
		}
	}
}

// TestCautionsAreSaidOnceInARun where the set-ups have the same.
func TestCautionsAreSaidOnceInARun(t *testing.T) {
	doc := Strips([]Input{fixture.Example(), fixture.Example()}, Options{Font: fixture.Family(t)}, 2)
	if !has(&doc.Pages[1], "Local codes and licensed practice come first.") || !has(&doc.Pages[2], "As for the set-up before.") {
		t.Errorf("%s\n\n%s", texts(&doc.Pages[1]), texts(&doc.Pages[2]))
	}
}

// corridor is a long low set with everybody at one spot: its plan has no room of its own for labels.
const corridor = `
scrimshaw: 1
title: The corridor
rooms: {corridor: {size: [9, 2], height: 2.6}, office: {at: [5, 2.15], size: [4, 3.2], height: 2.6}}
openings: {end: {window: corridor.left, along: centre, width: 1}}
furniture: {desk: {table: [1.4, 0.7, 0.74], at: [7, 4.2]}}
people:
  clerk:   {at: [4.2, 1.1], pose: seated, faces: visitor}
  visitor: {at: [6.0, 0.8], pose: seated, faces: clerk}
cameras:
  A: {at: [6.6, 1.4], height: 1.25, looks: clerk, lens: 50 mm}
  B: {at: [3.4, 0.4], height: 1.3, looks: visitor, lens: 65 mm}
lights:
  key:    {unit: led-point-300-bicolour, modifier: softbox-60, at: [5.1, 0.45], height: 1.9, level: 6 %}
  back:   {unit: led-tube-120, at: [2.6, 1.7], height: 2.3, aim: clerk, level: 20 %}
  other:  {unit: led-panel-100, at: [5.0, 1.8], height: 1.9, aim: visitor, level: 10 %}
  street: {unit: led-point-600-daylight, modifier: reflector-medium, at: {opening: end, out: 3.0}, height: 2.6, aim: clerk, level: 10 %}
  lamp:   {unit: practical-desk, at: {top: desk, shift: [0.4, 0]}, height: 1.1, aim: down}
  hair:   {unit: fresnel-tungsten-650, at: [8.4, 1.0], height: 2.2, aim: clerk, level: 50 %, mount: {boom: 1.0, base: [8.6, 1.7]}}
grip:
  neg: {flag: [1.2, 0.9], at: {by: clerk, toward: A, turn: 60 camera-left, distance: 0.8}, height: 1.2, faces: clerk}
`

// TestStripsLoseNoLabel: the panel grows until every name, tag and reading has its place. The numbers
// that stand on beams are not tags.
func TestStripsLoseNoLabel(t *testing.T) {
	f := fixture.Family(t)
	for _, in := range inputsOf(t, "corridor", []byte(corridor)) {
		doc := Strips([]Input{in}, Options{Font: f}, 1)
		said := map[string]int{}
		for _, a := range letteringOf(&doc.Pages[1], f) {
			if a.layer != ink.Collar && a.layer != ink.Beams {
				said[a.s]++
			}
		}
		for _, name := range []string{"clerk", "visitor", "1", "2", "3", "4", "5", "6", "A", "B", "G1"} {
			if said[name] != 1 {
				t.Errorf("%q stands %d times on the plan of the strip", name, said[name])
			}
		}
		sides := map[string]int{}
		for s := range said {
			for _, side := range []string{" key", " fill"} {
				if strings.HasPrefix(s, "T") && (strings.HasSuffix(s, side) || strings.Contains(s, side+",")) {
					sides[side] += said[s]
				}
			}
		}
		if sides[" fill"] != 2 || sides[" key"] < 2 {
			t.Errorf("the plan of the strip says %v", said)
		}
	}
}
