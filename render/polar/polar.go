// Package polar draws the polar curve of a measured light: intensity against the angle from the axis,
// in the planes of the lamp's right and of its up, with the angles to 50 % and to 10 %.
package polar

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// Chart is what a diagram shows.
type Chart struct {
	Title, Subtitle string
	Source          photometry.Source
	Facts           [][2]string // what is written below: a word and its value
	Notes           []string    // sentences under the facts
}

// The paper, mm.
const (
	pageWidth = 160.0
	margin    = 12.0
	rim       = 7.0  // around the outermost ring, for the angles
	headRoom  = 15.0 // for the title and what is under it
	factRow   = 5.4
	noteRow   = 4.0
	gap       = 7.0 // between the parts
)

// Sizes of lettering, mm of em; capitals are 0.7 of it high.
const (
	titleSize = 5.6
	textSize  = 3.1
	smallSize = 2.7
)

// The inks and pens: those of the plan sheets by day.
var (
	paper   = ink.Colour{R: 255, G: 255, B: 255}
	dark    = ink.Colour{R: 26, G: 26, B: 30}
	quiet   = ink.Colour{R: 112, G: 112, B: 118}
	rule    = ink.Colour{R: 208, G: 208, B: 206}
	accent  = ink.Colour{R: 134, G: 84, B: 38}
	glow    = ink.Colour{R: 246, G: 240, B: 226}
	hair    = ink.Pen{Colour: rule, Width: 0.18}
	ringPen = ink.Pen{Colour: ink.Colour{R: 178, G: 178, B: 176}, Width: 0.18}
)

// Draw lays a chart out on a page as high as it needs.
func Draw(c Chart, m ink.Measure) ink.Page {
	d := &drawing{chart: c, measure: m, curves: curvesOf(c.Source)}
	d.measureOut()
	d.page = ink.Page{
		Title: c.Title, Description: d.description(), Width: pageWidth, Height: d.height,
	}
	d.canvas = ink.NewCanvas(&d.page, ink.Tint)
	d.canvas.Rect(ink.Solid(paper), r2.Vec{}, r2.Vec{X: pageWidth, Y: d.height})
	d.head()
	d.rings()
	d.spokes()
	d.lobes()
	d.angles()
	d.values()
	d.key()
	d.facts()
	return d.page
}

// drawing is a page in the making.
type drawing struct {
	chart   Chart
	measure ink.Measure
	curves  []curve
	notes   []string // broken into lines

	page   ink.Page
	canvas ink.Canvas
	height float64
	centre r2.Vec
	fan    fan
	step   float64 // between rings, cd
	top    float64 // of the outermost ring, cd
}

// fan is the part of the circle that is shown: up to an angle on either side of the axis, with a
// radius, mm, by which it fills the page; a figure stands at every so many degrees, a tick at every
// so many.
type fan struct {
	extent, radius float64
	figures, ticks int
}

// fans are the parts of the circle, the narrowest first: a narrow beam is shown larger.
var fans = []fan{{30, 104, 10, 5}, {45, 84, 15, 5}, {90, 58, 30, 10}, {180, 58, 30, 10}}

// maxShareOutside is the share of the peak that may lie outside a narrow fan, where it would be a line along
// its edge.
const maxShareOutside = 0.005

// fanFor is the narrowest fan that holds the curves.
func fanFor(curves []curve, most float64) fan {
	reach := 0.0
	behind := false
	for _, c := range curves {
		behind = behind || c.behind
		for _, p := range c.points {
			if p.candela > maxShareOutside*most {
				reach = math.Max(reach, math.Abs(p.angle))
			}
		}
	}
	for _, f := range fans {
		if f.extent >= 180 || reach <= f.extent && (f.extent < 90 || !behind) {
			return f
		}
	}
	return fans[len(fans)-1]
}

// measureOut finds the scale and the size of everything.
func (d *drawing) measureOut() {
	most := 0.0
	for _, c := range d.curves {
		most = math.Max(most, c.most)
	}
	d.fan = fanFor(d.curves, most)
	d.step = ringStep(most)
	d.top = math.Max(1, math.Ceil(most/d.step-1e-9)) * d.step
	for _, note := range d.chart.Notes {
		d.notes = append(d.notes, ink.Wrap(d.measure, note, smallSize, pageWidth-2*margin)...)
	}
	above := rim
	if d.fan.extent > 90 {
		above += d.fan.radius
	}
	below := gap + factRow*math.Ceil(float64(len(d.chart.Facts))/2) + noteRow*float64(len(d.notes))
	if len(d.notes) > 0 {
		below += gap / 2
	}
	d.height = margin + headRoom + above + d.fan.radius + rim + gap + below + margin
	d.centre = r2.Vec{X: pageWidth / 2, Y: d.height - margin - headRoom - above}
}

// ringStep is a round number of candelas that goes into the greatest six times at most.
func ringStep(most float64) float64 {
	if !(most > 0) {
		return 1
	}
	power := math.Pow(10, math.Floor(math.Log10(most)))
	for _, part := range []float64{0.2, 0.25, 0.5, 1, 2} {
		if most/(part*power) <= 6 {
			return part * power
		}
	}
	return 2 * power
}

// at is the place of an intensity at an angle from the axis, degrees: to the right of the page where it is
// positive, 0 downward.
func (d *drawing) at(angle, candela float64) r2.Vec {
	return r2.Add(d.centre, r2.Scale(d.fan.radius*candela/d.top, ink.Direction(180-angle)))
}

func (d *drawing) text(at r2.Vec, words string, size float64, c ink.Colour, align ink.Align) ink.Text {
	return ink.Text{At: at, S: words, Size: size, Colour: c, Align: align}
}

// head is the title over a line on what it is of.
func (d *drawing) head() {
	top := d.height - margin
	title := d.text(r2.Vec{X: margin, Y: top - 4.2}, cutToWidth(d.measure, d.chart.Title, titleSize, true, pageWidth-2*margin), titleSize, dark, ink.Left)
	title.Bold = true
	on := d.canvas.On(ink.Collar)
	on.Text(title)
	on.Text(d.text(r2.Vec{X: margin, Y: top - 9.6}, cutToWidth(d.measure, d.chart.Subtitle, textSize, false, pageWidth-2*margin), textSize, quiet, ink.Left))
}

// description is the diagram for a reader who cannot see it.
func (d *drawing) description() string {
	var parts []string
	for _, f := range d.chart.Facts {
		parts = append(parts, f[0]+" "+f[1])
	}
	return "Polar curve of luminous intensity. " + strings.Join(parts, ", ") + "."
}

// cutToWidth is a line cut to a width, mm.
func cutToWidth(m ink.Measure, s string, size float64, bold bool, width float64) string {
	r := []rune(ink.Clean(s))
	if m.Width(string(r), size, bold) <= width {
		return string(r)
	}
	r = r[:ink.Fitting(r, width, func(s string) float64 { return m.Width(s, size, bold) })]
	for len(r) > 0 && m.Width(string(r)+"…", size, bold) > width {
		r = r[:len(r)-1]
	}
	return strings.TrimSpace(string(r)) + "…"
}

// degreesOf prints an angle.
func degreesOf(v float64) string { return unit.FormatAngle(v) }
