package day_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/day"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// setups are those of a scene.
func setups(t testing.TB, text string) (all []*plan.Setup) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	err = resolve.Each(doc, nil, log, func(s *plan.Setup) error {
		all = append(all, s)
		return nil
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All(), text)
	}
	return all
}

// listed is the list of a scene.
func listed(t testing.TB, text string) *day.List {
	t.Helper()
	var l day.List
	for _, s := range setups(t, text) {
		l.Add(s)
	}
	return &l
}

// has is how many pieces of a label a list has.
func has(l *day.List, label string) int {
	for i := range l.Items {
		if l.Items[i].Label == label {
			return l.Items[i].Count
		}
	}
	return 0
}

// A lever in balance: 10 kg at 2.0 m are held by 25 kg at 0.8 m, and what has no half kilogram is rounded up.
func TestCounterweightBalances(t *testing.T) {
	for _, c := range [][3]float64{{10, 2, 25}, {0, 2, 0}, {5, 1.6, 10}, {5.1, 1.6, 10.5}, {1, 0.08, 0.5}} {
		if got := day.Counterweight(c[0], c[1]); got != c[2] {
			t.Errorf("%g kg at %g m take %g kg, want %g", c[0], c[1], got, c[2])
		}
	}
}

// Cable by trying all: as few pieces as can be, and of as few those that leave the least over.
func TestPiecesAreTheFewest(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		cables := make([]*kit.Item, 1+rng.IntN(4))
		for i := range cables {
			cables[i] = &kit.Item{Length: float64(10+rng.IntN(240)) / 10}
		}
		want := float64(1+rng.IntN(700)) / 10
		var got float64
		pieces := day.Pieces(cables, want)
		for _, p := range pieces {
			got += p.Length
		}
		if len(pieces) > 5 {
			continue
		}
		if fewest, least := byTrial(cables, want, 5); len(pieces) != fewest || !(math.Abs(got-least) <= 1e-6) {
			t.Fatalf("%g m of %v: %d pieces of %g m, by trial %d of %g m", want, lengths(cables), len(pieces), got, fewest, least)
		}
	}
	if n := len(day.Pieces([]*kit.Item{{Length: 5}}, 1000)); n != 200 {
		t.Errorf("1000 m of 5 m are %d pieces", n)
	}
}

func lengths(cables []*kit.Item) (all []float64) {
	for _, c := range cables {
		all = append(all, c.Length)
	}
	return all
}

// byTrial tries all ways of up to so many pieces.
func byTrial(cables []*kit.Item, want float64, most int) (fewest int, least float64) {
	fewest, least = most+1, math.Inf(1)
	var try func(count int, sum float64)
	try = func(count int, sum float64) {
		if count > 0 && sum >= want-1e-9 && (count < fewest || count == fewest && sum < least) {
			fewest, least = count, sum
		}
		if count < min(fewest, most) {
			for _, c := range cables {
				try(count+1, sum+c.Length)
			}
		}
	}
	try(0, 0)
	return fewest, least
}

// A day by hand: what is used twice one after the other is one, what stands at once is two, and what a case brings is not listed again.
func TestDayByHand(t *testing.T) {
	l := listed(t, `
rooms: {den: {size: [6, 5], height: 4}}
openings: {w: {window: den.left, along: 1, width: 1.5, sill: 1, head: 2.2, gels: [ND .6]}}
people: {ada: {at: [3, 3]}}
circuits: {ring: {breaker: 16, at: {wall: den.right, along: 2}}}
lights:
  a: {unit: fresnel-tungsten-650, at: [1, 1], height: 2, level: 50 %, circuit: ring, barndoors: {top: 80}, scrims: [single, single]}
  b: {unit: led-point-300-bicolour, modifier: softbox-90 + grid-40, at: [2, 1], height: 2.6, gels: [1/2 CTO]}
  c: {unit: led-point-300-bicolour, modifier: reflector-wide, at: [4, 1], height: 2}
grip:
  f: {flag: [1.2, 0.9], at: [2, 3], height: 1.5, faces: ada}
  s: {frame: [2.4, 2.4], cloth: silk, at: [4, 4], height: 1.6, faces: ada}
setups:
  one: {}
  two: {after: one, change: {lights: {b: strike, d: {unit: led-point-300-bicolour, modifier: softbox-90, at: [2, 2], height: 2, aim: ada, mount: {boom: 1.2}}}}}
`)
	for label, want := range map[string]int{
		"650 W fresnel": 1, "300 W LED point, bi-colour": 2, "wide reflector": 0, "softbox 0.9 m": 1, "barn doors for 650 W fresnel": 0,
		"single scrim for 650 W fresnel": 2, "dimmer 1 kW": 1, "flag 120 x 90": 1, "frame 240 x 240": 1, "silk for a frame of 2.40 m × 2.40 m": 1,
		"pair of frame holders": 1, "grip head": 1, "boom": 1, "safety wire": 1, "light stand": 3, "C-stand": 1, "combo stand": 2, "ND .6, piece of 1.50 m × 1.20 m": 1,
		"1/2 CTO, piece of 1.10 m × 1.10 m": 1,
	} {
		if got := has(l, label); got != want {
			t.Errorf("%d of %q, want %d", got, label, want)
		}
	}
	for _, i := range l.Items {
		if i.Label == "300 W LED point, bi-colour" && !strings.HasPrefix(i.Note, "comes with wide reflector, power supply") {
			t.Errorf("what comes with it is not said as a desk would: %q", i.Note)
		}
	}
	if t.Failed() {
		for _, i := range l.Items {
			t.Logf("%+v", i)
		}
	}
}

