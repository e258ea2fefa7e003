package draw

import (
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
)

// Collar draws what stands in the collar beside the sections.
type Collar struct{ *Drawing }

// titleSteps are the shares of its height that a title may shrink to, so that it goes on one line.
var titleSteps = [...]float64{1, 0.93, 0.86, 0.8}

// oneLine is the largest height at which a title goes on one line, mm, or its own where none does: then it is read as well on several.
func (c Collar) oneLine(title string, st style) float64 {
	for _, share := range titleSteps {
		smaller := st
		smaller.Cap *= share
		if smaller.Width(title) <= layout.Measure {
			return smaller.Cap
		}
	}
	return st.Cap
}

// Head is what stands first in the collar: title, set-up and exposure, as rows.
func (c Collar) Head(grand bool) []Row {
	title := c.Pad.Style(CapTitle, c.Pad.Look.Ink).Strong()
	if grand {
		title.Cap = capGrand
	}
	title.Cap = c.oneLine(section.TitleOf(c.In.Setup), title)
	var rows []Row
	for _, l := range c.Set(section.TitleOf(c.In.Setup), title, layout.Measure, 4) {
		rows = append(rows, Lettered(l, title, title.Cap*1.7))
	}
	rows = append(rows, Space(1.4))
	if s := section.SetupLine(c.In); s != "" {
		for _, l := range c.Set(s, c.Pad.Name(), layout.Measure, 2) {
			rows = append(rows, Lettered(l, c.Pad.Name(), capName*2.1))
		}
	}
	for _, s := range section.HeadLines(c.In.Setup) {
		for _, l := range c.Set(s, c.Pad.listed(c.Pad.Look.Quiet), layout.Measure, 2) {
			rows = append(rows, Lettered(l, c.Pad.listed(c.Pad.Look.Quiet), c.Pad.listed(c.Pad.Look.Quiet).Leading()))
		}
	}
	return rows
}
