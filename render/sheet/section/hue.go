package section

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
)

// MiredStep is from contour to contour of a map of colours, mired: what a quarter of a conversion gel shifts, and about
// what an eye tells apart. GreenStep is how far off the locus light counts as green or magenta, Duv.
const (
	MiredStep = 25.0
	GreenStep = 0.003
)

// farDuv is how far off the locus light has a colour temperature, Duv.
const farDuv = 0.05

// mostMireds is how many contours of mired a map may have on either side of the camera's white.
const mostMireds = 8

// Hues are the colours of a field against the camera's white, as fields of their own.
type Hues struct {
	Mired carto.Grid // over the white's: warmer light has more
	Green carto.Grid // Duv from the locus: green is over it
}

// HuesOf are the colours of a map; ok is false where it has none.
func HuesOf(in *Input, f *Field) (h Hues, ok bool) {
	if f == nil || len(f.Colour) == 0 {
		return h, false
	}
	white, _ := colour.CCT(WhiteOf(in.Setup))
	h = Hues{Mired: f.Grid, Green: f.Grid}
	h.Mired.Value, h.Green.Value = make([]float32, len(f.Colour)), make([]float32, len(f.Colour))
	for n, c := range blurred(&f.Grid, f.Colour) {
		mired, green := math.NaN(), math.NaN()
		if c.Y() > 0 {
			if kelvin, duv := colour.CCT(colour.XY(c)); math.Abs(duv) <= farDuv {
				mired, green = colour.Mired(kelvin)-colour.Mired(white), duv
			}
		}
		h.Mired.Value[n], h.Green.Value[n] = float32(mired), float32(green)
	}
	return h, true
}

// MiredLevels are the contours of the maps' colours, mired over the camera's white, lowest first.
func MiredLevels(in *Input) (levels []float64) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, f := range in.Maps() {
		if h, ok := HuesOf(in, f); ok {
			l, top := carto.Span(h.Mired, 0.002)
			low, high = math.Min(low, l), math.Max(high, top)
		}
	}
	for n := -mostMireds; n <= mostMireds; n++ {
		if m := MiredStep * float64(n); m >= low && m <= high {
			levels = append(levels, m)
		}
	}
	return levels
}

// MiredLabel letters a contour of mired: "+25", "0", "−50".
func MiredLabel(mired float64) string {
	if mired > 0 {
		return "+" + unit.FormatNumber(mired)
	}
	return signed(unit.FormatNumber(mired))
}

// IsOfColours says whether the map is one of the colour of the light.
func IsOfColours(in *Input) bool { return in.Field != nil && len(in.Field.Colour) > 0 }

// hueWords say what the contours of a map of colours are.
func (c Report) hueWords() (words []string, textOnly string) {
	white, _ := colour.CCT(WhiteOf(c.In.Setup))
	var names []string
	for _, m := range MiredLevels(c.In) {
		names = append(names, MiredLabel(m))
	}
	of := fmt.Sprintf("mired from the camera's white, %s", unit.FormatKelvin(white))
	if len(names) == 0 {
		return []string{fmt.Sprintf("colour: nowhere on a line of %g %s", MiredStep, of)}, ""
	}
	return []string{fmt.Sprintf("colour: one line every %g %s; plus is warmer, dashed: %g Duv to green or magenta", MiredStep, of, GreenStep)},
		"contours of colour at " + strings.Join(names, ", ")
}

// blurred mixes the light of each point of a grid with that of its neighbours, two steps away at most: at an edge of shadow
// the colour jumps from point to point, and a line along it would show the grid.
func blurred(g *carto.Grid, light []colour.RGB) []colour.RGB {
	weights := [...]float64{1, 4, 6, 4, 1}
	pass := func(in []colour.RGB, dx, dy int) []colour.RGB {
		out := make([]colour.RGB, len(in))
		for n := range in {
			i, j := n%g.NX, n/g.NX
			if g.Masked(i, j) {
				continue
			}
			sum := 0.0
			for k, w := range weights {
				if u, v := i+dx*(k-2), j+dy*(k-2); !g.Masked(u, v) {
					out[n], sum = out[n].Add(in[v*g.NX+u].Scale(w)), sum+w
				}
			}
			out[n] = out[n].Scale(1 / sum)
		}
		return out
	}
	return pass(pass(light, 1, 0), 0, 1)
}
