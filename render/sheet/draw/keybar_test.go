package draw

import (
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// TestKeysHaveTheTintsOfTheMap, about the levels that they show.
func TestKeysHaveTheTintsOfTheMap(t *testing.T) {
	in := fixture.Example()
	for _, smooth := range []bool{false, true} {
		checkKeyTints(t, in, smooth, section.KeyOf(&in, in.Field))
	}
}

// checkKeyTints holds the tints of a key to those of the map.
func checkKeyTints(t *testing.T, in section.Input, smooth bool, k section.Key) {
	t.Helper()
	c := kitchenDrawing(t, in)
	c.how.Smooth = smooth
	page := &ink.Page{}
	maps{c}.keyTints(c.Pad.With(page), box.Of(0, 0, 70, 5), k)
	want := c.Pad.Look.Ramp.Bands(k.All)[k.From : k.To+1]
	if smooth {
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
