package files

import (
	"math"
	"sort"
	"strings"
)

// Tilt says how the lamp's output depends on its tilt.
type Tilt struct {
	Form            TiltForm
	File            string    // of TiltFile
	Geometry        int       // of TiltInclude: LampUpright, LampRolls or LampTips
	Angles, Factors []float64 // of the tilt from the design position, degrees, and the factor of all light at each
}

// TiltForm is a form of the TILT= line.
type TiltForm uint8

// The forms.
const (
	TiltNone TiltForm = iota
	TiltInclude
	TiltFile
)

// The lamp-to-luminaire geometries of TILT=INCLUDE: how the lamp lies in the design position, in which the
// photometric zero points straight down, and what a tilt of the luminaire does to it.
const (
	LampUpright = 1 // base up or down, along the photometric zero
	LampRolls   = 2 // level, and stays level as the luminaire is tilted
	LampTips    = 3 // level, and does not stay level
)

// Known reports whether the file gives factors by tilt that can be used.
func (t *Tilt) Known() bool {
	return t.Form == TiltInclude && LampUpright <= t.Geometry && t.Geometry <= LampTips && t.usable()
}

// maxFactor is the greatest factor that is believed: no lamp gives twice its light on its side.
const maxFactor = 2

// usable reports whether there is a factor for each angle, from 0 to maxFactor, and the angles ascend.
func (t *Tilt) usable() bool {
	for _, f := range t.Factors {
		if !(f >= 0 && f <= maxFactor) {
			return false
		}
	}
	for i, a := range t.Angles {
		if math.Abs(a) > turns.most || i > 0 && a <= t.Angles[i-1] {
			return false
		}
	}
	return len(t.Angles) > 0 && len(t.Angles) == len(t.Factors)
}

// Factor gives what the light of the design position is multiplied by at a tilt from it, degrees: linear
// between the angles, and held at their ends. Angles that end at 90 stand for those beyond it too, counted
// back: the lamp is the same either way up.
func (t *Tilt) Factor(tilt float64) float64 {
	last := len(t.Angles) - 1
	if t.Angles[last] <= 90 && tilt > 90 {
		tilt = 180 - tilt
	}
	i := sort.SearchFloat64s(t.Angles, tilt)
	switch {
	case i == 0:
		return t.Factors[0]
	case i > last:
		return t.Factors[last]
	}
	part := (tilt - t.Angles[i-1]) / (t.Angles[i] - t.Angles[i-1])
	return t.Factors[i-1] + part*(t.Factors[i]-t.Factors[i-1])
}

// tiltLine takes what stands behind TILT=.
func tiltLine(s string) (value string, ok bool) {
	if len(s) < 5 || !strings.EqualFold(s[:4], "TILT") {
		return "", false
	}
	value, ok = strings.CutPrefix(strings.TrimSpace(s[4:]), "=")
	return strings.TrimSpace(value), ok
}

// looksLikeIES reports whether a text has the TILT= line of LM-63.
func looksLikeIES(text []byte) bool {
	head := strings.ReplaceAll(string(text[:min(len(text), 1<<16)]), "\r", "\n")
	for line := range strings.SplitSeq(head, "\n") {
		if _, ok := tiltLine(strings.TrimSpace(line)); ok {
			return true
		}
	}
	return false
}
