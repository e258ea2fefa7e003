package draw

import (
	"math"

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
	Place ink.Colour // names of places, on the tints of the map
	Rule  ink.Colour // hairlines between the rows of a table
	Alarm ink.Colour // the one accent: what needs attention
	Wall  ink.Colour // the ground of cut walls, which are outlined in Ink
	Solid ink.Colour // tops of furniture: ground too, and quieter than the paper
	// Plain says that there are two colours, ink and paper, for a copier: walls are hatched, dots stand for tints, every
	// line of the map has its own dashes and closed shadows have ticks.
	Plain bool
	Least float64 // the thinnest line of light on the map, mm
	// Contour is the one ink of the contours and their lettering.
	Contour ink.Colour
	Ramp    carto.Ramp // the tints of the bands
	// Lamp is the lightness that the colours of light are drawn at: dark enough for a line on this
	// paper, light enough to tell warm from cold. Chroma multiplies their chroma.
	Lamp, Chroma float64
	// Beam is the lightness of the lines of light on the map, Glow that of what they enclose: the line tells on light
	// ground and the band beside it on dark. A Glow of 0 draws neither band nor wedge.
	Beam, Glow float64
	// Mono, where it is not nil, is the one ink for all light.
	Mono *ink.Colour
}

// themes are the looks, the first the default.
func themes() []Theme {
	return []Theme{{
		Name:    "day",
		Paper:   ink.Colour{R: 255, G: 255, B: 255},
		Ink:     ink.Colour{R: 20, G: 20, B: 24},
		Quiet:   ink.Colour{R: 96, G: 96, B: 102},
		Place:   ink.Colour{R: 62, G: 62, B: 70},
		Rule:    ink.Colour{R: 208, G: 208, B: 206},
		Alarm:   ink.Colour{R: 178, G: 20, B: 82},
		Wall:    ink.Colour{R: 172, G: 172, B: 174},
		Solid:   ink.Colour{R: 236, G: 236, B: 236},
		Contour: ink.Colour{R: 76, G: 34, B: 62},
		Ramp:    carto.Day(),
		Lamp:    66,
		Chroma:  1,
		Beam:    43,
		Glow:    87,
	}, {
		Name:  "ink", // black on white, for a photocopier
		Paper: ink.Colour{R: 255, G: 255, B: 255},
		Wall:  ink.Colour{R: 255, G: 255, B: 255},
		Solid: ink.Colour{R: 255, G: 255, B: 255},
		Plain: true,
		Least: Medium,
		Ramp:  carto.Ink(),
	}, {
		Name:    "night", // dim reds on black, for a phone on set
		Paper:   ink.Colour{R: 10, G: 3, B: 3},
		Ink:     ink.Colour{R: 230, G: 147, B: 118},
		Quiet:   ink.Colour{R: 175, G: 114, B: 102},
		Place:   ink.Colour{R: 200, G: 132, B: 112},
		Rule:    ink.Colour{R: 77, G: 37, B: 32},
		Alarm:   ink.Colour{R: 255, G: 150, B: 70},
		Wall:    ink.Colour{R: 70, G: 52, B: 50},
		Solid:   ink.Colour{R: 24, G: 12, B: 11},
		Contour: ink.Colour{R: 210, G: 150, B: 104},
		Ramp:    carto.Night(),
		Mono:    &ink.Colour{R: 222, G: 164, B: 112},
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
	if t.Plain {
		return t.Paper
	}
	if t.Mono != nil {
		return *t.Mono
	}
	lch := colour.Display(c, white, t.Lamp).LCH()
	lch.C *= t.Chroma
	return ink.Colour(lch.Pixel())
}

// A line is thin and a wedge faint: to be seen as the colour that its light is, either is drawn more colourful than
// a symbol, the more so the closer its light is to white, up to a chroma that no light passes.
const (
	mostChroma = 90.0
	chromaRise = 26.0
)

// vivid is a chroma of light as lines show it.
func vivid(chroma float64) float64 { return mostChroma * -math.Expm1(-chroma/chromaRise) }

// of is the ink of light of colour c at a lightness, with a share of the chroma that lines have.
func (t *Theme) of(c colour.RGB, white [2]float64, lightness, share float64) ink.Colour {
	if t.Plain {
		return t.Ink
	}
	if t.Mono != nil {
		return *t.Mono
	}
	lch := colour.Display(c, white, t.Lamp).LCH()
	lch.C, lch.L = share*t.Chroma*vivid(lch.C), lightness
	return ink.Colour(lch.Pixel())
}

// beam is the ink of the lines of light of colour c: its own hue, dark and strong.
func (t *Theme) beam(c colour.RGB, white [2]float64) ink.Colour { return t.of(c, white, t.Beam, 1) }

// band is the ink beside such a line, and glow that of a wedge of the light. White light is nearly paper: a grey would
// be taken for its shadow.
func (t *Theme) band(c colour.RGB, white [2]float64) ink.Colour {
	const share, whiter = 0.9, 8
	return t.of(c, white, t.Glow+whiter*t.paleness(c, white), share)
}

func (t *Theme) glow(c colour.RGB, white [2]float64) ink.Colour {
	const share, over, whiter = 0.35, 6, 3
	return t.of(c, white, t.Glow+over+whiter*t.paleness(c, white), share)
}

// paleness is how close light is to the camera's white, 0 to 1.
func (t *Theme) paleness(c colour.RGB, white [2]float64) float64 {
	return 1 - vivid(colour.Display(c, white, t.Lamp).LCH().C)/mostChroma
}

// The dashes of the lines of a map in two colours, mm, told apart from each other and from full contours.
var (
	plainBeam  = []float64{6, 1.5}
	plainField = []float64{3.2, 2}
	plainThrow = []float64{2.6, 1, 2.6, 2.4}
	plainView  = []float64{6.5, 1.5, 1.2, 1.5}
)

// throwWide is the pen of a throw in two colours, mm: its short dashes lose their ends to a copier.
const throwWide = 0.42

// The pens of a map: of beams to half the peak and to a tenth, of throws and of cameras' views.
func (t *Theme) beamPen(c ink.Colour) ink.Pen {
	if t.Plain {
		return ink.Pen{Colour: c, Width: Thick, Dash: plainBeam}
	}
	return ink.Pen{Colour: c, Width: Medium}
}

func (t *Theme) fieldPen(c ink.Colour) ink.Pen {
	if t.Plain {
		return ink.Pen{Colour: c, Width: t.Least, Dash: plainField}
	}
	return ink.Pen{Colour: c, Width: Hair, Dash: fieldDash}
}

func (t *Theme) throwPen() ink.Pen {
	if t.Plain {
		return ink.Pen{Colour: t.Ink, Width: throwWide, Dash: plainThrow}
	}
	return ink.Pen{Colour: t.Ink, Width: Hair}
}

func (t *Theme) viewPen() ink.Pen {
	if t.Plain {
		return ink.Pen{Colour: t.Ink, Width: t.Least, Dash: plainView}
	}
	return ink.Pen{Colour: t.Ink, Width: Thin, Dash: viewDash}
}

// rim is what lettering on the tints of the map has round it: nothing on a light map, and paper on a
// dark one, whose lighter tints would swallow it, and on a screen of dots.
func (t *Theme) rim() *ink.Colour {
	if t.Plain || t.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		return &t.Paper
	}
	return nil
}
