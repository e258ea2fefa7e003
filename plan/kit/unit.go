package kit

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// Unit is one lamp head of the catalogue.
type Unit struct {
	Entry
	Label           string // for tags: "600 W LED point"
	Class           term.Class
	Technology      term.Technology // led, tungsten, discharge, fluorescent
	Watts           float64         // electrical power at full
	PowerFactor     float64         // ratio of power to volts times amps, 0 to 1
	Mass            float64         // kg
	Kelvin          [2]float64      // the range it can be set to; equal ends for a fixed colour
	Native          float64         // the white where nothing is said, K
	Tint            float64         // the most that it can be set off the locus, either way, in Duv; 0 none
	WarmsWhenDimmed bool            // whether it is a filament, whose white falls as it is dimmed
	Curve           []float64       // share of the full light at equal steps of level from 0 to 1; nil is linear
	Lumens          float64         // bare flux, lm, for modifiers without an output of their own
	Spread          string          // how the bare flux leaves: the word of a spread, or "" where it never does
	Outputs         []UnitOutput
	Modifier        string     // the default: a modifier's name, or "" for bare
	Front           string     // what its front takes: the modifiers with this word in Fits go on it
	Body            [3]float64 // width, depth, height of the head, m
	Aperture        float64    // width of the lens or the mouth that light leaves by, m; 0 where its output says it
	Doors           *Doors     // its barn doors; nil: those that its mouth usually has
	Stand           string     // default stand
	Bulb            string     // of a practical: its watts, flux and white are the unit's
	BulbWidth       float64    // diameter of that bulb, m; 0 where there is none
}

// UnitOutput is a unit's output with one modifier; Modifier "" is bare. A zoom has several, by Focus.
type UnitOutput struct {
	Modifier string
	Zooms    bool
	Focus    float64 // of a zoom: share of the way from its narrowest beam, 0, to its widest, 1
	Output   Output
}

// Bulb is a lamp that screws into a practical.
type Bulb struct {
	Entry
	Technology         term.Technology
	Watts, PowerFactor float64 // electrical power, and the ratio of it to volts times amps
	Lumens, Kelvin     float64 // its flux and its white
	WarmsWhenDimmed    bool    // whether it is a filament
	Width              float64 // its diameter, m
	Volts              float64 // of the mains that it is made for, V; 0 for any
}

// Modifier changes how a unit's light leaves.
type Modifier struct {
	Entry
	Label       string
	Class       term.Class // what the body becomes: "" keeps the unit's
	Fits        []string
	Efficiency  float64 // share of the flux that leaves, before the grid, 0 to 1
	Beam, Field float64 // full angles, degrees; 0 for a Lambertian face
	Opening     photometry.Opening
	Aperture    float64    // width of the lens or the mouth, m, of what has no face; 0: the unit's
	Grid        [2]float64 // a fabric grid's cut-off full angles across and along, degrees; 0 none
	Shade       *Shade     // what hangs around a bulb; nil of all else
	MostWatts   float64    // the power of a filament lamp that it stands the heat of, W; 0 not known
	Mass        float64    // kg
}

// GelData is one gel of the catalogue. The trade uses two sets of mired shifts; Set says which.
type GelData struct {
	Entry
	Label         string
	Kind          term.Gel
	Set           string
	Mired, Duv    float64     // its shifts, in mireds (plus warms) and in Duv (plus is green)
	Transmittance float64     // share of the light that it lets through, luminous, 0 to 1
	Printed       float64     // that share as the trade rounds it, where that differs; 0 none
	XY            *[2]float64 // the chromaticity that it gives equal-energy light: x, y of CIE 1931
}
