package kit

import "scrimshaw/plan/source"

// Catalogue is everything a scene may call by name. Order lists keep the order of the files. A
// Catalogue is not changed once it is made; With makes another.
type Catalogue struct {
	Units     []*Unit
	Bulbs     []*Bulb
	Modifiers []*Modifier
	Gels      []*GelData
	Cloth     []*Cloth
	Materials []*Material
	Sensors   []*Sensor
	Stands    []*Stand
	Grip      []*Grip
}

// Entry is what every catalogue entry has.
type Entry struct {
	Name   string
	Doc    string // one line: what it is, and that its values are typical
	Origin source.Span
}

// entry gives the Entry that a type of the catalogue embeds.
func (e *Entry) entry() *Entry { return e }

// Material is a surface: reflectance Y 0..1 and, where it is not neutral, a chromaticity.
type Material struct {
	Entry
	Reflectance   float64
	XY            *[2]float64 // CIE 1931, under D65
	Transmittance float64     // of a glass, luminous; 0 for an opaque surface
	Mirror        float64     // share of Reflectance that mirrors
}

// Sensor is a camera gate.
type Sensor struct {
	Entry
	Label         string  // for tags: "Super 35"
	Width, Height float64 // mm
}

// Stand is what holds a light: the footprint its legs cover, its reach and its load.
type Stand struct {
	Entry
	Label           string
	Footprint       float64 // m, diameter
	Lowest, Highest float64 // m
	Load, Mass      float64 // kg
}

// Cloth is a diffusion: luminous transmittances, direct and diffuse, and reflectance.
type Cloth struct {
	Entry
	Label                    string
	Direct, Diffuse, Reflect float64
}

// Grip is a flag, card, frame, net or silver board of a customary size, as a rental list has it.
type Grip struct {
	Entry
	Label         string
	Kind          string // flag, card, frame, net, silver
	Width, Height float64
	Mass          float64
}
