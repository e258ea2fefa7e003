package scene

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// bare drops the places of values, so that they can be compared with what a test writes.
func bare[T any](v T) T {
	strip(reflect.ValueOf(&v).Elem())
	return v
}

func strip(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[source.Span]() {
			v.SetZero()
			return
		}
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				strip(v.Field(i))
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			strip(v.Index(i))
		}
	}
}

func set[T any](v T) Given[T] { return Given[T]{Value: v, Set: true} }

func refTo(name string) Ref { return Ref{Name: name} }

// sameBare reports what differs between two values but for their places.
func sameBare[T any](t *testing.T, what string, got, want T) {
	t.Helper()
	if got = bare(got); !reflect.DeepEqual(got, want) {
		t.Errorf("%s:\ngot  %+v\nwant %+v", what, got, want)
	}
}

func TestPlaces(t *testing.T) {
	for text, want := range map[string]Place{
		"[1.2, 240 cm]":                    {Form: AtPoint, Point: [2]float64{1.2, 2.4}},
		"{from: desk, shift: [0.3, -0.2]}": {Form: FromThing, Thing: refTo("desk"), Shift: [2]float64{0.3, -0.2}},
		"{by: ruth, toward: A, turn: 45 camera-left, distance: 2}": {Form: ByToward, Thing: refTo("ruth"), Toward: refTo("A"), Turn: Turn{Degrees: 45, Side: CameraLeft, Set: true}, Distance: set(2.0)},
		"{by: ruth, turn: 20 own-left, distance: 1}":               {Form: ByNose, Thing: refTo("ruth"), Turn: Turn{Degrees: 20, Side: OwnLeft, Set: true}, Distance: set(1.0)},
		"{by: ruth, turn: -20, distance: 1}":                       {Form: ByNose, Thing: refTo("ruth"), Turn: Turn{Degrees: -20, Set: true}, Distance: set(1.0)},
		"{by: a, toward: b, turn: 10° right, distance: 1}":         {Form: ByToward, Thing: refTo("a"), Toward: refTo("b"), Turn: Turn{Degrees: 10, Side: Right, Set: true}, Distance: set(1.0)},
		"{wall: kitchen.left, along: 1.2, in: 0.4}":                {Form: AtWall, Thing: refTo("kitchen.left"), Along: Along{Metres: 1.2, Set: true}, In: set(0.4)},
		"{wall: den.a-b, along: centre}":                           {Form: AtWall, Thing: refTo("den.a-b"), Along: Along{Centre: true, Set: true}},
		"{opening: street, out: 2.5, along: -0.3}":                 {Form: AtOpening, Thing: refTo("street"), Along: Along{Metres: -0.3, Set: true}, Out: set(2.5)},
		"{opening: street, in: 1}":                                 {Form: AtOpening, Thing: refTo("street"), In: set(1.0)},
		"{top: desk, shift: [0.1, 0]}":                             {Form: OnTop, Thing: refTo("desk"), Shift: [2]float64{0.1, 0}},
	} {
		log := &source.Log{}
		got, ok := place.Read(parseValue(t, text), &source.Context{Log: log})
		if !ok || log.Failed() {
			t.Errorf("%s: %v", text, log.All())
		}
		sameBare(t, text, got, want)
	}
}

func TestAims(t *testing.T) {
	for text, want := range map[string]Aim{
		"ruth":                                  {Form: AtThing, Thing: refTo("ruth")},
		"desk.top":                              {Form: AtThing, Thing: refTo("desk.top")},
		"2k":                                    {Form: AtThing, Thing: refTo("2k")},
		"[1, 2, 1.5]":                           {Form: AtXYZ, Point: [3]float64{1, 2, 1.5}},
		"45deg":                                 {Form: AtBearing, Pan: 45},
		"90":                                    {Form: AtBearing, Pan: 90},
		"-45.5°":                                {Form: AtBearing, Pan: -45.5},
		"up":                                    {Form: AimUp},
		"down":                                  {Form: AimDown},
		"{pan: 30}":                             {Form: AimPanTilt, Pan: 30},
		"{pan: 0, tilt: -90}":                   {Form: AimPanTilt, Tilt: -90},
		"{ceiling: den, at: [1, 2]}":            {Form: AtCeiling, Thing: refTo("den"), Place: Place{Form: AtPoint, Point: [2]float64{1, 2}}},
		"{from: ada, height: 1.2}":              {Form: AtPlace, Place: Place{Form: FromThing, Thing: refTo("ada"), Height: set(1.2)}},
		"{wall: den.left, along: 1, height: 2}": {Form: AtPlace, Place: Place{Form: AtWall, Thing: refTo("den.left"), Along: Along{Metres: 1, Set: true}, Height: set(2.0)}},
	} {
		log := &source.Log{}
		got, ok := aim.Read(parseValue(t, text), &source.Context{Log: log})
		if !ok || log.Failed() {
			t.Errorf("%s: %v", text, log.All())
		}
		sameBare(t, text, got, want)
	}
}

