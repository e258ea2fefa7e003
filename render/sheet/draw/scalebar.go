package draw

import (
	"fmt"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// ruler is a scale bar: its length on the set, cut into parts, every lettered-th of them figured.
type ruler struct {
	length   float64 // in units
	parts    int
	lettered int
	unit     string
	metres   float64 // one unit
}

// longest is how long a scale bar may be on paper, mm.
const longest = 52.0

// rulerFor is the longest bar in round units that fits.
func rulerFor(times float64, feet bool) ruler {
	bars := []ruler{{0.5, 5, 5, "m", 1}, {1, 4, 2, "m", 1}, {2, 4, 2, "m", 1}, {5, 5, 1, "m", 1}, {10, 5, 1, "m", 1}, {20, 4, 1, "m", 1}}
	if feet {
		bars = []ruler{{2, 4, 2, "ft", unit.Foot}, {4, 4, 1, "ft", unit.Foot}, {8, 4, 1, "ft", unit.Foot},
			{16, 4, 1, "ft", unit.Foot}, {32, 4, 1, "ft", unit.Foot}}
	}
	best := bars[0]
	for _, b := range bars {
		if b.length*b.metres*1000/times <= longest {
			best = b
		}
	}
	return best
}

// ScaleBar draws the bar with its figures above and the scale below.
func (c Collar) ScaleBar(p Pad, x, top, times float64, paper string) {
	base := c.Ruler(p, x, top, times)
	words := layout.ScaleWords(times, c.In.Setup.Feet) + " on " + paper
	st := p.Small().Strong()
	p.Text(box.At(x, base-2.0-st.Cap), words, st, ink.Left)
}

// Ruler draws the bar with its figures above, and returns where its lower edge is. The item that
// carries the object "scale-bar" is exactly as long as its sentence says.
func (c Collar) Ruler(p Pad, x, top, times float64) (base float64) {
	r := rulerFor(times, c.In.Setup.Feet)
	const high = 1.6
	st := p.Small()
	base = top - st.Cap - 1.4 - high
	part := r.length * r.metres * 1000 / times / float64(r.parts)
	alt := fmt.Sprintf("Scale bar of %s %s at %s.", unit.FormatNumber(r.length), r.unit, layout.ScaleWords(times, c.In.Setup.Feet))
	symbols.DrawScaleBar(p.of("scale-bar", alt).canvas, p.symbols(), box.At(x, base), part, r.parts)
	for i := 0; i <= r.parts; i += r.lettered {
		figure := unit.FormatNumber(r.length * float64(i) / float64(r.parts))
		where, align := box.At(x+part*float64(i), base+high+1.4), ink.Centre
		switch i {
		case 0:
			align = ink.Left
		case r.parts:
			figure += " " + r.unit
			where.X -= st.Width(strings.TrimSuffix(figure, " "+r.unit)) / 2
			align = ink.Left
		}
		p.Text(where, figure, st, align)
	}
	return base
}

// North draws the needle that points to true north, with its letter before the tip, about a centre.
func (c Collar) North(p Pad, centre r2.Vec) {
	const long = 11.5 // mm
	degrees := c.In.Setup.North
	p = p.of("north", fmt.Sprintf("True north is %s clockwise from the sheet's up.", unit.FormatAngle(degrees)))
	symbols.DrawNorth(p.canvas, p.symbols(), centre, degrees, long)
	letter := p.Small().Strong()
	tip := r2.Add(centre, r2.Scale(long/2+2.2, ink.Direction(degrees)))
	p.Text(r2.Sub(tip, r2.Vec{Y: letter.Cap / 2}), "N", letter, ink.Centre)
}

// KnowsNorth says whether the scene gives the place it stands in.
func KnowsNorth(s *plan.Setup) bool {
	return s.North != 0 || s.Scene != nil && s.Scene.Site != nil
}
