package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Sizes of the view of the key's height, mm.
const (
	sideHead  = 5.0  // the radius of the head
	sideRay   = 44.0 // how long the way to the key is drawn, at most
	sideArc   = 20.0
	sideLevel = 50.0
)

// keyHeight draws the height of the key over the eye line from the side, in a box: the angle is true, lengths are as lettered.
func (l *Lesson) keyHeight(p Pad, area r2.Box) {
	key := &l.Lights[0]
	p.Ranks = l.ranks
	st := p.plan()
	sin, cos := math.Sincos(key.Height * math.Pi / 180)
	ray := math.Min(sideRay, (box.Height(area)/2-4)/math.Max(math.Abs(sin), 1e-6))
	room := math.Max(0, sin) * ray
	eye := r2.Vec{X: area.Min.X + 2*sideHead + 3, Y: math.Min(box.Centre(area).Y, area.Max.Y-room-4)}
	if sin < 0 {
		eye.Y = math.Max(box.Centre(area).Y, area.Min.Y-sin*ray+4)
	}
	p = p.On(ink.People).of("key-height", "The height of the key over the eye line, from the side.")
	middle := r2.Vec{X: eye.X - sideHead, Y: eye.Y}
	p.outline(0, p.Look.Ink, &p.Look.Ink, r2.Vec{X: eye.X - 0.8, Y: eye.Y + 1}, r2.Vec{X: eye.X - 0.8, Y: eye.Y - 2.2}, r2.Vec{X: eye.X + 1.8, Y: eye.Y - 2.2})
	p.canvas.Circle(ink.Pen{Colour: p.Look.Ink, Width: Medium, Fill: &p.Look.Paper}, middle, sideHead)
	p.canvas.Circle(ink.Solid(p.Look.Ink), r2.Vec{X: eye.X - 1.6, Y: eye.Y}, 0.6)
	p.dashed(Hair, p.Look.Quiet, []float64{2.4, 0.9}, r2.Vec{X: eye.X + 2.5, Y: eye.Y}, r2.Vec{X: eye.X + sideLevel, Y: eye.Y})
	lamp := r2.Add(eye, r2.Vec{X: ray * cos, Y: ray * sin})
	p.Line(FrameLine, p.beam(section.LampColour(l.In.Setup.LightNamed(key.Light))), r2.Add(eye, r2.Vec{X: 3 * cos, Y: 3 * sin}), lamp)
	half := r2.Scale(3, r2.Vec{X: -sin, Y: cos})
	p.Line(2.4*Thick, p.Look.Ink, r2.Sub(lamp, half), r2.Add(lamp, half))
	number := p.Style(CapTitle, p.Look.Ink).Strong()
	p.Text(r2.Add(lamp, r2.Vec{X: 3.2, Y: -number.Cap / 2}), key.Tag, number, ink.Left)
	if math.Abs(key.Height) >= 1 {
		p.canvas.Arc(ink.Pen{Colour: p.Look.Ink, Width: Thin}, eye, sideArc, 90, 90-key.Height)
		tip := r2.Add(eye, r2.Vec{X: sideArc * cos, Y: sideArc * sin})
		along := -key.Height
		if key.Height < 0 {
			along += 180
		}
		p.canvas.Draw(ink.Solid(p.Look.Ink), ink.ArrowHead(tip, along, 2))
	}
	l.letterHeight(p, st, eye, area)
}

// letterHeight says the angle, and how much higher than the eyes the key is, below the eye line or above a key from below.
func (l *Lesson) letterHeight(p Pad, st style, eye r2.Vec, area r2.Box) {
	key := &l.Lights[0]
	over, rise := "over", key.Distance*math.Sin(key.Height*math.Pi/180)
	if rise < 0 {
		over = "under"
	}
	words := []string{unit.FormatWhole(math.Abs(key.Height)) + "° " + over + " the eye line,", l.Length(math.Abs(rise)) + " " + over + " the eyes"}
	y := eye.Y - 2.4 - st.Cap
	if rise < 0 {
		y = eye.Y + 2.4 + st.Leading()
	}
	for i, s := range words {
		p.Text(box.At(eye.X+4, y-st.Leading()*float64(i)), s, st, ink.Left)
	}
}
