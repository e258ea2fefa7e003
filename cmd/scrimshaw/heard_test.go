package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// fitting makes a scene in which a key shows by what it does, where the ground is not one. The example is
// written in place of that of the reference, where the ground says the same or it does not fit.
type fitting struct {
	before  []ready
	example string
}

// ready puts keys of a thing before the key is written; an empty value takes one out.
type ready struct {
	thing []string
	pairs []string
}

func on(thing string, pairs ...string) ready { return ready{strings.Split(thing, "."), pairs} }

func (r ready) put(f *flow) {
	m := f.at(r.thing...)
	for i := 0; i+1 < len(r.pairs); i += 2 {
		if r.pairs[i+1] == "" {
			m.drop(r.pairs[i])
			continue
		}
		m.put(r.pairs[i], r.pairs[i+1])
	}
}

// Things that show what many keys do.
var (
	plainLamp = func(pairs ...string) []ready {
		return []ready{on("lights.day", "unit", ""), on("lights.day.output", pairs...)}
	}
	shaded = func(pairs ...string) []ready {
		return []ready{on("lights.day", append([]string{"unit", "practical-table", "level", "100 %"}, pairs...)...)}
	}
	shed     = on("rooms.shed", "at", "[6, 0]", "size", "[2, 2]", "height", "3")
	second   = on("people.noor", "at", "[2.4, 3]", "faces", "A")
	other    = on("cameras.B", "at", "[4, 3.6]", "lens", "35 mm")
	hinged   = on("openings.street", "window", "", "door", "kitchen.left", "ajar", "40")
	sloped   = on("rooms.kitchen.height", "low", "2.2", "high", "3", "toward", "top")
	limewash = on("materials.limewash", "reflectance", "0.7")
	painted  = on("rooms.kitchen", "walls", "limewash")
	profiled = on("lights.day", "modifier", "projection-30")
	broken   = on("lights.day.breakup", "open", "60 %")
	placed   = func(pairs ...string) []ready { return []ready{riser, shed, yard, on("lights.day.at", pairs...)} }
	aimed    = func(pairs ...string) []ready { return []ready{riser, shed, yard, on("lights.day.aim", pairs...)} }
	held     = func(pairs ...string) []ready {
		return []ready{riser, on("lights.day", "at", "{top: riser}"), on("lights.day.mount", pairs...)}
	}
	cue     = []ready{on("cues.q2", "lights", "{day: off}")}
	fire    = []ready{on("lights.day.plays", "kind", "fire")}
	fed     = []ready{on("circuits.ring", "breaker", "16"), on("lights.day", "circuit", "ring")}
	third   = on("people.ada", "at", "[3.2, 3]", "faces", "A")
	crossed = []ready{second, ready{nil, []string{"line", "[ruth, noor]"}}, on("setups.close", "camera", "A")}
	riser   = on("furniture.riser", "deck", "[1, 1, 0.2]", "at", "[3.4, 3.2]")
	yard    = on("openings.yard", "window", "kitchen.top", "width", "1.4")
	marked  = on("people.ruth.marks.ruth", "at", "[2.2, 3]")
	spot    = on("meters.top", "flat", "", "facing", "", "spot", "[1.2, 2, 1.5]", "from", "A")
)

