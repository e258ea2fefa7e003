package section

import (
	"reflect"
	"testing"

	"scrimshaw/plan/meter"
)

// A reading that the engine knows less closely than to a tenth of a stop is named.
func TestUncertainReadingsAreNamed(t *testing.T) {
	known := func(name string, off float64) *meter.Reading {
		return &meter.Reading{Name: name, Error: &off}
	}
	dark := &meter.Reading{}
	for want, readings := range map[string][]*meter.Reading{
		"":                                      {known("ada.key", 0.069), dark},
		"Known less closely: ada.fill to ±9 %.": {known("ada.key", 0.01), known("ada.fill", 0.09)},
		"Known less closely than ±7 %: 2 readings, noor.key to ±12 %.": {known("noor.key", 0.12), known("ada.fill", 0.07), dark},
	} {
		if got := uncertain(readings); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestColumnsHaveAsManyPlaces: the stops of a column are all to a tenth.
func TestColumnsHaveAsManyPlaces(t *testing.T) {
	for v, want := range map[float64]string{-3: "−3.0", -0.84: "−0.8", 2: "+2.0", 0: "0.0", -0.01: "0.0"} {
		if got := overTenths(&v); got != want {
			t.Errorf("%g is %q, want %q", v, got, want)
		}
	}
	if got := overTenths(nil); got != "–" {
		t.Errorf("nothing is %q", got)
	}
}

// The table of a face alone says the contrast by both names, where the key side is in each picture, and whose lamps show in its eyes; equal
// sides have no key.
func TestRowsOfAFaceAlone(t *testing.T) {
	reading := func(lux float64) *meter.Reading { return &meter.Reading{Lux: &lux} }
	face := Face{Person: "ada", Key: reading(300), Fill: reading(100), Contrast: 1.6, KeyToFill: new(2.0), Side: "left", Views: []meter.View{
		{Camera: "A", Key: meter.PictureRight, Catchlights: []meter.Catchlight{{Numbered: "2 soft"}, {Numbered: "3 lamp"}}},
		{Camera: "B", Key: meter.TurnedAway, Catchlights: []meter.Catchlight{}},
		{Camera: "C", Key: meter.PictureLeft, Outside: true},
	}}
	told := func(faces ...Face) (rows [][]string) {
		for _, e := range (Units{}).facesTable(faces[:1], len(faces) == 1).Entries {
			rows = append(rows, e.Cells)
		}
		return rows
	}
	want := [][]string{{"key : fill", "", "2.0 : 1"}, {"key and eyes from A", "camera right", "lights 2, 3"}, {"key and eyes from B", "–", "no light"}}
	all := told(face)
	if got := all[len(all)-1-len(want) : len(all)-1]; !reflect.DeepEqual(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	many := make([]meter.Catchlight, 34) // their numbers in one cell left no room to any word of the table
	for i := range many {
		many[i].Numbered = "7 lamp"
	}
	if got, want := inEyes(many), "34 lights"; got != want || inEyes(many[:mostInEyes]) != "lights 7, 7, 7, 7, 7" {
		t.Errorf("so many lamps are %q and %q", got, inEyes(many[:mostInEyes]))
	}
	if rows := told(face, face); len(rows) != len(all)-len(want) {
		t.Errorf("one of two has %d rows: %q", len(rows), rows)
	}
	face.Contrast, face.KeyToFill = 0.01, nil
	if rows := told(face); len(rows) != len(all)-1 || rows[len(rows)-3][1] != "–" {
		t.Errorf("equal sides have %d rows: %q", len(rows), rows)
	}
}
