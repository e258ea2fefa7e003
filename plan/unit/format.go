package unit

import (
	"fmt"
	"math"
	"strconv"
)

// decimal prints v with a fixed number of decimals and never a negative zero.
func decimal(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if zero, _ := strconv.ParseFloat(s, 64); zero == 0 && s[0] == '-' {
		return s[1:]
	}
	return s
}

// trimZeros prints v rounded to a number of decimals, without the zeros at its end.
func trimZeros(v float64, places int) string {
	pow := math.Pow10(places)
	return strconv.FormatFloat(math.Round(v*pow)/pow+0, 'f', -1, 64)
}

// FormatNumber prints v with at most four decimals and no trailing zeros.
func FormatNumber(v float64) string { return trimZeros(v, 4) }

// FormatLength prints metres as `2.40 m`, or where feet is true as FormatFeet does.
func FormatLength(metres float64, feet bool) string {
	if feet {
		return FormatFeet(metres)
	}
	return decimal(metres, 2) + " m"
}

// FormatFeet prints metres as feet and inches to the nearest half inch: `7'10"`, `7'10½"`, `8"`.
func FormatFeet(metres float64) string {
	halves := int(math.Round(math.Abs(metres) / (Inch / 2)))
	sign := ""
	if metres < 0 && halves > 0 {
		sign = "-"
	}
	feet, inches, half := halves/24, halves%24/2, ""
	if halves%2 == 1 {
		half = "½"
	}
	whole := strconv.Itoa(inches)
	if inches == 0 && half != "" && feet == 0 {
		whole = ""
	}
	if feet == 0 {
		return sign + whole + half + `"`
	}
	return sign + strconv.Itoa(feet) + "'" + whole + half + `"`
}

// FormatAngle prints degrees to a tenth: `45°`, `172.8°`.
func FormatAngle(degrees float64) string { return trimZeros(degrees, 1) + "°" }

// FormatWhole prints v rounded to a whole number, without a unit: `47`.
func FormatWhole(v float64) string { return decimal(v, 0) }

// FormatTenths prints v to a tenth, with it even where that is nought, without a unit: `5.0`.
func FormatTenths(v float64) string { return decimal(v, 1) }

// FormatFigures prints v to three significant figures and no finer than a hundredth: an illuminance is
// never known better. `12300`, `345`, `34.5`, `3.45`, `0.03`, `0`.
func FormatFigures(v float64) string {
	places := 2
	switch a := math.Abs(v); {
	case a >= 99.95:
		places = 0
	case a >= 9.995:
		places = 1
	}
	if a := math.Abs(v); a >= 999.5 {
		step := math.Pow10(int(math.Floor(math.Log10(a))) - 2)
		v = math.Round(v/step) * step
	}
	if s := decimal(v, places); s != "0.00" {
		return s
	}
	return "0"
}

// FormatBrief prints v as short as is true to a hundredth of it, with at most three figures that count: for the
// lettering of a map, where Figures would be wide. `12300`, `345`, `59`, `7.3`, `0.46`.
func FormatBrief(v float64) string {
	switch {
	case v >= 999.5:
		return FormatFigures(v)
	case v < 0.995:
		return strconv.FormatFloat(v, 'g', 2, 64)
	case v >= 99.5, math.Abs(math.Round(v)-v) < v/100:
		return decimal(v, 0)
	}
	return decimal(v, 1)
}

// FormatLux prints an illuminance: `345 lx`.
func FormatLux(lux float64) string { return FormatFigures(lux) + " lx" }

// FormatFootcandles prints an illuminance given in lux: `32.1 fc`.
func FormatFootcandles(lux float64) string { return FormatFigures(lux/Footcandle) + " fc" }

// FormatLuminance prints a luminance: `57.3 cd/m²`.
func FormatLuminance(candelaPerSquareMetre float64) string {
	return FormatFigures(candelaPerSquareMetre) + " cd/m²"
}

