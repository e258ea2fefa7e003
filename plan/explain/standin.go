package explain

import (
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
)

// standIn explains how a light passes for what it stands for; nil where it stands for nothing, or is judged at other faces alone.
func (x *explainer) standIn(light string) *StandIn {
	s, l := x.study.Readings.StandInOf(light), x.study.Setup.LightNamed(light)
	if s == nil || x.reading.Receptor >= len(x.study.Requests) {
		return nil
	}
	for i := range s.Faces {
		p := &s.Faces[i]
		if p.Person != x.reading.Person {
			continue
		}
		w := &likening{working: newWorking(), struck: len(p.Uncomputed) > 0}
		if p.Gap != nil {
			w.gap(p)
			w.changes(x.study.Setup.Kit, l.Head.OwnWhite().OnPlanck(), p)
		}
		if p.Way != nil {
			w.ways(p.Way)
		}
		return &StandIn{For: s.For, Steps: w.steps}
	}
	return nil
}

// likening is the calculation of how one light passes for another.
type likening struct {
	*working
	struck bool // a key that is not computed yet could change the light on the face
}

// found notes a value that the light on the face decides.
func (w *likening) found(words, symbol string, value float64, unit, source string) {
	w.given(words, symbol, value, unit, source)
	w.strike(w.struck)
}

// follows notes what comes of such a value.
func (w *likening) follows(words, symbol, formula string, value float64, unit, source string) {
	w.worked(words, symbol, formula, value, unit, source)
	w.strike(w.struck)
}

// mired is the formula of what a colour temperature is in mireds.
func mired(symbol string) string { return "1000000 / " + symbol }

// miredLaw is the source of shifts in mireds.
const miredLaw = "mireds and Duv add, common practice"

// gap is what lies between the colours of the two lights.
func (w *likening) gap(p *meter.Passing) {
	is, wanted := p.Whites[0], p.Whites[1]
	const nearest = "the nearest Planckian, CIE 1960 u, v"
	w.found("its light as it comes to the face", "K", is.Kelvin, "K", nearest)
	w.found("off the Planckian locus, plus is green", "D", is.Duv, "", "Duv")
	w.found("what it stands for, as it comes there", "M", wanted.Kelvin, "K", nearest)
	w.found("off the Planckian locus", "H", wanted.Duv, "", "Duv")
	w.follows("it is warmer by", "G", mired("K")+" - "+mired("M"), p.Gap.Mired, "mired", "mired is a million by K")
	w.follows("it is greener by", "J", "D - H", p.Gap.Duv, "", "Duv")
}

// changes are the gels, and the white of its own, that bring the light nearer.
func (w *likening) changes(catalogue *kit.Catalogue, own colour.White, p *meter.Passing) {
	for i, cure := range [...]*meter.Cure{&p.Gels, p.Setting} {
		if cure == nil || !cure.Changes() {
			continue
		}
		c := change{likening: w, mired: "G", duv: "J", passes: "1"}
		for _, name := range cure.Off {
			c.sheet(catalogue.Gel(name), "without "+name, " - ", " / ", i)
		}
		for _, name := range cure.Gels {
			c.sheet(catalogue.Gel(name), "with "+name, " + ", " × ", i)
		}
		if to := cure.White; to != nil {
			c.set(own, colour.White{Kelvin: to.Kelvin, Duv: to.Duv}, cure)
		}
		c.left(cure, p.Gap, i)
	}
}

// change is one change of the colour of a light, as formulas that grow.
type change struct {
	*likening
	mired, duv, passes string
	shift, green       float64 // mireds, Duv
	sheets             int
}

// sheet takes a gel off, or puts one on.
func (c *change) sheet(g *kit.GelData, words, sign, times string, of int) {
	if g == nil {
		return
	}
	c.sheets++
	n := strconv.Itoa(of) + strconv.Itoa(c.sheets)
	const catalogue = "catalogue"
	c.given(words+": its shift", "a"+n, g.Mired, "mired", catalogue)
	if c.mired += sign + "a" + n; g.Duv != 0 {
		c.given("its green", "b"+n, g.Duv, "", catalogue)
		c.duv += sign + "b" + n
	}
	c.given("what it passes", "t"+n, g.Transmittance, "", catalogue)
	c.passes += times + "t" + n
	way := 1.0
	if strings.TrimSpace(sign) == "-" {
		way = -1
	}
	c.shift, c.green = c.shift+way*g.Mired, c.green+way*g.Duv
}

// set sets the unit to another white of its own.
func (c *change) set(was, is colour.White, cure *meter.Cure) {
	c.given("its own white", "W", was.Kelvin, "K", "the scene, or the catalogue")
	c.given("set to", "Z", is.Kelvin, "K", "")
	if c.mired += " + " + mired("Z") + " - " + mired("W"); was.Duv != is.Duv {
		c.given("its own green", "o", was.Duv, "", "Duv")
		c.given("set to", "p", is.Duv, "", "Duv")
		c.duv += " + p - o"
	}
	c.shift, c.green = c.shift+colour.Mired(is.Kelvin)-colour.Mired(was.Kelvin), c.green+is.Duv-was.Duv
	rest := math.Exp2(-cure.Stops)
	for i := 1; i <= c.sheets; i++ {
		rest *= c.known["t1"+strconv.Itoa(i)]
	}
	c.given("what the unit gives at that white, and level", "j", rest, "", "catalogue")
	c.passes += " × j"
}

// left says what the change leaves and costs.
func (c *change) left(cure *meter.Cure, gap *colour.Gap, of int) {
	c.follows("leaves it warmer by, by these shifts", "", c.mired, gap.Mired+c.shift, "mired", miredLaw)
	if c.duv != "J" {
		c.follows("leaves it greener by", "", c.duv, gap.Duv+c.green, "", miredLaw)
	}
	if left := cure.Left; left != nil {
		const anew = "its light taken through the change anew"
		c.found("warmer by, as it comes to the face", "", left.Mired, "mired", anew)
		c.found("greener by, as it comes there", "", left.Duv, "", anew)
	}
	c.worked("price", "", "-log2("+c.passes+")", cure.Stops, "stops", "transmittances multiply")
}

// ways are where the two lights come from and how wide they look.
func (w *likening) ways(way *meter.Way) {
	for i, of := range [...]string{"its light comes from", "what it stands for comes from"} {
		n := strconv.Itoa(i + 1)
		at := way.Toward[i]
		w.given(of+", across the sheet", "x"+n, at.X, "", "from the face")
		w.given("up the sheet", "y"+n, at.Y, "", "")
		w.given("upward", "z"+n, at.Z, "", "")
		w.given("how large that looks", "O"+n, way.Size[i], "sr", "its opening, from the face")
	}
	w.worked("the angle between them", "", "acos(x1 × x2 + y1 × y2 + z1 × z2)", way.Angle, "°", scalarProduct)
	w.worked("it comes from higher by", "", "acos(z2) - acos(z1)", way.Higher, "°", "")
	const cone = "the round cone of that solid angle"
	w.worked("how wide it looks", "w1", "2 × acos(1 - O1 / (2 × π))", way.Wide, "°", cone)
	w.worked("how wide what it stands for looks", "w2", "2 × acos(1 - O2 / (2 × π))", way.For, "°", cone)
	if ratio := way.Softer(); ratio > 0 {
		w.worked("times as wide: softer over one, harder under it", "", "w1 / w2", ratio, "", "")
	}
}
