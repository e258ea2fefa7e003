package sheet

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// TestSamplesKeepApart holds the samples to the rules of lettering, and every light's tag to its
// full or its short form.
func TestSamplesKeepApart(t *testing.T) {
	f := fixture.Family(t)
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			for i, in := range sampleInputs(t, name) {
				for _, paper := range []string{"", "A4", "A3", "letter"} {
					s := sampleSheets(t, name)[i]
					if paper != "" {
						s = sheetFor(t, in, Options{Paper: paper, Font: f})
					}
					checkPlan(t, s, f)
					if s.d.Reduced > 0 {
						t.Errorf("on %q %d labels are no more than a number, or left out", paper, s.d.Reduced)
					}
					for i := range s.pages {
						checkPage(t, &s.pages[i], f)
					}
					for i := range in.Setup.Lights {
						l := &in.Setup.Lights[i]
						if !isNamed(&s.pages[0], s.d.UnitLabel(l)) {
							t.Errorf("on %q light %s (%s) has no more than its number", paper, l.Tag, s.d.LightLabel(l))
						}
					}
				}
			}
		})
	}
}

// isNamed says whether a page letters a unit, with what it wears or without what qualifies it; a long name ends in an
// ellipsis.
func isNamed(p *ink.Page, unit string) bool {
	short, _, _ := strings.Cut(unit, ", ")
	return slices.ContainsFunc(p.Items, func(it ink.Item) bool {
		if it.Text == nil || it.Layer != ink.Tags {
			return false
		}
		said := strings.TrimSuffix(it.Text.S, "…")
		return strings.HasPrefix(it.Text.S, short) || said != it.Text.S && strings.HasPrefix(unit, said)
	})
}
