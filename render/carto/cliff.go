package carto

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// CliffOptions say when lines run too close to be told apart. Lengths are those of the lines,
// which should be mm on paper; zero takes the value named.
type CliffOptions struct {
	Within float64 // three levels side by side within this become a cliff: 0.5
	Least  float64 // the shortest cliff: 2
	Every  float64 // from tick to tick: 1.2
	Tick   float64 // length of a tick: 0.8
}

func (o CliffOptions) withDefaults() CliffOptions {
	fillIn(setting{&o.Within, 0.5}, setting{&o.Least, 2}, setting{&o.Every, 1.2}, setting{&o.Tick, 0.8})
	return o
}

// Cliff is one line for three or more levels, drawn heavy, with ticks down to the dark side. The
// light lies on its left.
type Cliff struct {
	Line               // of the lowest level
	Top    int         // Index of the highest level that runs in it
	Ticks  [][2]r2.Vec // from the line to their tips, mm as the line
	Levels int         // how many run in it at most
}

// Cliffs merges what runs within CliffOptions.Within of each other into cliffs, and returns the
// lines without what went into them. Levels count as neighbours by their Index.
func Cliffs(lines []Line, opts CliffOptions) ([]Line, []Cliff) {
	if len(lines) == 0 {
		return nil, nil
	}
	c := cliffs{opts: opts.withDefaults()}
	c.near = indexSpans(lines, 2*c.opts.Within)
	measured, carries := make([]measuredLine, len(lines)), make([][][2]float64, len(lines))
	for i, l := range lines {
		measured[i] = measureLine(l)
		carries[i] = c.carryingStretches(measured[i], i)
		c.found = append(c.found, c.draw(measured[i], i, carries[i])...)
	}
	if len(c.found) == 0 {
		return lines, nil
	}
	c.index()
	var kept []Line
	for i, line := range measured {
		gaps := merged(line, carries[i], c.coveredStretches(line))
		for _, l := range line.without(gaps) {
			if len(gaps) == 0 || l.Length() >= c.opts.Within {
				kept = append(kept, l)
			}
		}
	}
	return kept, c.found
}

// cliffs is one search for cliffs.
type cliffs struct {
	opts  CliffOptions
	near  *spanIndex // of the lines
	found []Cliff
	drawn *spanIndex // of the cliffs
}

// index makes the cliffs easy to find.
func (c *cliffs) index() {
	lines := make([]Line, len(c.found))
	for i, f := range c.found {
		lines[i] = f.Line
	}
	c.drawn = indexSpans(lines, 2*c.opts.Within)
}

// reach is how far up and down the stairs neighbours are looked for.
const reach = 12

// stack returns, for a point of line i, how far the lines of the levels around it are, from some
// levels under it to as many over it, reach at most; infinite beyond d.
func (c cliffs) stack(p r2.Vec, i, some int, d float64) (far [2*reach + 1]float64) {
	for n := range far {
		far[n] = math.Inf(1)
	}
	far[reach] = 0
	level := c.near.lines[i].Index
	c.near.near(grown(r2.Box{Min: p, Max: p}, d), func(line, _ int, a, b r2.Vec) bool {
		if n := c.near.lines[line].Index - level + reach; n >= reach-some && n <= reach+some && n != reach {
			if gap := Distance(p, a, b); gap <= d {
				far[n] = math.Min(far[n], gap)
			}
		}
		return true
	})
	return far
}

// carriesAt says whether line i carries a cliff at p: it and the next two levels lie within Within,
// and no lower level is in it.
func (c cliffs) carriesAt(p r2.Vec, i int) bool {
	far := c.stack(p, i, 2, c.opts.Within)
	for low := reach - 2; low <= reach; low++ {
		if far[low]+far[low+2] <= c.opts.Within && far[low+1] <= c.opts.Within {
			return low == reach
		}
	}
	return false
}

// top returns how many levels over line i run in the cliff at p.
func (c cliffs) top(p r2.Vec, i int) int {
	far, n := c.stack(p, i, reach, 2*c.opts.Within), 0
	for reach+n+1 < len(far) && far[reach+n+1] <= c.opts.Within*math.Max(1, float64(n+1)/2) {
		n++
	}
	return n
}

// carryingStretches returns the stretches of line i that carry a cliff. Short interruptions are bridged, and
// what is still short is no cliff. On a ring the last stretch may run past its end.
func (c cliffs) carryingStretches(line measuredLine, i int) (out [][2]float64) {
	runs := stretches(line, c.opts.Within/2, func(p r2.Vec) bool { return c.carriesAt(p, i) })
	for _, r := range runs {
		if last := len(out) - 1; last >= 0 && r[0]-out[last][1] <= c.opts.Least {
			out[last][1] = r[1]
		} else {
			out = append(out, r)
		}
	}
	return slices.DeleteFunc(out, func(r [2]float64) bool { return r[1]-r[0] < c.opts.Least })
}

