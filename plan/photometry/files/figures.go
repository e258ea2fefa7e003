package files

import "scrimshaw/plan/photometry"

// Figures are what a file says of its light, and what follows from its intensities. Pairs of angles are across, in
// the plane of C0, and along, in that of C90, degrees. As JSON they are what a script reads.
type Figures struct {
	Type    string     `json:"type"`       // of the photometry: A, B or C
	Planes  int        `json:"planes"`     // that were measured, the last not the first once more
	Angles  [2]float64 `json:"angles"`     // the first and the last from the axis, or vertical angle
	Flux    float64    `json:"lumens"`     // lm
	Peak    float64    `json:"candela"`    // cd
	PeakAt  [2]float64 `json:"peakAt"`     // gamma and C, to a degree
	Beam    [2]float64 `json:"beam"`       // to half the peak
	Field   [2]float64 `json:"field"`      // to a tenth of it
	Rated   *float64   `json:"lampLumens"` // of the lamps inside, lm; nil in absolute photometry, which knows none
	Ratio   *float64   `json:"efficiency"` // of Flux to Rated
	Watts   *float64   `json:"watts"`      // nil where it is not stated
	Opening Luminous   `json:"opening"`

	axial bool // it shines the same all round the axis
}

// Luminous is a luminous opening in words, m; what it does not have is 0.
type Luminous struct {
	Form   string  `json:"form"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
}

// formWords are the forms of a luminous opening in words.
var formWords = [...]string{photometry.Point: "point", photometry.Rectangle: "rectangle", photometry.Disc: "disc", photometry.Tube: "tube", photometry.Sphere: "sphere"}

// leastRated is the flux of lamps, lm, and the power, W, from which on a file counts as stating one: a ratio to less is no figure of a
// lamp, and to next to nothing no number.
const leastRated = 1e-6

// FiguresOf takes the figures of a file. It fails where Source does.
func FiguresOf(d Data) (*Figures, error) {
	s, err := d.Source()
	if err != nil {
		return nil, err
	}
	n, err := d.Nodes()
	if err != nil {
		return nil, err
	}
	f := &Figures{
		Type: n.System.String(), Planes: len(n.Horizontal), Angles: [2]float64{n.Vertical[0], n.Vertical[len(n.Vertical)-1]},
		Flux: round(s.Flux, 3), Peak: round(s.Peak(), 3), PeakAt: peakAt(s),
		Opening: Luminous{formWords[s.Opening.Form], s.Opening.Width, s.Opening.Height},
	}
	_, f.axial = s.Distribution.(photometry.Axial)
	if last := len(n.Horizontal) - 1; n.System == photometry.TypeC && last > 0 && n.Horizontal[last]-n.Horizontal[0] == 360 {
		f.Planes-- // the first, once more
	}
	f.Beam = pairOf(photometry.BeamAngle(s.Distribution))
	f.Field = pairOf(photometry.FieldAngle(s.Distribution))
	if rated := d.Rated(); rated >= leastRated {
		ratio := round(s.Flux/rated, 6)
		f.Rated, f.Ratio = &rated, &ratio
	}
	if watts := d.Power(); watts >= leastRated {
		f.Watts = &watts
	}
	return f, nil
}

// pairOf is a pair of angles without digits that nobody measured.
func pairOf(across, along float64) [2]float64 { return [2]float64{round(across, 3), round(along, 3)} }

// peakAt looks for the direction of the greatest intensity, to a degree, nearest to the axis.
func peakAt(s photometry.Source) (at [2]float64) {
	most := -1.0
	for gamma := range 181 {
		for c := range 360 {
			v := s.Intensity(photometry.Direction(float64(gamma), float64(c)))
			if v > most*(1+1e-9) {
				most, at = v, [2]float64{float64(gamma), float64(c)}
			}
			if gamma == 0 || gamma == 180 {
				break
			}
		}
	}
	return at
}
