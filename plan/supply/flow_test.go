package supply_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"scrimshaw/plan/power"
	"scrimshaw/plan/supply"
)

// A tree by hand: a box of three phases feeds three circuits, one of them by a block; what is on them is on the box, each on its phase.
func TestTreeByHand(t *testing.T) {
	s := resolved(t, `circuits:
  gen: {item: generator-2000, phases: 3, kva: 9, power: 7 kW, breaker: 20, tank: 12, burn: 4}
  box: {from: gen, item: distribution-32a, already: 690 W}
  a: {from: box, phase: L1}
  b: {from: box, phase: L2, breaker: 10}
  c: {from: box, phase: L3}
  block: {from: c, item: splitter-3}
lights:
  k: {unit: fresnel-tungsten-2000, at: [0, 0], height: 2, aim: down, circuit: a}
  l: {unit: fresnel-tungsten-650, at: [1, 0], height: 2, aim: down, level: 50 %, circuit: b}
  m: {unit: fresnel-tungsten-300, at: [2, 0], height: 2, aim: down, count: 2, circuit: block}
`)
	all := supply.Of(s)
	box := all.Of("box")
	want := [3]float64{2000.0/230 + 1, 650.0/230 + 1, 600.0/230 + 1}
	for p := range want {
		if !near(box.Flow.Amps[p], want[p]) || !near(all.Of("gen").Flow.Amps[p], want[p]) {
			t.Errorf("phase %d carries %g A, want %g", p, box.Flow.Amps[p], want[p])
		}
	}
	if !near(box.Full, want[0]) || !near(box.Flow.Watts, 690+2000+650+600) || !near(box.Flow.VoltAmps, box.Flow.Watts) {
		t.Errorf("the box carries %+v", box)
	}
	if set, light := box.Set.Amps[1], s.Lights[1].Head.LightAt(0.5); !near(set, 1+650.0/230*power.DimmedFilament(light)) || !near(box.Set.Watts, 690+2000+600+650*power.DimmedFilamentPower(light)) {
		t.Errorf("as set the second phase has %g A, and all of it %g W", set, box.Set.Watts)
	}
	if got := box.Flow.Thirds; !near(got, 650.0/230/math.Pi) {
		t.Errorf("thirds %g A: one lamp is dimmed", got)
	}
	mean := (want[0] + want[1] + want[2]) / 3
	if got := box.Flow.Uneven(); !near(got, want[0]/mean-1) {
		t.Errorf("uneven by %g", got)
	}
	for name, want := range map[string]float64{"gen": 20, "box": 32, "a": 16, "b": 10, "c": 16, "block": 16} {
		if got := all.Of(name).Circuit.Breaker; got != want {
			t.Errorf("%s carries %g A, want %g", name, got, want)
		}
	}
	if got := all.Of("gen").Hours(); got != 3 {
		t.Errorf("a tank of 12 l at 4 l an hour lasts %g h", got)
	}
	if all.Of("gen").OverPower() || strings.Join(box.Numbers(), " ") != "1 2 3" || all.Of("block").Circuit.Residual != 0 || box.Circuit.Residual != 30 {
		t.Errorf("the box has %v", box.Numbers())
	}
}

// A battery lasts as long as its usable energy by what the lights take as they are set; on direct current nothing leaks or has harmonics.
func TestBatteryHours(t *testing.T) {
	s := resolved(t, `circuits: {b: {item: battery-26v-270}, inverter: {item: battery-mains-1000, usable: 90 %}}
lights:
  k: {unit: led-point-150-daylight, at: [0, 0], height: 2, aim: down, level: 25 %, circuit: b}
  l: {unit: led-panel-100, at: [0, 1], height: 2, aim: down, level: 50 %, circuit: inverter}
`)
	all := supply.Of(s)
	if got, want := all.Loads[0].Hours(), 270*0.8/(0.25*s.Lights[0].Head.Watts); !near(got, want) || all.Loads[0].Leakage != 0 || all.Loads[0].Flow.Thirds != 0 {
		t.Errorf("it lasts %g h, want %g: %+v", got, want, all.Loads[0])
	}
	if got, want := all.Loads[1].Hours(), 1000*0.9/(0.5*s.Lights[1].Head.Watts); !near(got, want) || all.Loads[1].Circuit.Direct || all.Loads[1].Leakage != power.SupplyLeakage {
		t.Errorf("it lasts %g h, want %g", got, want)
	}
}

// On a feed and on its cables lights stand as they do in the scene, whatever circuit they are on, and so do those of which nobody knows what they draw.
func TestLightsInTheirOrder(t *testing.T) {
	s := resolved(t, `circuits: {box: {phases: 3, breaker: 16}, c: {from: box, phase: L3}, a: {from: box, phase: L1}, sub: {from: a}}
lights:
  k: {unit: fresnel-tungsten-300, at: [0, 0], height: 2, aim: down, circuit: sub}
  l: {output: {candela: 100, shape: uniform}, at: [1, 0], height: 2, aim: down, circuit: a}
  m: {unit: fresnel-tungsten-300, at: [2, 0], height: 2, aim: down, circuit: c}
  n: {output: {candela: 100, shape: uniform}, at: [3, 0], height: 2, aim: down, circuit: sub}
`)
	all := supply.Of(s)
	for name, want := range map[string]string{"box": "1 2 3 4", "c": "3", "a": "1 2 4", "sub": "1 4"} {
		if got := strings.Join(all.Of(name).Numbers(), " "); got != want {
			t.Errorf("%s has %s, want %s", name, got, want)
		}
	}
	var unknown []string
	for _, l := range all.Of("box").Unknown() {
		unknown = append(unknown, l.Name)
	}
	if got := strings.Join(unknown, " "); got != "l n" {
		t.Errorf("nobody knows what %s draw, want l and n", got)
	}
}

