package meter

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/unit"
)

// Sees is what a spot meter reads, and past what.
type Sees struct {
	Surface  string   // the first surface along its way that passes no light straight; "" none
	Past     []Passed // from the lens on
	Scatters bool     // light comes through that surface, too, as through cloth, and the meter does not count it

	Working  float64    // the T-number that stops are counted from
	HandHeld [2]float64 // T-number that a hand-held spot meter shows, of lens.ReflectedConstant and of ReflectedConstant2; 0 in the dark
}

// Passed is something that a spot meter looks through, or a mirror that it looks into.
type Passed struct {
	Name     string
	Mirror   bool
	Scatters bool // it has light of its own, which the meter does not count
}

// Words name what a spot meter reads: "log", "nothing", "desk through street", "desk in glass".
func (s *Sees) Words() string {
	words := s.Surface
	if words == "" {
		words = "nothing"
	}
	for i := range s.Past {
		by := " through "
		if s.Past[i].Mirror {
			by = " in "
		}
		words += by + s.Past[i].Name
	}
	return words
}

// SetHandHeld fills in what hand-held spot meters show of a luminance, cd/m².
func (s *Sees) SetHandHeld(luminance float64, x *plan.Exposure) {
	s.Working = x.Stop.N
	for i, k := range [...]float64{lens.ReflectedConstant, lens.ReflectedConstant2} {
		if n := FiniteOrNil(x.Metered().SpotNumber(luminance, k)); n != nil {
			s.HandHeld[i] = *n
		}
	}
}

// spotInWords says what a spot meter reads, and which stops meters show of it.
func (r *Reading) spotInWords() string {
	words := r.Name + " reads " + r.Sees.Words()
	if !(r.Sees.HandHeld[0] > 0 && r.Sees.Working > 0) {
		return words
	}
	var shown []string
	for i, k := range [...]float64{lens.ReflectedConstant, lens.ReflectedConstant2} {
		over := unit.FormatRelativeStops(2*lens.Stops(r.Sees.HandHeld[i]/r.Sees.Working), unit.FormatStop(r.Sees.Working))
		shown = append(shown, fmt.Sprintf("%s (K = %s, %s)", unit.FormatStop(r.Sees.HandHeld[i]), unit.FormatNumber(k), over))
	}
	return fmt.Sprintf("%s, %s; a hand-held spot meter shows %s", words, fromGrey(r.Over), strings.Join(shown, " or "))
}

// GreyInWords says which reflected-light meter agrees with stops from grey, and by how much hand-held ones differ.
func GreyInWords(x *plan.Exposure) string {
	own := x.Metered().GreyConstant()
	words := fmt.Sprintf("%s in the light of the working stop, as a spot meter of K = %.1f has it (%s C ÷ π, C = %s).",
		unit.FormatPercent(lens.Grey), own, unit.FormatNumber(lens.Grey), unit.FormatNumber(x.Constant))
	if !(own > 0) {
		return words
	}
	first, second := lens.Stops(own/lens.ReflectedConstant), lens.Stops(own/lens.ReflectedConstant2)
	return fmt.Sprintf("%s A hand-held one shows %s stops with K = %s, %s with K = %s", words, signed(first), unit.FormatNumber(lens.ReflectedConstant),
		signed(second), unit.FormatNumber(lens.ReflectedConstant2))
}
