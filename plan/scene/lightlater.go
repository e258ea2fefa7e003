package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// These maps are checked today and computed later; the scene keeps them as they were written.
type (
	doors struct{ top, bottom, left, right, turn float64 }
	cut   struct{ angle, depth float64 }
	mask  struct{ open, grain float64 }
	globe struct {
		name          Ref
		watts, lumens float64
		white         ColourWord
	}
	cover struct {
		name, cloth   Ref // of a modifier of the kit; of a cloth
		transmittance float64
	}
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
	leafAngle = quantity("a leaf's angle", "40", degrees, between(0, 180))
	doorTable = tableOf("barndoors", "The four leaves: 0 is closed, 90 straight ahead.", nil,
		figure("top", leafAngle, func(d *doors) *float64 { return &d.top }, "The upper leaf.", "open"),
		figure("bottom", leafAngle, func(d *doors) *float64 { return &d.bottom }, "The lower leaf.", "open"),
		figure("left", leafAngle, func(d *doors) *float64 { return &d.left }, "The left leaf, seen from behind.", "open"),
		figure("right", leafAngle, func(d *doors) *float64 { return &d.right },
			"The right leaf, seen from behind.", "open"),
		figure("turn", bearing, func(d *doors) *float64 { return &d.turn }, "Turn of the set, clockwise from behind.", "0"),
	)
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
	globeTable = tableOf("bulb", "What burns in a practical.", nil,
		figure("watts", quantity("a power", "60 W", watts, between(0.1, 20000)), func(g *globe) *float64 { return &g.watts },
			"Its power.", "by its kind"),
		figure("lumens", quantity("a flux", "800", numbers, between(0.1, 1e6)), func(g *globe) *float64 { return &g.lumens },
			"Its flux.", "by its kind"),
		into("colour", whiteKind, func(g *globe, v ColourWord, _ *source.Node) { g.white = v },
			"Its white.", "2700 K", "by its kind"),
	)
	coverTable = tableOf("shade", "What hangs around a bulb.", nil,
		into("cloth", catalogueNameReader("a cloth", "sheer"), func(v *cover, r Ref, _ *source.Node) { v.cloth = r },
			"What it is made of.", "sheer", "none"),
		figure("transmittance", quantity("a transmittance", "0.4", shares, between(0.001, 1)),
			func(v *cover) *float64 { return &v.transmittance },
			"The share that passes.", "the cloth's"),
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

// orWord reads a map by a table, or a single word.
func orWord[T, W any](what, like string, t *table[T], word source.Reader[W], to func(W) T) source.Reader[T] {
	return either(what, like, ofKind(source.Map), mapOf(what, like, t), source.Converted(word, to))
}

func lightLater() []entry[Light] {
	scrims := oneOrMore("a list of scrims", "[double, half-single]", source.OneOf("a scrim", "single", "double", "half-single", "half-double"), 6)
	bulb := orWord("a bulb", "{watts: 60 W, colour: 2700 K}", globeTable, catalogueNameReader("a bulb", "tungsten-60"), func(r Ref) globe { return globe{name: r} })
	shade := orWord("a shade", "{transmittance: 0.4}", coverTable, catalogueNameReader("a shade", "lampshade-30"), func(r Ref) cover { return cover{name: r} })
	plays := orWord("a play of light", "fire", playTable, playKind, func(s string) flicker { return flicker{kind: s} })
	dimmer := orWord("a dimmer", "pwm", dimmerTable, dimmerKind, func(s string) dimming { return dimming{kind: s} })
	return []entry[Light]{
		raw("barndoors", mapOf("a set of barndoors", "{top: 40, left: 60}", doorTable),
			func(l *Light) **source.Node { return &l.Barndoors },
			"Angles of its leaves.", "{top: 40, left: 60}", "none"),
		raw("scrims", scrims, func(l *Light) **source.Node { return &l.Scrims },
			"Wire scrims.", "[double, half-single]", "none"),
		raw("cuts", source.ListOf("a list of cuts", "[{angle: 0, depth: 30 %}]", mapOf("a cut", "{angle: 0, depth: 30 %}", cutTable), 1, 4),
			func(l *Light) **source.Node { return &l.Cuts },
			"Up to four cuts of a projection spot.", "[{angle: 0, depth: 30 %}]", "none"),
		raw("breakup", mapOf("a breakup", "{open: 40 %, grain: 10 %}", breakupTable),
			func(l *Light) **source.Node { return &l.Breakup },
			"A pattern in its gate.", "{open: 40 %, grain: 10 %}", "none"),
		into("bulb", bulb, func(l *Light, v globe, n *source.Node) { l.Bulb = n; l.noteCatalogueName("bulb", "bulb", v.name) },
			"What burns in a practical.", "{watts: 60 W, colour: 2700 K}", "the practical's"),
		into("shade", shade, func(l *Light, v cover, n *source.Node) {
			l.Shade = n
			l.noteCatalogueName("shade", "cloth", v.cloth)
			l.noteCatalogueName("shade", "modifier", v.name)
		}, "What hangs around the bulb.", "{transmittance: 0.4}", "the practical's"),
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
