package sheet

import (
	"scrimshaw/plan/source"
	"scrimshaw/symbols/ink"
)

// sheet is a set-up's pages in the making.
type sheet struct {
	d      *drawing
	wish   wish
	fields fields // of the title block
	log    *faults
	fitter *fitter
	layout layout
	texts  textBlocks // the lettering of the blocks
	pages  []ink.Page // before they are numbered
}

func newSheet(in Input, o Options, log *faults) *sheet {
	s := &sheet{wish: asked(o, in.Setup, log), fields: fieldsOf(in.Setup, o.Date), log: log, texts: textBlocks{}}
	setup := in.Setup
	r := Report{in: &in, Units: Units{Feet: setup.Feet, Light: s.wish.levels, Stop: setup.Exposure.Stop.N}}
	p := pad{look: &s.wish.theme, face: o.Font, white: whiteOf(setup)}
	s.d = newDrawing(r, p, log, s.wish.smooth)
	return s
}

// lay finds the layout of one set-up; nil where it cannot be drawn.
func (s *sheet) lay() *sheet {
	if s.log.failed() {
		return nil
	}
	s.fitter = s.fitterOf(s.blocks())
	if !s.choose() {
		return nil
	}
	s.fitInset()
	return s
}

// choose picks the layout, in parts where no page holds the plan, and says so; false where nothing holds it.
func (s *sheet) choose() bool {
	l, ok := s.fitter.choose()
	if !ok {
		if l, ok = s.fitter.inParts(); !ok {
			d := s.fitter.tooLarge()
			if written := s.d.in.Setup.Scene; written != nil {
				d.Span = written.Sheet.Scale.Span
			}
			s.tell(d)
			return false
		}
		s.tell(s.fitter.splitNote(&l))
		s.fitter.pourParts(&l, s.keyToParts(&l.tiles))
	}
	s.layout = l
	return true
}

// tell records what was found of the set-up.
func (s *sheet) tell(d source.Diagnostic) {
	d.Setup = s.d.in.Setup.Name
	s.log.add(d)
}

// fitInset makes the second map smaller where that spares a page of its own.
func (s *sheet) fitInset() {
	first := s.layout
	if s.d.in.Inset == nil || first.tiles.parts() > 1 {
		return
	}
	blocks := s.fitter.blocks
	for _, s.d.insetMost = range insetHeights[1:] {
		if s.layout.all() {
			return
		}
		s.fitter.blocks = s.blocks()
		if l, ok := s.fitter.best(first.paper); ok && l.times == first.times && l.all() {
			s.layout = l
			return
		}
	}
	s.d.insetMost, s.fitter.blocks = insetHeights[0], blocks
}

// blocks are the sections laid out, without the empty ones.
func (s *sheet) blocks() []*block {
	var some []*block
	for _, q := range s.d.sections() {
		if b := s.d.block(q); len(b.rows) > 0 {
			some = append(some, s.set(b))
		}
	}
	return some
}

// set keeps the lettering of a block for when it is drawn.
func (s *sheet) set(b *textBlock) *block {
	s.texts[&b.sizes] = b
	return &b.sizes
}

// keyToParts is the block of the key to the parts of a plan.
func (s *sheet) keyToParts(t *tiles) *block {
	return s.set(s.d.typesetter.block(&section{title: "Parts"}, match{s.d}.keyRows(t)))
}

// shortening is how many labels of a layout would say less than they could: its plan is drawn for that
// without its contours, on a page that is thrown away.
func (s *sheet) shortening(l *layout) int {
	if s.d.in.Elevation != nil {
		return 0
	}
	s.d.clear()
	v := s.fitter.view(l)
	v.covered = l.corners
	planDrawing{s.d}.arrange(s.d.p.with(&ink.Page{}), v)
	return s.d.shortened
}

// fitterOf tries layouts of what stands, or of the wall, with blocks beside it.
func (s *sheet) fitterOf(blocks []*block) *fitter {
	setup := s.d.in.Setup
	stands := standing(setup)
	if f, ok := onWall(s.d.in); ok {
		stands = f.stands()
	}
	scales := chosen(setup.Feet)
	if s.wish.scale > 0 {
		scales = []float64{s.wish.scale}
	}
	return &fitter{extent: around(stands), stands: stands, blocks: blocks, feet: setup.Feet, asked: s.wish.paper, scale: s.wish.scale,
		way: s.wish.way, scales: scales, cut: s.shortening,
		head: func(grand bool) float64 { return heightOf(collar{s.d}.head(grand)) }}
}
