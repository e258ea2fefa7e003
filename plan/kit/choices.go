package kit

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// BulbChoice is what a scene says of the bulb in a practical: a name of the catalogue, or figures, in which 0 is not
// given.
type BulbChoice struct {
	Name          string
	Watts, Lumens float64 // W, lm
	Kelvin        float64 // K
	Span          source.Span
}

// ShadeChoice is what a scene says of what hangs around a bulb: a name of the catalogue, or figures, in which 0 is not
// given. The rest stays as the lamp's own shade is.
type ShadeChoice struct {
	Name                       string
	Cloth                      string
	Top, Bottom, Height        float64 // m
	Transmittance, Reflectance float64 // shares, 0 to 1
	MostWatts                  float64 // the heat that it is made for, W
	Span                       source.Span
}

// ScrimChoice are the wire scrims in a head.
type ScrimChoice struct {
	Scrims []term.Scrim
	Span   source.Span
}
