package meter

import (
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/unit"
)

// mostDuv is the distance from the Planckian locus beyond which a correlated colour temperature
// has no meaning (CIE 15: 0.05 in the CIE 1960 diagram).
const mostDuv = 0.05

// tie is how much brighter, of one, a side must be before it counts as brighter: more than
// rounding, so that a symmetric scene has its key on the left on every machine.
const tie = 1e-9

// Set is the readings of one set-up.
type Set struct {
	Scene     string // the scene's title
	Setup     string // "" where the scene has no set-ups
	Readings  []Reading
	Contrasts []Contrast
}

// Contrast is what the two sides of a face differ by.
type Contrast struct {
	Person string
	Stops  float64 // log2 (key / fill)
	Ratio  float64 // key / fill
	Side   string  // of the key, the person's own: "left" or "right"
}

// Read takes the ordered readings from a basis whose points are the orders' receptors.
func Read(s *plan.Setup, orders []Order, b *light.Basis, d light.Drive) Set {
	set := Set{Scene: s.Title, Setup: s.Name}
	r := reader{setup: s, basis: b, drive: d,
		exposure: lens.Exposure{ISO: s.Exposure.ISO, Seconds: s.Exposure.Seconds, Constant: s.Exposure.Constant}}
	for start := 0; start < len(orders); {
		end := start + 1
		for end < len(orders) && orders[end].Person != "" && orders[end].Person == orders[start].Person {
			end++
		}
		readings := make([]Reading, 0, end-start)
		for i := start; i < end; i++ {
			readings = append(readings, r.take(i, &orders[i]))
		}
		if person := orders[start].Person; person != "" {
			var c *Contrast
			if readings, c = ofFace(person, readings); c != nil {
				set.Contrasts = append(set.Contrasts, *c)
			}
		}
		set.Readings = append(set.Readings, readings...)
		start = end
	}
	return set
}

type reader struct {
	setup    *plan.Setup
	basis    *light.Basis
	drive    light.Drive
	exposure lens.Exposure
}

// take turns receptor i into a reading.
func (r *reader) take(i int, o *Order) Reading {
	total, shares := r.basis.Point(i, r.drive)
	reading := Reading{Name: o.Name, Person: o.Person, Kind: o.Kind, At: o.At, Facing: o.Facing}
	r.level(&reading, total.Y())
	if total.Y() > 0 {
		reading.tint(colour.XY(total))
	}
	for t, share := range shares {
		if y := share.Y(); y > 0 {
			reading.Shares = append(reading.Shares, r.share(&r.basis.Terms[t], y))
		}
	}
	return reading
}

// level fills in the figures that a total stands for; what has no meaning stays nil.
func (r *reader) level(reading *Reading, y float64) {
	working := r.setup.Exposure.Stop.N
	if reading.Kind == "spot" {
		reading.Luminance = &y
		if y > 0 && working > 0 {
			over := r.exposure.SpotOver(y, working)
			reading.Over = &over
		}
		return
	}
	fc := y / unit.Footcandle
	reading.Lux, reading.Footcandles = &y, &fc
	if y > 0 {
		stop := r.exposure.Number(y)
		reading.Stop = &stop
		if working > 0 {
			over := r.exposure.Over(y, working)
			reading.Over = &over
		}
	}
}

// tint fills in the chromaticity and, near the locus, the colour temperature.
func (reading *Reading) tint(xy [2]float64) {
	reading.XY = &xy
	kelvin, duv := colour.CCT(xy)
	if math.IsNaN(duv) {
		return
	}
	reading.Duv = &duv
	if math.Abs(duv) <= mostDuv && !math.IsNaN(kelvin) && !math.IsInf(kelvin, 0) {
		reading.CCT = &kelvin
	}
}

func (r *reader) share(t *light.Term, y float64) Share {
	s := Share{Light: t.Light, Path: t.Path.String(), Lux: y}
	for _, id := range t.Via {
		s.Via = append(s.Via, r.name(id))
	}
	if t.Path == light.Reflected || t.Path == light.Mirrored {
		s.From = r.name(t.From)
	}
	return s
}

func (r *reader) name(id solid.ID) string { return r.setup.Names[id] }

// ofFace puts key and fill first, keeps the brighter edge, and measures the contrast. The
// brighter side is the key side; a tie goes left.
func ofFace(person string, all []Reading) ([]Reading, *Contrast) {
	find := func(plane string) *Reading {
		for i := range all {
			if all[i].Name == person+"."+plane {
				return &all[i]
			}
		}
		return nil
	}
	left, right := find("left"), find("right")
	key, fill, side := left, right, "left"
	if *right.Lux > *left.Lux*(1+tie) {
		key, fill, side = right, left, "right"
	}
	edge := find(edgeLeft)
	if other := find(edgeRight); *other.Lux > *edge.Lux*(1+tie) {
		edge = other
	}
	out := []Reading{renamed(key, person+".key"), renamed(fill, person+".fill")}
	for i := range all {
		switch plane := strings.TrimPrefix(all[i].Name, person+"."); plane {
		case edgeLeft:
			out = append(out, renamed(edge, person+".edge"))
		case edgeRight:
		default:
			out = append(out, all[i])
		}
	}
	if *fill.Lux <= 0 {
		return out, nil
	}
	ratio := *key.Lux / *fill.Lux
	return out, &Contrast{Person: person, Side: side, Ratio: ratio, Stops: lens.Stops(ratio)}
}

func renamed(r *Reading, name string) Reading {
	c := *r
	c.Name = name
	return c
}

// Named returns the reading of that name, or nil.
func (s *Set) Named(name string) *Reading {
	for i := range s.Readings {
		if s.Readings[i].Name == name {
			return &s.Readings[i]
		}
	}
	return nil
}

// ContrastOf returns a person's contrast, or nil where one side is dark.
func (s *Set) ContrastOf(person string) *Contrast {
	for i := range s.Contrasts {
		if s.Contrasts[i].Person == person {
			return &s.Contrasts[i]
		}
	}
	return nil
}