// fittings are those by the keys' names.
var fittings = map[string]fitting{
	"cameras.*.at":               {example: "[3.6, 0.9]"},
	"cameras.*.looks":            {example: "desk"},
	"cameras.*.sensor":           {example: "full-frame"},
	"cameras.*.room":             {before: []ready{on("grip.black", "flag", "[0.04, 0.04]", "at", "[2.02, 2.04]")}},
	"cameras.*.exposure.iso":     {example: "400"},
	"cameras.*.exposure.shutter": {example: "90"},
	"cameras.*.exposure.stop":    {example: "T4"},
	"circuits.*.volts":           {before: fed, example: "120"},
	"circuits.*.breaker":         {before: fed, example: "13"},
	"circuits.*.already":         {before: fed},
	"circuits.*.rule":            {before: fed},
	"circuits.*.hertz":           {before: fed, example: "60"},
	"circuits.*.kind":            {before: fed},
	"circuits.*.at":              {before: fed},
	"circuits.*.from":            {before: append(fed, on("circuits.house", "breaker", "32"))},
	"circuits.*.phases":          {before: []ready{on("circuits.ring", "breaker", "16")}},
	"circuits.*.phase":           {before: append(fed, on("circuits.house", "breaker", "32", "phases", "3"), on("circuits.ring", "from", "house", "phase", "L2"))},
	"circuits.*.residual":        {before: fed},
	"circuits.*.plug":            {before: fed},
	"circuits.*.item":            {before: fed},
	"circuits.*.power":           {before: fed},
	"circuits.*.kva":             {before: fed},
	"circuits.*.energy":          {before: fed},
	"circuits.*.usable":          {before: append(fed, on("circuits.ring", "energy", "1000"))},
	"circuits.*.tank":            {before: fed},
	"circuits.*.burn":            {before: fed},
	"lights.*.circuit":           {before: []ready{on("circuits.kitchen-ring", "breaker", "16")}},
	"exposure.meter":             {example: "flat"},
	"furniture.*.seat":           {before: []ready{on("furniture.desk", "box", "", "sofa", "[2.0, 0.9, 0.85]", "at", "[3, 2]")}, example: "0.3"},
	"furniture.*.steps":          {before: []ready{on("furniture.desk", "box", "", "stairs", "[1.0, 1.8, 1.2]", "at", "[3, 2]")}, example: "4"},
	"furniture.*.sofa":           {before: []ready{on("furniture.desk", "at", "[3, 2.4]")}},
	"furniture.*.stairs":         {before: []ready{on("furniture.desk", "at", "[3, 2.4]")}},
	"furniture.*.deck":           {before: []ready{on("furniture.desk", "at", "[3, 2.4]")}},
	"grip.*.card":                {before: []ready{on("grip.black", "at", "[2.6, 2.9]")}, example: "[0.6, 0.6]"},
	"grip.*.cloth":               {before: []ready{on("grip.black", "flag", "", "frame", "[0.6, 0.6]")}},
	"grip.*.faces":               {example: "90"},
	"grip.*.mount":               {example: "{boom: 2}"},
	"grip.*.surface":             {example: "white"},
	"cues":                       {example: "{q2: {at: she sits, over: 4 s, lights: {day: off}}}"},
	"cues.*.at":                  {before: cue},
	"cues.*.over":                {before: cue},
	"cues.*.lights":              {before: cue, example: "{day: 60 %}"},
	"cues.*.lights.*.level":      {before: []ready{on("cues.q2.lights.day", "colour", "3200 K")}},
	"cues.*.lights.*.colour":     {before: []ready{on("cues.q2.lights.day", "level", "60 %")}},
	"cues.*.lights.*.tint":       {before: []ready{on("cues.q2.lights.day", "level", "60 %")}},
	"lights.*.plays.low":         {before: fire, example: "20 %"},
	"lights.*.plays.high":        {before: fire},
	"lights.*.plays.rate":        {before: fire, example: "2 /s"},
	"setups.*.cues":              {before: []ready{on("setups.wide", "camera", "A")}, example: "{q2: {lights: {day: off}}}"},
	"line":                       {before: []ready{second}, example: "[ruth, noor]"},
	"rates":                      {before: []ready{on("setups.wide", "camera", "A"), on("setups.close", "after", "wide", "change", "{lights: {day: {level: 40 %}}}")}},
	"lights.*.aim":               {example: "down"},
	"lights.*.mount":             {example: "{boom: 1.6}"},
	"lights.*.note":              {example: "two bags"},
	"lights.*.role": {before: []ready{on("lights.moon", "unit", "led-point-300-bicolour", "at", "[1, 3.4]", "colour", "3200 K", "role", "key"),
		on("lights.day", "role", "fill")}, example: "{ruth: key}"},
	"lights.*.stands-for":          {before: []ready{on("lights.desk-lamp", "output", "{lumens: 470, shape: uniform}", "at", "{top: desk}")}},
	"lights.*.stands-for.opening":  {before: []ready{on("openings.yard", "window", "kitchen.top", "width", "1.4"), on("lights.day.stands-for", "opening", "yard", "colour", "7000 K")}},
	"lights.*.stands-for.colour":   {before: []ready{on("lights.day.stands-for", "opening", "street", "colour", "4000 K")}},
	"lights.*.cuts":                {before: []ready{profiled}},
	"lights.*.breakup":             {before: []ready{profiled}},
	"lights.*.breakup.open":        {before: []ready{profiled, broken}},
	"lights.*.breakup.grain":       {before: []ready{profiled, broken}},
	"lights.*.breakup.seed":        {before: []ready{profiled, broken}},
	"lights.*.dimmer.kind":         {example: "phase"},
	"lights.*.dimmer.hertz":        {before: []ready{on("lights.day.dimmer", "kind", "pwm")}, example: "40"},
	"lights.*.roll":                {before: []ready{on("lights.day", "unit", "led-panel-100")}},
	"lights.*.bulb":                {before: shaded(), example: "led-470"},
	"lights.*.bulb.watts":          {before: shaded(), example: "100 W"},
	"lights.*.bulb.lumens":         {before: shaded()},
	"lights.*.bulb.colour":         {before: shaded(), example: "3000 K"},
	"lights.*.shade":               {before: shaded()},
	"lights.*.shade.top":           {before: shaded()},
	"lights.*.shade.bottom":        {before: shaded(), example: "0.4"},
	"lights.*.shade.height":        {before: shaded()},
	"lights.*.shade.cloth":         {before: shaded()},
	"lights.*.shade.transmittance": {before: shaded()},
	"lights.*.shade.reflectance":   {before: shaded(), example: "0.3"},
	"lights.*.shade.most-power":    {before: shaded("bulb", "{watts: 80 W}"), example: "80 W"},
	"lights.*.output.candela":      {before: plainLamp("lumens", "1000", "shape", "uniform"), example: "1000"},
	"lights.*.output.lumens":       {before: plainLamp("lumens", "500", "beam", "55")},
	"lights.*.output.lux":          {before: plainLamp("lux", "400", "distance", "3 m", "beam", "55"), example: "800"},
	"lights.*.output.distance":     {before: plainLamp("lux", "400", "distance", "2 m", "beam", "55")},
	"lights.*.output.luminance":    {before: plainLamp("luminance", "500", "face", "[1, 1]")},
	"lights.*.output.shape":        {before: plainLamp("candela", "1000", "shape", "cosine")},
	"lights.*.output.beam":         {before: plainLamp("candela", "1000", "beam", "30")},
	"lights.*.output.field":        {before: plainLamp("candela", "1000", "beam", "55")},
	"lights.*.output.face":         {before: plainLamp("luminance", "500", "face", "[0.3, 0.3]"), example: "[0.4, 0.4]"},
	"lights.*.output.disc":         {before: plainLamp("luminance", "500", "disc", "0.3"), example: "0.4"},
	"lights.*.output.sphere":       {before: plainLamp("luminance", "500", "sphere", "0.3"), example: "0.4"},
	"lights.*.output.tube":         {before: plainLamp("lumens", "500", "tube", "0.3"), example: "0.4"},
	"materials":                    {before: []ready{painted, limewash}, example: "{limewash: {reflectance: 0.62}}"},
	"materials.*.reflectance":      {before: []ready{painted, limewash}},
	"materials.*.colour":           {before: []ready{painted, limewash}},
	"meters.*.facing":              {example: "A"},
	"meters.*.spot":                {before: []ready{spot}, example: "[3.9, 1.9, 0.75]"},
	"meters.*.from":                {before: []ready{other, spot}, example: "B"},
	"openings.*.window":            {example: "kitchen.top"},
	"openings.*.door":              {before: []ready{on("openings.street", "width", "0.8")}},
	"openings.*.hinge":             {before: []ready{hinged}, example: "right"},
	"openings.*.swing":             {before: []ready{hinged}, example: "out"},
	"people.*.at":                  {example: "[1.4, 2.3]"},
	"people.*.wears":               {example: "0.6"},
	"people.*.faces":               {example: "90"},
	"people.*.marks.*.faces":       {before: []ready{marked}, example: "90"},
	"people.*.marks.*.pose":        {before: []ready{marked}, example: "seated"},
	"people.*.marks.*.eyes":        {before: []ready{marked}},
	"rooms.*.at":                   {before: []ready{shed}, example: "[-0.5, 0]"},
	"rooms.*.corners":              {before: []ready{on("openings", "street", "")}, example: "[{a: [0, 0]}, {b: [5, 0]}, {c: [5, 4.2]}, {d: [0, 4.2]}]"},
	"rooms.*.outline":              {before: []ready{on("openings", "street", "")}, example: "[right 5, up 4.2, left 5, down 4.2]"},
	"rooms.*.height.low":           {before: []ready{sloped}, example: "2.4"},
	"rooms.*.height.high":          {before: []ready{sloped}, example: "3.4"},
	"rooms.*.height.toward":        {before: []ready{sloped}, example: "left"},
	"setups.*.after":               {before: []ready{on("setups.close", "change", "{lights: {day: {level: 20 %}}}"), on("setups.wide", "camera", "A")}, example: "close"},
	"setups.*.reverse":             {before: crossed, example: "{of: close}"},
	"setups.*.reverse.of":          {before: append(crossed, on("setups.first", "camera", "A", "change", "{lights: {day: {level: 20 %}}}"), on("setups.wide.reverse", "of", "first")), example: "close"},
	"setups.*.reverse.swap":        {before: append(crossed, third, on("setups.wide.reverse", "of", "close")), example: "[[ruth, ada]]"},
	"setups.*.camera":              {before: []ready{other, on("setups.wide", "camera", "A")}, example: "B"},
	"setups.*.change":              {before: []ready{on("setups.wide", "camera", "A")}, example: "{lights: {day: {level: 20 %}}}"},
	"setups.*.stays": {before: []ready{on("lights.day", "at", "{by: ruth, toward: A, distance: 1}"), on("setups.close", "camera", "A"),
		on("setups.wide", "after", "close", "change", "{people: {ruth: {at: [1.5, 2.2]}}}")}, example: "[day]"},
	"lights.*.at.from":     {before: placed("from", "riser", "shift", "[0, 0.4]")},
	"lights.*.at.shift":    {before: placed("from", "desk", "shift", "[0, 0.9]"), example: "[0.1, 0.9]"},
	"lights.*.at.by":       {before: placed("by", "desk", "toward", "A", "turn", "40", "distance", "1.5")},
	"lights.*.at.toward":   {before: placed("by", "ruth", "toward", "desk", "turn", "40", "distance", "1.5")},
	"lights.*.at.turn":     {before: placed("by", "ruth", "toward", "A", "turn", "20", "distance", "1.5")},
	"lights.*.at.distance": {before: placed("by", "ruth", "toward", "A", "turn", "20", "distance", "1.5")},
	"lights.*.at.wall":     {before: placed("wall", "kitchen.top", "along", "1", "in", "0.5"), example: "kitchen.right"},
	"lights.*.at.along":    {before: placed("wall", "kitchen.top", "along", "1", "in", "0.5")},
	"lights.*.at.in":       {before: placed("wall", "kitchen.top", "along", "1", "in", "0.6")},
	"lights.*.at.opening":  {before: placed("opening", "yard", "out", "1")},
	"lights.*.at.out":      {before: placed("opening", "street", "out", "1")},
	"lights.*.at.top":      {before: placed("top", "riser")},

	"lights.*.aim.from":     {before: aimed("from", "riser", "height", "1")},
	"lights.*.aim.shift":    {before: aimed("from", "desk", "shift", "[0, 0.9]", "height", "1")},
	"lights.*.aim.by":       {before: aimed("by", "desk", "toward", "A", "turn", "40", "distance", "1.5", "height", "1")},
	"lights.*.aim.toward":   {before: aimed("by", "ruth", "toward", "desk", "turn", "40", "distance", "1.5", "height", "1")},
	"lights.*.aim.turn":     {before: aimed("by", "ruth", "toward", "A", "turn", "20", "distance", "1.5", "height", "1")},
	"lights.*.aim.distance": {before: aimed("by", "ruth", "toward", "A", "turn", "20", "distance", "1.5", "height", "1")},
	"lights.*.aim.wall":     {before: aimed("wall", "kitchen.top", "along", "1", "in", "0.5", "height", "1")},
	"lights.*.aim.along":    {before: aimed("wall", "kitchen.left", "along", "1", "in", "0.5", "height", "1")},
	"lights.*.aim.in":       {before: aimed("wall", "kitchen.left", "along", "1", "in", "0.6", "height", "1")},
	"lights.*.aim.opening":  {before: aimed("opening", "yard", "in", "1", "height", "1")},
	"lights.*.aim.out":      {before: aimed("opening", "street", "out", "1", "height", "1")},
	"lights.*.aim.top":      {before: aimed("top", "riser", "height", "1")},
	"lights.*.aim.height":   {before: aimed("from", "desk", "height", "1")},
	"lights.*.aim.ceiling":  {before: aimed("ceiling", "shed", "at", "[7, 1]"), example: "kitchen"},
	"lights.*.aim.at":       {before: aimed("ceiling", "kitchen", "at", "[2, 2]")},
	"lights.*.aim.pan":      {before: aimed("pan", "200")},
	"lights.*.aim.tilt":     {before: aimed("pan", "200", "tilt", "-30")},

	"lights.*.mount.stand": {before: []ready{riser, on("lights.day", "at", "[3.4, 3.2]")}},
	"lights.*.mount.boom":  {before: held("boom", "1")},
	"lights.*.mount.base":  {before: held("boom", "1.6"), example: "[2.6, 2.4]"},
	"lights.*.mount.clamp": {before: held("boom", "1"), example: "desk"},
	"lights.*.mount.pole":  {before: held("boom", "1")},
	"lights.*.mount.wall":  {before: held("boom", "1")},
	"lights.*.mount.lift":  {before: held("boom", "1")},

	"sheet.field":    {example: "face"},
	"sheet.for":      {example: "electric"},
	"sheet.location": {example: "Quay house"},
	"sheet.paper":    {example: "A2"},
	"units":          {example: "ft"},
}

