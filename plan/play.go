package plan

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Play is how a light changes by itself.
type Play struct {
	Kind      term.Play
	Low, High float64 // shares of the light's level that it goes between; of one that is off in its set-up, of its full light
	Rate      float64 // how often it goes up and down, 1/s
	Span      source.Span
}

// Range is between which levels a light plays that is set to one: none above its full output, and none below the least that its unit holds.
func (p *Play) Range(levels kit.Levels, level float64) (low, high float64) {
	high = min(1, p.High*level)
	low = min(p.Low*level, high)
	return max(low, min(levels.Least, high)), high
}
