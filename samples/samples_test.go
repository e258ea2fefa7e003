package samples

import (
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
