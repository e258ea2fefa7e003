package sheet

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// teachPages are the page of what there is to learn from the light on a face, where that was asked for and there is something:
// a chart for the wall of a classroom.
func (s *sheet) teachPages() []ink.Page {
	lesson := s.d.In.Lesson
	if !s.request.teach || lesson == nil {
		return nil
	}
	if lesson.Missing != "" {
		_, why, _ := strings.Cut(strings.TrimSuffix(lesson.Missing, "."), ": ")
		s.recordFindings(source.Diagnostic{Severity: source.Warning, Code: "nothing-to-teach", Message: "there is no page of notes: " + why,
			Hint: "add somebody whose face has light, or leave out the notes"})
		return nil
	}
	return []ink.Page{s.teachPage()}
}

// The frame that the chart is laid out in, mm: that of A4. On larger paper all of it is larger.
const (
	chartWide = 267.0
	chartHigh = 190.0
	chartHead = 15.0 // for what the page is
	chartFoot = 60.0 // for the head as the lens sees it, and the key from the side
)

// teachPage is the chart, on the paper of the run as it lies broad.
func (s *sheet) teachPage() ink.Page {
	l := layout.PageOf(s.layout.Paper, false)
	by := max(1, min(box.Width(l.Frame)/chartWide, box.Height(l.Frame)/chartHigh)) // smaller lettering is not read
	frame := beforeEnlarging(l.Frame, by)
	block := beforeEnlarging(l.TitleBlock(), by)
	page, p := s.newPage(&l, "teach")
	page.Outline = []string{"Notes"}
	page.Description = "What there is to learn from the light on a face: " + strings.Join(section.LessonWords(s.d.In.Lesson), " ")
	first := len(page.Items)
	column := frame.Max.X - layout.Measure - 2*layout.Pads
	text := box.Of(column+layout.Pads, block.Max.Y+layout.Pads, column+layout.Pads+layout.Measure, frame.Max.Y-layout.Pads)
	views := box.Of(frame.Min.X, frame.Min.Y, column, frame.Max.Y)
	draw.Chart{Drawing: s.d}.Draw(p, views, text, chartHead, chartFoot)
	p.Line(draw.Medium, p.Look.Ink, box.At(column, frame.Min.Y), box.At(column, frame.Max.Y))
	page.Magnify(first, by)
	p.Rect(l.Frame, draw.FrameLine, p.Look.Ink, nil)
	p.Rect(l.TitleBlock(), draw.Medium, p.Look.Ink, &p.Look.Paper)
	return *page
}

// beforeEnlarging is a box before all is made larger by a factor.
func beforeEnlarging(b r2.Box, by float64) r2.Box {
	return r2.Box{Min: r2.Scale(1/by, b.Min), Max: r2.Scale(1/by, b.Max)}
}
