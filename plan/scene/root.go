package scene

import (
	"strconv"

	"scrimshaw/plan/source"
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
			exposureTable.Doc, "{iso: 800, stop: T2.8}", "ISO 800, 180°, T2.8"),
	}
	for _, p := range parts() {
		keys = append(keys, p.entry())
	}
	keys = append(keys, setupList())
	return append(keys, laterKeys()...)
}

// parts are the maps of named things.
func parts() []part {
	return []part{
		section[Scene, Material, *Material]{
			key: "materials", doc: "Surfaces, by their names.", example: "{limewash: {reflectance: 0.62}}",
			table: materialTable, at: func(s *Scene) *[]Material { return &s.Materials }, check: checkMaterial,
		},
		section[Scene, Room, *Room]{
			key: "rooms", doc: "Rooms. A scene without rooms is open ground.", example: "{kitchen: {size: [3.6, 3.1]}}",
			table: roomTable, at: func(s *Scene) *[]Room { return &s.Rooms }, check: checkRoom,
		},
		section[Scene, Opening, *Opening]{
			key: "openings", doc: "Windows, doors and gaps.", example: "{street: {window: kitchen.left, width: 1.4}}",
			table: openingTable, at: func(s *Scene) *[]Opening { return &s.Openings }, check: checkOpening,
		},
		section[Scene, Furniture, *Furniture]{
			key: "furniture", doc: "Solid things that stand in the scene.", example: "{desk: {table: [1.6, 0.8, 0.75], at: [2.9, 2.6]}}",
			table: furnitureTable, at: func(s *Scene) *[]Furniture { return &s.Furniture }, check: checkFurniture,
		},
		section[Scene, Person, *Person]{
			key: "people", doc: "Who is in the scene.", example: "{ruth: {at: [1.2, 2.0], pose: seated}}",
			table: personTable, at: func(s *Scene) *[]Person { return &s.People }, check: checkPerson,
		},
		section[Scene, Camera, *Camera]{
			key: "cameras", doc: "The cameras.", example: "{A: {at: [3.3, 0.5], lens: 32 mm}}",
			table: cameraTable, at: func(s *Scene) *[]Camera { return &s.Cameras },
		},
		section[Scene, Light, *Light]{
			key: "lights", doc: "The lights.", example: "{day: {unit: led-point-600-bicolour, at: {opening: street, out: 2.4}}}",
			table: lightTable, at: func(s *Scene) *[]Light { return &s.Lights },
		},
		section[Scene, Grip, *Grip]{
			key: "grip", doc: "Flags, cards, frames, nets, silver boards.", example: "{black: {flag: [1.2, 1.2], at: [2.0, 1.0]}}",
			table: gripTable, at: func(s *Scene) *[]Grip { return &s.Grip },
		},
		section[Scene, Meter, *Meter]{
			key: "meters", doc: "Named readings.", example: "{desk-top: {flat: [2.9, 2.5, 0.76], facing: up}}",
			table: meterTable, at: func(s *Scene) *[]Meter { return &s.Meters }, check: checkMeter,
		},
	}
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
			return 0, troublef(CodeVersion, "write scrimshaw: 1",
				"this is language version %q, and version %d is read here", text, languageVersion)
		}
		return languageVersion, nil
	}
	return scalar("a language version", own, map[string]any{"enum": []any{languageVersion, own}}, read)
}

var unitsKind = lesserUnits(offering(source.OneOf("a unit of length", "m", "ft"), otherUnits))

// kitPaths reads the files of more kit.
var kitPaths = oneOrMore("a list of kit files", "[lamps.yaml]", kitPath(), 50)

func kitPath() source.Reader[Given[string]] {
	name := filePath("a file", "lamps.yaml")
	return source.Reader[Given[string]]{What: name.What, Like: name.Like, Schema: name.Schema,
		Read: func(n *source.Node, c *source.Context) (Given[string], bool) {
			v, ok := name.Read(n, c)
			return Given[string]{V: v, Set: ok, Span: n.Span}, ok
		}}
}
