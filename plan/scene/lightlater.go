package scene

import "scrimshaw/plan/source"

// These maps are checked today and computed later; the scene keeps them as they were written.
type (
	dimming struct {
		kind  string
		hertz float64
	}
	flicker struct {
		kind      string
		low, high float64
		every     float64
	}
)

// figure is a key of a small map that holds one number.
func figure[T any](key string, r source.Reader[float64], at func(*T) *float64, doc, def string) entry[T] {
	return into(key, r, func(dst *T, v float64, _ *source.Node) { *at(dst) = v }, doc, r.Like, def)
}

var (
	dimmerKind  = source.OneOf("a dimmer", "phase", "pwm", "current", "transformer", "none")
	dimmerTable = tableOf("dimmer", "How a light is dimmed, for flicker.", nil,
		into("kind", dimmerKind, func(d *dimming, s string, _ *source.Node) { d.kind = s },
			"The kind of dimmer.", "pwm", "").needed(),
		figure("hertz", quantity("a frequency", "1000", numbers, between(0.001, 1e7)),
			func(d *dimming) *float64 { return &d.hertz },
			"Of the dimming.", "twice the mains"),
	)
	playKind  = source.OneOf("a play of light", "fire", "candle", "screen", "lightning", "passing", "pulse")
	playTable = tableOf("play", "How a light changes by itself.", nil,
		into("kind", playKind, func(f *flicker, s string, _ *source.Node) { f.kind = s },
			"What it plays.", "fire", "").needed(),
		figure("low", quantity("a level", "20 %", levels, between(0, 1)), func(f *flicker) *float64 { return &f.low },
			"The lowest level.", "half the light's level"),
		figure("high", quantity("a level", "60 %", levels, between(0, 1)), func(f *flicker) *float64 { return &f.high },
			"The highest level.", "the light's level"),
		figure("every", quantity("a time", "0.5 s", seconds, between(0.001, 3600)), func(f *flicker) *float64 { return &f.every },
			"From peak to peak.", "by its kind"),
	)
)

func lightLater() []entry[Light] {
	plays := orWord("a play of light", "fire", playTable, playKind, func(s string) flicker { return flicker{kind: s} })
	dimmer := orWord("a dimmer", "pwm", dimmerTable, dimmerKind, func(s string) dimming { return dimming{kind: s} })
	return []entry[Light]{
		raw("plays", plays, func(l *Light) **source.Node { return &l.Plays },
			"How it changes by itself.", "fire", "steady"),
		into("seen", seen, func(l *Light, v []Ref, n *source.Node) {
			l.Seen, l.SeenBy = Given[bool]{Value: n.Text != "false", Set: true, Span: n.Span}, v
		},
			"Whether it is meant to be in the picture, with what holds it: true, false, or the cameras. What is not and shows is a finding; "+
				"of what is, review says how bright it looks, and whether it shows at all.",
			"true", "true of a practical, but for the stand, boom, clamp, pole or lift that one is put on; else false, whatever its role"),
		raw("dimmer", dimmer, func(l *Light) **source.Node { return &l.Dimmer },
			"How it is dimmed.", "pwm", "none"),
	}
}

// seen reads true, false, or the cameras that may see a light.
var seen = either("a list of cameras", "[A]", func(n *source.Node) bool { return n.Text == "true" || n.Text == "false" },
	source.Converted(source.Bool("a light in the picture"), func(bool) []Ref { return nil }),
	oneOrMore("a list of cameras", "[A]", ref("a camera", "A"), 20))
