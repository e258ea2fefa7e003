package review

import (
	"os"
	"regexp"
	"slices"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/frame"
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

// Every code that a check can report stands in the registry, with words, and a case shows its message.
func TestEveryCheckHasWords(t *testing.T) {
	codes := []string{CodeAssumed} // a note, of no check
	words(t, ofLights, &codes)
	words(t, ofPeople, &codes)
	words(t, ofCameras, &codes)
	words(t, ofCircuits, &codes)
	words(t, ofMeters, &codes)
	text, err := os.ReadFile("codes.go")
	if err != nil {
		t.Fatal(err)
	}
	written := regexp.MustCompile(`Code\w+ += "([a-z-]+)"`).FindAllStringSubmatch(string(text), -1)
	if len(written) < 9 {
		t.Fatalf("only %d codes read", len(written))
	}
	var cases []byte
	for _, name := range []string{"review_test.go", "circuits_test.go"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		cases = append(cases, text...)
	}
	for _, m := range written {
		if !slices.Contains(codes, m[1]) {
			t.Errorf("no check reports %s", m[1])
		}
		if !regexp.MustCompile(`"(error|warning|info) ` + m[1] + ` `).Match(cases) {
			t.Errorf("no case of the tests shows the message of %s", m[1])
		}
	}
}

// TestLegsArePlural: what is said of legs alone has the verb of several, and what is said of all else that of one.
func TestLegsArePlural(t *testing.T) {
	c := &checker{setup: &plan.Setup{}}
	for want, parts := range map[string][]body.Part{
		"2 page shows":               {body.Head},
		"the stand of 2 page shows":  {body.Legs, body.Stand},
		"2 page with its legs shows": {body.Head, body.Legs},
		"the legs of 2 page show":    {body.Legs},
	} {
		if got := c.shown("2 page", frame.Light, "page", parts, "shows"); got != want {
			t.Errorf("%v: %q, want %q", parts, got, want)
		}
	}
}
