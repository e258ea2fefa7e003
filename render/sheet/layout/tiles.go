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
	overlap  = 12.0 // mm of the set that two neighbours both show
	maxParts = 16
	KeyHigh  = 34.0 // mm, the key to the parts at most
)

// Tiles are the parts of a plan: their number across and down, and where the first lies. The zero
// value is a plan in one piece.
type Tiles struct {
	Nx, Ny int
	first  r2.Box // m: what the part at the upper left shows
	step   r2.Vec // m, from part to part
}

// Parts is how many there are.
func (t Tiles) Parts() int { return max(1, t.Nx) * max(1, t.Ny) }

// Part is what part i shows, m; they are counted as one reads.
func (t Tiles) Part(i int) r2.Box {
	shift := r2.Vec{X: t.step.X * float64(i%t.Nx), Y: -t.step.Y * float64(i/t.Nx)}
	return r2.Box{Min: r2.Add(t.first.Min, shift), Max: r2.Add(t.first.Max, shift)}
}

// Own is what part i shows that no other does, up to the match lines, m.
func (t Tiles) Own(i int) r2.Box {
	b := t.Part(i)
	half := r2.Scale(0.5, r2.Sub(r2.Sub(b.Max, b.Min), t.step)) // of the overlap
	if i%t.Nx > 0 {
		b.Min.X += half.X
	}
	if i%t.Nx < t.Nx-1 {
		b.Max.X -= half.X
	}
	if i/t.Nx > 0 {
		b.Max.Y -= half.Y
	}
	if i/t.Nx < t.Ny-1 {
		b.Min.Y += half.Y
	}
	return b
}

// tiled splits an extent over panels of a size, at a scale. ok is false where that takes too many.
func tiled(extent, panel r2.Box, times float64) (t Tiles, ok bool) {
	metres := times / 1000
	split := func(need, have float64) (n int, step float64) {
		if need <= have {
			return 1, 0
		}
		n = int(math.Ceil((need - overlap) / (have - overlap)))
		return n, (need - have) / float64(n-1)
	}
	w, h := box.Width(panel)-2*marginX, box.Height(panel)-2*marginY
	if w < 5*overlap || h < 5*overlap {
		return t, false
	}
	needX, needY := box.Width(extent)/metres, box.Height(extent)/metres
	if !(needX < 1e6 && needY < 1e6) {
		return t, false
	}
	var stepX, stepY float64
	t.Nx, stepX = split(needX, w)
	t.Ny, stepY = split(needY, h)
	t.step = r2.Vec{X: stepX * metres, Y: stepY * metres}
	middleX, middleY := (extent.Min.X+extent.Max.X)/2, (extent.Min.Y+extent.Max.Y)/2
	x := middleX - t.step.X*float64(t.Nx-1)/2
	y := middleY + t.step.Y*float64(t.Ny-1)/2
	half := r2.Vec{X: w * metres / 2, Y: h * metres / 2}
	t.first = box.Of(x-half.X, y-half.Y, x+half.X, y+half.Y)
	return t, t.Parts() <= maxParts
}

// split is the layout of a plan in parts on a paper: the fewest that there can be.
func (f *Fitter) split(p Paper, times float64) (best Layout, ok bool) {
	try := func(l Layout) {
		t, fits := tiled(f.Extent, l.Plan, times)
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
