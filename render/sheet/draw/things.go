package draw

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// drawThings draws lights, grip, cameras and people by their symbols, and returns the labels that
// go beside them. Lettering avoids what their mounts cover, where it can.
func (c things) drawThings(p Pad, v layout.View) (labels []placeable, rests []carto.Obstacle) {
	s := c.In.Setup
	add := func(d symbols.Drawn, l placeable) {
		labels = append(labels, l)
		c.Stands = append(c.Stands, d)
		for _, r := range d.Rest {
			rests = append(rests, carto.Obstacle{Outline: r, Cost: costRest})
		}
	}
	for i := range s.People {
		add(c.drawPerson(p, v, &s.People[i]))
	}
	c.coverLegs(p, v)
	for i := range s.Cameras {
		add(c.drawCamera(p, v, &s.Cameras[i]))
	}
	for i := range s.Lights {
		add(c.drawLight(p, v, &s.Lights[i]))
	}
	for i := range s.Grip {
		add(c.drawGrip(p, v, &s.Grip[i]))
	}
	return labels, rests
}

// drawLight draws a light at the true width of its emitting face.
func (c things) drawLight(p Pad, v layout.View, l *plan.Light) (symbols.Drawn, placeable) {
	colour := c.Pad.lamp(section.LampColour(l))
	lamp := lampOf(c.In.Setup, l, v.Scale)
	lamp.At, lamp.Bearing, lamp.Colour, lamp.Mount = v.Flat(l.Frame.At), frameBearing(l.Frame), colour, c.mount(v, &l.Mount, holdOf(l))
	if lamp.Mount.Hold == symbols.Hung {
		lamp.Mount.Footprint = max(lamp.Face.X, lamp.Face.Y, lamp.Body.X, lamp.Body.Y)
	}
	c.usedAs(lightKind(c.In.Setup, l), func(to ink.Canvas, k symbols.Look, scale float64) symbols.Drawn {
		alone := lampOf(c.In.Setup, l, scale)
		alone.Colour = colour
		return symbols.DrawLight(to, k, alone)
	})
	c.usedAs(mountKind(lamp.Mount.Hold), symbols.MountSign(lamp.Mount.Hold))
	d := symbols.DrawLight(p.of("light:"+l.Name, c.LightAlt(l)).canvas, p.symbols(), lamp)
	return d, &tag{object: "light:" + l.Name, number: l.Tag, cap: c.Pad.Ranks.Lamp, strip: &colour, lines: c.lightLines(l), short: c.shortLabel(l), anchor: lamp.At, drawn: d, priority: 3,
		struck: section.When(len(section.OnColour(c.In.Setup, l.Name)) > 0, section.LightColour(l))}
}

// mount is what carries a thing, on paper.
func (c things) mount(v layout.View, m *plan.Mount, hold symbols.Hold) symbols.Mount {
	out := symbols.Mount{Hold: hold, Base: v.Paper(m.Base), Footprint: m.Foot * v.Scale}
	if hold == symbols.Lift {
		out.Footprint, out.Depth = m.Ground[0]*v.Scale, m.Ground[1]*v.Scale
	}
	if hold == symbols.Pole {
		if len(m.PoleEnds) < 2 {
			out.Hold = ""
			return out
		}
		out.Ends = [2]r2.Vec{v.Paper(m.PoleEnds[0]), v.Paper(m.PoleEnds[1])}
	}
	return out
}