// Sheets off a roll by hand: three squares of 0.6 m side by side two by two, and a window wider than the roll of two strips.
func TestCutsOffARoll(t *testing.T) {
	three := day.Item{Piece: [2]float64{0.6, 0.6}, Roll: 1.2, Count: 3}
	if length, waste, ok := three.Cut(); !ok || !(math.Abs(length-1.2) <= 1e-9) || !(math.Abs(waste-0.25) <= 1e-9) {
		t.Errorf("%g m, %g of it waste", length, waste)
	}
	window := day.Item{Piece: [2]float64{2, 1.5}, Roll: 1, Count: 1}
	if length, waste, _ := window.Cut(); !(math.Abs(length-3) <= 1e-9) || !(math.Abs(waste) <= 1e-9) {
		t.Errorf("%g m, %g of it waste", length, waste)
	}
	if _, _, ok := (&day.Item{Piece: [2]float64{2, 1.5}, Count: 1}).Cut(); ok {
		t.Error("cut off no roll")
	}
}

// A day from a file: what it takes, and how often at one time.
func ExampleList() {
	shipped, err := kit.Shipped()
	if err != nil {
		fmt.Println(err)
		return
	}
	text := `{scrimshaw: 1, lights: {key: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down}},
	  setups: {wide: {}, close: {after: wide, change: {lights: {key: {at: [1, 0]}}}}}}`
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "day.yaml", Text: []byte(text)}, &source.Log{})
	var l day.List
	err = resolve.Each(doc, nil, &source.Log{}, func(s *plan.Setup) error {
		l.Add(s)
		return nil
	})
	for _, item := range l.Items {
		fmt.Println(item.Count, item.Label)
	}
	fmt.Printf("%.1f kg, %v\n", l.Totals().Mass, err)
	// Output:
	// 1 650 W fresnel
	// 1 light stand
	// 1 sandbag 12 kg
	// 1 black foil
	// 1 pegs
	// 17.4 kg, <nil>
}

// What is not known is counted and has no mass: a source that the scene states, a card of no catalogue, a lift, a scene without anything.
func TestUnknownHasNoMass(t *testing.T) {
	l := listed(t, `
lights:
  a: {output: {candela: 1000, shape: uniform}, at: [0, 0], height: 3, aim: down, count: 3, mount: {boom: 2}}
  b: {output: {candela: 1000, shape: uniform}, at: [2, 0], height: 3, aim: down, mount: {lift: 9}}
grip: {c: {card: [0.33, 0.44], at: [3, 3], height: 1, faces: [0, 0]}}
`)
	for label, want := range map[string]int{"a, plain source": 3, "b, plain source": 1, "counterweight for 1 on its boom": 3, "lift for 0 kg at 9.00 m": 1, "card 0.33 m × 0.44 m": 1} {
		if got := has(l, label); got != want {
			t.Errorf("%d of %q, want %d", got, label, want)
		}
	}
	totals := l.Totals()
	if !slices.Contains(totals.WithoutMass, "a, plain source") || !slices.Contains(totals.WithoutMass, "lift for 0 kg at 9.00 m") {
		t.Errorf("totals are without %v", totals.WithoutMass)
	}
	if empty := listed(t, "rooms: {den: {size: [3, 3]}}\n"); len(empty.Items) > 0 || empty.Totals().Mass != 0 {
		t.Errorf("an empty scene takes %v", empty.Items)
	}
}

