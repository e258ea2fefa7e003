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
	return &Section{Title: "Meters", Rank: layout.Needed, Tables: []Table{t}, Without: NonEmpty(leftOut(own...))}
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
