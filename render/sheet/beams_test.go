package sheet

import (
	"testing"

	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// TestBeamsAreNumbered looks beside the beams of every sample for the number of their light.
func TestBeamsAreNumbered(t *testing.T) {
	eachSample(t, Options{}, func(t *testing.T, in Input, s *sheet) {
		for i := range in.Beams {
			l := section.LightNamed(in.Setup, in.Beams[i].Light)
			drawn, numbered := false, false
			for j := range s.pages[0].Items {
				it := &s.pages[0].Items[j]
				if it.Layer != ink.Beams || it.Object != "light:"+l.Name {
					continue
				}
				drawn = drawn || it.Path != nil
				numbered = numbered || it.Text != nil && it.Text.S == l.Tag
			}
			if drawn && !numbered {
				t.Errorf("%s: nothing says whose the beam of %s is", s.pages[0].Title, l.Tag)
			}
		}
	})
}
