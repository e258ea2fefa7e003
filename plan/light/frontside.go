package light

import "scrimshaw/plan/solid"

// shinesOn says whether any of the opening lies more than so far before a mirror or a board, and shines toward it.
func shinesOn(l *lamp, m *solid.Mirror, before float64) bool {
	front := facing(l.at, l.axis)
	_, high := over(l, m)
	return high > before && !(l.onesided && outside(&front, m.Corners))
}

// over is how far the opening lies before the plane of a mirror or a board, at least and at most, m.
func over(l *lamp, m *solid.Mirror) (low, high float64) {
	radius := 0.0
	if isRound(l.opening) {
		radius = l.roundRadius()
	}
	low, high = m.Plane.Over(l.at)-radius, m.Plane.Over(l.at)+radius
	for _, p := range l.bound(l.at) {
		low, high = min(low, m.Plane.Over(p)), max(high, m.Plane.Over(p))
	}
	return low, high
}
