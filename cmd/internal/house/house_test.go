package house

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// layer is a storey of the house: packages of which each may import what all of the storey may, and what is listed for it
// alone. A storey lies on those above it in this file, and DEVELOPERS.md draws it.
type layer struct {
	all      []string            // what each package of the layer may import
	packages map[string][]string // what only that package may import besides
}

// leaves know no scene: facts and formulas that everything which knows one may use.
var leaves = []string{"plan/source", "plan/unit", "plan/colour", "plan/lens", "plan/power", "plan/rig", "plan/plane", "plan/term", "plan/photometry", "plan/solid", "plan/kit"}

// setUp is a set-up, and what it is made of.
var setUp = append([]string{"plan"}, leaves...)

// layers are the house from its ground up. A package that is in none fails the test: a new room needs a place.
var layers = []layer{
	{nil, map[string][]string{ // leaves
		"plan/source":                  {},
		"plan/unit":                    {"plan/source", "plan/colour"},
		"plan/colour":                  {},
		"plan/lens":                    {},
		"plan/power":                   {},
		"plan/rig":                     {},
		"plan/plane":                   {},
		"plan/term":                    {},
		"plan/photometry/row":          {},
		"plan/photometry":              {"plan/photometry/row"},
		"plan/photometry/formfactor":   {},
		"plan/photometry/files":        {"plan/photometry", "plan/source", "plan/unit"},
		"plan/solid":                   {"plan/colour"},
		"plan/kit":                     {"plan/lens", "plan/power", "plan/term", "plan/source", "plan/unit", "plan/colour", "plan/photometry", "plan/photometry/files"},
		"plan/light/internal/parallel": {},
		"plan/light/internal/raster":   {},
		"plan/light/internal/sobol":    {},
		"plan/light/receptor":          {"plan/solid"},
		"plan/light/radiosity":         {"plan/light/receptor", "plan/light/internal/sobol", "plan/light/internal/parallel", "plan/light/internal/raster", "plan/solid", "plan/colour", "plan/photometry/formfactor"},
		"plan/internal/reference":      {"plan/photometry"},
		"samples":                      {},
	}},
	{leaves, map[string][]string{ // a scene, and the set-up it becomes
		"plan/scene":           {},
		"plan":                 {"plan/scene"},
		"plan/internal/report": {},
	}},
	{setUp, map[string][]string{ // light
		"plan/light":          {"plan/light/receptor", "plan/light/internal/parallel", "plan/light/internal/raster", "plan/light/radiosity", "plan/photometry/row", "plan/photometry/formfactor"},
		"plan/shot":           {"plan/scene"},
		"plan/body":           {},
		"plan/clash":          {"plan/body"},
		"plan/frame":          {"plan/internal/report", "plan/shot", "plan/body"},
		"plan/internal/truth": {},
	}},
	{append([]string{"plan/scene"}, setUp...), map[string][]string{ // what is made of a scene, and of its light
		"plan/review/fit":            {"plan/internal/report", "plan/body", "plan/clash"},
		"plan/resolve":               {"plan/internal/report", "plan/review/fit", "plan/clash"},
		"plan/internal/truth/scenes": {"plan/resolve", "plan/review/fit", "plan/internal/truth"},
		"plan/internal/days":         {"plan/internal/truth"},
		"plan/pending":               {"plan/light"},
		"plan/supply":                {},
		"plan/day":                   {"plan/supply"},
		"plan/day/change":            {},
		"plan/meter":                 {"plan/light", "plan/pending", "plan/shot", "plan/frame"},
		"plan/passing":               {"plan/light", "plan/meter"},
		"plan/inhand":                {"plan/light", "plan/meter", "plan/frame"},
		"plan/cue":                   {"plan/light", "plan/meter"},
		"plan/match":                 {"plan/light", "plan/meter", "plan/shot"},
		"plan/study":                 {"plan/cue", "plan/frame", "plan/light", "plan/meter", "plan/pending", "plan/passing", "plan/inhand"},
		"plan/review":                {"plan/body", "plan/review/fit", "plan/light", "plan/meter", "plan/frame", "plan/supply", "plan/day/change"},
		"plan/teach":                 {"plan/light", "plan/meter", "plan/study"},
		"plan/explain":               {"plan/light", "plan/meter", "plan/study", "plan/photometry/formfactor"},
	}},
	{[]string{"symbols/ink"}, map[string][]string{ // ink, what is drawn on it, what writes it; paper
		"symbols/ink":          {},
		"symbols/ink/specimen": {},
		"symbols":              {},
		"render/font":          {},
		"render/carto":         {"plan/plane", "plan/colour", "plan/unit"},
		"render/tint":          {"plan/colour", "render/carto"},
		"render/svg":           {"render/font"},
		"render/pdf":           {"render/font"},
		"render/png":           {"render/font"},
		"render/contact":       {"render/font", "render/png"},
		"render/page":          {"render/font", "render/svg"},
		"render/polar":         {"plan/photometry", "plan/unit"},
		"render/sheet/box":     {},
		"render/sheet/layout":  {"plan/source", "plan/unit", "render/sheet/box"},
	}},
	{append([]string{"plan/scene", "plan/meter", "plan/shot", "plan/supply", "symbols", "symbols/ink", "render/carto", "render/font", "render/sheet/box", "render/sheet/layout"}, setUp...),
		map[string][]string{ // sheets
			"render/sheet/section":          {"plan/match", "plan/day/change"},
			"render/sheet/draw":             {"render/tint", "render/sheet/section", "plan/day/change"},
			"render/sheet":                  {"plan/study", "plan/review", "plan/review/fit", "plan/match", "render/sheet/section", "render/sheet/draw", "render/list"},
			"render/list":                   {"plan/day", "plan/day/change", "render/sheet/section"},
			"render/sheet/internal/fixture": {"plan/resolve", "render/sheet/section"},
		}},
	{nil, map[string][]string{ // what writes lists as a workbook
		"render/workbook": {"render/list"},
	}},
}

