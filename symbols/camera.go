package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Camera is a camera as it is drawn, seen from above.
type Camera struct {
	At      r2.Vec  // the entrance of the lens, mm
	Bearing float64 // of the lens, degrees clockwise from up the paper
	Scale   float64 // mm of paper for a metre
	Ghost   bool    // where it comes to on its track: in outline
	Short   float64 // the share of its usual length that its body is drawn shorter by, for a wall is close behind it
}

// DrawCamera draws a camera: a solid body behind an open shade that flares toward what it sees, with the
// finder on its left. Where it comes to on its track it is an outline.
func DrawCamera(c ink.Canvas, k Look, cam Camera) Drawn {
	b := brush{c, k}.on(ink.Symbols).at(cam.At, cam.Bearing)
	s := max(cam.Scale, 1.5*minScale)
	w, lens, d := 0.17*s, 0.10*s, 0.25*s*(1-cam.Short)
	if cam.Ghost {
		b.Draw(b.open(Fine), ink.RoundRect(vec(-w/2, -lens-d), vec(w/2, -lens), 0.35))
		b.Polygon(b.open(Fine), vec(-0.31*w, -lens), vec(-0.31*w, -0.6*lens), vec(-0.62*w, 0.25*lens), vec(0.62*w, 0.25*lens), vec(0.31*w, -0.6*lens), vec(0.31*w, -lens))
		return Drawn{Body: b.outline(-0.65*w, -lens-d, 0.65*w, 0.25*lens)}
	}
	b.Draw(b.solid(), ink.RoundRect(vec(-w/2, -lens-d), vec(w/2, -lens), 0.35))
	b.box(b.solid(), 0.62*w, -lens-0.1, -0.5*lens)
	b.Polygon(b.open(Line), vec(-0.31*w, -0.6*lens), vec(-0.62*w, 0.25*lens), vec(0.62*w, 0.25*lens), vec(0.31*w, -0.6*lens))
	b.Rect(b.solid(), vec(-w/2-0.32*w, -lens-0.42*d), vec(-w/2, -lens-0.18*d))
	b.Polyline(ink.Pen{Colour: b.look.Paper, Width: Fine}, vec(0, -lens-0.78*d), vec(0, -lens-0.22*d))
	return Drawn{Body: b.outline(-0.85*w, -lens-d, 0.65*w, 0.25*lens)}
}
