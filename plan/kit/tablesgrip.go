package kit

import (
	"math"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// clothData is a cloth as its entry states it: what it costs in stops, and how that is divided.
type clothData struct {
	doc, label             string
	stops                  float64
	opaque                 bool
	straight, reflectShare float64
}

// cloth turns what the entry states into shares of the light that falls on it.
func (d *clothData) cloth(e Entry) *Cloth {
	e.Doc = d.doc
	through := d.through()
	return &Cloth{
		Entry: e, Label: d.label,
		Direct: through * d.straight, Diffuse: through * (1 - d.straight), Reflect: d.reflectShare,
	}
}

func clothShape() *source.Shape[clothData] {
	type c = clothData
	return &source.Shape[clothData]{Name: "cloth", Doc: "A diffusion, a net or a drape.", Fields: []source.Field[clothData]{
		required(doc(func(v *c) *string { return &v.doc })),
		required(label(func(v *c) *string { return &v.label })),
		field("stops", amount("a loss in stops", "1.5", 0, 12), func(v *c) *float64 { return &v.stops },
			"What it takes from the light behind it, in stops."),
		field("opaque", source.Bool("opaque"), func(v *c) *bool { return &v.opaque },
			"It lets nothing through."),
		withDefault(field("straight", share("a share", "5 %"), func(v *c) *float64 { return &v.straight },
			"The share of the light let through that goes straight on."), "0 %"),
		withDefault(field("reflectance", share("a reflectance", "0.4"), func(v *c) *float64 { return &v.reflectShare },
			"The share that it throws back."), "0"),
	}, Forms: []string{"stops", "opaque"}}
}

// leastLobe is the narrowest lobe, degrees: one narrower is a mirror as good as flat.
const leastLobe = 6

func materialShape() *source.Shape[Material] {
	type m = Material
	return &source.Shape[Material]{Name: "material", Doc: "A surface.", Fields: []source.Field[Material]{
		required(doc(func(v *m) *string { return &v.Doc })),
		required(field("reflectance", share("a reflectance", "0.5"), func(v *m) *float64 { return &v.Reflectance },
			"The share of light that it throws back, luminous.")),
		withDefault(field("xy", chromaticity("a chromaticity"), func(v *m) **[2]float64 { return &v.XY },
			"Its chromaticity under D65, CIE 1931."), "neutral"),
		withDefault(field("transmittance", share("a transmittance", "0.9"), func(v *m) *float64 { return &v.Transmittance },
			"Of a glass: the share that goes through, from straight ahead."), "opaque"),
		withDefault(field("index", amount("an index of refraction", "1.526", 1, 3), func(v *m) *float64 { return &v.Index },
			"Of a glass: the index of refraction, by which less goes through from aside."), "as much from everywhere"),
		withDefault(field("sheets", source.Int("a count of sheets", 1, 4), func(v *m) *int { return &v.Sheets },
			"Of a glass: how many sheets, one behind the other."), "1"),
		withDefault(field("bars", amount("a width in metres", "0.03", 0, 0.3), func(v *m) *float64 { return &v.Bars },
			"Of a glass: how wide the bars between its panes are."), "no bars"),
		withDefault(field("scatter", share("a share", "95 %"), func(v *m) *float64 { return &v.Scatter },
			"Of a glass: the share of what goes through that leaves it scattered."), "0 %"),
		withDefault(field("mirror", share("a share", "0.8"), func(v *m) *float64 { return &v.Mirror },
			"The share of the reflectance that mirrors. It is computed of boards of grip and of mirrors; on all else it scatters."), "0"),
		withDefault(field("lobe", angle("an angle", "12", leastLobe, 90), func(v *m) *float64 { return &v.Lobe },
			"Full angle between the halves of the lobe in which it mirrors."), "a sharp mirror"),
	}}
}

func sensorShape() *source.Shape[Sensor] {
	type s = Sensor
	side := func(what string) source.Reader[float64] { return amount(what, "24.89", 1, 200) }
	return &source.Shape[Sensor]{Name: "sensor", Doc: "A camera gate.", Fields: []source.Field[Sensor]{
		required(doc(func(v *s) *string { return &v.Doc })),
		required(label(func(v *s) *string { return &v.Label })),
		required(field("width", side("a width"), func(v *s) *float64 { return &v.Width },
			"Width of the gate, mm.")),
		required(field("height", side("a height"), func(v *s) *float64 { return &v.Height },
			"Height of the gate, mm.")),
		withDefault(field("confusion", amount("a circle of confusion", "0.021", 0.001, 1), func(v *s) *float64 { return &v.Confusion },
			"Diameter of the circle that counts as a point there, mm."), "its diagonal by 1500"),
		withDefault(field("readout", amount("a time in milliseconds", "12", 0.01, 100), func(v *s) *float64 { return &v.Readout },
			"How much later its last row is read than its first, ms."), unit.FormatNumber(DefaultReadout)),
	}}
}

func standShape() *source.Shape[Stand] {
	type s = Stand
	return &source.Shape[Stand]{Name: "stand", Doc: "What holds a light.", Fields: []source.Field[Stand]{
		required(doc(func(v *s) *string { return &v.Doc })),
		required(label(func(v *s) *string { return &v.Label })),
		required(field("footprint", length("a footprint", "1.0", 0.05, 5), func(v *s) *float64 { return &v.Footprint },
			"Diameter that its legs cover.")),
		required(field("lowest", length("a height", "0.9", 0, 20), func(v *s) *float64 { return &v.Lowest },
			"Lowest height of the spigot.")),
		required(field("highest", length("a height", "2.6", 0, 20), func(v *s) *float64 { return &v.Highest },
			"Highest height of the spigot.")),
		required(field("load", mass("a load", "5 kg"), func(v *s) *float64 { return &v.Load },
			"The most it may carry.")),
		required(field("mass", mass("a mass", "2 kg"), func(v *s) *float64 { return &v.Mass },
			"Its own mass.")),
		withDefault(field("spigot", source.OneOf("a spigot", Spigot16, SpigotEither, Spigot28), func(v *s) *string { return &v.Spigot },
			"What it takes."), "any"),
		withDefault(field("wheels", source.Bool("wheels"), func(v *s) *bool { return &v.Wheels },
			"Whether it rolls."), "it does not"),
	}}
}

func gripShape() *source.Shape[Grip] {
	type g = Grip
	side := func(what string) source.Reader[float64] { return length(what, "0.9", 0.02, 20) }
	return &source.Shape[Grip]{Name: "grip", Doc: "A flag, card, frame, net or silver board.", Fields: []source.Field[Grip]{
		required(doc(func(v *g) *string { return &v.Doc })),
		required(label(func(v *g) *string { return &v.Label })),
		required(field("kind", source.Vocabulary("a kind of grip", term.Grips), func(v *g) *term.Grip { return &v.Kind },
			"What it does to light.")),
		required(field("width", side("a width"), func(v *g) *float64 { return &v.Width },
			"Width.")),
		required(field("height", side("a height"), func(v *g) *float64 { return &v.Height },
			"Height.")),
		withDefault(field("round", source.Bool("round"), func(v *g) *bool { return &v.Round },
			"Whether it is a disc, as wide as it is high."), "a rectangle"),
		field("mass", mass("a mass", "1.5 kg"), func(v *g) *float64 { return &v.Mass },
			"Mass."),
	}}
}

// check says what does not go together in a piece of grip.
func (g *Grip) check() (message, hint string) {
	if g.Round && g.Width != g.Height {
		return "is round, and must be as wide as it is high", "give both the diameter"
	}
	return "", ""
}

// check says whether a cloth makes light.
func (d *clothData) check() (message, hint string) {
	if d.through()+d.reflectShare > 1 {
		return tooBright, ""
	}
	return "", ""
}

// through is the share of light that the cloth lets through.
func (d *clothData) through() float64 {
	if d.opaque {
		return 0
	}
	return math.Exp2(-d.stops)
}
