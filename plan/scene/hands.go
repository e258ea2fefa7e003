package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// The hands of values: what a mirror makes of a turn, a roll, a leaf and a cut. Each done twice is the value that it was.

// mapped is a copy of a map with each of its entries changed; of anything else, itself.
func mapped(n *source.Node, change func(k *source.Key)) *source.Node {
	if n.Kind != source.Map {
		return n
	}
	out := *n
	out.Keys = slices.Clone(n.Keys)
	for i := range out.Keys {
		change(&out.Keys[i])
	}
	return &out
}

// scalarOf is a single value with another text, in its place.
func scalarOf(n *source.Node, text string) *source.Node {
	out := *n
	out.Text = text
	return &out
}

// otherTurn is a turn to the other side: one with a side changes it, a bare one its sign.
func otherTurn(n *source.Node) *source.Node {
	_, side, err := splitTurn(n.Text)
	if n.Kind != source.Scalar || err != nil {
		return n
	}
	if side == Clockwise {
		return otherSign(n)
	}
	word := sides[side-1]
	other := sides[(side-1)^1] // they stand in pairs
	return scalarOf(n, strings.TrimSuffix(strings.TrimSpace(n.Text), word)+other)
}

// otherSign is a figure with the other sign; nothing has none.
func otherSign(n *source.Node) *source.Node {
	text := strings.TrimSpace(n.Text)
	switch {
	case n.Kind != source.Scalar || !isNumber(text) || strings.Trim(text, "+-0.° deg") == "":
		return n
	case strings.HasPrefix(text, "-"):
		return scalarOf(n, text[1:])
	}
	return scalarOf(n, "-"+strings.TrimPrefix(text, "+"))
}

// otherDoors are barn doors of which the left leaf is the right one.
func otherDoors(n *source.Node) *source.Node {
	return mapped(n, func(k *source.Key) {
		switch k.Name {
		case "left":
			k.Name = "right"
		case "right":
			k.Name = "left"
		case "turn":
			k.Value = otherSign(k.Value)
		}
	})
}

// otherCuts are cuts that come from the other side.
func otherCuts(n *source.Node) *source.Node {
	out := *n
	out.Items = slices.Clone(n.Items)
	for i, cut := range out.Items {
		out.Items[i] = mapped(cut, func(k *source.Key) {
			if k.Name == "angle" {
				k.Value = otherSign(k.Value)
			}
		})
	}
	return &out
}
