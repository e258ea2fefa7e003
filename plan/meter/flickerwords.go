package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/lens"
	"scrimshaw/plan/unit"
)

// SwingWords says what goes up and down: "by 8 % from frame to frame, 4 times a second, and by 6 % from row to row".
func SwingWords(w lens.Swing) string {
	var words []string
	if w.Frames > 0 {
		words = append(words, fmt.Sprintf("by %s from frame to frame, %s times a second", percentOf(w.Frames), unit.FormatNumber(math.Round(100*w.Beat)/100)))
	}
	if w.Rows > 0 {
		words = append(words, fmt.Sprintf("by %s from row to row", percentOf(w.Rows)))
	}
	return strings.Join(words, ", and ")
}

// leastPercent is the least share that is said in figures.
const leastPercent = 0.001

// percentOf is a share to a tenth of a percent.
func percentOf(share float64) string {
	if share < leastPercent {
		return "less than " + unit.FormatPercent(leastPercent)
	}
	return unit.FormatPercent(share)
}

// Words says at what a lamp is steady: "at 172.8° (1/50 s), or at 25 fps and 180°".
func (s *Steadying) Words() string {
	rate := "at " + unit.FormatNumber(s.FPS) + " fps and " + unit.FormatAngle(s.Kept)
	if s.Seconds == 0 {
		return rate
	}
	return fmt.Sprintf("at %s (1/%s s), or %s", unit.FormatAngle(s.Degrees), unit.FormatNumber(1/s.Seconds), rate)
}

// line says what flickers for a camera.
func (f *Flicker) line() string {
	var lamps []string
	most := 0.0
	for i := range f.Lamps {
		lamps = append(lamps, f.Lamps[i].Numbered)
		most = max(most, f.Lamps[i].Swing.Frames, f.Lamps[i].Swing.Rows)
	}
	words := SwingWords(f.Worst) + ", most at " + f.At
	switch {
	case most < leastPercent:
		words = "none at this shutter"
	case max(f.Worst.Frames, f.Worst.Rows) < leastPercent:
		words = "less than " + unit.FormatPercent(leastPercent) + " of what is read"
	}
	if f.Safe != nil && most >= leastPercent {
		words += "; none " + f.Safe.Words()
	}
	return "flicker of " + strings.Join(lamps, ", ") + ": " + words
}
