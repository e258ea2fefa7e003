package main

import (
	"bytes"
	"context"
	"os"
	"strings"
	"testing"
)

// Every command says that its output went nowhere, those that only print their help too.
func TestFullDiskIsReported(t *testing.T) {
	t.Parallel()
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("this system has no device that is always full")
	}
	t.Cleanup(func() { full.Close() })
	for _, args := range []string{
		"draw --quality draft -o -", "draw --quality draft -o - --format txt", "symbols -o - --format pdf", "kit", "kit --json",
		"schema", "schema --text", "new", "meter --quality draft", "meter --quality draft --json", "meter --quality draft --shares",
		"review --quality draft --json", "list", "list --json", "list --csv kit", "list -o -", "day", "day --json", "help", "draw --help", "--help", "completion bash",
	} {
		t.Run(args, func(t *testing.T) {
			t.Parallel()
			var said bytes.Buffer
			status := run(context.Background(), strings.Fields(args), streams{in: &bytes.Buffer{}, out: full, err: &said})
			const want = "scrimshaw: cannot write to standard output: no space left on device\n"
			if status != exitWrong || !strings.HasSuffix(said.String(), want) {
				t.Errorf("status %d, %q", status, said.String())
			}
		})
	}
}
