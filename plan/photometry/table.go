package photometry

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// System is the way in which two angles give a direction: the photometric types of LM-63. All
// three have (0, 0) on the lamp's axis.
type System uint8

// The systems. Their poles, where all planes of the horizontal angle meet, lie along the axis
// (C), along the lamp's right (B) and along its up (A).
const (
	// TypeC: the vertical angle gamma from the axis, 0 to 180; the horizontal angle C from the lamp's
	// right toward its up, 0 to 360.
	TypeC System = iota
	// TypeB: the vertical angle turns about the lamp's right, from the axis toward up; the horizontal
	// angle is that from the plane square to the right, toward the right, -90 to 90.
	TypeB
	// TypeA: the horizontal angle turns about the lamp's up, from the axis toward the right; the
	// vertical angle is that over the plane square to the up, toward up, -90 to 90.
	TypeA
)

// String returns "C", "B" or "A".
func (s System) String() string { return [...]string{"C", "B", "A"}[min(s, TypeA)] }

// angles are those of a direction, degrees: round the poles, and from the pole along which the
// system's polar angle is 0.
func (s System) angles(d r3.Vec) (azimuth, polar float64) {
	switch s {
	case TypeB:
		return degrees(math.Atan2(d.Y, -d.Z)), 90 + degrees(math.Atan2(d.X, math.Hypot(d.Y, d.Z)))
	case TypeA:
		return degrees(math.Atan2(d.X, -d.Z)), 90 + degrees(math.Atan2(d.Y, math.Hypot(d.X, d.Z)))
	}
	return degrees(math.Atan2(d.Y, d.X)), degrees(angleFromAxis(d))
}

func degrees(radians float64) float64 { return radians * 180 / math.Pi }
func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// Nodes are intensities measured at the nodes of a grid of angles. Angles ascend, in degrees and
// in the terms of the System. Of type C, one plane stands for all; planes that go all round end with the
// first once more, 360 degrees on. A symmetry is already unfolded.
type Nodes struct {
	System               System
	Horizontal, Vertical []float64
	Candela              [][]float64 // cd, [horizontal][vertical]
}

// grid gives the nodes by azimuth and polar angle: of type B these are its vertical and its
// horizontal angle. A polar angle is 0 at a pole.
func (n *Nodes) grid() (azimuth, polar []float64, at func(i, j int) float64) {
	plain := func(i, j int) float64 { return n.Candela[i][j] }
	switch n.System {
	case TypeB:
		return n.Vertical, anglesFromPole(n.Horizontal), func(i, j int) float64 { return n.Candela[j][i] }
	case TypeA:
		return n.Horizontal, anglesFromPole(n.Vertical), plain
	}
	return n.Horizontal, n.Vertical, plain
}

// anglesFromPole are angles from -90 to 90 as angles from the pole.
func anglesFromPole(angles []float64) []float64 {
	from := make([]float64, len(angles))
	for i, a := range angles {
		from[i] = a + 90
	}
	return from
}

// check says what is wrong with the nodes.
func (n *Nodes) check() error {
	azimuth, polar, _ := n.grid()
	switch {
	case len(n.Candela) != len(n.Horizontal):
		return fmt.Errorf("%d horizontal angles have %d rows of intensities", len(n.Horizontal), len(n.Candela))
	case len(polar) < 2, len(azimuth) == 0, len(azimuth) == 1 && n.System != TypeC:
		return errors.New("a table needs two angles each way; one plane does for type C only")
	case !ascend(azimuth) || !ascend(polar):
		return errors.New("the angles do not ascend")
	case polar[0] < 0, polar[len(polar)-1] > 180, azimuth[0] < -360, azimuth[len(azimuth)-1]-azimuth[0] > 360, azimuth[0] > 360:
		return errors.New("the angles go beyond the sphere")
	}
	for i, row := range n.Candela {
		if len(row) != len(n.Vertical) {
			return fmt.Errorf("%d vertical angles have %d intensities at the horizontal angle %g", len(n.Vertical), len(row), n.Horizontal[i])
		}
		for _, v := range row {
			if !(v >= 0) || math.IsInf(v, 1) {
				return fmt.Errorf("%g is not an intensity", v)
			}
		}
	}
	return nil
}

