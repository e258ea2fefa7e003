package meter

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// lines are what is said of a face: its contrast, in both conventions where its sides are not equal, and how each camera
// sees it.
func (f *Face) lines() []string {
	lines := append(f.contrastInWords(), f.aroundInWords()...)
	for i := range f.Views {
		v := &f.Views[i]
		lines = append(lines, "  "+v.inWords("own "+f.Side, f.Contrast != nil && unit.EqualStops(f.Contrast.Stops)))
		if v.White > 0 {
			fill := "dark"
			if f.Contrast != nil {
				fill = v.FillShift.words()
			}
			lines = append(lines, fmt.Sprintf("  from the %s of %s: key side %s; fill side %s", unit.FormatKelvin(v.White), plan.CameraWords(v.Camera), v.KeyShift.words(), fill))
		}
		if v.Outside {
			lines = append(lines, "  outside the frame of "+plan.CameraWords(v.Camera)+", which shows neither the eyes nor what is behind the head")
			continue
		}
		if v.Behind != nil {
			lines = append(lines, "  "+v.behindInWords())
		}
		if v.Catchlights != nil {
			lines = append(lines, "  "+v.eyesInWords())
		}
	}
	return lines
}

// contrastInWords words how the key side compares with the fill side.
func (f *Face) contrastInWords() []string {
	c, side := f.Contrast, f.Person+": key side "+f.Side
	if c == nil {
		return []string{side + ", and no light on the fill side"}
	}
	ratio := unit.FormatFigures(c.Ratio)
	if unit.EqualStops(c.Stops) {
		return []string{fmt.Sprintf("%s, equal to the fill side (%s : 1)", side, ratio)}
	}
	return []string{
		fmt.Sprintf("%s, %.1f stops over the fill side (%s : 1)", side, c.Stops, ratio),
		fmt.Sprintf("  key + fill : fill %s : 1, as both sides are metered; %s", ratio, f.keyToFillInWords()),
	}
}

// keyToFillInWords words the ratio of key to fill, or why there is none.
func (f *Face) keyToFillInWords() string {
	switch ratio, ok := f.KeyToFill(); {
	case ok:
		return fmt.Sprintf("key : fill %s : 1, what the key side has more", unit.FormatFigures(ratio))
	case f.Crossed:
		return "no key : fill, for what is called the key lights the other side more"
	}
	return "too even for a key : fill"
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
	return "behind the head for " + plan.CameraWords(v.Camera) + ": " + strings.Join(all, "; ")
}

// fromGrey words stops from grey: "1.2 over grey", "dark".
func fromGrey(stops *float64) string {
	if stops == nil {
		return "dark"
	}
	return unit.FormatRelativeStops(*stops, "grey")
}

// stopsFromGrey is fromGrey where no heading says that its figure is stops: "1.2 stops over grey".
func stopsFromGrey(stops *float64) string {
	if stops == nil || unit.EqualStops(*stops) {
		return fromGrey(stops)
	}
	number, side, _ := strings.Cut(fromGrey(stops), " ")
	return number + " stops " + side
}

func stopsInWords(stops float64) string { return fmt.Sprintf("%.1f stops", stops) }

// HeldInWords says how a meter is held that shows the stops at a face, and by how much one with another constant differs: its flat disc where the scene
// has the constant of a dome, its dome where it has that of a disc.
func HeldInWords(x *plan.Exposure) string {
	words := fmt.Sprintf("Key and fill: a flat disc at the face, 45° to either side of the nose. Dome: at the face, toward the camera. The stops of both are by C = %s",
		unit.FormatNumber(x.Constant))
	part, where, own := "disc", "at key and fill", lens.FlatConstant
	if x.Meter == term.FlatMeter {
		part, where, own = "dome", "toward the camera", lens.DomeConstant
	}
	if !(x.Constant > 0) || unit.EqualStops(lens.Stops(x.Constant/own)) {
		return words + "."
	}
	apart, more := lens.Stops(x.Constant/own), "more"
	if apart < 0 {
		apart, more = -apart, "less"
	}
	return fmt.Sprintf("%s: a meter whose %s has C = %s shows %s %s %s.", words, part, unit.FormatNumber(own), stopsInWords(apart), more, where)
}
