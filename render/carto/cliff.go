package carto

import (
	"math"

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
	for _, d := range []struct {
		v *float64
		d float64
	}{{&o.Within, 0.5}, {&o.Least, 2}, {&o.Every, 1.2}, {&o.Tick, 0.8}} {
		if *d.v <= 0 {
			*d.v = d.d
		}
	}
	return o
}

// Cliff is one line for three or more levels, drawn heavy, with ticks down to the dark side. The
// light lies on its left.
type Cliff struct {
	Line               // of the lowest level
	Top    int         // Index of the highest level that runs in it
	Ticks  [][2]r2.Vec // from the line to their tips
	Levels int         // how many run in it at most
}

// Cliffs merges what runs within CliffOptions.Within of each other into cliffs, and returns the
// lines without what went into them. Levels count as neighbours by their Index.
func Cliffs(lines []Line, opts CliffOptions) ([]Line, []Cliff) {
	c := cliffs{opts: opts.withDefaults()}
	if len(lines) == 0 {
		return nil, nil
	}
	c.near = indexSpans(lines, 2*c.opts.Within)
	var kept []Line
	var found []Cliff
	for i, l := range lines {
		course := newCourse(l)
		carries, carried := c.runs(course, i)
		found = append(found, c.draw(course, i, carries)...)
		kept = append(kept, course.without(merged(course, carries, carried))...)
	}
	return kept, found
}

// cliffs is one search for cliffs.
type cliffs struct {
	opts CliffOptions
	near *spanIndex
}

// role is what a place of a line does in a cliff.
type role uint8

const (
	alone   role = iota
	carrier      // the lowest of its levels: the cliff is drawn along it
	carried      // drawn by a lower level's line
)

// reach is how far up and down the stairs neighbours are looked for.
const reach = 12

// stack returns, for a point of line i, how far the lines of the levels around it are, from reach
// levels under it to reach over it; infinite beyond twice Within.
func (c cliffs) stack(p r2.Vec, i int) (far [2*reach + 1]float64) {
	for n := range far {
		far[n] = math.Inf(1)
	}
	far[reach] = 0
	level := c.near.lines[i].Index
	d := 2 * c.opts.Within
	c.near.near(grown(r2.Box{Min: p, Max: p}, d), func(line, _ int, a, b r2.Vec) bool {
		if n := c.near.lines[line].Index - level + reach; n >= 0 && n < len(far) && n != reach {
			if gap := distance(p, a, b); gap <= d {
				far[n] = math.Min(far[n], gap)
			}
		}
		return true
	})
	return far
}

// role says what line i does at p: three neighbouring levels within Within make a cliff, which the
// lowest of them carries.
func (c cliffs) role(p r2.Vec, i int) role {
	far := c.stack(p, i)
	for low := reach - 2; low <= reach; low++ {
		if far[low]+far[low+2] <= c.opts.Within && far[low+1] <= c.opts.Within {
			if low < reach {
				return carried
			}
			return carrier
		}
	}
	return alone
}

// top returns how many levels over line i run in the cliff at p.
func (c cliffs) top(p r2.Vec, i int) int {
	far, n := c.stack(p, i), 0
	for reach+n+1 < len(far) && far[reach+n+1] <= c.opts.Within*math.Max(1, float64(n+1)/2) {
		n++
	}
	return n
}

// runs walks line i and returns the stretches where it carries a cliff, and where it is carried.
func (c cliffs) runs(course course, i int) (carries, carriedBy [][2]float64) {
	step := c.opts.Within / 2
	n := int(math.Ceil(course.length() / step))
	roles := make([]role, n+1)
	for k := range roles {
		p, _ := course.at(math.Min(float64(k)*step, course.length()))
		roles[k] = c.role(p, i)
	}
	// The carrier may be a little shorter than what it carries, or that would leave a hole.
	return stretches(course, roles, carrier, c.opts.Least/2, step), stretches(course, roles, carried, c.opts.Least, step)
}

// stretches returns where the line has a role for at least a length; shorter interruptions are
// bridged. On a ring the last stretch may run past its end.
func stretches(course course, roles []role, r role, least, step float64) (out [][2]float64) {
	for k := 0; k < len(roles); k++ {
		if roles[k] != r {
			continue
		}
		from := k
		for k+1 < len(roles) && roles[k+1] == r {
			k++
		}
		s, t := float64(from)*step, math.Min(float64(k)*step, course.length())
		if last := len(out) - 1; last >= 0 && s-out[last][1] <= least {
			out[last][1] = t
		} else {
			out = append(out, [2]float64{s, t})
		}
	}
	out = closeRing(course, out, step)
	kept := out[:0]
	for _, o := range out {
		if o[1]-o[0] >= least {
			kept = append(kept, o)
		}
	}
	return kept
}

// closeRing joins a stretch at the end of a ring to the one at its beginning.
func closeRing(course course, out [][2]float64, step float64) [][2]float64 {
	if n := len(out); course.Closed && n >= 2 && out[0][0] <= step && out[n-1][1] >= course.length()-step {
		out[n-1][1] = course.length() + out[0][1]
		return out[1:]
	}
	return out
}

// merged returns the stretches of both kinds in order, without overlaps.
func merged(course course, a, b [][2]float64) (out [][2]float64) {
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
	if n := len(out); course.Closed && n >= 2 && out[n-1][1]-course.length() > out[0][0] {
		out[n-1][1] = math.Max(out[n-1][1], out[0][1]+course.length())
		out = out[1:]
	}
	return out
}

// draw makes the cliffs of one line.
func (c cliffs) draw(course course, i int, carries [][2]float64) (out []Cliff) {
	for _, run := range carries {
		cliff := Cliff{Line: course.cut(run[0], run[1])}
		if course.Closed && run[1]-run[0] >= course.length()-c.opts.Within {
			cliff.Line = course.Line
		}
		for s := run[0] + c.opts.Every/2; s < run[1]; s += c.opts.Every {
			p, d := course.at(s)
			if !bends(course, s, d, c.opts.Tick) {
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
func bends(course course, s float64, d r2.Vec, length float64) bool {
	for _, off := range [...]float64{-length, length} {
		if _, other := course.at(s + off); r2.Dot(d, other) < math.Sqrt2/2 {
			return true
		}
	}
	return false
}
