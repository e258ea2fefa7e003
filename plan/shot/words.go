package shot

import (
	"fmt"
	"math"

	"scrimshaw/plan/unit"
)

// Sees says what a lens sees, wherever it is pointed: "42.5° × 24.7°, 48.0° from corner to corner".
func (s *Shot) Sees() string {
	return fmt.Sprintf("%.1f° × %.1f°, %.1f° from corner to corner", s.Angles[0], s.Angles[1], s.Angles[2])
}

// Sharp says what is sharp, lengths written in a way; "" where nothing says it.
func (s *Shot) Sharp(length func(metres float64) string) string {
	if s.Hyperfocal == 0 {
		return ""
	}
	words := "hyperfocal " + length(s.Hyperfocal) + " at " + unit.FormatStop(s.Number)
	switch p := s.Subject; {
	case p == nil || p.Near == 0:
		return words
	case math.IsInf(p.Far, 1):
		return "sharp from " + length(p.Near) + ", " + words
	default:
		return "sharp " + length(p.Near) + " to " + length(p.Far) + ", " + words
	}
}

// Frame says how the subject is framed, lengths written in a way: "2.02 m × 1.14 m at ruth, 2.60 m away: medium shot, head
// 19 % of its height"; "" where nobody is in frame.
func (s *Shot) Frame(length func(metres float64) string) string {
	p := s.Subject
	if p == nil {
		return ""
	}
	part, share := p.takes()
	return fmt.Sprintf("%s × %s at %s, %s away: %s, %s %.0f %% of its height", length(p.Width), length(p.Height),
		p.Name, length(p.Distance), p.Size, part, 100*share)
}
