package meter

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
)

// Rounded keeps nine significant figures: more than any light is known to, and few enough that
// the last bits of a machine's arithmetic do not show.
func Rounded(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 8, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// RoundedOrNull rounds what may have no meaning, which JSON writes as null.
func RoundedOrNull(v *float64) *float64 {
	if v == nil {
		return nil
	}
	r := Rounded(*v)
	return &r
}

// OrNull is a text that JSON writes as null where it is empty.
func OrNull(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

// OrNone is a list that JSON does not write as null.
func OrNone(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// triple rounds a place or direction to a nanometre, without the sign of a negative zero.
func triple(v r3.Vec) [3]float64 {
	nano := func(x float64) float64 { return math.Round(x*1e9)/1e9 + 0 }
	return [3]float64{nano(v.X), nano(v.Y), nano(v.Z)}
}

// jsonKey is a key that is not computed yet, and what of a reading it could change.
type jsonKey struct {
	Key     string `json:"key"`     // its path: lights.k.scrims
	Waits   string `json:"waits"`   // for what
	Changes string `json:"changes"` // light: every figure; stops: stop and over alone
}

func jsonKeys(all []plan.Uncomputed) []jsonKey {
	keys := []jsonKey{}
	for i := range all {
		u := &all[i]
		changes := "light"
		if !u.AltersLight() {
			changes = "stops"
		}
		keys = append(keys, jsonKey{Key: u.Path, Waits: u.Waits, Changes: changes})
	}
	return keys
}
