package plan

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Circuit is what lights are put on, or what feeds other circuits: a circuit of the house, a generator, a battery, a box of outlets.
type Circuit struct {
	Name, Path  string
	Kind        term.Feed
	From        string     // the circuit that feeds it; "" none of the scene
	Phase       term.Phase // of that one, where it has three; "" where it has not, and of a circuit of three phases
	ThreePhases bool
	Volts       float64 // of three phases from one to the neutral; 0: not known, of a battery
	Breaker     float64 // what it carries, amps a phase
	Rule        float64 // share of that which may be used, 0 to 1
	Already     float64 // what is on it before the first light, W
	Residual    float64 // residual current at which its protection trips, mA; 0: nothing says that it has one
	Watts       float64 // that a generator or a battery gives at most, W; 0 not known
	VoltAmps    float64 // that a generator gives at most, VA; 0 not known
	Energy      float64 // of a battery, Wh; 0 not known
	Usable      float64 // the share of that which gets to the lights, 0 to 1
	Tank        float64 // fuel in the tank of a generator, litres; 0 not known
	Burn        float64 // that it burns at most in an hour, litres; 0 not known
	Item        string  // the thing of the kit that it is; "" none
	Plug        string  // what goes into its outlets; "" the plug of the country
	Direct      bool    // direct current
	Outlet      *r2.Vec // where its outlet is, m; nil: nothing says it
	Floor       float64 // z of the floor under that, m
	InBox       bool    // that is the outlet of what feeds it, which it is a way of
	Feeder      *Run    // the cable from what feeds it; nil: none, or nobody knows its way
	Span        source.Span
}

// Limit is the current that may be used, A.
func (c *Circuit) Limit() float64 { return c.Breaker * c.Rule }

// Run is the cable from an outlet to a light or to another circuit.
type Run struct {
	Path    []r2.Vec // in plan, m, from the outlet to where the light or its stand is
	Way     []r3.Vec // the same in space, m: on the floor, and up and down the wall where it leads over a sill
	Through []string // the openings that it leads through, in its order
	Over    []string // those of them whose sill it leads over
	Stairs  []string // the stairs that it leads up or down
	Climb   float64  // what it goes up or down between two floors that no stairs of the scene join, m
	Length  float64  // of cable, m: the way, its slack, over sills, and up to the light
}
