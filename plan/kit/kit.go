// Package kit is the catalogue: units, modifiers, gels, cloth, materials, sensors, grip and
// stands, read from YAML files in the scene language's own manner, and the photometric head a
// choice of them makes. The shipped data is generic and typical, never a maker's.
package kit

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Step is one line of an explained calculation.
type Step struct {
	What, Formula, Source string
	In                    []float64
	Out                   float64
	Unit                  string
}

// Choice is what a scene says of one light.
type Choice struct {
	Unit, Modifier string        // Modifier "": the unit's default; Unmodified: none
	Gels           []Gel         // in order, as written
	White          *colour.White // nil: the unit's native colour
	Tint           float64       // plus (green) or minus, Duv
	Zoom           float64       // 0 the narrowest beam of a zoom, 1 the widest
	Span           source.Span   // of the light

	// Where the values were written, the light's own Span where a span is not valid; and the
	// light's path and set-up, for faults.
	UnitSpan, ModifierSpan, WhiteSpan, TintSpan, ZoomSpan source.Span
	Path, Setup                                           string
}

// Unmodified is the modifier of a unit that is used bare.
const Unmodified = "bare"

// Gel is one gel as a scene writes it: a catalogue name, "1/2 CTO".
type Gel struct {
	Name string
	Span source.Span
}

// Head is a unit with its modifier, gels and white, ready to shine.
type Head struct {
	Source                   photometry.Source // at full level, without gels
	Filter                   float64           // luminous transmittance of the gel stack, 0..1
	White                    colour.White      // of the light after gels, at full level
	RGB                      colour.RGB        // chromaticity of the light after gels at full level, scaled to Y = 1
	Warms                    bool              // whether its white falls as a filament's does when it is dimmed
	Curve                    []float64         // light output at equal steps of level 0..1; nil is linear
	Watts                    float64
	PowerFactor              float64
	Mass                     float64 // kg
	Zooms                    bool    // its output depends on its focus
	Tilt                     *Tilt   // nil where its light is the same at any tilt; see Hang
	Class                    term.Class
	Technology               term.Technology // "" of a plain source
	UnitLabel, ModifierLabel string          // for tags: "600 W LED point", "reflector 55"
	Steps                    []Step

	native colour.White    // of the lamp at full level, before gels
	stack  []colour.Filter // its gels
}
