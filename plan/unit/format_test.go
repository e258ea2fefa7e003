package unit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"scrimshaw/plan/source"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{FormatLength(2.4, false), "2.40 m"},
		{FormatLength(-0.001, false), "0.00 m"},
		{FormatLength(2.4, true), `7'10½"`},
		{FormatWhole(46.5001), "47"},
		{FormatWhole(-0.2), "0"},
		{FormatTenths(5), "5.0"},
		{FormatTenths(0.449), "0.4"},
		{FormatFeet(94 * Inch), `7'10"`},
		{FormatFeet(0), `0"`},
		{FormatFeet(Inch / 2), `½"`},
		{FormatFeet(8 * Inch), `8"`},
		{FormatFeet(-6 * Inch), `-6"`},
		{FormatFeet(-0.001), `0"`},
		{FormatFeet(23.9 * Inch), `2'0"`},
		{FormatFeet(24.5 * Inch), `2'0½"`},
		{FormatAngle(45), "45°"},
		{FormatAngle(172.8), "172.8°"},
		{FormatAngle(-0.01), "0°"},
		{FormatBrief(12345), "12300"}, {FormatBrief(345.4), "345"}, {FormatBrief(99.7), "100"}, {FormatBrief(58.75), "59"}, {FormatBrief(7.34), "7.3"}, {FormatBrief(7.02), "7"}, {FormatBrief(0.459), "0.46"}, {FormatBrief(0), "0"},
		{FormatLux(12345), "12300 lx"},
		{FormatLux(999.6), "1000 lx"},
		{FormatLux(345.4), "345 lx"},
		{FormatLux(99.96), "100 lx"},
		{FormatLux(34.54), "34.5 lx"},
		{FormatLux(9.996), "10.0 lx"},
		{FormatLux(3.454), "3.45 lx"},
		{FormatLux(0.0345), "0.03 lx"},
		{FormatLux(0), "0 lx"},
		{FormatLux(-0.001), "0 lx"},
		{FormatFootcandles(345.4), "32.1 fc"},
		{FormatLuminance(57.296), "57.3 cd/m²"},
		{FormatPercent(0.8), "80 %"},
		{FormatPercent(0.125), "12.5 %"},
		{FormatLens(32), "32 mm"},
		{FormatPower(300), "300 W"},
		{FormatHours(1.6), "1 h 35 min"},
		{FormatHours(23.999), "23 h 55 min"},
		{FormatHours(0.25), "0 h 15 min"},
		{FormatMass(6.24), "6.2 kg"},
		{FormatKelvin(3196), "3200 K"},
		{FormatDuv(0.00321), "+0.003"},
		{FormatDuv(-0.0123), "-0.012"},
		{FormatDuv(-0.0001), "0"},
		{FormatAspect(16.0 / 9), "16:9"},
		{FormatAspect(2.39), "2.39:1"},
		{FormatShutter(Shutter{Degrees: 172.8}), "172.8°"},
		{FormatShutter(Shutter{Seconds: 1.0 / 50}), "1/50 s"},
		{FormatShutter(Shutter{Seconds: 2}), "2 s"},
		{FormatScale(50, false), "1:50"},
		{FormatScale(48, true), `1/4"`},
		{FormatScale(50, true), "1:50"},
		{FormatStop(2 * math.Sqrt2), "T2.8"},
		{FormatStop(2.8), "T2.8"},
		{FormatStop(3.2), "T2.8+⅓"},
		{FormatStop(3.6), "T2.8+⅔"},
		{FormatStop(3.9), "T4"},
		{FormatStop(0.3), "under T0.5"},
		{FormatStop(0), "under T0.5"},
		{FormatStop(90), "over T64"},
		{FormatStops(1.26), "+1.3"},
		{FormatStops(-0.04), "0"},
		{FormatRelativeStops(-1.26, "key"), "1.3 under key"},
		{FormatRelativeStops(0.44, "key"), "0.4 over key"},
		{FormatRelativeStops(-0.049, "key"), "equal to key"},
		{FormatRelativeStops(0, "key"), "equal to key"},
		{FormatRelativeStops(-0.05, "key"), "0.1 under key"},
		{FormatNumber(250), "250"},
		{FormatNumber(0.70711), "0.7071"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// What is printed can be read again, and says the same to within half of the last place printed.
func TestPrintedValuesRead(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 2000 {
		v := math.Exp(r.Float64()*12 - 4)
		if r.IntN(2) == 0 {
			v = -v
		}
		again(t, FormatLength(v, false), length, v, 0.005)
		again(t, FormatFeet(v), length, v, Inch/4)
		again(t, FormatAngle(v), ParseAngle, v, 0.05)
		a := math.Abs(v)
		again(t, FormatLux(a), ParseIlluminance, a, math.Max(0.005, a*0.005))
		again(t, FormatFootcandles(a), ParseIlluminance, a, math.Max(0.005*Footcandle, a*0.005))
		again(t, FormatPercent(v), ParsePercent, v, 0.0005)
		again(t, FormatPower(a), ParsePower, a, 0.05)
		n := math.Exp2(r.Float64()*6.9 - 0.9)
		again(t, FormatStop(n), stop, n, n*(math.Exp2(1.0/12)-1))
		k := 1000 + r.Float64()*20000
		again(t, FormatKelvin(k), kelvin, k, 5)
		d := r.Float64()*359 + 1
		again(t, FormatShutter(Shutter{Degrees: d}), shutter, d, 0.05)
	}
}

func again(t *testing.T, printed string, parse func(string) (float64, error), v, slack float64) {
	t.Helper()
	got, err := parse(printed)
	if err != nil {
		t.Fatalf("%g was printed as %q, which does not read: %v", v, printed, err)
	}
	if !(math.Abs(got-v) <= slack*(1+1e-9)) {
		t.Fatalf("%g was printed as %q, which reads as %g", v, printed, got)
	}
}

// FuzzUnits: no text panics, no accepted value is NaN or infinite, and every fault says something.
func FuzzUnits(f *testing.F) {
	for _, s := range []string{
		"2.4", "240 cm", `7'10"`, "7 ft 10 1/2 in", "-0'6\"", "80 %", "32 mm", "daylight 5600 K, Duv +0.003",
		"T2.8 1/3", "f/2.8", "172.8°", "1/48 s", "1:50", `1/4" to the foot`, "16:9", "1_000", "1e400", "1,5", ".nan", "½\"",
	} {
		f.Add(s)
	}
	parsers := []func(string) (float64, error){
		ParseNumber, length, func(s string) (float64, error) { return ParseLength(s, true) },
		ParseAngle, ParseLevel, ParsePercent, ParseLens, ParsePower, ParseMass, ParseIlluminance, ParseAspect,
		ParseScale, ParseDuv, kelvin, stop, shutter,
	}
	f.Fuzz(func(t *testing.T, text string) {
		for i, parse := range parsers {
			v, err := parse(text)
			if fault, bad := err.(*source.Diagnostic); bad && fault.Message == "" {
				t.Errorf("parser %d: %q has a fault without a message", i, text)
			}
			if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
				t.Errorf("parser %d: %q reads as %g", i, text, v)
			}
		}
	})
}

func BenchmarkParseLength(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ParseLength("2.4 m", false); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleParseLength() {
	v, _ := ParseLength(`7'10"`, false)
	fmt.Println(FormatLength(v, false), FormatLength(v, true))
	_, err := ParseLength("1,5 m", false)
	fmt.Println(err.(*source.Diagnostic).Hint)
	// Output:
	// 2.39 m 7'10"
	// use a point: 1.5 m
}

func ExampleParseStop() {
	s, _ := ParseStop("T5.6")
	fmt.Printf("%.4f\n", s.N)
	fmt.Println(FormatStop(6.3))
	// Output:
	// 5.6569
	// T5.6+⅓
}

// A wind is rounded down: 5 m/s are 11.18 miles an hour.
func TestFormatWind(t *testing.T) {
	for want, got := range map[string]string{"9.8 m/s": FormatWind(9.89, false), "8 m/s": FormatWind(8, false), "11 mph": FormatWind(5, true), "20 mph": FormatWind(20*0.44704, true)} {
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
