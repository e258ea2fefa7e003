package draw

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// walkGraph is how a walk keeps to the working stop: stops from it by metres along the walk, a line a camera.
type walkGraph struct {
	stopPlot
	walk *meter.Walk
	feet bool
}

// stopPlot is a plot of stops from the working stop: over a walk, or over time.
type stopPlot struct {
	plot  r2.Box  // mm
	low   int     // stops at the foot of the plot
	high  int     // and at its top
	pitch float64 // mm of a stop, in which the figures of neighbours keep apart in any lettering
	long  float64 // from the left to the right, m or s
}

// Sizes of the graph, mm.
const (
	stopPitch  = 3.4 // of a stop, at the least
	graphLeft  = 6.5 // for the figures of stops
	graphRight = 6.0 // for the letters of cameras
	graphFoot  = 7.2 // for the figures of metres
	graphAir   = 1.8 // over these, under the lowest figure of stops
	graphTick  = 0.8
	dotRadius  = 0.45
)

// footAir is that for lettering of a height: ascenders and descenders keep apart.
func footAir(st style) float64 { return math.Max(graphAir, 0.85*st.Cap) }

// mostStops is how many stops over and under a graph shows: what lies beyond is drawn on its edge.
const mostStops = 5

// pitchOf is the height of a stop, mm: the figures of neighbours keep apart.
func pitchOf(st style) float64 { return math.Max(stopPitch, st.Leading()) }

// walkRow is the graph as a row of the collar.
func (c *Drawing) walkRow(w *meter.Walk) Row {
	low, high := stopSpan(w)
	st := c.Pad.listed(c.Pad.Look.Quiet)
	pitch := pitchOf(st)
	high += max(0, int(math.Ceil((st.Leading()*float64(len(w.Courses))-pitch*float64(high-low))/pitch)))
	tall := pitch * float64(high-low)
	return Row{Height: tall + st.Cap/2 + graphFoot, Draw: func(p Pad, x, top float64) {
		top -= st.Cap / 2
		plot := stopPlot{box.Of(x+graphLeft, top-tall, x+layout.Measure-graphRight, top), low, high, pitch, w.Length}
		g := walkGraph{stopPlot: plot, walk: w, feet: c.Feet}
		p = p.of("graph:"+w.Person, "Stops from the working stop along the walk of "+w.Person+".")
		g.axes(p, st)
		g.courses(p, st)
	}}
}

// stopSpan is from how many stops to how many a graph goes: the stop on either side of the working stop, and what else there
// is up to mostStops.
func stopSpan(w *meter.Walk) (low, high int) {
	low, high = -1, 1
	for i := range w.Courses {
		for _, over := range w.Courses[i].Over {
			v := shownOver(over)
			low, high = min(low, int(math.Floor(v))), max(high, int(math.Ceil(v)))
		}
	}
	return low, high
}

// shownOver is where a graph shows stops from the working stop; no light lies on its foot.
func shownOver(over *float64) float64 {
	if over == nil {
		return -mostStops
	}
	return math.Max(-mostStops, math.Min(mostStops, *over))
}

// at is the place in the plot of so many metres or seconds along and so many stops over.
func (g *stopPlot) at(along, over float64) r2.Vec {
	return r2.Vec{X: g.plot.Min.X + along/g.long*box.Width(g.plot), Y: g.plot.Min.Y + (over-float64(g.low))*g.pitch}
}

// stops draws a line a stop, that of the working stop heavy and those at the edges of a band darker, with their figures.
func (g *stopPlot) stops(p Pad, st style, edges ...int) {
	for v := g.low; v <= g.high; v++ {
		width, colour := Hair, p.Look.Rule
		switch {
		case v == 0:
			width, colour = Medium, p.Look.Quiet
		case slices.Contains(edges, v):
			colour = p.Look.Quiet
		}
		p.Line(width, colour, g.at(0, float64(v)), g.at(g.long, float64(v)))
		if g.high-g.low <= mostStops || v%2 == 0 {
			at := g.at(0, float64(v))
			p.Text(box.At(at.X-1.2, at.Y-st.Cap/2), stopFigure(v), st, ink.Right)
		}
	}
}

