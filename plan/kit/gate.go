package kit

import (
	"cmp"
	"math"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// The circles of confusion of a projection lens as shares of the width of its image, in focus and as far out of it as the tube
// goes; between them it grows evenly with the way of the tube, as that of a thin lens does. The two are common practice.
const (
	sharpBlur = 0.015
	softBlur  = 0.3
)

// widestImage is the widest beam, degrees, of what throws an image: common practice, for a profile lens.
const widestImage = 90

// Projects says whether the head throws an image of a gate: a projection spot does, and a plain source that is known by a beam
// may stand for one.
func (h *Head) Projects() bool {
	plainBeam := h.Technology == "" && h.Class == term.Lensed
	known := h.Source.Distribution != nil // it is not with a modifier that nobody knows
	return known && h.Source.Opening.Form == photometry.Point && (h.Class == term.Projected || plainBeam) && h.imageAngle() <= widestImage
}

// imageAngle is the full angle of the image, degrees: to half the light of the field.
func (h *Head) imageAngle() float64 {
	across, along := photometry.BeamAngle(h.Source.Distribution)
	return math.Max(across, along)
}

// ImageRadius gives the radius of its image on a plane at a distance of 1.
func (h *Head) ImageRadius() float64 { return photometry.ImageRadius(h.imageAngle()) }

// blur is the circle of confusion as a share of the image: by the edge that is set, or what the fall from the beam to the field
// is known by.
func (h *Head) blur() float64 {
	if h.Edge != nil {
		return sharpBlur + *h.Edge*(softBlur-sharpBlur)
	}
	across, along := photometry.FieldAngle(h.Source.Distribution)
	return min(max(photometry.EdgeBlur(h.imageAngle(), math.Max(across, along)), sharpBlur), softBlur)
}

// TakesEdge says whether how its edge is set shows in the light of a head with an empty gate: measured light has the edge that it
// was measured with.
func (h *Head) TakesEdge() bool {
	_, lobe := h.Source.Distribution.(*photometry.Lobe)
	return lobe
}

// SetGate focuses the lens of a head that projects, and puts cuts and a pattern into its gate. It gives the share of the light
// that passes.
func (h *Head) SetGate(cuts []photometry.Cut, breakup *photometry.Breakup) (passes float64) {
	beam := h.imageAngle()
	gate := photometry.Gate{Cuts: cuts, Breakup: breakup, Blur: h.blur()}
	s := &h.Source
	if h.Edge != nil && h.TakesEdge() {
		s.Distribution = photometry.NewFlatField(beam, gate.Blur)
	}
	h.Gate = gate
	if len(cuts) == 0 && breakup == nil {
		return 1
	}
	d, share := photometry.NewGated(s.Distribution, beam, gate)
	h.Steps = append(h.Steps, Step{What: "through its gate", Formula: "flux x share that passes", In: []float64{s.Flux, share}, Out: s.Flux * share, Unit: "lm"})
	s.Distribution, s.Flux = d, s.Flux*share
	return share
}

// SideWord names the side of an image that a cut comes from, by its angle clockwise from the top, degrees: "top", "right", "35°".
func SideWord(angle float64) string {
	turn := math.Mod(math.Mod(angle, 360)+360, 360)
	if math.Mod(turn, 90) == 0 {
		return [...]string{"top", "right", "bottom", "left"}[int(turn/90)]
	}
	return unit.FormatAngle(turn)
}

// EdgeWord says how soft the edge of an image is set: "sharp", "soft", "40 % soft"; "" where nothing says it.
func (h *Head) EdgeWord() string {
	switch {
	case h.Edge == nil:
		return ""
	case *h.Edge == 0:
		return string(term.Sharp)
	case *h.Edge == 1:
		return string(term.Soft)
	}
	return unit.FormatPercent(*h.Edge) + " " + string(term.Soft)
}

// setEdge takes the edge of the image that the choice asks for: by itself, or as the focus of a projection spot that does not
// zoom.
func (b *builder) setEdge() {
	h := &b.head
	if h.Edge = b.choice.Edge; h.Edge == nil && !h.Zooms && h.Class == term.Projected && !b.choice.FocusOfZoom {
		h.Edge = b.choice.Focus
	}
	if h.Edge == nil || h.Projects() {
		return
	}
	h.Edge = nil
	if h.Source.Distribution == nil {
		return // what is wrong with it has been said
	}
	b.report(source.Warning, cmp.Or(b.choice.EdgeSpan, b.choice.FocusSpan), CodeNoZoom, "leave it out, or take a projection spot, such as one with the modifier projection-30",
		"the focus of %s changes nothing: it throws no image that could be sharp or soft", b.named())
}
