package scene

import (
	"strings"

	"scrimshaw/plan/source"
)

// offering reads as r does, and where a word is refused offers the one that it stands for: people
// know the trade by more words than the language has.
func offering[V any](r source.Reader[V], meant map[string]string) source.Reader[V] {
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) (V, bool) {
		word, known := meant[strings.ToLower(n.Text)]
		if n.Kind != source.Scalar || !known {
			return read(n, c)
		}
		outer, inner := c.Log, &source.Log{}
		c.Log = inner
		v, ok := read(n, c)
		c.Log = outer
		for _, d := range inner.All() {
			d.Hint = `did you mean "` + word + `"?`
			outer.Add(d)
		}
		return v, ok
	}
	return r
}

// Other words for those of the language, in small letters.
var (
	otherUnits = map[string]string{
		"metre": "m", "metres": "m", "meter": "m", "meters": "m", "metric": "m",
		"foot": "ft", "feet": "ft", "imperial": "ft", "'": "ft",
	}
	otherPoses = map[string]string{
		"sitting": "seated", "sit": "seated", "sits": "seated", "stand": "standing", "stands": "standing",
		"reclining": "propped", "lie": "lying", "lies": "lying", "kneeling": "crouching", "squatting": "crouching",
	}
	otherRoles = map[string]string{
		"keylight": "key", "fill-light": "fill", "back": "edge", "backlight": "edge", "back light": "edge", "rim": "edge",
		"kicker": "edge", "practical": "motivation", "eyelight": "eye", "hairlight": "hair",
	}
	otherDirections = map[string]string{"east": "right", "west": "left", "north": "up", "south": "down"}
)
