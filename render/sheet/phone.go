package sheet

import (
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Column is a set-up for a narrow screen: the drawing of its strip, with names, and what stands below that as data, so that it
// wraps as the screen is wide.
type Column struct {
	Heading  string
	Lines    []string // of the exposure
	Drawing  ink.Page
	Sections []*section.Section
}

// Columns are the set-ups of a run for a narrow screen. Faults of the options are not reported here: Compose does that; where
// it fails there are none.
func Columns(ins []Input, o Options) (all []Column) {
	if o.Font == nil {
		return nil
	}
	log := &faults{}
	for _, in := range ins {
		s := newSheet(in, o, log)
		if log.failed() {
			return nil
		}
		all = append(all, strip{s.d}.phone())
	}
	return all
}

// phone is one set-up.
func (c strip) phone() Column {
	c.Clear()
	c.ForPhone()
	c.Named = true
	out := Column{Heading: section.SetupLine(c.In), Lines: section.HeadLines(c.In.Setup)}
	title := section.Joined(", ", section.TitleOf(c.In.Setup), out.Heading)
	if out.Heading == "" {
		out.Heading = "Plan"
	}
	drawn := stripPage{title: title, rows: c.stripPlan()}
	for _, q := range c.StripSections() {
		if q.Figure != section.LevelFigure && q.Figure != section.WalkFigure && q.Figure != section.CueFigure {
			out.Sections = append(out.Sections, q)
			continue
		}
		b := c.Block(q)
		drawn.rows = append(append(drawn.rows, draw.Space(layout.BlockGap), b.Heading()), b.Rows...)
	}
	out.Drawing = drawn.page(c.Drawing)
	return out
}
