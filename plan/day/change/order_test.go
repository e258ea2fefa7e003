package change_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/term"
)

// between is what changes from the first set-up of the den to one with some changes.
func between(t *testing.T, patch string) *change.List {
	t.Helper()
	all := states(t, den+"  next: {camera: A, after: first, change: {"+patch+"}}\n")
	return change.Between(all[0], all[1])
}

// find is the line of a kind of work on a thing.
func find(t *testing.T, l *change.List, work term.Work, name string) *change.Line {
	t.Helper()
	for i := range l.Lines {
		if l.Lines[i].Work == work && l.Lines[i].Name == name {
			return &l.Lines[i]
		}
	}
	t.Fatalf("no %s of %s in %v", work, name, said(l))
	return nil
}

// TestLinesSayHowTheyAreDone: how far, whom they follow, what comes off first, who is needed, and what is hot.
func TestLinesSayHowTheyAreDone(t *testing.T) {
	l := between(t, "people: {ada: {at: [3.6, 4]}}, furniture: {desk: {at: [5, 4.0]}}, lights: {key: {height: 2.5, gels: [1/4 CTB]}, lamp: {level: 50 %}}")
	m, ok := find(t, l, term.Moved, "key").Move()
	if !ok || !(math.Abs(m.Rise-0.3) <= 1e-9) || m.Plan < 0.4 {
		t.Errorf("the key goes %+v", m)
	}
	if got := find(t, l, term.Moved, "key"); got.Follows != "ada" || got.HotMinutes != 10 {
		t.Errorf("the key is moved so: %+v", got)
	}
	if got := find(t, l, term.Aimed, "key"); got.Follows != "ada" || got.HotMinutes != 0 {
		t.Errorf("the key is aimed so: %+v", got)
	}
	desk := find(t, l, term.Moved, "desk")
	if !slices.Equal(desk.Holds, []string{"lamp"}) || !slices.Equal(desk.Hands, []change.Reason{change.Wide}) {
		t.Errorf("the desk is moved so: %+v", desk)
	}
	if got := find(t, l, term.Moved, "lamp"); got.Follows != "desk" {
		t.Errorf("the lamp is moved so: %+v", got)
	}
	if tags, least, most := l.Cools(); !slices.Equal(tags, []string{"3", "1"}) && !slices.Equal(tags, []string{"1", "3"}) || least != 5 || most != 10 {
		t.Errorf("%v cool for %v to %v min", tags, least, most)
	}
}

// What leaves is followed by nothing.
func TestNothingFollowsWhatGoes(t *testing.T) {
	all := states(t, "scrimshaw: 1\npeople: {ada: {at: [2, 2], faces: 0}}\ncameras: {A: {at: [0, 0], lens: 35 mm}, B: {at: [4, 0], lens: 35 mm}}\n"+
		"lights: {x: {unit: led-tube-60, at: {by: A, toward: ada, distance: 1}, height: 2, aim: ada}}\n"+
		"setups: {a: {camera: A}, b: {camera: B, after: a, change: {lights: {x: {at: {distance: 2}}}}}, c: {camera: A, after: a, change: {cameras: {A: {at: [1, 0]}}}}}\n")
	if got := find(t, change.Between(all[0], all[1]), term.Moved, "x").Follows; got != "" {
		t.Errorf("a lamp that moves follows %q, which goes", got)
	}
	if got := find(t, change.Between(all[0], all[2]), term.Moved, "x").Follows; got != "A" {
		t.Errorf("a lamp that moves with A follows %q", got)
	}
}

// TestHands: mass, height, booms and lifts, and sheets that the wind takes.
func TestHands(t *testing.T) {
	for patch, want := range map[string][]change.Reason{
		"lights: {more: {unit: led-tube-60, at: [2, 2], height: 2}}":                         nil,
		"lights: {more: {unit: discharge-1800, at: [2, 2], height: 2.5}}":                    {change.Heavy},
		"lights: {more: {unit: led-point-600-bicolour, at: [2, 2], height: 2}}":              nil,
		"lights: {more: {unit: discharge-1200, at: [2, 2], height: 2}}":                      {change.High},
		"lights: {more: {unit: discharge-1200, at: [2, 2], height: 1.2}}":                    nil,
		"lights: {more: {unit: led-tube-60, at: [2, 2], height: 2, mount: {boom: 1}}}":       {change.OnArm},
		"grip: {more: {frame: [1.8, 1.8], cloth: silk, at: [2, 2], height: 1.8, faces: 90}}": {change.Wide},
		"grip: {more: {flag: [0.6, 0.9], at: [2, 2], height: 1.8, faces: 90}}":               nil,
		"furniture: {more: {box: [1.6, 0.5, 0.5], at: [7, 5]}}":                              {change.Wide},
		"furniture: {more: {box: [0.5, 0.5, 0.5], at: [7, 5]}}":                              nil,
	} {
		if got := find(t, between(t, patch), term.Placed, "more").Hands; !slices.Equal(got, want) {
			t.Errorf("%s takes two because of %q, want %q", patch, got, want)
		}
	}
}

