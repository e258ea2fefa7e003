package sheet

import (
	"fmt"
	"math"
	"slices"

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

// drawPlan draws the sheet of the plan. Where labels had to be shortened to a number, or left out, it letters the plan
// smaller, the numbers of the lights last; then it takes back the corners of the panel that were given to lists, if that
// helps. The most crowded lettering that is no better than a larger one is not taken.
func (s *sheet) drawPlan() ink.Page {
	full, bare := s.layout, s.layout.Open()
	var tries []attempt
	for step := range draw.LetteringSteps {
		tries = append(tries, attempt{full, step})
	}
	if len(bare.Corners) != len(full.Corners) {
		tries = append(tries, attempt{bare, draw.LetteringSteps - 1})
	}
	best, least := tries[0], math.MaxInt
	var page ink.Page
	for i, t := range tries {
		const hopeless = 6 // labels lost at once: the steps between are passed over
		if i > 0 && least > hopeless*numberLost && t.step < draw.LetteringSteps-1 {
			continue
		}
		drawn := s.attempt(t)
		if lost := s.lost(); lost < least {
			best, page, least = t, drawn, lost
		}
		if least == 0 {
			break
		}
	}
	if s.lost() != least { // what is asked of the drawing later is asked of this page
		page = s.attempt(best)
	}
	s.layout = best.layout
	s.left = slices.Concat(s.layout.Left, s.later) // with the lists of corners that were taken back
	for _, name := range s.d.Missed {
		s.log.warn("reading-left-off", "draw it on a larger paper or at a larger scale; the list of faces has it",
			"the plan has no room for the reading %s", name)
	}
	return page
}

// attempt is a way to draw a plan: a layout, and how crowded its lettering is.
type attempt struct {
	layout layout.Layout
	step   int
}

func (s *sheet) attempt(t attempt) ink.Page {
	s.d.SetLettering(t.step)
	return s.planPage(&t.layout, s.fitter.View(&t.layout))
}

// lost weighs what the plan that was drawn last had to leave out. The numbers of lights are read from a ladder: they are
// lettered smaller only where all labels say more than a number then, or where readings at faces would be left out else.
func (s *sheet) lost() int {
	lost := s.d.Lost + numberLost*s.d.Reduced + faceLost*len(s.d.Missed)
	if s.d.Reduced > 0 && s.d.NumbersShrunk() {
		lost += faceLost / 2
	}
	return lost
}

// What a label that is a number alone, and a reading at a face that has no place, weigh against one that lost some of its
// lines.
const (
	numberLost = 4
	faceLost   = 1000
)

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
