package section

import (
	"strings"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
)

// seenWords are what a camera sees of a face: which side is the key side, and the lamps in the eyes.
func seenWords(f *Face, view int) []string {
	v := &f.Views[view]
	return []string{cheekWords(f, v), inEyes(v.Catchlights)}
}

// cheekWords says where a camera sees the key side of a face: "camera left"; a dash where both sides are alike, or the head is in
// profile.
func cheekWords(f *Face, v *meter.View) string {
	if unit.EqualStops(f.Contrast) || v.Key != meter.PictureLeft && v.Key != meter.PictureRight {
		return "–"
	}
	return string(v.Key)
}

// mostInEyes is how many lamps in eyes are named; of more the row says how many, for a column of their numbers leaves none to words. The readings name
// them all.
const mostInEyes = 5

// inEyes lists the numbers of lamps: "lights 2, 3".
func inEyes(lamps []meter.Catchlight) string {
	numbers := make([]string, len(lamps))
	for i := range lamps {
		numbers[i], _, _ = strings.Cut(lamps[i].Numbered, " ")
	}
	switch len(numbers) {
	case 0:
		return "no light"
	case 1:
		return "light " + numbers[0]
	}
	if len(numbers) > mostInEyes {
		return Count(len(numbers), "light")
	}
	return "lights " + strings.Join(numbers, ", ")
}