// What holds things, by hand: a pole with a clamp for tubes, a clip for a ceiling while that carries the lamp, a plate on a wall, and to each
// a wire; a frame of 8 ft is the one of 2.4 m; from 2.5 m up a stand has two bags, on a boom too.
func TestWhatHoldsThings(t *testing.T) {
	l := listed(t, `
units: ft
rooms: {den: {size: [30, 30], height: 14}}
lights:
  a: {unit: led-panel-100, at: [8, 8], height: 8, aim: down, mount: {pole: [den.left, den.right]}}
  b: {unit: led-panel-100, at: [12, 8], height: 9, aim: down, mount: ceiling}
  c: {unit: discharge-575, at: [16, 8], height: 9, aim: down, mount: ceiling}
  d: {unit: led-panel-100, at: [0.5, 20], height: 9, aim: 90, mount: {wall: den.left}}
  e: {unit: fresnel-tungsten-650, at: [20, 20], height: 8.1, aim: down}
  f: {unit: fresnel-tungsten-650, at: [20, 24], height: 8.3, aim: down}
  g: {unit: fresnel-tungsten-650, at: [24, 20], height: 6, aim: down, mount: {boom: 3}}
  h: {unit: led-panel-100, at: [27, 8], height: 9, aim: down, mount: {lift: 9}}
grip:
  s: {frame: [8, 8], cloth: silk, at: [12, 20], height: 6, faces: 0, mount: floor}
  v: {silver: silver-50x50, at: [25, 25], height: 5, faces: 0, mount: {boom: 3}}
  n: {flag: flag-60x45, at: [27, 25], height: 12, faces: 0}
`)
	for label, want := range map[string]int{"pole": 1, "stud clamp": 1, "ceiling clip": 1, "pipe clamp": 1, "wall plate": 1, "safety wire": 7, "frame 240 x 240": 1,
		"boom": 2, "board holder": 1, "grip head": 1, "arm 1 m": 1, "combo stand": 1, "tall combo stand": 1, "C-stand": 0,
		"sandbag 12 kg": 1 + 2 + (2 + 1) + (2 + 1) + 2, "silk for a frame of 8'0\" × 8'0\"": 1} {
		if got := has(l, label); got != want {
			t.Errorf("%d of %q, want %d", got, label, want)
		}
	}
	for i := range l.Items {
		if item := &l.Items[i]; item.Shelf == day.Cloth && item.Name != "frame-cloth-240" {
			t.Errorf("the cloth is %q", item.Name)
		}
	}
}

var (
	units  = []string{"fresnel-tungsten-650", "led-point-300-bicolour", "led-point-600-daylight", "discharge-575", "practical-floor", "led-tube-60"}
	mounts = []string{"", ", mount: {boom: 1.5}", ", mount: ceiling", ", mount: floor", ", mount: {pole: [den.left, den.right]}", ", mount: {wall: den.left}"}
	pieces = []string{"flag: [1.2, 0.9]", "card: [1, 0.7]", "frame: [1.2, 1.2], cloth: silk", "net: [0.6, 0.45]", "silver: [1, 1]", "flag: [0.33, 0.2]"}
)

