package workbook_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/xuri/excelize/v2"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/render/list"
	"scrimshaw/render/workbook"
)

const hostile = `scrimshaw: 1
prices: prices.yaml
title: "=1+1"
rooms: {den: {size: [6, 5], height: 4}}
circuits: {ring: {breaker: 16, at: {wall: den.right, along: 2}}}
lights:
  cmd: {unit: fresnel-tungsten-650, at: [1, 1], height: 2, aim: down, level: 50 %, circuit: ring, note: "=1+1", tag: "@x"}
  "灯": {output: {candela: 1000, shape: uniform}, at: [2, 2], height: 2, aim: down, note: "'quoted", tag: "-7"}
  "دفتر": {unit: discharge-1200, at: [3, 3], height: 2, aim: down, gels: [full CTB]}
`

// prices are invented.
const prices = "scrimshaw: 1\ncurrency: EUR\ndays: {shoot: 2}\nrates: {fresnel-tungsten-650: 17.50, discharge-1200: 95}\nsales: {gel-roll: 61.90, black-foil: 24, pegs: 4}\n"

func dayOf(t *testing.T) *list.Day {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log, d := &source.Log{}, list.New()
	doc := scene.Open(scene.Env{Kit: shipped, Files: fstest.MapFS{"prices.yaml": {Data: []byte(prices)}}}, &source.File{Name: "s.yaml", Text: []byte(hostile)}, log)
	err = resolve.Each(doc, nil, log, func(s *plan.Setup) error {
		d.Add(s)
		return nil
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All())
	}
	return d
}

func written(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := workbook.Write(&b, dayOf(t)); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// A workbook reads back to the same tables, has no formula, and is the same bytes twice.
func TestReadsBack(t *testing.T) {
	book := written(t)
	if !bytes.Equal(book, written(t)) {
		t.Error("the same lists are other bytes")
	}
	f, err := excelize.OpenReader(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, table := range dayOf(t).Tables() {
		for r := -1; r < len(table.Rows); r++ {
			for c, column := range table.Columns {
				name, _ := excelize.CoordinatesToCellName(c+1, r+2)
				got, err := f.GetCellValue(table.Title, name, excelize.Options{RawCellValue: true})
				formula, _ := f.GetCellFormula(table.Title, name)
				want := column.Key
				if r >= 0 {
					want = table.Said(r, c)
				}
				if err != nil || got != want || formula != "" {
					t.Errorf("%s %s is %q, formula %q, want %q (%v)", table.Title, name, got, formula, want, err)
				}
			}
		}
	}
}

// Under the kit stands what it costs to hire, under what is used up what that costs and both together: each is the sum of the cells over it, as read back.
func TestSumsStandUnderTheirColumns(t *testing.T) {
	f, err := excelize.OpenReader(bytes.NewReader(written(t)))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	found := map[string]float64{}
	for _, sheet := range []string{"Kit", "Consumables"} {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for column, key := range rows[0] {
			if key != "kg" && key != "price" {
				continue
			}
			sum := 0.0
			for _, row := range rows[1:] {
				if column >= len(row) || row[column] == "" {
					continue
				}
				v, err := strconv.ParseFloat(row[column], 64)
				if row[0] == "total" || row[0] == "hire and consumables" {
					found[sheet+" "+row[0]+" "+key] = v
				} else if err == nil {
					sum += v
				}
			}
			if got := found[sheet+" total "+key]; got == 0 || strconv.FormatFloat(got, 'f', 1, 64) != strconv.FormatFloat(sum, 'f', 1, 64) {
				t.Errorf("%s of %s: %g under a sum of %g", key, sheet, got, sum)
			}
		}
	}
	if both := found["Consumables hire and consumables price"]; both != found["Kit total price"]+found["Consumables total price"] || found["Consumables total price"] != 61.90+24+4 {
		t.Errorf("%v", found)
	}
	rows, err := f.GetRows("Consumables")
	if last := rows[len(rows)-1]; err != nil || !strings.HasSuffix(last[0], "prices in EUR") {
		t.Errorf("the last line is %q, %v", last, err)
	}
}

// An office program opens the workbook, and its column of masses adds up to the total under it. It runs where the program is installed.
func TestAnOfficeOpensIt(t *testing.T) {
	office, err := exec.LookPath("soffice")
	if errors.Is(err, exec.ErrNotFound) {
		t.Skip("soffice is not installed")
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "kit.xlsx")
	if err := os.WriteFile(path, written(t), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(office, "-env:UserInstallation=file://"+folder+"/profile", "--headless", "--convert-to", "csv:Text - txt - csv (StarCalc):44,34,76",
		"--outdir", folder, path).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	text, err := os.ReadFile(filepath.Join(folder, "kit.csv"))
	if err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var sum, total float64
	column := -1
	for i, key := range records[0] {
		if key == "kg" {
			column = i
		}
	}
	for _, r := range records[1:] {
		kg, err := strconv.ParseFloat(r[column], 64)
		switch {
		case err != nil:
		case r[0] == "total":
			total = kg
		default:
			sum += kg
		}
	}
	if total == 0 || strconv.FormatFloat(sum, 'f', 1, 64) != strconv.FormatFloat(total, 'f', 1, 64) {
		t.Errorf("the masses add up to %g kg, and the total says %g", sum, total)
	}
	if !strings.Contains(string(text), "灯, plain source") {
		t.Errorf("a name is lost:\n%s", text)
	}
}
