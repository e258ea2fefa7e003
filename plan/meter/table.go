package meter

import (
	"fmt"
	"io"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// WriteTable writes sets as aligned text, a block a set-up.
func WriteTable(w io.Writer, sets []Set) error {
	var b strings.Builder
	for i := range sets {
		if i > 0 {
			b.WriteByte('\n')
		}
		sets[i].table(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (s *Set) table(b *strings.Builder) {
	if heading := s.heading(); heading != "" {
		b.WriteString(heading + "\n")
	}
	if len(s.Readings) == 0 {
		b.WriteString("the scene has no person and no meter, so it has no readings: add people or meters\n")
		s.cameras(b)
		return
	}
	rows := [][]string{{"reading", "light", "±", "fc", "T-stop", "over", "CCT", "Duv", "from"}}
	for i := range s.Readings {
		rows = append(rows, s.Readings[i].row())
	}
	aligned(b, rows)
	for i := range s.Faces {
		f := &s.Faces[i]
		for _, line := range f.lines() {
			b.WriteString(Mark(line, len(f.Uncomputed) > 0) + "\n")
		}
	}
	for i := range s.Readings {
		if r := &s.Readings[i]; r.Sees != nil {
			b.WriteString(Mark(r.spotInWords(), len(r.Uncomputed) > 0) + "\n")
		}
	}
	for i := range s.StandIns {
		b.WriteString(strings.Join(s.StandIns[i].lines(), "\n") + "\n")
	}
	if len(s.InHand) > 0 {
		b.WriteString(inHandTitle + "\n")
	}
	for i := range s.InHand {
		b.WriteString("  " + strings.Join(s.InHand[i].lines(s.Feet), "\n  ") + "\n")
	}
	s.Cues.table(b)
	for i := range s.Played {
		s.Played[i].table(b)
	}
	s.cameras(b)
	for i := range s.Walks {
		s.Walks[i].table(b)
	}
	s.legend(b)
}

// cameras says what each camera sees.
func (s *Set) cameras(b *strings.Builder) {
	length := func(metres float64) string { return unit.FormatLength(metres, s.Feet) }
	for i := range s.Cameras {
		c := &s.Cameras[i]
		fmt.Fprintf(b, "camera %s: %s sees %s\n", plan.CameraWords(c.Camera), c.Lens, c.Sees())
		if c.Subject != nil {
			b.WriteString("  " + c.Frame(length) + ", " + c.Share() + "\n")
		}
		if words := c.Focus(length); words != "" {
			b.WriteString("  " + words + ", at " + unit.FormatStop(c.Number) + "\n")
		}
		for k := range s.Flickers {
			if f := &s.Flickers[k]; f.Camera == c.Camera {
				b.WriteString("  " + f.line() + "\n")
			}
		}
		if t := s.TrackOf(c.Camera); t != nil {
			t.table(b, length)
		}
		for k := range s.Pictures {
			if s.Pictures[k].Camera == c.Camera {
				s.Pictures[k].table(b)
			}
		}
	}
}

// heading names the scene and the set-up.
func (s *Set) heading() string {
	if s.Setup == "" {
		return s.Scene
	}
	return strings.TrimPrefix(s.Scene+", set-up "+s.Setup, ", ")
}
