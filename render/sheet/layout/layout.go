package layout

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// Distances of a page, mm.
const (
	Pads    = 6.0  // from a line to the text beside it
	gutter  = 8.0  // the least between two columns of text
	widest  = 36.0 // the most
	headGap = 5.8  // below the head
	barGap  = 4.6  // above and below the scale bar
	lowest  = 30.0 // a band of text below the plan is no lower
	Share   = 0.35 // of the page, that the plan's panel has at least
	marginX = 5.0  // clear beside the plan, for what sticks out of it
	marginY = 3.0  // clear above and below it
	edge    = 1.4  // clear on the other sides at least
	lining  = 11.2 // clear on the sides where dimension lines run, if there is so much
)

// Layout is where everything of a sheet goes, in mm on paper.
type Layout struct {
	Paper      Paper
	Wide, High float64 // of the page as it lies
	Frame      r2.Box
	Plan       r2.Box // the panel of the plan
	Block      r2.Box // the title block
	Head       Slot
	Bar        Slot // where the scale bar stands
	Slots      []Slot
	Rules      [][2]r2.Vec // lines between the panels
	Times      float64     // the scale, as a ratio: 50 is 1 : 50
	Pieces     []Piece     // what stands on the sheet
	Left       []Remainder // what does not
	Corners    []r2.Box    // of the panel, given to text
	Tiles      Tiles       // the parts of a plan that is too large for one page
}

// All says whether every block stands on the sheet.
func (l *Layout) All() bool { return len(l.Left) == 0 }

// stands says whether every block does that has to stand beside the plan.
func (l *Layout) stands() bool {
	return !slices.ContainsFunc(l.Left, func(r Remainder) bool { return r.block.Rank == must })
}

// placed says whether every block does that has to stand beside the plan, or that the plan is hard
// to use without.
func (l *Layout) placed() bool {
	return !slices.ContainsFunc(l.Left, func(r Remainder) bool { return r.block.Rank <= Needed })
}

// splits is how many blocks run on from one column to another.
func (l *Layout) splits() int {
	n := 0
	for _, q := range l.Pieces {
		if q.From > 0 {
			n++
		}
	}
	return n
}

// HoldsAsMuch says whether a layout with lists in larger lettering is no worse than the one with the least: of each rank up to one as
// many blocks stand on the sheet as a whole, and in one column, and of lists of lights at least a part where there is one.
func (l *Layout) HoldsAsMuch(least *Layout, upTo Rank) bool {
	for rank := must; rank <= upTo; rank++ {
		if l.begun(rank) > least.begun(rank) {
			return false
		}
	}
	if upTo >= Listed && l.rows(Listed) == 0 && least.rows(Listed) > 0 {
		return false
	}
	if upTo < Wanted {
		return l.splits() <= least.splits()+1 // one that runs on in the next column is read as well as one on another page
	}
	return l.splits() <= least.splits()
}

// rows is how many rows of blocks of a rank stand on the sheet.
func (l *Layout) rows(of Rank) int {
	n := 0
	for _, q := range l.Pieces {
		if q.Block.Rank == of {
			n += q.To - q.From
		}
	}
	return n
}

// PageOf is a page with its frame after ISO 5457.
func PageOf(p Paper, upright bool) Layout {
	l := Layout{Paper: p, Wide: p.Height, High: p.Width}
	if upright {
		l.Wide, l.High = p.Width, p.Height
	}
	l.Frame = FrameOf(l.Wide, l.High)
	return l
}

// FrameOf is the frame of a page.
func FrameOf(wide, high float64) r2.Box { return box.Of(Binding, Margin, wide-Margin, high-Margin) }

// TitleBlock is where the title block stands.
func (l *Layout) TitleBlock() r2.Box {
	return box.Of(l.Frame.Max.X-Measure-2*Pads, l.Frame.Min.Y, l.Frame.Max.X, l.Frame.Min.Y+blockHigh)
}

// LargeFormat says whether the sheet is read from further away.
func (l *Layout) LargeFormat() bool { return l.Paper.Width > 400 }

// Way is the way that the sheet lies.
func (l *Layout) Way() Orientation {
	if l.High > l.Wide {
		return Portrait
	}
	return Landscape
}

// needs is the size of the panel that the plan wants at a scale.
func (f *Fitter) needs(times float64) (w, h float64) {
	return box.Width(f.Extent)*1000/times + 2*marginX + f.more.X, box.Height(f.Extent)*1000/times + 2*marginY + f.more.Y
}

