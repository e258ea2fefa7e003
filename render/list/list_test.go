package list_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
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
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	d := list.New()
	err = resolve.Each(doc, nil, log, func(s *plan.Setup) error {
		d.Add(s)
		return nil
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All())
	}
	return d
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
