package samples

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

func TestEveryEmbeddedFileIsListed(t *testing.T) {
	entries, err := files.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, name := range Names() {
		listed[name] = true
		if _, err := Text(name); err != nil {
			t.Error(err)
		}
	}
	for _, entry := range entries {
		if name := strings.TrimSuffix(entry.Name(), ".yaml"); !listed[name] {
			t.Errorf("%s is embedded but not listed", entry.Name())
		}
	}
	if len(entries) != len(listed) {
		t.Errorf("%d files, %d listed", len(entries), len(listed))
	}
}

func TestUnknownSampleNamesTheOthers(t *testing.T) {
	_, err := Text("../go")
	if err == nil || !strings.Contains(err.Error(), Default) {
		t.Errorf("got %v", err)
	}
}

// The page beside the samples lists each of them, in the order in which they teach.
func TestThePageListsEverySample(t *testing.T) {
	page, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	var listed []string
	for _, row := range regexp.MustCompile("(?m)^\\| `([a-z-]+)` \\|").FindAllStringSubmatch(string(page), -1) {
		listed = append(listed, row[1])
	}
	if !slices.Equal(listed, Names()) {
		t.Errorf("the page lists %v, and there are %v", listed, Names())
	}
}
