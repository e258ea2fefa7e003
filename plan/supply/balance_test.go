package supply_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
)

// phased is a set-up of a box of three phases, a way on each of them, and a few lamps, most of them on the first.
func phased(r *rand.Rand) *plan.Setup {
	s := &plan.Setup{Circuits: []plan.Circuit{{Name: "box", Volts: 230, Breaker: 12 + 20*r.Float64(), Rule: 1, ThreePhases: true}}}
	for p, phase := range term.Phases {
		s.Circuits = append(s.Circuits, plan.Circuit{Name: fmt.Sprint("c", p), From: "box", Phase: phase, Volts: 230, Breaker: 4 + 30*r.Float64(), Rule: 1})
	}
	for i := range 2 + r.IntN(4) {
		l := plan.Light{Name: fmt.Sprint("l", i), Level: 1, Count: 1, Circuit: "c0", Mains: 230}
		if r.IntN(3) == 0 {
			l.Circuit = "c1"
		}
		l.Head.Watts, l.Head.PowerFactor, l.Head.Technology = 200+2000*r.Float64(), 1, term.Tungsten
		s.Lights = append(s.Lights, l)
	}
	return s
}

// evenBy is the fewest lights, up to three, that leave the phases within a quarter of what each may carry, one after the other to a way that has room for it by
// then; 0 where none do. It tries every way for every light, and reckons with watts alone.
func evenBy(s *plan.Setup) (best int) {
	var order []*plan.Light
	for c := range 3 {
		for i := range s.Lights {
			if l := &s.Lights[i]; l.Circuit == s.Circuits[1+c].Name {
				order = append(order, l)
			}
		}
	}
	for way := range int(math.Pow(3, float64(len(order)))) {
		amps, count, fits := [3]float64{}, 0, true
		for _, l := range order {
			amps[int(l.Circuit[1]-'0')] += l.Head.Watts / 230
		}
		for i, rest := 0, way; i < len(order); i, rest = i+1, rest/3 {
			from, to, draws := int(order[i].Circuit[1]-'0'), rest%3, order[i].Head.Watts/230
			if from != to {
				amps[from], amps[to], count = amps[from]-draws, amps[to]+draws, count+1
				fits = fits && amps[to] <= math.Min(s.Circuits[1+to].Breaker, s.Circuits[0].Breaker)+1e-9
			}
		}
		fits = fits && slices.Max(amps[:])-slices.Min(amps[:]) <= s.Circuits[0].Breaker/4+1e-9
		if fits && count > 0 && count <= 3 && (best == 0 || count < best) {
			best = count
		}
	}
	return best
}

// Phases are made even by as few lights as trying all of them finds, they carry then what is said, and where no few lights do, the one that is moved leaves them
// more even than before.
func TestPhasesAreBalanced(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 1))
	even, better, none := 0, 0, 0
	for n := range 400 {
		s := phased(r)
		all := supply.Of(s)
		box := all.Of("box")
		if !box.OutOfBalance() {
			continue
		}
		want, before := evenBy(s), box.Flow.Spread()
		moves, left := all.Balance(box)
		if want > 0 && len(moves) != want || want == 0 && len(moves) > 1 {
			t.Fatalf("scene %d: %d lights move, trying all moves %d", n, len(moves), want)
		}
		for _, m := range moves {
			m.Light.Circuit = m.To.Circuit.Name
		}
		now := supply.Of(s)
		after := now.Of("box")
		for p := range left {
			if !(math.Abs(left[p]-after.Flow.Amps[p]) <= 1e-9) {
				t.Fatalf("scene %d: after the moves the phases carry %v, said are %v", n, after.Flow.Amps, left)
			}
		}
		switch {
		case want > 0 && after.OutOfBalance(), moves != nil && after.Flow.Spread() >= before:
			t.Fatalf("scene %d: %g A between the phases before, %g A after %d moves", n, before, after.Flow.Spread(), len(moves))
		case want > 0:
			even++
		case moves != nil:
			better++
		default:
			none++
		}
	}
	if even < 30 || better < 10 || none < 10 {
		t.Errorf("%d scenes are made even, %d more even, %d not at all: too few", even, better, none)
	}
}

// Of a box and what feeds it, both out of balance, that counts as it which feeds; a circuit of one phase never is.
func TestBalanceIsToldOnce(t *testing.T) {
	s := resolved(t, `circuits: {gen: {breaker: 16, phases: 3}, box: {from: gen, phases: 3}, a: {from: box, phase: L2}}
lights: {k: {unit: fresnel-tungsten-2000, at: [0, 0], height: 2, aim: down, circuit: a}}
`)
	all := supply.Of(s)
	for name, want := range map[string]bool{"gen": true, "box": false, "a": false} {
		if got := all.Of(name).OutOfBalance(); got != want {
			t.Errorf("%s is out of balance: %v", name, got)
		}
	}
}
