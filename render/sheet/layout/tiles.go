package layout

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
)

// A plan that is too large for its paper at the smallest scale that is read with ease is split into
// parts, a page each, which lie over each other along match lines.
const (
	overlap  = 0.075 // of a panel, that two neighbours both show
	maxParts = 16
	KeyHigh  = 34.0 // mm, the key to the parts at most
)

// Tiles are the parts of a plan. The zero value is a plan in one piece.
type Tiles struct {
	Nx, Ny int
	xs, ys []float64 // m: the left and the lower edge of the plan, the match lines, and its other edge
	shown  r2.Vec    // m: how far a part goes on beyond its match lines
}

// Parts is how many there are.
func (t Tiles) Parts() int { return max(1, t.Nx) * max(1, t.Ny) }

// Part is what part i shows, m; they are counted as one reads.
func (t Tiles) Part(i int) r2.Box {
	b := t.Own(i)
	if i%t.Nx > 0 {
		b.Min.X -= t.shown.X
	}
	if i%t.Nx < t.Nx-1 {
		b.Max.X += t.shown.X
	}
	if i/t.Nx > 0 {
		b.Max.Y += t.shown.Y
	}
	if i/t.Nx < t.Ny-1 {
		b.Min.Y -= t.shown.Y
	}
	return b
}

// Own is what part i shows that no other does, up to the match lines, m.
func (t Tiles) Own(i int) r2.Box {
	x, y := i%t.Nx, t.Ny-1-i/t.Nx
	return box.Of(t.xs[x], t.ys[y], t.xs[x+1], t.ys[y+1])
}

// Within is the part of a panel that shows part i and nothing beyond its overlap.
func (t Tiles) Within(panel r2.Box, v View, i int) r2.Box {
	b := v.Box(t.Part(i))
	if i%t.Nx > 0 {
		panel.Min.X = math.Max(panel.Min.X, b.Min.X)
	}
	if i%t.Nx < t.Nx-1 {
		panel.Max.X = math.Min(panel.Max.X, b.Max.X)
	}
	if i/t.Nx > 0 {
		panel.Max.Y = math.Min(panel.Max.Y, b.Max.Y)
	}
	if i/t.Nx < t.Ny-1 {
		panel.Min.Y = math.Max(panel.Min.Y, b.Min.Y)
	}
	return panel
}

// Seams are what match lines keep clear of, m.
type Seams struct {
	Never  []r2.Box // people, cameras, lights and grip
	Rather []r2.Box // furniture
}

// tiled splits an extent over panels of a size, at a scale. ok is false where that takes too many.
func tiled(extent, panel r2.Box, times float64, clear Seams) (t Tiles, ok bool) {
	const least = 60.0 // mm
	metres := times / 1000
	w, h := (box.Width(panel)-2*marginX)*metres, (box.Height(panel)-2*marginY)*metres
	if w < least*metres || h < least*metres || !(box.Width(extent) < 1e6*metres && box.Height(extent) < 1e6*metres) {
		return t, false
	}
	t.shown = r2.Vec{X: overlap * w / 2, Y: overlap * h / 2}
	t.xs = seams(extent.Min.X, extent.Max.X, w, clear.spans(func(p r2.Vec) float64 { return p.X }))
	t.ys = seams(extent.Min.Y, extent.Max.Y, h, clear.spans(func(p r2.Vec) float64 { return p.Y }))
	t.Nx, t.Ny = len(t.xs)-1, len(t.ys)-1
	return t, t.Parts() <= maxParts
}

// span is what a match line costs between two places along one axis, m.
type span struct{ from, to, cost float64 }

// What a match line costs that runs through somebody or a light, and through furniture: more than to lie anywhere
// else, m.
const (
	throughThing     = 1000.0
	throughFurniture = 30.0
	seamClear        = 0.15 // m, beside a thing
)

// spans are what match lines keep clear of along one axis.
func (s Seams) spans(along func(r2.Vec) float64) (all []span) {
	for _, b := range s.Never {
		all = append(all, span{along(b.Min) - seamClear, along(b.Max) + seamClear, throughThing})
	}
	for _, b := range s.Rather {
		all = append(all, span{along(b.Min), along(b.Max), throughFurniture})
	}
	return all
}

