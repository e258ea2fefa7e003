package plan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// Line is the line of action: through the heads of two people, in plan. Cameras on one side of it show each of the two looking one way.
type Line struct {
	People [2]string // or one of them at a mark: "ruth.sit"
	Ends   [2]r2.Vec // the axes of their heads, m
	Span   source.Span
}

// LineSide is the side of the line that a camera is on, as one looks along it from its first person to its second.
type LineSide string

// The sides. A camera on the line cuts with both.
const (
	LineLeft  LineSide = "left"
	LineRight LineSide = "right"
	OnLine    LineSide = "on"
)

// LineSlack is within which angle of the line a camera counts as on it, degrees, as the nearer of the two people sees it (common practice
// names none: what a head leans by).
const LineSlack = 5

// SideOf is the side that a place of the plan is on, and by how much the nearer of the two people sees it off the line, degrees.
func (l *Line) SideOf(p r2.Vec) (side LineSide, off float64) {
	near, far := l.Ends[0], l.Ends[1]
	if r2.Norm2(r2.Sub(p, far)) < r2.Norm2(r2.Sub(p, near)) {
		near, far = far, near
	}
	way, out := r2.Sub(far, near), r2.Sub(p, near)
	off = math.Atan2(math.Abs(r2.Cross(way, out)), math.Abs(r2.Dot(way, out))) * 180 / math.Pi
	switch {
	case r2.Norm(out) <= plane.Grain || off < LineSlack:
		return OnLine, off
	case r2.Cross(r2.Sub(l.Ends[1], l.Ends[0]), r2.Sub(p, l.Ends[0])) > 0:
		return LineLeft, off
	}
	return LineRight, off
}

// Crossings are the distances along a track, m, at which it crosses the line, the parts of it beyond the two people as well.
func (l *Line) Crossings(t *Track) []float64 {
	return plane.PathCrossings(t.Corners, plane.Through(l.Ends[0], l.Ends[1]))
}

// Words name the line: "the line from ada to noor".
func (l *Line) Words() string { return "the line from " + l.People[0] + " to " + l.People[1] }

// CameraSide is the side of the line of action that a camera is on.
type CameraSide struct {
	Setup, Camera string
	Side          LineSide
}

// CameraSides are those of the cameras of a set-up that keep to one side; none without a line.
func (s *Setup) CameraSides() (all []CameraSide) {
	if s.Line == nil {
		return nil
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		side, _ := s.Line.SideOf(InPlan(c.Frame.At))
		if side != OnLine && (c.Track == nil || len(s.Line.Crossings(c.Track)) == 0) {
			all = append(all, CameraSide{s.Name, c.Name, side})
		}
	}
	return all
}
