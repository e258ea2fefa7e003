package sheet

import (
	"fmt"

	"scrimshaw/symbols/ink"
)

// planPages are the sheet of the plan, or its parts.
func (s *sheet) planPages() []ink.Page {
	if s.layout.tiles.parts() > 1 {
		return s.drawParts()
	}
	return []ink.Page{s.drawPlan()}
}

// drawPlan draws the sheet of the plan. Where labels had to be shortened to a number, or left out,
// it takes back the corners of the panel that were given to lists, if that helps.
func (s *sheet) drawPlan() ink.Page {
	full, bare := s.layout, s.layout.open()
	page := s.planPage(&full, s.fitter.view(&full))
	if s.d.reduced == 0 || len(bare.corners) == len(full.corners) {
		return page
	}
	before := s.d.reduced
	again := s.planPage(&bare, s.fitter.view(&bare))
	if s.d.reduced < before {
		s.layout = bare
		return again
	}
	return s.planPage(&full, s.fitter.view(&full))
}

// planPage is the sheet itself.
func (s *sheet) planPage(l *layout, v view) ink.Page {
	s.d.clear()
	page, p := s.newPage(l, "")
	page.Description = s.description(l)
	first := len(page.Items)
	if f, ok := onWall(s.d.in); ok {
		wallDrawing{s.d}.drawElevation(p, v, f, l.corners)
	} else {
		planDrawing{s.d}.drawPlan(p, v, l.corners)
	}
	cropFrom(page, first, l.plan, s.d.p.face)
	for _, r := range l.rules {
		p.line(medium, p.look.Ink, r[0], r[1])
	}
	for _, b := range l.corners {
		p.rect(b, medium, p.look.Ink, &p.look.Paper)
	}
	p.rect(l.frame, frame, p.look.Ink, nil)
	drawRows(p, collar{s.d}.head(l.grand()), l.head.x, l.head.top)
	drawPieces(p, s.texts, l.pieces, l.slots)
	collar{s.d}.scaleBar(p, l.bar.x, l.bar.top, l.times, l.paper.Name)
	if knowsNorth(s.d.in.Setup) && s.d.in.Elevation == nil {
		const fromEdge = 5 // of the column: its tip may reach over it, and keeps clear of the bar
		collar{s.d}.north(p, at(l.bar.x+measure-fromEdge, (l.bar.top+l.bar.bottom)/2))
	}
	return *page
}

// description says the page in one paragraph, for a reader who cannot see it.
func (s *sheet) description(l *layout) string {
	setup := s.d.in.Setup
	if f, ok := onWall(s.d.in); ok {
		return fmt.Sprintf("Light on the wall %s, seen from inside the room, at %s on %s.", f.name, scaleWords(l.times, setup.Feet), l.paper.Name)
	}
	words := fmt.Sprintf("Lighting plan at %s on %s: %s, %s, %s.", scaleWords(l.times, setup.Feet), l.paper.Name,
		count(len(setup.Lights), "light"), count(len(setup.People), "person"), count(len(setup.Cameras), "camera"))
	if setup.Exposure.Stop.N > 0 {
		words += " Working stop " + workingStop(setup) + "."
	}
	return words
}
