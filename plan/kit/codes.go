package kit

// The codes of the faults that this package finds, beside those of package source.
const (
	CodeUnknownUnit     = "unknown-unit"
	CodeUnknownModifier = "unknown-modifier"
	CodeUnknownGel      = "unknown-gel"
	CodeUnknownEntry    = "unknown-kit"  // an entry of the catalogue that names another which is not there
	CodeNoFit           = "no-fit"       // a modifier that does not go on this unit
	CodeWhiteRange      = "white-range"  // a white that the unit cannot be set to
	CodeLevelRange      = "level-range"  // a level that the unit cannot be set to
	CodeTintRange       = "tint-range"   // a tint that the unit cannot be set to
	CodeGelGamut        = "gel-gamut"    // a gel stack whose colour was brought to the edge of AP1, or whose white was held
	CodeNoZoom          = "no-zoom"      // warning: a focus where the catalogue has no figures by focus
	CodeNearestZoom     = "nearest-zoom" // a focus between those that the catalogue has figures of
	CodeImplausible     = "implausible"  // warning: an entry of a kit file that no lamp is like
	CodeOutput          = "output"       // keys of an output that do not go together
	CodeNoBulb          = "no-bulb"      // a bulb or a shade on a unit that has no bulb
	CodeNoDoors         = "no-doors"     // barn doors on what takes none
	CodeNoScrims        = "no-scrims"    // scrims in what takes none
	CodeBulb            = "bulb"         // a bulb that no one can make
	CodeKit             = "kit"          // an entry of the catalogue whose values do not go together
	CodeKitVersion      = "kit-version"  // a kit file for another version of the language
)
