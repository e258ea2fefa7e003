package unit

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"scrimshaw/plan/source"
)

// maxNumber bounds every number: beyond it a product of two or three of them would leave the range
// of float64, and nothing on a set comes near.
const maxNumber = 1e12

// ParseNumber reads a number that carries no unit: an ISO speed, a count of lumens, a beam angle
// in a table.
func ParseNumber(text string) (float64, error) {
	s := normalise(text)
	v, rest, err := leadingNumber(text, s)
	if err != nil {
		return 0, err
	}
	if rest != "" {
		return 0, fault("write "+FormatNumber(v)+" alone", "%q is not a plain number", text)
	}
	return v, nil
}

// numeral is a decimal number at the start of a text. The exponent needs its digits, so that
// "3 e" keeps an e for the unit to be wrong about.
var numeral = regexp.MustCompile(`^[+-]? ?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?`)

// leadingNumber reads the number at the start of s, and returns what follows it without the space
// between. whole is the text to quote in a fault.
func leadingNumber(whole, s string) (v float64, rest string, err error) {
	if err := refuseLetters(whole, s); err != nil {
		return 0, "", err
	}
	digits := numeral.FindString(s)
	if digits == "" {
		return 0, "", notANumber(whole, s)
	}
	rest = s[len(digits):]
	if strings.HasPrefix(rest, ",") || strings.HasPrefix(rest, "_") {
		return 0, "", refuseSeparators(whole, s)
	}
	v, err = strconv.ParseFloat(strings.Replace(digits, " ", "", 1), 64)
	if err != nil || math.Abs(v) > maxNumber {
		return 0, "", fault("", "%q is too large a number", whole)
	}
	return v + 0, strings.TrimLeft(rest, " "), nil // + 0 drops the sign of a negative zero
}

// mistyped is a number at the start of a text with letters among its figures, up to where a word would end.
var mistyped = regexp.MustCompile(`^[+-]? ?[0-9OoIl.]+(?:$|[^\pL0-9])`)

// figures puts back the figures that letters are typed for.
var figures = strings.NewReplacer("O", "0", "o", "0", "I", "1", "l", "1")

// refuseLetters refuses a number in which a letter stands for the figure that looks like it: 8OO, l.5.
func refuseLetters(whole, s string) error {
	number := mistyped.FindString(s)
	at := strings.IndexAny(number, "OoIl")
	meant := figures.Replace(number)
	if at < 0 || !strings.ContainsAny(number, "0123456789") || numeral.FindString(meant) == "" {
		return nil
	}
	figure := "zero"
	if number[at] == 'I' || number[at] == 'l' {
		figure = "one"
	}
	return fault("write "+strings.Replace(normalise(whole), number, meant, 1), "%q has the letter %c for a %s", whole, number[at], figure)
}

// notANumber says why s does not start with a number.
func notANumber(whole, s string) error {
	word := strings.ToLower(strings.TrimLeft(s, "+-. "))
	switch {
	case s == "":
		return fault("", "a number is missing")
	case strings.HasPrefix(word, "nan"), strings.HasPrefix(word, "inf"):
		return source.Errorf(source.CodeNotFinite, "", "%q is not a finite number", whole)
	case strings.HasPrefix(s, ","):
		return refuseSeparators(whole, s)
	}
	return fault("", "%q does not start with a number", whole)
}

// refuseSeparators refuses a comma or an underscore in a number: 1,5 is one and a half to one reader and
// fifteen to another, so it is never guessed.
func refuseSeparators(whole, s string) error {
	mark := ","
	if strings.Contains(s, "_") {
		mark = "_"
	}
	if mark == "," && strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		return fault("use a point: "+strings.Replace(s, ",", ".", 1), "%q has a comma in its number", whole)
	}
	joined := strings.ReplaceAll(s, mark, "")
	return fault("write the digits together: "+joined, "%q has a %q in its number", whole, mark)
}

// fraction is a common fraction at the start of a text: 1/2.
var fraction = regexp.MustCompile(`^([0-9]{1,3}) ?/ ?([0-9]{1,3})`)

// mixedNumber reads a number that may end in, or be, a common fraction: 10 1/2, 3/4, -2.5.
func mixedNumber(whole, s string) (v float64, rest string, err error) {
	sign, body := 1.0, s
	if strings.HasPrefix(s, "-") {
		sign, body = -1, strings.TrimLeft(s[1:], " ")
	}
	if f, rest, ok := commonFraction(body); ok {
		return sign * f, rest, nil
	}
	v, rest, err = leadingNumber(whole, s)
	if err != nil {
		return 0, "", err
	}
	if f, after, ok := commonFraction(rest); ok && v == math.Trunc(v) {
		return v + sign*f, after, nil
	}
	return v, rest, nil
}

// commonFraction reads a common fraction at the start of s.
func commonFraction(s string) (v float64, rest string, ok bool) {
	m := fraction.FindStringSubmatch(s)
	if m == nil {
		return 0, s, false
	}
	over, _ := strconv.Atoi(m[1])
	under, _ := strconv.Atoi(m[2])
	if under == 0 {
		return 0, s, false
	}
	return float64(over) / float64(under), strings.TrimLeft(s[len(m[0]):], " "), true
}
