package kit

import "scrimshaw/plan/source"

// Catalogue is everything a scene may call by name. Order lists keep the order of the files.
type Catalogue struct {
	Units     []*Unit
	Modifiers []*Modifier
	Gels      []*GelData
	Cloth     []*Cloth
	Materials []*Material
	Sensors   []*Sensor
	Stands    []*Stand
}

// Entry is what every catalogue entry has.
type Entry struct {
	Name   string
	Doc    string // one line: what it is, and that its values are typical
	Origin source.Span
}

// Material is a surface: reflectance Y 0..1 and, where it is not neutral, a chromaticity.
type Material struct {
	Entry
	Reflectance   float64
	XY            *[2]float64
	Transmittance float64 // of a glass, luminous; 0 for an opaque surface
	Mirror        float64 // share of Reflectance that mirrors
}

// Sensor is a camera gate.
type Sensor struct {
	Entry
	Width, Height float64 // mm
}

// Stand is what holds a light: the footprint its legs cover, its reach and its load.
type Stand struct {
	Entry
	Footprint       float64 // m, diameter
	Lowest, Highest float64 // m
	Load, Mass      float64 // kg
}

// Cloth is a diffusion: luminous transmittances, direct and diffuse, and reflectance.
type Cloth struct {
	Entry
	Direct, Diffuse, Reflect float64
}