// randomDay writes a day of some set-ups with patches and strikes.
func randomDay(rng *rand.Rand) string {
	var b strings.Builder
	at := func() string { return fmt.Sprintf("[%.2f, %.2f]", 1+8*rng.Float64(), 1+8*rng.Float64()) }
	light := func() string {
		return fmt.Sprintf("{unit: %s, at: %s, height: 2, aim: down, count: %d%s%s}", units[rng.IntN(len(units))], at(), 1+rng.IntN(3), mounts[rng.IntN(len(mounts))],
			[]string{"", ", circuit: ring"}[rng.IntN(2)])
	}
	grip := func() string {
		return fmt.Sprintf("{%s, at: %s, height: 1.5, faces: 90}", pieces[rng.IntN(len(pieces))], at())
	}
	b.WriteString("rooms: {den: {size: [10, 10], height: 4}}\ncircuits: {ring: {breaker: 16, item: splitter-3, at: [0.2, 5]}}\nlights:\n")
	for i := range 5 {
		fmt.Fprintf(&b, "  l%d: %s\n", i, light())
	}
	b.WriteString("grip:\n")
	for i := range 3 {
		fmt.Fprintf(&b, "  g%d: %s\n", i, grip())
	}
	b.WriteString("setups:\n  s0: {}\n")
	for s := 1; s < 4; s++ {
		fmt.Fprintf(&b, "  s%d: {after: s0, change: {lights: {l%d: strike, l%d: {level: 0 %%}, n%d: %s}, grip: {g%d: strike, h%d: %s}}}\n",
			s, rng.IntN(2), 2+rng.IntN(3), s, light(), rng.IntN(3), s, grip())
	}
	return b.String()
}

// Over random days every light and every piece of grip of every set-up is on the list, and each unit, stand and kind of grip as often as a count
// by hand of the set-ups has it at most.
func TestRandomDaysCountTheMost(t *testing.T) {
	for seed := range uint64(25) {
		all := setups(t, randomDay(rand.New(rand.NewPCG(seed, 7))))
		var l day.List
		most := map[string]int{}
		for _, s := range all {
			l.Add(s)
			for name, count := range recount(s) {
				most[name] = max(most[name], count)
			}
		}
		for name, want := range most {
			shelf, label, _ := strings.Cut(name, ": ")
			got := 0
			for i := range l.Items {
				if string(l.Items[i].Shelf) == shelf && (l.Items[i].Name == label || shelf == "safety") {
					got += l.Items[i].Count
				}
			}
			if got != want {
				t.Errorf("seed %d: %d of %s, want %d", seed, got, name, want)
			}
		}
		covered(t, all, &l)
	}
}

// recount counts by its own rules what a set-up has of what has a name.
func recount(s *plan.Setup) map[string]int {
	n := map[string]int{}
	for i := range s.Lights {
		l := &s.Lights[i]
		practical := l.Head.Class == term.Practical
		n["unit: "+s.Scene.Lights[slices.IndexFunc(s.Scene.Lights, func(w scene.Light) bool { return w.Name == l.Name })].Unit.Value] += l.Count
		if l.Mount.Stand != nil && (l.Mount.Kind == term.Stand || l.Mount.Kind == term.Boom) {
			n["stand: "+l.Mount.Stand.Name] += l.Count
		}
		switch l.Mount.Kind {
		case term.Boom, term.Ceiling, term.Pole, term.Wall:
			if !practical {
				n["safety: all"] += l.Count
			}
		}
		if l.Mount.Kind == term.Pole {
			n["rigging: ceiling-pole"]++
		}
		if l.Mount.Kind == term.Wall {
			n["rigging: wall-plate"] += l.Count
		}
	}
	for i := range s.Grip {
		switch g := &s.Grip[i]; {
		case g.Kind == term.Flag && g.Size[0] == 1.2:
			n["grip: flag-120x90"]++
		case g.Kind == term.Card:
			n["grip: card-100x70"]++
		case g.Kind == term.Silver:
			n["grip: silver-100x100"]++
		case g.Kind == term.Frame:
			n["grip: frame-120x120"]++
			n["cloth: frame-cloth-120"]++
		}
		n["stand: c-stand"]++
	}
	recountRest(s, n)
	return n
}

// ownByHand are the mains cables that units of random days bring, m: common practice of a case.
var ownByHand = map[string]float64{"led-panel-100": 3, "led-point-300-bicolour": 3, "led-point-600-daylight": 6, "led-point-600-bicolour": 6, "soft-panel-200": 5}

// piecesByHand are the cables of 5, 10 and 20 m that make a run in a room of 10 m.
func piecesByHand(length float64) []string {
	const five, ten, twenty = "cable-16a-5", "cable-16a-10", "cable-16a-20"
	switch {
	case length <= 0:
		return nil
	case length <= 5:
		return []string{five}
	case length <= 10:
		return []string{ten}
	case length <= 20:
		return []string{twenty}
	case length <= 25:
		return []string{twenty, five}
	case length <= 30:
		return []string{twenty, ten}
	}
	return []string{twenty, twenty}
}

