package fit

import (
	"os"
	"regexp"
	"slices"
	"testing"
)

// words lists what the checks of one kind of thing look for, and notes their codes.
func words[T any](t *testing.T, checks []check[T], codes *[]string) {
	t.Helper()
	for _, c := range checks {
		if c.words == "" || len(c.codes) == 0 || c.run == nil {
			t.Errorf("a check has no words, no code or nothing to run: %q %v", c.words, c.codes)
		}
		*codes = append(*codes, c.codes...)
	}
}

// Every code that a check can tell stands in the registry, with words.
func TestEveryCheckHasWords(t *testing.T) {
	codes := []string{CodePlane, CodeAllDark} // of the sheet and of the set-up as a whole
	words(t, ofLights, &codes)
	words(t, feedOfLights, &codes)
	words(t, ofGrip, &codes)
	words(t, ofFurniture, &codes)
	words(t, ofPeople, &codes)
	words(t, ofCameras, &codes)
	words(t, ofMeters, &codes)
	text, err := os.ReadFile("codes.go")
	if err != nil {
		t.Fatal(err)
	}
	written := regexp.MustCompile(`Code\w+ += "([a-z-]+)"`).FindAllStringSubmatch(string(text), -1)
	if len(written) < 10 {
		t.Fatalf("only %d codes read", len(written))
	}
	for _, m := range written {
		if !slices.Contains(codes, m[1]) {
			t.Errorf("no check tells %s", m[1])
		}
	}
}
