package draw

import (
	"cmp"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// holdOf is how a light is held: a practical stands by itself, on the floor or on furniture.
func holdOf(l *plan.Light) symbols.Hold {
	switch l.Mount.Kind {
	case term.Stand, term.Floor, "":
		if l.Head.Class == term.Practical {
			return ""
		}
	}
	return symbols.Hold(l.Mount.Kind)
}

// lampOf is how a light looks, about the origin and pointing up the paper, at a scale in mm for a metre, without what
// carries it.
func lampOf(s *plan.Setup, l *plan.Light, scale float64) symbols.Lamp {
	wide, deep := bodyOf(s, l)
	open := l.Head.Source.Opening
	return symbols.Lamp{
		Leaves: leavesOf(l, scale), Top: upperRim(l) * scale,
		Class: symbols.Class(l.Head.Class), Tilt: section.Tilt(l.Frame.Axis),
		Face: r2.Scale(scale, r2.Vec{X: cmp.Or(open.Width, l.Head.Aperture), Y: open.Height}), Body: r2.Scale(scale, r2.Vec{X: wide, Y: deep}),
		Off: l.Level <= 0, Round: open.Form == photometry.Disc, Naked: l.Head.Class == term.Practical && l.Head.ModifierLabel == "",
	}
}

// upperRim is the diameter of the opening of a shade that one sees from above, m; 0 where there is none.
func upperRim(l *plan.Light) float64 {
	shade, _ := l.Head.ShadeForm()
	if l.Frame.Axis.Z < 0 {
		return shade.Bottom
	}
	return shade.Top
}

// leavesOf are the barn doors of a light from above, in mm from the middle of its face: to the right, and along its aim.
func leavesOf(l *plan.Light, scale float64) (leaves [][]r2.Vec) {
	ahead := ink.Direction(frameBearing(l.Frame))
	right := r2.Vec{X: ahead.Y, Y: -ahead.X}
	for _, corners := range l.Leaves() {
		leaf := make([]r2.Vec, len(corners))
		for i, p := range corners {
			way := r2.Scale(scale, plan.InPlan(r3.Sub(p, l.Frame.At)))
			leaf[i] = r2.Vec{X: r2.Dot(way, right), Y: r2.Dot(way, ahead)}
		}
		leaves = append(leaves, leaf)
	}
	return leaves
}

// offMark follows the kind of a light that is off.
const offMark = "/off"

// lightKind is the symbol of a light: by how light leaves it, or as seen from above; and whether it is off.
func lightKind(s *plan.Setup, l *plan.Light) string {
	lamp := lampOf(s, l, 1)
	kind := "light:" + string(lamp.Class)
	switch {
	case lamp.Class == symbols.Practical && lamp.Naked:
		kind = "light:bulb"
	case lamp.Upright():
		kind = "light:" + wayWord(lamp.Tilt) + faceWord(&lamp)
	}
	if lamp.Off {
		kind += offMark
	}
	return kind
}

func wayWord(tilt float64) string {
	if tilt < 0 {
		return "down"
	}
	return "up"
}

// faceWord follows the way of a light that is seen from above: what its face looks like from there.
func faceWord(l *symbols.Lamp) string {
	switch {
	case l.Class != symbols.Boxed && l.Class != symbols.Panel:
		return ""
	case l.Round:
		return "-round"
	case l.Class == symbols.Panel:
		return "-panel"
	}
	return "-soft"
}

// darkest is the share of light that what is drawn black throws back at most.
const darkest = 0.10

// gripKind is the symbol of a piece of grip.
func gripKind(g *plan.Grip) string {
	if isBlack(g) {
		return "grip:black"
	}
	return "grip:" + string(g.Kind)
}

// isBlack says whether a card has a black side out.
func isBlack(g *plan.Grip) bool {
	return g.Kind == term.Card && g.Surface != "" && g.Reflects < darkest
}

// mountKind is the symbol of a mount; "" for none.
func mountKind(h symbols.Hold) string {
	if h == "" {
		return ""
	}
	return "mount:" + string(h)
}

// dressingKind is the symbol of a curtain or a blind.
func dressingKind(d *plan.Dressing) string {
	if d.Slat > 0 {
		return "dressing:blind"
	}
	return "dressing:curtain"
}

// openingKind is the symbol of an opening.
func openingKind(o *plan.Opening) string {
	if o.Kind == term.Window && o.Ajar > 0 {
		return "opening:casement"
	}
	return "opening:" + string(o.Kind)
}
