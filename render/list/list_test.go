package list_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
	"scrimshaw/render/list"
)

// hostile is a day whose words could be taken for formulas, in several scripts, with two set-ups and a light of which little is known.
const hostile = `scrimshaw: 1
title: "=1+1"
rooms: {den: {size: [6, 5], height: 4}}
people: {"Жанна": {at: [3, 3]}}
circuits: {ring: {breaker: 16, at: {wall: den.right, along: 2}}}
lights:
  cmd: {unit: fresnel-tungsten-650, at: [1, 1], height: 2, level: 50 %, circuit: ring, note: "=HYPERLINK(\"x\")and, \"so\"", tag: "@x"}
  "灯": {output: {candela: 1000, shape: uniform}, at: [2, 2], height: 2, aim: down, note: "'quoted", tag: "-7"}
setups:
  "-a": {}
  "-b": {after: "-a", change: {lights: {"灯": strike}}}
`

func dayOf(t testing.TB, text string) *list.Day {
	t.Helper()
	d := list.New()
	eachSetup(t, text, d.Add)
	return d
}

// eachSetup resolves the set-ups of a scene.
func eachSetup(t testing.TB, text string, each func(*plan.Setup)) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	err = resolve.Each(doc, nil, log, func(s *plan.Setup) error {
		each(s)
		return nil
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All())
	}
}

// TestAmpsAreTheSameOnAllPages: a page of the day rounds up what a table has, a plan what the supply has, and both come to the same tenth of an ampere.
func TestAmpsAreTheSameOnAllPages(t *testing.T) {
	const text = `scrimshaw: 1
circuits: {ring: {breaker: 16, already: WATTS W}}
lights: {a: {unit: led-point-300-bicolour, at: [0, 0], height: 2, aim: down, circuit: ring, level: 40 %}}
`
	for watts := range 60 {
		var load *supply.Load
		d := list.New()
		eachSetup(t, strings.Replace(text, "WATTS", strconv.Itoa(3*watts), 1), func(s *plan.Setup) {
			d.Add(s)
			load = &supply.Of(s).Loads[0]
		})
		for key, want := range map[string]float64{"ampsFull": load.Full, "ampsAsSet": load.AsSet, "ampsLeft": -load.Room()} {
			got := *d.Circuits.Rows[0][d.Circuits.At(key)].Number
			if key == "ampsLeft" {
				got = -got
			}
			if supply.RoundedUp(got) != supply.RoundedUp(want) || !(math.Abs(got-want) <= 0.01) {
				t.Errorf("%d W: %s is %g in the table and %g on the plan", 3*watts, key, got, want)
			}
		}
	}
}

// TestHoursAreTheSameOnAllPages: what a battery lasts is rounded down to five minutes from a table as from the supply.
func TestHoursAreTheSameOnAllPages(t *testing.T) {
	const text = `scrimshaw: 1
circuits: {cell: {item: battery-mains-1000, energy: ENERGY}}
lights: {a: {unit: led-point-300-bicolour, at: [0, 0], height: 2, aim: down, circuit: cell, level: 40 %}}
`
	for energy := 700; energy < 760; energy++ {
		var load *supply.Load
		d := list.New()
		eachSetup(t, strings.Replace(text, "ENERGY", strconv.Itoa(energy), 1), func(s *plan.Setup) {
			d.Add(s)
			load = &supply.Of(s).Loads[0]
		})
		got := *d.Circuits.Rows[0][d.Circuits.At("hours")].Number
		if said, want := unit.FormatHours(math.Round(60*got)/60), unit.FormatHours(load.Hours()); said != want || !(math.Abs(got-load.Hours()) <= 1.0/60) {
			t.Errorf("%d Wh: %g h read %s, and the plan says %s", energy, got, said, want)
		}
	}
}

// CSV reads back to the same table, and none of its words begin as a formula does.
func TestCSVReadsBack(t *testing.T) {
	for _, table := range dayOf(t, hostile).Tables() {
		var b bytes.Buffer
		if err := list.WriteCSV(&b, table); err != nil {
			t.Fatal(err)
		}
		if strings.Count(b.String(), "\r\n") != strings.Count(b.String(), "\n") {
			t.Errorf("%s: a line of RFC 4180 ends in CR LF", table.Name)
		}
		read, err := csv.NewReader(&b).ReadAll()
		if err != nil || len(read) != len(table.Rows)+1 {
			t.Fatalf("%s: %d records, %v", table.Name, len(read), err)
		}
		for r := range table.Rows {
			for c, column := range table.Columns {
				got := read[r+1][c]
				if read[0][c] != column.Key {
					t.Errorf("column %d is %s", c, read[0][c])
				}
				if !column.Number {
					if got != "" && strings.ContainsAny(got[:1], "=+-@") {
						t.Errorf("%s: %q is a formula", table.Name, got)
					}
					got = strings.TrimPrefix(got, "'")
				}
				if want := table.Said(r, c); got != want {
					t.Errorf("%s of row %d is %q, want %q", column.Key, r, got, want)
				}
			}
		}
	}
}

