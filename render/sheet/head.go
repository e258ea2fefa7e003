package sheet

import (
	"fmt"
	"strings"

	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// head is what stands first in the collar: title, set-up and exposure, as rows.
func (c *composer) head(grand bool) []row {
	title := c.p.style(capTitle, c.p.look.Ink).strong()
	if grand {
		title.cap = capGrand
	}
	var rows []row
	for _, l := range c.set(c.title(), title, measure, 3) {
		rows = append(rows, lettered(l, title, title.cap*1.7))
	}
	rows = append(rows, space(1.4))
	if s := c.setupLine(); s != "" {
		for _, l := range c.set(s, c.p.name(), measure, 2) {
			rows = append(rows, lettered(l, c.p.name(), capName*2.1))
		}
	}
	for _, s := range c.exposureLines() {
		for _, l := range c.set(s, c.p.quiet(), measure, 2) {
			rows = append(rows, lettered(l, c.p.quiet(), c.p.quiet().leading()))
		}
	}
	return rows
}

// lettered is a row of one line.
func lettered(s string, st style, h float64) row {
	return row{height: h, draw: func(p pad, x, top float64) { p.text(at(x, top-st.cap), s, st, ink.Left) }}
}

func heightOf(rows []row) float64 {
	h := 0.0
	for _, r := range rows {
		h += r.height
	}
	return h
}

func (c *composer) title() string {
	if t := strings.TrimSpace(c.in.Setup.Title); t != "" {
		return t
	}
	return "Lighting plan"
}

func (c *composer) setupLine() string {
	words := ""
	if n := c.in.Setup.Name; n != "" {
		words = "Set-up " + n
	}
	if f, ok := c.onWall(); ok {
		words = joined(", ", words, "wall "+f.name+" from inside")
		words = strings.ToUpper(words[:1]) + words[1:]
	}
	return words
}

// workingStop prints the working stop as it was written.
func (c *composer) workingStop() string {
	return "T" + unit.FormatNumber(c.in.Setup.Exposure.Stop.Written)
}

// exposureLines say what the camera is set to, and the constant of the meter that stops follow.
func (c *composer) exposureLines() []string {
	x := c.in.Setup.Exposure
	if !(x.Stop.N > 0) {
		return nil
	}
	camera := []string{"Working stop " + c.workingStop(), "ISO " + unit.FormatNumber(x.ISO), unit.FormatNumber(x.FPS) + " fps"}
	if x.Degrees > 0 {
		camera = append(camera, unit.FormatAngle(x.Degrees))
	}
	if x.Seconds > 0 {
		camera = append(camera, unit.FormatShutter(unit.Shutter{Seconds: x.Seconds}))
	}
	meter := fmt.Sprintf("%s meter, C = %s", x.Meter, unit.FormatNumber(x.Constant))
	if x.White.Kelvin > 0 {
		meter = "White " + unit.FormatKelvin(x.White.Kelvin) + ", " + meter
	}
	return []string{strings.Join(camera, ", "), meter}
}
