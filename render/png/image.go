package png

import (
	"image"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// image draws a raster: averaged where its pixels are finer than the picture's, blended where they
// are coarser, with edges as exact as those of a box.
func (c *canvas) image(m *ink.Image) {
	low, high := c.place(r2.Vec{X: m.Min.X, Y: m.Max.Y}), c.place(r2.Vec{X: m.Max.X, Y: m.Min.Y})
	box := image.Rect(whole(math.Floor(low.X)), whole(math.Floor(low.Y)), whole(math.Ceil(high.X)), whole(math.Ceil(high.Y)))
	seen := box.Intersect(c.img.Rect)
	if seen.Empty() {
		return
	}
	c.add(ink.Corners(low, high))
	c.filler.paintFrom(resampled(m, seen, low, high))
}

// whole is a whole number as an integer, on a picture or beside it.
func whole(v float64) int { return int(min(max(v, -1), math.MaxInt32)) }

// resampled returns the pixels of the picture inside seen where the raster lies between two
// corners: first the columns, then the rows.
func resampled(m *ink.Image, seen image.Rectangle, low, high r2.Vec) *image.RGBA {
	columns := taps(seen.Min.X, seen.Max.X, low.X, high.X, m.Width)
	rows := taps(seen.Min.Y, seen.Max.Y, low.Y, high.Y, m.Height)
	first, end := rows[0].first, rows[len(rows)-1].end()
	narrow := make([][3]float64, len(columns)*(end-first))
	for y := first; y < end; y++ {
		source := m.RGB[3*y*m.Width:]
		for x, t := range columns {
			sum := &narrow[(y-first)*len(columns)+x]
			for i, w := range t.weights {
				p := source[3*(t.first+i):]
				sum[0], sum[1], sum[2] = sum[0]+w*float64(p[0]), sum[1]+w*float64(p[1]), sum[2]+w*float64(p[2])
			}
		}
	}
	out := image.NewRGBA(seen)
	for y, t := range rows {
		for x := range columns {
			var sum [3]float64
			for i, w := range t.weights {
				p := narrow[(t.first+i-first)*len(columns)+x]
				sum[0], sum[1], sum[2] = sum[0]+w*p[0], sum[1]+w*p[1], sum[2]+w*p[2]
			}
			pixel := out.Pix[y*out.Stride+4*x:]
			pixel[0], pixel[1], pixel[2], pixel[3] = byte(sum[0]+0.5), byte(sum[1]+0.5), byte(sum[2]+0.5), 0xFF
		}
	}
	return out
}

// tap is what one pixel of the picture takes of the raster's: those from first on, by weights that
// add up to 1.
type tap struct {
	first   int
	weights []float64
}

func (t tap) end() int { return t.first + len(t.weights) }

// taps returns those of the pixels from one up to another, along one axis on which n pixels of the
// raster fill the space from low to high. The weight falls off evenly to a pixel's distance, of
// whichever is the coarser; what lies beyond the raster is as its edge.
func taps(from, to int, low, high float64, n int) []tap {
	ratio := float64(n) / (high - low) // pixels of the raster to one of the picture
	reach := max(ratio, 1)
	out := make([]tap, to-from)
	for i := range out {
		centre := (float64(from+i)+0.5-low)*ratio - 0.5
		first, last := int(math.Ceil(centre-reach)), int(math.Floor(centre+reach))
		t := tap{first: min(max(first, 0), n-1)}
		t.weights = make([]float64, min(max(last, 0), n-1)-t.first+1)
		sum := 0.0
		for k := first; k <= last; k++ {
			w := 1 - math.Abs(float64(k)-centre)/reach
			t.weights[min(max(k, t.first), t.end()-1)-t.first] += w
			sum += w
		}
		for k := range t.weights {
			t.weights[k] /= sum
		}
		out[i] = t
	}
	return out
}
