package resolve

import (
	"fmt"
	"testing"
)

// What a light passes for gives light, is no other thing, and is not the light itself.
func TestStandIns(t *testing.T) {
	const rest = "rooms: {den: {size: [4, 3]}}\nopenings: {door: {door: den.top, along: 1}, hatch: {gap: den.left, along: 1, width: 1}}\n" +
		"people: {ada: {at: [2, 1.5], faces: 0}}\nfurniture: {desk: {box: [0.4, 0.4, 0.7], at: [3.5, 0.5]}}\n" +
		"lights:\n  lamp: {output: {candela: 9, shape: uniform}, at: [1, 2], height: 1.5, aim: down%s}\n" +
		"  off: {output: {candela: 9, shape: uniform}, at: [2.4, 1.4], height: 1.5, aim: down, mount: hand, level: off}\n" +
		"  k: {output: {candela: 9, shape: uniform}, at: [3, 2], height: 1.5, aim: down, stands-for: "
	for _, c := range []struct{ to, of, want string }{
		{"lamp}", "", ""},
		{"hatch}", "", ""},
		{"2900 K}", "", ""},
		{"'daylight 5600 K, Duv 0.002'}", "", ""},
		{"{opening: hatch, colour: 7000 K}}", "", ""},
		{"k}", "", "error stand-in k cannot stand for itself [name the lamp or the opening that it plays, or write its colour: 2900 K]"},
		{"off}", "", "warning stand-in off is at 0 %, and gives no light to stand for [raise its level, or write the colour that it has: 2700 K]"},
		{"door}", "", "warning stand-in door is shut, and lets no light in to stand for [open it with ajar, give it a glass, or name another]"},
		{"ada}", "", "error wrong-thing ada is a person, where a light or an opening belongs [there are door, hatch, lamp, off, k]"},
		{"desk}", "", "error wrong-thing desk is a piece of furniture, where a light or an opening belongs [there are door, hatch, lamp, off, k]"},
		{"lamb}", "", "error unknown-name nothing is called lamb [did you mean \"lamp\"?]"},
		{"{opening: lamp, colour: 7000 K}}", "", "error wrong-thing lamp is a light, where an opening belongs [there are door, hatch]"},
		{"2900}", "", "error missing-unit a colour temperature needs K, and \"2900\" has none [did you mean 2900 K?]"},
		{"lamp}", ", stands-for: 2700 K", "error stand-in lamp stands for something itself, and is nothing to stand for [write the colour that both have]"},
		{"lamp}", ", stands-for: hatch", "error stand-in lamp stands for something itself, and is nothing to stand for [write hatch]"},
		{"lamp}", ", stands-for: k", "error stand-in k stands for something itself, and is nothing to stand for [write the colour that both have]\n" +
			"error stand-in lamp stands for something itself, and is nothing to stand for [write the colour that both have]"},
	} {
		if got := warned(t, fmt.Sprintf(rest, c.of)+c.to+"\n"); got != c.want {
			t.Errorf("%s %s:\n%s\nwant\n%s", c.to, c.of, got, c.want)
		}
	}
}