// elsewhere are keys that say nothing alone, and why.
var elsewhere = map[string]string{
	"scrimshaw":           "it says how to read the rest",
	"kit":                 "it names a file, which the scripts on kit files bring",
	"prices":              "it names a file, which the script on lists brings",
	"lights.*.output.ies": "it names a file, which the scripts on measured light bring",
	"lights.*.output.ldt": "it names a file, which the scripts on measured light bring",
}

// heard is what the commands say of a scene, cheapest first: what is found in it, the readings, the sheets.
func heard(t *testing.T, text string) (says []func() string) {
	return []func() string{
		func() string {
			r := runOn(t, text, []string{"review", "--json"})
			var found []struct{ Code, Message, Severity string }
			if err := json.Unmarshal([]byte(r.out), &found); err != nil {
				t.Fatalf("%v: %s%s", err, r.out, r.err)
			}
			var lines []string
			for _, d := range found {
				if d.Severity == "error" {
					t.Errorf("a fault in\n%s%s: %s", text, d.Code, d.Message)
				}
				lines = append(lines, d.Code+" "+d.Message)
			}
			slices.Sort(lines)
			return strings.Join(lines, "\n")
		},
		func() string { return runOn(t, text, []string{"meter", "--json"}).out },
		func() string {
			files := runOn(t, text, []string{"draw"}, "a.txt", "a.svg").files
			return files["a.txt"] + files["a.svg"]
		},
	}
}

// TestEveryKeyIsHeard writes every key of the language that is not on the list of those that are not computed yet into
// a scene: something that the commands say is other than without it. A key that nothing reads fails here until it is
// read, or listed.
func TestEveryKeyIsHeard(t *testing.T) {
	for _, w := range language(t) {
		if w.waits != "" || elsewhere[w.name()] != "" {
			continue
		}
		t.Run(w.name(), func(t *testing.T) {
			t.Parallel()
			f := ground()
			fit := fittings[w.name()]
			for _, r := range fit.before {
				r.put(f)
			}
			if fit.example != "" {
				w.example = fit.example
			}
			before := heard(t, f.text())
			w.into(f)
			for i, says := range heard(t, f.text()) {
				if says() != before[i]() {
					return
				}
			}
			t.Errorf("nothing that is said changes with it in\n%s", f.text())
		})
	}
}
