package sheet

// collar draws what stands in the collar beside the sections.
type collar struct{ *drawing }

// head is what stands first in the collar: title, set-up and exposure, as rows.
func (c collar) head(grand bool) []row {
	title := c.p.style(capTitle, c.p.look.Ink).strong()
	if grand {
		title.cap = capGrand
	}
	var rows []row
	for _, l := range c.set(titleOf(c.in.Setup), title, measure, 3) {
		rows = append(rows, lettered(l, title, title.cap*1.7))
	}
	rows = append(rows, space(1.4))
	if s := setupLine(c.in); s != "" {
		for _, l := range c.set(s, c.p.name(), measure, 2) {
			rows = append(rows, lettered(l, c.p.name(), capName*2.1))
		}
	}
	for _, s := range exposureLines(c.in.Setup) {
		for _, l := range c.set(s, c.p.quiet(), measure, 2) {
			rows = append(rows, lettered(l, c.p.quiet(), c.p.quiet().leading()))
		}
	}
	return rows
}
