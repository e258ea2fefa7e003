package scene

import (
	"fmt"
	"strconv"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// languageVersion is the version of the language that this package reads.
const languageVersion = 1

// sceneTable is the whole language.
var sceneTable = tableOf("scene", "A scene to light. Lengths that are bare numbers are in its `units`.", nil, rootKeys()...).elsewhere(inSection)

// inSection says, of a change, that things stand in their sections.
func inSection(key string, c *source.Context) string {
	if c.Setup == "" {
		return ""
	}
	return "things stand in their sections: write lights: {" + key + ": {…}}, if it is a light"
}

func rootKeys() []entry[Scene] {
	keys := []entry[Scene]{
		into("scrimshaw", versionKind, func(*Scene, int, *source.Node) {}, "Version of the language.", "1", "").needed(),
		value("title", text("a title", "The map room"), func(s *Scene) *Given[string] { return &s.Title },
			"Title of the scene.", "The map room, late afternoon", "the file's name"),
		into("units", unitsKind, func(s *Scene, v string, _ *source.Node) { s.Feet = v == "ft" },
			"What bare lengths in this file mean, and what lengths are printed in.", "m", "m"),
		into("kit", kitPaths, func(s *Scene, v []Given[string], _ *source.Node) { s.Kit = v },
			"Files with more kit, from the scene's folder, which they may not leave.", "[lamps.yaml]", "none"),
		into("sheet", mapOf("a sheet", "{production: Low Water}", sheetTable),
			func(s *Scene, v Sheet, _ *source.Node) { s.Sheet = v },
			sheetTable.Doc, "{production: Low Water, revision: B}", "a plain sheet"),
		into("site", mapOf("a site", "{north: 24}", siteTable),
			func(s *Scene, v Site, n *source.Node) { v.Span = n.Span; s.Site = &v },
			siteTable.Doc, "{ground: -0.4, north: 24}", "none"),
		into("exposure", mapOf("an exposure", "{iso: 800}", exposureTable),
			func(s *Scene, v Exposure, _ *source.Node) { s.Exposure = v },
			exposureTable.Doc, "{iso: 800, stop: T2.8}", fmt.Sprintf("ISO %s, %s, T%s", unit.FormatNumber(DefaultISO), unit.FormatAngle(DefaultShutter), unit.FormatNumber(DefaultStop))),
	}
	for _, p := range parts() {
		keys = append(keys, p.entry())
	}
	keys = append(keys, setupList())
	return append(keys, laterKeys()...)
}

// setupList is the list of set-ups.
func setupList() entry[Scene] {
	return section[Scene, Setup, *Setup]{
		key: "setups", doc: "Set-ups, each a change of the scene or of another set-up.", plain: true,
		example: "{wide: {camera: A}, close: {camera: A, after: wide}}",
		table:   setupTable, at: func(s *Scene) *[]Setup { return &s.Setups },
	}.entry()
}

var versionKind = version()

// version reads the number that every scene starts with, with or without quotes, as the schema takes it.
func version() source.Reader[int] {
	own := strconv.Itoa(languageVersion)
	read := func(text string, n *source.Node, _ *source.Context) (int, error) {
		v, err := strconv.ParseFloat(text, 64) // 1.0 is the number 1
		if err != nil || v != languageVersion || n.Quoted && text != own {
			return 0, source.Errorf(CodeVersion, "write scrimshaw: 1",
				"this is language version %q, and version %d is read here", text, languageVersion)
		}
		return languageVersion, nil
	}
	return scalar("a language version", own, map[string]any{"enum": []any{languageVersion, own}}, read)
}

var unitsKind = lesserUnits(withSynonyms(source.OneOf("a unit of length", "m", "ft"), otherUnits))

// keepMeasured keeps the readings of the day, and what they are readings of.
func keepMeasured(s *Scene, _ map[string]struct{}, n *source.Node) {
	s.Measured = n
	for _, k := range n.Keys {
		s.MeasuredNames = append(s.MeasuredNames, Ref{Name: k.Name, Span: k.Span})
	}
}

// laterKeys are the keys of a scene that later issues compute.
func laterKeys() []entry[Scene] {
	circuits := section[Scene, Circuit, *Circuit]{
		key: "circuits", doc: "Circuits of the house, generators, batteries.", plain: true,
		example: "{kitchen-ring: {breaker: 16, rule: 80 %}}", table: circuitTable,
		at: func(s *Scene) *[]Circuit { return &s.Circuits },
	}
	return []entry[Scene]{
		cueList().entry(),
		circuits.entry(),
		into("line", pair("a line of action", "[ada, noor]", ref("a person", "ada")),
			func(s *Scene, v [2]Ref, _ *source.Node) { s.Line = v[:] },
			"Line of action between two people, or from one at a mark: `[ada.sit, noor]`. Review tells cameras of the file that are on both sides of it.", "[ada, noor]", "none"),
		into("rates", ratesReader, func(s *Scene, v []Rate, _ *source.Node) { s.Rates = v },
			"Minutes by kind of change from one set-up to the next: "+strings.Join(term.Words(term.Works), ", ")+". A bare number is minutes. No times are printed without it, and a kind that has no rate is counted without.",
			"{move: 6, level: 1, aim: 30 s}", "none"),
		value("prices", filePath("a file", "prices.yaml"), func(s *Scene) *Given[string] { return &s.Prices },
			"A price file, from the scene's folder: `rates` for a day and `sales` by names of the kit, `days` of the hire, `currency`. The lists have what it comes to.", "prices.yaml", "none"),
		into("wants", source.ListOf("a list of wants", "[{of: ines.key, stop: T2.8}]", wantReader, 1, 200),
			func(s *Scene, v []Want, n *source.Node) { s.Wanted, s.Wants = v, n },
			"The look to balance for.", "[{of: ines.key, stop: T2.8, within: 0.2}]", "none"),
		value("haze", quantity("a haze", "0.02", numbers, between(0, 10)),
			func(s *Scene) *Given[float64] { return &s.Haze },
			"Extinction of the air, in 1/m.", "0.02", "0"),
		into("measured", namedValues("a map of readings", "{ines.key: 480 lx}", "reading", measuredValue), keepMeasured,
			"Readings from the day, by the names of the computed ones.",
			"{ines.key: 480 lx}", "none"),
	}
}
