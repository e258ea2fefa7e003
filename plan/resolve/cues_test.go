package resolve

import (
	"strings"
	"testing"
)

// Findings name what a cue asks for and a lamp cannot do, with the fix.
func TestCues(t *testing.T) {
	const lights = `
lights:
  k: {unit: led-point-300-bicolour, at: [2, 2], height: 2, aim: down, level: 50 %}
  d: {unit: discharge-1200, at: [3, 2], height: 2, aim: down}
  m: {unit: discharge-575-magnetic, at: [4, 2], height: 2, aim: down}
  w: {unit: fresnel-tungsten-2000, at: [5, 2], height: 2, aim: down, level: 80 %}
`
	for _, c := range []struct{ name, cues, want string }{
		{"fine", "cues: {q1: {at: she turns, over: 4 s, lights: {k: 20 %, w: {level: 30 %}}}, q2: {over: 3 s, lights: {k: {level: off}}}}", ""},
		{"fine to its least", "cues: {q1: {over: 4 s, lights: {d: 50 %}}}", ""},
		{"out of order", "cues: {q1: {at: 9 s, lights: {k: 20 %}}, q2: {lights: {k: 30 %}}, q3: {at: 8 s, lights: {k: 40 %}}}",
			"error cue-order q3 goes at 8 s, and q1, which is written before it, at 9 s: cues go in the order in which they are written [write it before q1, or give it a later time]"},
		{"overlapping", "cues: {q1: {at: 9 s, over: 4 s, lights: {k: 20 %}}, q2: {at: 12 s, lights: {k: 40 %}}}",
			"warning cue-overlap q2 goes at 12 s, before q1 is over, at 13 s: there 1 k leaves the one fade for the other [let it go from 13 s on, or shorten q1]"},
		{"overlapping, of other lights", "cues: {q1: {at: 9 s, over: 4 s, lights: {w: 20 %}}, q2: {at: 12 s, lights: {k: 40 %}}}", ""},
		{"overlapping a cue before the one before it", "cues: {q1: {at: 1 s, over: 40 s, lights: {w: 20 %}}, q2: {at: 9 s, lights: {k: 40 %}}, q3: {at: 12 s, over: 2 s, lights: {w: 30 %}}}",
			"warning cue-overlap q3 goes at 12 s, before q1 is over, at 41 s: there 4 w leaves the one fade for the other [let it go from 41 s on, or shorten q1]"},
		{"one after the other", "cues: {q1: {at: 9 s, over: 4 s, lights: {k: 20 %}}, q2: {at: 13 s, lights: {k: 40 %}}}", ""},
		{"nothing", "cues: {q1: {lights: {k: 50 %}}}",
			"warning cue-empty q1 changes nothing: its lights are so already [leave it out, or write another level or colour into it]"},
		{"nothing but a colour that it has", "cues: {q1: {lights: {k: {}}}}",
			"warning cue-empty q1 changes nothing: its lights are so already [leave it out, or write another level or colour into it]"},
		{"into the dark", "cues: {q1: {over: 4 s, lights: {d: off}}}",
			"warning cue-fade q1 fades 2 d into the dark, and it holds no level under 50 %: it jumps there [fade it to 50 % and take the rest with a shutter or a flag, or take a unit that dims lower]"},
		{"one that does not dim", "cues: {q1: {over: 4 s, lights: {m: off}}}",
			"warning cue-fade q1 fades 4 s, and 3 m does not dim: it is all on or all off [snap it (over: 0 s), close a shutter before it, or take a unit that dims]"},
		{"one that is on no dimmer", "cues: {q1: {over: 4 s, lights: {k: off}}}\nsetups: {a: {change: {lights: {k: {dimmer: none}}}}}",
			"warning cue-fade q1 fades 1 k, which is on no dimmer [put it on a dimmer: dimmer: phase, or another]"},
		{"a snap of a large filament", "cues: {q1: {lights: {w: off}}}",
			"warning cue-slow q1 moves 4 w at once, and a filament of 2000 W takes about 1 s to follow: the figures are of its end [let it take 1 s or more, move a shutter or a flag before it, or use a smaller lamp]"},
		{"out and in again", "cues: {q1: {lights: {d: off}}, q2: {lights: {d: 100 %}}}",
			"warning cue-strike q2 puts 2 d on again, which went out in q1: it has to cool for about 10 min before it strikes [leave it burning and close a shutter or a flag before it, or use a head that strikes hot]"},
		{"in again after the lamp has cooled", "cues: {q1: {at: 1 s, lights: {d: off}}, q2: {at: 12 min, lights: {d: 100 %}}}",
			"warning cue-strike q2 strikes 2 d cold: it takes about 2 min to its light and its colour, and the figures are of that [strike it before the take, and open a shutter or a flag before it on the cue]"},
		{"below the least", "cues: {q1: {lights: {d: 30 %}}}",
			"error level-range \"discharge-1200\" dims to 50 %, not to 30 % [set it to 50 %, the nearest, or leave it up and take light away with scrims, nets or ND gels]"},
		{"a white that it does not make", "cues: {q1: {lights: {k: {level: 20 %, colour: 9000 K}}}}",
			"error white-range \"led-point-300-bicolour\" makes from 2700 K to 6500 K, not 9000 K [set it to 6500 K, the nearest, and add CTB gels]"},
		{"a tint", "cues: {q1: {lights: {d: {tint: +0.01}}}}",
			"warning tint-range \"discharge-1200\" cannot be set to a Duv of +0.01; the figures take it as if it could [use a plus or minus green gel, which works on any unit]"},
		{"one that is not here", "cues: {q1: {lights: {k: off, w: 30 %}}}\nsetups: {a: {change: {lights: {w: strike}}}}",
			"warning cue-lacks q1 moves w, which is not in this set-up [let cues: of the set-up strike it there: {q1: {lights: {w: strike}}}]"},
		{"a level out of range", "cues: {q1: {lights: {k: 130 %}}}", "error out-of-range a level is 0 % to 100 %, and \"130 %\" is not [write 100 % or less]"},
		{"a cue that has no map", "cues: {q1: 3}", "error wrong-type a cue is a map of keys, not a value [write it like {lights: {lamp: off, moon: 35 %}}]"},
		{"a light that is nowhere", "cues: {q1: {lights: {nosuch: off}}}", "error unknown-name nothing is called nosuch, where a light belongs [there is k, d, m or w]"},
		{"a set-up that changes them", "cues: {q1: {over: 2 s, lights: {d: off}}}\nsetups: {a: {cues: {q1: {lights: {d: 60 %}}, q2: {over: 2 s, lights: {k: off}}}}}", ""},
		{"a set-up without them", "cues: {q1: {over: 2 s, lights: {d: off}}}\nsetups: {a: {cues: {q1: strike}}}", ""},
		{"one that plays lower than it dims", "setups: {a: {change: {lights: {d: {plays: {kind: fire, low: 20 %}}}}}}",
			"error level-range \"discharge-1200\" dims to 50 %, not to 20 % [set it to 50 %, the nearest, or leave it up and take light away with scrims, nets or ND gels]"},
		{"one whose low is high", "setups: {a: {change: {lights: {k: {plays: {kind: fire, low: 80 %, high: 40 %}}}}}}",
			"error play k plays between a low level and a high one, and its low is above its high [write low as the lower of the two]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			setup := ""
			if strings.Contains(c.cues, "setups:") {
				setup = "a"
			}
			if got := found(t, lights+c.cues, setup); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
