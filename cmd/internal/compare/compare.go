// Package compare says how much two pictures of a page differ, for tests that hold one renderer to
// another.
package compare

import (
	"fmt"
	"image"
	"image/draw"
	"math"

	"scrimshaw/plan/colour"
)

// Difference is how much two pictures differ.
type Difference struct {
	// Mean is the mean over all pixels and channels of the difference in linear light, 0 to 1.
	Mean float64
	// Share is how many of the pixels differ by more than an eighth in some channel, 0 to 1.
	Share float64
	// Apart is the share of them that do so in a way that no neighbour explains: the colour in one picture lies, by
	// more than an eighth, beyond those that the other has within one pixel of the place. Edges that
	// lie a part of a pixel aside, which is what smoothing and hinting do, are not counted; a mark
	// that is missing, or that lies more than a pixel off, is.
	Apart float64
}

// String prints the measures in per cent.
func (d Difference) String() string {
	return fmt.Sprintf("mean %.3f %%, over 1/8 %.3f %%, over 1/8 with no like neighbour %.3f %%", 100*d.Mean, 100*d.Share, 100*d.Apart)
}

// much is the difference that counts as one that is seen.
const much = 1.0 / 8

// Images compares two pictures of one size.
func Images(a, b image.Image) (Difference, error) {
	if a.Bounds().Size() != b.Bounds().Size() {
		return Difference{}, fmt.Errorf("pictures of %v and of %v", a.Bounds().Size(), b.Bounds().Size())
	}
	if a.Bounds().Empty() {
		return Difference{}, nil
	}
	p, q := newLight(a), newLight(b)
	var d Difference
	for n := range p.at {
		d.Mean += p.at[n].mean(q.at[n])
		if p.at[n].most(q.at[n]) > much {
			d.Share++
			if !p.near(n, q.at[n]) || !q.near(n, p.at[n]) {
				d.Apart++
			}
		}
	}
	all := float64(len(p.at))
	return Difference{d.Mean / all, d.Share / all, d.Apart / all}, nil
}

// light is a picture in linear light on black, 0 to 1.
type light struct {
	wide int
	at   []pixel
}

type pixel [3]float64

func newLight(m image.Image) light {
	b := m.Bounds()
	flat := image.NewRGBA(image.Rectangle{Max: b.Size()})
	draw.Draw(flat, flat.Rect, m, b.Min, draw.Src)
	l := light{wide: b.Dx(), at: make([]pixel, b.Dx()*b.Dy())}
	decode := decoder()
	for n := range l.at {
		c := flat.Pix[4*n:]
		l.at[n] = pixel{decode[c[0]], decode[c[1]], decode[c[2]]}
	}
	return l
}

// decoder is the light of each code of 8 bits.
func decoder() (table [256]float64) {
	for i := range table {
		table[i] = colour.Pixel{R: uint8(i)}.Linear()[0]
	}
	return table
}

// mean is the mean difference over the channels.
func (p pixel) mean(q pixel) float64 {
	return (math.Abs(p[0]-q[0]) + math.Abs(p[1]-q[1]) + math.Abs(p[2]-q[2])) / 3
}

// most is the greatest difference of a channel.
func (p pixel) most(q pixel) float64 {
	return max(math.Abs(p[0]-q[0]), math.Abs(p[1]-q[1]), math.Abs(p[2]-q[2]))
}

// near says whether a colour lies, in every channel, among those within one pixel of pixel n, or
// an eighth beyond.
func (l light) near(n int, c pixel) bool {
	low, high := l.at[n], l.at[n]
	x := n % l.wide
	for dx := max(-1, -x); dx <= min(1, l.wide-1-x); dx++ {
		for _, m := range [...]int{n - l.wide + dx, n + dx, n + l.wide + dx} {
			if m < 0 || m >= len(l.at) {
				continue
			}
			for k, v := range l.at[m] {
				low[k], high[k] = min(low[k], v), max(high[k], v)
			}
		}
	}
	for k, v := range c {
		if v < low[k]-much || v > high[k]+much {
			return false
		}
	}
	return true
}