// collar lays the parts of the collar into its columns: the head on top of the first, the title
// block and above it the scale bar at the foot of the last. The columns all run from top to bottom.
func (l *Layout) collar(xs []float64, top, bottom, head float64) {
	last := len(xs) - 1
	l.Block = l.TitleBlock()
	l.Bar = Slot{X: xs[last], Top: l.Block.Max.Y + barGap + BarHeight, Bottom: l.Block.Max.Y + barGap}
	l.Head = Slot{X: xs[0], Top: top - Pads, Bottom: top - Pads - head}
	l.Rules = append(l.Rules, [2]r2.Vec{box.At(l.Block.Min.X, l.Block.Max.Y), l.Block.Max})
	for i, x := range xs {
		s := Slot{X: x, Top: top - Pads, Bottom: bottom + Pads}
		if i == 0 {
			s.Top = l.Head.Bottom - headGap
		}
		if i == last {
			s.Bottom = l.Bar.Top + barGap
		}
		l.Slots = append(l.Slots, s)
	}
}

// side is a sheet with the collar at the right, n columns wide, and under the plan a band of text
// that is band mm high.
func (l Layout) side(n int, band, head float64) Layout {
	wide := float64(n)*Measure + float64(n-1)*gutter + 2*Pads
	edge := l.Frame.Max.X - wide
	l.Plan = box.Of(l.Frame.Min.X, l.Frame.Min.Y+band, edge, l.Frame.Max.Y)
	l.Rules = append([][2]r2.Vec(nil), [2]r2.Vec{box.At(edge, l.Frame.Min.Y), box.At(edge, l.Frame.Max.Y)})
	l.Slots = nil
	var xs []float64
	for i := range n {
		xs = append(xs, edge+Pads+float64(i)*(Measure+gutter))
	}
	l.collar(xs, l.Frame.Max.Y, l.Frame.Min.Y, head)
	if n > 1 {
		l.Rules = append(l.Rules, [2]r2.Vec{box.At(l.Block.Min.X, l.Frame.Min.Y), box.At(l.Block.Min.X, l.Block.Max.Y)})
	}
	if band > 0 {
		l.Rules = append(l.Rules, [2]r2.Vec{l.Plan.Min, box.At(l.Plan.Max.X, l.Plan.Min.Y)})
		for _, x := range ColumnsIn(l.Plan.Min.X, l.Plan.Max.X) {
			l.Slots = append(l.Slots, Slot{X: x, Top: l.Plan.Min.Y - Pads, Bottom: l.Frame.Min.Y + Pads})
		}
	}
	return l
}

// below is a sheet with the collar along its foot, high mm high.
func (l Layout) below(high, head float64) Layout {
	edge := l.Frame.Min.Y + high
	l.Plan = box.Of(l.Frame.Min.X, edge, l.Frame.Max.X, l.Frame.Max.Y)
	l.Rules = append([][2]r2.Vec(nil), [2]r2.Vec{box.At(l.Frame.Min.X, edge), box.At(l.Frame.Max.X, edge)})
	l.Slots = nil
	l.collar(ColumnsIn(l.Frame.Min.X, l.Frame.Max.X), edge, l.Frame.Min.Y, head)
	l.Rules = append(l.Rules, [2]r2.Vec{box.At(l.Block.Min.X, l.Frame.Min.Y), box.At(l.Block.Min.X, l.Block.Max.Y)})
	return l
}

// ColumnsIn returns the left edges of as many columns of text as go between two lines, evenly
// spread unless that leaves them far apart.
func ColumnsIn(left, right float64) []float64 {
	room := right - left - 2*Pads
	n := max(1, int(math.Floor((room+gutter)/(Measure+gutter))))
	pitch := 0.0
	if n > 1 {
		pitch = math.Min((room-Measure)/float64(n-1), Measure+widest)
	}
	var xs []float64
	for i := range n {
		xs = append(xs, left+Pads+pitch*float64(i))
	}
	return xs
}

// BarHeight is the height that the scale bar with its lettering takes, mm.
const BarHeight = 13.5

// The title block: its height, the pitch of its rows, and where the baseline of a value lies below
// that of its label; closer, with its lines, where the value takes two, mm.
const (
	blockHigh  = 33.6
	CellPitch  = 9.8
	ValueBelow = 4.0
	ValueClose = 3.2
	ValueLines = 3.0
)
