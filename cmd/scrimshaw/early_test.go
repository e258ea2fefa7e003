package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// stopper stops a run as soon as it reports anything.
type stopper struct {
	bytes.Buffer
	stop func()
}

func (s *stopper) Write(p []byte) (int, error) {
	s.stop()
	return s.Buffer.Write(p)
}

// Warnings are printed, and a plan that no paper holds is refused, before light is computed: here the run is
// stopped at its first word.
func TestFaultsComeBeforeLight(t *testing.T) {
	t.Parallel()
	path := filepath.Join(t.TempDir(), "far.yaml")
	scene := `scrimshaw: 1
rooms: {den: {size: [4, 3]}}
people: {ada: {at: [1, 1]}}
cameras: {A: {at: [900, 0], lens: 32 mm}}
lights: {a: {unit: fresnel-tungsten-650, at: [2, 2], height: 2}}
haze: 0.02
`
	if err := os.WriteFile(path, []byte(scene), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		more []string
		fits bool
	}{
		"the plan":                       {nil, false},
		"a wall, wherever the camera is": {[]string{"--plane", "den.left"}, true},
	} {
		t.Run(name, func(t *testing.T) {
			ctx, cancel := context.WithCancel(context.Background())
			told := &stopper{stop: cancel}
			std := streams{in: strings.NewReader(""), out: io.Discard, err: told}
			args := append([]string{"draw", path, "-o", filepath.Join(t.TempDir(), "far.svg")}, c.more...)
			status, said := run(ctx, args, std), told.String()
			if status == exitFine || !strings.Contains(said, "[not-computed-yet]") || strings.Contains(said, "[plan-too-large]") == c.fits {
				t.Errorf("status %d:\n%s", status, said)
			}
		})
	}
}
