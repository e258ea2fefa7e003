package sheet

import (
	"cmp"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// sheet is a set-up's pages in the making.
type sheet struct {
	d       *draw.Drawing
	request request
	fields  section.Fields // of the title block
	log     *faults
	fitter  *layout.Fitter
	layout  layout.Layout
	texts   draw.Blocks                        // the lettering of the blocks
	says    map[*layout.Block]*section.Section // what they are of
	pages   []ink.Page                         // before they are numbered
	later   []layout.Remainder                 // what the first page leaves to the second
	left    []layout.Remainder                 // what no page holds yet
	trying  bool                               // the lists are set to see whether they fit, and
	cut     bool                               // a text of theirs did not

	// What is known of it when its set-up is let go.
	title, name, heading string
	place                int // in the file, from 1; 0 for none
	paper                layout.Paper
	movable              bool // it may lie on other paper
	ofDay                bool // its pages are of all set-ups together
}

func newSheet(in Input, o Options, log *faults) *sheet {
	w := asked(o, in.Setup, log)
	in = w.reader.restrict(in)
	s := &sheet{request: w, fields: section.FieldsOf(in.Setup, o.Date), log: log, texts: draw.Blocks{}, says: map[*layout.Block]*section.Section{}}
	s.fields.Crew = cmp.Or(w.reader.name, s.fields.Crew) // else pages for one reader would say that they are for all
	if o.Since != nil {
		s.fields.Revision = section.Joined(", ", s.fields.Revision, "since "+o.Since.Words)
	}
	setup := in.Setup
	s.title, s.name, s.heading, s.place = section.TitleOf(setup), setup.Name, section.SetupLine(&in), drawingOf(setup)
	r := section.Report{In: &in, Units: section.Units{Feet: setup.Feet, Light: s.request.levels, Stop: setup.Exposure.Stop.N}}
	if setup.Exposure.Stop.N > 0 {
		r.Written = section.WorkingStop(setup)
	}
	p := draw.Pad{Look: &s.request.theme, Face: o.Font, White: section.WhiteOf(setup)}
	s.d = draw.New(r, p, func(text string) {
		if s.trying {
			s.cut = true
			return
		}
		log.warn("lettering-cut", "a shorter text, or a larger paper", "%q is too long for its place on the sheet and is cut", text)
	}, s.request.how)
	return s
}

// lay finds the layout of one set-up; nil where it cannot be drawn.
func (s *sheet) lay() *sheet {
	if s.log.failed() {
		return nil
	}
	s.fitter = s.fitterOf(s.firstBlocks())
	if !s.choose() {
		return nil
	}
	if s.d.In.Elevation == nil && s.layout.Tiles.Parts() <= 1 {
		s.layout = s.fitter.GiveRoom(s.layout)
	}
	return s
}

// choose picks the layout, in parts where no page holds the plan, and says so; false where nothing holds it.
func (s *sheet) choose() bool {
	l, ok := s.fitter.Choose()
	if !ok {
		if l, ok = s.fitter.InParts(); !ok {
			d := s.fitter.TooLarge()
			if written := s.d.In.Setup.Scene; written != nil {
				d.Span = written.Sheet.Scale.Span
			}
			s.recordFindings(d)
			return false
		}
		s.recordFindings(s.fitter.SplitNote(&l))
		s.d.Tiles = l.Tiles
		s.fitter.Blocks = s.firstBlocks() // their legend has match lines
		s.fitter.PourParts(&l, s.keyToParts(&l.Tiles))
	}
	s.layout = l
	return true
}

// recordFindings records what was found of the set-up.
func (s *sheet) recordFindings(d source.Diagnostic) {
	d.Setup = s.d.In.Setup.Name
	s.log.add(d)
}

// blocks are the sections laid out, without the empty ones, and without that of the second map, which has a page.
func (s *sheet) blocks() []layout.Remainder {
	var some []*layout.Block
	for _, q := range s.d.Sections() {
		if b := s.d.Block(q); len(b.Rows) > 0 && q.Figure != section.SmallMapFigure {
			some = append(some, s.set(b))
			s.says[&b.Sizes] = q
		}
	}
	return layout.Whole(some)
}

// firstBlocks are those of the first page: all, unless a page of another map comes, where what is only to be looked up
// then stands.
func (s *sheet) firstBlocks() []layout.Remainder {
	all := s.blocks()
	s.later = nil
	if !s.hasSecond() {
		return all
	}
	first, later := layout.Divided(all, layout.Wanted)
	s.later = later
	return first
}

// set keeps the lettering of a block for when it is drawn.
func (s *sheet) set(b *draw.Block) *layout.Block {
	s.texts[&b.Sizes] = b
	return &b.Sizes
}

// keyToParts is the block of the key to the parts of a plan.
func (s *sheet) keyToParts(t *layout.Tiles) *layout.Block {
	return s.set(s.d.Typesetter.Block(&section.Section{Title: "Parts"}, draw.Match{Drawing: s.d}.KeyRows(t)))
}

// countShortened is how many labels of a layout would say less than they could: its plan is drawn for that
// without its contours, on a page that is thrown away.
func (s *sheet) countShortened(l *layout.Layout) int {
	if s.d.In.Elevation != nil {
		return 0
	}
	s.d.Clear()
	v := s.fitter.View(l)
	v.Covered = l.Corners
	draw.Plan{Drawing: s.d}.Arrange(s.d.Pad.With(&ink.Page{}), v)
	return s.d.Shortened
}

// fitterOf tries layouts of what stands, or of the wall, with blocks beside it.
func (s *sheet) fitterOf(blocks []layout.Remainder) *layout.Fitter {
	setup := s.d.In.Setup
	stands := draw.Standing(setup)
	if f, ok := draw.OnWall(s.d.In); ok {
		stands = f.Stands()
	}
	scales := layout.Scales(setup.Feet)
	if s.request.scale > 0 {
		scales = []float64{s.request.scale}
	}
	extent := box.Around(stands)
	return &layout.Fitter{Extent: extent, Lined: draw.Lined(setup, extent), Stands: stands, Seams: draw.Seams(setup), Blocks: blocks, Feet: setup.Feet, Asked: s.request.paper, Scale: s.request.scale,
		Way: s.request.way, Second: s.hasSecond(), Scales: scales, Cut: s.countShortened,
		Head: func(grand bool) float64 { return draw.HeightOf(draw.Collar{Drawing: s.d}.Head(grand)) }}
}

// drawingOf is the number of a set-up's drawing: its place in the file, so that it keeps it in a run of some; 0 where
// it has none there.
func drawingOf(s *plan.Setup) int {
	if s.Scene == nil {
		return 0
	}
	for i := range s.Scene.Setups {
		if s.Scene.Setups[i].Name == s.Name {
			return i + 1
		}
	}
	return 0
}

// newPage is a page with its paper and frame.
func (s *sheet) newPage(l *layout.Layout, what string) (*ink.Page, draw.Pad) {
	page := &ink.Page{Width: l.Wide, Height: l.High, Title: section.Joined(", ", section.TitleOf(s.d.In.Setup), section.SetupLine(s.d.In), what),
		Name: what, Outline: []string{ink.Capital(cmp.Or(what, "plan"))}}
	p := s.d.Pad.With(page)
	if p.Look.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		p.On(ink.Ground).Rect(box.Of(0, 0, l.Wide, l.High), 0, p.Look.Ink, &p.Look.Paper)
	}
	return page, p
}
