package scenes_test

import (
	"testing"

	"scrimshaw/plan/internal/truth/scenes"
)

// Every seed gives a scene that loads, and the same one each time.
func TestEverySeedLoads(t *testing.T) {
	for _, kind := range scenes.Kinds {
		for seed := range 20 {
			text, s, err := scenes.Make(kind, seed)
			if err != nil {
				t.Error(err)
				continue
			}
			if again, _, _ := scenes.Make(kind, seed); again != text {
				t.Errorf("%s %d is another scene the second time", kind, seed)
			}
			if len(s.Lights) == 0 || len(s.Meters) < 3 {
				t.Errorf("%s %d has %d lights and %d meters", kind, seed, len(s.Lights), len(s.Meters))
			}
			if seed == 0 && testing.Verbose() {
				t.Log(text)
			}
		}
	}
}
