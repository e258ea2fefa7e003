package layout

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// TestBeamsEndAtACornerOfText: a line that runs under a corner does not come out behind it.
func TestBeamsEndAtACornerOfText(t *testing.T) {
	v := View{Scale: 10, Panel: box.Of(0, 0, 100, 100), Covered: []r2.Box{box.Of(40, 60, 60, 100)}}
	for _, c := range []struct {
		name string
		line []r2.Vec
		ends []r2.Vec // of the parts
	}{
		{"past a corner", []r2.Vec{{X: 1, Y: 8}, {X: 9, Y: 8}}, []r2.Vec{{X: 40, Y: 80}}},
		{"clear of it", []r2.Vec{{X: 1, Y: 2}, {X: 9, Y: 2}}, []r2.Vec{{X: 90, Y: 20}}},
		{"over the edge", []r2.Vec{{X: 5, Y: 2}, {X: 15, Y: 2}}, []r2.Vec{{X: 100, Y: 20}}},
		{"from under it", []r2.Vec{{X: 5, Y: 8}, {X: 9, Y: 8}}, nil},
		{"a ring", []r2.Vec{{X: 3, Y: 7}, {X: 7, Y: 7}, {X: 7, Y: 9}, {X: 3, Y: 7}}, []r2.Vec{{X: 30, Y: 70}}},
	} {
		got := v.Seen(c.line)
		if len(got) != len(c.ends) {
			t.Errorf("%s: %d parts, want %d", c.name, len(got), len(c.ends))
			continue
		}
		for i, part := range got {
			if last := part[len(part)-1]; r2.Norm(r2.Sub(last, c.ends[i])) > 1e-9 {
				t.Errorf("%s: it ends at %v, want %v", c.name, last, c.ends[i])
			}
		}
	}
}
