package draw

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// Draw draws the diagram in a box.
func (l *Lesson) Draw(p Pad, area r2.Box) {
	p.Ranks = l.ranks
	labels, taken := []placeable{}, []carto.Obstacle{}
	person := l.drawHead(p)
	taken = append(taken, carto.Obstacle{Outline: carto.BoxOutline(box.Inset(person.Box(), -0.8, -0.8))})
	for _, r := range person.Rest {
		taken = append(taken, carto.Obstacle{Outline: r})
	}
	if l.Camera != "" {
		t, way := l.drawCamera(p)
		labels, taken = append(labels, t), append(taken, way)
	}
	for i := range l.Lights {
		t, ways := l.drawLight(p, &l.Lights[i])
		if t != nil {
			labels, taken = append(labels, t), append(taken, ways...)
		}
	}
	taken = append(taken, l.drawArcs(p, taken)...)
	if n := l.ratioNote(p, person); n != nil {
		labels = append(labels, n)
	}
	var wanted []carto.Label
	for _, t := range labels {
		wanted = append(wanted, t.label(p))
	}
	for i, at := range carto.Place(wanted, carto.PlaceOptions{Area: box.Inset(area, 1, 1), Gap: 1.2, Obstacles: taken}) {
		if _, isNote := labels[i].(*note); isNote && r2.Norm(r2.Sub(at.Leader[1], at.Leader[0])) < shortLeader {
			at.Leader[1] = at.Leader[0] // a stub would be taken for a mark
		}
		labels[i].draw(p, at)
		if !labels[i].full(at) {
			l.Reduced++
		}
	}
}

// drawHead draws the person.
func (l *Lesson) drawHead(p Pad) symbols.Drawn {
	who := l.In.Setup.Post(l.Person)
	s := symbols.Person{Pose: symbols.Pose(who.Pose), At: l.centre, Faces: l.onPaper(bodyBearing(who), who), Scale: l.scale, Height: who.Height}
	if who.Pose != term.Lying {
		s.Pose = symbols.Standing // legs say nothing here
	}
	d := symbols.DrawPerson(p.of("person:"+who.Name, who.Name+", whose face the notes are about.").canvas, p.symbols(), s)
	return symbols.Drawn{Body: s.Trunk(), Rest: [][]r2.Vec{d.Body}}
}

// drawCamera draws the camera below the head and the line to it.
func (l *Lesson) drawCamera(p Pad) (placeable, carto.Obstacle) {
	c, who := l.In.Setup.CameraPost(l.Camera), l.In.Setup.Post(l.Person)
	far := r2.Norm(r2.Sub(plan.InPlan(c.Frame.At), plan.InPlan(who.Face.At))) * l.scale
	at, broken := l.stand(0, far)
	name := plan.CameraOf(c.Name)
	alt := "Camera " + plan.CameraWords(c.Name) + ", below the head."
	from := r2.Add(l.centre, r2.Scale(lessonArcFrom-2, toward(0)))
	p.dashed(Hair, p.Look.Quiet, []float64{2.4, 0.9}, from, at)
	if broken {
		l.breakLine(p, from, at)
	}
	d := symbols.DrawCamera(p.of("camera:"+name, alt).canvas, p.symbols(), symbols.Camera{At: at, Bearing: 0, Scale: lessonLeast})
	return &tag{object: "camera:" + name, number: name, cap: p.markCap(), open: true, lines: [][]string{{"camera"}}, anchor: at, drawn: d, priority: 2}, line(from, at)
}

// breakLine marks that a line is shortened.
func (l *Lesson) breakLine(p Pad, from, to r2.Vec) {
	way := r2.Unit(r2.Sub(to, from))
	across := r2.Scale(breakWide, r2.Unit(r2.Vec{X: -way.Y - 0.4*way.X, Y: way.X - 0.4*way.Y}))
	at := box.Interpolate(from, to, 0.6)
	for _, off := range [...]float64{-0.6, 0.6} {
		q := r2.Add(at, r2.Scale(off, way))
		p.Line(Thin, p.Look.Ink, r2.Sub(q, across), r2.Add(q, across))
	}
}

