package meter

import (
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// The words say light by light what lit a reading: what came straight with its panes, what came back with the surfaces
// that it left last, the strongest first, three at most and none below a twentieth of the reading; what rounds to
// nothing is left out.
func TestWhereAReadingsLightComesFrom(t *testing.T) {
	back := func(light, from string, lux float64) Share {
		return Share{Light: light, Path: "reflected", From: from, Lux: lux}
	}
	for name, c := range map[string]struct {
		shares []Share
		want   string
	}{
		"nothing": {nil, ""},
		"straight and back": {[]Share{
			{Light: "day", Path: "direct", Via: []string{"street"}, Lux: 128},
			back("day", "kitchen.floor", 12), back("day", "kitchen.right", 32), back("day", "kitchen.top", 18),
			{Light: "lamp", Path: "direct", Lux: 10},
		}, "day through street 64 %, day reflected 31 % (kitchen.right 16 %, kitchen.top 9 %, kitchen.floor 6 %), lamp 5 %"},
		"four surfaces, three named": {[]Share{
			back("day", "a", 20), back("day", "b", 22), back("day", "c", 24), back("day", "d", 34),
		}, "day reflected 100 % (d 34 %, c 24 %, b 22 %)"},
		"of two lights": {[]Share{
			back("day", "floor", 60), back("lamp", "floor", 36), back("lamp", "desk", 4),
		}, "day reflected 60 % (floor 60 %), lamp reflected 40 % (floor 36 %)"},
		"a twentieth is named, less is not": {[]Share{
			back("day", "floor", 5), back("day", "wall", 4.9), back("day", "desk", 1), {Light: "lamp", Path: "direct", Lux: 89.1},
		}, "day reflected 11 % (floor 5 %), lamp 89 %"},
		"many weak surfaces, none named": {[]Share{
			back("day", "a", 4), back("day", "b", 4), {Light: "lamp", Path: "direct", Lux: 92},
		}, "day reflected 8 %, lamp 92 %"},
		"what rounds to nothing": {[]Share{
			{Light: "far", Path: "direct", Lux: 0.4}, back("far", "floor", 0.2), back("far", "wall", 0.2),
			{Light: "near", Path: "direct", Lux: 98.6}, {Light: "dim", Path: "direct", Lux: 0.6},
		}, "near 99 %, dim 1 %"},
		"half a percent rounds to nothing, a little more to one": {[]Share{
			{Light: "far", Path: "direct", Lux: 1}, back("far", "floor", 1), {Light: "dim", Path: "direct", Lux: 1.0001},
			back("dim", "floor", 1.0001), {Light: "near", Path: "direct", Lux: 195.9998},
		}, "dim 1 %, dim reflected 1 %, near 98 %"},
		"little by little from many surfaces": {[]Share{
			back("far", "floor", 0.4), back("far", "wall", 0.4), {Light: "near", Path: "direct", Lux: 99.2},
		}, "far reflected 1 %, near 99 %"},
		"by a mirror and a cloth": {[]Share{
			{Light: "day", Path: "mirrored", From: "glass", Lux: 50},
			{Light: "day", Path: "direct", Via: []string{"street", "door"}, Lux: 50},
		}, "day by glass 50 %, day through street through door 50 %"},
		"back in a mirror, through a pane": {[]Share{
			{Light: "day", Path: "reflected", From: "hall.left", Via: []string{"glass", "door"}, Mirrors: []bool{true, false}, Lux: 7},
		}, "day reflected 100 % (hall.left by glass through door 100 %)"},
		"back through a pane": {[]Share{
			{Light: "day", Path: "reflected", From: "hall.left", Via: []string{"door"}, Lux: 7},
		}, "day reflected 100 % (hall.left through door 100 %)"},
	} {
		r := Reading{Shares: c.shares}
		if got := r.sharesInWords(); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// The table of shares has a block a set-up and a row for each share below its reading, in the reading's own
// measure; what a key could change is marked, and the key is named below.
func TestSharesAsATable(t *testing.T) {
	lux, fc, luminance := 200.0, 18.58, 4.0
	scrims := uncomputed(scene.Later{Changes: scene.OwnLight, Waits: "accessories of a lamp"}, "lights.lamp.scrims", "scrims of 1 lamp")
	sets := []Set{
		{Scene: "Kitchen", Setup: "wide", Readings: []Reading{
			{Name: "table", Kind: "flat", Lux: &lux, Footcandles: &fc, Shares: []Share{
				{Light: "day", Path: "direct", Via: []string{"street"}, Lux: 150},
				{Light: "day", Path: "reflected", From: "kitchen.floor", Lux: 50}}},
			{Name: "wall", Kind: "spot", Luminance: &luminance, Uncomputed: []plan.Uncomputed{scrims}, Shares: []Share{
				{Light: "lamp", Path: "direct", Lux: 4}}}}},
		{Readings: []Reading{{Name: "table", Kind: "flat", Lux: &lux, Footcandles: &fc}}},
	}
	var b strings.Builder
	if err := WriteShares(&b, sets); err != nil {
		t.Fatal(err)
	}
	const want = `Kitchen, set-up wide
reading         light      share  way
table          200 lx      100 %
               150 lx     75.0 %  day through street
              50.0 lx     25.0 %  day reflected off kitchen.floor
wall     ✗ 4.00 cd/m²      100 %
         ✗ 4.00 cd/m²  ✗ 100.0 %  lamp
✗ without scrims of 1 lamp (accessories of a lamp, not computed yet): wall

reading   light  share  way
table    200 lx  100 %
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", &b, want)
	}
}

// A contrast is marked where one key could change the light of one of its sides.
func TestContrastIsMarked(t *testing.T) {
	scrims := uncomputed(scene.Later{Changes: scene.OwnLight}, "lights.l.scrims", "scrims of 1 l")
	filter := uncomputed(scene.Later{Changes: scene.OwnStops}, "cameras.A.filter", "filter of A")
	lit, dark := 100.0, 50.0
	plain := func(name string, lux *float64, keys ...plan.Uncomputed) Reading {
		return Reading{Name: "ines." + name, Person: "ines", Kind: "flat", Lux: lux, Footcandles: lux, Uncomputed: keys}
	}
	table := func(keys ...plan.Uncomputed) string {
		readings, face := arrangeFace("ines", []Reading{plain("left", &lit, keys...), plain("right", &dark, keys...),
			plain(edgeLeft, &lit), plain(edgeRight, &dark)})
		var b strings.Builder
		if err := WriteTable(&b, []Set{{Readings: readings, Faces: []Face{*face}}}); err != nil {
			t.Fatal(err)
		}
		if len(face.Uncomputed) > 1 {
			t.Errorf("a key of both sides is named %d times", len(face.Uncomputed))
		}
		return b.String()
	}
	const words = "ines: key side left, 1.0 stops over the fill side (2.00 : 1)"
	if got := table(scrims, filter); !strings.Contains(got, "\n"+UncomputedMark+words) {
		t.Errorf("scrims could change it:\n%s", got)
	}
	if got := table(filter); !strings.Contains(got, "\n"+words) {
		t.Errorf("a filter changes no contrast:\n%s", got)
	}
}
