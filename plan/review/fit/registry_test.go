package fit

import (
	"os"
	"regexp"
	"slices"
	"strings"
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

// cases are the texts of the resolver's cases, which hold the messages of these checks.
func cases(t *testing.T) string {
	t.Helper()
	var all strings.Builder
	for _, name := range []string{"checks_test.go", "reach_test.go", "tracks_test.go", "cues_test.go", "rig_test.go", "testdata/faults.txt"} {
		text, err := os.ReadFile("../../resolve/" + name)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	return all.String()
}

// Every code that a check can report stands in the registry, with words, and a case of the resolver shows its message.
func TestEveryCheckHasWords(t *testing.T) {
	codes := []string{CodePlane, CodeAllDark} // of the sheet and of the set-up as a whole
	words(t, ofLights, &codes)
	words(t, feedOfLights, &codes)
	words(t, ofGrip, &codes)
	words(t, ofFurniture, &codes)
	words(t, ofPeople, &codes)
	words(t, ofCameras, &codes)
	words(t, ofCues, &codes)
	words(t, ofMeters, &codes)
	words(t, holdOfLights, &codes)
	words(t, holdOfGrip, &codes)
	words(t, ofOpenings, &codes)
	for _, c := range ofClashes {
		if c.words == "" || len(c.kinds) == 0 || c.run == nil {
			t.Errorf("a check has no words, no kind or nothing to run: %q", c.words)
		}
		codes = append(codes, c.codes...)
	}
	text, err := os.ReadFile("codes.go")
	if err != nil {
		t.Fatal(err)
	}
	written := regexp.MustCompile(`Code\w+ += "([a-z-]+)"`).FindAllStringSubmatch(string(text), -1)
	if len(written) < 10 {
		t.Fatalf("only %d codes read", len(written))
	}
	shown := cases(t)
	for _, m := range written {
		if !slices.Contains(codes, m[1]) {
			t.Errorf("no check reports %s", m[1])
		}
		if !showsMessage(shown, m[1]) {
			t.Errorf("no case of plan/resolve shows the message of %s", m[1])
		}
	}
}

// showsMessage says whether a text has a message of a code as cases want it: behind its severity.
func showsMessage(text, code string) bool {
	return regexp.MustCompile(`\b(error|warning|info) ` + code + ` `).MatchString(text)
}

// A code that a test only looks for shows no message.
func TestAFilterIsNoCase(t *testing.T) {
	for text, want := range map[string]bool{
		`strings.Contains(line, " too-hot ")`:   false,
		`d.Code == "too-hot"`:                   false,
		`"warning too-hot-shade 1 l has a bulb`: false,
		`"warning too-hot 1 l has a bulb`:       true,
		"error too-hot 2:44 the outline":        true,
	} {
		if got := showsMessage(text, CodeTooHot); got != want {
			t.Errorf("%s: %v, want %v", text, got, want)
		}
	}
}
