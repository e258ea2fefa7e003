package meter

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
)

// Face is how the two sides of somebody's face are lit, and how cameras see them.
type Face struct {
	Person   string
	Side     string    // of the key, the person's own: "left" or "right"
	Contrast *Contrast // of the two sides; nil where the fill side is dark
	Views    []View    // of the cameras that see it
	Crossed  bool      // the lights that the scene calls the key give the other side more than the key side

	Steadiness    *float64 // of the light within SteadyWithin about the face, stops; nil where a study did not look, or a place is dark
	Skin, Clothes *Tone    // where they lie; nil where the scene does not say what they are

	Uncomputed []plan.Uncomputed // keys that could change the light of one side and that nothing computes yet
}

// Contrast is what the two sides of a face differ by.
type Contrast struct {
	Stops float64 // log2 (key / fill)
	Ratio float64 // the ratio of key side to fill side, as both are metered: key and fill to fill
}

// tieRatio is how much brighter, of one, a side must be before it counts as brighter: more than what the
// rays of reflected light are apart on the two sides of a symmetric scene, which has its key on the left. It
// is a hundredth of a stop.
const tieRatio = 7e-3

// RightIsKey says whether the right side of two is the key side, by their light, lx.
func RightIsKey(left, right float64) bool { return right > left*(1+tieRatio) }

// arrangeFace puts key and fill first, keeps the brighter edge, and measures the contrast. The
// brighter side is the key side; a tie goes left. A face whose sides are both dark has no key side.
func arrangeFace(person string, all []Reading) ([]Reading, *Face) {
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
	if RightIsKey(*left.Lux, *right.Lux) {
		key, fill, side = right, left, "right"
	}
	edge := find(edgeLeft)
	if other := find(edgeRight); RightIsKey(*edge.Lux, *other.Lux) {
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
	if *key.Lux <= 0 {
		return out, nil
	}
	return out, &Face{Person: person, Side: side, Contrast: contrastOf(*key.Lux, *fill.Lux), Uncomputed: AlteringLight(key, fill)}
}

// contrastOf is what the two sides of a face differ by; nil where the fill side is dark: no light is no number of stops under
// the other.
func contrastOf(key, fill float64) *Contrast {
	if fill <= 0 {
		return nil
	}
	ratio := max(1, key/fill) // less within a tie
	return &Contrast{Ratio: ratio, Stops: lens.Stops(ratio)}
}

// leastKeyToFill is the least ratio of key to fill that readings tell: a key gives its side as much as the fill does, or nobody
// would call it the key (common practice).
const leastKeyToFill = 1.0

// KeyToFill is the ratio of the key to the fill where the fill falls on both sides of the face alike: what the key side has
// more than the fill side, by the fill side. Contrast.Ratio is that of key and fill to fill. It is not ok where the key lights both sides
// nearly alike, for the light that they share does not fill then, or where what the scene calls the key lights the other side.
func (f *Face) KeyToFill() (ratio float64, ok bool) {
	if f.Contrast == nil || f.Crossed {
		return 0, false
	}
	ratio = f.Contrast.Ratio - 1
	return ratio, ratio >= leastKeyToFill
}

// isCrossed says whether the lights with the role of somebody's key give the fill side more than the key side.
func isCrossed(s *plan.Setup, person string, key, fill *Reading) bool {
	who, _, _ := strings.Cut(person, ".")
	of := func(r *Reading) (lux float64) {
		for i := range r.Shares {
			if l := s.LightNamed(r.Shares[i].Light); l != nil && l.IsKeyOf(who) {
				lux += r.Shares[i].Lux
			}
		}
		return lux
	}
	return RightIsKey(of(key), of(fill))
}

func renamed(r *Reading, name string) Reading {
	c := *r
	c.Name = name
	return c
}
