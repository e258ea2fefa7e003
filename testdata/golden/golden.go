// Package golden holds drawings in tests to the text of how they looked when somebody last looked.
package golden

import (
	"os"
	"path/filepath"
	"testing"

	"scrimshaw/symbols/ink"
)

// Compare holds a drawing to testdata/NAME.ink in the folder of the test. UPDATE_GOLDEN=1 rewrites
// that.
func Compare(t *testing.T, name string, page *ink.Page) {
	t.Helper()
	path, got := filepath.Join("testdata", name+".ink"), Dump(page)
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is out of date: look at the drawing, and set UPDATE_GOLDEN=1 if it is meant\n got\n%s want\n%s", path, got, want)
	}
}
