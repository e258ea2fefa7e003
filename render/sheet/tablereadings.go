package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// faces is what the meter says at each face.
func (c Report) faces() *section {
	s := section{title: "At the faces"}
	for i := range c.in.Faces {
		f := &c.in.Faces[i]
		t := table{columns: []column{{flexible: true}, {align: ink.Right}, {align: ink.Right}}, entries: c.faceRows(f)}
		if len(c.in.Faces) == 1 {
			s.title = "At the face of " + f.Person
		} else {
			t.columns[0].head = f.Person
		}
		s.tables = append(s.tables, t)
	}
	s.lacks = nonEmpty(leftOut(atFaces(c.in)...))
	return &s
}

// atFaces are the readings of the list of faces.
func atFaces(in *Input) []*meter.Reading {
	var all []*meter.Reading
	for i := range in.Faces {
		f := &in.Faces[i]
		all = append(append(all, f.Key, f.Fill), f.Domes...)
	}
	return all
}

func (c Report) faceRows(f *Face) []entry {
	if f.Key == nil || f.Fill == nil {
		return []entry{{cells: []string{orDash(f.Skipped), "", ""}}}
	}
	rows := []entry{
		c.faceRow("key side", f.Key),
		c.faceRow("fill side", f.Fill),
	}
	for _, d := range f.Domes {
		rows = append(rows, c.faceRow("dome toward "+lastPart(d.Name), d))
	}
	stops, ratio := contrastWords(f)
	key, fill := f.Key.Struck(), f.Fill.Struck()
	return append(rows,
		entry{cells: []string{"contrast, key : fill", stops, ratio}, struck: some(key || fill, 1, 2)},
		entry{cells: []string{"colour, key and fill", kelvin(f.Key.CCT), kelvin(f.Fill.CCT)}, struck: append(some(key, 1), some(fill, 2)...)},
	)
}

// faceRow is one reading of a face: its light and its stop.
func (c Report) faceRow(name string, r *meter.Reading) entry {
	return entry{cells: []string{name, c.lux(r.Lux), stop(r.Stop)}, struck: append(some(r.Struck(), 1), some(r.StopsStruck(), 2)...)}
}

// contrastWords says a contrast in stops and as a ratio; dashes where a side is dark.
func contrastWords(f *Face) (stops, ratio string) {
	if !lit(f.Key) || !lit(f.Fill) {
		return "–", "–"
	}
	ratio = tenths(*f.Key.Lux / *f.Fill.Lux) + " : 1"
	if unit.EqualStops(f.Contrast) {
		return "equal", ratio
	}
	return signed(tenths(f.Contrast)) + " stops", ratio
}

// tenths prints a figure to a tenth; nothing has no sign.
func tenths(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10+0, 'f', 1, 64) }

func lit(r *meter.Reading) bool { return r != nil && r.Lux != nil && *r.Lux > 0 }

// lastPart is what follows the last dot of a name.
func lastPart(s string) string { return s[strings.LastIndexByte(s, '.')+1:] }

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// meters is the list of the scene's own readings.
func (c Report) meters() *section {
	t := table{columns: []column{
		{head: "Meter", flexible: true},
		{align: ink.Right},
		{head: "stop", align: ink.Right},
		{head: "over " + workingStop(c.in.Setup), align: ink.Right},
	}}
	var own []*meter.Reading
	for i := range c.in.Readings {
		r := &c.in.Readings[i]
		if r.Person != "" {
			continue
		}
		t.entries = append(t.entries, entry{cells: []string{r.Name + ", " + r.Kind, c.metered(r), stop(r.Stop), overTenths(r.Over)},
			struck: append(some(r.Struck(), 1), some(r.StopsStruck(), 2, 3)...)})
		own = append(own, r)
	}
	return &section{title: "Meters", rank: other, tables: []table{t}, lacks: nonEmpty(leftOut(own...))}
}

// metered is the figure a meter shows: illuminance, or luminance of a spot.
func (c Units) metered(r *meter.Reading) string {
	if r.Kind == "spot" {
		if r.Luminance == nil {
			return "–"
		}
		return unit.FormatLuminance(*r.Luminance)
	}
	return c.lux(r.Lux)
}

// over prints stops over the working stop.
func over(stops *float64) string {
	if stops == nil {
		return "–"
	}
	return signed(unit.FormatStops(*stops))
}

// overTenths prints stops over the working stop for a column, all to a tenth.
func overTenths(stops *float64) string {
	if stops == nil {
		return "–"
	}
	s := fmt.Sprintf("%+.1f", *stops)
	if s == "+0.0" || s == "-0.0" {
		s = "0.0"
	}
	return signed(s)
}
