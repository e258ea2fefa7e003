package scene

import (
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// sides are the words that may follow the degrees of a turn, in the order of the Sides.
var sides = []string{CameraLeft - 1: "camera-left", "camera-right", "own-left", "own-right", "left", "right"}

// turnKind reads a turn: `45`, `-20`, `45 camera-left`.
var turnKind = scalar("a turn", "45 camera-left", map[string]any{"type": numberOrText},
	func(text string, n *source.Node, _ *source.Context) (Turn, error) {
		figure, side, err := splitTurn(text)
		if err != nil {
			return Turn{}, err
		}
		degrees, err := unit.ParseAngle(figure)
		if err == nil && side != Clockwise && degrees < 0 {
			return Turn{}, source.Errorf(source.CodeOutOfRange, "turn to the other side instead",
				"%q has a side and a sign", text)
		}
		return Turn{Degrees: degrees, Side: side, Set: true, Span: n.Span}, err
	})

// splitTurn takes the side off a turn.
func splitTurn(text string) (figure string, side Side, err error) {
	figure, word, cut := strings.Cut(strings.TrimSpace(text), " ")
	if !cut && !startsNumber(figure) {
		return "", 0, source.Errorf(source.CodeBadValue, "write it like 45 camera-left",
			"%q is a turn without its degrees", text)
	}
	word = strings.TrimSpace(word)
	if word == "" || word == "deg" || word == "°" {
		return figure, Clockwise, nil
	}
	for i, s := range sides {
		if s == word {
			return figure, CameraLeft + Side(i), nil
		}
	}
	return "", 0, source.Errorf(source.CodeUnknownWord, source.DidYouMean(word, sides),
		"%q is not a side to turn to: %s", word, orList(sides))
}

func startsNumber(text string) bool {
	return strings.ContainsAny(text[:min(1, len(text))], "0123456789+-.")
}

// isNumber reports whether a text is meant as a number: 90.5 and 45deg, but not the name 2k.
func isNumber(text string) bool {
	if _, err := unit.ParseAngle(text); err == nil {
		return true
	}
	first, _, _ := strings.Cut(text, ".")
	return startsNumber(text) && checkThingName(first) != nil
}
