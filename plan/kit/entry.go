package kit

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Entry is what every catalogue entry has.
type Entry struct {
	Name   string
	Doc    string  // one line: what it is, and that its values are typical
	Spare  float64 // the share of those in use that goes along beside them, rounded up; 0 none
	Origin source.Span
}

// entry gives the Entry that a type of the catalogue embeds.
func (e *Entry) entry() *Entry { return e }

// Material is a surface.
type Material struct {
	Entry
	Reflectance   float64     // share of the light that it throws back, luminous, 0 to 1
	XY            *[2]float64 // chromaticity where it is not neutral: x, y of CIE 1931, under D65
	Transmittance float64     // share that a glass lets through, luminous, 0 to 1; 0 for an opaque surface
	Index         float64     // of refraction of a glass, the ratio of the speeds of light; 0: as much goes through from everywhere
	Sheets        int         // of a glass, one behind the other
	Bars          float64     // how wide the bars between panes of a glass are, m; 0: as if there were none
	Scatter       float64     // share of what goes through a glass that leaves it scattered
	Mirror        float64     // share of Reflectance that mirrors
	Lobe          float64     // over how wide an angle it does, between its halves, degrees; 0: sharply
}

// Colour gives what the surface does to light, linear AP1: a neutral surface has three equal
// channels. A strong colour may have a channel over 1, which no surface can; the caller judges.
func (m *Material) Colour() colour.RGB {
	if m.XY == nil {
		return colour.RGB{m.Reflectance, m.Reflectance, m.Reflectance}
	}
	factor, _ := colour.ChannelFactors(*m.XY, colour.D65(), m.Reflectance)
	return factor
}

// Sensor is a camera gate.
type Sensor struct {
	Entry
	Label         string  // for tags: "Super 35"
	Width, Height float64 // of the gate, mm
	Confusion     float64 // diameter of the circle that counts as a point there, mm
	Readout       float64 // how much later its last row is read than its first, ms: 1/1000 s
}

// Stand is what holds a light: the footprint its legs cover, its reach and its load.
type Stand struct {
	Entry
	Label           string
	Footprint       float64 // diameter that its legs cover, m
	Lowest, Highest float64 // heights of its spigot over what it stands on, m
	Load, Mass      float64 // the most that it may carry, and its own mass, kg
	Spigot          string  // what it takes: the word of a spigot
	Wheels          bool
}

// Cloth is a diffusion, a net or a drape.
type Cloth struct {
	Entry
	Label   string
	Direct  float64 // share of the light that goes straight on, luminous, 0 to 1
	Diffuse float64 // share that leaves the far side scattered, 0 to 1
	Reflect float64 // share that it throws back, 0 to 1
}

// Layers is what some cloths do that lie on each other, the first toward the lamp: of what each lets through the next
// takes its shares, and what they throw to each other goes back and forth (G. G. Stokes, On the intensity of the light
// reflected from or transmitted through a pile of plates, Proceedings of the Royal Society 11:545, 1862).
func Layers(all []Cloth) (c Cloth) {
	c = all[0]
	for i := range all[1:] {
		next := &all[i+1]
		between := 1 - c.Reflect*next.Reflect
		through, straight := c.Direct+c.Diffuse, c.Direct*next.Direct
		passed := through * (next.Direct + next.Diffuse) / between
		c = Cloth{
			Entry: next.Entry, Label: next.Label, Direct: straight, Diffuse: passed - straight,
			Reflect: c.Reflect + through*through*next.Reflect/between,
		}
	}
	return c
}

// Grip is a flag, card, frame, net or silver board of a customary size, as a rental list has it.
type Grip struct {
	Entry
	Label         string
	Kind          term.Grip
	Width, Height float64 // m
	Round         bool    // a disc, as wide as it is high
	Mass          float64 // kg; 0 where nothing says it
}
