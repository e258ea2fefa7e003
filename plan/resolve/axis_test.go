package resolve

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"testing"

	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/source"
)

var (
	toHeight = regexp.MustCompile(`to height: (-?[0-9.]+)`)
	toAlong  = regexp.MustCompile(`to along: (-?[0-9.]+)`)
)

// Doing what the hint says mends the axis, in metres and in feet, aimed at a point or level.
func TestTheMoveMends(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 8))
	mended, missed := 0, 0
	for i := range 400 {
		units, k := "m", 1.0
		if i%2 == 1 {
			units, k = "ft", 1/0.3048
		}
		aim := fmt.Sprintf("[%.3f, %.3f, %.3f]", k*(0.5+3*rnd.Float64()), k*4*rnd.Float64(), k*1.5*rnd.Float64())
		if i%5 == 0 {
			aim = fmt.Sprintf("{pan: %.2f, tilt: %.2f}", 70+40*rnd.Float64(), -20*rnd.Float64())
		}
		text := func(height, along string) string {
			return fmt.Sprintf(`
units: %s
rooms: {den: {size: [%.4f, %.4f], height: %.4f}}
openings: {bay: {window: den.left, width: %.4f}}
lights: {sun: {output: {candela: 100, shape: uniform}, at: {opening: bay, out: %.4f, along: %s}, height: %s, aim: %s}}
`, units, 5*k, 4*k, 2.5*k, 1.4*k, 2*k, along, height, aim)
		}
		height, along := fmt.Sprintf("%.3f", k*4*rnd.Float64()), fmt.Sprintf("%.3f", k*(4*rnd.Float64()-2))
		hint := axisHint(t, text(height, along))
		if hint == "" {
			continue
		}
		missed++
		if m := toHeight.FindStringSubmatch(hint); m != nil {
			height = m[1]
		}
		if m := toAlong.FindStringSubmatch(hint); m != nil {
			along = m[1]
		}
		if again := axisHint(t, text(height, along)); again == "" {
			mended++
		} else if toHeight.MatchString(hint) || toAlong.MatchString(hint) {
			t.Errorf("%s\nafter %q tells %q", text(height, along), hint, again)
		}
	}
	if missed < 100 || mended < missed*9/10 {
		t.Errorf("%d of %d misses mended", mended, missed)
	}
}

func axisHint(t *testing.T, text string) string {
	t.Helper()
	log := &source.Log{}
	doc := opened(t, text, log)
	Resolve(doc, doc.Scene("", log), log)
	for _, d := range log.All() {
		if d.Code == fit.CodeAxisMisses {
			return d.Hint
		}
		if d.Severity == source.Error && d.Code != fit.CodeBelowFloor {
			t.Fatalf("%s\n%s", tell(d), text)
		}
	}
	return ""
}