// TestHotHeads: how long each class stays hot, and that one that is off, an LED, or one that only goes down is not.
func TestHotHeads(t *testing.T) {
	for _, c := range []struct {
		lamp, patch string
		want        float64
	}{
		{"unit: fresnel-tungsten-650", "strike", 10}, {"unit: fresnel-tungsten-2000", "strike", 15}, {"unit: discharge-1200", "strike", 20},
		{"unit: discharge-575", "strike", 15}, {"unit: fresnel-tungsten-650, level: 0 %", "strike", 0}, {"unit: led-panel-100", "strike", 0},
		{"unit: fresnel-tungsten-650", "{level: 40 %}", 0}, {"unit: fresnel-tungsten-650", "{gels: [1/4 CTB]}", 10}, {"unit: fresnel-tungsten-650", "{focus: spot}", 10},
	} {
		all := states(t, "scrimshaw: 1\nexposure: {white: 4300 K}\nlights: {x: {"+c.lamp+", at: [0, 0], height: 2, aim: [3, 3, 1]}, y: {unit: led-tube-60, at: [4, 4], height: 2}}\n"+
			"setups: {a: {}, b: {after: a, change: {lights: {x: "+c.patch+"}}}}\n")
		if got := change.Between(all[0], all[1]).Lines; len(got) != 1 || got[0].HotMinutes != c.want {
			t.Errorf("%s, %s: %+v, want %v min", c.lamp, c.patch, got, c.want)
		}
	}
	played := states(t, "scrimshaw: 1\nexposure: {white: 4300 K}\nlights: {x: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: [3, 3, 1], level: off}, y: {unit: led-tube-60, at: [4, 4], height: 2}}\n"+
		"setups: {a: {cues: {q: {over: 2 s, lights: {x: 60 %}}}}, b: {change: {lights: {x: strike}}}}\n")
	if got := find(t, change.Between(played[0], played[1]), term.Struck, "x"); got.HotMinutes != 10 {
		t.Errorf("one that a cue brings up: %+v, want 10 min", got)
	}
}

// TestOrderCanBeWorked over random days: stages in order; what is hot last in its stage; a thing is put onto another after that has come, and off
// it before that leaves; and the ground that a thing takes is free, but in a ring in which each waits for another.
func TestOrderCanBeWorked(t *testing.T) {
	for seed := range uint64(8) {
		all := states(t, randomDay(rand.New(rand.NewPCG(seed, 3)), 4))
		for i := range all {
			for k := range all {
				l := change.Between(all[i], all[k])
				for n := 1; n < len(l.Lines); n++ {
					a, b := &l.Lines[n-1], &l.Lines[n]
					if a.Stage > b.Stage || a.Stage == b.Stage && a.Stage >= change.Heads && a.HotMinutes > b.HotMinutes {
						t.Errorf("seed %d: %s of %s comes before %s of %s", seed, a.Work, a.Name, b.Work, b.Name)
					}
				}
			}
		}
	}
	l := between(t, "lights: {soft: {at: [1, 1]}, cut: {at: [2.4, 1.4]}, lamp: strike, top: {unit: practical-table, at: {top: crate}}}, "+
		"furniture: {desk: strike, crate: {box: [0.5, 0.5, 0.5], at: [7, 5]}}")
	order := said(l)
	for _, pair := range [][2]string{{"move cut", "move soft"}, {"strike lamp", "strike desk"}, {"set crate", "set top"}, {"strike desk", "set crate"}, {"set top", "aim soft"}} {
		if a, b := slices.Index(order, pair[0]), slices.Index(order, pair[1]); a < 0 || b < 0 || a > b {
			t.Errorf("%s is not before %s in %q", pair[0], pair[1], order)
		}
	}
}

// rated are rates of some kinds.
const rated = "rates: {move: 4, strike: 2.5, aim: 30 s, level: 1, gel: 3 min, set: 7}\n"

// TestSumsAreThoseOfTheirLines: the work of a list, with rates and without, and of a day.
func TestSumsAreThoseOfTheirLines(t *testing.T) {
	by := map[term.Work]float64{term.Moved: 4, term.Struck: 2.5, term.Aimed: 0.5, term.Levelled: 1, term.Gelled: 3, term.Placed: 7}
	for seed := range uint64(4) {
		text := strings.Replace(randomDay(rand.New(rand.NewPCG(seed, 4)), 4), "setups:", rated+"setups:", 1)
		all := states(t, text)
		minutes, lines := 0.0, 0
		for i := 1; i < len(all); i++ {
			l := change.Between(all[i-1], all[i])
			sum := l.Sum()
			kinds := 0
			for _, n := range sum.Kinds {
				kinds += n
			}
			unrated := 0
			for n := range l.Lines {
				m, known := by[l.Lines[n].Work]
				if known != (l.Lines[n].Rate != nil) || known && *l.Lines[n].Rate != m {
					t.Errorf("a %s takes %v min, want %v", l.Lines[n].Work, l.Lines[n].Rate, m)
				}
				if minutes += m; !known {
					unrated++
				}
			}
			if lines += sum.Lines; kinds != len(l.Lines) || sum.Lines != kinds || sum.Unrated != unrated {
				t.Errorf("seed %d: %d lines of %d kinds, %d without a rate; the list has %d, %d", seed, sum.Lines, kinds, sum.Unrated, len(l.Lines), unrated)
			}
		}
		if day := change.NewOrder(all).Sum(); day.Lines != lines || !(math.Abs(day.Minutes-minutes) <= 1e-9) {
			t.Errorf("seed %d: the day has %d lines in %v min, want %d in %v", seed, day.Lines, day.Minutes, lines, minutes)
		}
	}
}

