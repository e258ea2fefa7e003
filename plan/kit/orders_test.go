package kit_test

import (
	"slices"
	"testing"

	"scrimshaw/plan/kit"
)

// Ordinary orders for small shoots can be written with names of the catalogue alone.
func TestOrdersCanBeWritten(t *testing.T) {
	c := shipped(t)
	held := slices.Concat(kit.Names(c.Units), kit.Names(c.Modifiers), kit.Names(c.Stands), kit.Names(c.Grip), kit.Names(c.Items), kit.Names(c.Cloth), kit.Names(c.Bulbs))
	for order, names := range map[string][]string{
		"an interview of two": {"flex-mat-60x60", "mat-box-60x60", "led-fresnel-60-bicolour", "pocket-led-10", "light-stand", "c-stand", "grip-head", "grip-arm-100",
			"flag-60x45", "net-60x45", "card-100x70", "sandbag-7", "cable-16a-10", "splitter-3", "battery-14v-98", "charger-14v-4", "gaffer-tape"},
		"a day interior through its windows": {"discharge-1200", "discharge-lensed-575", "lens-wide", "led-point-600-bicolour", "softbox-120", "grid-40", "tall-combo-stand", "wind-up-stand",
			"frame-240x240", "frame-ears", "full-diffusion", "muslin", "card-240x120", "board-holder", "sandbag-12", "cable-32a-25", "splitter-32-2x16", "cable-16a-heavy-25",
			"residual-current-16a", "gel-roll", "safety-60", "big-grip-head"},
		"a night interior on its own lamps": {"fresnel-tungsten-300", "fresnel-tungsten-150", "led-tube-60", "tube-kit-4x60", "bulb-kit", "dimmer-300", "dimmer-1000", "snoot", "scrim-set",
			"black-foil", "black-cloth", "drape-black", "stud-clamp", "scissor-clamp", "wall-plate", "thread-stud", "cable-16a-5", "apple-quarter", "wedges"},
		"a product on a table": {"profile-led-150", "profile-lens-20", "led-point-300-daylight", "octabox-90", "honeycomb-30", "reflector-medium", "low-c-stand", "boom-arm", "boom-stand",
			"silver-50x50", "finger-35x5", "dot-15", "dot-net-15", "double-net-60x45", "bend-arm", "floor-plate", "apple-full", "pegs"},
		"a street without mains": {"led-point-150-bicolour", "led-point-60-bicolour", "soft-panel-200", "battery-26v-270", "battery-48v-600", "battery-mains-2000", "generator-2000", "lantern-100",
			"tarpaulin", "cable-ramp", "ballast-hook", "tall-light-stand", "silver-100x100", "floppy-120x120", "ratchet-strap", "gloves", "circuit-tester"},
		"two people at a table by a window": {"led-point-600-bicolour", "fresnel-lens", "lens-doors", "reflector-narrow", "frame-180x180", "frame-cloth-180", "combo-stand", "frame-ears",
			"softbox-120x90", "grid-50", "flex-mat-60x30", "mat-box-60x30", "floppy-120x120", "c-stand", "apple-half", "cart", "cable-16a-heavy-10", "splitter-blue-3", "sandbag-12"},
		"a bedroom at night": {"practical-table", "practical-floor", "lined-shade-35", "bulb-kit", "dimmer-300", "pocket-led-10", "led-tube-120", "tube-grid", "soft-panel-200", "grid-30", "ceiling-pole",
			"stud-clamp", "wireless-control", "drape-black", "step-ladder", "cable-16a-5"},
		"daylight through two windows": {"discharge-1200", "discharge-575", "spare-lamp", "head-cable-7", "frame-240x240", "frame-cloth-240", "wind-up-stand", "rolling-stand", "light-grid-cloth", "gel-roll",
			"distribution-32a", "cable-three-phase-32a-25", "cable-ramp", "safety-100", "ratchet-strap", "circuit-tester"},
		"a car park on batteries": {"led-point-300-bicolour", "lantern-90", "skirt", "soft-panel-400", "battery-48v-600", "charger-48v-2", "battery-26v-270", "charger-26v-2", "tall-combo-stand", "boom-arm",
			"tarpaulin", "gloves", "frame-360x360", "frame-cloth-360"},
		"a kitchen on mains of 120 V": {"fresnel-tungsten-650", "fresnel-tungsten-300", "scrim-set", "tungsten-60-120v", "led-806", "cable-20a-8", "cable-20a-15", "splitter-20a-3", "distribution-60a-120v",
			"net-60x45", "dot-25", "blade-30x10", "silver-100x100", "wedges", "black-foil", "fire-blanket", "frame-cloth-120"},
	} {
		for _, name := range names {
			if !slices.Contains(held, name) {
				t.Errorf("%s: the catalogue has no %s", order, name)
			}
		}
	}
}
