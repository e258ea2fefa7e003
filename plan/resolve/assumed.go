package resolve

import "math"

// The defaults of the language, where a scene says nothing. Lengths in metres.
const (
	defaultHeight    = 2.5 // of a room
	defaultThickness = 0.15
	wallsReflect     = 0.5
	floorReflect     = 0.2
	ceilingReflect   = 0.8

	windowSill   = 0.9
	windowHead   = 2.1
	defaultGlass = "glass"
	doorWidth    = 0.8
	doorHead     = 2.0 // of a gap too
	leafReflect  = 0.5

	defaultMaterial = "light-wood" // of furniture

	defaultPerson  = 1.70
	eyesToCrown    = 0.11
	eyesOverSeat   = 0.75 // above what one sits on: testdata/published/people.txt, with a slump
	eyesOverBed    = 0.55 // above what one sits on, propped
	eyesCrouching  = 0.85
	eyesLying      = 0.20 // above what one lies on, face up
	clothesReflect = 0.20
	defaultFacing  = 180 // bearing of a face where there is no camera: down the sheet

	defaultSensor = "super-35"
	defaultAspect = 16.0 / 9
	eyeLevel      = 1.5 // of a lens or a card where there is nobody to look at

	defaultLampHeight = 2.0

	defaultISO      = 800.0
	defaultShutter  = 180.0 // degrees
	fpsAt50Hz       = 25.0
	fpsAt60Hz       = 24.0
	defaultStop     = 2.8 // as written; its N is exact
	defaultStopN    = 2 * math.Sqrt2
	defaultWhite    = 5600.0 // K, where no light gives one
	defaultReceptor = "dome"
)
