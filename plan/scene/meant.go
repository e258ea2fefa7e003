package scene

import (
	"strings"

	"scrimshaw/plan/source"
)

// withSynonyms reads as r does, and where a word is refused offers the one that it stands for: people
// know the trade by more words than the language has.
func withSynonyms[V any](r source.Reader[V], meant map[string]string) source.Reader[V] {
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) (V, bool) {
		word, known := meant[strings.ToLower(n.Text)]
		if n.Kind != source.Scalar || !known {
			return read(n, c)
		}
		outer, inner := c.Log, &source.Log{}
		c.Log = inner
		v, ok := read(n, c)
		c.Log = outer
		for _, d := range inner.All() {
			d.Hint = `did you mean "` + word + `"?`
			outer.Add(d)
		}
		return v, ok
	}
	return r
}

// meant lets a table offer the keys that other words stand for. The words are in small letters.
func (t *table[T]) meant(keys map[string]string) *table[T] {
	t.Meant = keys
	return t
}

// alone lets a table offer the key that a value was meant for which stands in place of the map.
func (t *table[T]) alone(key func(text string) string) *table[T] {
	t.Alone = key
	return t
}

// lightAlone is the key of a light that is written as a cue writes one: key: off, key: 40 %.
func lightAlone(text string) string {
	if text == "off" || strings.HasSuffix(text, "%") {
		return "level"
	}
	return ""
}

// lesserUnits explains how to write lengths in units that a whole file cannot be in.
func lesserUnits(r source.Reader[string]) source.Reader[string] {
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) (string, bool) {
		file, example := "m", ""
		switch word := strings.ToLower(n.Text); word {
		case "cm", "mm", "centimetres", "centimeters", "millimetres", "millimeters":
			example = "240 cm"
		case "in", "inch", "inches", "\"":
			file, example = "ft", "94 in"
		}
		if n.Kind != source.Scalar || example == "" {
			return read(n, c)
		}
		c.Error(n, source.CodeUnknownWord, "write units: "+file+", and give other lengths their unit: "+example,
			"a file's lengths are in m or ft, not %q", n.Text)
		return "", false
	}
	return r
}

// Other words for those of the language, in small letters.
var (
	otherUnits = map[string]string{
		"metre": "m", "metres": "m", "meter": "m", "meters": "m", "metric": "m",
		"foot": "ft", "feet": "ft", "imperial": "ft", "'": "ft",
	}
	otherPoses = map[string]string{
		"sitting": "seated", "sit": "seated", "sits": "seated", "stand": "standing", "stands": "standing",
		"reclining": "propped", "lie": "lying", "lies": "lying", "kneeling": "crouching", "squatting": "crouching",
	}
	otherRoles = map[string]string{
		"keylight": "key", "fill-light": "fill", "back": "edge", "backlight": "edge", "back light": "edge", "rim": "edge",
		"kicker": "edge", "practical": "motivation", "eyelight": "eye", "hairlight": "hair",
	}
	otherDirections = map[string]string{"east": "right", "west": "left", "north": "up", "south": "down"}
)

