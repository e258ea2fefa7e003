package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/lens"
	"scrimshaw/plan/unit"
)

// Behind is what a camera sees beside a head.
type Behind struct {
	Picture Side     // the side of the head that it shows on: PictureLeft or PictureRight
	Surface string   // its name; "" where nothing stands behind
	Over    *float64 // stops from grey, by the camera's exposure; nil where it is dark
	Cheek   *float64 // stops from what a grey card at the cheek on that side reads; nil too where the head is in profile
}

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
		return finiteOrNil(*r.Over + lens.Stops(reflectance/lens.Grey))
	}
	return &Tone{Key: over(key), Fill: over(fill)}
}

// SteadyWithin is how far apart the places are between which the steadiness of the light at a face is told, m.
const SteadyWithin = 0.2

// SteadinessOf is the most less the least of some light, stops; nil where some of it is dark.
func SteadinessOf(lux []float64) *float64 {
	most, least := 0.0, math.Inf(1)
	for _, v := range lux {
		most, least = max(most, v), min(least, v)
	}
	if least < minLight || len(lux) == 0 {
		return nil
	}
	return finiteOrNil(lens.Stops(most / least))
}

// aroundInWords are the lines about the light around a face: how steady it is, and where skin and clothes lie.
func (f *Face) aroundInWords() (lines []string) {
	if f.Steadiness != nil {
		lines = append(lines, fmt.Sprintf("  within %.0f cm about the face the light goes up and down by %s", 100*SteadyWithin, stopsInWords(*f.Steadiness)))
	}
	for _, t := range []struct {
		what string
		tone *Tone
	}{{"skin", f.Skin}, {"clothes, in the light of the face", f.Clothes}} {
		if t.tone != nil {
			lines = append(lines, fmt.Sprintf("  %s, in stops: key side %s, fill side %s", t.what, fromGrey(t.tone.Key), fromGrey(t.tone.Fill)))
		}
	}
	return lines
}

// behindInWords words what a camera sees behind a head: "behind for A: camera left map-room.top, 1.2 under grey, 0.4 under that cheek; camera right …".
func (v *View) behindInWords() string {
	var all []string
	for i := range v.Behind {
		b := &v.Behind[i]
		words := string(b.Picture) + " "
		if b.Surface == "" {
			all = append(all, words+"nothing that the scene has")
			continue
		}
		words += b.Surface + ", " + fromGrey(b.Over)
		if b.Cheek != nil {
			words += ", " + unit.FormatRelativeStops(*b.Cheek, "that cheek")
		}
		all = append(all, words)
	}
	return "behind the head for " + v.Camera + ": " + strings.Join(all, "; ")
}

// fromGrey words stops from grey: "1.2 over grey", "dark".
func fromGrey(stops *float64) string {
	if stops == nil {
		return "dark"
	}
	return unit.FormatRelativeStops(*stops, "grey")
}

func stopsInWords(stops float64) string { return fmt.Sprintf("%.1f stops", stops) }
