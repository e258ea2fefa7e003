package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Chart is a lesson as a page: where the lights stand, the head as the lens sees it, the key from the side, and the sentences.
type Chart struct{ *Drawing }

// Draw draws the views in one box and the sentences in another. head is the height for the title, foot that for the lower views.
func (c Chart) Draw(p Pad, views, text r2.Box, head, foot float64) {
	l := c.In.Lesson
	name := p.Style(CapTitle, p.Look.Ink).Strong()
	title := "Light on " + l.Person
	if l.Camera != "" {
		title += ", as " + plan.CameraWords(l.Camera) + " sees it"
	}
	at := box.At(views.Min.X+chartPads, views.Max.Y-chartPads-name.Cap)
	p.Text(at, name.Ellipsis(title, box.Width(views)-2*chartPads), name, ink.Left)
	what := section.Joined(", ", section.TitleOf(c.In.Setup), section.SetupLine(c.In))
	p.Text(r2.Sub(at, r2.Vec{Y: p.Name().Leading()}), p.Quiet().Ellipsis(what, box.Width(views)-2*chartPads), p.Quiet(), ink.Left)
	middle := views.Min.Y + foot
	diagram := box.Of(views.Min.X, middle, views.Max.X, views.Max.Y-head)
	lesson := NewLesson(c.Drawing, diagram)
	lesson.Draw(p, diagram)
	p.Line(Hair, p.Look.Rule, box.At(views.Min.X+chartPads, middle), box.At(views.Max.X-chartPads, middle))
	c.lower(p, lesson, box.Of(views.Min.X, views.Min.Y, views.Max.X, middle))
	c.sentences(p, text)
}

// chartPads is the clear paper within the frame of a chart, mm.
const chartPads = 6.0

// lower draws the head as the lens sees it and the key from the side, side by side with their titles.
func (c Chart) lower(p Pad, l *Lesson, area r2.Box) {
	st := p.Small().Strong()
	half := (area.Min.X + area.Max.X) / 2
	top := area.Max.Y - 4 - st.Cap
	seen := "The head from before the face"
	if l.Camera != "" {
		seen = "The head as " + plan.CameraWords(l.Camera) + " sees it"
	}
	p.Text(box.At(area.Min.X+chartPads, top), seen, st, ink.Left)
	p.Text(box.At(area.Min.X+chartPads, top-st.Leading()), "the darker, the less light", p.Quiet(), ink.Left)
	h := l.newHeadView(p, box.At(area.Min.X+(half-area.Min.X)*0.62, (area.Min.Y+area.Max.Y)/2))
	h.draw(p)
	if len(l.Lights) == 0 || l.Lights[0].At == nil {
		return
	}
	p.Text(box.At(half+chartPads, top), "The key from the side", st, ink.Left)
	l.keyHeight(p, box.Of(half+chartPads, area.Min.Y+3, area.Max.X-chartPads, top-4))
}

// sentences sets the sentences as large as their column holds them all, and below them in the accent colour what they are without.
func (c Chart) sentences(p Pad, area r2.Box) {
	said, lacking := section.LessonWords(c.In.Lesson), section.LessonWithout(c.In.Lesson)
	for _, cap := range [...]float64{3, 2.75, 2.5, 2.25, 2, CapSmall} {
		st := p.Style(cap, p.Look.Ink)
		paragraphs := c.paragraphs(st, said, box.Width(area))
		paragraphs = append(paragraphs, c.paragraphs(st.inked(p.Look.Alarm), lacking, box.Width(area))...)
		if HeightOf(paragraphs) <= box.Height(area) || cap == CapSmall {
			DrawRows(p, paragraphs, area.Min.X, area.Max.Y)
			return
		}
	}
}

// paragraphs are sentences as rows, each with air below.
func (c Chart) paragraphs(st style, sentences []string, wide float64) (rows []Row) {
	for _, s := range sentences {
		set, _ := st.wrap(s, wide, 0)
		r := setLines(set, st, 0)
		r.Height += 0.6 * st.Leading()
		rows = append(rows, r)
	}
	return rows
}