func TestMounts(t *testing.T) {
	for text, want := range map[string]Mount{
		"stand":                         {Kind: "stand"},
		"hand":                          {Kind: "hand"},
		"{stand: riser}":                {Kind: "stand", On: refTo("riser")},
		"{boom: 1.6, base: [2, 3]}":     {Kind: "boom", Arm: 1.6, Base: set(Place{Form: AtPoint, Point: [2]float64{2, 3}})},
		"{clamp: shelf}":                {Kind: "clamp", On: refTo("shelf")},
		"{pole: [den.left, den.right]}": {Kind: "pole", Walls: []Ref{refTo("den.left"), refTo("den.right")}},
		"{wall: den.left}":              {Kind: "wall", Walls: []Ref{refTo("den.left")}},
		"{lift: 4}":                     {Kind: "lift", Arm: 4},
	} {
		log := &source.Log{}
		got, ok := mount.Read(parseValue(t, text), &source.Context{Log: log})
		if !ok || log.Failed() {
			t.Errorf("%s: %v", text, log.All())
		}
		sameBare(t, text, got, want)
	}
}

func TestBareLengthsAreInTheFilesUnits(t *testing.T) {
	d := opened(t, "scrimshaw: 1\nunits: ft\nrooms: {den: {size: [10, 3 m], height: 7'6\"}}\n")
	room := d.Base(&source.Log{}).Rooms[0]
	if !(math.Abs(room.Size[0]-3.048) <= 1e-12) || room.Size[1] != 3 {
		t.Errorf("size is %v", room.Size)
	}
}

func TestEverythingIsRead(t *testing.T) {
	log := &source.Log{}
	s := opened(t, everything(t)).Base(log)
	rooms := s.Rooms
	if len(rooms) != 3 || rooms[0].Form != BySize || rooms[1].Form != ByCorners || rooms[2].Form != ByOutline {
		t.Fatalf("rooms: %+v", rooms)
	}
	sameBare(t, "slope", *rooms[1].Slope, Slope{Low: 2.2, High: 3.4, Toward: refTo("a-b")})
	if up := rooms[2].Outline[1]; up.Direction != "up" || !(math.Abs(up.Length-12.5*0.3048) <= 1e-12) {
		t.Errorf("step: %+v", up)
	}
	if got := rooms[1].Corners[2]; got.Name != "c" || got.At != [2]float64{12, 4} {
		t.Errorf("corner: %+v", got)
	}
	if s.Site.Ground.Value != -0.4 || s.Site.Sky.Value != "hazy" || !s.Site.Latitude.Set {
		t.Errorf("site: %+v", s.Site)
	}
	sameBare(t, "stop", s.Exposure.Stop.Value, Stop{Written: 3.2, N: 2 * math.Sqrt2 * math.Pow(2, 1.0/6)})
	sameBare(t, "white", s.Exposure.White.Value, ColourWord{Kelvin: 5600, Daylight: true, Duv: 0.003})
	quay := s.Openings[0]
	if quay.Kind != "window" || quay.Wall.Name != "den.left" || quay.Along.Metres != 1.3 || quay.Panes.Value != [2]int{2, 2} || quay.Dressing == nil {
		t.Errorf("opening: %+v", quay)
	}
	var kinds []string
	for _, f := range s.Furniture {
		kinds = append(kinds, string(f.Kind))
	}
	if want := furnitureForms; !slices.Equal(kinds, want) {
		t.Errorf("furniture: %v", kinds)
	}
	sun := s.Lights[0]
	sameBare(t, "roles", sun.Role, []Role{{Person: refTo("ada"), Role: "key"}, {Person: refTo("noor"), Role: "edge"}})
	sameBare(t, "gels", sun.Gels, []Ref{refTo("1/2 CTO")})
	if sun.Level.Value != 0.8 || sun.Count.Value != 2 || sun.Tint.Value != 0.003 || sun.Focus.Value != 1 || sun.Path != "lights.sunset" {
		t.Errorf("light: %+v", sun)
	}
	if out := s.Lights[2].Output; out == nil || out.Lumens != 2000 || out.Tube != 1.2 {
		t.Errorf("output: %+v", out)
	}
	if view := s.Meters[3]; view.Kind != "spot" || view.Opening.Name != "quay" || view.From.Name != "A" || view.At.Set {
		t.Errorf("meter: %+v", view)
	}
	if m := s.People[0].MarkPlaces["sit"]; m.At.Value.Point != [2]float64{2.4, 2} || m.Eyes.Value != 1.2 {
		t.Errorf("mark: %+v", m)
	}
}

// A value that was left out has the place of the thing that lacks it.
func TestLackingValuesKnowTheirThing(t *testing.T) {
	s := opened(t, "scrimshaw: 1\ncameras:\n  A: {at: [1, 1], lens: 35 mm}\n").Base(&source.Log{})
	camera := s.Cameras[0]
	for what, span := range map[string]source.Span{"height": camera.Height.Span, "looks": camera.Looks.Span, "name": camera.Span} {
		if span.Line != 3 || span.Col != 3 || span.Text() != "A" {
			t.Errorf("%s: %+v", what, span)
		}
	}
	if camera.Lens.Span.Text() != "35 mm" {
		t.Errorf("lens: %q", camera.Lens.Span.Text())
	}
}

func TestSamplesLoad(t *testing.T) {
	for _, name := range samples.Names() {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		opened(t, string(text))
	}
}
