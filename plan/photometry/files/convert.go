package files

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
)

// The two formats count C planes alike, but LM-63 has a luminaire's length along C0 and EULUMDAT
// along C90. A conversion leaves light and opening where they are in the lamp's frame: planes keep
// their numbers, and length and width change places.

// unstated stands for what the other format asks for and this one does not say.
const unstated = "not stated"

// LDT gives the file as EULUMDAT. Types A and B are refused: EULUMDAT has C planes only. Intensities
// are rounded to seven figures of the peak; direct ratios, which EULUMDAT has for indoor work, are 0.
func (l *LM63) LDT() (*LDT, error) {
	if l.System != photometry.TypeC {
		return nil, fmt.Errorf("this file has photometry of type %s, and EULUMDAT holds C planes only: measured planes of one system do not lie on those of the other, "+
			"and a conversion would make intensities up between them", l.System)
	}
	s, err := l.Source()
	if err != nil {
		return nil, err
	}
	n, err := l.Nodes()
	if err != nil {
		return nil, err
	}
	d := &LDT{
		Company: l.Get("MANUFAC"), Report: l.Get("TEST"), LuminaireName: l.Name(), Number: l.Get("LUMCAT"), Date: l.Get("ISSUEDATE"),
		Conversion: 1, Downward: round(100*downward(n, s.Flux), 2),
	}
	for _, text := range []*string{&d.Company, &d.Report, &d.LuminaireName, &d.Number, &d.Date} {
		*text = clean(strings.ReplaceAll(*text, "\n", " "))
	}
	set := LampSet{Lamps: l.Lamps, Kind: clean(strings.ReplaceAll(l.Get("LAMP"), "\n", " ")), Lumens: l.Rated(), Watts: l.Power()}
	if set.Lumens == 0 {
		set.Lamps, set.Lumens = -l.Lamps, round(s.Flux, decimalsOf(s.Flux))
	}
	d.Sets = []LampSet{set}
	d.Efficiency = round(100*s.Flux/set.Lumens, 2)
	d.setOpening(s.Opening)
	d.setPlanes(l.symmetry(), n)
	factor := 1000 / set.Lumens
	decimals := decimalsOf(s.Peak() * factor)
	for i, row := range d.Candela {
		d.Candela[i] = make([]float64, len(row))
		for j, v := range row {
			d.Candela[i][j] = round(v*factor, decimals)
		}
	}
	return d, nil
}

// As gives a file in the format of an ending, ".ies" or ".ldt". One that has it already is given back.
func As(d Data, ending string) (Data, error) {
	switch d := d.(type) {
	case *LM63:
		if ending == ".ldt" {
			return d.LDT()
		}
	case *LDT:
		if ending == ".ies" {
			return d.LM63()
		}
	}
	return d, nil
}

// round rounds to some decimals.
func round(v float64, decimals int) float64 {
	power := math.Pow(10, float64(decimals))
	if r := math.Round(v*power) / power; !math.IsInf(r, 0) && !math.IsNaN(r) {
		return r
	}
	return v
}

// decimalsOf is how many decimals keep seven figures of a value.
func decimalsOf(v float64) int { return min(max(0, 6-int(math.Floor(math.Log10(v)))), 12) }

// downward is the share of a flux, lm, that goes out before the lamp, gamma up to 90: the exact integral of the
// table cut there.
func downward(n photometry.Nodes, flux float64) float64 {
	i, part := 0, 0.0
	for i < len(n.Vertical) && n.Vertical[i] <= 90 {
		i++
	}
	switch {
	case i == len(n.Vertical):
		return 1
	case i == 0:
		return 0
	}
	part = (90 - n.Vertical[i-1]) / (n.Vertical[i] - n.Vertical[i-1])
	cut := photometry.Nodes{Horizontal: n.Horizontal, Vertical: slices.Concat(n.Vertical[:i], []float64{90})}
	if part == 0 {
		cut.Vertical = n.Vertical[:i]
	}
	for _, row := range n.Candela {
		edge := row[i-1] + part*(row[i]-row[i-1])
		cut.Candela = append(cut.Candela, slices.Concat(row[:i], []float64{edge})[:len(cut.Vertical)])
	}
	_, below, err := photometry.NewTable(cut)
	if err != nil {
		return 0 // one angle, or no light
	}
	return below / flux
}

// setOpening states a luminous opening, and a housing of its size.
func (d *LDT) setOpening(o photometry.Opening) {
	across, along := round(1000*o.Width, 3), round(1000*o.Height, 3)
	switch o.Form {
	case photometry.Disc, photometry.Sphere:
		d.LuminousLength = across
	default:
		d.LuminousLength, d.LuminousWidth = along, across
	}
	if o.Form == photometry.Sphere {
		d.LuminousHeights = [4]float64{across, across, across, across}
	}
	d.Length, d.Width = d.LuminousLength, d.LuminousWidth
	d.Kind = 3
	if o.Form == photometry.Tube || o.Largest() > 3*math.Min(o.Width, o.Height) && o.Height > 0 {
		d.Kind = 2
	}
}

