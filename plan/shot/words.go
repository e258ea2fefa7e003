package shot

import (
	"fmt"
)

// Sees says what a lens sees, wherever it is pointed: "42.5° × 24.7°, 48.0° from corner to corner".
func (s *Shot) Sees() string {
	return fmt.Sprintf("%.1f° × %.1f°, %.1f° from corner to corner", s.Angles[0], s.Angles[1], s.Angles[2])
}

// Sharp says what is sharp, lengths written in a way: "sharp 2.27 m to 3.05 m"; "" where nothing says it, or nobody is in frame.
func (s *Shot) Sharp(length func(metres float64) string) string {
	switch p := s.Subject; {
	case p == nil || p.Near == 0:
		return ""
	case p.Far == 0:
		return "sharp from " + length(p.Near)
	default:
		return "sharp " + length(p.Near) + " to " + length(p.Far)
	}
}

// Focus is Sharp with the hyperfocal distance, which stands where nobody is in frame, too: "sharp 2.27 m to 3.05 m, hyperfocal
// 17.60 m"; "" where nothing says it.
func (s *Shot) Focus(length func(metres float64) string) string {
	if s.Hyperfocal == 0 {
		return ""
	}
	hyperfocal := "hyperfocal " + length(s.Hyperfocal)
	if sharp := s.Sharp(length); sharp != "" {
		return sharp + ", " + hyperfocal
	}
	return hyperfocal
}

// Frame says how the subject is framed, lengths written in a way: "2.02 m × 1.14 m at ruth, 2.60 m away, medium shot"; ""
// where nobody is in frame.
func (s *Shot) Frame(length func(metres float64) string) string {
	p := s.Subject
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%s × %s at %s, %s away, %s", length(p.Width), length(p.Height), p.Name, length(p.Distance), p.Size)
}

// Share says how much of the frame's height the subject takes: "head 19 % of the height"; "" where nobody is in frame.
func (s *Shot) Share() string {
	if s.Subject == nil {
		return ""
	}
	part, share := s.Subject.takes()
	return fmt.Sprintf("%s %.0f %% of the height", part, 100*share)
}
