package scene

import (
	"scrimshaw/plan/source"
)

// Want is one thing that the look should have: a reading, and one of the figures that Form names.
type Want struct {
	Span           source.Span
	Of, Cue, Setup Ref
	Form           string // stop, lux, over, contrast, white
	Stop           Stop
	Lux            float64
	Over, Contrast float64 // stops
	White          ColourWord
	Within         float64 // stops; 0: not given
}

var wantForms = []string{"stop", "lux", "over", "contrast", "white"}

var wantTable = tableOf("want", "A reading, and what it should be.", wantForms,
	into("of", ref("a reading", "ines.key"), func(w *Want, r Ref, _ *source.Node) { w.Of = r },
		"The reading: a meter, a side of a face, or a face at a mark.", "ines.key", "").needed(),
	into("stop", stopKind, func(w *Want, v Stop, _ *source.Node) { w.Stop = v }, "The stop it should be.", "T2.8", ""),
	figure("lux", quantity("an illuminance", "500 lx", lux, between(0.001, 1e7)), func(w *Want) *float64 { return &w.Lux },
		"The illuminance it should be.", ""),
	figure("over", quantity("stops over the working stop", "-1", numbers, between(-20, 20)),
		func(w *Want) *float64 { return &w.Over },
		"Stops over the working stop.", ""),
	figure("contrast", quantity("a contrast", "2", numbers, between(0, 20)), func(w *Want) *float64 { return &w.Contrast },
		"Stops between the key side and the fill side.", ""),
	into("white", whiteKind, func(w *Want, v ColourWord, _ *source.Node) { w.White = v },
		"The white it should have.", "4300 K", ""),
	into("cue", ref("a cue", "q2"), func(w *Want, r Ref, _ *source.Node) { w.Cue = r },
		"After this cue only.", "q2", "before all cues"),
	into("setup", ref("a set-up", "close"), func(w *Want, r Ref, _ *source.Node) { w.Setup = r },
		"In this set-up only.", "close", "in all"),
	figure("within", quantity("a tolerance", "0.2", numbers, between(0.01, 10)), func(w *Want) *float64 { return &w.Within },
		"How far it may be off, in stops.", "0.1"),
)

// wantReader reads a want, with its form and its place.
var wantReader = withNode(mapOf("a want", "{of: ines.key, stop: T2.8}", wantTable), func(w *Want, n *source.Node) {
	w.Span, w.Form = n.Span, wantTable.form(n)
})

// withNode reads as r does, and lets note keep what the node itself says.
func withNode[V any](r source.Reader[V], note func(v *V, n *source.Node)) source.Reader[V] {
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) (V, bool) {
		v, ok := read(n, c)
		note(&v, n)
		return v, ok
	}
	return r
}

// measuredValue is a reading taken on the day: an illuminance, or a stop.
var measuredValue = either("a reading", "480 lx", func(n *source.Node) bool { return startsNumber(n.Text) || n.Kind != source.Scalar },
	source.Converted(quantity("a reading", "480 lx", lux, between(0, 1e7)), func(float64) struct{} { return struct{}{} }),
	source.Converted(stopKind, func(Stop) struct{} { return struct{}{} }))

// namedValues is a map of names, each with a value that r reads.
func namedValues[V any](what, like, noun string, r source.Reader[V]) source.Reader[map[string]V] {
	return source.Reader[map[string]V]{
		What: what, Like: like,
		Schema: func() map[string]any { return map[string]any{"type": "object", "additionalProperties": r.Schema()} },
		Read: func(n *source.Node, c *source.Context) (map[string]V, bool) {
			all, ok := map[string]V{}, n.Kind == source.Map
			source.Each(n, noun, c, func(k *source.Key) {
				if !isPath(k.Name) {
					c.ErrorAt(k.Span, source.CodeBadValue, refHint(k.Name, "ines.key"), "%q is no name", k.Name)
				}
				v, fine := r.Read(k.Value, c)
				all[k.Name], ok = v, ok && fine
			})
			return all, ok
		},
	}
}
