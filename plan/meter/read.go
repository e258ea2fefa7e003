package meter

import (
	"math"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/pending"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// tieRatio is how much brighter, of one, a side must be before it counts as brighter: more than what the
// rays of reflected light are apart on the two sides of a symmetric scene, which has its key on the left. It
// is a hundredth of a stop.
const tieRatio = 7e-3

// minLight is the light, lx or cd/m², below which there is only rounding: a plane that stands
// edge-on to a lamp.
const minLight = 1e-9

// Set is the readings of one set-up.
type Set struct {
	Scene     string // the scene's title
	Setup     string // "" where the scene has no set-ups
	Readings  []Reading
	Contrasts []Contrast
	Cameras   []shot.Shot // what each sees
	Feet      bool        // lengths are printed in feet
}

// Contrast is what the two sides of a face differ by.
type Contrast struct {
	Person string
	Stops  float64 // log2 (key / fill)
	Ratio  float64 // the ratio of key side to fill side, as both are metered: key and fill to fill
	Side   string  // of the key, the person's own: "left" or "right"
	Views  []View  // how the cameras see it

	Uncomputed []plan.Uncomputed // keys that could change the light of one side and that nothing computes yet
}

// mirrorsOf are the solids of a set-up that mirror.
func mirrorsOf(s *plan.Setup) map[solid.ID]bool {
	all := map[solid.ID]bool{}
	for _, m := range s.Set.Mirrors() {
		all[m.ID] = true
	}
	return all
}

// Read takes the ordered readings from a basis whose first points are the requests' receptors.
func Read(s *plan.Setup, requests []Request, b *light.Basis, levels light.Levels) Set {
	set := Set{Scene: s.Title, Setup: s.Name, Cameras: shot.Of(s), Feet: s.Feet}
	r := reader{setup: s, names: s.Names, basis: b, levels: levels, figures: pending.Of(s, levels), mirrors: mirrorsOf(s)}
	for start := 0; start < len(requests); {
		end := start + 1
		for end < len(requests) && requests[end].Person != "" && requests[end].Person == requests[start].Person {
			end++
		}
		readings := make([]Reading, 0, end-start)
		for i := start; i < end; i++ {
			readings = append(readings, r.read(i, &requests[i]))
		}
		if person := requests[start].Person; person != "" {
			var c *Contrast
			if readings, c = arrangeFace(person, readings); c != nil {
				c.Views = viewsOf(s, person, c.Side, &readings[0], &readings[1])
				set.Contrasts = append(set.Contrasts, *c)
			}
		}
		set.Readings = append(set.Readings, readings...)
		start = end
	}
	return set
}

type reader struct {
	setup  *plan.Setup
	names  map[solid.ID]string
	basis  *light.Basis
	levels light.Levels

	figures *pending.Figures
	mirrors map[solid.ID]bool
}

// read turns receptor i into a reading.
func (r *reader) read(i int, o *Request) Reading {
	total, shares := r.basis.Point(i, r.levels)
	if total.Y() < minLight {
		total = colour.RGB{}
	}
	reading := Reading{Name: o.Name, Person: o.Person, Receptor: i, Kind: o.Kind, At: o.Receptor.At, Facing: o.Receptor.Axis}
	reading.setLevel(total.Y(), o.Exposure)
	if total.Y() > 0 {
		reading.setChromaticity(colour.XY(total))
		reading.Error = finiteOrNil(r.basis.Error(i, r.levels) / total.Y())
	}
	for t, share := range shares {
		if y := share.Y(); y >= minLight {
			reading.add(r.share(&r.basis.Terms[t], y))
		}
	}
	reading.Uncomputed = append(r.figures.At(reading.contributions(), o.positions()...), r.figures.Stops(o.Camera)...)
	return reading
}

// contributions is what each light gives to a reading.
func (reading *Reading) contributions() map[string]float64 {
	given := map[string]float64{}
	for i := range reading.Shares {
		given[reading.Shares[i].Light] += reading.Shares[i].Lux
	}
	return given
}

// setLevel fills in the figures that a total stands for, lx or cd/m²; what has no meaning stays nil.
func (reading *Reading) setLevel(y float64, x plan.Exposure) {
	exposure := x.Metered()
	working := x.Stop.N
	if reading.Kind == term.SpotMeter {
		reading.Luminance = &y
		reading.Over = finiteOrNil(exposure.SpotOver(y, working))
		return
	}
	fc := y / unit.Footcandle
	reading.Lux, reading.Footcandles = &y, &fc
	reading.Over = finiteOrNil(exposure.Over(y, working))
	if y > 0 {
		reading.Stop = finiteOrNil(exposure.Number(y))
	}
}

// finiteOrNil is nil for a figure that has none: the logarithm of no light.
func finiteOrNil(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// add puts a share with what came the same way: a window may have several panes.
func (reading *Reading) add(s Share) {
	for i := range reading.Shares {
		t := &reading.Shares[i]
		if t.Light == s.Light && t.Path == s.Path && t.From == s.From && slices.Equal(t.Via, s.Via) {
			t.Lux += s.Lux
			return
		}
	}
	reading.Shares = append(reading.Shares, s)
}

// setChromaticity fills in the chromaticity and, near the locus, the colour temperature.
func (reading *Reading) setChromaticity(xy [2]float64) {
	reading.XY = &xy
	kelvin, duv := colour.CCT(xy)
	reading.Duv = &duv
	if math.Abs(duv) <= colour.MaxDuv {
		reading.CCT = &kelvin
	}
}

// share names a term.
func (r *reader) share(t *light.Term, y float64) Share {
	s := Share{Light: t.Light, Numbered: r.setup.Numbered(t.Light), Path: t.Path.String(), Lux: y}
	for _, id := range t.Via {
		s.Via, s.Mirrors = append(s.Via, r.names[id]), append(s.Mirrors, r.mirrors[id])
	}
	if t.Path != light.Direct {
		s.From = r.names[t.From]
	}
	return s
}

// arrangeFace puts key and fill first, keeps the brighter edge, and measures the contrast. The
// brighter side is the key side; a tie goes left.
func arrangeFace(person string, all []Reading) ([]Reading, *Contrast) {
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
	if *right.Lux > *left.Lux*(1+tieRatio) {
		key, fill, side = right, left, "right"
	}
	edge := find(edgeLeft)
	if other := find(edgeRight); *other.Lux > *edge.Lux*(1+tieRatio) {
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
	ratio := max(1, *key.Lux / *fill.Lux) // less within a tie
	return out, &Contrast{Person: person, Side: side, Ratio: ratio, Stops: lens.Stops(ratio), Uncomputed: AlteringLight(key, fill)}
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
