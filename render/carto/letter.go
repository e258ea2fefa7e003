package carto

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/symbols/ink"
)

// LetterOptions say how lines are lettered. Lengths are mm on paper, as the lines must be; zero
// takes the value named.
type LetterOptions struct {
	Size      func(l Line) r2.Vec // width and height of a line's lettering; no width, no lettering
	Pad       float64             // of the gap, before and after the lettering: 0.7
	Spacing   float64             // one lettering for each such length of a line: 110
	Apart     float64             // letterings of one level lie further apart: 30
	Bend      float64             // the line strays from its lettering's base by at most this: 0.35
	Obstacles []Obstacle          // what the lettering must not cover
	Area      *r2.Box             // where it must lie; nil: anywhere
}

func (o LetterOptions) withDefaults() LetterOptions {
	fillIn(setting{&o.Pad, 0.7}, setting{&o.Spacing, 110}, setting{&o.Apart, 30}, setting{&o.Bend, 0.35})
	return o
}

// Lettering is a figure in a gap of a line. Lengths are mm on paper.
type Lettering struct {
	Line     int     // index into the lines
	At       r2.Vec  // the middle of the figure
	Angle    float64 // of its base, degrees counter-clockwise
	Size     r2.Vec
	From, To float64 // the gap, by length along the line; on a ring To may lie past its end
}

// Outline returns the corners of the lettering's box, counter-clockwise.
func (l Lettering) Outline() []r2.Vec { return ink.TurnedBox(l.At, l.Size, l.Angle) }

// Letter finds places for the figures of the lines: upright, in gaps on straight stretches, clear
// of other lines, of obstacles and of each other. A line that has no good place gets none. The
// order is that of the lines, and along each.
func Letter(lines []Line, opts LetterOptions) []Lettering {
	w := letterer{opts: opts.withDefaults(), lines: lines}
	if len(lines) == 0 || opts.Size == nil {
		return nil
	}
	w.near = indexSpans(lines, 4)
	area := r2.Box{Min: w.near.bins.min, Max: w.near.bins.min}
	area.Max = r2.Add(area.Max, r2.Scale(w.near.bins.size, r2.Vec{X: float64(w.near.bins.nx), Y: float64(w.near.bins.ny)}))
	w.obstacles = indexObstacles(opts.Obstacles, area)
	for _, i := range longestFirst(lines) {
		w.letter(i)
	}
	sort.Slice(w.placed, func(a, b int) bool {
		if w.placed[a].Line != w.placed[b].Line {
			return w.placed[a].Line < w.placed[b].Line
		}
		return w.placed[a].From < w.placed[b].From
	})
	return w.placed
}

// longestFirst returns the indices of the lines, longest first: short lines have less to choose
// from, but a long one without a figure is missed more.
func longestFirst(lines []Line) []int {
	order, length := make([]int, len(lines)), make([]float64, len(lines))
	for i, l := range lines {
		order[i], length[i] = i, l.Length()
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(length[b], length[a]) })
	return order
}

// Cut returns the lines with gaps where they are lettered.
func Cut(lines []Line, letters []Lettering) []Line {
	gaps := make([][][2]float64, len(lines))
	for _, l := range letters {
		gaps[l.Line] = append(gaps[l.Line], [2]float64{l.From, l.To})
	}
	var out []Line
	for i, l := range lines {
		out = append(out, measureLine(l).without(gaps[i])...)
	}
	return out
}

// letterer is one run of Letter.
type letterer struct {
	opts      LetterOptions
	lines     []Line
	near      *spanIndex
	obstacles *obstacleIndex
	placed    []Lettering
}

// choice is a place that a lettering could take; less is better.
type choice struct {
	Lettering
	cost float64
}

// letter places the figures of line i.
func (w *letterer) letter(i int) {
	size := w.opts.Size(w.lines[i])
	c := measureLine(w.lines[i])
	gap := size.X + 2*w.opts.Pad
	if size.X <= 0 || size.Y <= 0 || c.length() < 2*gap {
		return
	}
	wanted := max(1, int(c.length()/w.opts.Spacing+0.5))
	choices := w.choices(c, i, size)
	for n := 0; n < wanted && len(choices) > 0; n++ {
		best := w.best(choices)
		if best < 0 {
			return
		}
		w.placed = append(w.placed, choices[best].Lettering)
		choices = slices.Delete(choices, best, best+1)
	}
}

// best is the free choice that costs least, -1 where none is free. Figures of neighbouring levels stand together like
// the rungs of a ladder, so that the eye climbs from one to the next.
func (w *letterer) best(choices []choice) int {
	best, least := -1, math.Inf(1)
	for i, ch := range choices {
		if ch.cost >= least { // they come by cost, and the ladder only adds to it
			break
		}
		if cost := ch.cost + w.ladderPenalty(ch.Lettering); cost < least && w.free(ch.Lettering) {
			best, least = i, cost
		}
	}
	return best
}

// The reach of a ladder, mm: a neighbour's figure further off draws no more. It is worth ladderCost at most.
const (
	ladderReach = 40.0
	ladderCost  = 0.7
)

