package files

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/unit"
)

// Edition is an edition of LM-63.
type Edition uint8

// The editions, oldest first.
const (
	Edition1986 Edition = iota
	Edition1991
	Edition1995
	Edition2002
	Edition2019
)

// firstLines are how files of each edition begin. The oldest has no such line.
var firstLines = [...]string{"", "IESNA91", "IESNA:LM-63-1995", "IESNA:LM-63-2002", "IES:LM-63-2019"}

// String returns the year.
func (e Edition) String() string {
	return [...]string{"1986", "1991", "1995", "2002", "2019"}[min(e, Edition2019)]
}

// LM63 is what an LM-63 file says, in its terms.
type LM63 struct {
	Edition  Edition
	Keywords []Keyword
	Tilt     Tilt

	Lamps      int
	Lumens     float64 // flux of each lamp; below 0: absolute photometry
	Multiplier float64 // of all candela values, a ratio
	System     photometry.System
	Feet       bool // Width, Length and Height are feet, not metres

	// The luminous opening, by LM-63-2002: signs tell the shape. Width lies along the planes 90 and 270,
	// Length along 0 and 180, Height along the axis; feet or metres, by Feet.
	Width, Length, Height float64

	Ballast float64 // ballast factor, a ratio
	// Second is the ballast-lamp photometric factor in 1986 and 1991, a ratio; without a use in 1995 and
	// 2002; and the file generation type in 2019, a code.
	Second float64
	Watts  float64

	Vertical, Horizontal []float64   // degrees, as written: a symmetric half stands for the whole
	Candela              [][]float64 // [horizontal][vertical], cd before any factor
}

// Keyword is one label of a file: a bracketed keyword with its text, in which the lines of [MORE] stand
// behind line feeds, or a plain line, whose Key is "".
type Keyword struct{ Key, Text string }

// Get returns the text of the first keyword of a name, or "".
func (l *LM63) Get(key string) string {
	for _, k := range l.Keywords {
		if k.Key == key {
			return k.Text
		}
	}
	return ""
}

// Factor is what the written candela values are multiplied by: the multiplier and the ballast
// factor; in 1986 and 1991 also the ballast-lamp photometric factor. A factor of 0 or less, which
// would leave no light, counts as 1.
func (l *LM63) Factor() float64 {
	f := orOne(l.Multiplier) * orOne(l.Ballast)
	if l.Edition <= Edition1991 {
		f *= orOne(l.Second)
	}
	return f
}

func orOne(v float64) float64 {
	if v > 0 {
		return v
	}
	return 1
}

// Nodes gives the intensities, cd, with the symmetry unfolded.
func (l *LM63) Nodes() (photometry.Nodes, error) {
	return unfold(l.System, l.symmetry(), l.Horizontal, l.Vertical, scaled(l.Candela, l.Factor()))
}

// scaled are values times a factor; below 0, where there is no light, 0.
func scaled(rows [][]float64, factor float64) [][]float64 {
	out := make([][]float64, len(rows))
	for i, row := range rows {
		out[i] = make([]float64, len(row))
		for j, v := range row {
			out[i][j] = max(0, v*factor)
		}
	}
	return out
}

// Source gives the light of the file.
func (l *LM63) Source() (photometry.Source, error) {
	n, err := l.Nodes()
	if err != nil {
		return photometry.Source{}, err
	}
	d, flux, err := photometry.NewTable(n)
	if err != nil {
		return photometry.Source{}, err
	}
	opening, _ := l.Opening()
	return photometry.FromLumens(flux, d, opening), nil
}

// Rated gives the flux of the lamps, lm; 0 for absolute photometry.
func (l *LM63) Rated() float64 { return max(0, float64(l.Lamps)*l.Lumens) }

// Power gives the input power, W.
func (l *LM63) Power() float64 { return max(0, l.Watts) }

// Format names the edition.
func (l *LM63) Format() string { return "IES LM-63-" + l.Edition.String() }

// Name gives the luminaire's description, or the first label.
func (l *LM63) Name() string {
	for _, key := range []string{"LUMINAIRE", "LUMCAT", "TEST", ""} {
		if name := clean(l.Get(key)); name != "" {
			return name
		}
	}
	return ""
}

// Opening gives the luminous opening as a form that light is computed from, and says in words what
// is lost by it, "" for nothing. The shape follows from the signs of width, length and height as
// LM-63-2002 has them; the shapes of earlier editions, which leave one of them 0, are understood.
func (l *LM63) Opening() (o photometry.Opening, lost string) {
	scale := 1.0
	if l.Feet {
		scale = unit.Foot
	}
	return openingOf(l.Width*scale, l.Length*scale, l.Height*scale)
}

// symmetry is that of the file, by where its horizontal angles begin and end.
func (l *LM63) symmetry() symmetry { return symmetryOf(l.System, l.Horizontal) }
