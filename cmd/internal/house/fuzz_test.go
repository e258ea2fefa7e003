package house

import (
	"os"
	"strings"
	"testing"
)

// Fuzzing spends its time on new inputs: without a short time for making inputs smaller Go spends most of a minute on
// the first ones of a large target.
func TestFuzzingTriesInputs(t *testing.T) {
	script, err := os.ReadFile("../../../.ci/long")
	if err != nil {
		t.Fatal(err)
	}
	fuzzes := 0
	for line := range strings.Lines(string(script)) {
		if !strings.Contains(line, "go test") || !strings.Contains(line, "-fuzz ") {
			continue
		}
		if fuzzes++; !strings.Contains(line, "-fuzzminimizetime 10x") {
			t.Errorf("%q lets inputs be made smaller for long", strings.TrimSpace(line))
		}
	}
	if fuzzes == 0 {
		t.Error(".ci/long runs no fuzz target")
	}
}
