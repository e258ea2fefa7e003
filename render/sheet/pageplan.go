package sheet

import (
	"fmt"

	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// planPages are the sheet of the plan, or its parts.
func (s *sheet) planPages() []ink.Page {
	if s.layout.Tiles.Parts() > 1 {
		return s.drawParts()
	}
	return []ink.Page{s.drawPlan()}
}

// drawPlan draws the sheet of the plan. Where labels had to be shortened to a number, or left out,
// it takes back the corners of the panel that were given to lists, if that helps.
func (s *sheet) drawPlan() ink.Page {
	full, bare := s.layout, s.layout.Open()
	page := s.planPage(&full, s.fitter.View(&full))
	if s.d.Reduced == 0 || len(bare.Corners) == len(full.Corners) {
		return page
	}
	before := s.d.Reduced
	again := s.planPage(&bare, s.fitter.View(&bare))
	if s.d.Reduced < before {
		s.layout = bare
		return again
	}
	return s.planPage(&full, s.fitter.View(&full))
}

// planPage is the sheet itself.
func (s *sheet) planPage(l *layout.Layout, v layout.View) ink.Page {
	s.d.Clear()
	page, p := s.newPage(l, s.mapWord())
	page.Description = s.description(l)
	first := len(page.Items)
	if f, ok := draw.OnWall(s.d.In); ok {
		page.Outline = []string{"Wall"}
		draw.Wall{Drawing: s.d}.Draw(p, v, f, l.Corners)
	} else {
		draw.Plan{Drawing: s.d}.Draw(p, v, l.Corners)
	}
	draw.CropFrom(page, first, v.Panel, s.d.Pad.Face)
	for _, r := range l.Rules {
		p.Line(draw.Medium, p.Look.Ink, r[0], r[1])
	}
	for _, b := range l.Corners {
		p.Rect(b, draw.Medium, p.Look.Ink, &p.Look.Paper)
	}
	p.Rect(l.Frame, draw.FrameLine, p.Look.Ink, nil)
	draw.DrawRows(p, draw.Collar{Drawing: s.d}.Head(l.LargeFormat()), l.Head.X, l.Head.Top)
	draw.DrawPieces(p, s.texts, l.Pieces, l.Slots)
	draw.Collar{Drawing: s.d}.ScaleBar(p, l.Bar.X, l.Bar.Top, l.Times, l.Paper.Name)
	if draw.KnowsNorth(s.d.In.Setup) && s.d.In.Elevation == nil {
		const fromEdge = 5 // of the column: its tip may reach over it, and keeps clear of the bar
		draw.Collar{Drawing: s.d}.North(p, box.At(l.Bar.X+layout.Measure-fromEdge, (l.Bar.Top+l.Bar.Bottom)/2))
	}
	return *page
}

// mapWord is what a page of a second map is called: what it maps.
func (s *sheet) mapWord() string {
	switch {
	case !s.d.Second:
		return ""
	case s.d.In.Field.Level == nil:
		return string(term.FloorMap)
	}
	return string(term.FaceMap)
}

// description says the page in one paragraph, for a reader who cannot see it.
func (s *sheet) description(l *layout.Layout) string {
	setup := s.d.In.Setup
	if f, ok := draw.OnWall(s.d.In); ok {
		return fmt.Sprintf("Light on the wall %s, seen from inside the room, at %s on %s.", f.Name, layout.ScaleWords(l.Times, setup.Feet), l.Paper.Name)
	}
	if s.d.Second {
		return fmt.Sprintf("%s, at %s on %s.", s.d.In.Field.Name, layout.ScaleWords(l.Times, setup.Feet), l.Paper.Name)
	}
	words := fmt.Sprintf("Lighting plan at %s on %s: %s, %s, %s.", layout.ScaleWords(l.Times, setup.Feet), l.Paper.Name,
		section.Count(len(setup.Lights), "light"), section.Count(len(setup.People), "person"), section.Count(len(setup.Cameras), "camera"))
	if setup.Exposure.Stop.N > 0 {
		words += " Working stop " + section.WorkingStop(setup) + "."
	}
	return words
}
