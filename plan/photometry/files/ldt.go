package files

import (
	"errors"
	"math"

	"scrimshaw/plan/photometry"
)

// LDT is what a EULUMDAT file says, in its terms and order.
type LDT struct {
	Company  string
	Kind     int // 1 a point source symmetric about its axis, 2 linear, 3 any other
	Symmetry Symmetry

	PlaneStep, AngleStep float64 // degrees; 0 where the steps are not even

	Report, LuminaireName, Number, FileName, Date string

	Length, Width, Height         float64    // of the housing, mm; Width 0: round, Length its diameter
	LuminousLength, LuminousWidth float64    // of the luminous area, mm, along C90 and along C0; Width 0: round
	LuminousHeights               [4]float64 // toward C0, C90, C180 and C270, mm

	Downward   float64 // share of the flux that goes down, %
	Efficiency float64 // light output ratio, %
	Conversion float64 // factor of all intensities, a ratio
	Tilt       float64 // of the luminaire as it was measured, degrees

	Sets         []LampSet
	DirectRatios [10]float64 // shares of the flux that fall straight on the working plane, 0 to 1, for room indices k of 0.60 to 5

	Planes, Angles []float64   // all C planes, as listed, and the gamma angles, degrees
	Candela        [][]float64 // [plane as measured][angle], cd/klm
}

// LampSet is one set of lamps that a luminaire can hold. A number of lamps below 0 says that the
// photometry is absolute.
type LampSet struct {
	Lamps             int
	Kind              string
	Lumens            float64 // flux of all lamps together
	Colour, Rendering string
	Watts             float64 // power with ballast
}

// Symmetry is the symmetry indicator of EULUMDAT: which planes are measured.
type Symmetry int

// The symmetries.
const (
	NoSymmetry    Symmetry = iota // all planes
	AboutAxis                     // one plane
	AboutC0                       // C0 to C180
	AboutC90                      // C270 through C0 to C90
	AboutC0andC90                 // C0 to C90
)

// unfoldedAs are the symmetries as planes are unfolded by them.
var unfoldedAs = [...]symmetry{open, axial, about0, about90, aboutBoth}

// stored is which of the planes, counted from 0 and going round, the file has intensities of.
func (d *LDT) stored() (first, n int) {
	all := len(d.Planes)
	switch d.Symmetry {
	case AboutAxis:
		return 0, 1
	case AboutC0:
		return 0, all/2 + 1
	case AboutC90:
		return 3 * all / 4, all/2 + 1
	case AboutC0andC90:
		return 0, all/4 + 1
	}
	return 0, all
}

// Rated gives the flux of the first set of lamps, lm; 0 for absolute photometry.
func (d *LDT) Rated() float64 {
	if len(d.Sets) == 0 || d.Sets[0].Lamps < 0 {
		return 0
	}
	return math.Max(0, d.Sets[0].Lumens)
}

// Power gives the power of the first set of lamps, W.
func (d *LDT) Power() float64 {
	if len(d.Sets) == 0 {
		return 0
	}
	return math.Max(0, d.Sets[0].Watts)
}

// Format names the format.
func (d *LDT) Format() string { return "EULUMDAT" }

// Name gives the luminaire's name, or its number.
func (d *LDT) Name() string {
	if d.LuminaireName != "" {
		return d.LuminaireName
	}
	return d.Number
}

// Factor is what the written intensities, cd/klm, are multiplied by to give candelas: the
// kilolumens of the first set of lamps and the conversion factor. A conversion factor of 0 or less, which
// would leave no light, counts as 1.
func (d *LDT) Factor() float64 {
	if len(d.Sets) == 0 {
		return 0
	}
	return orOne(d.Conversion) * d.Sets[0].Lumens / 1000
}

// Nodes gives the intensities, cd, with the symmetry unfolded.
func (d *LDT) Nodes() (photometry.Nodes, error) {
	if d.Symmetry < NoSymmetry || d.Symmetry > AboutC0andC90 || len(d.Planes) == 0 {
		return photometry.Nodes{}, errNoPlanes
	}
	first, n := d.stored()
	planes := make([]float64, n)
	for i := range planes {
		planes[i] = d.Planes[(first+i)%len(d.Planes)]
	}
	kind := unfoldedAs[d.Symmetry]
	switch span := planes[n-1] - planes[0]; {
	case n == 1:
		kind = axial
	case kind == open && span >= 360-1e-9:
		kind = asymmetric
	}
	return unfold(photometry.TypeC, kind, planes, d.Angles, scaled(d.Candela, d.Factor()))
}

// Source gives the light of the file.
func (d *LDT) Source() (photometry.Source, error) {
	n, err := d.Nodes()
	if err != nil {
		return photometry.Source{}, err
	}
	table, flux, err := photometry.NewTable(n)
	if err != nil {
		return photometry.Source{}, err
	}
	return photometry.FromLumens(flux, table, d.Opening()), nil
}

// Opening gives the luminous area. Its length lies along C90, the lamp's up, as the format has it.
func (d *LDT) Opening() photometry.Opening {
	length, width := side(d.LuminousLength/1000), side(d.LuminousWidth/1000)
	switch {
	case !(length > 0):
		return photometry.Opening{}
	case !(width > 0):
		return photometry.Opening{Form: photometry.Disc, Width: length}
	}
	return face(width, length)
}

var errNoPlanes = errors.New("there are no planes of a known symmetry")