// axes draws the band of a stop to either side, the lines of stops, and the scale along the walk.
func (g *walkGraph) axes(p Pad, st style) {
	band := r2.Box{Min: g.at(0, -meter.LeaveStops), Max: g.at(g.long, meter.LeaveStops)}
	if !p.Look.Plain {
		p.Rect(band, 0, p.Look.Rule, &p.Look.Solid)
	}
	g.stops(p, st, -meter.LeaveStops, meter.LeaveStops)
	g.scale(p, st)
}

// stopFigure letters stops over and under with their sign.
func stopFigure(v int) string {
	switch {
	case v < 0:
		return "−" + strconv.Itoa(-v)
	case v > 0:
		return "+" + strconv.Itoa(v)
	}
	return "0"
}

// scale draws the scale along the walk: a tick at each place that is read, figures where they have room.
func (g *walkGraph) scale(p Pad, st style) {
	foot := g.plot.Min.Y
	p.Line(Hair, p.Look.Quiet, g.plot.Min, box.At(g.plot.Max.X, foot))
	free := math.Inf(-1)
	last := g.at(g.walk.Length, 0).X
	end := unit.FormatLength(g.walk.Length, g.feet)
	for i := range g.walk.Points {
		x := g.at(g.walk.Points[i].Along, 0).X
		p.Line(Hair, p.Look.Quiet, box.At(x, foot), box.At(x, foot-graphTick))
		words := unit.FormatLength(g.walk.Points[i].Along, g.feet)
		half := st.Width(words) / 2
		if i < len(g.walk.Points)-1 && x-half > free && x+half < last-st.Width(end)/2-2 {
			p.Text(box.At(x, foot-graphTick-footAir(st)-st.Cap), words, st, ink.Centre)
			free = x + half + 2
		}
	}
	p.Text(box.At(last, foot-graphTick-footAir(st)-st.Cap), end, st, ink.Centre)
}

// graphDashes tell the lines of the cameras apart; the first is whole.
var graphDashes = [][]float64{nil, {2.4, 0.9}, {0.9, 0.7}, {2.4, 0.7, 0.7, 0.7}}

// courses draws a line a camera, broken where nobody could stand, with its letter at the end.
func (g *walkGraph) courses(p Pad, st style) {
	letters := make([]float64, len(g.walk.Courses))
	for i := range g.walk.Courses {
		c := &g.walk.Courses[i]
		for _, piece := range g.pieces(c) {
			if len(piece) > 1 {
				p.dashed(Medium, p.Look.Ink, graphDashes[i%len(graphDashes)], piece...)
			}
			for _, q := range piece {
				p.canvas.Circle(ink.Solid(p.Look.Ink), q, dotRadius)
			}
		}
		if c.Worst != nil {
			diamond(p, g.at(g.walk.Points[*c.Worst].Along, shownOver(c.Over[*c.Worst])))
		}
		letters[i] = g.at(0, shownOver(c.Over[len(c.Over)-1])).Y
	}
	letters = keptApart(letters, st.Leading(), g.plot.Min.Y+st.Cap/2, g.plot.Max.Y-st.Cap/2)
	for i := range g.walk.Courses {
		p.Text(box.At(g.plot.Max.X+1.6, letters[i]-st.Cap/2), g.walk.Courses[i].Camera, st.inked(p.Look.Ink), ink.Left)
	}
}

// pieces are the runs of places where somebody can stand.
func (g *walkGraph) pieces(c *meter.Course) (all [][]r2.Vec) {
	open := false
	for i, over := range c.Over {
		p := &g.walk.Points[i]
		if p.In != "" {
			open = false
			continue
		}
		if !open {
			all, open = append(all, nil), true
		}
		n := len(all) - 1
		all[n] = append(all[n], g.at(p.Along, shownOver(over)))
	}
	return all
}

// keptApart moves heights apart to a pitch, within bounds that have room for them, in their order.
func keptApart(heights []float64, pitch, low, high float64) []float64 {
	order := make([]int, len(heights))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(heights[a], heights[b]) })
	out := slices.Clone(heights)
	least := low
	for _, i := range order {
		out[i] = math.Max(out[i], least)
		least = out[i] + pitch
	}
	most := high
	for k := len(order) - 1; k >= 0; k-- {
		out[order[k]] = math.Min(out[order[k]], most)
		most = out[order[k]] - pitch
	}
	return out
}
