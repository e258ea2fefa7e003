package scene

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// figure is a key of a small map that holds one number.
func figure[T any](key string, r source.Reader[float64], at func(*T) *float64, doc, def string) entry[T] {
	return into(key, r, func(dst *T, v float64, _ *source.Node) { *at(dst) = v }, doc, r.Like, def)
}

var (
	dimmerKind  = source.Vocabulary("a dimmer", term.Dimmers)
	dimmerTable = tableOf("dimmer", "What a light is dimmed by.", nil,
		into("kind", dimmerKind, func(d *kit.Dimming, v term.Dimmer, _ *source.Node) { d.Kind = v },
			"The kind of dimmer.", "pwm", "").needed(),
		figure("hertz", quantity("a frequency", "1000", numbers, between(0.001, 1e7)),
			func(d *kit.Dimming) *float64 { return &d.Hertz },
			"How often it switches in a second.", "twice the mains"),
	)
	dimmer = orWord("a dimmer", "pwm", dimmerTable, dimmerKind, func(v term.Dimmer) kit.Dimming { return kit.Dimming{Kind: v} })
)

func lightLater() []entry[Light] {
	return []entry[Light]{
		plays(),
		into("seen", seen, func(l *Light, v []Ref, n *source.Node) {
			l.Seen, l.SeenBy = Given[bool]{Value: n.Text != "false", Set: true, Span: n.Span}, v
		},
			"Whether it is meant to be in the picture, with what holds it: true, false, or the cameras. What is not and shows is a finding; "+
				"of what is, review says how bright it looks, and whether it shows at all.",
			"true", "true of a practical, but for the stand, boom, clamp, pole or lift that one is put on; else false, whatever its role"),
		value("dimmer", dimmer, func(l *Light) *Given[kit.Dimming] { return &l.Dimmer },
			"What it is dimmed by, which may make it flicker: `phase` cuts each half cycle, `pwm` switches it on and off, `current` and `transformer` do neither; `none` says that nothing dims it.", "pwm", "not said; a dimmed filament is taken to be on a hand dimmer, which is listed"),
	}
}

// seen reads true, false, or the cameras that may see a light.
var seen = either("a list of cameras", "[A]", func(n *source.Node) bool { return n.Text == "true" || n.Text == "false" },
	source.Converted(source.Bool("a light in the picture"), func(bool) []Ref { return nil }),
	oneOrMore("a list of cameras", "[A]", ref("a camera", "A"), 20))
