package main

import (
	"flag"
	"regexp"
	"testing"

	"scrimshaw/samples"
)

// allSamples is for .ci/long samples.
var allSamples = flag.Bool("all-samples", false, "hold the pictures of all samples to other programs and to a copier, not only of those that have every mark among them")

// pictured are samples with every kind of mark among them: to hold all pictures of all samples to other programs takes
// minutes.
func pictured() []string {
	if *allSamples {
		return samples.Names()
	}
	return []string{"ironing-room", "ferry-office", "two-sizes", "fitting-room", "press-house"}
}

// mark is a sign of a legend or a layer, in a drawing.
var mark = regexp.MustCompile(`data-object="legend:[^"]*"|data-layer="[^"]*"`)

// TestPicturedSamplesHaveEveryMark: what the legend of any sample explains, and each layer of ink that any has, is on one
// of those whose pictures are looked at.
func TestPicturedSamplesHaveEveryMark(t *testing.T) {
	marksOf := func(names []string) map[string]string {
		on := map[string]string{}
		for _, name := range names {
			for _, page := range drawnSample(t, name).pages {
				for _, m := range mark.FindAllString(read(t, page+".svg"), -1) {
					on[m] = name
				}
			}
		}
		return on
	}
	here, all := marksOf(pictured()), marksOf(samples.Names())
	for m, name := range all {
		if here[m] == "" {
			t.Errorf("%s of %s is on none of %q", m, name, pictured())
		}
	}
	if len(all) < 40 {
		t.Errorf("only %d marks are known", len(all))
	}
}