// FormatPercent prints a fraction to a tenth of a per cent: `80 %`, `12.5 %`.
func FormatPercent(fraction float64) string { return trimZeros(fraction*100, 1) + " %" }

// FormatLens prints a focal length: `32 mm`.
func FormatLens(mm float64) string { return trimZeros(mm, 1) + " mm" }

// FormatPower prints watts: `300 W`.
func FormatPower(watts float64) string { return trimZeros(watts, 1) + " W" }

// FormatAmps prints a current: "4.2 A".
func FormatAmps(amps float64) string { return trimZeros(amps, 1) + " A" }

// FormatHours prints how long something lasts, rounded down to five minutes: `1 h 35 min`.
func FormatHours(hours float64) string {
	minutes := 5 * int(math.Floor(hours*12+1e-6))
	return fmt.Sprintf("%d h %02d min", minutes/60, minutes%60)
}

// FormatMass prints kilograms to a tenth: `6.2 kg`.
func FormatMass(kg float64) string { return trimZeros(kg, 1) + " kg" }

// FormatAspect prints the shape of a frame: `2.39:1`; 16:9 and 4:3 by their names.
func FormatAspect(a float64) string {
	for _, r := range [...][2]int{{16, 9}, {4, 3}} {
		if math.Abs(a-float64(r[0])/float64(r[1])) < 1e-3 {
			return strconv.Itoa(r[0]) + ":" + strconv.Itoa(r[1])
		}
	}
	return trimZeros(a, 2) + ":1"
}

// FormatKelvin prints a colour temperature to 10 K: `3200 K`.
func FormatKelvin(kelvin float64) string {
	return strconv.FormatFloat(math.Round(kelvin/10)*10, 'f', 0, 64) + " K"
}

// FormatDuv prints a distance from the locus with its sign: `+0.003`, `-0.012`, `0`.
func FormatDuv(duv float64) string {
	s := trimZeros(duv, 3)
	if s[0] == '-' || s == "0" {
		return s
	}
	return "+" + s
}

// FormatShutter prints a shutter as it was given: `172.8°`, `1/50 s`.
func FormatShutter(s Shutter) string {
	switch {
	case s.Degrees > 0:
		return FormatAngle(s.Degrees)
	case s.Seconds > 0 && s.Seconds < 1:
		return "1/" + trimZeros(1/s.Seconds, 2) + " s"
	}
	return trimZeros(s.Seconds, 2) + " s"
}

// FormatScale prints a scale: `1:50`, or where feet is true and it is a customary one, `1/4"`.
func FormatScale(times float64, feet bool) string {
	if feet {
		for _, s := range [...]string{`1"`, `3/4"`, `1/2"`, `3/8"`, `1/4"`, `3/16"`, `1/8"`, `3/32"`, `1/16"`} {
			if v, err := ParseScale(s); err == nil && math.Abs(v-times) < 1e-9*times {
				return s
			}
		}
	}
	return "1:" + trimZeros(times, 2)
}

// mile is a mile an hour, m/s: 1609.344 m in 3600 s.
const mile = 0.44704

// FormatArea prints an area to so many tenths, rounded up: what the wind takes hold of is never less than what prints.
func FormatArea(squareMetres float64, feet bool) string {
	value, word := squareMetres, " m²"
	if feet {
		value, word = squareMetres/(Foot*Foot), " sq ft"
	}
	return FormatNumber(math.Ceil(10*value-1e-9)/10) + word
}

// FormatWind prints a wind, m/s, rounded down to what a hand-held meter shows: 9.8 m/s, or 21 mph where lengths are in feet.
func FormatWind(speed float64, feet bool) string {
	if feet {
		return FormatNumber(math.Floor(speed/mile+1e-9)) + " mph"
	}
	return FormatNumber(math.Floor(10*speed+1e-9)/10) + " m/s"
}
