package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// table writes a walk: a row a place, then how it keeps to the working stop of each camera.
func (w *Walk) table(b *strings.Builder) {
	b.WriteString("\nwalk of " + w.Person + ", " + unit.FormatLength(w.Length, w.Feet) + ", without the body\n")
	head := []string{"along", "place"}
	for i := range w.Courses {
		head = append(head, w.Courses[i].by()+": light", "T-stop", "over")
	}
	rows := [][]string{append(head, "key side", "key + fill : fill", "")}
	for i := range w.Points {
		rows = append(rows, w.row(i))
	}
	aligned(b, rows)
	for i := range w.Courses {
		c := &w.Courses[i]
		for _, line := range append([]string{w.SpanWords(c)}, w.OffWords(c)...) {
			b.WriteString(Mark(line, len(w.uncomputedOf(i)) > 0) + "\n")
		}
	}
}

// by is what judges a course, in words.
func (c *Course) by() string {
	if c.Camera == "" {
		return "key side"
	}
	return "dome toward " + plan.CameraWords(c.Camera)
}

// row is the row of a place.
func (w *Walk) row(i int) []string {
	p := &w.Points[i]
	place := fmt.Sprintf("%s, %s", unit.FormatLength(p.At.X, w.Feet), unit.FormatLength(p.At.Y, w.Feet))
	row := []string{unit.FormatLength(p.Along, w.Feet), place}
	for k := range w.Courses {
		r := w.judged(k, i).row()
		row = append(row, r[1], r[stopColumn], r[overColumn])
	}
	struck := len(AlteringLight(&p.Left, &p.Right)) > 0
	note := ""
	if p.In != "" {
		note = "in " + p.In + ", not judged"
	}
	return append(row, Mark(p.Side, struck), Mark(p.contrastInWords(), struck), note)
}

// contrastInWords words how the brighter side compares with the darker: "1.2 stops", "equal"; "" where one is dark.
func (p *WalkPoint) contrastInWords() string {
	switch {
	case p.Contrast == nil:
		return ""
	case unit.EqualStops(p.Contrast.Stops):
		return "equal"
	}
	return fmt.Sprintf("%.1f stops", p.Contrast.Stops)
}

// SpanWords say where a walk is nearest to the working stop of a camera, and where farthest from it.
func (w *Walk) SpanWords(c *Course) string {
	switch {
	case c.Worst == nil:
		return c.whom() + "no place of it is free"
	case c.Best == nil:
		return c.whom() + "no light reaches it"
	}
	return fmt.Sprintf("%snearest at %s: %s; farthest from %s at %s: %s", c.whom(), w.alongWords(*c.Best), OverWords(c.Over[*c.Best]),
		unit.FormatStop(c.Working), w.alongWords(*c.Worst), OverWords(c.Over[*c.Worst]))
}

// OffWords say where a walk has left the working stop of a camera, stretch by stretch.
func (w *Walk) OffWords(c *Course) (lines []string) {
	if c.Best == nil {
		return nil // all of it is dark
	}
	for i := range c.Off {
		lines = append(lines, c.whom()+c.Off[i].Where(w.Feet)+": "+OverWords(c.Off[i].Over))
	}
	return lines
}

// whom is the camera that a line is about; "" where there is none.
func (c *Course) whom() string {
	if c.Camera == "" {
		return ""
	}
	return "for " + plan.CameraWords(c.Camera) + ": "
}

func (w *Walk) alongWords(point int) string {
	return unit.FormatLength(w.Points[point].Along, w.Feet)
}

// Where words a stretch: "from 1.50 m to 2.50 m", "at 2.00 m".
func (o *OffStop) Where(feet bool) string {
	if o.From == o.To {
		return "at " + unit.FormatLength(o.From, feet)
	}
	return "from " + unit.FormatLength(o.From, feet) + " to " + unit.FormatLength(o.To, feet)
}

// OverWords words stops from the working stop: "1.4 stops under", "0.3 stops over", "on it", "no light".
func OverWords(over *float64) string {
	switch {
	case over == nil:
		return "no light"
	case math.Abs(*over) < equalOver:
		return "on it"
	case *over < 0:
		return fmt.Sprintf("%.1f stops under", -*over)
	}
	return fmt.Sprintf("%.1f stops over", *over)
}

// equalOver is the distance from the working stop, stops, that prints as none.
const equalOver = 0.05
