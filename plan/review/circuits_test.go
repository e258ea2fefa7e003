package review_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/review"
	"scrimshaw/plan/source"
)

// toldOf are the findings of a scene that have one of some codes, each as a line with its fix.
func toldOf(t *testing.T, scene string, codes ...string) string {
	t.Helper()
	s := lit(t, scene)
	var told []string
	for _, d := range review.Check(s.Setup, &s.Readings) {
		for _, code := range codes {
			if d.Code == code {
				told = append(told, fmt.Sprintf("%s %s %s [%s]", severity(d.Severity), d.Code, d.Message, d.Hint))
			}
		}
	}
	return strings.Join(told, "\n")
}

func severity(s source.Severity) string {
	if s == source.Warning {
		return "warning"
	}
	return "info"
}

// Circuits are held to their breakers, with every light at full, and the review says what it does not know.
func TestCircuits(t *testing.T) {
	codes := []string{review.CodeOverload, review.CodeLoadUnknown, review.CodeInrush, review.CodeNoCircuit, review.CodeCableDrop, review.CodeCableAcross, review.CodeNoCable, review.CodeInFrame,
		review.CodeFeedOver, review.CodeNeutral, review.CodeLeakage, review.CodeDimmer, review.CodeUneven, review.CodeRunsOut}
	const den = "rooms: {den: {size: [4, 3]}, hall: {at: [4.15, 0], size: [2, 3]}}\n"
	through := func(door string) string {
		return den + "openings: {d: {" + door + "}}\ncircuits: {ring: {breaker: 16, at: [1, 1.5]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [5.5, 1.5], height: 2, aim: down, circuit: ring}}\n"
	}
	far := func(watts int, metres string) string {
		return fmt.Sprintf("circuits: {ring: {breaker: 32, at: [0, 0]}}\nlights: {k: {unit: fresnel-tungsten-%d, at: [%s, 0], height: 2, aim: down, circuit: ring}}\n", watts, metres)
	}
	const twoFloors = "rooms: {den: {size: [4, 3]}, attic: {size: [4, 3], base: 2.8}}\n"
	const upstairs = "circuits: {ring: {breaker: 16, at: {wall: den.left, along: 1.5}}}\nlights: {k: {unit: fresnel-tungsten-650, at: {wall: attic.left, along: 1.5, in: 0.5}, height: 1.5, aim: down, mount: floor, circuit: ring}}\n"
	lamp := func(name, unit, circuit string) string {
		return fmt.Sprintf("  %s: {unit: %s, at: [0, 0], height: 2, aim: down%s}\n", name, unit, circuit)
	}
	const on = ", circuit: ring"
	for _, c := range []struct{ name, scene, want string }{
		{"no circuits", "lights:\n" + lamp("k", "fresnel-tungsten-2000", ""), ""},
		{"room enough", "circuits: {ring: {breaker: 16}}\nlights:\n" + lamp("k", "fresnel-tungsten-650", on), ""},
		{"too much for one", "circuits: {ring: {breaker: 6}}\nlights:\n" + lamp("k", "open-tungsten-2000", on),
			"warning overload circuit ring carries 8.7 A with all lights at full, and its breaker 6 A [take 2.7 A off it: no other circuit has room, so another circuit, a generator or smaller units are wanted]\n" +
				"info inrush 1 k alone draws a peak of 100 A as it is switched on: a breaker of 6 A, type B, may open [put it on a larger circuit, or one with a breaker of type C]"},
		{"dimmed, and still too much", "circuits: {ring: {breaker: 6}, bath: {breaker: 10, rule: 80 %}}\nlights:\n" + strings.Replace(lamp("k", "open-tungsten-2000", on), "aim:", "level: 5 %, aim:", 1),
			"warning overload circuit ring carries 8.7 A with all lights at full, and its breaker 6 A [take 2.7 A off it: no other circuit has room, so another circuit, a generator or smaller units are wanted]\n" +
				"info inrush 1 k alone draws a peak of 100 A as it is switched on: a breaker of 6 A, type B, may open [put it on a larger circuit, or one with a breaker of type C]"},
		{"room on another", "circuits: {ring: {breaker: 16, rule: 50 %}, bath: {breaker: 10}}\nlights:\n" + lamp("k", "open-tungsten-2000", on) + lamp("l", "led-panel-100", on),
			"warning overload circuit ring carries 9.3 A with all lights at full, and 50 % of its breaker of 16 A are 8 A [move 1 k (8.7 A) to bath]\n" +
				"info inrush 1 k alone draws a peak of 100 A as it is switched on: a breaker of 16 A, type B, may open [put it on a larger circuit, or one with a breaker of type C]"},
		{"a source of no known power, and one on no circuit", "circuits: {ring: {breaker: 16}}\nlights:\n  k: {output: {candela: 100, shape: uniform}, at: [0, 0], height: 2, aim: down, circuit: ring}\n" + lamp("l", "led-panel-100", ""),
			"info no-circuit 2 l is on no circuit, and no breaker is checked for it [add circuit: and the name of one]\n" +
				"info load-unknown nothing says what 1 k on circuit ring draws, and its amps are without it [write its power into a kit file, or read it off its plate and add it to already:]"},
		{"two at once", "circuits: {ring: {breaker: 16}}\nlights:\n" + lamp("k", "discharge-575", on) + lamp("l", "discharge-575", on),
			"info inrush switched on at once, the lights on circuit ring draw a peak of 80 A: a breaker of 16 A, type B, may open [switch them on one after the other]"},
		{"through a gap", through("gap: den.right, along: 1, width: 1"), ""},
		{"through a door", through("door: den.right, along: 1, ajar: 90"), "warning cable-across the cable to 1 k leads through the door d [ramp or tape it, and keep the door open]"},
		{"through the way out", through("door: den.right, along: 1, ajar: 90, escape: true"), "warning cable-across the cable to 1 k leads through d, the way out [feed it from elsewhere, or take the cable over the door]"},
		{"no way", den + "circuits: {ring: {breaker: 16, at: [1, 1.5]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [5.5, 1.5], height: 2, aim: down, circuit: ring}}\n",
			"warning no-cable there is no way for a cable from the outlet of ring to 1 k [open a door or a gap on the way, or put it on another circuit]"},
		{"over a walk", den + "people: {ada: {at: [2, 0.5], walk: [[2, 0.5], [2, 2.5]]}}\ncircuits: {ring: {breaker: 16, at: [1, 1.5]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [3, 1.5], height: 2, aim: down, circuit: ring}}\n",
			"warning cable-across the cable to 1 k crosses the walk of ada [ramp or tape it, or lead it round]"},
		{"beside a walk", den + "people: {ada: {at: [2, 0.5], walk: [[2, 0.5], [2, 1.4]]}}\ncircuits: {ring: {breaker: 16, at: [1, 1.5]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [3, 1.5], height: 2, aim: down, circuit: ring}}\n", ""},
		{"in the picture", "cameras: {A: {at: [0, -3], height: 1.6, looks: 0, lens: 24 mm}}\ncircuits: {gen: {breaker: 16, at: [-5, 6]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [8, 6], height: 2, aim: 90, circuit: gen}}\n",
			"warning in-frame the cable to 1 k shows right across the frame of A, in the lower part: 0.2 % of the frame [lead it round behind the camera or the set, or feed it from another outlet]"},
		{"far", far(2000, "200"), "warning cable-drop 1 k loses 6.6 % of its voltage in 222.00 m of cable of 6 mm², and gives 79.2 % of its light [take a thicker cable, or an outlet that is nearer]"},
		{"not so far", far(2000, "140"), ""},
		{"a breaker that no cable stands", strings.Replace(far(2000, "1"), "breaker: 32", "breaker: 900", 1),
			"warning no-cable no cable of the kit carries 900 A, the breaker of ring [split it over smaller circuits, or write such a cable into a kit file: no box of the kit takes 900 A]"},
		{"a large generator of one phase", gen63, "warning no-cable no cable of the kit carries 63 A, the breaker of gen [put a distribution 63 A beside it, with breakers of 16 A: write box: {from: gen, item: distribution-63a-blue} and a: {from: box}, and put lights on that]"},
		{"a large generator of three phases, on a box that no cable feeds", "circuits: {gen: {kind: generator, kva: 40, breaker: 63, phases: 3, at: [0, -8]}, o: {from: gen, phases: 3, at: [0, 0]}}\n",
			"warning no-cable no cable of the kit carries 63 A, the breaker of gen [put a distribution 3 x 63 A beside it, with breakers of 16 A: write box: {from: gen, item: distribution-63a} and a: {from: box, phase: L1}, and put lights on that]"},
		{"split by that box", strings.Replace(strings.Replace(gen63, "}}\n", "}, box: {from: gen, item: distribution-63a-blue}, a: {from: box}}\n", 1), "circuit: gen", "circuit: a", 1), "info inrush 1 k alone draws a peak of 100 A as it is switched on: a breaker of 16 A, type B, may open [put it on a larger circuit, or one with a breaker of type C]"},
		{"over a track", den + "cameras: {A: {at: [2, 0.4], track: [[2, 0.4], [2, 2.6]], looks: k, lens: 32 mm, height: 1.2}}\ncircuits: {ring: {breaker: 16, at: [1, 1.5]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [3.3, 1.5], height: 2, aim: down, seen: true, circuit: ring}}\n",
			"warning cable-across the cable to 1 k crosses the track of A [lead it under the rails between two sleepers, or round the end of the track]"},
		{"over a sill", den + "openings: {w: {window: den.left, along: centre, width: 1}}\ncircuits: {ring: {breaker: 16, at: [-2, 1.5]}}\nlights: {k: {unit: fresnel-tungsten-650, at: [3.3, 1.5], height: 2, aim: down, circuit: ring}}\n",
			"info cable-across the cable to 1 k leads over the sill of w [keep the window open and the cable off its edge, with a loop that drips outside]"},
		{"up the stairs", twoFloors + "furniture: {flight: {stairs: [1, 3, 2.8], at: [3.4, 1.5]}}\n" + upstairs,
			"info cable-across the cable to 1 k leads over the stairs flight [tie it along the wall or the banister, off the treads]"},
		{"to another floor without stairs", twoFloors + upstairs,
			"info cable-across the cable to 1 k goes from one floor to another, 2.80 m apart, and no stairs of the scene lead there: it is 4.85 m long at least [write the stairs that it takes into furniture:, or feed it from its own floor]"},
		{"to another floor without stairs, in feet", "units: ft\nrooms: {den: {size: [13, 10], height: 8}, attic: {size: [13, 10], height: 8, base: 9}}\ncircuits: {ring: {breaker: 15, at: {wall: den.left, along: 5}}}\n" +
			"lights: {k: {unit: fresnel-tungsten-650, at: {wall: attic.left, along: 5, in: 2}, height: 5, aim: down, mount: floor, circuit: ring}}\n",
			"info cable-across the cable to 1 k goes from one floor to another, 9'0\" apart, and no stairs of the scene lead there: it is 16'2½\" long at least [write the stairs that it takes into furniture:, or feed it from its own floor]"},
		{"on a generator downstairs, in feet", "units: ft\nrooms: {den: {size: [13, 10], height: 8}, attic: {size: [13, 10], height: 8, base: 9}}\nfurniture: {flight: {stairs: [3, 9, 9], at: [11, 5]}}\n" +
			"circuits: {gen: {breaker: 15, phases: 3, kind: generator, at: {wall: den.left, along: 5}, tank: 4.5, burn: 1.1}, a: {from: gen, phase: L1, at: {wall: attic.left, along: 5}}, b: {from: gen, phase: L2, at: {wall: attic.left, along: 6}}}\n" +
			"site: {when: 2026-03-01 22:00, until: 03:00}\nlights: {k: {unit: fresnel-tungsten-650, at: {wall: attic.left, along: 5, in: 2}, height: 5, aim: down, mount: floor, circuit: a}}\n",
			"info cable-across the cable to a leads over the stairs flight [tie it along the wall or the banister, off the treads]\n" +
				"info cable-across the cable to b leads over the stairs flight [tie it along the wall or the banister, off the treads]\n" +
				"warning runs-out a tank of gen lasts 4 h 05 min at full load, and the site says 5 h 00 min [bring 6 l of fuel in all, and fill it between takes, stopped and cool]\n" +
				"warning uneven-phases the phases of gen carry 5.5 A on L1, 0 A on L2 and 0 A on L3 with all lights at full: they differ by 5.5 A, over 25 % of the 15 A that each may carry, and its neutral carries 5.5 A " +
				"[no light that is on it makes them more even: put the next ones on the emptiest phase]"},
		{"a box that no cable reaches", den + "circuits: {ring: {breaker: 16, at: [1, 1.5]}, block: {from: ring, item: splitter-3, at: [5, 1.5]}}\n",
			"warning no-cable there is no way for a cable from the outlet of ring to block [open a door or a gap on the way, or put it on another circuit]"},
		{"a box that no cable of the kit feeds", "circuits: {ring: {breaker: 900, at: [0, 0]}, block: {from: ring, item: splitter-3, at: [3, 0]}}\n",
			"warning no-cable no cable of the kit carries 900 A, the breaker of ring [split it over smaller circuits, or write such a cable into a kit file: no box of the kit takes 900 A]"},
		{"far behind a box", "circuits: {ring: {breaker: 16, at: [0, 0]}, block: {from: ring, item: splitter-3, at: [50, 0]}}\nlights: {k: {unit: fresnel-tungsten-2000, at: [70, 0], height: 2, aim: down, circuit: block}}\n",
			"warning cable-drop 1 k loses 9.5 % of its voltage in 24.00 m of cable of 1.5 mm² and in what feeds it, and gives 71.2 % of its light [take a thicker cable, or an outlet that is nearer]\n" +
				"info inrush 1 k alone draws a peak of 100 A as it is switched on: a breaker of 16 A, type B, may open [put it on a larger circuit, or one with a breaker of type C]"},
		{"one phase of three", "circuits: {box: {breaker: 2, phases: 3}, a: {from: box, phase: L2, breaker: 16}}\nlights:\n" + lamp("k", "fresnel-tungsten-650", ", circuit: a"),
			"warning overload circuit box carries 2.9 A on L2 with all lights at full, and its breaker 2 A [take 0.9 A off it: no other circuit has room, so another circuit, a generator or smaller units are wanted]"},
		{"a generator in watts", "circuits: {gen: {breaker: 16, kind: generator, power: 600 W}}\nlights:\n" + lamp("k", "fresnel-tungsten-650", ", circuit: gen"),
			"warning feed-over gen has to give 650 W with all lights at full, and it gives 600 W [take lights off it, or feed them from a larger one]"},
		{"ten supplies on one protection", "circuits: {ring: {breaker: 16, residual: 30}}\nlights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, count: 10, circuit: ring}}\n",
			"warning leakage about 10 mA flow down the earth of ring all the time, over 30 % of the 30 mA of its protection, which may trip from half of them on [spread the supplies over more residual-current devices, and write leakage: into a kit file where their plates say it]\n" +
				"info inrush switched on at once, the lights on circuit ring draw a peak of 300 A: a breaker of 16 A, type B, may open [switch them on one after the other]"},
		{"supplies on one phase alone", "circuits: {box: {phases: 3, breaker: 5}, a: {from: box, phase: L1, breaker: 63}}\nlights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, count: 9, circuit: a}}\n",
			"info uneven-phases the phases of box carry 4.8 A on L1, 0 A on L2 and 0 A on L3 with all lights at full: they differ by 4.8 A, over 25 % of the 5 A that each may carry, and its neutral carries 4.8 A [no light that is on it makes them more even: put the next ones on the emptiest phase]\n" +
				"warning neutral with up to 27 % of third harmonic the neutral of box carries 5 A, and a cable for 5 A carries 4.3 A then [take lights off it, spread them over the phases, or feed them by a thicker cable]\n" +
				"info inrush switched on at once, the lights on circuit a draw a peak of 270 A: a breaker of 63 A, type B, may open [switch them on one after the other]"},
		{"a generator in kVA", "circuits: {gen: {breaker: 16, kind: generator, power: 700 W, kva: 0.7}}\nlights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, count: 6, circuit: gen}}\n", "warning feed-over gen has to give 0.734 kVA with all lights at full, and it gives 0.7 kVA [take lights off it, or feed them from a larger one]\n" +
			"info inrush switched on at once, the lights on circuit gen draw a peak of 180 A: a breaker of 16 A, type B, may open [switch them on one after the other]"},
		{"a filament that no dimmer stands", "lights: {k: {unit: practical-bulb, bulb: {watts: 2100 W}, at: [0, 0], height: 1, level: 50 %}}\n",
			"info dimmer no dimmer of the kit stands the 2100 W of 1 k [use scrims or nets, or write such a dimmer into a kit file]"},
		{"a bulb that a dimmer hardly sees", "lights: {k: {unit: practical-table, bulb: {watts: 15 W}, at: [0, 0], level: 50 %}}\n",
			"info dimmer 1 k draws 15 W, and a dimmer 300 W dims from 20 W on [put a second lamp on the same dimmer]"},
		{"a bulb of which nobody knows how it dims", "lights: {k: {unit: practical-table, bulb: led-806, at: [0, 0], level: 50 %}}\n",
			"info dimmer 1 k has a bulb that is no filament at 50 %, and nothing says what dims it [try the bulb with its dimmer first, and write dimmer: once that is known]"},
		{"a filament below full on no dimmer", "lights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, level: 50 %, dimmer: none}}\n",
			"warning dimmer 1 k is to be dimmed, and the scene says that it is on no dimmer: it gives all its light then [write dimmer: phase, or another, or leave it at full and use nets or scrims]"},
		{"a bulb that is no filament, on none", "lights: {k: {unit: practical-table, bulb: led-806, at: [0, 0], level: 50 %, dimmer: none}}\n",
			"warning dimmer 1 k is to be dimmed, and the scene says that it is on no dimmer: it gives all its light then [write dimmer: phase, or another, or leave it at full and use nets or scrims]"},
		{"a head that dims itself, and a filament at full", "lights:\n  k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, level: 50 %, dimmer: none}\n  l: {unit: fresnel-tungsten-650, at: [3, 0], height: 2, aim: down, dimmer: none}\n", ""},
		{"a filament on a transformer", "lights: {k: {unit: practical-bulb, bulb: {watts: 2100 W}, at: [0, 0], height: 1, level: 50 %, dimmer: transformer}}\n", ""},
		{"all on one phase", "circuits: {box: {breaker: 16, phases: 3, residual: 30}, a: {from: box, phase: L1}, b: {from: box, phase: L2}, c: {from: box, phase: L3}}\nlights:\n" +
			lamp("k", "fresnel-tungsten-650", ", circuit: a") + lamp("l", "fresnel-tungsten-650", ", circuit: a") + lamp("m", "fresnel-tungsten-300", ", circuit: b"),
			"info uneven-phases the phases of box carry 5.7 A on L1, 1.4 A on L2 and 0 A on L3 with all lights at full: they differ by 5.7 A, over 25 % of the 16 A that each may carry, and its neutral carries 5.2 A " +
				"[move 1 k (2.8 A) from a on L1 to c on L3: then they carry 2.9 A on L1, 1.4 A on L2 and 2.9 A on L3]"},
		{"one light on a generator of three phases", "circuits: {gen: {breaker: 16, phases: 3, kind: generator}, a: {from: gen, phase: L1}, b: {from: gen, phase: L2}}\nlights:\n" + lamp("k", "open-tungsten-2000", ", circuit: a"),
			"warning uneven-phases the phases of gen carry 8.7 A on L1, 0 A on L2 and 0 A on L3 with all lights at full: they differ by 8.7 A, over 25 % of the 16 A that each may carry, and its neutral carries 8.7 A " +
				"[no light that is on it makes them more even: put the next ones on the emptiest phase]\n" +
				"info inrush 1 k alone draws a peak of 100 A as it is switched on: a breaker of 16 A, type B, may open [put it on a larger circuit, or one with a breaker of type C]"},
		{"a battery, and nothing says how long is shot", "circuits: {b: {item: battery-mains-1000, breaker: 16}}\nlights:\n" + lamp("k", "fresnel-tungsten-300", ", circuit: b"),
			"info runs-out the battery b lasts 2 h 40 min with the lights as they are set, and nothing says how long is shot: a day is reckoned at 10 h [bring 4 in all and change them, feed it from mains, or dim what is on it]"},
		{"a battery that lasts the day", "circuits: {b: {item: battery-mains-1000, breaker: 16}}\nlights:\n" + lamp("k", "practical-bulb", ", circuit: b"), ""},
		{"a battery for the hours of the site", "site: {when: 2026-03-01 22:00, until: 02:30}\ncircuits: {b: {item: battery-mains-1000, breaker: 16}}\nlights:\n" + lamp("k", "fresnel-tungsten-300", ", circuit: b"),
			"warning runs-out the battery b lasts 2 h 40 min with the lights as they are set, and the site says 4 h 30 min [bring 2 in all and change them, feed it from mains, or dim what is on it]"},
		{"a tank", "circuits: {gen: {breaker: 16, kind: generator, tank: 4.5, burn: 1.1}}\nlights:\n" + lamp("k", "led-panel-100", ", circuit: gen"),
			"info runs-out a tank of gen lasts 4 h 05 min at full load, and nothing says how long is shot: a day is reckoned at 10 h [bring 11 l of fuel in all, and fill it between takes, stopped and cool]"},
		{"a battery of unknown volts", "circuits: {ring: {breaker: 1, kind: battery}}\nlights:\n" + lamp("k", "led-panel-100", on), ""},
	} {
		if got := toldOf(t, c.scene, codes...); got != c.want {
			t.Errorf("%s: told\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// gen63 is a lamp on a generator that no cable of the kit leads from.
const gen63 = "circuits: {gen: {kind: generator, kva: 20, breaker: 63, at: [0, -8]}}\nlights: {k: {unit: fresnel-tungsten-2000, at: [1, 2], height: 2, aim: down, circuit: gen}}\n"

// The load from which on the review warns of a circuit is its limit: found by halving, with a breaker of 10 A at 80 % and a lamp of 650 W on 230 V.
func TestOverloadBegins(t *testing.T) {
	low, high := 0.0, 3000.0
	for range 12 {
		already := (low + high) / 2
		scene := fmt.Sprintf("circuits: {ring: {breaker: 10, rule: 80 %%, already: %.6f W}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: ring}}\n", already)
		if toldOf(t, scene, review.CodeOverload) == "" {
			low = already
		} else {
			high = already
		}
	}
	if want := 0.8*10*230 - 650.0; low > want || high < want {
		t.Errorf("told from somewhere between %g and %g W on, want %g", low, high, want)
	}
}

// begins is where a figure of a scene makes the review tell a code first, by halving between two that do and do not.
func begins(t *testing.T, scene, code string, low, high float64) (from, to float64) {
	t.Helper()
	at := func(v float64) bool { return toldOf(t, fmt.Sprintf(scene, v), code) != "" }
	if at(low) == at(high) {
		t.Fatalf("%s comes at both %g and %g, or at neither", code, low, high)
	}
	told := at(high)
	for range 14 {
		if middle := (low + high) / 2; at(middle) == told {
			high = middle
		} else {
			low = middle
		}
	}
	return low, high
}

// The figures from which on feeds, neutrals, earths and dimmers are findings, by hand.
func TestFeedsBegin(t *testing.T) {
	supplies := func(count int) string {
		return fmt.Sprintf("lights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, count: %d, circuit: a}}\n", count)
	}
	// A lamp of 25 W with 86 % of thirds on each phase: with more than 45 % the neutral has to keep within the breaker.
	small := "lights:\n"
	for p, c := range []string{"a", "b", "c"} {
		small += fmt.Sprintf("  k%d: {unit: practical-bulb, bulb: led-470, at: [%d, 0], height: 1, count: 40, circuit: %s}\n", p, p, c)
	}
	bulb := lit(t, "circuits: {a: {breaker: 16}}\n"+"lights: {k: {unit: practical-bulb, bulb: led-470, at: [0, 0], height: 1, count: 40, circuit: a}}\n").Setup.Lights[0].Head
	amps := 40 * bulb.Watts / 230 / bulb.PowerFactor
	for _, c := range []struct {
		code, scene     string
		low, high, want float64
	}{
		{review.CodeFeedOver, "circuits: {a: {breaker: 16, kind: generator, power: 1 kW, already: %f W}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: a}}\n", 0, 1000, 350},
		{review.CodeFeedOver, "circuits: {a: {breaker: 16, kind: generator, kva: %f, already: 150 W}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: a}}\n", 0.1, 3, 0.8},
		{review.CodeLeakage, "circuits: {a: {breaker: 16, residual: %f}}\n" + supplies(9), 10, 100, 30},
		{review.CodeUneven, "circuits: {gen: {phases: 3, breaker: %f, kind: generator}, a: {from: gen, phase: L2, breaker: 16}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: a}}\n", 5, 30, 4 * 650.0 / 230},
		{review.CodeUneven, "circuits: {box: {phases: 3, breaker: 16, rule: 80 %%, already: 900 W}, a: {from: box, phase: L1, breaker: 16, already: %f W}, b: {from: box, phase: L3, breaker: 6}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: a}}\n", 0, 1500, 0.25*0.8*16*230 - 650},
		{review.CodeUneven, "units: ft\ncircuits: {gen: {phases: 3, breaker: %f, kind: generator}, a: {from: gen, phase: L2, breaker: 16}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 6, aim: down, circuit: a}}\n", 6, 40, 4 * 650.0 / 120},
		{review.CodeRunsOut, "units: ft\ncircuits: {b: {breaker: 16, kind: battery, energy: %f, usable: 80 %%}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 6, aim: down, circuit: b}}\n", 1000, 20000, 10 * 650 / 0.8},
		{review.CodeRunsOut, "circuits: {b: {breaker: 16, kind: battery, volts: 230, hertz: 50, energy: %f, usable: 80 %%}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: b}}\n", 1000, 20000, 10 * 650 / 0.8},
		{review.CodeRunsOut, "site: {when: 2026-03-01 22:00, until: 2026-03-02 03:30}\ncircuits: {gen: {breaker: 16, kind: generator, tank: %f, burn: 1.2}}\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, circuit: gen}}\n", 1, 20, 5.5 * 1.2},
		{review.CodeDimmer, "lights: {k: {unit: practical-table, bulb: {watts: %f W}, at: [0, 0], level: 50 %%}}\n", 5, 50, 20},
		{review.CodeNeutral, "circuits: {box: {phases: 3, breaker: %f}, a: {from: box, phase: L1, breaker: 16}, b: {from: box, phase: L2, breaker: 16}, c: {from: box, phase: L3, breaker: 16}}\n" + small,
			1.01 * amps, 10 * amps, 3 * 0.86 * amps},
	} {
		from, to := begins(t, c.scene, c.code, c.low, c.high)
		if c.want < math.Min(from, to)-1e-6 || c.want > math.Max(from, to)+1e-6 {
			t.Errorf("%s begins between %g and %g, want %g", c.code, from, to, c.want)
		}
	}
}