// drawGrip draws a piece of grip at its true width.
func (c things) drawGrip(p Pad, v layout.View, g *plan.Grip) (symbols.Drawn, placeable) {
	s := symbols.Grip{
		Kind: symbols.GripKind(g.Kind), At: v.Flat(g.Frame.At), Bearing: frameBearing(g.Frame), Tilt: section.Tilt(g.Frame.Axis),
		Size: r2.Scale(v.Scale, r2.Vec{X: g.Size[0], Y: g.Size[1]}), Black: isBlack(g), Round: g.Round(), Mount: c.mount(v, &g.Mount, symbols.Hold(g.Mount.Kind)),
	}
	c.usedAs(gripKind(g), func(to ink.Canvas, k symbols.Look, scale float64) symbols.Drawn {
		return symbols.DrawGrip(to, k, symbols.Grip{Kind: s.Kind, Tilt: s.Tilt, Size: r2.Scale(scale, r2.Vec{X: g.Size[0], Y: g.Size[1]}), Black: s.Black, Round: s.Round})
	})
	c.usedAs(mountKind(s.Mount.Hold), symbols.MountSign(s.Mount.Hold))
	alt := fmt.Sprintf("Grip %s, %s %s, its middle %s high.", g.Tag, g.Kind, strings.ReplaceAll(c.GripSize(g, c.Length), " × ", " by "), c.Length(g.Height))
	d := symbols.DrawGrip(p.of("grip:"+g.Name, alt).canvas, p.symbols(), s)
	return d, &tag{object: "grip:" + g.Name, number: g.Tag, cap: c.Pad.markCap(), open: true, lines: c.gripLines(g), anchor: s.At, drawn: d, priority: 2}
}

// mostShorter is how much of the usual length of a camera its body may be drawn shorter by: bodies differ by as much, and a scene says nothing of it
// (common practice).
const mostShorter = 0.4

// shortOfWalls is how much shorter than usual the body of a camera is drawn so that it ends before the wall behind it; 0 where no wall is near, or none
// that a shorter body clears.
func (c things) shortOfWalls(v layout.View, s symbols.Camera) float64 {
	const step = 0.05
	walls := wallPieces(c.In.Setup, v)
	for s.Short = 0; s.Short <= mostShorter+1e-9; s.Short += step {
		body := symbols.DrawCamera(ink.NewCanvas(&ink.Page{}, ink.Symbols), symbols.Look{}, s).Body
		if !slices.ContainsFunc(walls, func(w []r2.Vec) bool { return carto.Overlap(body, w) }) {
			return s.Short
		}
	}
	return 0
}

// drawCamera draws a camera.
func (c things) drawCamera(p Pad, v layout.View, m *plan.Camera) (symbols.Drawn, placeable) {
	s := symbols.Camera{At: v.Flat(m.Frame.At), Bearing: frameBearing(m.Frame), Scale: v.Scale}
	s.Short = c.shortOfWalls(v, s)
	c.used("camera")
	alt := fmt.Sprintf("Camera %s, %s lens, %s high, sees %s across.", m.Name, m.LensWords(), c.Length(m.Height), unit.FormatAngle(m.HAOV))
	d := symbols.DrawCamera(p.of("camera:"+m.Name, alt).canvas, p.symbols(), s)
	return d, &tag{object: "camera:" + m.Name, number: m.Name, cap: c.Pad.markCap(), lines: c.cameraLines(m), anchor: s.At, drawn: d, priority: 2}
}

// drawPerson draws someone in their pose. The name stands at head and shoulders: legs may be under a
// table, and what is lettered beyond them is taken for the name of the table.
func (c things) drawPerson(p Pad, v layout.View, who *plan.Person) (symbols.Drawn, placeable) {
	s := personOf(v, who)
	c.used("person:" + string(s.Pose))
	alt := fmt.Sprintf("%s, %s, eyes %s high.", who.Name, who.Pose, c.Length(who.Eyes-who.Base))
	first := len(p.page.Items)
	d := symbols.DrawPerson(p.of("person:"+who.Name, alt).canvas, p.symbols(), s)
	if mappedAbove(c.In, who.At, who.Base+highestLegs) {
		linesOnly(p.page.Items[first:], p.Look.Paper, symbols.Fine) // legs are drawn in finer lines than the rest
	}
	c.People[who.Name] = d
	return d, &note{object: "person:" + who.Name, layer: ink.People, style: c.Pad.plan(), forms: noteForms(who.Name), anchor: s.At, body: torsoBox(s, d), shape: s.Trunk(), priority: 1.5, leader: 24}
}

// highestLegs is how high the thighs of somebody seated reach, m.
const highestLegs = 0.65

// torsoBox is the box of head and shoulders; someone lying has nothing under a table.
func torsoBox(s symbols.Person, d symbols.Drawn) r2.Box {
	if s.Pose == symbols.Lying {
		return d.Box()
	}
	return symbols.Drawn{Body: s.Trunk()}.Box()
}
