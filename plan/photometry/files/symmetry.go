package files

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scrimshaw/plan/photometry"
)

// symmetry says for which directions measured planes stand.
type symmetry uint8

const (
	asymmetric symmetry = iota
	axial               // one plane for all
	about0              // mirrored at the plane of 0 and 180 degrees
	about90             // mirrored at the plane of 90 and 270
	aboutBoth
	aboutZero // of types A and B: mirrored at the horizontal angle 0
	open      // of type C: all round, but the last plane, the first once more, is left out
	unknown
)

// symmetryOf is the symmetry of a file, by where its horizontal angles begin and end.
func symmetryOf(system photometry.System, horizontal []float64) symmetry {
	if len(horizontal) == 0 {
		return unknown
	}
	first, last := horizontal[0], horizontal[len(horizontal)-1]
	switch {
	case system == photometry.TypeC:
		return symmetryOfPlanes(first, last, horizontal)
	case first == 0 && last > 0:
		return aboutZero
	}
	return asymmetric
}

// symmetryOfPlanes is that of C planes.
func symmetryOfPlanes(first, last float64, planes []float64) symmetry {
	switch {
	case len(planes) == 1:
		return axial
	case first == 0 && last == 90:
		return aboutBoth
	case first == 0 && last == 180:
		return about0
	case first == 90 && last == 270, first == -90 && last == 90:
		return about90
	case first == 0 && last == 360:
		return asymmetric
	case last-first == 360:
		return open
	case first >= 0 && last-first < 360 && 360-(last-first) <= 1.5*longest(planes):
		return open
	}
	return unknown
}

// longest is the longest step between neighbours.
func longest(angles []float64) (step float64) {
	for i := 1; i < len(angles); i++ {
		step = math.Max(step, angles[i]-angles[i-1])
	}
	return step
}

// plane is the intensities of one horizontal angle.
type plane struct {
	angle float64
	row   []float64
}

// unfold lays the measured planes all round. Vertical angles of types A and B that start at 0 are
// mirrored there, as the horizontal ones are.
func unfold(system photometry.System, s symmetry, horizontal, vertical []float64, rows [][]float64) (photometry.Nodes, error) {
	n := photometry.Nodes{System: system, Horizontal: horizontal, Vertical: vertical, Candela: rows}
	if len(rows) != len(horizontal) || len(rows) == 0 {
		return n, fmt.Errorf("%d horizontal angles have %d rows of intensities", len(horizontal), len(rows))
	}
	if system != photometry.TypeC {
		return unfoldAtZero(n, s), nil
	}
	switch s {
	case asymmetric, axial:
		return n, nil
	case unknown:
		return n, fmt.Errorf("horizontal angles from %g to %g say nothing of the rest of the sphere", horizontal[0], horizontal[len(horizontal)-1])
	}
	planes := mirrored(s, n)
	n.Horizontal, n.Candela = nil, nil
	for _, p := range planes {
		n.Horizontal = append(n.Horizontal, p.angle)
		n.Candela = append(n.Candela, p.row)
	}
	n.Horizontal = append(n.Horizontal, n.Horizontal[0]+360)
	n.Candela = append(n.Candela, n.Candela[0])
	return n, nil
}

// mirrored are the planes and their mirror images, in order, each angle from 0 to 360 once.
func mirrored(s symmetry, n photometry.Nodes) []plane {
	var all []plane
	add := func(angle float64, i int) {
		if angle = math.Mod(angle, 360); angle < 0 {
			angle += 360
		}
		all = append(all, plane{angle, n.Candela[i]})
	}
	for i, h := range n.Horizontal {
		add(h, i)
		if s == about0 || s == aboutBoth {
			add(-h, i)
		}
		if s == about90 || s == aboutBoth {
			add(180-h, i)
		}
		if s == aboutBoth {
			add(180+h, i)
		}
	}
	slices.SortStableFunc(all, func(a, b plane) int { return cmp.Compare(a.angle, b.angle) })
	return slices.CompactFunc(all, func(a, b plane) bool { return math.Abs(a.angle-b.angle) < 1e-9 })
}

// unfoldAtZero mirrors halves of types A and B at 0.
func unfoldAtZero(n photometry.Nodes, s symmetry) photometry.Nodes {
	if s == aboutZero {
		n.Horizontal = mirroredList(n.Horizontal, negative)
		n.Candela = mirroredList(n.Candela, same[[]float64])
	}
	if len(n.Vertical) < 2 || n.Vertical[0] != 0 {
		return n
	}
	n.Vertical = mirroredList(n.Vertical, negative)
	rows := make([][]float64, len(n.Candela))
	for i, row := range n.Candela {
		rows[i] = mirroredList(row, same[float64])
	}
	n.Candela = rows
	return n
}

// mirroredList is a list behind its mirror image at its first entry.
func mirroredList[T any](list []T, image func(T) T) []T {
	out := make([]T, 0, 2*len(list)-1)
	for i := len(list) - 1; i > 0; i-- {
		out = append(out, image(list[i]))
	}
	return append(out, list...)
}

func negative(v float64) float64 { return -v }
func same[T any](v T) T          { return v }
