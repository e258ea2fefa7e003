package section

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// faces is what the meter says at each face.
func (c Report) faces() *Section {
	s := Section{Title: "At the faces"}
	for i := range c.In.Faces {
		f := &c.In.Faces[i]
		t := Table{Columns: []Column{{Flexible: true}, {Align: ink.Right}, {Align: ink.Right}}, Entries: c.faceRows(f)}
		if len(c.In.Faces) == 1 {
			s.Title = "At the face of " + f.Person
		} else {
			t.Columns[0].Head = f.Person
		}
		s.Tables = append(s.Tables, t)
	}
	s.Without = NonEmpty(leftOut(atFaces(c.In)...))
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

func (c Report) faceRows(f *Face) []Entry {
	if f.Key == nil || f.Fill == nil {
		return []Entry{{Cells: []string{orDash(f.Skipped), "", ""}}}
	}
	rows := []Entry{
		c.faceRow("key side", f.Key),
		c.faceRow("fill side", f.Fill),
	}
	for _, d := range f.Domes {
		rows = append(rows, c.faceRow("dome toward "+lastPart(d.Name), d))
	}
	stops, ratio := contrastWords(f)
	key, fill := f.Key.Struck(), f.Fill.Struck()
	return append(rows,
		Entry{Cells: []string{"contrast, key : fill", stops, ratio}, Struck: When(key || fill, 1, 2)},
		Entry{Cells: []string{"colour, key and fill", kelvin(f.Key.CCT), kelvin(f.Fill.CCT)}, Struck: append(When(key, 1), When(fill, 2)...)},
	)
}

// faceRow is one reading of a face: its light and its stop.
func (c Report) faceRow(name string, r *meter.Reading) Entry {
	return Entry{Cells: []string{name, c.Lux(r.Lux), Stop(r.Stop)}, Struck: append(When(r.Struck(), 1), When(r.StopsStruck(), 2)...)}
}

// contrastWords says a contrast in stops and as a ratio; dashes where a side is dark.
func contrastWords(f *Face) (stops, ratio string) {
	if !Lit(f.Key) || !Lit(f.Fill) {
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

// Lit says whether a reading found light.
func Lit(r *meter.Reading) bool { return r != nil && r.Lux != nil && *r.Lux > 0 }

// lastPart is what follows the last dot of a name.
func lastPart(s string) string { return s[strings.LastIndexByte(s, '.')+1:] }

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// meters is the list of the scene's own readings.
func (c Report) meters() *Section {
	t := Table{Columns: []Column{
		{Head: "Meter", Flexible: true},
		{Align: ink.Right},
		{Head: "stop", Align: ink.Right},
		{Head: "over " + WorkingStop(c.In.Setup), Align: ink.Right},
	}}
	var own []*meter.Reading
	for i := range c.In.Readings {
		r := &c.In.Readings[i]
		if r.Person != "" {
			continue
		}
		t.Entries = append(t.Entries, Entry{Cells: []string{r.Name + ", " + string(r.Kind), c.Metered(r), Stop(r.Stop), overTenths(r.Over)},
			Struck: append(When(r.Struck(), 1), When(r.StopsStruck(), 2, 3)...)})
		own = append(own, r)
	}
	return &Section{Title: "Meters", Rank: layout.Other, Tables: []Table{t}, Without: NonEmpty(leftOut(own...))}
}

// Metered is the figure a meter shows: illuminance, or luminance of a spot.
func (c Units) Metered(r *meter.Reading) string {
	if r.Kind == term.SpotMeter {
		if r.Luminance == nil {
			return "–"
		}
		return unit.FormatLuminance(*r.Luminance)
	}
	return c.Lux(r.Lux)
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