// setPlanes stores unfolded planes by a symmetry, as far as EULUMDAT can tell it.
func (d *LDT) setPlanes(s symmetry, n photometry.Nodes) {
	n = planesFromC0(n)
	d.Angles = n.Vertical
	d.AngleStep = evenStep(d.Angles)
	d.Planes = n.Horizontal
	if last := len(d.Planes) - 1; last > 0 { // C360 is C0
		d.Planes = d.Planes[:last]
	}
	d.PlaneStep = evenStep(d.Planes)
	switch s {
	case axial:
		d.Symmetry, d.Kind = AboutAxis, 1
	case about0:
		d.Symmetry = AboutC0
	case about90:
		d.Symmetry = AboutC90
	case aboutBoth:
		d.Symmetry = AboutC0andC90
	}
	first, stored := d.stored()
	if d.Symmetry == AboutC90 && (len(d.Planes)%4 != 0 || d.Planes[first] != 270) {
		d.Symmetry = NoSymmetry // the planes are not those by which EULUMDAT counts to C270
		first, stored = d.stored()
	}
	for i := range stored {
		d.Candela = append(d.Candela, n.Candela[(first+i)%len(d.Planes)])
	}
}

// planesFromC0 are planes that go all round, beginning at C0: where it is not among them it is put
// between its neighbours, where the light is what it was.
func planesFromC0(n photometry.Nodes) photometry.Nodes {
	last := len(n.Horizontal) - 1
	first := n.Horizontal[0]
	if last == 0 || first == 0 {
		return n
	}
	before := n.Horizontal[last-1] - 360
	part := -before / (first - before)
	row := make([]float64, len(n.Vertical))
	for j := range row {
		row[j] = n.Candela[last-1][j] + part*(n.Candela[0][j]-n.Candela[last-1][j])
	}
	n.Horizontal = slices.Concat([]float64{0}, n.Horizontal[:last], []float64{360})
	n.Candela = slices.Concat([][]float64{row}, n.Candela[:last], [][]float64{row})
	return n
}

// evenStep is the step between angles; 0 where it is not the same everywhere.
func evenStep(angles []float64) float64 {
	if len(angles) < 2 {
		return 0
	}
	step := angles[1] - angles[0]
	for i := 2; i < len(angles); i++ {
		if math.Abs(angles[i]-angles[i-1]-step) > 1e-9 {
			return 0
		}
	}
	return step
}

// LM63 gives the file as LM-63-2002, with the intensities as they are written and their factor as
// the candela multiplier.
func (d *LDT) LM63() (*LM63, error) {
	n, err := d.Nodes()
	if err != nil {
		return nil, err
	}
	set := d.Sets[0]
	l := &LM63{
		Edition: Edition2002, Lamps: 1, Lumens: -1, Multiplier: d.Factor(), Ballast: 1, Second: 1, Watts: d.Power(),
		Vertical: d.Angles, Horizontal: n.Horizontal,
	}
	if set.Lamps > 0 {
		l.Lamps, l.Lumens = set.Lamps, set.Lumens/float64(set.Lamps)
	} else {
		l.Lamps = max(1, -set.Lamps)
	}
	l.Keywords = d.keywords()
	l.Width, l.Length = d.LuminousLength/1000, d.LuminousWidth/1000
	if d.LuminousLength > 0 && !(d.LuminousWidth > 0) {
		l.Width, l.Length = -d.LuminousLength/1000, -d.LuminousLength/1000
	}
	last := map[Symmetry]float64{AboutAxis: 0, AboutC0: 180, AboutC0andC90: 90}
	if end, half := last[d.Symmetry]; half {
		_, stored := d.stored()
		l.Horizontal = append([]float64(nil), d.Planes[:stored]...)
		l.Horizontal[0], l.Horizontal[stored-1] = 0, end
		l.Candela = d.Candela
		return l, nil
	}
	l.setAllPlanes(n, d.Factor())
	return l, nil
}

// setAllPlanes states all planes of a file without a symmetry that LM-63-2002 knows.
func (l *LM63) setAllPlanes(n photometry.Nodes, factor float64) {
	n = planesFromC0(n)
	l.Horizontal = n.Horizontal
	if len(n.Horizontal) == 1 {
		l.Horizontal = []float64{0}
	}
	l.Candela = scaled(n.Candela, 1/factor)
	for _, row := range l.Candela {
		for j, v := range row {
			row[j] = round(v, 9) // what was written, without the rounding of two factors
		}
	}
}

// keywords are the texts of the file as LM-63-2002 asks for them.
func (d *LDT) keywords() []Keyword {
	var all []Keyword
	for _, k := range []struct {
		key, text string
		required  bool
	}{
		{"TEST", d.Report, true}, {"TESTLAB", "", true}, {"ISSUEDATE", d.Date, true}, {"MANUFAC", d.Company, true},
		{"LUMCAT", d.Number, false}, {"LUMINAIRE", d.LuminaireName, false}, {"LAMP", d.Sets[0].Kind, false},
	} {
		switch {
		case k.text != "":
			all = append(all, Keyword{k.key, k.text})
		case k.required:
			all = append(all, Keyword{k.key, unstated})
		}
	}
	return all
}
