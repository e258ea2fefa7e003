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

// Run is the cable from an outlet to a light.
type Run struct {
	Path    []r2.Vec // in plan, m, from the outlet to where the light or its stand is
	Through []string // the openings that it leads through, in its order
	Length  float64  // of cable, m: the way, its slack, and up to the light
}
