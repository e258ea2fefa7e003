package section

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
)

// Lit says whether a reading found light.
func Lit(r *meter.Reading) bool { return r != nil && r.Lux != nil && *r.Lux > 0 }

// shortPost names a camera, or one at the end of its track, where there is little room: "A end".
func shortPost(post string) string {
	if camera := plan.CameraOf(post); camera != post {
		return camera + " end"
	}
	return post
}

// towardOf is the camera that a dome is turned to, by the name of the reading: "A.end" of "ada.sit.dome.A.end".
func towardOf(dome string) string {
	_, camera, _ := strings.Cut(dome, ".dome.")
	return camera
}

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// over prints stops over the working stop.
func over(stops *float64) string {
	if stops == nil {
		return "–"
	}
	return signed(unit.FormatStops(*stops))
}

// overTenths prints stops over the working stop for a column, all to a tenth.
func overTenths(stops *float64) string {
	if stops == nil {
		return "–"
	}
	s := fmt.Sprintf("%+.1f", *stops)
	if s == "+0.0" || s == "-0.0" {
		s = "0.0"
	}
	return signed(s)
}

// tenths prints a figure to a tenth; nothing has no sign.
func tenths(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10+0, 'f', 1, 64) }
