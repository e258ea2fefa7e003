package house

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// allowed lists, for every package, the packages of this module that it may import. A package
// that is missing here fails the test: a new room in the house needs a place in the plan.
var allowed = map[string][]string{
	"plan/source":                {},
	"plan/unit":                  {},
	"plan/colour":                {},
	"plan/lens":                  {},
	"plan/plane":                 {},
	"plan/term":                  {},
	"plan/photometry":            {"plan/colour", "plan/source"},
	"plan/photometry/formfactor": {},
	"plan/photometry/files":      {"plan/photometry", "plan/source", "plan/unit"},
	"plan/solid":                 {"plan/colour"},
	"plan/kit":                   {"plan/term", "plan/source", "plan/unit", "plan/colour", "plan/photometry", "plan/photometry/files"},
	"plan/scene":                 {"plan/term", "plan/source", "plan/unit", "plan/colour", "plan/kit"},
	"plan":                       {"plan/term", "plan/plane", "plan/source", "plan/unit", "plan/colour", "plan/solid", "plan/kit", "plan/scene"},
	"plan/internal/report":       {"plan/source", "plan/unit"},
	"plan/review/fit":            {"plan", "plan/internal/report", "plan/term", "plan/plane", "plan/source", "plan/unit", "plan/photometry", "plan/solid", "plan/kit", "plan/scene"},
	"plan/resolve": {"plan", "plan/internal/report", "plan/review/fit", "plan/term", "plan/plane", "plan/source", "plan/unit", "plan/colour", "plan/lens", "plan/photometry",
		"plan/solid", "plan/kit", "plan/scene"},
	"plan/light/crew":            {},
	"plan/light/scan":            {},
	"plan/light/radiosity":       {"plan/light/crew", "plan/light/scan", "plan/solid", "plan/colour", "plan/photometry/formfactor"},
	"plan/light":                 {"plan", "plan/light/crew", "plan/light/radiosity", "plan/light/scan", "plan/solid", "plan/photometry", "plan/photometry/formfactor", "plan/colour", "plan/kit"},
	"plan/internal/reference":    {"plan/photometry"},
	"plan/internal/truth":        {"plan", "plan/solid", "plan/colour", "plan/photometry"},
	"plan/internal/truth/scenes": {"plan", "plan/resolve", "plan/review/fit", "plan/internal/truth", "plan/photometry", "plan/solid", "plan/kit", "plan/scene", "plan/source"},
	"plan/pending":               {"plan", "plan/scene", "plan/light"},
	"plan/meter":                 {"plan/term", "plan", "plan/plane", "plan/light", "plan/pending", "plan/solid", "plan/colour", "plan/lens", "plan/unit", "plan/kit"},
	"plan/study":                 {"plan/term", "plan", "plan/plane", "plan/photometry", "plan/light", "plan/meter", "plan/pending", "plan/solid", "plan/colour", "plan/lens", "plan/scene", "plan/unit"},
	"plan/review": {"plan/term", "plan", "plan/light", "plan/meter", "plan/study", "plan/solid", "plan/colour", "plan/lens",
		"plan/scene", "plan/source", "plan/unit", "plan/kit"},
	"symbols/ink":          {},
	"symbols/ink/specimen": {"symbols/ink"},
	"symbols":              {"symbols/ink"},
	"render/font":          {"symbols/ink"},
	"render/carto":         {"symbols/ink", "plan/plane", "plan/colour", "plan/unit"},
	"render/tint":          {"symbols/ink", "render/carto"},
	"render/svg":           {"symbols/ink", "render/font"},
	"render/pdf":           {"symbols/ink", "render/font"},
	"render/png":           {"symbols/ink", "render/font"},
	"render/contact":       {"symbols/ink", "render/font", "render/png"},
	"render/page":          {"symbols/ink", "render/font", "render/svg"},
	"render/polar":         {"symbols/ink", "plan/photometry", "plan/unit"},
	// A sheet: geometry on paper, where things go, what is said, ink, and on top the pages of all.
	"render/sheet/box":    {"symbols/ink"},
	"render/sheet/layout": {"plan/source", "plan/unit", "symbols/ink", "render/sheet/box"},
	"render/sheet/section": {"plan", "plan/term", "plan/scene", "plan/meter", "plan/colour", "plan/lens", "plan/unit", "symbols", "symbols/ink", "render/carto",
		"render/sheet/box", "render/sheet/layout"},
	"render/sheet/draw": {"plan", "plan/term", "plan/kit", "plan/meter", "plan/colour", "plan/unit", "symbols", "symbols/ink", "render/carto", "render/tint",
		"render/font", "render/sheet/box", "render/sheet/layout", "render/sheet/section"},
	"render/sheet": {"plan", "plan/term", "plan/scene", "plan/meter", "plan/study", "plan/review", "plan/unit", "plan/source", "symbols/ink", "render/carto",
		"render/font", "render/sheet/box", "render/sheet/layout", "render/sheet/section", "render/sheet/draw"},
	"render/sheet/internal/fixture": {"plan", "plan/resolve", "plan/term", "plan/scene", "plan/kit", "plan/meter", "plan/colour", "plan/photometry", "plan/source",
		"render/carto", "render/font", "render/sheet/section"},
	"samples": {},
}

// external lists the packages that may import what must stay in one place.
var external = map[string][]string{
	"gopkg.in/yaml.v3":                 {"plan/source"},
	"github.com/spf13/cobra":           {"cmd/scrimshaw"},
	"codeberg.org/go-pdf/fpdf":         {"render/pdf"},
	"github.com/tdewolff/canvas":       {"render/png", "render/font"},
	"codeberg.org/go-fonts/liberation": {"render/font"},
	"github.com/fogleman/gg":           {"render/tint", "render/contact"},
}

// impure lists standard packages that plan, symbols and render must not import: a result may
// not depend on the clock, the machine or the network.
var impure = []string{"os", "net", "net/http", "os/user", "math/rand", "math/rand/v2", "runtime/debug"}

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
		may, known := allowed[name]
		if !known {
			t.Errorf("%s has no place in the house: add it to the table", name)
		}
		for _, imported := range p.Imports {
			if own, ok := strings.CutPrefix(imported, "scrimshaw/"); ok && !slices.Contains(may, own) {
				t.Errorf("%s imports %s, which lies above it or beside it", name, own)
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
