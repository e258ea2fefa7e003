package solid

import "math"

// Glass is how much less light passes sheets of clear glass from aside than from straight ahead.
type Glass struct {
	Index  float64 // of refraction, the ratio of the speeds of light
	Sheets int     // of glass, one behind the other
	Ahead  float64 // share of light from straight ahead that passes all of them
	inner  float64 // of that, what one sheet lets pass from face to face straight across
	ratio  [glassNodes + 1]float64
}

// glassNodes is how finely the law is kept, by the cosine of the angle.
const glassNodes = 512

// NewGlass makes the law of so many sheets of an index of refraction that let a share of light from straight ahead pass.
func NewGlass(index float64, sheets int, ahead float64) *Glass {
	g := &Glass{Index: index, Sheets: sheets, Ahead: ahead}
	g.inner = g.innerTransmittance()
	whole, _ := sheetsOf(sheets, index, g.inner, 1)
	for i := range g.ratio {
		through, _ := sheetsOf(sheets, index, g.inner, float64(i)/glassNodes)
		g.ratio[i] = through / whole
	}
	return g
}

// Returned is the share of light from an angle that all faces together throw back as a mirror does, by the cosine of the angle:
// of one clear pane 8 % from straight ahead, and all of it from the side.
func (g *Glass) Returned(cos float64) float64 {
	_, back := sheetsOf(g.Sheets, g.Index, g.inner, min(math.Abs(cos), 1))
	return back
}

// Ratio is what passes from an angle by what passes from straight ahead, by the cosine of the angle.
func (g *Glass) Ratio(cos float64) float64 {
	x := min(math.Abs(cos), 1) * glassNodes
	i := min(int(x), glassNodes-1)
	return g.ratio[i] + (x-float64(i))*(g.ratio[i+1]-g.ratio[i])
}

// innerTransmittance is what one sheet lets pass from face to face straight across, so that all let pass what they do.
func (g *Glass) innerTransmittance() float64 {
	low, high := 0.0, 1.0
	for range 60 {
		middle := (low + high) / 2
		if through, _ := sheetsOf(g.Sheets, g.Index, middle, 1); through < g.Ahead {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// sheetsOf is what sheets of an index and an inner transmittance let pass from an angle, and throw back, by its cosine: the mean of both
// directions of polarisation, with all the light that is thrown to and fro between faces (J. Duffie and W. Beckman, Solar
// Engineering of Thermal Processes, chapter 5; A. Fresnel, 1823).
func sheetsOf(sheets int, index, inner, cos float64) (through, back float64) {
	if cos <= 0 {
		return 0, 1
	}
	within := math.Sqrt(1 - (1-cos*cos)/(index*index))
	across, along := (cos-index*within)/(cos+index*within), (index*cos-within)/(index*cos+within)
	inner = math.Pow(inner, 1/within)
	through, back = pileOf(sheets, across*across, inner)
	other, otherBack := pileOf(sheets, along*along, inner)
	return (through + other) / 2, (back + otherBack) / 2
}

// pileOf is what sheets let pass of light of one polarisation, and throw back, where each face throws back a share.
func pileOf(sheets int, face, inner float64) (through, back float64) {
	apart := 1 - face*face*inner*inner
	passes := (1 - face) * (1 - face) * inner / apart
	returns := face + face*passes*inner
	through, back = passes, returns
	for range sheets - 1 {
		between := 1 - back*returns
		through, back = through*passes/between, returns+passes*passes*back/between
	}
	return through, back
}
