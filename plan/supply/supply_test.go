package supply_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
)

// resolved is a scene of circuits and lights.
func resolved(t testing.TB, text string) *plan.Setup {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	s := resolve.Resolve(doc, doc.Base(log), log)
	if log.Failed() {
		t.Fatal(log.All())
	}
	return s
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) }

// The loads of two circuits by hand: a tungsten of 650 W is 650/230 = 2.826 A and takes (1/2)^(0.54/3.4) = 0.8958 of that at half its light; two panels of
// LED take as much as they give; what was on a circuit before counts at a power factor of 1; a light on no circuit is told apart.
func TestLoadsByHand(t *testing.T) {
	s := resolved(t, `circuits: {ring: {breaker: 16, rule: 80 %, already: 460 W}, spur: {breaker: 6}}
lights:
  a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, level: 50 %, circuit: ring}
  b: {unit: led-panel-100, at: [1, 0], height: 2, aim: down, level: 25 %, count: 2, circuit: ring}
  c: {unit: fresnel-tungsten-300, at: [2, 0], height: 2, aim: down}
  d: {output: {candela: 100, shape: uniform}, at: [3, 0], height: 2, aim: down, circuit: spur}
`)
	all := supply.Of(s)
	ring, spur := all.Loads[0], all.Loads[1]
	panel := &s.Lights[1].Head
	one := panel.Watts / (230 * panel.PowerFactor)
	if want := 460.0/230 + 650.0/230 + 2*one; !near(ring.Full, want) {
		t.Errorf("ring carries %g A at full, want %g", ring.Full, want)
	}
	if want := 460.0/230 + 650.0/230*math.Pow(0.5, 0.54/3.4) + 2*one/4; !near(ring.AsSet, want) {
		t.Errorf("ring carries %g A as set, want %g", ring.AsSet, want)
	}
	if want := 16*0.8 - ring.Full; !near(ring.Room(), want) {
		t.Errorf("ring has room for %g A, want %g", ring.Room(), want)
	}
	if want := s.Lights[0].Head.Inrush + 2*panel.Inrush; !near(ring.Inrush, want) {
		t.Errorf("ring has a peak of %g A, want %g", ring.Inrush, want)
	}
	if len(all.Loose) != 1 || all.Loose[0].Light.Name != "c" {
		t.Errorf("loose are %v, want c alone", all.Loose)
	}
	if unknown := spur.Unknown(); len(unknown) != 1 || unknown[0].Name != "d" || spur.Full != 0 {
		t.Errorf("of spur unknown are %v, want d", unknown)
	}
}

// Direct current has no power factor, and a battery whose volts nothing says has no amps.
func TestDirectCurrent(t *testing.T) {
	const lamp = "lights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, circuit: b}}"
	s := resolved(t, "circuits: {b: {breaker: 20, kind: battery, volts: 24}}\n"+lamp)
	if got, want := supply.Of(s).Loads[0].Full, s.Lights[0].Head.Watts/24; !near(got, want) {
		t.Errorf("%g A from a battery of 24 V, want %g", got, want)
	}
	if l := supply.Of(resolved(t, "circuits: {b: {breaker: 0.2, kind: battery}}\n"+lamp)).Loads[0]; l.Known || l.Full != 0 || l.Overloaded() {
		t.Errorf("a battery of no known volts carries %+v", l)
	}
}

// By feet the mains are those of 60 Hz: 120 V.
func TestMainsInFeet(t *testing.T) {
	const scene = "circuits: {ring: {breaker: 20}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 6, aim: down, circuit: ring}}"
	if got := supply.Of(resolved(t, "units: ft\n"+scene)).Loads[0].Full; !near(got, 650.0/120) {
		t.Errorf("650 W are %g A at 120 V", got)
	}
}

// What relieves a circuit is what trying every way to spread its lights finds: never more lights than need be, never one circuit over
// its limit by it, and nothing where three lights do not do.
func TestReliefByBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 3))
	moved, none := 0, 0
	for n := range 200 {
		s := crowd(r)
		all := supply.Of(s)
		from := &all.Loads[0]
		if !from.Overloaded() {
			continue
		}
		want := fewest(s)
		got := all.Relief(from)
		switch {
		case want == 0 && got != nil, want > 0 && len(got) != want:
			t.Fatalf("scene %d: %d lights move, trying all moves %d", n, len(got), want)
		case want == 0:
			none++
			continue
		}
		moved++
		for _, m := range got {
			m.Light.Circuit = m.To.Circuit.Name
		}
		for _, l := range supply.Of(s).Loads {
			if l.Overloaded() {
				t.Fatalf("scene %d: after the moves %s carries %g of %g A", n, l.Circuit.Name, l.Full, l.Circuit.Limit())
			}
		}
	}
	if moved < 30 || none < 30 {
		t.Errorf("%d scenes can be relieved and %d cannot: too few", moved, none)
	}
}

