package main

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The systems that the program is built for: one may link a module that another does not.
var systems = []string{"linux", "darwin", "windows"}

// TestLicences: every module that is linked has all of its notices in what --licences prints, word for word, and
// nothing else is there. UPDATE_GOLDEN=1 writes them.
func TestLicences(t *testing.T) {
	modules := map[string]string{} // where they lie, by path and version
	for _, system := range systems {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}", ".")
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(out)) {
			if name, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				modules[name] = dir
			}
		}
	}
	if len(modules) < 8 {
		t.Fatalf("only %d modules: %v", len(modules), modules)
	}
	modules["Go, its runtime and standard library"] = goRoot(t)
	var want strings.Builder
	want.WriteString("Parts of scrimshaw were made by others. Their notices follow, a part each.\n")
	names := make([]string, 0, len(modules))
	for name := range modules {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		notices := noticesIn(t, modules[name])
		if notices == "" {
			t.Errorf("%s has no notice", name)
		}
		want.WriteString("\n" + strings.Repeat("=", 78) + "\n" + name + "\n" + strings.Repeat("=", 78) + "\n" + notices)
	}
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.WriteFile("licences.txt", []byte(want.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	var out bytes.Buffer
	if status := run(t.Context(), []string{"--licences"}, streams{out: &out, err: &out}); status != exitFine || out.String() != want.String() {
		t.Errorf("status %d; the notices of the modules are not those that are printed: UPDATE_GOLDEN=1 go test ./cmd/scrimshaw -run Licences", status)
	}
}

// goRoot is where the Go that runs lies.
func goRoot(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(string(out))
}

// noticesIn are the notices of a module, each under its name.
func noticesIn(t *testing.T, dir string) string {
	t.Helper()
	var b strings.Builder
	deep := []string{"THIRD_PARTY_LICENSES", "licenses"} // folders of notices
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		within, _ := filepath.Rel(dir, path)
		folder, _, _ := strings.Cut(filepath.ToSlash(within), "/")
		switch {
		case err != nil:
			return err
		case d.IsDir() && within != "." && !slices.Contains(deep, folder):
			return filepath.SkipDir
		case d.IsDir() || !slices.Contains(deep, folder) && !isNotice(d.Name()) || d.Name() == "gpl.txt": // FreeType is used by its own licence
			return nil
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		b.WriteString("\n-- " + filepath.ToSlash(within) + "\n\n" + strings.TrimRight(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n") + "\n")
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func isNotice(name string) bool {
	for _, word := range []string{"LICENSE", "LICENCE", "COPYING", "NOTICE", "PATENTS", "AUTHORS", "CONTRIBUTORS"} {
		if strings.HasPrefix(strings.ToUpper(name), word) {
			return true
		}
	}
	return false
}
