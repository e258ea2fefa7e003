package sheet

import (
	"strings"
	"testing"

	"scrimshaw/symbols/ink"
)

// dimmed is a field with all its light at a share.
func dimmed(f *Field, share float32) *Field {
	out := *f
	out.Grid.Value = make([]float32, len(f.Grid.Value))
	for i, v := range f.Grid.Value {
		out.Grid.Value[i] = v * share
	}
	return &out
}

// TestAKeyShowsWhatItsMapReaches: each of two maps on a sheet has a key of its own levels, in tints
// that mean the same on both.
func TestAKeyShowsWhatItsMapReaches(t *testing.T) {
	in := example()
	in.Setup.Scene.Sheet.Levels = given("stops")
	in.Inset = dimmed(in.Field, 8)
	c := newSheet(in, Options{Font: family(t)}, &faults{}).d
	floor, faces := c.keyOf(in.Field), c.keyOf(in.Inset)
	if got, want := c.levelList(floor.shown()), "−2, −1, 0, +1"; got != want {
		t.Errorf("the key of the floor shows %s, want %s", got, want)
	}
	if got, want := c.levelList(faces.shown()), "+1, +2, +3, +4"; got != want {
		t.Errorf("the key at the faces shows %s, want %s", got, want)
	}
	if len(floor.all) != len(faces.all) || floor.to == len(floor.all) || faces.from == 0 {
		t.Errorf("the keys are %d to %d and %d to %d of %d levels", floor.from, floor.to, faces.from, faces.to, len(floor.all))
	}
	said := Text(Options{Font: family(t)}, in)
	for _, want := range []string{"contours at " + c.levelList(floor.shown()), "contours at " + c.levelList(faces.shown())} {
		if !strings.Contains(said, want) {
			t.Errorf("the text does not say %q", want)
		}
	}
	for _, smooth := range []string{"", "smooth"} {
		checkKeyTints(t, in, smooth, floor)
	}
}

// checkKeyTints holds the tints of a key to those of the map.
func checkKeyTints(t *testing.T, in Input, tint string, k key) {
	t.Helper()
	c := newSheet(in, Options{Font: family(t), Tint: tint}, &faults{}).d
	page := &ink.Page{}
	c.keyTints(c.p.with(page), box(0, 0, 70, 5), k)
	want := c.p.look.Ramp.Tints(len(k.all) + 1)[k.from : k.to+1]
	if tint != "" {
		if n := page.Items[0].Image.Width; n != 32*len(want) {
			t.Errorf("a continuous key is %d bands long, want %d", n/32, len(want))
		}
		return
	}
	if len(page.Items) != len(want) {
		t.Fatalf("%d tints in the key, want %d", len(page.Items), len(want))
	}
	for i := range want {
		if *page.Items[i].Fill != want[i] {
			t.Errorf("tint %d of the key is %v, want %v", i, *page.Items[i].Fill, want[i])
		}
	}
}
