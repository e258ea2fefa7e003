package sheet

import (
	"strings"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// TestColumnsForANarrowScreen: the drawing of the strip, with numbers, names and the key of its map; the lists beside it as data.
func TestColumnsForANarrowScreen(t *testing.T) {
	f := fixture.Family(t)
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		all := Columns([]Input{in}, Options{Font: f})
		if len(all) != 1 {
			t.Fatalf("%d columns", len(all))
		}
		c := &all[0]
		if c.Drawing.Width != StripWide {
			t.Errorf("the drawing is %v mm wide, want %v", c.Drawing.Width, StripWide)
		}
		named := 0
		for i := range in.Setup.Lights {
			l := &in.Setup.Lights[i]
			if !shows(&c.Drawing, "light:"+l.Name, l.Tag) {
				t.Errorf("%s: light %s has no number", c.Heading, l.Tag)
			}
			if shows(&c.Drawing, "light:"+l.Name, l.Name) {
				named++
			}
		}
		if 2*named < len(in.Setup.Lights) {
			t.Errorf("%s: %d of %d lights are named", c.Heading, named, len(in.Setup.Lights))
		}
		if !has(&c.Drawing, section.KeyOf(&in, in.Field).All[0].Label(s.d.Light, s.d.Stop)) && !has(&c.Drawing, in.Field.Name) {
			t.Errorf("%s: the map has no key", c.Heading)
		}
		var titles []string
		for _, q := range c.Sections {
			titles = append(titles, q.Title)
		}
		if said := strings.Join(titles, ", "); !strings.Contains(said, "At the face") || !strings.Contains(said, "Lights") || !strings.Contains(said, "Cautions") {
			t.Errorf("%s: the lists are %s", c.Heading, said)
		}
	})
	if Columns([]Input{fixture.Example()}, Options{Font: f, Paper: "A9"}) != nil {
		t.Error("columns in spite of a fault of the options")
	}
}

func shows(p *ink.Page, object, text string) bool {
	for i := range p.Items {
		if it := &p.Items[i]; it.Object == object && it.Text != nil && it.Text.S == text {
			return true
		}
	}
	return false
}
