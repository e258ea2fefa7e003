package scene

import (
	"io"
	"slices"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Schema returns the JSON Schema (draft 2020-12) of the whole language, for editors. It is made
// of the tables that the loader reads by.
func Schema() map[string]any {
	root := sceneTable.Schema()
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "A scrimshaw scene"
	root["$defs"] = map[string]any{
		"place":  anyOf(point.Schema(), placeTable.Schema()),
		"aim":    anyOf(map[string]any{"type": numberOrText}, pointXYZ.Schema(), aimTable.Schema()),
		"mount":  anyOf(map[string]any{"enum": term.Words(term.PlainMounts)}, mountTable.Schema()),
		"change": changeSchema(),
	}
	root["$defs"].(map[string]any)[changedCues] = changeSchema()["properties"].(map[string]any)[cueList().key]
	return root
}

// changeSchema is a scene of which nothing is required, without the keys that no set-up may
// alter.
func changeSchema() map[string]any {
	change := withoutRequired(sceneTable.Schema())
	keys := change["properties"].(map[string]any)
	for _, key := range fixedKeys {
		delete(keys, key)
	}
	for _, p := range changeable() {
		section := keys[p.name()].(map[string]any)
		thing := section["additionalProperties"].(map[string]any)
		keys := thing["properties"].(map[string]any)
		byItem(keys)
		if slices.Contains(placedSections, p.name()) {
			keys["at"] = inPart(keys["at"])
		}
		if marks, ok := keys["marks"].(map[string]any); ok {
			mark := marks["additionalProperties"].(map[string]any)["properties"].(map[string]any)
			mark["at"] = inPart(mark["at"])
		}
		section["additionalProperties"] = anyOf(map[string]any{"const": source.Strike}, thing)
	}
	keys[source.Strike] = map[string]any{"type": "array", "items": map[string]any{"type": "string"}, "description": "Things to remove."}
	return change
}

// inPart is the schema of a place, or of some of its keys.
func inPart(place any) map[string]any {
	return anyOf(place, withoutRequired(placeTable.Schema()))
}

// byItem adds the keys that add to gels and take from them.
func byItem(keys map[string]any) {
	if gels, ok := keys["gels"]; ok {
		keys["+gels"], keys["-gels"] = gels, gels
	}
}

// withoutRequired is a schema whose objects need none of their keys.
func withoutRequired(schema map[string]any) map[string]any {
	own := make(map[string]any, len(schema))
	for key, value := range schema {
		if key == "required" || key == "oneOf" || key == "anyOf" && schema["properties"] != nil {
			continue
		}
		if inner, ok := value.(map[string]any); ok {
			value = withoutRequired(inner)
		}
		own[key] = value
	}
	return own
}

// referenceTable is a table that the reference prints.
type referenceTable interface{ Reference(w io.Writer) error }

// tables lists every table of the language, in the order of the reference.
func tables() []referenceTable {
	return []referenceTable{
		sceneTable, sheetTable, siteTable, exposureTable, cameraExposureTable, materialTable,
		roomTable, slopeTable, openingTable, dressingTable, outsideTable, furnitureTable,
		personTable, markTable, cameraTable, lightTable, kit.OutputShape(), placeTable, aimTable, mountTable,
		doorTable, cutTable, breakupTable, bulbTable, shadeTable, standInTable, playTable, dimmerTable,
		gripTable, meterTable, setupTable, reverseTable, cueTable, cueLightTable, circuitTable, wantTable,
	}
}

// Reference writes the reference of the language in Markdown, a table for each kind of map. It is
// made of the tables that the loader reads by.
func Reference(w io.Writer) error {
	for i, t := range tables() {
		if i > 0 {
			if _, err := io.WriteString(w, "\n"); err != nil {
				return err
			}
		}
		if err := t.Reference(w); err != nil {
			return err
		}
	}
	return nil
}
