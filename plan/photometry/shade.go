package photometry

import "math"

// ShadeForm is a bulb within a round shade that is open at both ends, by what a tape measures. The top lies toward the
// lamp's axis, the bottom away from it; the bulb burns in the middle between them.
type ShadeForm struct {
	Top, Bottom   float64 // diameters of the openings, m
	Height        float64 // from the one to the other, m
	Bulb          float64 // diameter of the bulb, m
	Reflectance   float64 // share of the light on the side that its inside throws back, scattered, 0 to 1
	Transmittance float64 // share that leaves the side's outside, scattered, 0 to 1
}

// Parts are the ways by which the light of a bulb leaves its shade, as shares of the bulb's flux; they add up to 1.
type Parts struct{ Above, Side, Below, Absorbed float64 }

// shadeBands is into how many bands of even brightness the side of a shade is divided.
const shadeBands = 12

// Shade is the light of a bulb within a shade: what passes through the openings straight from the bulb and from the
// inside of the side, and what the side itself shines with. The bulb is a Lambertian sphere that hides nothing. Each
// band of the side gets light of the bulb and of all other bands, and so on without end: a balance of fluxes, whose
// factors between coaxial discs have a closed form (M. F. Modest, Radiative Heat Transfer, configuration C-41).
type Shade struct {
	form  ShadeForm
	parts Parts
	rings [shadeBands + 1]ring
	bands [shadeBands]Band

	under, over [bulbStrips]strip // of the bulb, before the lower opening and the upper one
}

// ring is where two bands meet: how far along the axis from the middle, and its radius, m.
type ring struct{ at, radius float64 }

// Band is one band of a shade, from its lower rim to its upper one, with what it shines with inside and outside, lm/m²
// for each lumen that leaves the shade.
type Band struct {
	Low, High             float64 // along the axis from the middle, m
	LowRadius, HighRadius float64 // m
	Inside, Outside       float64
}

// NewShade gives the light of a bulb within a shade, and the share of the bulb's flux that leaves it.
func NewShade(form ShadeForm) (s *Shade, share float64) {
	s = &Shade{form: form}
	for k := range s.rings {
		up := float64(k) / shadeBands
		s.rings[k] = ring{form.Height * (up - 0.5), (form.Bottom + up*(form.Top-form.Bottom)) / 2}
	}
	s.under, s.over = s.stripsOf(s.rings[0]), s.stripsOf(s.rings[shadeBands])
	for k := range s.bands {
		low, high := s.rings[k], s.rings[k+1]
		s.bands[k] = Band{Low: low.at, High: high.at, LowRadius: low.radius, HighRadius: high.radius}
	}
	s.balance()
	share = 1 - s.parts.Absorbed
	for k := range s.bands {
		s.bands[k].Inside /= share
		s.bands[k].Outside /= share
	}
	return s, share
}

// Form returns the measures of the shade.
func (s *Shade) Form() ShadeForm { return s.form }

// Parts returns the ways by which the bulb's light leaves.
func (s *Shade) Parts() Parts { return s.parts }

// Bands returns the bands of the side from the bottom up, some together as one that shines as they do on the whole.
func (s *Shade) Bands(together int) (all []Band) {
	for k := 0; k < shadeBands; k += together {
		some := s.bands[k:min(k+together, shadeBands)]
		last := &some[len(some)-1]
		one := Band{Low: some[0].Low, LowRadius: some[0].LowRadius, High: last.High, HighRadius: last.HighRadius}
		for i := range some {
			part := some[i].Area() / one.Area()
			one.Inside += some[i].Inside * part
			one.Outside += some[i].Outside * part
		}
		all = append(all, one)
	}
	return all
}

// BulbFlux is the bulb's own flux, lm, for each lumen that leaves the shade.
func (s *Shade) BulbFlux() float64 { return 1 / (1 - s.parts.Absorbed) }

// bulbLuminance is that of the bulb, cd/m² for each lumen that leaves the shade.
func (s *Shade) bulbLuminance() float64 {
	return s.BulbFlux() / luminousArea(Opening{Form: Sphere, Width: s.form.Bulb})
}

// Area is the surface of one side of the band, m².
func (b *Band) Area() float64 {
	return math.Pi * (b.LowRadius + b.HighRadius) * math.Hypot(b.High-b.Low, b.HighRadius-b.LowRadius)
}

// ahead is the cosine of the angle from the axis at which the bulb's middle sees a ring.
func (r ring) ahead() float64 { return r.at / math.Hypot(r.at, r.radius) }

// balance finds what every band shines with, for one lumen of the bulb, and by which ways the light leaves.
func (s *Shade) balance() {
	factors := s.exchanges()
	lit := s.lightOfBands(&factors)
	last := len(s.rings) - 1
	p := Parts{Above: (1 - s.rings[last].ahead()) / 2, Below: (1 + s.rings[0].ahead()) / 2}
	for k := range s.bands {
		b := &s.bands[k]
		on := lit[k] / b.Area()
		b.Inside, b.Outside = s.form.Reflectance*on, s.form.Transmittance*on
		p.Above += b.Inside * s.toDisc(k, last)
		p.Below += b.Inside * s.toDisc(k, 0)
		p.Side += s.form.Transmittance * lit[k]
		p.Absorbed += (1 - s.form.Reflectance - s.form.Transmittance) * lit[k]
	}
	s.parts = p
}

// The balance is struck where no band changes by more than settled of a lumen from one round to the next; a shade that
// takes nothing still loses through its openings.
const (
	settled    = 1e-15
	mostRounds = 10000
)

// lightOfBands is what falls on the inside of each band, lm for one of the bulb.
func (s *Shade) lightOfBands(factors *[shadeBands][shadeBands]float64) (lit [shadeBands]float64) {
	for range mostRounds {
		change := 0.0
		for k := range s.bands {
			sum := (s.rings[k+1].ahead() - s.rings[k].ahead()) / 2
			for i := range s.bands {
				sum += factors[k][i] * s.form.Reflectance * lit[i] / s.bands[i].Area()
			}
			change = math.Max(change, math.Abs(sum-lit[k]))
			lit[k] = sum
		}
		if change < settled {
			break
		}
	}
	return lit
}

// exchanges are the areas times form factors between all bands, m².
func (s *Shade) exchanges() (x [shadeBands][shadeBands]float64) {
	for i := range s.bands {
		for k := i + 1; k < shadeBands; k++ {
			x[i][k] = s.toDisc(i, k) - s.toDisc(i, k+1)
			x[k][i] = x[i][k]
		}
	}
	for i := range s.bands { // the rest of a band's view is its own inside
		own := s.bands[i].Area() - s.toDisc(i, 0) - s.toDisc(i, shadeBands)
		for k := range s.bands {
			if k != i {
				own -= x[i][k]
			}
		}
		x[i][i] = own
	}
	return x
}

// toDisc is the area times form factor between a band and the disc in a ring, m².
func (s *Shade) toDisc(band, disc int) float64 {
	near, far := s.rings[band], s.rings[band+1]
	if disc > band {
		near, far = far, near
	}
	return s.rings[disc].exchange(near) - s.rings[disc].exchange(far)
}

// exchange is the area times form factor between the discs in two rings, m².
func (r ring) exchange(o ring) float64 {
	d := r.at - o.at
	sum := r.radius*r.radius + o.radius*o.radius + d*d
	both := 2 * r.radius * o.radius
	return math.Pi / 2 * (sum - math.Sqrt(math.Max(0, (sum-both)*(sum+both))))
}
