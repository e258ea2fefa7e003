package scene

import (
	"strconv"

	"scrimshaw/plan/source"
)

// languageVersion is the version of the language that this package reads.
const languageVersion = 1

// sceneTable is the whole language.
var sceneTable = tableOf("scene", "A scene to light. Lengths that are bare numbers are in its `units`.", nil, rootKeys()...)

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
		section[Scene, Material]{"materials", "Surfaces, by their names.", "{limewash: {reflectance: 0.62}}", materialTable,
			func(s *Scene) *[]Material { return &s.Materials }, func(v *Material) *Thing { return &v.Thing }, checkMaterial},
		section[Scene, Room]{"rooms", "Rooms. A scene without rooms is open ground.", "{kitchen: {size: [3.6, 3.1]}}", roomTable,
			func(s *Scene) *[]Room { return &s.Rooms }, func(v *Room) *Thing { return &v.Thing }, checkRoom},
		section[Scene, Opening]{"openings", "Windows, doors and gaps.", "{street: {window: kitchen.left, width: 1.4}}", openingTable,
			func(s *Scene) *[]Opening { return &s.Openings }, func(v *Opening) *Thing { return &v.Thing }, checkOpening},
		section[Scene, Furniture]{"furniture", "Solid things that stand in the scene.", "{desk: {table: [1.6, 0.8, 0.75], at: [2.9, 2.6]}}", furnitureTable,
			func(s *Scene) *[]Furniture { return &s.Furniture }, func(v *Furniture) *Thing { return &v.Thing }, checkFurniture},
		section[Scene, Person]{"people", "Who is in the scene.", "{ruth: {at: [1.2, 2.0], pose: seated}}", personTable,
			func(s *Scene) *[]Person { return &s.People }, func(v *Person) *Thing { return &v.Thing }, checkPerson},
		section[Scene, Camera]{"cameras", "The cameras.", "{A: {at: [3.3, 0.5], lens: 32 mm}}", cameraTable,
			func(s *Scene) *[]Camera { return &s.Cameras }, func(v *Camera) *Thing { return &v.Thing }, nil},
		section[Scene, Light]{"lights", "The lights.", "{day: {unit: led-point-600-bicolour, at: {opening: street, out: 2.4}}}", lightTable,
			func(s *Scene) *[]Light { return &s.Lights }, func(v *Light) *Thing { return &v.Thing }, nil},
		section[Scene, Grip]{"grip", "Flags, cards, frames, nets, silver boards.", "{black: {flag: [1.2, 1.2], at: [2.0, 1.0]}}", gripTable,
			func(s *Scene) *[]Grip { return &s.Grip }, func(v *Grip) *Thing { return &v.Thing }, nil},
		section[Scene, Meter]{"meters", "Named readings.", "{desk-top: {flat: [2.9, 2.5, 0.76], facing: up}}", meterTable,
			func(s *Scene) *[]Meter { return &s.Meters }, func(v *Meter) *Thing { return &v.Thing }, checkMeter},
	}
}

// setupList is the list of set-ups.
func setupList() entry[Scene] {
	return section[Scene, Setup]{"setups", "Set-ups, each a change of the scene or of another set-up.",
		"{wide: {camera: A}, close: {camera: A, after: wide}}", setupTable,
		func(s *Scene) *[]Setup { return &s.Setups }, func(v *Setup) *Thing { return &v.Thing }, nil}.entry()
}

var versionKind = version()

// version reads the number that every scene starts with.
func version() source.Reader[int] {
	read := func(text string, _ *source.Node, _ *source.Context) (int, error) {
		v, err := strconv.Atoi(text)
		if err != nil || v != languageVersion {
			return 0, troublef(CodeVersion, "write scrimshaw: 1",
				"this is language version %q, and version %d is read here", text, languageVersion)
		}
		return v, nil
	}
	return scalar("a language version", "1", map[string]any{"const": languageVersion}, read)
}

var unitsKind = source.OneOf("a unit of length", "m", "ft")

// kitPaths reads the files of more kit.
var kitPaths = oneOrMore("a list of kit files", "[lamps.yaml]", kitPath(), 50)

func kitPath() source.Reader[Given[string]] {
	name := text("a file", "lamps.yaml")
	return source.Reader[Given[string]]{What: name.What, Like: name.Like, Schema: name.Schema,
		Read: func(n *source.Node, c *source.Context) (Given[string], bool) {
			v, ok := name.Read(n, c)
			return Given[string]{V: v, Set: ok, Span: n.Span}, ok
		}}
}
