// Package tint paints illuminance as a continuous tint: a raster that runs through the tints of
// the bands, each at the middle of its band, and has the bands' own edges wherever the light jumps.
package tint

import (
	"image"
	"math"

	"github.com/fogleman/gg"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/colour"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// Map is one field, and the regions at or over each of its levels as carto traced them from it:
// one more than there are levels, each inside the one before.
type Map struct {
	Grid  carto.Grid // lx
	Steps []carto.Band
	// Hue is the colour at a point of the plan as CIELAB a and b; nil: that of the scale. The lightness is the scale's.
	Hue func(p r2.Vec) (a, b float64)
}

// Frame says where maps lie on paper and how finely they are painted.
type Frame struct {
	Scale float64    // mm of paper to one unit of the plan
	Shift r2.Vec     // mm: where the plan's origin lies
	Panel r2.Box     // mm: nothing is painted outside
	PerMM float64    // pixels to the millimetre; 0 is Fine
	Paper ink.Colour // what shows where no map has data
}

// Fine is the resolution of a picture that nobody asked for otherwise, pixels to the millimetre:
// 152 to the inch. A continuous tint has no detail that a finer one would show.
const Fine = 6.0

// maxPixels is the most pixels of a picture: an A1 panel at Fine.
const maxPixels = 20e6

// Smooth paints maps into one picture, later ones over earlier ones. It says no where there is
// nothing to paint.
func Smooth(maps []Map, s Scale, f Frame) (ink.Image, bool) {
	if f.PerMM <= 0 {
		f.PerMM = Fine
	}
	b, ok := newBoard(maps, f)
	if !ok {
		return ink.Image{}, false
	}
	for i := range maps {
		if len(maps[i].region(0)) > 0 {
			b.paint(&maps[i], s, uint8(i+1))
		}
	}
	return b.picture(s, maps), true
}

// board is a picture in the making: a place on the scale for every pixel.
type board struct {
	frame        Frame
	box          r2.Box // mm, whole pixels
	wide, high   int
	place        []float32   // bands from the middle of the darkest; bare where there is no data
	owner        []uint8     // the map of a pixel, counted from 1
	above, below *gg.Context // cover of the region at hand and of the next
}

// noData is the place of a pixel without data.
const noData = -1

// newBoard has room for all that the maps show inside the panel.
func newBoard(maps []Map, f Frame) (*board, bool) {
	b := &board{frame: f}
	var all ink.Extent
	for i := range maps {
		for _, ring := range b.rings(maps[i].region(0)) {
			all.Add(ring...)
		}
	}
	if all.Empty() {
		return nil, false
	}
	for area(all.Box)*b.frame.PerMM*b.frame.PerMM > maxPixels {
		b.frame.PerMM /= 2
	}
	px := b.frame.PerMM
	b.box = r2.Box{
		Min: r2.Vec{X: math.Floor(all.Box.Min.X*px) / px, Y: math.Floor(all.Box.Min.Y*px) / px},
		Max: r2.Vec{X: math.Ceil(all.Box.Max.X*px) / px, Y: math.Ceil(all.Box.Max.Y*px) / px},
	}
	b.wide, b.high = int(math.Round((b.box.Max.X-b.box.Min.X)*px)), int(math.Round((b.box.Max.Y-b.box.Min.Y)*px))
	if b.wide < 1 || b.high < 1 {
		return nil, false
	}
	b.place, b.owner = make([]float32, b.wide*b.high), make([]uint8, b.wide*b.high)
	for i := range b.place {
		b.place[i] = noData
	}
	b.above, b.below = gg.NewContext(b.wide, b.high), gg.NewContext(b.wide, b.high)
	return b, true
}

func area(b r2.Box) float64 { return (b.Max.X - b.Min.X) * (b.Max.Y - b.Min.Y) }

// region is the k-th of a map, lowest first; what lies beyond the last is empty.
func (m *Map) region(k int) [][]r2.Vec {
	if k < len(m.Steps) {
		return m.Steps[k].Rings
	}
	return nil
}

// rings are those of the plan on paper, inside the panel.
func (b *board) rings(plan [][]r2.Vec) [][]r2.Vec {
	panel := ink.Corners(b.frame.Panel.Min, b.frame.Panel.Max)
	var out [][]r2.Vec
	for _, ring := range plan {
		placed := make([]r2.Vec, len(ring))
		for i, p := range ring {
			placed[i] = r2.Add(b.frame.Shift, r2.Scale(b.frame.Scale, p))
		}
		if placed = ink.ClipPolygon(placed, panel); len(placed) > 0 {
			out = append(out, placed)
		}
	}
	return out
}

// cover fills a region on a context, by the non-zero rule.
func (b *board) cover(dc *gg.Context, region [][]r2.Vec) {
	dc.SetRGBA(0, 0, 0, 0)
	dc.Clear()
	dc.SetRGB(1, 1, 1)
	for _, ring := range b.rings(region) {
		dc.NewSubPath()
		for _, p := range ring {
			dc.LineTo((p.X-b.box.Min.X)*b.frame.PerMM, (b.box.Max.Y-p.Y)*b.frame.PerMM)
		}
		dc.ClosePath()
	}
	dc.Fill()
}

// paint lays a map over what is there, region by region. A pixel that the next region covers whole
// is left to it.
func (b *board) paint(m *Map, s Scale, owner uint8) {
	t := newTerrain(m.Grid, s)
	b.cover(b.above, m.region(0))
	for k := range m.Steps {
		b.above, b.below = b.below, b.above
		b.cover(b.above, m.region(k+1))
		here, next := alpha(b.below), alpha(b.above)
		for n := range b.place {
			if a := here[4*n+3]; a > 0 && next[4*n+3] < 0xFF {
				b.blend(n, t.at(b.plan(n), k), a)
				b.owner[n] = owner
			}
		}
	}
}

// alpha is a context's pixels, of which every fourth byte is how much is covered.
func alpha(dc *gg.Context) []byte { return dc.Image().(*image.RGBA).Pix }

// plan is the point of the plan under the middle of pixel n.
func (b *board) plan(n int) r2.Vec {
	x := b.box.Min.X + (float64(n%b.wide)+0.5)/b.frame.PerMM
	y := b.box.Max.Y - (float64(n/b.wide)+0.5)/b.frame.PerMM
	return r2.Scale(1/b.frame.Scale, r2.Sub(r2.Vec{X: x, Y: y}, b.frame.Shift))
}

// blend puts a place on pixel n by a share of 255. Mixing places rather than colours keeps every
// pixel on the ramp. The outer edge lies under the walls: it is not mixed with the paper.
func (b *board) blend(n int, place float32, share byte) {
	switch {
	case b.place[n] != noData:
		b.place[n] += (place - b.place[n]) * float32(share) / 0xFF
	case share >= 0x80:
		b.place[n] = place
	}
}

// picture turns places into colours.
func (b *board) picture(s Scale, maps []Map) ink.Image {
	m := ink.Image{Min: b.box.Min, Max: b.box.Max, Width: b.wide, Height: b.high, RGB: make([]byte, 0, 3*len(b.place))}
	h := hued{scale: s, tones: map[ink.Colour]int8{}, known: map[[3]int8]ink.Colour{}}
	for n, place := range b.place {
		c := b.frame.Paper
		if place != noData {
			c = s.tint(float64(place))
			if hue := maps[max(b.owner[n], 1)-1].Hue; hue != nil {
				c = h.at(float64(place), hue, b.plan(n))
			}
		}
		m.RGB = append(m.RGB, c.R, c.G, c.B)
	}
	return m
}

// hued gives the tones of a scale another hue.
type hued struct {
	scale Scale
	tones map[ink.Colour]int8    // the lightness of the scale's
	known map[[3]int8]ink.Colour // to a step of lightness and of a and b
}

// Tones that have a hue keep off both ends: close to paper there is room for none, and what is dark and warm is mud. One of
// a lightness l lies at tonedFrom + tonedShare * l.
const (
	tonedFrom  = 24.0
	tonedShare = 0.70
)

// at is the tone of a place with the hue of a point.
func (h *hued) at(place float64, hue func(r2.Vec) (a, b float64), p r2.Vec) ink.Colour {
	tone := h.scale.tint(place)
	lightness, ok := h.tones[tone]
	if !ok {
		lightness = int8(math.Round(tonedFrom + tonedShare*colour.Pixel(tone).LCH().L))
		h.tones[tone] = lightness
	}
	a, b := hue(p)
	key := [3]int8{lightness, int8(math.Round(a)), int8(math.Round(b))}
	c, ok := h.known[key]
	if !ok {
		x, y := float64(key[1]), float64(key[2])
		c = ink.Colour(colour.LCH{L: float64(key[0]), C: math.Hypot(x, y), H: math.Atan2(y, x) * 180 / math.Pi}.Pixel())
		h.known[key] = c
	}
	return c
}
