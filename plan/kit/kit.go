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
	In                    []float64 // what the formula takes, in SI units, degrees, mireds or shares, in the order in which it names them
	Out                   float64   // what comes of it, in Unit: cd, lm, K or a share
	Unit                  string    // "cd", "lm", "K"; "" of a share
}

// Choice is what a scene says of one light.
type Choice struct {
	Unit, Modifier string        // Modifier "": the unit's default; Unmodified: none
	Gels           []Gel         // in order, as written
	White          *colour.White // nil: the unit's native colour
	Tint           float64       // off the locus, in Duv: plus is green
	Focus          *float64      // share of the way from the narrowest beam of a zoom, 0, to the widest, 1; nil: flooded
	FocusOfZoom    bool          // whether Focus is of a zoom alone, and never the edge of an image
	Edge           *float64      // of the image of a projection spot: share of the way from sharp, 0, to soft, 1; nil: as its field
	Level          *float64      // share of the full light that it is set to, to be checked; nil asks nothing
	Bulb           *BulbChoice   // nil: the practical's own
	Shade          *ShadeChoice  // nil: the modifier's, if it has one
	Doors          *Opened       // nil: no barn doors
	Scrims         *ScrimChoice  // nil: none
	Span           source.Span   // of the light

	// Where the values were written, the light's own Span where a span is not valid; and the
	// light's path and set-up, for faults.
	UnitSpan, ModifierSpan, WhiteSpan, TintSpan, FocusSpan, EdgeSpan, LevelSpan source.Span
	Path, Setup                                                                 string
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
	Filter                   float64           // share of the light that the gel stack lets through, luminous, 0 to 1
	White                    colour.White      // of the light after gels, at full level
	RGB                      colour.RGB        // chromaticity of the light after gels at full level, scaled to Y = 1
	WarmsWhenDimmed          bool              // whether its white falls as a filament's does when it is dimmed
	Curve                    []float64         // share of the full light at equal steps of level from 0 to 1; nil is linear
	Levels                   Levels            // that it can be set to
	Watts                    float64           // electrical power at full
	MostWatts                float64           // the power of a filament lamp that what is on the head is made for; 0 not known
	PowerFactor              float64           // ratio of power to volts times amps, 0 to 1
	Mains                    [2]float64        // the mains that its supply takes, least and most, V; 0 not known
	BulbVolts                float64           // of the mains that its bulb is made for, V; 0 for any
	Inrush                   float64           // peak of the current as it is switched on, amps; 0 not known
	Mass                     float64           // kg
	Unit                     *Unit             // of the catalogue; nil of a source that the scene states itself
	Modifiers                []*Modifier       // on it, from the head outward
	Bulb                     *Bulb             // in a practical, as it was chosen; nil of all else
	Flicker                  float64           // how deep its light goes down at twice the mains: a share, the most less the least by their sum, 0 to 1
	BulbWatts                float64           // of the bulb that the choice put in, W; 0: its own
	Doors                    *HungDoors        // nil: none
	HangsDown                bool              // whether it shines down as it hangs, and nobody aims it: a globe in a skirt
	Scrims                   []term.Scrim      // in the head
	Zooms                    bool              // its output depends on its focus
	Focus                    float64           // of a zoom: share of the way from spot, 0, to flood, 1
	Edge                     *float64          // of the image of a projection spot: share of the way from sharp, 0, to soft, 1; nil where nothing says it
	Gate                     photometry.Gate   // what SetGate has put into it
	Spigot                   string            // what it sits on a stand by; "" not known
	Tilt                     *Tilt             // nil where its light is the same at any tilt; see ApplyTilt
	Class                    term.Class
	Body                     [3]float64      // width, depth and height of the unit, m; 0 not known
	Aperture                 float64         // width of what light leaves by, m: of its face, lens or mouth; 0 not known
	Technology               term.Technology // "" of a plain source
	UnitLabel, ModifierLabel string          // for tags: "600 W LED point", "wide reflector"
	Steps                    []Step

	shadeAims bool            // its shade turns with the aim
	native    colour.White    // of the lamp at full level, before gels
	stack     []colour.Filter // its gels
	open      openHead        // what its scrims have changed
}

// normaliseModifier is the name of a modifier as the catalogue keeps it: "" for bare.
func normaliseModifier(name string) string {
	if name == Unmodified {
		return ""
	}
	return name
}
