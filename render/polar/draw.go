package polar

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// rings are the arcs of equal intensity.
func (d *drawing) rings() {
	on := d.canvas.On(ink.Contours)
	for i := 1; float64(i)*d.step <= d.top*(1+1e-9); i++ {
		r := d.fan.radius * float64(i) * d.step / d.top
		if d.fan.extent >= 180 {
			on.Circle(ringPen, d.centre, r)
		} else {
			on.Arc(ringPen, d.centre, r, 180-d.fan.extent, 180+d.fan.extent)
		}
	}
}

// beyond is an intensity by which a place lies some millimetres outside the outermost ring.
func (d *drawing) beyond(mm float64) float64 { return d.top * (1 + mm/d.fan.radius) }

// spokes are the angles: lines with a figure outside, and ticks between them.
func (d *drawing) spokes() {
	on := d.canvas.On(ink.Contours)
	last := int(d.fan.extent)
	for angle := -last; angle <= last; angle += d.fan.ticks {
		if angle == -180 {
			continue
		}
		a := float64(angle)
		if angle%d.fan.figures != 0 {
			on.Polyline(ringPen, d.at(a, d.top), d.at(a, d.beyond(1.2)))
			continue
		}
		pen := hair
		if angle == 0 || angle == last || angle == -last || angle == 90 || angle == -90 {
			pen = ringPen
		}
		on.Polyline(pen, d.centre, d.at(a, d.beyond(1.2)))
		at := d.at(a, d.beyond(4.2))
		at.Y -= 0.35 * smallSize
		words := fmt.Sprintf("%d°", max(angle, -angle))
		d.canvas.On(ink.Notes).Text(d.text(at, words, smallSize, quiet, ink.Centre))
	}
}

// lobes are the curves: the first filled with a pale tone, the second dashed.
func (d *drawing) lobes() {
	first := d.line(&d.curves[0])
	d.canvas.On(ink.Tint).Polygon(ink.Solid(glow), first...)
	for i := len(d.curves) - 1; i >= 0; i-- {
		c := &d.curves[i]
		on := d.canvas.On(ink.Beams).Of("curve:"+c.name, fmt.Sprintf("Intensity in %s: beam %s, field %s.", c.name, degreesOf(c.beam), degreesOf(c.field)))
		on.Polyline(d.penOf(i), d.line(c)...)
	}
}

// penOf is the line of a curve.
func (d *drawing) penOf(i int) ink.Pen {
	if i == 0 {
		return ink.Pen{Colour: dark, Width: 0.5, Round: true}
	}
	return ink.Pen{Colour: dark, Width: 0.35}.Dashed(2.4, 1.1)
}

// ray is one of the angles to a share of the peak.
type ray struct {
	share string
	full  float64 // degrees
	pen   ink.Pen
}

// rays are those of the first curve that the diagram has room for.
func (d *drawing) rays() (all []ray) {
	c := &d.curves[0]
	pen := ink.Pen{Colour: accent, Width: 0.25}
	for _, r := range []ray{{"50 %", c.beam, pen}, {"10 %", c.field, pen.Dashed(1.6, 1.1)}} {
		if half := r.full / 2; half > 0 && half < 180 && half <= d.fan.extent+1e-6 {
			all = append(all, r)
		}
	}
	return all
}

// angles draws the rays.
func (d *drawing) angles() {
	for _, r := range d.rays() {
		on := d.canvas.On(ink.Beams).Of("angle:"+r.share, fmt.Sprintf("Rays at the angle to %s of the peak, %s from edge to edge.", r.share, degreesOf(r.full)))
		on.Polyline(r.pen, d.at(-r.full/2, d.top), d.centre, d.at(r.full/2, d.top))
	}
}

// values are the figures of the rings, where they meet the edge of the fan: beside it, or over the line
// of 90 degrees.
func (d *drawing) values() {
	on := d.canvas.On(ink.Readings)
	edge, align, shift := d.fan.extent, ink.Left, r2.Vec{X: 1.2, Y: 0.2}
	if edge >= 90 {
		edge, align, shift = 90, ink.Right, r2.Vec{X: -0.8, Y: 0.9}
	}
	for i := 1; float64(i)*d.step <= d.top*(1+1e-9); i++ {
		v := float64(i) * d.step
		t := d.text(r2.Add(d.at(edge, v), shift), fmt.Sprintf("%g", round(v)), smallSize, accent, align)
		t.Halo = &paper
		on.Text(t)
	}
	unit := d.text(r2.Add(d.at(-edge, d.top), r2.Vec{X: -shift.X, Y: shift.Y}), "candela", smallSize, accent, ink.Right-align)
	on.Text(unit)
}

// round takes the noise of a sum off a figure.
func round(v float64) float64 {
	power := math.Pow(10, 3-math.Floor(math.Log10(v)))
	return math.Round(v*power) / power
}

// key tells the lines apart, under the circle.
func (d *drawing) key() {
	on := d.canvas.On(ink.Collar)
	y := d.centre.Y - d.fan.radius - rim - gap/2
	type entry struct {
		pen   ink.Pen
		words string
	}
	var entries []entry
	for i, c := range d.curves {
		entries = append(entries, entry{d.penOf(i), c.name})
	}
	for _, r := range d.rays() {
		entries = append(entries, entry{r.pen, r.share + ", " + degreesOf(r.full)})
	}
	const sample, space, between = 9.0, 2.0, 7.0
	width := -between
	for _, e := range entries {
		width += sample + space + d.measure.Width(e.words, smallSize, false) + between
	}
	x := (pageWidth - width) / 2
	for _, e := range entries {
		on.Polyline(e.pen, r2.Vec{X: x, Y: y}, r2.Vec{X: x + sample, Y: y})
		on.Text(d.text(r2.Vec{X: x + sample + space, Y: y - 0.35*smallSize}, e.words, smallSize, dark, ink.Left))
		x += sample + space + d.measure.Width(e.words, smallSize, false) + between
	}
}

// facts are the figures in two columns, with a hairline under each, and the notes.
func (d *drawing) facts() {
	on := d.canvas.On(ink.Collar)
	const middle = 10.0
	width := (pageWidth - 2*margin - middle) / 2
	rows := (len(d.chart.Facts) + 1) / 2
	top := d.centre.Y - d.fan.radius - rim - 2*gap
	for i, f := range d.chart.Facts {
		x := margin + float64(i/rows)*(width+middle)
		y := top - factRow*float64(i%rows+1)
		on.Polyline(hair, r2.Vec{X: x, Y: y}, r2.Vec{X: x + width, Y: y})
		room := width - d.measure.Width(f[0], textSize, false) - 2
		size := textSize
		if d.measure.Width(f[1], size, false) > room {
			size = smallSize
		}
		on.Text(d.text(r2.Vec{X: x, Y: y + 1.5}, f[0], textSize, quiet, ink.Left))
		on.Text(d.text(r2.Vec{X: x + width, Y: y + 1.5}, cutToWidth(d.measure, f[1], size, false, room), size, dark, ink.Right))
	}
	y := top - factRow*float64(rows) - gap/2
	for i, line := range d.notes {
		on.Text(d.text(r2.Vec{X: margin, Y: y - noteRow*float64(i+1) + 1}, line, smallSize, quiet, ink.Left))
	}
}