// crowd is a set-up of three circuits and a few lamps, most of them on the first; the others carry no more than they may.
func crowd(r *rand.Rand) *plan.Setup {
	s := &plan.Setup{}
	for i := range 3 {
		s.Circuits = append(s.Circuits, plan.Circuit{Name: fmt.Sprint("c", i), Volts: 230, Breaker: 6 + 10*r.Float64(), Rule: 1})
	}
	for i := range 3 + r.IntN(4) {
		l := plan.Light{Name: fmt.Sprint("l", i), Level: 1, Count: 1, Circuit: "c0", Mains: 230}
		l.Head.Watts, l.Head.PowerFactor, l.Head.Technology = 200+2000*r.Float64(), 1, term.Tungsten
		s.Lights = append(s.Lights, l)
	}
	return s
}

// fewest is the least number of lights of the first circuit, up to three, that put all circuits under their limits elsewhere; 0 where none do. It
// tries every circuit for every light.
func fewest(s *plan.Setup) (best int) {
	ways := int(math.Pow(3, float64(len(s.Lights))))
	for way := range ways {
		amps, moved := [3]float64{}, 0
		for i, rest := 0, way; i < len(s.Lights); i, rest = i+1, rest/3 {
			amps[rest%3] += s.Lights[i].Head.Watts / 230
			if rest%3 != 0 {
				moved++
			}
		}
		fits := true
		for i := range amps {
			fits = fits && amps[i] <= s.Circuits[i].Breaker+1e-9
		}
		if fits && moved <= 3 && (best == 0 || moved < best) {
			best = moved
		}
	}
	return best
}

// Of four hundred lamps that all differ the advice names the two, or the three, that take the least away and are enough, as trying all pairs and triples says; and
// nothing where no three are. Their watts go up by even steps, so that the least sum that is enough is known.
func TestReliefOfACrowd(t *testing.T) {
	const n, step = 400, 0.37 // W
	watts := func(i int) float64 { return 300 + step*float64(i*7919%n) }
	total, most := 0.0, 300+step*(n-1)
	for i := range n {
		total += watts(i)
	}
	for _, c := range []struct {
		over float64 // W
		want int
	}{{1.5 * most, 2}, {2.6 * most, 3}, {3.01 * most, 0}, {total - 16*230, 0}} {
		s := &plan.Setup{Circuits: []plan.Circuit{{Name: "a", Volts: 230, Breaker: (total - c.over) / 230, Rule: 1}, {Name: "b", Volts: 230, Breaker: 10, Rule: 1}}}
		for i := range n {
			l := plan.Light{Name: fmt.Sprint("l", i), Level: 1, Count: 1, Circuit: "a", Mains: 230}
			l.Head.Watts, l.Head.PowerFactor, l.Head.Technology = watts(i), 1, term.Tungsten
			s.Lights = append(s.Lights, l)
		}
		all := supply.Of(s)
		moves, sum := all.Relief(&all.Loads[0]), 0.0
		for _, m := range moves {
			sum += m.Amps
		}
		least := 0.0 // of so many lamps of n steps, the least steps that are enough
		if c.want > 0 {
			least = (300*float64(c.want) + step*math.Ceil((c.over-300*float64(c.want))/step-1e-9)) / 230
		}
		if len(moves) != c.want || !(math.Abs(sum-least) <= 1e-6) {
			t.Errorf("%.0f W over: %d lamps of %.4f A go, want %d of %.4f A", c.over, len(moves), sum, c.want, least)
		}
	}
}

// A load is printed rounded up, so that no circuit looks as if it had room that it has not.
func TestLoadsAreRoundedUp(t *testing.T) {
	for amps, want := range map[float64]string{16.01: "16.1 A", 16: "16 A", 4.26: "4.3 A", 0: "0 A"} {
		if got := supply.AmpsOver(amps); got != want {
			t.Errorf("%g A prints as %q, want %q", amps, got, want)
		}
	}
}

// As set a circuit carries what the cue that takes most has on it, by hand: a tungsten of 650 W and one of 300 W at full on 230 V, the first off
// before the cue and the second after the next.
func TestTheHeaviestCueCounts(t *testing.T) {
	s := resolved(t, `circuits: {ring: {breaker: 16}}
lights:
  a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, level: off, circuit: ring}
  b: {unit: fresnel-tungsten-300, at: [1, 0], height: 2, aim: down, circuit: ring}
cues: {q1: {over: 2 s, lights: {a: 100 %}}, q2: {over: 2 s, lights: {b: off}}}
`)
	all := supply.Of(s)
	if load := all.Of("ring"); !near(load.AsSet, 950.0/230) || load.Cue != "q1" || !near(load.Full, 950.0/230) {
		t.Errorf("%g A as set, after %q, %g A at full", load.AsSet, load.Cue, load.Full)
	}
	s.Cues = nil
	all = supply.Of(s)
	if load := all.Of("ring"); !near(load.AsSet, 300.0/230) || load.Cue != "" {
		t.Errorf("%g A as set without cues, after %q", load.AsSet, load.Cue)
	}
}
