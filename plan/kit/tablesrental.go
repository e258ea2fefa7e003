package kit

import (
	"scrimshaw/plan/power"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// rentalFields are the keys of a unit that no light depends on.
func rentalFields() []source.Field[Unit] {
	type u = Unit
	return []source.Field[Unit]{
		field("supply", mass("a mass", "4.5 kg"), func(v *u) *float64 { return &v.Supply },
			"Mass of its ballast or power supply, where that is apart from the head."),
		field("spigot", source.OneOf("a spigot", spigots...), func(v *u) *string { return &v.Spigot },
			"What it sits on a stand by."),
		field("inlet", source.Text("an inlet", "IEC 60320 C14"), func(v *u) *string { return &v.Inlet },
			"Its mains inlet."),
		field("volts", pair("a range of mains", "[100, 240]", amount("a voltage", "230", 1, 1000)), func(v *u) *[2]float64 { return &v.Volts },
			"The mains that it takes, least and most, volts."),
		field("inrush", amount("a current", "40", 0, 1000), func(v *u) *float64 { return &v.Inrush },
			"Peak of the current as it is switched on, at 230 V, amps."),
		withDefault(field("leakage", source.Converted(amount("a leakage", "0.7", 0, 100), func(v float64) *float64 { return &v }), func(v *u) **float64 { return &v.Leakage },
			"Current that its supply sends down its earth all the time, milliamps."), unit.FormatNumber(power.SupplyLeakage)+" of an electronic supply, 0 of a filament"),
		field("battery", batteryReader(), func(v *u) *Battery { return &v.Battery },
			"How it runs without mains."),
		field("ip", source.Text("a protection", "IP65"), func(v *u) *string { return &v.IP },
			"Protection against dust and water, IEC 60529."),
		field("comes-with", source.ListOf("a list of things", "[reflector-wide, power cable]", source.Text("a thing", "power cable"), 1, 30),
			func(v *u) *[]string { return &v.ComesWith }, "What is in its case with it."),
		withDefault(field("mains-cable", length("a length", "3", 0.1, 30), func(v *u) *float64 { return &v.OwnCable },
			"Length of its own mains cable, which comes with it: what is laid for it begins at its end."), "none"),
		field("case", caseSize(), func(v *u) *[3]float64 { return &v.Case },
			"Width, depth and height of its case."),
	}
}

func caseSize() source.Reader[[3]float64] {
	r := array("a size", "[0.6, 0.35, 0.3]", length("a side of a case", "0.6", 0.02, 5), 3)
	return source.Converted(r, func(v []float64) [3]float64 { return [3]float64(v) })
}

// batteryReader reads how a unit runs without mains.
func batteryReader() source.Reader[Battery] {
	type b = Battery
	shape := &source.Shape[Battery]{Name: "battery", Doc: "How a unit runs without mains.", Fields: []source.Field[Battery]{
		required(field("volts", amount("a voltage", "14.4", 1, 100), func(v *b) *float64 { return &v.Volts },
			"Of its plate, or of the pack inside it.")),
		withDefault(field("plates", source.Int("a number of batteries", 0, 8), func(v *b) *int { return &v.Plates },
			"How many batteries it takes."), "one is built in"),
		withDefault(field("share", share("a share", "50 %"), func(v *b) *float64 { return &v.Share },
			"The share of its full light that it gives on them."), "100 %"),
		field("hours", amount("a time", "1.5", 0.05, 100), func(v *b) *float64 { return &v.Hours },
			"How long, in hours."),
	}}
	return source.Reader[Battery]{What: "a battery", Like: "{volts: 14.4, plates: 1, share: 50 %}", Schema: shape.Schema,
		Read: func(n *source.Node, c *source.Context) (v Battery, ok bool) {
			ok = readsWithoutError(c, func(c *source.Context) { shape.Read(&v, n, c) })
			if v.Share == 0 {
				v.Share = 1
			}
			return v, ok
		}}
}

// zoomSteps reads what a modifier does by focus.
func zoomSteps() source.Reader[[]ZoomStep] {
	type z = ZoomStep
	one := &source.Shape[ZoomStep]{Name: "focus of a zoom", Doc: "What a zoom does at one focus.", Fields: []source.Field[ZoomStep]{
		required(field("efficiency", quantity("an efficiency", "45 %", withoutFileUnits(percentOrNumber), unit.FormatPercent, 0.001, 1),
			func(v *z) *float64 { return &v.Efficiency }, "The share of the flux of the head that leaves.")),
		required(field("beam", beamAngle("12"), func(v *z) *float64 { return &v.Beam },
			"Full angle to 50 % of the peak.")),
		withDefault(field("field", fieldAngle("20"), func(v *z) *float64 { return &v.Field },
			"Full angle to 10 % of the peak."), "1.8226 times the beam"),
	}}
	return source.Reader[[]ZoomStep]{What: "a zoom", Like: "{spot: {efficiency: 20 %, beam: 12}, flood: {efficiency: 50 %, beam: 45}}",
		Schema: func() map[string]any { return map[string]any{"type": "object", "additionalProperties": one.Schema()} },
		Read: func(n *source.Node, c *source.Context) (all []ZoomStep, ok bool) {
			source.Each(n, "focus", c, func(k *source.Key) {
				focus, known := focusOf(k.Name)
				if !known || len(all) > 0 && all[len(all)-1].Focus >= focus {
					c.ErrorAt(k.Span, CodeKit, "write spot, shares like 40 %, and flood, in this order", "%q is no focus after the one before it", k.Name)
					return
				}
				step := ZoomStep{Focus: focus}
				if readsWithoutError(c, func(c *source.Context) { one.Read(&step, k.Value, c) }) {
					all = append(all, step)
				}
			})
			return all, len(all) > 0
		}}
}
