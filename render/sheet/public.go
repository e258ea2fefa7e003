package sheet

import (
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/section"
)

// What a sheet is drawn from and in, as it stands in the packages below.
type (
	// Input is one set-up with its results: all that a sheet says.
	Input = section.Input
	// Face is what the meter says at one person's face.
	Face = section.Face
	// Field is illuminance over the plan, lx.
	Field = section.Field
	// Beam is the light of one lamp in plan, cut by what it meets.
	Beam = section.Beam
	// Rim is a piece of the rim of what a projection spot throws.
	Rim = section.Rim
	// Bounce is the way of a light off a surface to a face.
	Bounce = section.Bounce
	// View is what a camera sees in plan, cut by what it meets.
	View = section.View
	// Cloth is what the cloth of a piece of grip does to light.
	Cloth = section.Cloth
	// Elevation asks for a wall in place of the plan.
	Elevation = section.Elevation
	// Theme is a look as data.
	Theme = draw.Theme
)

// ThemeNames lists the looks, the default first.
func ThemeNames() []string { return draw.ThemeNames() }
