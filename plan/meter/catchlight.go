package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan"
)

// Catchlight is the image of a lamp on the eyes of somebody, as a camera sees it.
type Catchlight struct {
	Light    string
	Numbered string  // the light as the crew reads it: "3 lamp"
	Hour     int     // of the clock about the pupil, 1 to 12; 0: on the pupil's middle
	Size     float64 // how wide it is, as a share of the iris; 0 of a point
}

// eyesInWords word the catchlights that a camera sees: "eyes for A: 1 key at 10 o'clock, 12 % of the iris".
func (v *View) eyesInWords() string {
	if len(v.Catchlights) == 0 {
		return "eyes for " + plan.CameraWords(v.Camera) + ": no lamp shows in them"
	}
	var all []string
	for _, c := range v.Catchlights {
		all = append(all, c.words())
	}
	return "eyes for " + plan.CameraWords(v.Camera) + ": " + strings.Join(all, "; ")
}

func (c *Catchlight) words() string {
	words := c.Numbered + " in the middle"
	if c.Hour > 0 {
		words = fmt.Sprintf("%s at %d o'clock", c.Numbered, c.Hour)
	}
	if percent := math.Round(100 * c.Size); percent >= 1 {
		return fmt.Sprintf("%s, %.0f %% of the iris wide", words, percent)
	}
	return words + ", a point"
}
