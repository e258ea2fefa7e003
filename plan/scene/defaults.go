package scene

import (
	"fmt"
	"math"
	"strconv"

	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// The defaults of the language, where a scene says nothing: numbers for package resolve, and the words of the
// tables are made from them. Lengths in metres.
const (
	DefaultRoomHeight    float64 = 2.5
	DefaultWallThickness float64 = 0.15

	DefaultWallReflectance    float64 = 0.5
	DefaultFloorReflectance   float64 = 0.2
	DefaultCeilingReflectance float64 = 0.8
	DefaultLeafReflectance    float64 = 0.5
	DefaultClothesReflectance float64 = 0.20

	DefaultWindowSill float64 = 0.9
	DefaultWindowHead float64 = 2.1
	DefaultDoorWidth  float64 = 0.8
	DefaultDoorHead   float64 = 2.0 // of a gap too
	DefaultGlass              = "glass"

	DefaultCurtainIn       float64 = 0.08 // before the wall
	DefaultCurtainLap      float64 = 0.10 // past the sides, the head and the sill of its opening
	DefaultSlatReflectance float64 = 0.6

	DefaultFurnitureMaterial = "light-wood"
	DefaultFlag              = "black" // the surface of a flag, and so on
	DefaultCard              = "white"
	DefaultSilver            = "silver"
	DefaultMirror            = "mirror"
	DefaultNet               = "net-single"

	DefaultPersonHeight float64 = 1.70
	EyesToCrown         float64 = 0.11 // standing
	EyesOverSeat        float64 = 0.75 // above what one sits on: testdata/published/people.txt, with a slump
	EyesOverBed         float64 = 0.55 // above what one sits on, propped
	EyesCrouching       float64 = 0.85
	EyesLying           float64 = 0.20 // above what one lies on, face up
	SeatHeight          float64 = 0.45 // of a chair that nobody draws: someone sits on it who is on no piece of furniture
	BedHeight           float64 = 0.50 // of a bed that nobody draws, under someone propped
	DefaultFacing       float64 = 180  // bearing of a face where there is no camera: down the sheet

	DefaultSensor           = "super-35"
	DefaultEyeLevel float64 = 1.5 // of a lens or a card where there is nobody to look at

	DefaultFootprint  float64 = 1.0 // of a stand that nobody names, across its legs: common practice
	DefaultLampHeight float64 = 2.0
	DefaultLevel      float64 = 1 // share of the full output
	DefaultFocus              = term.Flood
	DefaultGrain      float64 = 0.1 // of the width of the image
	DefaultSeed               = 1

	DefaultFeed         = term.Mains
	DefaultRule float64 = 1 // share of a breaker

	// DefaultUsable is the share of a battery's energy that gets to the lights: it is not run flat, and an inverter keeps some. Common practice.
	DefaultUsable float64 = 0.8

	DefaultISO      float64 = 800
	DefaultShutter  float64 = 180 // degrees
	FPSAt50Hz       float64 = 25
	FPSAt60Hz       float64 = 24
	DefaultStop     float64 = 2.8 // as written; its N is exact
	DefaultStopN    float64 = 2 * math.Sqrt2
	DefaultWhite    float64 = 5600 // K, where no light gives one
	DefaultReceptor         = term.DomeMeter

	DefaultAspect float64 = 16.0 / 9
)

// inMetres words a default length with as many decimals as are said of it.
func inMetres(v float64, decimals int) string {
	return strconv.FormatFloat(v, 'f', decimals, 64) + " m"
}

// inGrey words the default of a surface.
func inGrey(reflectance float64) string {
	return "a grey of reflectance " + unit.FormatNumber(reflectance)
}

// defaultEyes words how high eyes are by the pose.
func defaultEyes() string {
	return fmt.Sprintf("%s below the crown standing; %s above the seat seated, %s where nothing is under one; %s above the bed propped, %s",
		inMetres(EyesToCrown, 2), inMetres(EyesOverSeat, 2), inMetres(SeatHeight+EyesOverSeat, 2), inMetres(EyesOverBed, 2), inMetres(BedHeight+EyesOverBed, 2))
}
