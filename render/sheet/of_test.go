package sheet

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/internal/fixture"
)

const hall = `scrimshaw: 1
rooms: {den: {size: [4, 3], height: 2.5}, loft: {at: [4.3, 0], size: [3, 3], height: 2.5, base: 0.4}}
people: {ada: {at: [2, 2]}}
cameras: {A: {at: [2, 0.4], lens: 32 mm}}
lights: {k: {unit: soft-panel-200, at: [0.5, 2.5], height: 2, level: 0 %, focus: 40 %}}
`

// What is mapped: an option goes before a plane, and a plane before what the scene says of its field.
func TestOfMapsWhatIsAsked(t *testing.T) {
	const dome = "Incident dome at 1.59 m, at each point turned toward A"
	desk, left := study.Plane{Height: 0.75}, study.Plane{Wall: "den.left"}
	for _, c := range []struct {
		name, sheet, option string
		planes              []study.Plane
		field, inset        string
		floors              int
	}{
		{name: "nothing", field: "Illuminance on the floor", inset: dome, floors: 1},
		{name: "the scene's faces", sheet: "field: face", field: dome, inset: "Illuminance on the floor", floors: 1},
		{name: "the floor instead", sheet: "field: face", option: "floor", field: "Illuminance on the floor", inset: dome, floors: 1},
		{name: "the scene's plane", sheet: "plane: 0.75", field: "Illuminance on the level plane at 0.75 m", inset: dome, floors: 1},
		{name: "a plane", planes: []study.Plane{desk}, field: "Illuminance on the level plane at 0.75 m", inset: dome, floors: 1},
		{name: "a wall", planes: []study.Plane{left}, field: "Illuminance on the wall den.left"},
		{name: "the faces in spite of a plane", option: "face", planes: []study.Plane{desk}, field: dome, inset: "Illuminance on the floor", floors: 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s, _ := fixture.SetupOf(t, hall+"sheet: {"+c.sheet+"}\n")
			lit, err := study.Run(t.Context(), s, study.Options{Step: 0.5, Quality: light.Draft, Planes: c.planes})
			if err != nil {
				t.Fatal(err)
			}
			in := Of(lit, Options{Field: c.option})
			if in.Field == nil || !strings.HasPrefix(in.Field.Name, c.field) || in.Field.Probe == nil {
				t.Errorf("mapped is %+v, want %s with a probe", in.Field, c.field)
			}
			if in.Inset == nil != (c.inset == "") || in.Inset != nil && (!strings.HasPrefix(in.Inset.Name, c.inset) || in.Inset.Probe == nil) {
				t.Errorf("second is %+v, want %q with a probe", in.Inset, c.inset)
			}
			if len(in.Insets) != len(in.Floors) {
				t.Errorf("small: %d other floors, want %d", len(in.Insets), len(in.Floors))
			}
			if len(in.Floors) != c.floors || (in.Elevation != nil) != strings.Contains(c.field, "wall") {
				t.Errorf("%d other floors, want %d; elevation %+v", len(in.Floors), c.floors, in.Elevation)
			}
		})
	}
}

