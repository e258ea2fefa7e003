package section

import (
	"math"

	"scrimshaw/plan/day/change"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// faces is what the meter says at each face.
func (c Report) faces() *Section {
	s := Section{Title: "At the faces, in " + c.lightUnit()}
	if len(c.In.Faces) == 1 {
		s.Title = "At the face of " + c.In.Faces[0].Person
	}
	for i := 0; i < len(c.In.Faces); {
		n := besides(c.In.Faces[i:])
		s.Tables = append(s.Tables, c.facesTable(c.In.Faces[i:i+n], len(c.In.Faces) == 1))
		i += n
	}
	s.Without = NonEmpty(leftOut(atFaces(c.In)...))
	s.Words = append(s.Words, NonEmpty(uncertain(atFaces(c.In)))...)
	return &s
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
	spots := false
	for i := range c.In.Readings {
		r := &c.In.Readings[i]
		if r.Person != "" {
			continue
		}
		kind := string(r.Kind)
		if r.Sees != nil {
			kind, spots = kind+" on "+c.wallWord(r.Sees.Words()), true
		}
		t.Entries = append(t.Entries, Entry{Cells: []string{r.Name + ", " + kind, c.Metered(r), Stop(r.Stop), overTenths(r.Over)}, Of: []string{r.Name, thingKey(change.Meter, r.Name)},
			Struck: append(When(r.Struck(), 1), When(r.StopsStruck(), 2, 3)...)})
		own = append(own, r)
	}
	if x := &c.In.Setup.Exposure; spots && workingLux(c.In.Setup) > 0 {
		grey := x.Metered().MidGrey(x.Stop.N)
		t.Entries = append(t.Entries, Entry{Cells: []string{"grey", unit.FormatLuminance(grey), WorkingStop(c.In.Setup), tenths(0)}, Notes: []string{meter.GreyInWords(x)}})
	}
	rank := layout.Needed
	if len(c.In.Faces) > 0 { // whose readings come first: those of meters stand on the plan, too
		rank = layout.Wanted
	}
	return &Section{Title: "Meters", Rank: rank, Tables: []Table{t}, Without: NonEmpty(leftOut(own...))}
}

// lightOf is what a reading is a measure of, lx or cd/m²; 0 in the dark.
func lightOf(r *meter.Reading) float64 {
	for _, v := range []*float64{r.Lux, r.Luminance} {
		if v != nil {
			return math.Max(*v, 0)
		}
	}
	return 0
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
