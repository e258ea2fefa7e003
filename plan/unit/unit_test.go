package unit

import (
	"errors"
	"math"
	"testing"

	"scrimshaw/plan/source"
)

// near fails unless got is want to a relative 1e-12.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-12*math.Max(1, math.Abs(want))) {
		t.Errorf("%s = %.15g, want %.15g", what, got, want)
	}
}

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text string
		feet bool
		want float64
	}{
		{"2.4", false, 2.4},
		{"2.4", true, 2.4 * 0.3048},
		{".5", false, 0.5},
		{"2.", false, 2},
		{"-1.2", false, -1.2},
		{"\u22121.2", false, -1.2},
		{"+1.2 m", false, 1.2},
		{"1e-1 m", false, 0.1},
		{"240 cm", true, 2.4},
		{"240cm", false, 2.4},
		{"2400 mm", true, 2.4},
		{"2.4 m", true, 2.4},
		{"2.4\u00a0m", true, 2.4},
		{"2.4 metres", true, 2.4},
		{`7'10"`, false, 94 * 0.0254},
		{`7' 10"`, false, 94 * 0.0254},
		{`7'-10"`, false, 94 * 0.0254},
		{`7'10½"`, false, 94.5 * 0.0254},
		{`7'10 1/2"`, false, 94.5 * 0.0254},
		{"7′10″", false, 94 * 0.0254},
		{"7’10”", false, 94 * 0.0254},
		{"7'10''", false, 94 * 0.0254},
		{"7 ft 10 in", false, 94 * 0.0254},
		{"7 feet 10 inches", false, 94 * 0.0254},
		{"7ft10in", false, 94 * 0.0254},
		{"7.5'", false, 7.5 * 0.3048},
		{"7 1/2 ft", false, 7.5 * 0.3048},
		{"94 in", false, 94 * 0.0254},
		{`94"`, false, 94 * 0.0254},
		{`1/4"`, false, 0.00635},
		{`-7'6"`, false, -7.5 * 0.3048},
		{`-0'6"`, false, -0.1524},
		{`-1/2 in`, false, -0.0127},
		{`-1 1/2 in`, false, -1.5 * 0.0254},
	} {
		got, err := ParseLength(c.text, c.feet)
		if err != nil {
			t.Errorf("ParseLength(%q): %v", c.text, err)
			continue
		}
		near(t, "ParseLength("+c.text+")", got, c.want)
	}
}

func TestParseQuantities(t *testing.T) {
	for _, c := range []struct {
		name  string
		parse func(string) (float64, error)
		text  string
		want  float64
	}{
		{"number", ParseNumber, "800", 800},
		{"number", ParseNumber, "-0", 0},
		{"angle", ParseAngle, "45", 45},
		{"angle", ParseAngle, "45°", 45},
		{"angle", ParseAngle, "-12.5 deg", -12.5},
		{"level", ParseLevel, "80 %", 0.8},
		{"level", ParseLevel, "80%", 0.8},
		{"level", ParseLevel, "0 %", 0},
		{"level", ParseLevel, "Off", 0},
		{"level", ParseLevel, "full", 1},
		{"percent", ParsePercent, "125 %", 1.25},
		{"lens", ParseLens, "32 mm", 32},
		{"lens", ParseLens, "32MM", 32},
		{"power", ParsePower, "300 W", 300},
		{"power", ParsePower, "1.2 kW", 1200},
		{"mass", ParseMass, "6.2 kg", 6.2},
		{"mass", ParseMass, "850 g", 0.85},
		{"mass", ParseMass, "10 lb", 4.5359237},
		{"illuminance", ParseIlluminance, "500 lx", 500},
		{"illuminance", ParseIlluminance, "1 fc", 10.763910416709722},
		{"aspect", ParseAspect, "2.39", 2.39},
		{"aspect", ParseAspect, "2.39:1", 2.39},
		{"aspect", ParseAspect, "16:9", 16.0 / 9},
		{"aspect", ParseAspect, "16 : 9", 16.0 / 9},
		{"scale", ParseScale, "1:50", 50},
		{"scale", ParseScale, "1 : 50", 50},
		{"scale", ParseScale, "2:100", 50},
		{"scale", ParseScale, `1/4"`, 48},
		{"scale", ParseScale, `1/4" to the foot`, 48},
		{"scale", ParseScale, `1/4" = 1'-0"`, 48},
		{"scale", ParseScale, `1/2 in to the foot`, 24},
		{"scale", ParseScale, `¼"`, 48},
		{"duv", ParseDuv, "+0.003", 0.003},
	} {
		got, err := c.parse(c.text)
		if err != nil {
			t.Errorf("%s %q: %v", c.name, c.text, err)
			continue
		}
		near(t, c.name+" "+c.text, got, c.want)
	}
}

