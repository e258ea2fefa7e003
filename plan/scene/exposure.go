package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

var (
	shutterKind = scalar("a shutter", "180", map[string]any{"type": numberOrText},
		func(text string, _ *source.Node, _ *source.Context) (Shutter, error) { return unit.ParseShutter(text) })
	stopKind = scalar("a stop", "T2.8", map[string]any{"type": numberOrText},
		func(text string, _ *source.Node, _ *source.Context) (Stop, error) { return unit.ParseStop(text) })
	whiteKind = scalar("a white", "4300 K", map[string]any{"type": "string"},
		func(text string, _ *source.Node, _ *source.Context) (ColourWord, error) {
			white, err := unit.ParseKelvin(text)
			return white, unitLess(true, text, err)
		})
)

// mostRange is the most stops over or under grey that a camera may hold: no medium holds nearly as much.
const mostRange = 20

var (
	stopsOfRange = quantity("a number of stops", "6", numbers, between(0.1, mostRange).lower("count the stops from grey on either side: both are above 0"))
	rangeTable   = tableOf("range", "What a camera holds on both sides of grey, stops. One of them may be left out: then nothing is said of that side.", nil,
		figure("over", stopsOfRange, func(v *Range) *float64 { return &v.Over }, "How far over grey it still shows differences: what is brighter clips.", ""),
		figure("under", stopsOfRange, func(v *Range) *float64 { return &v.Under }, "How far under grey: what is darker sinks.", ""),
	)
)

// cameraRange reads a range, which says at least one side.
var cameraRange = func() source.Reader[Range] {
	r := mapOf("a range", "{over: 6, under: 8}", rangeTable)
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) (Range, bool) {
		v, ok := read(n, c)
		if ok && v == (Range{}) {
			c.Error(n, source.CodeMissingKey, "write range: {over: 6, under: 8}", "a range says how many stops over or under grey the camera holds")
			return v, false
		}
		return v, ok
	}
	return r
}()

var cameraExposureTable = tableOf("camera's exposure", "What one camera sets differently from the scene's `exposure`.", nil, exposureKeys()...).meant(otherExposureKeys)

var exposureTable = tableOf("exposure", "How the cameras are set, and how light is metered.", nil, append(exposureKeys(),
	value("meter", source.Vocabulary("a receptor", term.Receptors), func(e *Exposure) *Given[term.Meter] { return &e.Meter },
		"The meter that gives the stops: dome or flat, for the whole file.", "dome", string(DefaultReceptor)),
	value("constant", quantity("a meter constant", "340", numbers, between(1, 2000)),
		func(e *Exposure) *Given[float64] { return &e.Constant },
		"C of N² = E S t / C, for the whole file (ISO 2720 gives its range).", "340", "340 for the dome, 250 flat"),
)...).meant(otherExposureKeys)

// exposureKeys are the keys that a camera may set for itself.
func exposureKeys() []entry[Exposure] {
	return []entry[Exposure]{
		value("iso", quantity("an ISO speed", "800", numbers, between(1, 1e7)),
			func(e *Exposure) *Given[float64] { return &e.ISO },
			"Speed.", "800", unit.FormatNumber(DefaultISO)),
		value("fps", quantity("a frame rate", "24", numbers, between(0.001, 100000)),
			func(e *Exposure) *Given[float64] { return &e.FPS },
			"Frames a second.", "24", unit.FormatNumber(FPSAt50Hz)+" on 50 Hz mains, "+unit.FormatNumber(FPSAt60Hz)+" on 60 Hz"),
		value("shutter", shutterKind, func(e *Exposure) *Given[Shutter] { return &e.Shutter },
			"An angle, or a time.", "1/50", unit.FormatNumber(DefaultShutter)+"°"),
		value("stop", stopKind, func(e *Exposure) *Given[Stop] { return &e.Stop },
			"The working stop. Marks mean exact powers of the root of two.", "T2.8", "T"+unit.FormatNumber(DefaultStop)),
		value("white", whiteKind, func(e *Exposure) *Given[ColourWord] { return &e.White },
			"The white that the camera is balanced to; `daylight` before it means the daylight locus.",
			"4300 K", "the key's colour, else "+unit.FormatNumber(DefaultWhite)+" K"),
		value("range", cameraRange, func(e *Exposure) *Given[Range] { return &e.Range },
			"What the camera holds in stops from grey: what of its picture, its lamps and the faces clips or sinks stands in the readings and the review.", "{over: 6, under: 8}", "none: then the tool names nothing that clips or sinks"),
	}
}
