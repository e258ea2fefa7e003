package kit

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry"
)

// Every distribution that has a word sends out one lumen, is nowhere brighter than its peak says, and says what it is.
func TestSpreadsSendOutOneLumen(t *testing.T) {
	words := map[string]bool{}
	for _, s := range spreads {
		if s.means == "" || words[s.word] {
			t.Errorf("%q has no meaning, or stands twice", s.word)
		}
		words[s.word] = true
		if flux := reference.SphereIntegral(s.light); !(math.Abs(flux-1) <= 2e-4) {
			t.Errorf("%s sends out %g lm, want 1", s.word, flux)
		}
		peak := photometry.Peak(s.light)
		for z := -1.0; z <= 1; z += 1.0 / 64 {
			for turn := 0.0; turn < 2*math.Pi; turn += math.Pi / 16 {
				sin, cos := math.Sincos(turn)
				side := math.Sqrt(max(0, 1-z*z))
				if cd := s.light.Candela(r3.Vec{X: side * cos, Y: side * sin, Z: z}); cd < 0 || cd > peak*(1+1e-9) {
					t.Fatalf("%s: %g cd/lm, more than its peak of %g, or less than none", s.word, cd, peak)
				}
			}
		}
	}
}
