package sheet

import (
	"testing"

	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// filled says whether any mark of an object on a layer is filled with paper.
func filled(p *ink.Page, object string, layer ink.Layer, paper ink.Colour) bool {
	for _, it := range marksOf(p, object, layer) {
		if it.Fill != nil && *it.Fill == paper {
			return true
		}
	}
	return false
}

// TestAMapOverFurnitureIsReadThere: what a mapped level passes over is drawn in outline, what reaches
// through it is not, and on the floor's map everything that stands hides the floor.
func TestAMapOverFurnitureIsReadThere(t *testing.T) {
	drawn := func(level *float64) (*ink.Page, *draw.Theme) {
		in := fixture.Example() // a table 0.75 m high and a dresser 0.90 m, which has no light on the floor
		grid := fixture.Glow(in.Setup)
		if level != nil {
			clear(grid.Mask)
		}
		in.Field = &Field{Name: "Illuminance on a plane", Grid: grid, Level: level}
		s := sheetFor(t, in, Options{Paper: "A3", Font: fixture.Family(t)})
		return &s.pages[0], s.d.Pad.Look
	}
	for _, c := range []struct {
		level          *float64
		table, dresser bool
	}{
		{nil, true, true}, {fixture.Number(0.8), false, true}, {fixture.Number(1.2), false, false},
	} {
		page, look := drawn(c.level)
		if got := filled(page, "furniture:table", ink.Furniture, look.Solid); got != c.table {
			t.Errorf("with the map at %v the table is filled: %v", c.level, got)
		}
		if got := filled(page, "furniture:dresser", ink.Furniture, look.Solid); got != c.dresser {
			t.Errorf("with the map at %v the dresser is filled: %v", c.level, got)
		}
		if len(marksOf(page, "furniture:table", ink.Furniture)) == 0 {
			t.Errorf("with the map at %v there is no table", c.level)
		}
		if !filled(page, "person:ruth", ink.People, look.Paper) {
			t.Errorf("with the map at %v nobody has a head", c.level)
		}
	}
}
