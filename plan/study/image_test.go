package study_test

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/study"
)

// Of a scene and its mirror image the light that comes straight is the same, to rounding. What comes back differs, for rays start and end at
// points of a sequence that is not mirrored: by as much as the readings state, and less with each quality.
func TestMirrorImagesDifferByWhatTheyState(t *testing.T) {
	all := setupsOf(t, mirrored, scene.Env{})
	for _, quality := range []light.Quality{light.Draft, light.Normal} {
		one, other := imagedReadings(t, all[0], quality), imagedReadings(t, all[1], quality)
		within, compared := 0, 0
		for name, a := range one {
			who, part, _ := strings.Cut(name, ".")
			b, ok := other[map[string]string{"ada": "noor", "noor": "ada"}[who]+"."+strings.NewReplacer("left", "right", "right", "left").Replace(part)]
			if !ok {
				t.Fatalf("%s has no image", name)
			}
			if !(math.Abs(a.direct-b.direct) <= 1e-6*math.Max(a.direct, 1)) {
				t.Errorf("%s, %s: %.9g lx come straight, and %.9g in the image", quality, name, a.direct, b.direct)
			}
			if a.reflected < darkReading {
				continue
			}
			compared++
			if math.Abs(a.reflected-b.reflected) <= 2*math.Hypot(a.stated, b.stated) {
				within++
			}
		}
		if compared < 10 || float64(within) < 0.95*float64(compared) {
			t.Errorf("%s: %d of %d readings differ by no more than they state", quality, within, compared)
		}
	}
}

// imaged is a reading, lx.
type imaged struct{ direct, reflected, stated float64 }

func imagedReadings(t *testing.T, s *plan.Setup, quality light.Quality) map[string]imaged {
	t.Helper()
	lit := run(t, s, study.Options{ReadingsOnly: true, Quality: quality})
	all := map[string]imaged{}
	for i := range lit.Requests {
		direct, reflected := parts(lit.Basis, lit.Levels, i)
		all[lit.Requests[i].Name] = imaged{direct.Y(), reflected.Y(), lit.Basis.Error(i, lit.Levels)}
	}
	return all
}
