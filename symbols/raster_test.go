package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// raster is a symbol in black and white as an eye sees it at arm's length: a pixel is 0.1 mm, and
// its value is how dark it is, 0 to 1.
type raster struct {
	w, h int
	dark []float64
}

const pixel = 0.1 // mm

// rasterise draws a page of ink in the size of its own marks, the middle of them in the middle.
func rasterise(p *ink.Page) raster {
	b := p.Bounds(nil).Grown(1).Box
	r := raster{w: int((b.Max.X - b.Min.X) / pixel), h: int((b.Max.Y - b.Min.Y) / pixel)}
	r.dark = make([]float64, r.w*r.h)
	for _, layer := range ink.Layers() {
		for _, it := range p.Items {
			if it.Layer == layer {
				r.mark(it, b.Min)
			}
		}
	}
	return r
}

// mark paints one item over what is there.
func (r raster) mark(it ink.Item, origin r2.Vec) {
	runs := ink.Path(it.Path).Flatten(0.01)
	box := it.Bounds(nil).Box
	at := func(v, from float64, n int) int { return min(max(int((v-from)/pixel), 0), n) }
	for j := at(box.Min.Y, origin.Y, r.h); j < at(box.Max.Y+pixel, origin.Y, r.h); j++ {
		for i := at(box.Min.X, origin.X, r.w); i < at(box.Max.X+pixel, origin.X, r.w); i++ {
			p := r2.Add(origin, r2.Vec{X: (float64(i) + 0.5) * pixel, Y: (float64(j) + 0.5) * pixel})
			if it.Fill != nil && inside(runs, p) {
				r.dark[j*r.w+i] = darkness(*it.Fill)
			}
			if it.Stroke != nil && onStroke(runs, it.Stroke, p) {
				r.dark[j*r.w+i] = darkness(it.Stroke.Colour)
			}
		}
	}
}

// darkness is one less the luma of Rec. 709 (ITU-R BT.709): what a grey printer makes of a colour.
func darkness(c ink.Colour) float64 {
	return 1 - (0.2126*float64(c.R)+0.7152*float64(c.G)+0.0722*float64(c.B))/255
}

// inside follows the non-zero rule.
func inside(runs []ink.Run, p r2.Vec) bool {
	w := 0
	for _, run := range runs {
		for i, a := range run.Points {
			b := run.Points[(i+1)%len(run.Points)]
			side := r2.Cross(r2.Sub(b, a), r2.Sub(p, a))
			switch {
			case a.Y <= p.Y && b.Y > p.Y && side > 0:
				w++
			case b.Y <= p.Y && a.Y > p.Y && side < 0:
				w--
			}
		}
	}
	return w != 0
}

// onStroke says whether p lies on a dash of a line.
func onStroke(runs []ink.Run, s *ink.Stroke, p r2.Vec) bool {
	for _, run := range runs {
		points := run.Points
		if run.Closed && len(points) > 0 {
			points = append(points[:len(points):len(points)], points[0])
		}
		along := 0.0
		for i := 1; i < len(points); i++ {
			a, d := points[i-1], r2.Sub(points[i], points[i-1])
			length := r2.Norm(d)
			if length == 0 {
				continue
			}
			t := min(max(r2.Dot(r2.Sub(p, a), d)/(length*length), 0), 1)
			if r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(t, d)))) <= s.Width/2 && onDash(s.Dash, along+t*length) {
				return true
			}
			along += length
		}
	}
	return false
}

func onDash(dash []float64, at float64) bool {
	whole := 0.0
	for _, d := range dash {
		whole += d
	}
	if whole == 0 {
		return true
	}
	at = math.Mod(at, whole)
	for i, d := range dash {
		if at < d {
			return i%2 == 0
		}
		at -= d
	}
	return false
}

// ink returns how much of it there is.
func (r raster) ink() (sum float64) {
	for _, d := range r.dark {
		sum += d
	}
	return sum
}

// shared returns how much of their ink two symbols share where they lie on each other middle on
// middle, or up to a millimetre off: what both darken over what either does. It is not looked for
// where it cannot be over least.
func shared(a, b raster, least float64) float64 {
	if ia, ib := a.ink(), b.ink(); min(ia, ib)/max(ia, ib) <= least {
		return 0
	}
	best := 0.0
	for dy := -10; dy <= 10; dy += 2 {
		for dx := -10; dx <= 10; dx += 2 {
			best = max(best, sharedAt(a, b, (a.w-b.w)/2+dx, (a.h-b.h)/2+dy))
		}
	}
	return best
}

func sharedAt(a, b raster, dx, dy int) float64 {
	both := 0.0
	for j := max(0, -dy); j < min(b.h, a.h-dy); j++ {
		for i := max(0, -dx); i < min(b.w, a.w-dx); i++ {
			both += min(b.dark[j*b.w+i], a.dark[(j+dy)*a.w+i+dx])
		}
	}
	return both / (a.ink() + b.ink() - both)
}
