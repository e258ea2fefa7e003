package kit

import (
	"strings"

	"scrimshaw/plan/source"
)

// has reports whether the output states a key.
func (o *Output) has(key string) bool {
	switch key {
	case "face":
		return o.Face != nil
	case "shape", "ies", "ldt":
		return map[string]string{"shape": o.Shape, "ies": o.IES, "ldt": o.LDT}[key] != ""
	}
	return map[string]float64{
		"lux": o.Lux, "distance": o.Distance, "candela": o.Candela, "lumens": o.Lumens, "luminance": o.Luminance,
		"beam": o.Beam, "field": o.Field, "disc": o.Disc, "tube": o.Tube, "sphere": o.Sphere,
	}[key] > 0
}

// given lists those of keys that the output states.
func (o *Output) given(keys ...string) (names []string) {
	for _, key := range keys {
		if o.has(key) {
			names = append(names, key)
		}
	}
	return names
}

// check logs what does not go together in an output whose keys could all be read, and whether
// nothing was found. alone: it has to say how its light is spread.
func (o *Output) check(n *source.Node, c *source.Context, alone bool) bool {
	code, hint, message := o.firstFault(alone)
	if message == "" {
		return true
	}
	c.ErrorAt(c.Here(n), code, hint, "%s", message)
	return false
}

// firstFault is the first thing wrong with the output, or "".
func (o *Output) firstFault(alone bool) (code, hint, message string) {
	openings := o.given("face", "disc", "tube", "sphere")
	spreads := o.given("beam", "shape")
	file := o.IES != "" || o.LDT != ""
	switch {
	case o.Lux > 0 && o.Distance == 0:
		return source.CodeMissingKey, "add distance: 3 m", "lux says nothing without the distance it was measured at"
	case o.Distance > 0 && o.Lux == 0:
		return CodeOutput, "leave distance out", "distance goes with lux only"
	case o.Field > 0 && o.Beam == 0:
		return source.CodeMissingKey, "add beam: 55", "a field angle needs its beam angle"
	case o.Field > 0 && o.Field <= o.Beam:
		return CodeOutput, "", "the field angle, to 10 %, must be wider than the beam angle, to 50 %"
	case len(openings) > 1:
		return CodeOutput, "keep one of them", "an output has one opening, not " + strings.Join(openings, " and ")
	case len(spreads) > 1:
		return CodeOutput, "keep one of them", "a beam angle and a shape both say how the light is spread"
	case o.Shape != "" && len(openings) > 0:
		return CodeOutput, "leave shape out", "a shape is of a point; a " + openings[0] + " spreads light its own way"
	case o.Tube > 0 && o.Beam > 0, o.Sphere > 0 && o.Beam > 0:
		return CodeOutput, "leave beam out", "a " + openings[0] + " shines all round and has no beam angle"
	case o.Luminance > 0 && len(o.given("face", "disc", "sphere")) == 0:
		return source.CodeMissingKey, "add face: [1.2, 1.2]", "a luminance needs a face, a disc or a sphere that has it"
	case o.Luminance > 0 && o.Beam > 0:
		return CodeOutput, "leave beam out", "a luminance is the same from everywhere, and has no beam angle"
	case file && len(o.given("distance", "beam", "shape", "face", "disc", "tube", "sphere")) > 0:
		return CodeOutput, "leave the rest out", "a photometric file says everything by itself"
	case alone && !file && len(openings)+len(spreads) == 0:
		return source.CodeMissingKey, "add beam: 55, or shape: uniform", "the output does not say how its light is spread"
	}
	return "", "", ""
}