// TestSwapsAreTheBestOfAll pair swaps of random days, each order worked out by its lists alone.
func TestSwapsAreTheBestOfAll(t *testing.T) {
	saved := 0
	for seed := range uint64(8) {
		text := randomDay(rand.New(rand.NewPCG(seed, 5)), 5)
		if seed%2 == 0 {
			text = strings.Replace(text, "setups:", rated+"setups:", 1)
		}
		all := states(t, text)
		work := func(order []*change.State) [2]float64 {
			var w [2]float64
			for i := 1; i < len(order); i++ {
				s := change.Between(order[i-1], order[i]).Sum()
				w[0], w[1] = w[0]+s.Minutes, w[1]+float64(s.Lines)
			}
			return [2]float64{math.Round(w[0] * 1e6), w[1]}
		}
		given := work(all)
		var by [][2]float64
		for i := range all {
			for k := range i {
				order := slices.Clone(all)
				order[i], order[k] = order[k], order[i]
				if w := work(order); slices.Compare(w[:], given[:]) < 0 {
					by = append(by, w)
				}
			}
		}
		slices.SortFunc(by, func(a, b [2]float64) int { return slices.Compare(a[:], b[:]) })
		got := change.NewOrder(all).Swaps()
		if len(got) != min(len(by), change.MostSwaps) {
			t.Fatalf("seed %d: %d swaps, by trial %d save", seed, len(got), len(by))
		}
		for i, s := range got {
			order := slices.Clone(all)
			order[s.First], order[s.Second] = order[s.Second], order[s.First]
			if w := [2]float64{math.Round(s.Sum.Minutes * 1e6), float64(s.Sum.Lines)}; w != by[i] || work(order) != w {
				t.Errorf("seed %d: swap %d leaves %v, by trial %v, and %v", seed, i, w, work(order), by[i])
			}
			saved++
		}
	}
	if saved < 8 {
		t.Errorf("only %d swaps save anything: the days are too tame", saved)
	}
}

// TestNothingThatDiffersIsUnsaid: where a field of a light differs from one set-up to the next, or what leaves it, a line is of that light. The
// fields that are left out say what it is for, or follow from others.
func TestNothingThatDiffersIsUnsaid(t *testing.T) {
	light := func(l *plan.Light) string {
		at, base := l.Frame.At, l.Mount.Base
		return fmt.Sprintf("%.2f %.2f %.2f %.1f %.1f %.1f %.1f %.1f | %s %s %.3f %.0f | %v %v %v %s %s %s %d | %v %v %v %v", at.X, at.Y, at.Z, base.X, base.Y, l.Frame.Axis.X, l.Frame.Axis.Y,
			l.Frame.Axis.Z, l.Head.UnitLabel, l.Head.ModifierLabel, l.Level, l.Head.Source.Flux, l.Gels, l.Diffusion, l.White, l.Mount.Kind, l.Mount.On, l.Circuit, l.Count, l.Note,
			l.Head.Scrims, l.Head.Gate.Cuts, l.RelativeOutput)
	}
	for seed := range uint64(12) {
		all := setups(t, randomDay(rand.New(rand.NewPCG(seed, 6)), 4))
		for i := 1; i < len(all); i++ {
			list := change.Between(change.Of(all[i-1]), change.Of(all[i]))
			touched := map[string]bool{}
			for n := range list.Lines {
				touched[list.Lines[n].Name] = true
			}
			for k := range all[i].Lights {
				is := &all[i].Lights[k]
				was := all[i-1].LightNamed(is.Name)
				if differs := was == nil || light(was) != light(is); differs != touched[is.Name] && !(touched[is.Name] && was != nil) {
					t.Errorf("seed %d, set-up %d: %s differs %v, and is on the list %v", seed, i, is.Name, differs, touched[is.Name])
				}
			}
		}
	}
}

// TestRemainsSayAsMuch: the changes from what remains of a set-up are those from the set-up.
func TestRemainsSayAsMuch(t *testing.T) {
	all := setups(t, randomDay(rand.New(rand.NewPCG(7, 7)), 5))
	for i := 1; i < len(all); i++ {
		whole, rest := change.Between(change.Of(all[i-1]), change.Of(all[i])), change.Between(change.Of(all[i-1].Remains()), change.Of(all[i]))
		if !slices.Equal(said(whole), said(rest)) {
			t.Errorf("%v, of what remains %v", said(whole), said(rest))
		}
	}
}