// recountRest counts bulbs, bags, cable and boxes: a stand has one bag, one more from 2.5 m up, and on a boom one more, whose arm others balance.
func recountRest(s *plan.Setup, n map[string]int) {
	for i := range s.Lights {
		l := &s.Lights[i]
		if b := l.Head.Bulb; b != nil {
			n["bulb: "+b.Name] += l.Count
		}
		if l.Mount.Kind == term.Stand || l.Mount.Kind == term.Boom {
			n["bag: sandbag-12"] += l.Count * l.Mount.Bags(2)
			if l.Mount.Kind == term.Boom {
				n["bag: sandbag-12"] += l.Count * int(math.Ceil(math.Ceil(2*l.Head.Mass*1.5/0.8-1e-9)/2/12-1e-9))
			}
		}
		if l.Cable == nil {
			continue
		}
		for _, piece := range piecesByHand(l.Cable.Length - ownByHand[l.Head.Unit.Name]) {
			n["cable: "+piece] += l.Count
		}
		if u := l.Head.Unit; strings.HasPrefix(u.Inlet, "IEC 60309") {
			n["adapter: "] += l.Count
		}
	}
	for i := range s.Grip {
		n["bag: sandbag-12"] += s.Grip[i].Mount.Bags(1.5)
	}
	for i := range s.Circuits {
		n["power: "+s.Circuits[i].Item]++
		plugs := 0
		for k := range s.Lights {
			if l := &s.Lights[k]; l.Cable != nil && l.Circuit == s.Circuits[i].Name {
				plugs += l.Count
			}
		}
		for outlets := 3; outlets < plugs; outlets += 2 { // the block that it is, and one more into one of its outlets
			n["power: splitter-3"]++
		}
	}
}

// covered fails where a light or a piece of grip is on no line of the list.
func covered(t *testing.T, all []*plan.Setup, l *day.List) {
	t.Helper()
	named := map[day.Shelf]map[string]bool{day.Unit: {}, day.Grip: {}}
	for i := range l.Items {
		if tags := named[l.Items[i].Shelf]; tags != nil {
			for _, tag := range l.Items[i].For {
				tags[tag] = true
			}
		}
	}
	for _, s := range all {
		for i := range s.Lights {
			if !named[day.Unit][s.Lights[i].Tag] {
				t.Errorf("%s of %s is not listed", s.Lights[i].Name, s.Name)
			}
		}
		for i := range s.Grip {
			if !named[day.Grip][s.Grip[i].Tag] {
				t.Errorf("%s of %s is not listed", s.Grip[i].Name, s.Name)
			}
		}
	}
}

// TestScrimsAreNoneOfAnotherUnitsLight: they are listed for themselves and go into what comes in the head's place too, so that it has to give
// what the head gives without them: here the lux at 3 m that the catalogue states. The figure says where the lens stands that it is for.
func TestScrimsAreNoneOfAnotherUnitsLight(t *testing.T) {
	for _, scrims := range []string{"[double, single]", "half-double"} {
		l := listed(t, "lights: {a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down}}\nsetups: {bare: {}, scrims: {after: bare, change: {lights: {a: {scrims: "+scrims+"}}}}, spot: {after: scrims, change: {lights: {a: {focus: spot}}}}}\n")
		const want = "640 lx at 3 m bare at flood and 5000 lx at spot, 3200 K: such as 1000 W fresnel"
		if got := l.Items[0].OrEqual(); got != want {
			t.Errorf("%s: another unit has to give %q, want %q", scrims, got, want)
		}
	}
}

// TestWhatAnotherUnitHasToGive: of a lamp that is used at two whites both are said with what it gives there, for it is not as bright at both.
func TestWhatAnotherUnitHasToGive(t *testing.T) {
	l := listed(t, "lights: {a: {unit: led-point-300-bicolour, modifier: softbox-90, at: [0, 0], height: 2, aim: down, colour: 5600 K}}\nsetups: {one: {}, two: {after: one, change: {lights: {a: {colour: 3200 K}}}}}\n")
	const want = "490 lx at 3 m with softbox 0.9 m set to 5600 K and 430 lx set to 3200 K, 2700 K to 6500 K: such as 600 W LED point, bi-colour"
	found := false
	for _, item := range l.Items {
		if !strings.HasPrefix(item.Label, "300 W LED point") {
			continue
		}
		if found = true; item.OrEqual() != want {
			t.Errorf("another unit has to give %q, want %q", item.OrEqual(), want)
		}
	}
	if !found {
		t.Error("the lamp is not listed")
	}
}

