package section

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// Fields are what the scene says of its sheet.
type Fields struct{ Production, Location, Revision, Crew, By, Date string }

// FieldsOf are those of a set-up; the date is that of the options where the scene gives none.
func FieldsOf(setup *plan.Setup, date string) Fields {
	var s scene.Sheet
	if setup.Scene != nil {
		s = setup.Scene.Sheet
	}
	return Fields{s.Production.Value, s.Location.Value, s.Revision.Value, s.For.Value, s.By.Value, s.Date.Or(date)}
}

// TitleOf is the title of a set-up, or what stands for one.
func TitleOf(s *plan.Setup) string {
	if t := strings.TrimSpace(s.Title); t != "" {
		return t
	}
	return "Lighting plan"
}

// SetupLine names the set-up, and the wall where the sheet is of one.
func SetupLine(in *Input) string {
	words := ""
	if n := in.Setup.Name; n != "" {
		words = "Set-up " + n
	}
	if room, wall, ok := in.Wall(); ok {
		words = Joined(", ", words, "wall "+room.Name+"."+wall.Name+" from inside")
		words = ink.Capital(words)
	}
	return words
}

// HeadLines stand below the name of a set-up: which set-ups it is cut together with, and how its cameras are set.
func HeadLines(s *plan.Setup) []string {
	return append(NonEmpty(Prefixed("Sequence ", s.Sequence)), ExposureLines(s)...)
}

// WorkingStop prints the working stop as it was written.
func WorkingStop(s *plan.Setup) string {
	return "T" + unit.FormatNumber(s.Exposure.Stop.Written)
}

// ExposureLines say what the camera is set to, and the constant of the meter that stops follow.
func ExposureLines(s *plan.Setup) []string {
	x := s.Exposure
	if !(x.Stop.N > 0) {
		return nil
	}
	film := []string{"Working stop " + WorkingStop(s), "ISO " + unit.FormatNumber(x.ISO)}
	camera := []string{unit.FormatNumber(x.FPS) + " fps"}
	if x.Degrees > 0 {
		camera = append(camera, unit.FormatAngle(x.Degrees))
	}
	if x.Seconds > 0 {
		camera = append(camera, unit.FormatShutter(unit.Shutter{Seconds: x.Seconds}))
	}
	if white := x.SetTo(); white.Kelvin > 0 {
		film = append(film, "white "+unit.FormatKelvin(white.Kelvin))
	}
	camera = append(camera, fmt.Sprintf("%s meter, C = %s", x.Meter, unit.FormatNumber(x.Constant)))
	return NonEmpty(strings.Join(film, ", "), strings.Join(camera, ", "), ink.Capital(filterWords(&x)), Joined(" ", strings.Join(When(x.Range.Known(), "Camera"), ""), rangeWords(&x)))
}
