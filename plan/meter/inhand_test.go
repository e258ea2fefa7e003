package meter

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// What a light has in hand is said in the trade's words, its lengths in the units of the file.
func TestInHandWords(t *testing.T) {
	down, none := 3.25, 0.04
	key := []Want{{Person: "ada", More: -0.4}, {Person: "bo", More: 2.2, Enough: &Class{Unit: "huge", Watts: 4300, Mass: 31, Level: 0.61, Mired: 4}}, {Person: "al", More: 1.5}, {Person: "jo", Alone: true}}
	keyless := []Want{{Person: "ada", More: 1, Uncomputed: []plan.Uncomputed{{Uncomputed: scene.Uncomputed{Path: "haze"}}}}}
	for _, c := range []struct {
		of   InHand
		feet bool
		want []string
	}{
		{InHand{Numbered: "1 day", Up: 1.5, Down: &down, Wants: key, Unit: &Class{Unit: "big", Watts: 720, Mass: 6.9, Level: 0.3},
			Smallest: &Class{Unit: "small", Watts: 350, Mass: 4.6, Level: 0.602, Mired: -11.2}, Nearer: &Nearer{Metres: 0.45, Person: "ada", Stops: 0.62, Camera: "A"}}, false,
			[]string{"1 day: 1.5 stops up to full, 3.2 stops down to its least", "  for ada it has at full 1.9 stops in hand over the working stop",
				"  for bo it is 0.7 stops short of the working stop at full; huge at 61 % would do, 4300 W and 31 kg, 4 mired warmer", "  for al full is just the working stop", "  for jo the other lights alone are over the working stop",
				"  smallest that would do: small at 60.2 %, 350 W and 4.6 kg in place of 720 W and 6.9 kg, 11 mired cooler",
				"  0.45 m nearer along its line before A sees it: 0.6 stops more at ada"}},
		{InHand{Numbered: "2 soft", Up: 0.02, Down: &none, Wants: keyless, Unit: &Class{}, Nearer: &Nearer{Metres: 0.6096, Person: "ada", Stops: 1, Why: "desk is in its way"}}, true,
			[]string{"2 soft: at full, goes no lower", "✗   for ada it is 1.0 stops short of the working stop at full, as is every unit of the catalogue that could take its place", "  no smaller unit of the catalogue would do",
				"  2' nearer along its line (then desk is in its way): 1.0 stops more at ada"}},
		{InHand{Numbered: "5", Stated: true}, false, []string{"5: at full, dims to nothing", "  given by its output: no class of the catalogue to compare, and no body to bring nearer"}},
		{InHand{Numbered: "6", Unit: &Class{}, OffColour: &Class{Unit: "small", Level: 0.26, Mired: -48}}, false,
			[]string{"6: at full, dims to nothing", "  no smaller unit of the catalogue would do in its colour: small at 26 % gives as much, 48 mired cooler"}},
		{InHand{Numbered: "3", Nearer: &Nearer{Camera: "A"}}, false, []string{"3: at full, dims to nothing", "  no nearer: A sees it"}},
		{InHand{Numbered: "4", Count: 3, Unit: &Class{}, Smallest: &Class{Mired: 3}, Nearer: &Nearer{Why: "desk is in its way"}}, false,
			[]string{"4: at full, dims to nothing", "  smallest that would do:  at 0 %, 0 W and 0 kg in place of 0 W and 0 kg, each of 3, 3 mired warmer", "  no nearer: desk is in its way"}},
	} {
		got := c.of.lines(c.feet)
		for i := range got {
			got[i] = strings.ReplaceAll(got[i], `2'0"`, "2'")
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}
