package meter

import (
	"io"
	"strings"
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
	for i := range s.Walks {
		s.Walks[i].table(b)
	}
	s.legend(b)
}

// heading names the scene and the set-up.
func (s *Set) heading() string {
	if s.Setup == "" {
		return s.Scene
	}
	return strings.TrimPrefix(s.Scene+", set-up "+s.Setup, ", ")
}