// Random trees: each circuit carries the lights below it, phase by phase, as a walk from each light up adds them.
func TestRandomTrees(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	for range 12 {
		var b strings.Builder
		b.WriteString("circuits:\n  c0: {breaker: 63, phases: 3}\n")
		from := map[string]string{}
		phase := map[string]int{}
		const circuits = 9
		for i := 1; i < circuits; i++ {
			up := rng.IntN(i)
			name := fmt.Sprintf("c%d", i)
			from[name] = fmt.Sprintf("c%d", up)
			on := ""
			if up == 0 {
				phase[name] = rng.IntN(3)
				on = fmt.Sprintf(", phase: L%d", phase[name]+1)
			}
			fmt.Fprintf(&b, "  %s: {breaker: 16, from: c%d%s}\n", name, up, on)
		}
		b.WriteString("lights:\n")
		want := map[string]*[3]float64{}
		for i := range circuits {
			want[fmt.Sprintf("c%d", i)] = &[3]float64{}
		}
		for i := range 8 {
			name := fmt.Sprintf("c%d", 1+rng.IntN(circuits-1))
			watts := []int{300, 650, 2000}[rng.IntN(3)]
			fmt.Fprintf(&b, "  l%d: {unit: fresnel-tungsten-%d, at: [%d, 0], height: 2, aim: down, circuit: %s}\n", i, watts, i, name)
			p := 0
			for ; name != ""; name = from[name] {
				want[name][p] += float64(watts) / 230
				p = phase[name]
			}
		}
		all := supply.Of(resolved(t, b.String()))
		for i := range all.Loads {
			l := &all.Loads[i]
			for p, amps := range want[l.Circuit.Name] {
				if !(math.Abs(l.Flow.Amps[p]-amps) <= 1e-9) {
					t.Fatalf("%s carries %g A on phase %d, want %g in\n%s", l.Circuit.Name, l.Flow.Amps[p], p, amps, b.String())
				}
			}
		}
	}
}

// What is moved off an overloaded phase goes to another phase of the same box, and never to where the feed has no room for it.
func TestReliefKnowsPhases(t *testing.T) {
	const scene = `circuits:
  box: {breaker: 10, phases: 3}
  a: {from: box, phase: L1, breaker: 16}
  b: {from: box, phase: L1, breaker: 16}
  c: {from: box, phase: L2, breaker: %g}
lights:
  k: {unit: fresnel-tungsten-2000, at: [0, 0], height: 2, aim: down, circuit: a}
  l: {unit: fresnel-tungsten-650, at: [1, 0], height: 2, aim: down, circuit: a}
`
	all := supply.Of(resolved(t, fmt.Sprintf(scene, 16.0)))
	if moves := all.Relief(all.Of("box")); len(moves) != 1 || moves[0].Light.Name != "l" || moves[0].To.Circuit.Name != "c" {
		t.Errorf("moves %+v", moves)
	}
	all = supply.Of(resolved(t, fmt.Sprintf(scene, 2.0)))
	if moves := all.Relief(all.Of("box")); moves != nil {
		t.Errorf("moves %+v, and no circuit has room", moves)
	}
}

// Cable up a tree: what is lost before a box is lost for its lights too.
func TestDropAddsUp(t *testing.T) {
	s := resolved(t, `circuits:
  house: {breaker: 32, at: [0, 0]}
  box: {from: house, item: splitter-32-2x16, at: [40, 0]}
  way: {from: box}
lights:
  k: {unit: fresnel-tungsten-2000, at: [60, 0], height: 2, aim: down, mount: floor, circuit: box}
  l: {unit: fresnel-tungsten-300, at: [40, 0], height: 2, aim: down, mount: floor, circuit: way}
`)
	all := supply.Of(s)
	box := all.Of("box")
	amps := 2000.0 / 230
	var first float64
	second := power.CableDrop(22+2, box.Draws[0].Run.Section, amps) / 230
	if way := all.Of("way"); way.Feeder != nil || way.Draws[0].Run == nil || !near(way.Draws[0].Run.Drop, power.CableDrop(2, way.Draws[0].Run.Section, 300.0/230)/230) {
		t.Errorf("a way of the box: %+v", way.Draws[0].Run)
	}
	amps += 300.0 / 230
	first = power.CableDrop(44, 6, amps) / 230
	if box.Feeder == nil || !near(box.Feeder.Drop, first) || !near(box.Draws[0].Run.InAll, first+second) {
		t.Errorf("%+v and %+v, want %g and %g in all", box.Feeder, box.Draws[0].Run, first, first+second)
	}
}
