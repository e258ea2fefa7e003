package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var meterForms = term.Words(term.Meters)

var meterTable = tableOf("meter", "One named reading.", meterForms,
	meterForm(term.FlatMeter, "Illuminance on a plane, at a point."),
	meterForm(term.DomeMeter, "The incident dome, at a point."),
	spot(),
	value("facing", aim, func(m *Meter) *Given[Aim] { return &m.Facing },
		"Where the receptor looks.", "up", "up for a flat meter, the first camera for a dome, else up").of(string(term.FlatMeter), string(term.DomeMeter)),
	into("from", ref("a camera", "A"), func(m *Meter, r Ref, _ *source.Node) { m.From = r },
		"The camera that the spot is seen from.", "A", "none: it is required").of(string(term.SpotMeter)),
).meant(otherMeterKeys)

func meterForm(kind term.Meter, doc string) entry[Meter] {
	e := value(string(kind), pointXYZ, func(m *Meter) *Given[[3]float64] { return &m.At }, doc, "[1.8, 1.5, 0.75]", "")
	read := e.Read
	e.Read = func(m *Meter, n *source.Node, c *source.Context) {
		m.Kind = kind
		read(m, n, c)
	}
	return e
}

// spot is luminance of a point, or of what is seen through an opening.
func spot() entry[Meter] {
	e := meterForm(term.SpotMeter, "Luminance of the first surface along the ray to a point, or through an opening.")
	point := e.Read
	e.Schema = func() map[string]any { return anyOf(pointXYZ.Schema(), openingRef.Schema()) }
	e.Read = func(m *Meter, n *source.Node, c *source.Context) {
		if n.Kind != source.Scalar {
			point(m, n, c)
			return
		}
		m.Kind = term.SpotMeter
		m.Opening, _ = openingRef.Read(n, c)
	}
	return e
}

// checkMeter looks at what the keys of a meter say together.
func checkMeter(m *Meter, n *source.Node, c *source.Context) {
	if m.Kind == term.SpotMeter && n.Key("from") == nil {
		c.ErrorAt(c.Here(n), source.CodeMissingKey, "add from: A", "a spot reading needs the camera that it is taken from")
	}
}