// ladderPenalty is what it costs that a figure stands far from those of the levels next to its own; nothing where none of
// them has one yet.
func (w *letterer) ladderPenalty(l Lettering) float64 {
	nearest, any := ladderReach, false
	for _, p := range w.placed {
		if apart := w.lines[p.Line].Index - w.lines[l.Line].Index; apart == 1 || apart == -1 {
			nearest, any = math.Min(nearest, r2.Norm(r2.Sub(p.At, l.At))), true
		}
	}
	if !any {
		return 0
	}
	return ladderCost * nearest / ladderReach
}

// choices returns the places on line i that are straight and clear, best first.
func (w *letterer) choices(c measuredLine, i int, size r2.Vec) []choice {
	const step = 1.0 // mm
	var out []choice
	half := size.X/2 + w.opts.Pad
	for s := half; s <= c.length()-half; s += step {
		l, bend := w.at(c, i, s, half, size)
		if bend > w.opts.Bend {
			continue
		}
		over, free := w.obstacles.over(l.Outline(), false)
		if !free || !w.inArea(l) || w.isCrossed(c, l) {
			continue
		}
		// A mm of bend is worth what a right angle is: level figures on straight lines read best. The
		// middle of a line is a little better than its ends. A figure reads uphill, its head to the light,
		// where that does not stand it on its own.
		cost := bend + math.Abs(l.Angle)/90 + over/10
		if w.upsideDown(c, s, l) {
			cost += downCost
		}
		if !c.Closed {
			cost += 0.3 * math.Abs(2*s/c.length()-1)
		}
		out = append(out, choice{l, cost})
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].cost < out[b].cost })
	return out
}

// downCost is what a figure costs whose foot is to the light.
const downCost = 0.8

// upsideDown says whether the head of a figure points away from the light, which lies on the left of a line.
func (w *letterer) upsideDown(c measuredLine, s float64, l Lettering) bool {
	_, along := c.at(s)
	sin, cos := math.Sincos(l.Angle * math.Pi / 180)
	return r2.Dot(along, r2.Vec{X: cos, Y: sin}) < 0
}

// at returns the lettering in the middle of whose gap s is, and how far the line strays from its
// base there.
func (w *letterer) at(c measuredLine, i int, s, half float64, size r2.Vec) (l Lettering, bend float64) {
	a, _ := c.at(s - half)
	b, _ := c.at(s + half)
	along := r2.Sub(b, a)
	for _, p := range c.cut(s-half, s+half).Points {
		bend = math.Max(bend, Distance(p, a, b))
	}
	l = Lettering{Line: i, At: r2.Scale(0.5, r2.Add(a, b)), Angle: Upright(along), Size: size, From: s - half, To: s + half}
	if mid, _ := c.at(s); bend > 0 { // on a gentle curve the figure sits on the curve
		l.At = r2.Scale(0.5, r2.Add(l.At, mid))
	}
	return l, bend
}

// Upright returns the angle of a direction in degrees, turned by half a turn where a figure would
// stand on its head: over -90, up to 90.
func Upright(d r2.Vec) float64 {
	a := math.Atan2(d.Y, d.X) * 180 / math.Pi
	switch {
	case a > 90:
		return a - 180
	case a <= -90:
		return a + 180
	}
	return a
}

func (w *letterer) inArea(l Lettering) bool {
	if w.opts.Area == nil {
		return true
	}
	b := plane.Bounds(l.Outline())
	return b.Min.X >= w.opts.Area.Min.X && b.Min.Y >= w.opts.Area.Min.Y &&
		b.Max.X <= w.opts.Area.Max.X && b.Max.Y <= w.opts.Area.Max.Y
}

// isCrossed says whether another line, or another stretch of the same, runs through the lettering.
func (w *letterer) isCrossed(c measuredLine, l Lettering) (hit bool) {
	outline := ink.TurnedBox(l.At, r2.Vec{X: l.Size.X, Y: l.Size.Y + 0.4}, l.Angle)
	w.near.near(plane.Bounds(outline), func(line, piece int, a, b r2.Vec) bool {
		hit = (line != l.Line || !c.inGap(piece, l)) && Overlap(outline, []r2.Vec{a, b})
		return !hit
	})
	return hit
}

// inGap says whether a straight piece of a line runs in or into the gap of its lettering.
func (c measuredLine) inGap(piece int, l Lettering) bool {
	from, to := c.upTo[piece], c.upTo[piece+1]
	return from <= l.To && to >= l.From || c.Closed && from+c.length() <= l.To
}

// free says whether a lettering keeps clear of those placed before.
func (w *letterer) free(l Lettering) bool {
	margin := r2.Vec{X: l.Size.X + 1, Y: l.Size.Y + 0.6}
	outline := ink.TurnedBox(l.At, margin, l.Angle)
	for _, p := range w.placed {
		if Overlap(outline, p.Outline()) {
			return false
		}
		sameLevel := w.lines[p.Line].Index == w.lines[l.Line].Index
		if sameLevel && r2.Norm(r2.Sub(p.At, l.At)) < w.opts.Apart {
			return false
		}
	}
	return true
}