func ascend(angles []float64) bool {
	for i, a := range angles {
		if math.IsNaN(a) || math.IsInf(a, 0) || i > 0 && a <= angles[i-1] {
			return false
		}
	}
	return true
}

// Table is measured light. Between the nodes the intensity is bilinear in the two angles of its
// system; it is exact at the nodes, holds to the last of them, and beyond them there is nothing: no
// value is made up where none was measured.
type Table struct {
	system         System
	azimuth, polar scale
	candela        []float64 // cd/lm, all polar angles of one azimuth after the other
	peak           float64
	behind         bool
}

// Curve is a Table that is the same all round the axis: one plane of type C.
type Curve struct{ *Table }

// NewTable makes the distribution of measured intensities, a Curve where one plane stands for all
// and else a Table, and gives their flux, lm: the exact integral of the table as it is
// interpolated. It refuses angles that do not ascend or leave the sphere, and a table without light.
func NewTable(n Nodes) (d Distribution, flux float64, err error) {
	if err := n.check(); err != nil {
		return nil, 0, err
	}
	azimuth, polar, at := n.grid()
	t := &Table{system: n.System, azimuth: newScale(azimuth), polar: newScale(polar), candela: make([]float64, 0, len(azimuth)*len(polar))}
	for i := range azimuth {
		for j := range polar {
			v := at(i, j)
			t.candela = append(t.candela, v)
			t.peak = math.Max(t.peak, v)
			t.behind = t.behind || v > 0 && n.System == TypeC && polar[j] > 90
		}
	}
	if flux = t.flux(); !(flux > 0) || math.IsInf(flux, 1) || math.IsInf(t.peak/flux, 1) {
		return nil, 0, errors.New("the table gives no light")
	}
	for i := range t.candela {
		t.candela[i] /= flux
	}
	t.peak /= flux
	if len(azimuth) == 1 {
		return Curve{t}, flux, nil
	}
	return t, flux, nil
}

// tabulated reports whether a distribution is a table, with a kink at each of its angles.
func tabulated(d Distribution) bool {
	switch d.(type) {
	case *Table, Curve:
		return true
	}
	return false
}

// Candela gives the intensity, cd/lm.
func (t *Table) Candela(dir r3.Vec) float64 {
	azimuth, polar := t.system.angles(dir)
	return t.interpolate(azimuth, polar)
}

// Peak gives the greatest intensity, cd/lm: that of a node.
func (t *Table) Peak() float64 { return t.peak }

// Behind reports whether a distribution is known to send light out behind the plane square to the
// axis: a measured one may, and a face that has it then shines to both sides.
func Behind(d Distribution) bool {
	b, ok := d.(interface{ Behind() bool })
	return ok && b.Behind()
}

// Behind reports whether any light goes out behind the plane square to the axis.
func (t *Table) Behind() bool { return t.behind }

// At gives the intensity, cd/lm, at an angle from the axis in radians.
func (c Curve) At(t float64) float64 { return c.interpolate(c.azimuth.angles[0], degrees(t)) }

// Candela gives the intensity, cd/lm.
func (c Curve) Candela(dir r3.Vec) float64 { return c.At(angleFromAxis(dir)) }

// interpolate interpolates at angles in degrees.
func (t *Table) interpolate(azimuth, polar float64) float64 {
	j, v, ok := t.polar.find(polar)
	if !ok {
		return 0
	}
	i, u, ok := t.azimuth.find(t.wrapAzimuth(azimuth))
	if !ok {
		return 0
	}
	low := t.interpolatePolar(i, j, v)
	if u == 0 {
		return low
	}
	return low + u*(t.interpolatePolar(i+1, j, v)-low)
}

// wrapAzimuth is an azimuth by whole turns in the round that begins at the table's first: a table may lie
// anywhere from -360 to 720.
func (t *Table) wrapAzimuth(azimuth float64) float64 {
	first := t.azimuth.angles[0]
	for azimuth < first-edgeTolerance {
		azimuth += 360
	}
	for azimuth > first+360+edgeTolerance {
		azimuth -= 360
	}
	return azimuth
}

// interpolatePolar interpolates between polar angles j and j+1 of azimuth i.
func (t *Table) interpolatePolar(i, j int, v float64) float64 {
	row := t.candela[i*len(t.polar.angles):]
	if v == 0 {
		return row[j]
	}
	return row[j] + v*(row[j+1]-row[j])
}
