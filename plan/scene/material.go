package scene

import (
	"encoding/hex"
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// maxReflectance bounds every channel of a surface: whiter is no paint, and light between such
// walls would hardly end.
const maxReflectance = 0.98

var reflectance = quantity("a reflectance", "0.5", shares, between(0, maxReflectance))

var chromaticity = pair("a chromaticity", "[0.41, 0.39]", quantity("a chromaticity", "0.41", numbers, between(0.001, 1)))

// surfaceColour reads `[x, y]`, `"#rrggbb"` (sRGB) or a colour temperature.
var surfaceColour = either("a colour", "3600 K", ofKind(source.List),
	checked(source.Converted(chromaticity, func(xy [2]float64) MaterialColour {
		return MaterialColour{Text: fmt.Sprintf("[%s, %s]", unit.FormatNumber(xy[0]), unit.FormatNumber(xy[1])), XY: xy}
	}), checkChromaticity),
	scalar("a colour", "3600 K", map[string]any{"type": "string"}, parseSurfaceColour))

func checkChromaticity(m MaterialColour) error {
	if m.XY[0]+m.XY[1] > 1 {
		return source.Errorf(source.CodeOutOfRange, "write x, y of CIE 1931, such as [0.41, 0.39]",
			"%s is no chromaticity: its sum is over 1", m.Text)
	}
	return nil
}

func parseSurfaceColour(text string, _ *source.Node, _ *source.Context) (MaterialColour, error) {
	if strings.HasPrefix(text, "#") {
		return parseScreenColour(text)
	}
	white, err := unit.ParseKelvin(text)
	if err != nil {
		return MaterialColour{}, source.Errorf(source.CodeBadValue, `write 3600 K, [0.41, 0.39] or "#8a6040"`,
			"%q is not a colour", text)
	}
	w := colour.White{Kelvin: white.Kelvin, Duv: white.Duv, Daylight: white.Daylight}
	return MaterialColour{Text: text, XY: colour.XY(w.RGB())}, nil
}

func parseScreenColour(text string) (MaterialColour, error) {
	b, err := hex.DecodeString(text[1:])
	if err != nil || len(b) != 3 {
		return MaterialColour{}, source.Errorf(source.CodeBadValue, `write it like "#8a6040"`, "%q is not a screen colour", text)
	}
	if b[0]|b[1]|b[2] == 0 {
		return MaterialColour{}, source.Errorf(source.CodeBadValue, "leave the colour out and give a low reflectance",
			"black has no chromaticity")
	}
	rgb := colour.FromPixel(colour.Pixel{R: b[0], G: b[1], B: b[2]})
	return MaterialColour{Text: text, XY: colour.XY(rgb)}, nil
}

var materialTable = tableOf("material", "A surface by its reflectance, and its colour where it is not neutral.", nil,
	value("reflectance", reflectance, func(m *Material) *Given[float64] { return &m.Reflectance },
		"Share of the light that comes back, 0 to 0.98.", "0.62", "").needed(),
	value("colour", surfaceColour, func(m *Material) *Given[MaterialColour] { return &m.Colour },
		"Its chromaticity under D65: a colour temperature, `[x, y]`, or a screen colour in quotes.", "3600 K", "neutral"),
)

// checkMaterial refuses a reflectance that would need more than all light in one channel.
func checkMaterial(m *Material, _ *source.Node, c *source.Context) {
	if !m.Colour.Set || !m.Reflectance.Set {
		return
	}
	most := maxReflectanceOf(m.Colour.Value.XY)
	if m.Reflectance.Value <= most {
		return
	}
	allowed := unit.FormatNumber(math.Floor(most*1000) / 1000)
	c.ErrorAt(m.Reflectance.Span, CodeTooBright, "write reflectance: "+allowed+" or less",
		"a surface of colour %s reflects at most %s", m.Colour.Value.Text, allowed)
}

// maxReflectanceOf is the highest luminous reflectance of a chromaticity at which no channel of AP1 leaves
// maxReflectance.
func maxReflectanceOf(xy [2]float64) float64 {
	factor, _ := colour.ChannelFactors(xy, colour.D65(), 1)
	return maxReflectance / max(factor[0], factor[1], factor[2], 1)
}
