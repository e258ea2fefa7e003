package section_test

import (
	"strings"
	"testing"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// dimmed is a field with all its light at a share.
func dimmed(f *section.Field, share float32) *section.Field {
	out := *f
	out.Grid.Value = make([]float32, len(f.Grid.Value))
	for i, v := range f.Grid.Value {
		out.Grid.Value[i] = v * share
	}
	return &out
}

// TestAKeyShowsWhatItsMapReaches: each of two maps on a sheet has a key of its own levels, in tints
// that mean the same on both.
func TestAKeyShowsWhatItsMapReaches(t *testing.T) {
	in := fixture.Example()
	in.Inset = dimmed(in.Field, 8)
	r := reportOf(in)
	r.Light = carto.Stops
	floor, faces := section.KeyOf(&in, in.Field), section.KeyOf(&in, in.Inset)
	if len(floor.All) != len(faces.All) || floor.To == len(floor.All) || faces.From == 0 {
		t.Errorf("the keys are %d to %d and %d to %d of %d levels", floor.From, floor.To, faces.From, faces.To, len(floor.All))
	}
	said := r.Print(section.FieldsOf(in.Setup, ""))
	for _, want := range []string{"contours at −2, −1, 0, +1\n", "contours at +1, +2, +3, +4\n"} {
		if strings.Count(said, want) != 1 {
			t.Errorf("the text does not say %q once:\n%s", want, said)
		}
	}
}
