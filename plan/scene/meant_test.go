package scene

import (
	"slices"
	"testing"
)

// TestWordsMeantAreKeys: a word that a table offers a key for is no key of that table, and what it offers is one.
func TestWordsMeantAreKeys(t *testing.T) {
	for _, c := range []struct {
		keys  []string
		words map[string]string
	}{{cameraTable.Keys(), otherCameraKeys}, {lightTable.Keys(), otherLightKeys}, {personTable.Keys(), otherPersonKeys}, {setupTable.Keys(), otherSetupKeys},
		{furnitureTable.Keys(), otherFurnitureKeys}, {gripTable.Keys(), otherGripKeys}, {openingTable.Keys(), otherOpeningKeys}, {meterTable.Keys(), otherMeterKeys},
		{roomTable.Keys(), otherRoomKeys}, {exposureTable.Keys(), otherExposureKeys}, {circuitTable.Keys(), otherCircuitKeys}} {
		for word, key := range c.words {
			if slices.Contains(c.keys, word) || !slices.Contains(c.keys, key) {
				t.Errorf("%q is offered for %q: the keys are %q", key, word, c.keys)
			}
		}
	}
}
