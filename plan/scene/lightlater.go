package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// These maps are checked today and computed later; the scene keeps them as they were written.
type (
	cut     struct{ angle, depth float64 }
	mask    struct{ open, grain float64 }
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
	cutTable = tableOf("cut", "One straight edge in the image of a projection spot.", nil,
		figure("angle", bearing, func(v *cut) *float64 { return &v.angle },
			"Of the edge, clockwise from behind: 0 cuts the top.", "0"),
		figure("depth", quantity("a depth", "30 %", percents, between(0, 1)), func(v *cut) *float64 { return &v.depth },
			"How much of the image it covers.", "").needed(),
	)
	breakupTable = tableOf("breakup", "A pattern in the gate of a projection spot.", nil,
		figure("open", quantity("an open share", "40 %", percents, between(0.01, 1)), func(m *mask) *float64 { return &m.open },
			"The open fraction.", "").needed(),
		figure("grain", quantity("a grain", "10 %", percents, between(0.001, 1)), func(m *mask) *float64 { return &m.grain },
			"Size of a patch, of the image.", "10 %"),
	)
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
		raw("cuts", source.ListOf("a list of cuts", "[{angle: 0, depth: 30 %}]", mapOf("a cut", "{angle: 0, depth: 30 %}", cutTable), 1, 4),
			func(l *Light) **source.Node { return &l.Cuts },
			"Up to four cuts of a projection spot.", "[{angle: 0, depth: 30 %}]", "none"),
		raw("breakup", mapOf("a breakup", "{open: 40 %, grain: 10 %}", breakupTable),
			func(l *Light) **source.Node { return &l.Breakup },
			"A pattern in its gate.", "{open: 40 %, grain: 10 %}", "none"),
		raw("plays", plays, func(l *Light) **source.Node { return &l.Plays },
			"How it changes by itself.", "fire", "steady"),
		into("seen", seen, func(l *Light, v []Ref, n *source.Node) { l.Seen, l.SeenBy = n, v },
			"Whether it may be in the picture: true, false, or the cameras.",
			"true", "true of a practical, else false"),
		raw("dimmer", dimmer, func(l *Light) **source.Node { return &l.Dimmer },
			"How it is dimmed.", "pwm", "none"),
	}
}

// focus reads spot, flood or a share between them.
var focus = either("a focus", "40 %", func(n *source.Node) bool { return n.Text == string(term.Spot) || n.Text == string(term.Flood) },
	source.Converted(source.Vocabulary("a focus", []term.Focus{term.Spot, term.Flood}), func(end term.Focus) float64 {
		if end == term.Flood {
			return 1
		}
		return 0
	}),
	quantity("a focus", "40 %", percents, between(0, 1)))

// seen reads true, false, or the cameras that may see a light.
var seen = either("a list of cameras", "[A]", func(n *source.Node) bool { return n.Text == "true" || n.Text == "false" },
	source.Converted(source.Bool("a light in the picture"), func(bool) []Ref { return nil }),
	oneOrMore("a list of cameras", "[A]", ref("a camera", "A"), 20))
