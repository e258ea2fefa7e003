package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Rate is how long one change of a kind takes, as the scene says.
type Rate struct {
	Work    term.Work
	Minutes float64
	Span    source.Span
}

// longestChange is the longest that one change may take, in minutes: a day.
const longestChange = 24 * 60

// minutes is how long one change takes.
var minutes = quantity("a time", "6", withoutFileUnits(parseMinutes, showMinutes, numberOrText), between(0, longestChange))

// parseMinutes reads a time of which a bare number is minutes: `6`, `4 min`, `30 s`.
func parseMinutes(text string) (float64, error) {
	if v, err := unit.ParseNumber(text); err == nil {
		return v, nil
	}
	v, err := parseSeconds(text)
	if err != nil {
		return 0, source.Errorf(source.CodeBadValue, "write it like 6, 4 min or 30 s", "%q is not a time", text)
	}
	return v / 60, nil
}

func showMinutes(v float64) string { return unit.FormatNumber(v) + " min" }

// ratesReader reads a map from the kinds of work to minutes.
var ratesReader = source.Reader[[]Rate]{
	What: "a map of minutes by kind of change", Like: "{move: 6, level: 1}",
	Schema: func() map[string]any {
		return map[string]any{"type": "object", "propertyNames": map[string]any{"pattern": "^(" + strings.Join(term.Words(term.Works), "|") + ")$"}, "additionalProperties": minutes.Schema()}
	},
	Read: readRates,
}

func readRates(n *source.Node, c *source.Context) (all []Rate, ok bool) {
	ok = n.Kind == source.Map
	words := term.Words(term.Works)
	source.Each(n, "rate", c, func(k *source.Key) {
		if !slices.Contains(words, k.Name) {
			hint := source.DidYouMean(k.Name, words)
			if hint == "" {
				hint = "the kinds are " + strings.Join(words, ", ")
			}
			c.ErrorAt(k.Span, source.CodeUnknownKey, hint, "%q is no kind of change", k.Name)
			ok = false
			return
		}
		v, fine := minutes.Read(k.Value, c)
		all, ok = append(all, Rate{Work: term.Work(k.Name), Minutes: v, Span: k.Span}), ok && fine
	})
	return all, ok
}