// drawLight draws a light where it stands, and its ray, and returns what figures keep off; nil of one that stands in the face. What comes off a wall
// or a ceiling has no ray, for nobody can say from where on that it comes: the lamp stands at its place and aims as it does.
func (l *Lesson) drawLight(p Pad, t *meter.LessonLight) (placeable, []carto.Obstacle) {
	light := l.In.Setup.LightNamed(t.Light)
	turn, far, ray := t.Turn, inPlan(t), t.At != nil
	if !ray {
		if t.By == "" {
			return nil, nil
		}
		turn, far = l.lampFrom(light)
	}
	at, broken := l.stand(turn, far*l.scale)
	colour := p.lamp(section.LampColour(light))
	var ways []carto.Obstacle
	if ray {
		ways = append(ways, l.drawRay(p, t, at, broken))
	}
	d := l.lamp(p, t, light, at, colour)
	ways = append(ways, carto.Obstacle{Outline: d.Body})
	return &tag{object: "light:" + t.Light, number: t.Tag, cap: p.Ranks.Lamp, strip: &colour, lines: l.lightWords(t), anchor: at, drawn: d, priority: 3}, ways
}

// drawRay draws the ray of a light from where it stands to the head.
func (l *Lesson) drawRay(p Pad, t *meter.LessonLight, at r2.Vec, broken bool) carto.Obstacle {
	width := Medium
	if t.Role == term.Key {
		width = FrameLine
	}
	from := r2.Add(l.centre, r2.Scale(lessonArcFrom-2, toward(t.Turn)))
	p.On(ink.Beams).Line(width, p.beam(section.LampColour(l.In.Setup.LightNamed(t.Light))), from, at)
	if broken {
		l.breakLine(p, from, at)
	}
	return line(from, at)
}

// lamp draws the symbol of a light, turned to the head; where its light comes from a surface, a stroke stands for that.
func (l *Lesson) lamp(p Pad, t *meter.LessonLight, light *plan.Light, at r2.Vec, colour ink.Colour) symbols.Drawn {
	if t.By == "" || t.At == nil {
		s := lampOf(l.In.Setup, light, l.scale)
		s.At, s.Bearing, s.Colour = at, -t.Turn, colour
		if t.At == nil {
			s.Bearing = l.onPaper(frameBearing(light.Frame), l.In.Setup.Post(l.Person))
		}
		return symbols.DrawLight(p.of("light:"+t.Light, "").canvas, p.symbols(), s)
	}
	way := toward(t.Turn)
	half := math.Max(1.5, math.Min(9, math.Tan(t.Wide/2*math.Pi/180)*t.Distance*l.scale))
	side := r2.Scale(half, r2.Vec{X: -way.Y, Y: way.X})
	corners := []r2.Vec{r2.Sub(at, side), r2.Add(at, side), r2.Add(r2.Add(at, side), r2.Scale(1, way)), r2.Add(r2.Sub(at, side), r2.Scale(1, way))}
	p.of("light:"+t.Light, "").outline(Medium, p.Look.Ink, &colour, corners...)
	return symbols.Drawn{Body: corners}
}

// lightWords are the lines of the tag of a light.
func (l *Lesson) lightWords(t *meter.LessonLight) [][]string {
	what := string(t.Role)
	if what == "" {
		what = t.Light
	}
	switch {
	case t.At == nil:
		return [][]string{{what}, {"off " + t.By}}
	case t.By != "":
		what += ", by " + t.By
	}
	height := unit.FormatWhole(math.Abs(t.Height)) + "° up"
	if t.Height < 0 {
		height = strings.Replace(height, "up", "down", 1)
	}
	return [][]string{{what}, {l.Length(t.Distance), height}}
}

// ratioNote is what the two sides of the face differ by, beside the head.
func (l *Lesson) ratioNote(p Pad, head symbols.Drawn) placeable {
	if l.Ratio == nil || l.Stops == nil {
		return nil
	}
	n := &note{object: "ratio", layer: ink.Readings, style: p.reading(), anchor: l.centre, body: head.Box(), shape: head.Body, priority: 4, leader: 40, led: true}
	ratio, below := unit.FormatTenths(*l.Ratio)+" : 1", "key + fill : fill, "+unit.FormatTenths(*l.Stops)+" stops"
	if unit.EqualStops(*l.Stops) {
		below = "both sides are equal"
	}
	n.forms = []noteForm{{ratio, below}, {words: ratio}}
	return n
}
