package kit

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Output is a photometric statement: what a unit's data says, or what a scene writes in place
// of a unit. Exactly one of the leading figures is given. Angles are full angles in degrees;
// 0 means not given.
type Output struct {
	Span                       source.Span
	Lux, Distance              float64 // lx at Distance m on the axis, with Beam (and Field)
	Candela, Lumens, Luminance float64 // cd; lm; cd/m2
	Beam, Field                float64
	Shape                      string      // uniform, cosine, or "" for a lobe or a face
	Face                       *[2]float64 // width, height, m
	Disc, Tube, Sphere         float64     // diameter, length, diameter, m
	IES, LDT                   string      // the name of a photometric file, as written
	FileSpan                   source.Span // of that name
	Measured                   *Measured   // the file, once it was read; see Take
}

// Unit is one lamp head of the catalogue.
type Unit struct {
	Entry
	Label       string // for tags: "600 W LED point"
	Class       term.Class
	Technology  term.Technology // led, tungsten, discharge, fluorescent
	Watts       float64
	PowerFactor float64
	Mass        float64    // kg
	Kelvin      [2]float64 // the range it can be set to; equal ends for a fixed colour
	Native      float64    // K
	Tint        float64    // the most Duv that it can be set off the locus, either way; 0 none
	Warms       bool       // whether it is a filament, whose white falls as it is dimmed
	Curve       []float64  // light at equal steps of level from 0 to 1; nil is linear
	Lumens      float64    // bare flux, lm, for modifiers without an output of their own
	Spread      string     // how the bare flux leaves: uniform, cosine, or "" where it never does
	Outputs     []UnitOutput
	Modifier    string     // the default: a modifier's name, or "" for bare
	Front       string     // what its front takes: the modifiers with this word in Fits go on it
	Body        [3]float64 // width, depth, height of the head, m
	Stand       string     // default stand
	Bulb        string     // of a practical: its watts, flux and white are the unit's
}

// UnitOutput is a unit's output with one modifier; Modifier "" is bare. A zoom has several, by Focus.
type UnitOutput struct {
	Modifier string
	Zooms    bool
	Focus    float64 // of a zoom: 0 its narrowest beam, 1 its widest
	Output   Output
}

// Bulb is a lamp that screws into a practical.
type Bulb struct {
	Entry
	Technology         term.Technology
	Watts, PowerFactor float64
	Lumens, Kelvin     float64
	Warms              bool // whether it is a filament
}

// Modifier changes how a unit's light leaves.
type Modifier struct {
	Entry
	Label       string
	Class       term.Class // what the body becomes: "" keeps the unit's
	Fits        []string
	Efficiency  float64 // of flux, before the grid
	Beam, Field float64 // full angles, degrees; 0 for a Lambertian face
	Opening     photometry.Opening
	Grid        [2]float64 // a fabric grid's cut-off full angles across and along, degrees; 0 none
	Mass        float64    // kg
}

// GelData is one gel of the catalogue. The trade uses two sets of mired shifts; Set says which.
type GelData struct {
	Entry
	Label         string
	Kind          string // cto, ctb, plus-green, minus-green, nd, colour
	Set           string
	Mired, Duv    float64
	Transmittance float64
	Printed       float64 // transmittance as the trade rounds it, where that differs; 0 none
	XY            *[2]float64
}