func TestParseKelvin(t *testing.T) {
	for text, want := range map[string]Kelvin{
		"3200 K":              {Kelvin: 3200},
		"3200K":               {Kelvin: 3200},
		"3200 k":              {Kelvin: 3200},
		"daylight 5600 K":     {Kelvin: 5600, Daylight: true},
		"Daylight 5600K":      {Kelvin: 5600, Daylight: true},
		"3200 K, Duv +0.003":  {Kelvin: 3200, Duv: 0.003},
		"3200 K duv -0.01":    {Kelvin: 3200, Duv: -0.01},
		"daylight 6500 K Duv": {},
	} {
		got, err := ParseKelvin(text)
		if wanted := want != (Kelvin{}); wanted != (err == nil) {
			t.Errorf("ParseKelvin(%q) error = %v", text, err)
		} else if wanted && got != want {
			t.Errorf("ParseKelvin(%q) = %+v, want %+v", text, got, want)
		}
	}
}

// The marks of ISO 517 are named roundings of powers of the root of two.
func TestStopMarksAreExact(t *testing.T) {
	for k, name := range []string{"1", "1.4", "2", "2.8", "4", "5.6", "8", "11", "16", "22"} {
		got, err := ParseStop("T" + name)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "T"+name, got.N, math.Pow(math.Sqrt2, float64(k)))
	}
	if got, _ := ParseStop("T4"); got.N != 4 {
		t.Errorf("T4 is %.17g, want 4 to the last bit", got.N)
	}
}

func TestParseStop(t *testing.T) {
	for _, c := range []struct {
		text       string
		written, n float64
	}{
		{"T2.8", 2.8, 2 * math.Sqrt2},
		{"t2.8", 2.8, 2 * math.Sqrt2},
		{"2.8", 2.8, 2 * math.Sqrt2},
		{"f/2.8", 2.8, 2 * math.Sqrt2},
		{"F2.8", 2.8, 2 * math.Sqrt2},
		{"T2.3", 2.3, 2.3},
		{"T1.3", 1.3, 1.3},
		{"T3.2", 3.2, 2 * math.Sqrt2 * math.Pow(2, 1.0/6)},
		{"T2.8 1/3", 3.2, 2 * math.Sqrt2 * math.Pow(2, 1.0/6)},
		{"T2.8⅓", 3.2, 2 * math.Sqrt2 * math.Pow(2, 1.0/6)},
		{"T2.8+⅓", 3.2, 2 * math.Sqrt2 * math.Pow(2, 1.0/6)},
		{"T2.8 + 1/3", 3.2, 2 * math.Sqrt2 * math.Pow(2, 1.0/6)},
		{"T2.8 and a third", 3.2, 2 * math.Sqrt2 * math.Pow(2, 1.0/6)},
		{"T2.8 2/3", 3.5, 2 * math.Sqrt2 * math.Pow(2, 1.0/3)},
		{"T2.8 1/2", 3.4, 2 * math.Sqrt2 * math.Pow(2, 0.25)},
	} {
		got, err := ParseStop(c.text)
		if err != nil {
			t.Errorf("ParseStop(%q): %v", c.text, err)
			continue
		}
		near(t, c.text+" written", got.Written, c.written)
		near(t, c.text, got.N, c.n)
	}
}

// Every third is the one before it times the sixth root of two, and its name is its number
// rounded: to 4 % at worst, since 1.2 stands for 1.26 and 22 for 22.6.
func TestThirdsAreEven(t *testing.T) {
	for i := range thirds {
		stop, err := ParseStop("T" + thirds[i])
		if err != nil {
			t.Fatal(err)
		}
		near(t, "third "+thirds[i], stop.N, 0.5*math.Pow(2, float64(i)/6))
		if off := math.Abs(stop.Written/stop.N - 1); off > 0.05 {
			t.Errorf("the name T%s is %.1f %% from its number %.3f", thirds[i], off*100, stop.N)
		}
	}
}

