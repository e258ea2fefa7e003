package sheet

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// A plan that is too large for its paper at the smallest scale that is read with ease is split into
// parts, a page each, which lie over each other along match lines.
const (
	overlap   = 12.0 // mm of the set that two neighbours both show
	mostParts = 16
	keyHigh   = 34.0 // mm, the key to the parts at most
)

// tiles are the parts of a plan: their number across and down, and where the first lies. The zero
// value is a plan in one piece.
type tiles struct {
	nx, ny int
	first  r2.Box // m: what the part at the upper left shows
	step   r2.Vec // m, from part to part
}

// parts is how many there are.
func (t tiles) parts() int { return max(1, t.nx) * max(1, t.ny) }

// part is what part i shows, m; they are counted as one reads.
func (t tiles) part(i int) r2.Box {
	shift := r2.Vec{X: t.step.X * float64(i%t.nx), Y: -t.step.Y * float64(i/t.nx)}
	return r2.Box{Min: r2.Add(t.first.Min, shift), Max: r2.Add(t.first.Max, shift)}
}

// own is what part i shows that no other does, up to the match lines, m.
func (t tiles) own(i int) r2.Box {
	b := t.part(i)
	half := r2.Scale(0.5, r2.Sub(r2.Sub(b.Max, b.Min), t.step)) // of the overlap
	if i%t.nx > 0 {
		b.Min.X += half.X
	}
	if i%t.nx < t.nx-1 {
		b.Max.X -= half.X
	}
	if i/t.nx > 0 {
		b.Max.Y -= half.Y
	}
	if i/t.nx < t.ny-1 {
		b.Min.Y += half.Y
	}
	return b
}

// tiled splits an extent over panels of a size, at a scale. ok is false where that takes too many.
func tiled(extent, panel r2.Box, times float64) (t tiles, ok bool) {
	metres := times / 1000
	split := func(need, have float64) (n int, step float64) {
		if need <= have {
			return 1, 0
		}
		n = int(math.Ceil((need - overlap) / (have - overlap)))
		return n, (need - have) / float64(n-1)
	}
	w, h := width(panel)-2*marginX, height(panel)-2*marginY
	if w < 5*overlap || h < 5*overlap {
		return t, false
	}
	needX, needY := width(extent)/metres, height(extent)/metres
	if !(needX < 1e6 && needY < 1e6) {
		return t, false
	}
	var stepX, stepY float64
	t.nx, stepX = split(needX, w)
	t.ny, stepY = split(needY, h)
	t.step = r2.Vec{X: stepX * metres, Y: stepY * metres}
	middleX, middleY := (extent.Min.X+extent.Max.X)/2, (extent.Min.Y+extent.Max.Y)/2
	x := middleX - t.step.X*float64(t.nx-1)/2
	y := middleY + t.step.Y*float64(t.ny-1)/2
	half := r2.Vec{X: w * metres / 2, Y: h * metres / 2}
	t.first = box(x-half.X, y-half.Y, x+half.X, y+half.Y)
	return t, t.parts() <= mostParts
}

// split is the layout of a plan in parts on a paper: the fewest that there can be.
func (f *fitter) split(p Paper, times float64) (best layout, ok bool) {
	try := func(l layout) {
		t, fits := tiled(f.extent, l.plan, times)
		if fits && (!ok || t.parts() < best.tiles.parts()) {
			best, ok = l, true
			best.tiles, best.times = t, times
		}
	}
	for _, upright := range [...]bool{false, true} {
		if f.way == Portrait && !upright || f.way == Landscape && upright {
			continue
		}
		page := sheetOf(p, upright)
		head := f.head(page.grand())
		try(page.side(1, 0, head))
		try(page.below(math.Max(head+2*pads, blockHigh+barHeight+2*barGap), head))
	}
	return best, ok
}

// inPartsAt is the largest scale at which a plan in parts is not too many of them.
func (f *fitter) inPartsAt(p Paper) (times float64, ok bool) {
	for _, times := range f.scales {
		if _, ok := f.split(p, times); ok {
			return times, true
		}
	}
	return 0, false
}

// pourParts fills the collar of the first part.
func (f *fitter) pourParts(l *layout, key *block) {
	f.keys = append([]*block{key}, f.blocks[:min(1, len(f.blocks))]...) // the key of levels comes first
	l.pieces, l.left = pour(whole(append([]*block{key}, ranked(f.blocks)...)), l.slots)
}

// splitNote says that a plan comes in parts, and which paper would hold it in one piece.
func (f *fitter) splitNote(l *layout) source.Diagnostic {
	hint := ""
	for _, p := range papersOf(f.feet) {
		if whole, ok := f.best(p); ok && whole.times <= l.times {
			hint = fmt.Sprintf("--paper %s holds it in one piece at %s", p.Name, unit.FormatScale(whole.times, f.feet))
			break
		}
	}
	return source.Diagnostic{Severity: source.Info, Code: "plan-in-parts", Hint: hint,
		Message: fmt.Sprintf("the plan does not fit on %s at %s and is split into %d parts with match lines",
			l.paper.Name, unit.FormatScale(l.times, f.feet), l.tiles.parts())}
}
