package meter

import (
	"math"

	"scrimshaw/plan/lens"
)

// Tone is where something stands by stops from grey in the light of the two sides of a face: plus is brighter.
type Tone struct{ Key, Fill *float64 }

// toneOf is the tone of what returns a share of the light. A reading over the working stop is that of grey.
func toneOf(key, fill *Reading, reflectance float64) *Tone {
	if reflectance <= 0 {
		return nil
	}
	over := func(r *Reading) *float64 {
		if r.Over == nil {
			return nil
		}
		return FiniteOrNil(*r.Over + lens.Stops(reflectance/lens.Grey))
	}
	return &Tone{Key: over(key), Fill: over(fill)}
}

// SteadyWithin is how far apart the places are between which the light at a face may change, m: its steadiness.
const SteadyWithin = 0.2

// NearPlaces is how many places it is read at: at the face, and at the ends of two ways across it.
const NearPlaces = 5

// Around says which receptors of a basis of its own read what lies around a face as a camera sees it.
type Around struct {
	Person, Camera string
	Near           [NearPlaces]int // domes about the face
	Left, Right    int             // looks past the head, by the sides of the picture
}

// SteadinessOf is the most less the least of some light, stops; nil where some of it is dark.
func SteadinessOf(lux []float64) *float64 {
	most, least := 0.0, math.Inf(1)
	for _, v := range lux {
		most, least = max(most, v), min(least, v)
	}
	if least < minLight || len(lux) == 0 {
		return nil
	}
	return FiniteOrNil(lens.Stops(most / least))
}