// allowed is what a package may import of this module; known says whether it has a place.
func allowed(name string) (may []string, known bool) {
	for _, l := range layers {
		if own, ok := l.packages[name]; ok {
			return slices.Concat(l.all, own), true
		}
	}
	return nil, false
}

// external lists the packages that may import what must stay in one place.
var external = map[string][]string{
	"gopkg.in/yaml.v3":                 {"plan/source"},
	"github.com/spf13/cobra":           {"cmd/scrimshaw"},
	"codeberg.org/go-pdf/fpdf":         {"render/pdf"},
	"github.com/tdewolff/canvas":       {}, // DEVELOPERS.md says why, with measurements
	"codeberg.org/go-fonts/liberation": {"render/font"},
	"github.com/xuri/excelize/v2":      {"render/workbook"},
	"github.com/fogleman/gg":           {"render/tint", "render/contact"},
}

// impure lists standard packages that plan, symbols and render must not import: a result may
// not depend on the clock, the machine or the network.
var impure = []string{"os", "os/exec", "os/signal", "os/user", "syscall", "net", "net/http", "math/rand", "math/rand/v2", "crypto/rand", "runtime/debug"}

type listed struct {
	ImportPath string
	Imports    []string
}

func list(t *testing.T) []listed {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "scrimshaw/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []listed
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
}

func TestImportsRunOneWay(t *testing.T) {
	packages := list(t)
	if len(packages) < 15 {
		t.Fatalf("only %d packages listed", len(packages))
	}
	for _, p := range packages {
		name := strings.TrimPrefix(p.ImportPath, "scrimshaw/")
		if strings.HasPrefix(name, "cmd/") {
			continue // the command wires everything
		}
		may, known := allowed(name)
		if !known {
			t.Errorf("%s has no place in the house: add it to a layer", name)
		}
		for _, imported := range p.Imports {
			if own, ok := strings.CutPrefix(imported, "scrimshaw/"); ok && !slices.Contains(may, own) {
				t.Errorf("%s imports %s, which lies above it or beside it", name, own)
			}
		}
	}
}

// What is listed for a package is needed, and a package stands in one layer.
func TestLayersListWhatIsUsed(t *testing.T) {
	imports := map[string][]string{}
	for _, p := range list(t) {
		imports[strings.TrimPrefix(p.ImportPath, "scrimshaw/")] = p.Imports
	}
	seen := map[string]bool{}
	for _, l := range layers {
		for name, own := range l.packages {
			if _, known := imports[name]; !known || seen[name] {
				t.Errorf("%s is no package, or stands in two layers", name)
			}
			seen[name] = true
			for _, one := range own {
				if !slices.Contains(imports[name], "scrimshaw/"+one) {
					t.Errorf("%s may import %s, and does not", name, one)
				}
				if slices.Contains(l.all, one) {
					t.Errorf("%s may import %s as all of its layer may", name, one)
				}
			}
		}
	}
}

// undrawn are the packages above the leaves that the drawing of the house has no room for: a test drawing.
var undrawn = []string{"symbols/ink/specimen"}

// DEVELOPERS.md draws who imports whom: every package above the leaves is in the drawing, but for what is internal.
func TestTheDrawingHasEveryPackage(t *testing.T) {
	text, err := os.ReadFile("../../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, drawing, begins := strings.Cut(string(text), "\nImports run one way:")
	drawing, _, ends := strings.Cut(drawing, "\nThe leaves know no scene")
	if !begins || !ends {
		t.Fatal("DEVELOPERS.md has no drawing of the imports")
	}
	_, drawing, _ = strings.Cut(drawing, "\n\n")
	drawn := strings.FieldsFunc(drawing, func(r rune) bool { return r != '/' && !unicode.IsLetter(r) })
	for _, l := range layers[1:] {
		for name := range l.packages {
			short := func(word string) bool { return name == word || strings.HasSuffix(name, "/"+word) }
			if !strings.Contains(name, "internal/") && !slices.Contains(undrawn, name) && !slices.ContainsFunc(drawn, short) {
				t.Errorf("the drawing of the imports in DEVELOPERS.md lacks %s", name)
			}
		}
	}
}

func TestLibrariesStayWhereTheyBelong(t *testing.T) {
	for _, p := range list(t) {
		name := strings.TrimPrefix(p.ImportPath, "scrimshaw/")
		for _, imported := range p.Imports {
			for library, users := range external {
				if (imported == library || strings.HasPrefix(imported, library+"/")) && !slices.Contains(users, name) {
					t.Errorf("%s imports %s, which only %v may", name, imported, users)
				}
			}
			if !strings.HasPrefix(name, "cmd/") && slices.Contains(impure, imported) {
				t.Errorf("%s imports %s: results may not depend on the machine or the day", name, imported)
			}
		}
	}
}