func TestParseShutter(t *testing.T) {
	for text, want := range map[string]Shutter{
		"180":     {Degrees: 180},
		"180°":    {Degrees: 180},
		"180 deg": {Degrees: 180},
		"172.8°":  {Degrees: 172.8},
		"1/50":    {Seconds: 1.0 / 50},
		"1/48 s":  {Seconds: 1.0 / 48},
		"0.02 s":  {Seconds: 0.02},
	} {
		if got, err := ParseShutter(text); err != nil || got != want {
			t.Errorf("ParseShutter(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
}

func length(text string) (float64, error) { return ParseLength(text, false) }
func kelvin(text string) (float64, error) { w, err := ParseKelvin(text); return w.Kelvin, err }
func stop(text string) (float64, error)   { s, err := ParseStop(text); return s.N, err }
func shutter(text string) (float64, error) {
	s, err := ParseShutter(text)
	return s.Degrees + s.Seconds, err
}

// What a user reads when a value is wrong: the message, and the fix.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		parse               func(string) (float64, error)
		text, message, hint string
	}{
		{length, "2.6 parsecs", `"2.6 parsecs" is not a length: "parsecs" is not one of its units`, "the units are m, cm, mm, ft or in"},
		{length, ".nan", `".nan" is not a finite number, where a length belongs`, ""},
		{length, "-.inf", `"-.inf" is not a finite number, where a length belongs`, ""},
		{length, "1_000", `"1_000" has a "_" in its number, where a length belongs`, "write the digits together: 1000"},
		{length, "1,5 m", `"1,5 m" has a comma in its number, where a length belongs`, "use a point: 1.5 m"},
		{length, ",5 m", `",5 m" has a comma in its number, where a length belongs`, "use a point: .5 m"},
		{length, "1,000.5 m", `"1,000.5 m" has a "," in its number, where a length belongs`, "write the digits together: 1000.5 m"},
		{length, "1e400", `"1e400" is too large a number, where a length belongs`, ""},
		{length, "200 km", `"200 km" is not a length: "km" is not one of its units`, "the units are m, cm, mm, ft or in"},
		{length, "200000", `"200000" is too long a length`, "the most is 100 km"},
		{length, "", "a number is missing, where a length belongs", ""},
		{length, "wide", `"wide" does not start with a number, where a length belongs`, ""},
		{length, "0x10", `"0x10" is not a length: "x10" is not one of its units`, "the units are m, cm, mm, ft or in"},
		{length, "7'10", `the inches of "7'10" have no unit`, `did you mean 7'10"?`},
		{length, "7 m 10 in", `"7 m 10 in" is not a length: "10 in" is left over`, "only feet are followed by inches"},
		{length, "7'10 cm", `"7'10 cm" is not a length: "cm" is not inches`, "only inches follow feet"},
		{length, `7'--10"`, `"7'--10\"" has a sign before its inches`, "one sign, before the feet"},
		{length, `4'18"`, `"4'18\"" has more than 12 inches behind its feet`, `did you mean 5'6"?`},
		{ParseLevel, "80", `a level needs %, and "80" has none`, "did you mean 80 %?"},
		{ParseLevel, "0.5", `a level needs %, and "0.5" has none`, "did you mean 50 %, or 0.5 %?"},
		{ParseLevel, "on", `"on" is not a level`, "write full, or 100 %"},
		{ParseLevel, "no", `"no" is not a level`, "write off, or 0 %"},
		{ParseLevel, "120 %", `a level of 120 % is out of range`, "a level is 0 % to 100 %"},
		{ParseLevel, "-1 %", `a level of -1 % is out of range`, "a level is 0 % to 100 %"},
		{ParseLens, "35", `a lens needs mm, and "35" has none`, "did you mean 35 mm?"},
		{ParseLens, "35", `a lens needs mm, and "35" has none`, "did you mean 35 mm?"},
		{ParseLens, "3.5", `a lens needs mm, and "3.5" has none`, "did you mean 35 mm?"},
		{ParseLens, "35 m", `"35 m" is not a lens: "m" is not one of its units`, "did you mean 35 mm?"},
		{ParseLens, "5 cm", `"5 cm" is not a lens: "cm" is not one of its units`, "did you mean 50 mm?"},
		{ParseLens, "35 in", `"35 in" is not a lens: "in" is not one of its units`, "the unit is mm"},
		{ParseLens, "0 mm", `a lens must be more than zero, and "0 mm" is not`, "write more than 0 mm"},
		{kelvin, "3200", `a colour temperature needs K, and "3200" has none`, "did you mean 3200 K?"},
		{kelvin, "daylight", `"daylight" is a white without its kelvins`, "write daylight 5600 K"},
		{kelvin, "Tungsten", `"Tungsten" is a white without its kelvins`, "write 3200 K"},
		{kelvin, "daylight 3200 K", `"daylight 3200 K" is outside the daylight locus`, "daylight is 4000 K to 25000 K"},
		{kelvin, "500 K", `"500 K" is out of range`, "a white is 1000 K to 40000 K"},
		{kelvin, "3200 K Duv 0.2", `a Duv of 0.2 is out of range`, "a Duv is -0.05 to 0.05, green positive"},
		{ParsePower, "300", `a power needs W or kW, and "300" has none`, "did you mean 300 W?"},
		{ParsePower, "-300 W", `a power cannot be negative, and "-300 W" is`, "did you mean 300 W?"},
		{ParseIlluminance, "500", `an illuminance needs lx or fc, and "500" has none`, "did you mean 500 lx?"},
		{ParseAngle, "45 rad", `"45 rad" is not an angle: "rad" is not one of its units`, "the units are deg or °"},
		{ParseAspect, "16/9", `"16/9" is not the shape of a frame`, "write 2.39 or 16:9"},
		{ParseAspect, "16:0", `"16:0" is not the shape of a frame`, "write 2.39 or 16:9"},
		{stop, "T2,8", `"T2,8" has a comma in its number`, "use a point: T2.8"},
		{stop, "wide open", `"wide open" is not a stop`, "write T2.8 or T2.8 1/3"},
		{stop, "T0.1", `"T0.1" is out of range`, "a stop is T0.5 to T64"},
		{stop, "T64 1/3", `"T64 1/3" is out of range`, "a stop is T0.5 to T64"},
		{stop, "T2.3 1/3", `"T2.3 1/3" counts from a figure that is no mark`, "write T2+⅓"},
		{shutter, "400", `a shutter angle is above 0° and at most 360°, and "400" is not`, "a time is written 1/50"},
		{shutter, "0.02", `"0.02" is too small for a shutter angle`, "did you mean 0.02 s?"},
		{shutter, "1/0", `"1/0" is out of range`, "a time is 1/1000000 to 100 s"},
		{shutter, "180 rpm", `"180 rpm" is not a shutter angle or time`, "write 180, 172.8° or 1/50"},
		{ParseScale, "50", `"50" is not a scale`, `write 1:50, or 1/4" for a quarter inch to the foot`},
		{ParseScale, "1:0", `"1:0" is out of range`, "a scale is 1:1 to 1:10000"},
		{ParseScale, "0:50", `"0:50" is not a scale`, `write 1:50, or 1/4" for a quarter inch to the foot`},
		{ParseNumber, "8OO", `"8OO" has the letter O for a zero`, "write 800"},
		{ParseLens, "3O mm", `"3O mm" has the letter O for a zero, where a lens belongs`, "write 30 mm"},
		{length, "l.5 m", `"l.5 m" has the letter l for a one, where a length belongs`, "write 1.5 m"},
		{length, `8' 1O"`, `"8' 1O\"" has the letter O for a zero, where a length belongs`, `write 8' 10"`},
		{ParseNumber, "800 asa", `"800 asa" is not a plain number`, "write 800 alone"},
	} {
		got, err := c.parse(c.text)
		var f *source.Diagnostic
		if !errors.As(err, &f) {
			t.Errorf("%q: got %v and error %v, want a fault", c.text, got, err)
			continue
		}
		if f.Message != c.message || f.Hint != c.hint {
			t.Errorf("%q:\n got %s | %s\nwant %s | %s", c.text, f.Message, f.Hint, c.message, c.hint)
		}
	}
}