// Other words for the keys of a thing, in small letters.
var (
	otherCameraKeys = map[string]string{
		"aim": "looks", "sees": "looks", "on": "looks", "target": "looks", "subject": "looks", "toward": "looks", "faces": "looks", "pan": "looks",
		"focal": "lens", "focal-length": "lens", "mm": "lens", "gate": "sensor", "format": "sensor", "ratio": "aspect", "frame": "aspect",
		"dolly": "track", "rails": "track", "moves": "track", "anamorphic": "squeeze", "safety": "room", "margin": "room",
		"nd":       "filter",
		"position": "at", "pos": "at", "place": "at", "where": "at", "z": "height", "eye": "height",
	}
	otherLightKeys = map[string]string{
		"looks": "aim", "target": "aim", "toward": "aim", "faces": "aim", "points": "aim", "pan": "aim",
		"head": "unit", "lamp": "unit", "fixture": "unit", "kind": "unit", "type": "unit", "softbox": "modifier", "box": "modifier", "reflector": "modifier",
		"dim": "level", "intensity": "level", "power": "level", "percent": "level", "cct": "colour", "kelvin": "colour", "temperature": "colour",
		"zoom": "focus", "flood": "focus", "spot": "focus", "doors": "barndoors", "silk": "diffusion", "cloth": "diffusion", "frost": "diffusion",
		"position": "at", "pos": "at", "place": "at", "where": "at", "z": "height", "holder": "mount", "purpose": "role",
	}
	otherSetupKeys = map[string]string{
		"scene": "sequence", "seq": "sequence", "continuity": "sequence", "cuts-with": "sequence", "matches": "sequence", "cut": "sequence",
		"from": "after", "follows": "after", "base": "after", "mirror": "reverse", "mirrors": "reverse", "freeze": "stays", "keeps": "stays", "view": "camera",
	}
	otherPersonKeys = map[string]string{
		"looks": "faces", "facing": "faces", "toward": "faces", "aim": "faces", "sits": "pose", "posture": "pose", "eyeline": "eyes",
		"clothes": "wears", "costume": "wears", "complexion": "skin", "path": "walk", "position": "at", "pos": "at", "place": "at", "where": "at", "tall": "height",
	}
	otherFurnitureKeys = map[string]string{
		"height": "lift", "z": "lift", "underside": "lift", "faces": "turn", "rotate": "turn", "rotation": "turn", "angle": "turn", "pan": "turn",
		"surface": "material", "colour": "material", "color": "material", "finish": "material", "wall": "at", "position": "at", "pos": "at", "place": "at", "where": "at",
	}
	otherGripKeys = map[string]string{
		"aim": "faces", "looks": "faces", "facing": "faces", "toward": "faces", "pan": "faces", "turn": "faces", "lift": "height", "z": "height",
		"material": "surface", "colour": "surface", "color": "surface", "diffusion": "cloth", "fabric": "cloth", "silk": "cloth", "holder": "mount",
		"position": "at", "pos": "at", "place": "at", "where": "at",
	}
	otherOpeningKeys = map[string]string{
		"height": "head", "top": "head", "bottom": "sill", "at": "along", "position": "along", "offset": "along", "opens": "swing", "open": "ajar",
		"curtain": "dressing", "curtains": "dressing", "blind": "dressing", "blinds": "dressing", "drapes": "dressing", "cloth": "dressing",
		"gel": "gels", "glazing": "glass", "pane": "panes", "exit": "escape", "way-out": "escape",
	}
	otherMeterKeys = map[string]string{
		"aim": "facing", "looks": "facing", "faces": "facing", "toward": "facing", "camera": "from", "at": "flat", "incident": "dome", "luminance": "spot",
	}
	otherRoomKeys = map[string]string{
		"paint": "walls", "material": "walls", "thickness": "wall", "width": "size", "depth": "size", "dimensions": "size", "polygon": "corners", "points": "corners",
		"level": "base", "elevation": "base", "roof": "ceiling", "origin": "at", "position": "at", "pos": "at", "place": "at", "where": "at", "offset": "at",
	}
	otherExposureKeys = map[string]string{
		"aperture": "stop", "f-stop": "stop", "t-stop": "stop", "asa": "iso", "ei": "iso", "wb": "white", "white-balance": "white", "kelvin": "white",
		"latitude": "range", "dynamic-range": "range", "framerate": "fps", "frame-rate": "fps", "angle": "shutter",
	}
	otherCircuitKeys = map[string]string{
		"fuse": "breaker", "amps": "breaker", "rating": "breaker", "voltage": "volts", "watts": "power", "load": "already", "feed": "from", "fed-by": "from", "parent": "from",
		"type": "kind", "rcd": "residual", "gfci": "residual", "fuel": "tank", "frequency": "hertz", "outlet": "at", "position": "at", "connector": "plug",
	}
)
