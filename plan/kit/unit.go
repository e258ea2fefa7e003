package kit

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/power"
	"scrimshaw/plan/term"
)

// Unit is one lamp head of the catalogue.
type Unit struct {
	Entry
	Rental
	Label           string // for tags: "600 W LED point"
	Class           term.Class
	Technology      term.Technology // led, tungsten, discharge, fluorescent
	Watts           float64         // electrical power that it draws at full, with its supply
	PowerFactor     float64         // ratio of power to volts times amps, 0 to 1
	Mass            float64         // of what its stand carries, kg
	Kelvin          [2]float64      // the range it can be set to; equal ends for a fixed colour
	Native          float64         // the white where nothing is said, K
	Tint            float64         // the most that it can be set off the locus, either way, in Duv; 0 none
	WarmsWhenDimmed bool            // whether it is a filament, whose white falls as it is dimmed
	Curve           []float64       // share of the full light at equal steps of level from 0 to 1; nil is linear
	Levels          Levels
	ByWhite         []WhiteShare // of the light at some whites that it can be set to, by kelvin; nil: the same at all
	Lumens          float64      // flux that leaves the bare head, lm; where Outputs has one for bare, that one's
	Spread          string       // how the bare flux leaves: the word of a spread, or "" where it never does
	Outputs         []UnitOutput
	Modifier        string     // the default: a modifier's name, or "" for bare
	Front           string     // what its front takes: the modifiers with this word in Fits go on it
	Body            [3]float64 // width, depth, height of the head, m
	Aperture        float64    // width of the lens or the mouth that light leaves by, m; 0 where its output says it
	Doors           *Doors     // its barn doors; nil: those that its mouth usually has
	Stand           string     // default stand
	Bulb            string     // of a practical: its watts, flux and white are the unit's
	BulbWidth       float64    // diameter of that bulb, m; 0 where there is none
	BulbVolts       float64    // of the mains that it is made for, V; 0 for any
	Flicker         float64    // how deep its light goes down at twice the mains: a share, the most less the least by their sum, 0 to 1
	Restrike        *float64   // how long its lamp has to cool before it strikes again, s; nil: nothing says it; see CoolsFor
}

// How long a discharge lamp has to cool before it strikes again where the catalogue does not say, and how long one takes from a cold
// strike to its light and its colour, s: common practice, of 5 to 15 minutes and of 1 to 4.
const (
	usualRestrike = 600
	RunUp         = 120
)

// CoolsFor is how long the unit's lamp has to cool before it strikes again, s; 0 of one that strikes hot, and of all but discharge lamps.
func (u *Unit) CoolsFor() float64 {
	switch {
	case u == nil || u.Technology != term.Discharge:
		return 0
	case u.Restrike == nil:
		return usualRestrike
	}
	return *u.Restrike
}

// Levels is what levels a unit can be set to beside off. The zero Levels takes all.
type Levels struct {
	Least  float64 // share of the full light; 0: down to nothing; 1: it does not dim
	Step   float64 // share between the levels that it takes; 0: any
	Kelvin float64 // its white at the least level, K, where a lamp changes colour as its ballast dims it; 0: it keeps it
}

// WhiteShare is how much light a unit gives at one of its whites, as a share of what its figures say.
type WhiteShare struct {
	Kelvin float64 `json:"kelvin"`
	Share  float64 `json:"share"`
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
	Flicker            float64 // how deep its light goes down at twice the mains, a share
	Volts              float64 // of the mains that it is made for, V; 0 for any
	Mass               float64 // kg; 0 not known
}

// Modifier changes how a unit's light leaves.
type Modifier struct {
	Entry
	Label       string
	Class       term.Class // what the body becomes: "" keeps the unit's
	Fits        []string
	Efficiency  float64 // share of the flux of the head, or of what it goes on, that leaves, before its cells; 0 to 1
	Beam, Field float64 // full angles, degrees; 0 for a Lambertian face
	Opening     photometry.Opening
	Aperture    float64    // width of the lens or the mouth, m, of what has no face; 0: the unit's
	Grid        [2]float64 // square cells' cut-off full angles across and along, degrees; 0 none
	Honeycomb   float64    // round cells' cut-off full angle, degrees; 0 none
	Zoom        []ZoomStep // of one that zooms: what it does by focus, spot first
	Front       string     // what may go on it: the modifiers with this word in Fits
	Skirt       float64    // how far a black skirt hangs below the middle of the globe that it goes round, m; 0 none
	Shade       *Shade     // what hangs around a bulb; nil of all else
	MostWatts   float64    // the power of a filament lamp that it stands the heat of, W; 0 not known
	Mass        float64    // kg
}

// ZoomStep is what a zoom does at one focus.
type ZoomStep struct {
	Focus      float64 `json:"focus"`      // share of the way from spot to flood
	Efficiency float64 `json:"efficiency"` // share of the flux that leaves
	Beam       float64 `json:"beam"`       // full angles, degrees
	Field      float64 `json:"field"`      // degrees
}

// GelData is one gel of the catalogue.
type GelData struct {
	Entry
	Label         string
	Kind          term.Gel
	Converts      [2]float64  // the white that the full gel turns into another, and that other, K; 0: Mired alone says it
	Part          float64     // share of the full gel
	Mired, Duv    float64     // its shifts, in mireds (plus warms) and in Duv (plus is green)
	Transmittance float64     // share of the light that it lets through, luminous, 0 to 1
	Printed       float64     // that share as the trade rounds it, where that differs; 0 none
	XY            *[2]float64 // the chromaticity that it gives equal-energy light: x, y of CIE 1931
}

// The mains for which a unit states its amps, V.
const (
	MainsLow  = 120
	MainsHigh = 230
)

// Amps gives the current that the unit draws at full from mains of a voltage, A; not ok where it does not take them.
func (u *Unit) Amps(volts float64) (amps float64, ok bool) {
	if u.Watts == 0 || u.Volts[1] > 0 && (volts < u.Volts[0] || volts > u.Volts[1]) {
		return 0, false
	}
	return power.Current(u.Watts, volts, u.PowerFactor), true
}