// seams are the ends of a way and the match lines between them, each where it runs through the least: one part more
// than there have to be where a line would run through a thing else.
func seams(from, to, window float64, clear []span) []float64 {
	lap := overlap * window
	n := max(1, int(math.Ceil((to-from-lap)/(window-lap)-1e-9)))
	if to-from <= window {
		return []float64{from, to}
	}
	best, cost := seamsOf(from, to, window, n, clear)
	if cost >= throughThing {
		if more, less := seamsOf(from, to, window, n+1, clear); less < cost {
			best = more
		}
	}
	return best
}

// seamsOf are those of n parts, and the most that a line costs.
func seamsOf(from, to, window float64, n int, clear []span) (lines []float64, worst float64) {
	const steps = 60
	lap := overlap * window
	each := (to - from + float64(n-1)*lap) / float64(n)
	free := (window - each) / 2 // that a line may move without a part that its page does not hold
	lines = []float64{from}
	for i := 1; i < n; i++ {
		middle := from + float64(i)*(each-lap) + lap/2
		at, least := middle, math.Inf(1)
		for k := -steps; k <= steps; k++ {
			x := middle + free*float64(k)/steps
			if c := costAt(x, clear) + math.Abs(x-middle); c < least {
				at, least = x, c
			}
		}
		lines, worst = append(lines, at), math.Max(worst, least)
	}
	return append(lines, to), worst
}

// costAt is what a match line at a place runs through.
func costAt(x float64, clear []span) (sum float64) {
	for _, s := range clear {
		if x > s.from && x < s.to {
			sum += s.cost
		}
	}
	return sum
}

// split is the layout of a plan in parts on a paper: the fewest that there can be.
func (f *Fitter) split(p Paper, times float64) (best Layout, ok bool) {
	try := func(l Layout) {
		t, fits := tiled(f.Extent, l.Plan, times, f.Seams)
		if fits && (!ok || t.Parts() < best.Tiles.Parts()) {
			best, ok = l, true
			best.Tiles, best.Times = t, times
		}
	}
	for _, upright := range [...]bool{false, true} {
		if f.Way == Portrait && !upright || f.Way == Landscape && upright {
			continue
		}
		page := PageOf(p, upright)
		head := f.Head(page.LargeFormat())
		try(page.side(1, 0, head))
		try(page.below(math.Max(head+2*Pads, blockHigh+BarHeight+2*barGap), head))
	}
	return best, ok
}

// inPartsAt is the largest scale at which a plan in parts is not too many of them.
func (f *Fitter) inPartsAt(p Paper) (times float64, ok bool) {
	for _, times := range f.Scales {
		if _, ok := f.split(p, times); ok {
			return times, true
		}
	}
	return 0, false
}

// PourParts fills the collar of the first part.
func (f *Fitter) PourParts(l *Layout, key *Block) {
	own := Whole([]*Block{key})
	f.Keys = append(own, f.Blocks[:min(1, len(f.Blocks))]...) // the key of levels comes first
	l.Pieces, l.Left = Pour(append(own, ranked(f.Blocks)...), l.Slots)
}

// SplitNote says that a plan comes in parts, and which paper would hold it in one piece.
func (f *Fitter) SplitNote(l *Layout) source.Diagnostic {
	hint := ""
	for _, p := range PapersOf(f.Feet) {
		if whole, ok := f.Best(p); ok && whole.Times <= l.Times {
			hint = fmt.Sprintf("--paper %s holds it in one piece at %s", p.Name, unit.FormatScale(whole.Times, f.Feet))
			break
		}
	}
	return source.Diagnostic{Severity: source.Info, Code: "plan-in-parts", Hint: hint,
		Message: fmt.Sprintf("the plan does not fit on %s at %s and is split into %d parts with match lines",
			l.Paper.Name, unit.FormatScale(l.Times, f.Feet), l.Tiles.Parts())}
}
