// Package rig is the mechanics of what holds lights and sheets up: booms, stands in the wind, poles. Formulas only; it knows no scene.
// They are sums to plan by and do not say that something holds: whoever rigs it does.
package rig

import "math"

// Gravity is the acceleration of a free fall, m/s² (standard value, CGPM 1901).
const Gravity = 9.80665

// CounterArm is how far behind the stand of a boom its counterweight hangs, m (common practice).
const CounterArm = 0.8

// Counterweight is the mass, kg, that holds a load at the end of an arm, m, in balance on the other side of its stand: m1 a1 = m2 a2,
// the law of the lever, without the arm's own mass.
func Counterweight(load, arm, counterArm float64) float64 { return load * arm / counterArm }

// Moment is the turning moment of a load on an arm, N m.
func Moment(load, arm float64) float64 { return load * Gravity * arm }

// pressureAtOne is the pressure of a wind of 1 m/s, Pa: half the density of air, 1.225 kg/m³ at sea level and 15 °C (ASCE 7 has
// 0.613, and 0.00256 psf by miles an hour).
const pressureAtOne = 0.613

// WindPressure is what a wind, m/s, presses with on what stops it, Pa: q = 0.613 v².
func WindPressure(speed float64) float64 { return pressureAtOne * speed * speed }

// Drag is by how much more than its pressure times its area the wind pushes on a body: a coefficient of its form.
type Drag float64

// The coefficients of forms, across the wind, from memory of handbooks of fluid mechanics: a flat plate has 1.1 to 1.3, a long cylinder 1.2,
// a box of a head's proportions 1.05.
const (
	Plate    Drag = 1.2
	Cylinder Drag = 1.2
	Block    Drag = 1.05
)

// Facing is a body that the wind meets.
type Facing struct {
	Area   float64 // that it shows to the wind, m²
	Height float64 // of the middle of that over the ground, m
	Drag   Drag
}

// WindForce is what a wind, m/s, pushes a body with, N.
func WindForce(f Facing, speed float64) float64 {
	return float64(f.Drag) * WindPressure(speed) * f.Area
}

// Footing is what keeps a stand from tipping.
type Footing struct {
	Mass float64 // of all that stands on it, with bags, kg
	Foot float64 // the circle that its feet stand on, m across
	Feet int     // how many, evenly round: between two of them it tips most easily
}

// Lever is how far the edge that the stand tips over lies from its middle, m: half the circle times cos(pi/n) of n feet.
func (f Footing) Lever() float64 { return f.Foot / 2 * math.Cos(math.Pi/float64(f.Feet)) }

// TipsAt is the wind, m/s, at which a stand tips: where the moments of what it shows equal the weight times the lever. 0: it shows nothing
// to the wind, or stands on nothing.
func TipsAt(f Footing, faces []Facing) float64 {
	turning := 0.0 // N m in a wind of 1 m/s
	for _, face := range faces {
		turning += WindForce(face, 1) * face.Height
	}
	if turning <= 0 {
		return 0
	}
	return math.Sqrt(f.Mass * Gravity * f.Lever() / turning)
}

// Ballast is what a stand must bear at its middle so that it does not tip at a wind, m/s: kg, of which its own mass and load are a part.
func Ballast(f Footing, faces []Facing, speed float64) float64 {
	turning := 0.0
	for _, face := range faces {
		turning += WindForce(face, speed) * face.Height
	}
	return turning / (Gravity * f.Lever())
}

// GustFactor is by how much a gust may be faster than the wind that a hand-held meter shows (common practice: half as much again), so what
// is out in it comes down at TipsAt by as much.
const GustFactor = 1.5

// TakeDownAt is the wind, m/s, at which a thing comes down before a gust tips it.
func TakeDownAt(tips float64) float64 { return tips / GustFactor }

// WallFriction is the friction of a rubber foot on painted plaster, a ratio (common practice, on the side of less: 0.4).
const WallFriction = 0.4

// PoleForce is with what force, N, a pole must press on each of two walls to bear a load, kg, by friction alone at both ends.
func PoleForce(load, friction float64) float64 { return load * Gravity / (2 * friction) }
