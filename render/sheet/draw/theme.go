package draw

import (
	"scrimshaw/plan/colour"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// Theme is a look as data. Lightnesses are CIELAB L, 0 black to 100 paper.
type Theme struct {
	Name  string
	Paper ink.Colour
	Ink   ink.Colour // lines and lettering
	Quiet ink.Colour // second-rank lettering
	Rule  ink.Colour // hairlines between the rows of a table
	Alarm ink.Colour // the one accent: what needs attention
	Wall  ink.Colour // cut walls
	Solid ink.Colour // faces of furniture and bodies
	// Contour is the one ink of the contours and their lettering.
	Contour ink.Colour
	Ramp    carto.Ramp // the tints of the bands
	// Lamp is the lightness that the colours of light are drawn at: dark enough for a line on this
	// paper, light enough to tell warm from cold. Chroma multiplies their chroma.
	Lamp, Chroma float64
	// Beam is the lightness of the lines of light on the map: at least 3 : 1 against its darkest tint
	// (WCAG 2.1, 1.4.11).
	Beam float64
	// Mono, where it is not nil, is the one ink for all light.
	Mono *ink.Colour
}

// themes are the looks, the first the default.
func themes() []Theme {
	return []Theme{{
		Name:    "day",
		Paper:   ink.Colour{R: 255, G: 255, B: 255},
		Ink:     ink.Colour{R: 26, G: 26, B: 30},
		Quiet:   ink.Colour{R: 112, G: 112, B: 118},
		Rule:    ink.Colour{R: 208, G: 208, B: 206},
		Alarm:   ink.Colour{R: 178, G: 20, B: 82},
		Wall:    ink.Colour{R: 32, G: 32, B: 36},
		Solid:   ink.Colour{R: 255, G: 255, B: 255},
		Contour: ink.Colour{R: 134, G: 84, B: 38},
		Ramp:    carto.Day(),
		Lamp:    66,
		Chroma:  1,
		Beam:    39,
	}, {
		Name:    "ink", // black on white, for a photocopier
		Paper:   ink.Colour{R: 255, G: 255, B: 255},
		Quiet:   ink.Colour{R: 70, G: 70, B: 70},
		Rule:    ink.Colour{R: 190, G: 190, B: 190},
		Solid:   ink.Colour{R: 255, G: 255, B: 255},
		Contour: ink.Colour{R: 60, G: 60, B: 60},
		Ramp:    carto.Ink(),
		Lamp:    62,
		Beam:    39,
	}, {
		Name:    "night", // dim reds on black, for a phone on set
		Paper:   ink.Colour{R: 10, G: 3, B: 3},
		Ink:     ink.Colour{R: 230, G: 147, B: 118},
		Quiet:   ink.Colour{R: 175, G: 114, B: 102},
		Rule:    ink.Colour{R: 77, G: 37, B: 32},
		Alarm:   ink.Colour{R: 255, G: 150, B: 70},
		Wall:    ink.Colour{R: 92, G: 71, B: 68},
		Solid:   ink.Colour{R: 10, G: 3, B: 3},
		Contour: ink.Colour{R: 187, G: 133, B: 92},
		Ramp:    carto.Night(),
		Mono:    &ink.Colour{R: 202, G: 111, B: 88},
	}}
}

// ThemeNames lists the looks, the default first.
func ThemeNames() []string {
	var names []string
	for _, t := range themes() {
		names = append(names, t.Name)
	}
	return names
}

// ThemeNamed returns the look of a name; "" is the default, which it also returns for a name that no
// look has.
func ThemeNamed(name string) (t Theme, ok bool) {
	for _, t := range themes() {
		if name == "" || t.Name == name {
			return t, true
		}
	}
	return themes()[0], false
}

// lamp is the ink of light of colour c as a camera balanced to the chromaticity white sees it.
func (t *Theme) lamp(c colour.RGB, white [2]float64) ink.Colour {
	if t.Mono != nil {
		return *t.Mono
	}
	lch := colour.Display(c, white, t.Lamp).LCH()
	lch.C *= t.Chroma
	return ink.Colour(lch.Pixel())
}

// beamChroma is by how much the lines of light are more colourful than its symbols: a thin dark line
// looks greyer than it is.
const beamChroma = 1.6

// beam is the ink of the lines of light of colour c: its own hue, dark and strong.
func (t *Theme) beam(c colour.RGB, white [2]float64) ink.Colour {
	if t.Mono != nil {
		return *t.Mono
	}
	lch := colour.Display(c, white, t.Lamp).LCH()
	lch.C *= t.Chroma * beamChroma
	lch.L = t.Beam
	return ink.Colour(lch.Pixel())
}

// rim is what lettering on the tints of the map has round it: nothing on a light map, and paper on a
// dark one, whose lighter tints would swallow it.
func (t *Theme) rim() *ink.Colour {
	if t.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		return &t.Paper
	}
	return nil
}
