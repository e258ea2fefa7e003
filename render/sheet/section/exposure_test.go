package section

import (
	"slices"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
)

// What a camera holds stands with what it is set to, where the scene says it, and with a camera that holds something else.
func TestWhatACameraHolds(t *testing.T) {
	for _, c := range []struct {
		holds lens.Range
		want  string
	}{{lens.Range{}, ""}, {lens.Range{Over: 6, Under: 7.5}, "holds 6 stops over grey, 7.5 under"}, {lens.Range{Over: 6}, "holds 6 stops over grey"}, {lens.Range{Under: 8}, "holds 8 stops under grey"}, {lens.Range{Over: 1, Under: 1}, "holds 1 stop over grey, 1 under"}} {
		x := plan.Exposure{ISO: 800, FPS: 25, Stop: scene.Stop{Written: 2, N: 2}, Range: c.holds}
		if got := rangeWords(&x); got != c.want {
			t.Errorf("%+v: %q, want %q", c.holds, got, c.want)
		}
		s := &plan.Setup{Exposure: x}
		if told := slices.Contains(ExposureLines(s), "Camera "+c.want); told != (c.want != "") {
			t.Errorf("%+v: %q", c.holds, ExposureLines(s))
		}
		camera := plan.Camera{Exposure: x}
		if own := ownExposure(s, &camera); own != "" {
			t.Errorf("%+v: a camera of its own: %q", c.holds, own)
		}
		camera.Exposure.Range.Over = 9
		if own := ownExposure(s, &camera); own != rangeWords(&camera.Exposure) {
			t.Errorf("%+v: %q", c.holds, own)
		}
		if own := exposureChanges(&s.Exposure, &camera.Exposure); own != rangeWords(&camera.Exposure) {
			t.Errorf("%+v: since then %q", c.holds, own)
		}
	}
}