// JSON reads back to the same tables, and has its keys in the order of the columns.
func TestJSONReadsBack(t *testing.T) {
	d := dayOf(t, hostile)
	var b bytes.Buffer
	if err := list.WriteJSON(&b, d); err != nil {
		t.Fatal(err)
	}
	var read map[string]any
	if err := json.Unmarshal(b.Bytes(), &read); err != nil {
		t.Fatal(err)
	}
	if read["scene"] != "=1+1" || fmt.Sprint(read["setups"]) != "[-a -b]" {
		t.Errorf("scene %v, set-ups %v", read["scene"], read["setups"])
	}
	for _, table := range d.Tables() {
		rows := read[table.Name].([]any)
		if len(rows) != len(table.Rows) || len(rows) == 0 {
			t.Fatalf("%s has %d rows, want %d", table.Name, len(rows), len(table.Rows))
		}
		for r := range rows {
			for c, column := range table.Columns {
				got := list.Dash
				switch v := rows[r].(map[string]any)[column.Key].(type) {
				case string:
					got = v
				case float64:
					got = strconv.FormatFloat(v, 'f', -1, 64)
				}
				if want := table.Said(r, c); got != want {
					t.Errorf("%s of row %d is %q, want %q", column.Key, r, got, want)
				}
			}
		}
	}
	if strings.Index(b.String(), `"shelf"`) > strings.Index(b.String(), `"count"`) {
		t.Error("the keys are not in the order of the columns")
	}
}

// The totals are the sums of their columns, and a figure that is not known is never 0.
func TestTotalsAddUp(t *testing.T) {
	d := dayOf(t, hostile)
	var kg float64
	for r := range d.Kit.Rows {
		for c, column := range d.Kit.Columns {
			n := d.Kit.Rows[r][c].Number
			switch {
			case column.Number && n != nil && *n == 0:
				t.Errorf("%s is 0", column.Key)
			case column.Key == "kg" && n != nil:
				kg += *n
			}
		}
	}
	if got := d.Mass().Number; got == nil || fmt.Sprintf("%.1f", kg) != fmt.Sprintf("%.1f", *got) {
		t.Errorf("%v kg in all, want %.1f", got, kg)
	}
	if !strings.Contains(strings.Join(d.Lacks(), " "), "灯, plain source") {
		t.Errorf("it is not told what the mass is without: %v", d.Lacks())
	}
}

