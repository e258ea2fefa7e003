package kit

import (
	"cmp"
	"slices"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// unitOutputs reads the outputs of a unit by modifier, in the order of the file; of a zoom, by focus
// below that.
func unitOutputs() source.Reader[[]UnitOutput] {
	one := outputReader(false)
	return source.Reader[[]UnitOutput]{What: "a map of outputs", Like: "{bare: {lumens: 800, shape: uniform}}",
		Schema: func() map[string]any {
			zoom := map[string]any{"type": "object", "additionalProperties": one.Schema()}
			return map[string]any{"type": "object", "additionalProperties": map[string]any{"anyOf": []any{one.Schema(), zoom}}}
		},
		Read: func(n *source.Node, c *source.Context) (all []UnitOutput, ok bool) {
			source.Each(n, "output", c, func(k *source.Key) {
				name := normaliseModifier(k.Name)
				if isZoom(k.Value) {
					all = append(all, zoomOutputs(name, k.Value, one, c)...)
				} else if o, fine := one.Read(k.Value, c); fine {
					all = append(all, UnitOutput{Modifier: name, Output: o})
				}
			})
			return all, len(all) > 0
		}}
}

// isZoom reports whether a map has outputs by focus.
func isZoom(n *source.Node) bool {
	if n.Kind != source.Map || len(n.Keys) == 0 {
		return false
	}
	_, ok := focusOf(n.Keys[0].Name)
	return ok
}

// focusOf is a focus by its word or its share.
func focusOf(word string) (float64, bool) {
	switch term.Focus(word) {
	case term.Spot:
		return 0, true
	case term.Flood:
		return 1, true
	}
	v, err := unit.ParsePercent(word)
	return v, err == nil && v >= 0 && v <= 1
}

// focusWord is a focus as it is written.
func focusWord(focus float64) string {
	switch focus {
	case 0:
		return string(term.Spot)
	case 1:
		return string(term.Flood)
	}
	return unit.FormatPercent(focus)
}

// zoomOutputs reads the outputs of a zoom with one modifier, each focus once.
func zoomOutputs(modifier string, n *source.Node, one source.Reader[Output], c *source.Context) (all []UnitOutput) {
	source.Each(n, "output", c, func(k *source.Key) {
		focus, ok := focusOf(k.Name)
		if !ok {
			c.ErrorAt(k.Span, CodeKit, "write spot, flood, or a share like 40 %", "%q is not a focus, and a zoom has one output for each focus", k.Name)
			return
		}
		for _, other := range all {
			if other.Focus == focus {
				c.ErrorAt(k.Span, CodeKit, "keep one of them", "this zoom has two outputs for %s", focusWord(focus))
				return
			}
		}
		if o, fine := one.Read(k.Value, c); fine {
			all = append(all, UnitOutput{Modifier: modifier, Zooms: true, Focus: focus, Output: o})
		}
	})
	slices.SortStableFunc(all, func(a, b UnitOutput) int { return cmp.Compare(a.Focus, b.Focus) })
	return all
}