// coveredStretches returns the stretches of a line that a cliff stands for: of a level in it, within Within
// of it and not past its ends.
func (c cliffs) coveredStretches(line measuredLine) [][2]float64 {
	return stretches(line, c.opts.Within/2, func(p r2.Vec) (hit bool) {
		box := grown(r2.Box{Min: p, Max: p}, c.opts.Within)
		c.drawn.near(box, func(n, piece int, a, b r2.Vec) bool {
			f := &c.found[n]
			inStack := line.Index >= f.Index && line.Index <= f.Top
			hit = inStack && Distance(p, a, b) <= c.opts.Within && !f.beyondEnd(piece, p)
			return !hit
		})
		return hit
	})
}

// beyondEnd says whether p lies beyond the end of an open cliff that a piece makes.
func (f *Cliff) beyondEnd(piece int, p r2.Vec) bool {
	if f.Closed {
		return false
	}
	a, b := f.span(piece)
	d := r2.Sub(b, a)
	return piece == 0 && r2.Dot(r2.Sub(p, a), d) < 0 || piece == f.spans()-1 && r2.Dot(r2.Sub(p, b), d) > 0
}

// stretches returns where along a line is holds, asked every step and then closer at the ends. On a
// ring the last stretch may run past its end.
func stretches(line measuredLine, step float64, is func(r2.Vec) bool) (out [][2]float64) {
	all := line.length()
	n := max(int(math.Ceil(all/step)), 1)
	at := func(k int) float64 { return min(float64(k)*step, all) }
	holds := func(s float64) bool { p, _ := line.at(s); return is(p) }
	before := false
	for k := range n + 1 {
		now := holds(at(k))
		switch {
		case now && k == 0:
			out = append(out, [2]float64{0, all})
		case now && !before:
			out = append(out, [2]float64{change(at(k), at(k-1), holds), all})
		case !now && before:
			out[len(out)-1][1] = change(at(k-1), at(k), holds)
		}
		before = now
	}
	return closeRing(line, out, step)
}

// change returns where between yes and no it stops to hold.
func change(yes, no float64, holds func(float64) bool) float64 {
	for range 5 {
		if m := (yes + no) / 2; holds(m) {
			yes = m
		} else {
			no = m
		}
	}
	return yes
}

// closeRing joins a stretch at the end of a ring to the one at its beginning.
func closeRing(line measuredLine, out [][2]float64, step float64) [][2]float64 {
	if n := len(out); line.Closed && n >= 2 && out[0][0] <= step && out[n-1][1] >= line.length()-step {
		out[n-1][1] = line.length() + out[0][1]
		return out[1:]
	}
	return out
}

// merged returns the stretches of both kinds in order, without overlaps.
func merged(line measuredLine, a, b [][2]float64) (out [][2]float64) {
	i, j := 0, 0
	for i < len(a) || j < len(b) {
		var next [2]float64
		if j >= len(b) || i < len(a) && a[i][0] <= b[j][0] {
			next, i = a[i], i+1
		} else {
			next, j = b[j], j+1
		}
		if last := len(out) - 1; last >= 0 && next[0] <= out[last][1] {
			out[last][1] = math.Max(out[last][1], next[1])
		} else {
			out = append(out, next)
		}
	}
	if n := len(out); line.Closed && n >= 2 && out[n-1][1]-line.length() > out[0][0] {
		out[n-1][1] = math.Max(out[n-1][1], out[0][1]+line.length())
		out = out[1:]
	}
	return out
}

// draw makes the cliffs of one line.
func (c cliffs) draw(line measuredLine, i int, carries [][2]float64) (out []Cliff) {
	for _, run := range carries {
		cliff := Cliff{Line: line.cut(run[0], run[1])}
		if line.Closed && run[1]-run[0] >= line.length()-c.opts.Within {
			cliff.Line = line.Line
		}
		for s := run[0] + c.opts.Every/2; s < run[1]; s += c.opts.Every {
			p, d := line.at(s)
			if !bends(line, s, d, c.opts.Tick) {
				cliff.Ticks = append(cliff.Ticks, [2]r2.Vec{p, r2.Add(p, r2.Scale(c.opts.Tick, r2.Vec{X: d.Y, Y: -d.X}))})
			}
			cliff.Levels = max(cliff.Levels, c.top(p, i)+1)
		}
		cliff.Levels = max(cliff.Levels, 3)
		cliff.Top = cliff.Index + cliff.Levels - 1
		out = append(out, cliff)
	}
	return out
}

// bends says whether the line turns by more than 45° within a length of s, where its direction is
// d: a tick there would run across it.
func bends(line measuredLine, s float64, d r2.Vec, length float64) bool {
	for _, off := range [...]float64{-length, length} {
		if _, other := line.at(s + off); r2.Dot(d, other) < math.Sqrt2/2 {
			return true
		}
	}
	return false
}