// Every floor has its map of faces, at the height of who is on it, and the sheet says where that is another.
func TestFacesOfEveryFloor(t *testing.T) {
	text := strings.NewReplacer("people: {ada: {at: [2, 2]}}", "people: {ada: {at: [2, 2]}, noor: {at: [6, 1.5], pose: seated}}",
		"level: 0 %", "level: 50 %").Replace(hall)
	s, _ := fixture.SetupOf(t, text)
	lit, err := study.Run(t.Context(), s, study.Options{Step: 0.5, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	in := Of(lit, Options{Field: string(term.FaceMap)})
	if len(in.Floors) != 1 || !(math.Abs(*in.Floors[0].Level-1.6) <= 1e-9) || !(math.Abs(in.Floors[0].Over-1.2) <= 1e-9) {
		t.Fatalf("the other floors are %+v, want the loft's at 1.6 m", in.Floors)
	}
	const elsewhere = "on other floors at 1.20 m"
	for _, option := range term.Words(term.Maps) {
		in := Of(lit, Options{Field: option})
		if said := Text(Options{}, in); strings.Count(said, elsewhere) != 1 {
			t.Errorf("a map of the %s does not say %q once:\n%s", option, elsewhere, said)
		}
		in.Floors, in.Insets = nil, nil
		if said := Text(Options{}, in); strings.Contains(said, "other floors") {
			t.Errorf("a map of one floor speaks of others:\n%s", said)
		}
	}
}

// Where colours are mapped, they are on both pages.
func TestBothMapsAreOfColours(t *testing.T) {
	s, _ := fixture.SetupOf(t, hall)
	lit, err := study.Run(t.Context(), s, study.Options{Step: 0.5, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	in := Of(lit, Options{Tint: "colour"})
	for _, f := range append(in.Maps(), in.SmallMaps()...) {
		if len(f.Colour) != len(f.Grid.Value) {
			t.Errorf("%s: %d of %d points have a colour", f.Name, len(f.Colour), len(f.Grid.Value))
		}
	}
	if len(in.SmallMaps()) == 0 {
		t.Error("there is no second map")
	}
}

// Nothing that a sheet must say is left to the caller, even where the study has readings alone.
func TestOfSaysAll(t *testing.T) {
	s, _ := fixture.SetupOf(t, hall)
	lit, err := study.Run(t.Context(), s, study.Options{ReadingsOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	text := Text(Options{}, Of(lit, Options{}))
	for _, want := range []string{"Every light of this set-up is struck or off", "NOT COMPUTED\n  - Focus of 1 k: figures by focus.",
		"Local codes and licensed practice come first", "NOT CHECKED", "Floor load"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q:\n%s", want, text)
		}
	}
	if in := Of(lit, Options{}); in.Field != nil || in.Inset != nil {
		t.Error("a map without a field")
	}
}

// Every fault that composing would find in words is found before light is computed, and told once.
func TestCheckBeforeLight(t *testing.T) {
	s, _ := fixture.SetupOf(t, hall)
	empty, _ := fixture.SetupOf(t, "scrimshaw: 1\nrooms: {den: {size: [4, 3]}}\n")
	for _, c := range []struct {
		name string
		s    *plan.Setup
		o    Options
		want string
	}{
		{"nothing", s, Options{}, ""},
		{"paper", s, Options{Paper: "A33"}, "unknown-paper"},
		{"two words", s, Options{Theme: "dusk", Field: "wall"}, "unknown-theme unknown-field"},
		{"nobody", empty, Options{Field: "face"}, "no-face"},
		{"nobody, but the floor is asked for", empty, Options{Field: "floor"}, ""},
	} {
		var codes []string
		for _, d := range Check([]*plan.Setup{c.s, c.s}, c.o) {
			codes = append(codes, d.Code)
		}
		if got := strings.Join(codes, " "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A map of points farther apart than usual says so.
func TestCoarseMapSaysSo(t *testing.T) {
	in := fixture.Example()
	const said = "THE SET IS LARGE: THE MAP HAS A POINT EVERY 0.05 M"
	if strings.Contains(strings.ToUpper(Text(Options{}, in)), said) {
		t.Error("a map as fine as usual is called coarse")
	}
	in.Field.Coarse = true
	if text := Text(Options{}, in); !strings.Contains(strings.ToUpper(text), said) {
		t.Errorf("nothing is said of a coarse map:\n%s", text)
	}
}

// TestHarmIsWatchedFirst: what trips a breaker stands before what shows in a picture, and that before a key that is too bright.
func TestHarmIsWatchedFirst(t *testing.T) {
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4]}}
people: {ada: {at: [2, 3]}}
cameras: {A: {at: [2, 0.4], lens: 32 mm, looks: ada}}
lights: {k: {unit: discharge-1200, at: [3, 3.4], height: 1.6, aim: ada, circuit: wall}}
circuits: {wall: {breaker: 2}}
`)
	lit, err := study.Run(t.Context(), s, study.Options{ReadingsOnly: true, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	all, at := strings.Join(Of(lit, Options{}).Warnings, "\n"), -1
	for _, want := range []string{"circuit wall carries", "1 k with its stand shows", "the key side of ada is"} {
		i := strings.Index(all, want)
		if i <= at {
			t.Errorf("%q does not follow in\n%s", want, all)
		}
		at = i
	}
}