// The text of the same day is the same bytes, names a lamp that is struck, and says with what units.
func TestTextIsForReaders(t *testing.T) {
	text := func() string {
		var b bytes.Buffer
		if err := list.WriteText(&b, dayOf(t, hostile), false); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	said := text()
	for _, want := range []string{"LAMPS -b\n", "since -a: struck", "650 W fresnel", "dimmer 1 kW", "2.83 A at full", "No cable for", "\n  total "} {
		if want != "No cable for" && !strings.Contains(said, want) {
			t.Errorf("%q is not in\n%s", want, said)
		}
	}
	if said != text() {
		t.Error("the same day is other bytes")
	}
}

// What a spreadsheet could compute gets a sign before it, and so does that sign.
func TestHarmless(t *testing.T) {
	for text, want := range map[string]string{"": "", "a=b": "a=b", "=a": "'=a", "＝a": "'＝a", "@a": "'@a", "'a": "''a", "–": "–", "灯": "灯"} {
		if got := list.Harmless(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

// What a price file makes of the lists: each line is its rate times pieces and spares times the days that are charged, to a hundredth, and the sums are those of the lines.
func TestPricesAddUp(t *testing.T) {
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{"prices.yaml": {Data: []byte("scrimshaw: 1\ncurrency: EUR\ndays: {prep: 1, shoot: 3, charged: 2.5}\n" +
		"rates: {fresnel-tungsten-650: 17.55, practical-table: 0, tungsten-60: 0.35, cable-16a-10: 1.45, cable-16a-5: 0.85, sandbag-12: 1.15}\nsales: {gel-roll: 61.90, pegs: 4}\n")}}
	log, d := &source.Log{}, list.New()
	doc := scene.Open(scene.Env{Kit: shipped, Files: files}, &source.File{Name: "s.yaml", Text: []byte(`scrimshaw: 1
prices: prices.yaml
circuits: {ring: {breaker: 16, at: [0, 0]}}
lights:
  a: {unit: fresnel-tungsten-650, at: [4, 1], height: 2, aim: down, count: 3, circuit: ring, gels: [full CTB]}
  b: {unit: practical-table, bulb: tungsten-60, at: [2, 2], count: 5, circuit: ring}
`)}, log)
	d.Add(resolve.Resolve(doc, doc.Base(log), log))
	if log.Failed() {
		t.Fatal(log.All())
	}
	cents := func(c list.Cell) int { return int(math.Round(100 * *c.Number)) }
	hire, sales := 0, 0
	for r, row := range d.Kit.Rows {
		of := func(key string) list.Cell { return row[d.Kit.At(key)] }
		if of("rate").Number == nil {
			continue
		}
		n := *of("count").Number
		if spares := of("spares").Number; spares != nil {
			n += *spares
		}
		if want := int(math.Round(float64(cents(of("rate"))) * n * 2.5)); cents(of("price")) != want {
			t.Errorf("%s: %d, want %d", d.Kit.Said(r, d.Kit.At("what")), cents(of("price")), want)
		}
		hire += cents(of("price"))
	}
	for _, row := range d.Consumables.Rows {
		if c := row[d.Consumables.At("price")]; c.Number != nil {
			sales += cents(c)
		}
	}
	if cents(d.Hire()) != hire || cents(d.Sales()) != sales || sales != 6190+400 || cents(d.Price()) != hire+sales {
		t.Errorf("hire %v of %d, sales %v of %d", *d.Hire().Number, hire, *d.Sales().Number, sales)
	}
	if got := d.Terms(); got != "prep 1 day, shoot 3 days, return 0 days, 2.5 charged, prices in EUR" {
		t.Errorf("terms %q", got)
	}
	if !strings.Contains(strings.Join(d.Lacks(), " "), "No price for light stand; block of three; black foil; cloth tape.") {
		t.Errorf("without %v", d.Lacks())
	}
}

// Of gel off one roll in pieces of two sizes the list has the rolls to bring, by hand: three squares of 0.45 m side by side by two, and a window.
func TestConsumablesByHand(t *testing.T) {
	d := dayOf(t, `scrimshaw: 1
rooms: {den: {size: [6, 5], height: 3}}
openings: {w: {window: den.left, along: 1, width: 2.2, sill: 1, head: 2.2, gels: [full CTO]}}
lights: {a: {unit: fresnel-tungsten-2000, at: [1, 1], height: 2, aim: down, count: 3, gels: [full CTO]}}
`)
	row := d.Consumables.Rows[0]
	of := func(key string) float64 { return *row[d.Consumables.At(key)].Number }
	// The window of 2.2 x 1.2 m is one length of 1.22 m, and there are two rows of two of 0.45 m.
	if want := 2.2 + 2*0.45; !(math.Abs(of("metres")-want) <= 1e-9) || of("pieces") != 4 || of("count") != 1 {
		t.Errorf("%v m, want %v, in %v pieces: %v", of("metres"), want, of("pieces"), row)
	}
	if area := 2.2*1.2 + 3*0.45*0.45; !(math.Abs(of("squareMetres")-math.Round(1000*area)/1000) <= 1e-9) || of("wastePercent") != math.Round(100*(1-area/(1.22*3.1))) {
		t.Errorf("%v m², %v %% waste", of("squareMetres"), of("wastePercent"))
	}
}

// A lamp says what it becomes, its heights over deck and street, and the light of its dial where that is another figure.
func TestLampsSayAll(t *testing.T) {
	d := dayOf(t, `scrimshaw: 1
site: {ground: -0.5}
rooms: {den: {size: [6, 5], height: 4}}
furniture: {riser: {deck: [2, 2, 0.3], at: [1, 1]}}
lights: {k: {unit: fresnel-tungsten-650, at: {top: riser}, height: 2, aim: down, scrims: [single], barndoors: {top: 60}}}
setups: {one: {}, two: {after: one, change: {lights: {k: {level: 40 %}}}}}
`)
	t0 := &d.Lamps
	for key, want := range map[string]string{"metresOverFeet": "1.7", "metresOverStreet": "2.5", "scrims": "single scrim", "doors": "doors top 60°", "wears": "", "change": ""} {
		if got := t0.Said(0, t0.At(key)); got != want {
			t.Errorf("%s is %q, want %q", key, got, want)
		}
	}
	if got := t0.Said(0, t0.At("next")); !strings.HasPrefix(got, "in two: level 40 %, was 100 %") || t0.Said(1, t0.At("next")) != "" {
		t.Errorf("next %q", got)
	}
}

// The power of a day is the worst of its set-ups, figure by figure: of a circuit that is another breaker in one of them, too.
func TestPowerIsTheWorst(t *testing.T) {
	d := dayOf(t, `scrimshaw: 1
circuits: {ring: {breaker: 16, residual: 30}, cell: {item: battery-mains-1000, energy: 600}}
lights:
  a: {unit: fresnel-tungsten-2000, at: [0, 0], height: 2, aim: down, circuit: ring, level: 50 %}
  b: {unit: led-panel-100, at: [2, 0], height: 2, aim: down, circuit: cell, level: 50 %}
setups:
  one: {}
  two: {after: one, change: {circuits: {ring: {breaker: 10}}, lights: {a: {level: 100 %}, b: {level: 20 %}}}}
  three: {after: two, change: {circuits: {ring: {breaker: 20, residual: 300}}, lights: {a: {count: 2, level: 60 %}, b: {count: 2}}}}
`)
	figure := func(t0 *list.Table, row int, key string) float64 { return *t0.Rows[row][t0.At(key)].Number }
	c, p := &d.Circuits, &d.Power
	if len(p.Rows) != 2 || len(c.Rows) != 6 {
		t.Fatalf("%d rows of %d", len(p.Rows), len(c.Rows))
	}
	for _, w := range []struct {
		key, in string
		worse   func(a, b float64) bool
	}{
		{"ampsFull", "fullIn", func(a, b float64) bool { return a > b }},
		{"ampsAsSet", "asSetIn", func(a, b float64) bool { return a > b }},
		{"ampsLeft", "", func(a, b float64) bool { return a < b }},
		{"ampsLimit", "", func(a, b float64) bool { return a < b }},
		{"leakageMilliamps", "", func(a, b float64) bool { return a > b }},
		{"residualMilliamps", "", func(a, b float64) bool { return a < b }},
		{"hours", "hoursIn", func(a, b float64) bool { return a < b }},
	} {
		for row, name := range []string{"ring", "cell"} {
			at := -1
			for r := range c.Rows {
				if c.Said(r, c.At("circuit")) == name && c.Rows[r][c.At(w.key)].Number != nil && (at < 0 || w.worse(figure(c, r, w.key), figure(c, at, w.key))) {
					at = r
				}
			}
			if at < 0 {
				if p.Rows[row][p.At(w.key)].Number != nil {
					t.Errorf("%s of %s is known", w.key, name)
				}
				continue
			}
			if got, want := figure(p, row, w.key), figure(c, at, w.key); got != want || w.in != "" && p.Said(row, p.At(w.in)) != c.Said(at, c.At("setup")) {
				t.Errorf("%s of %s is %g, want %g", w.key, name, got, want)
			}
		}
	}
	if figure(p, 0, "ampsLimit") != 10 || p.Said(0, p.At("asSetIn")) != "three" || p.Said(1, p.At("hoursIn")) != "one" {
		t.Errorf("rows %v", p.Rows)
	}
}

// A scene without anything has tables without rows.
func TestEmptyDay(t *testing.T) {
	d := dayOf(t, "scrimshaw: 1\nrooms: {den: {size: [4, 3]}}\n")
	var b bytes.Buffer
	if err := list.WriteJSON(&b, d); err != nil || !strings.Contains(b.String(), `"kit": []`) || !strings.Contains(b.String(), `"kg": null`) {
		t.Errorf("%v: %s", err, b.String())
	}
	if err := list.WriteText(&b, d, true); err != nil {
		t.Error(err)
	}
}

// A swap that saves no time, as the rates of the scene say it, says what it does save.
func TestSwapThatSavesNoTime(t *testing.T) {
	const day = `scrimshaw: 1
rates: {move: 5}
lights: {k: {unit: led-tube-60, at: [2, 2], height: 2}}
setups: {a: {}, b: {after: a, change: {lights: {k: {level: 50 %}}}}, c: {}}
`
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(day)}, log)
	var d list.Shooting
	if err := resolve.Each(doc, nil, log, func(s *plan.Setup) error { d.Add(s); return nil }); err != nil || log.Failed() {
		t.Fatal(err, log.All())
	}
	var b bytes.Buffer
	if err := d.WriteText(&b); err != nil || !strings.Contains(b.String(), "  Swap a and b: saves 1 change\n") {
		t.Errorf("the day is\n%s%v", b.String(), err)
	}
}

// Two heads of one line stand on two stands, and the bags beside them are of both; lamps of the set stand on none.
func TestSeveralStandOnAsMany(t *testing.T) {
	var b bytes.Buffer
	if err := list.WriteText(&b, dayOf(t, "scrimshaw: 1\nlights: {k: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, count: 2}, m: {unit: fresnel-tungsten-650, at: [3, 0], height: 2, aim: down},\n"+
		"  n: {unit: practical-table, at: [5, 0], count: 3}}\n"), false); err != nil {
		t.Fatal(err)
	}
	for want, count := range map[string]int{"      2 × light stand, 2 bags\n": 1, "      light stand, 1 bag\n": 1, "3 × ": 1} {
		if got := strings.Count(b.String(), want); got != count {
			t.Errorf("%q is there %d times in\n%s", want, got, b.String())
		}
	}
}