// TestUsesAreSaidOnce: whatever is the same of several uses is said once, what differs is said of each, and where another unit would do in
// each use, each is named with its own.
func TestUsesAreSaidOnce(t *testing.T) {
	item := day.Item{Gives: []day.Equal{
		{Lux: 900, Wears: "bare", Set: "at spot", Whites: "3200 K", Such: "big"}, {Lux: 400, Wears: "bare", Set: "at flood", Whites: "3200 K", Such: "small"},
		{Lux: 800, Wears: "with snoot", Whites: "3200 K", Such: "big"}, {Lux: 700, Wears: "with snoot", Set: "at flood", Whites: "3200 K", Such: "big"},
		{Lux: 5, Wears: "bare", Whites: "3200 K"}}}
	const want = "900 lx at 3 m bare at spot, 800 lx with snoot and 700 lx at flood, 3200 K: such as big; 400 lx at 3 m bare at flood, 3200 K: such as small; " +
		"5 lx at 3 m bare, 3200 K: no other of the kit"
	if got := item.OrEqual(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Cables are listed by how thick and how long they are, whichever set-up needs them first, and what they are for as it stands in the scene.
func TestCablesInTheirOrder(t *testing.T) {
	l := listed(t, `circuits: {big: {breaker: 32, at: [0, 0]}, ring: {breaker: 16, at: [0, 0]}}
lights:
  k: {unit: led-panel-100, at: [14, 0], height: 1, aim: down, circuit: ring}
  l: {unit: led-panel-100, at: [9, 0], height: 1, aim: down, circuit: big}
  m: {unit: led-panel-100, at: [16, 0], height: 1, aim: down, circuit: ring}
setups: {one: {}, two: {after: one, change: {lights: {k: {at: [2, 0]}}}}}
`)
	var got []string
	for _, item := range l.Items {
		if item.Shelf == day.Cable {
			got = append(got, item.Name+" "+strings.Join(item.For, ","))
		}
	}
	if want := "cable-16a-5 1; cable-16a-20 1,3; cable-32a-10 2"; strings.Join(got, "; ") != want {
		t.Errorf("%s\nwant %s", strings.Join(got, "; "), want)
	}
}

// A lamp's own mains cable is the last of its run: what is laid is that much shorter, and nothing is where it reaches by itself. The way has a tenth of slack and
// goes up to the lamp, so one of 3 m at 1 m of height reaches 2 / 1.1 = 1.818 m from its outlet; a lamp whose case has none takes a cable there.
func TestOwnMainsCable(t *testing.T) {
	for _, c := range []struct {
		unit  string
		along float64 // m from the outlet
		want  string
	}{
		{"led-panel-100", 1.81, ""}, {"led-panel-100", 1.83, "cable-16a-5"}, {"fresnel-tungsten-650", 1.81, "cable-16a-5"},
		{"led-panel-100", 6.36, "cable-16a-5"}, {"led-panel-100", 6.37, "cable-16a-10"}, // (3 + 5 - 1) / 1.1 = 6.364
	} {
		l := listed(t, fmt.Sprintf(`circuits: {ring: {breaker: 16, at: [0, 0]}}
lights: {k: {unit: %s, at: [%g, 0], height: 1, aim: down, circuit: ring}, far: {unit: %s, at: [%g, 0], height: 1, aim: down, circuit: ring}}
`, c.unit, c.along, c.unit, -c.along))
		got := ""
		for _, item := range l.Items {
			if item.Shelf == day.Cable {
				got = fmt.Sprint(item.Name, " ", item.Count)
			}
		}
		if want := strings.TrimSpace(c.want + " 2"); c.want != "" && got != want || c.want == "" && got != "" {
			t.Errorf("%s %g m from its outlet takes %q, want %q", c.unit, c.along, got, c.want)
		}
		if has(l, "block of three") != 1 {
			t.Errorf("%s: both plug in all the same", c.unit)
		}
	}
}

// In feet it is the same, and what comes with a lamp is said in feet: of 3 m at 1 m of height 2 m / 1.1 are left, 5.965 ft.
func TestOwnMainsCableInFeet(t *testing.T) {
	for along, want := range map[float64]string{5.95: "", 5.98: "cable-20a-8"} {
		l := listed(t, fmt.Sprintf("units: ft\ncircuits: {ring: {breaker: 15, at: [0, 0]}}\nlights: {k: {unit: led-panel-100, at: [%g, 0], height: 3.28084, aim: down, circuit: ring}}\n", along))
		got, note := "", ""
		for _, item := range l.Items {
			switch item.Shelf {
			case day.Cable:
				got = item.Name
			case day.Unit:
				note = item.Note
			}
		}
		if got != want || !strings.Contains(note, "mains cable of 9'10\"") {
			t.Errorf("%g ft from its outlet it takes %q, want %q; %s", along, got, want, note)
		}
	}
}

// Where more plugs go into a circuit than it has outlets, blocks of three make them: of one that names no thing of the kit there is one outlet. What nobody laid a
// cable to is not counted.
func TestSplitters(t *testing.T) {
	lamps := func(n int, circuit string) string {
		text := "lights:\n"
		for i := range n {
			text += fmt.Sprintf("  l%d: {unit: led-panel-100, at: [%d, 2], height: 1, aim: down, circuit: %s}\n", i, i, circuit)
		}
		return text
	}
	const ring = "circuits: {c: {breaker: 16, at: [0, 0]}}\n"
	for _, c := range []struct {
		scene, label string
		want         int
	}{
		{ring + lamps(1, "c"), "block of three", 0}, {ring + lamps(2, "c"), "block of three", 1}, {ring + lamps(3, "c"), "block of three", 1}, {ring + lamps(4, "c"), "block of three", 2},
		{ring + "lights: {k: {unit: led-panel-100, at: [1, 2], height: 1, aim: down, circuit: c, count: 4}}\n", "block of three", 2},
		{"circuits: {c: {breaker: 16}}\n" + lamps(3, "c"), "block of three", 0},
		{"circuits: {c: {breaker: 32, at: [0, 0]}}\n" + lamps(2, "c"), "splitter for 32 A, 2 plugs", 1},
		{"circuits: {c: {breaker: 16, at: [0, 0], plug: 'IEC 60309, 16 A'}}\n" + lamps(2, "c"), "blue to three", 1},
		{"circuits: {c: {item: battery-mains-2000, at: [0, 0]}}\n" + lamps(3, "c"), "block of three", 0},
		{"circuits: {c: {item: battery-mains-2000, at: [0, 0]}}\n" + lamps(4, "c"), "block of three", 1},
	} {
		if got := has(listed(t, c.scene), c.label); got != c.want {
			t.Errorf("%s takes %d of %q, want %d", c.scene, got, c.label, c.want)
		}
	}
}

// What feeds a circuit is on the list, by its figures where the scene names no thing of the kit, and a circuit where its box is takes no cable to there.
func TestWhatFeeds(t *testing.T) {
	const lamp = "lights: {k: {unit: led-panel-100, at: [0, 2], height: 1, aim: down, circuit: c}}\n"
	for _, c := range []struct {
		scene string
		want  map[string]int
	}{
		{"circuits: {g: {phases: 3, kva: 20, power: 16 kW, breaker: 32, tank: 60, at: [0, 0]}, box: {item: distribution-32a, from: g, phases: 3, at: [5, 0]}, c: {from: box, phase: L1, breaker: 16, at: [5, 0]}}\n" + lamp,
			map[string]int{"generator 20 kVA, 230 V, three phases of 32 A": 1, "distribution 3 x 32 A": 1, "cable 3 x 32 A 25 m": 1, "cable 16 A 5 m": 1, "cable 16 A 10 m": 0}},
		{"circuits: {c: {kind: generator, power: 3 kW, breaker: 16}}\n" + lamp, map[string]int{"generator 3000 W, 230 V, 16 A": 1}},
		{"circuits: {c: {kind: battery, volts: 48, energy: 600, breaker: 20}}\n" + lamp, map[string]int{"battery 600 Wh, 48 V, 20 A": 1}},
		{"circuits: {c: {item: generator-2000}}\n" + lamp, map[string]int{"generator 2 kW": 1}},
		{"circuits: {c: {breaker: 16}}\n" + lamp, map[string]int{"generator 230 V, 16 A": 0, "mains, 230 V, 16 A": 0}},
	} {
		l := listed(t, c.scene)
		for label, count := range c.want {
			if got := has(l, label); got != count {
				t.Errorf("%s takes %d of %q, want %d: %v", c.scene, got, label, count, l.Items)
			}
		}
	}
}

// What sits on a camera thread takes a stud on its stand, and 16 mm in a socket of 28 mm an adapter; what fits takes none.
func TestSpigotAdapters(t *testing.T) {
	for scene, want := range map[string]map[string]int{
		"lights: {k: {unit: led-tube-60, at: [0, 0], height: 2, aim: down, count: 2, stand: light-stand}}\n": {"thread stud": 2, "adapter 28 to 16 mm": 0},
		"lights: {k: {unit: led-tube-60, at: [0, 0], height: 2, aim: down, mount: hand}}\n":                  {"thread stud": 0, "adapter 28 to 16 mm": 0},
		"lights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, stand: light-stand}}\n":  {"thread stud": 0, "adapter 28 to 16 mm": 0},
		"lights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, stand: combo-stand}}\n":  {"thread stud": 0, "adapter 28 to 16 mm": 0},
	} {
		l := listed(t, scene)
		for label, count := range want {
			if got := has(l, label); got != count {
				t.Errorf("%s takes %d of %q, want %d", scene, got, label, count)
			}
		}
	}
	s := setups(t, "lights: {k: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, stand: combo-stand}}\n")[0]
	socket := *s.Lights[0].Mount.Stand
	socket.Spigot = kit.Spigot28
	s.Lights[0].Mount.Stand, s.Lights[0].Head.Spigot = &socket, kit.Spigot16
	var l day.List
	if l.Add(s); has(&l, "adapter 28 to 16 mm") != 1 {
		t.Errorf("a head of 16 mm in a socket of 28 mm takes %d adapters", has(&l, "adapter 28 to 16 mm"))
	}
}

// A filament takes a dimmer of the kit, or one of the kind that the scene says, which may be none; what dims itself takes one where the scene puts
// one before it on the mains. Nobody brings one for what stays at full or off.
func TestWhatTakesADimmer(t *testing.T) {
	cases := []struct{ light, want string }{
		{"unit: fresnel-tungsten-650", "dimmer 1 kW"},
		{"unit: fresnel-tungsten-650, dimmer: phase", "dimmer 1 kW"},
		{"unit: fresnel-tungsten-650, dimmer: none", ""},
		{"unit: fresnel-tungsten-650, dimmer: transformer", "transformer dimmer for 650 W"},
		{"unit: fresnel-tungsten-650, dimmer: {kind: pwm, hertz: 1000}", "pwm dimmer for 650 W"},
		{"unit: practical-table, bulb: tungsten-60, dimmer: none", ""},
		{"unit: practical-table, bulb: led-806", ""},
		{"unit: practical-table, bulb: led-806, dimmer: phase", "dimmer 300 W"},
		{"unit: led-panel-100", ""},
		{"unit: led-panel-100, dimmer: pwm", ""},
		{"unit: led-panel-100, dimmer: phase", "dimmer 300 W"},
		{"output: {candela: 100, shape: uniform}", ""},
		{"output: {candela: 100, shape: uniform}, dimmer: phase", "dimmer for k12"},
	}
	for _, level := range []string{"50 %", "100 %", "off"} {
		text, want := "lights:\n", map[string]int{}
		for i, c := range cases {
			text += fmt.Sprintf("  k%d: {%s, at: [%d, 0], height: 2, aim: down, count: 2, level: %s}\n", i, c.light, 2*i, level)
		}
		s := setups(t, text)[0]
		for i, c := range cases {
			if level != "50 %" {
				c.want = ""
			}
			if got := day.DimmerOf(s, &s.Lights[i]); got != c.want {
				t.Errorf("%s at %s is on %q, want %q", c.light, level, got, c.want)
			}
			if c.want != "" {
				want[c.want] += 2
			}
		}
		var l day.List
		l.Add(s)
		for _, i := range l.Items {
			if i.Shelf == day.Dimmer {
				if want[i.Label] != i.Count {
					t.Errorf("at %s: %d of %q, want %d", level, i.Count, i.Label, want[i.Label])
				}
				delete(want, i.Label)
			}
		}
		if len(want) > 0 {
			t.Errorf("at %s nobody brings %v", level, want)
		}
	}
}
