package scene

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// orWord reads a map by a table, or a single word.
func orWord[T, W any](what, like string, t *table[T], word source.Reader[W], to func(W) T) source.Reader[T] {
	return either(what, like, ofKind(source.Map), mapOf(what, like, t), source.Converted(word, to))
}

// bulb and shade are what a light says of its practical.
type (
	bulb  = kit.BulbChoice
	shade = kit.ShadeChoice
)

// shadeSide is a measure of a shade, m.
var shadeSide = quantity("a measure of a shade", "0.3", lengths, between(0.02, 3))

var (
	bulbTable = tableOf("bulb", "What burns in a practical.", nil,
		figure("watts", quantity("a power", "60 W", watts, between(0.1, 20000)), func(g *bulb) *float64 { return &g.Watts },
			"Its power.", "what its flux takes"),
		figure("lumens", quantity("a flux", "800", numbers, between(0.1, 1e6)), func(g *bulb) *float64 { return &g.Lumens },
			"Its flux.", "what its power gives, by the kind of the practical's own bulb"),
		into("colour", whiteKind, func(g *bulb, v ColourWord, _ *source.Node) { g.Kelvin = v.Kelvin },
			"Its white.", "2700 K", "that of the practical's own bulb"),
	)
	shadeTable = tableOf("shade", "What hangs around a bulb, open above and below.", nil,
		figure("top", shadeSide, func(v *shade) *float64 { return &v.Top }, "Diameter of its opening above.", "the lamp's own"),
		figure("bottom", shadeSide, func(v *shade) *float64 { return &v.Bottom }, "Diameter of its opening below.", "the lamp's own"),
		figure("height", shadeSide, func(v *shade) *float64 { return &v.Height }, "From the one to the other.", "the lamp's own"),
		into("cloth", catalogueNameReader("a cloth", "sheer"), func(v *shade, r Ref, _ *source.Node) { v.Cloth, v.Span = r.Name, r.Span },
			"What it is made of, by its name in the kit.", "sheer", "the lamp's own"),
		figure("transmittance", quantity("a transmittance", "0.4", shares, between(0.001, 1)),
			func(v *shade) *float64 { return &v.Transmittance },
			"The share of the light on its side that comes out of it.", "the cloth's"),
		figure("reflectance", quantity("a reflectance", "0.5", shares, between(0.001, 1)),
			func(v *shade) *float64 { return &v.Reflectance },
			"The share that its inside throws back.", "the cloth's, and no more than the rest"),
		figure("most-power", quantity("a power", "60 W", watts, between(0.1, 20000)), func(v *shade) *float64 { return &v.MostWatts },
			"The power of a filament bulb that it stands the heat of.", "the lamp's own"),
	)
)

// lightPractical are the keys of a practical.
func lightPractical() []entry[Light] {
	bulbKind := orWord("a bulb", "{watts: 60 W, colour: 2700 K}", bulbTable, catalogueNameReader("a bulb", "tungsten-60"), func(r Ref) bulb { return bulb{Name: r.Name} })
	shadeKind := orWord("a shade", "{transmittance: 0.4}", shadeTable, catalogueNameReader("a shade", "lampshade-30"), func(r Ref) shade { return shade{Name: r.Name} })
	return []entry[Light]{
		into("bulb", bulbKind, func(l *Light, v bulb, n *source.Node) {
			v.Span = n.Span
			l.Bulb = &v
		}, "What burns in a practical.", "{watts: 60 W, colour: 2700 K}", "the practical's").of("unit"),
		into("shade", shadeKind, func(l *Light, v shade, n *source.Node) {
			l.noteCatalogueName("shade", "cloth", Ref{Name: v.Cloth, Span: v.Span})
			v.Span = n.Span
			l.Shade = &v
		}, "What hangs around the bulb: `bare` for nothing.", "{transmittance: 0.4}", "the practical's").of("unit"),
	}
}
