package plan

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Circuit is what lights are put on: a circuit of the house, a generator, a battery. One phase.
type Circuit struct {
	Name, Path string
	Kind       term.Feed
	Volts      float64 // 0: not known, of a battery
	Breaker    float64 // what it carries, amps
	Rule       float64 // share of that which may be used, 0 to 1
	Already    float64 // what is on it before the first light, W
	Direct     bool    // direct current
	Outlet     *r2.Vec // where its outlet is, m; nil: nothing says it
	Span       source.Span
}

// Limit is the current that may be used, A.
func (c *Circuit) Limit() float64 { return c.Breaker * c.Rule }
