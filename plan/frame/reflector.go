package frame

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// reflector is a flat mirror, or a side of a pane of clear glass.
type reflector struct {
	mirror solid.Mirror
	name   string       // of the thing that it is of
	glass  *solid.Glass // nil of a mirror
	side   int          // its place among all of the set-up
}

// leastMirror is how much of the light a surface mirrors at least that one sees oneself in: what mirrors less, as glazed tiles,
// shows lamps at best.
const leastMirror = 0.3

// reflectors are the flat mirrors of a set-up, and the panes that one sees through. What mirrors in a lobe, as a silver board,
// shows a smear of light and no image.
func reflectors(s *plan.Setup) (all []reflector) {
	for i := range s.Set.Sheets {
		sheet := &s.Set.Sheets[i]
		name, _, _ := strings.Cut(sheet.Name, ".")
		for _, front := range [...]bool{true, false} {
			m, ok := sheet.Side(front)
			switch glass := sheet.Front.Glass; {
			case !ok:
			case m.Factor.Y() >= leastMirror && m.Power == 0:
				all = append(all, reflector{mirror: m, name: name, side: len(all)})
			case glass != nil && seenThrough(&sheet.Front):
				all = append(all, reflector{mirror: m, name: name, glass: glass, side: len(all)})
			}
		}
	}
	return all
}

// turned is the mirror once it is turned about a line, by degrees counter-clockwise as seen from where the line leads.
func (r reflector) turned(about, along r3.Vec, degrees float64) reflector {
	corners := make([]r3.Vec, len(r.mirror.Corners))
	for i, c := range r.mirror.Corners {
		corners[i] = r3.Add(about, rotated(r3.Sub(c, about), along, degrees))
	}
	r.mirror.Corners = corners
	r.mirror.Plane.N = rotated(r.mirror.Plane.N, along, degrees)
	r.mirror.Plane.C = r3.Dot(r.mirror.Plane.N, corners[0])
	return r
}

// openingOf is what the light of a lamp leaves by: its face, tube, globe or shade, or the lens or mouth of one that counts as a
// point.
func openingOf(l *plan.Light) []body.Piece {
	o, f := l.Head.Source.Opening, l.Frame
	switch o.Form {
	case photometry.Sphere:
		return []body.Piece{body.Ball(body.Head, f.At, o.Width/2)}
	case photometry.Lampshade:
		return []body.Piece{body.ShadeOf(l)}
	case photometry.Tube:
		return []body.Piece{body.Box(f, o.Width, o.Height, o.Height/2, -o.Height/2)}
	case photometry.Rectangle:
		return []body.Piece{body.Flat(body.Head, body.Rectangle(f, o.Width, o.Height, 0))}
	case photometry.Disc:
		return []body.Piece{body.Flat(body.Head, body.Circle(f.At, f.Right, f.Up(), o.Width/2, body.TurnedSides))}
	}
	if hasMouth(l) {
		return []body.Piece{body.Flat(body.Head, body.Circle(f.At, f.Right, f.Up(), l.Head.Aperture/2, body.TurnedSides))}
	}
	return nil
}

// hasMouth says whether a lamp that counts as a point leaves by a lens or a mouth.
func hasMouth(l *plan.Light) bool {
	return l.Head.Aperture > 0 && l.Head.Class != term.Practical && !l.Head.AllRound()
}

// shinesTo says whether a lamp shows its light to a place: a face or a lens shows its back to what lies behind it.
func shinesTo(l *plan.Light, at r3.Vec) bool {
	d := r3.Sub(at, l.Frame.At)
	if r3.Norm(d) == 0 || l.Head.Source.Distribution == nil {
		return false
	}
	return l.Head.Source.Intensity(l.Frame.Local(r3.Unit(d))) > 0
}
