package draw

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// TestScaleBarIsTrue measures the bar on paper against the length its sentence names, at every
// scale there is.
func TestScaleBarIsTrue(t *testing.T) {
	for _, feet := range []bool{false, true} {
		for _, times := range unit.Scales(feet) {
			in := fixture.Example()
			in.Setup.Feet = feet
			c := kitchenDrawing(t, in)
			page := &ink.Page{}
			Collar{c}.ScaleBar(c.Pad.With(page), 0, 20, times, "A3")
			var bar ink.Extent
			alt := ""
			for i := range page.Items {
				if it := &page.Items[i]; it.Object == "scale-bar" && it.Path != nil {
					bar.Join(ink.Path(it.Path).Bounds())
					alt += it.Alt
				}
			}
			r := rulerFor(times, feet)
			want := r.length * r.metres * 1000 / times
			if got := box.Width(bar.Box); !(math.Abs(got-want) <= want/1000) {
				t.Errorf("at 1:%v the bar is %v mm long, want %v", times, got, want)
			}
			if want > longest {
				t.Errorf("at 1:%v the bar of %v mm is too long for its column", times, want)
			}
			if !strings.HasPrefix(alt, "Scale bar of ") || !strings.Contains(alt, r.unit) {
				t.Errorf("the bar says %q", alt)
			}
		}
	}
}
