package files

import (
	"math"
	"strconv"
	"strings"
)

// number reads a finite decimal number, with a point.
func number(s string) (float64, bool) {
	for _, r := range s {
		if !strings.ContainsRune("0123456789+-.eE", r) {
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
}

// leading is the longest start of a text that could be a number.
func leading(s string) string {
	for i, r := range s {
		if !strings.ContainsRune("0123456789+-.,eE", r) {
			return s[:i]
		}
	}
	return s
}

// format writes a number so that it reads back the same.
func format(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if len(s) > 18 {
		s = strconv.FormatFloat(v, 'g', -1, 64)
	}
	return s
}

// whole gives a number as a count, where it is one up to most.
func whole(v float64, most int) (int, bool) {
	if v != math.Trunc(v) || !(math.Abs(v) <= float64(most)) {
		return 0, false
	}
	return int(v), true
}

// quoted is text of a file in a message: short, in quotes.
func quoted(s string) string {
	const most = 24
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return strconv.Quote(s)
}

// numbered is what a value is called, with its number i of n, counted from 0, for the #.
func numbered(what string, i, n int) string {
	if n == 1 {
		return strings.Replace(what, " #", "", 1)
	}
	return strings.Replace(what, "#", strconv.Itoa(i+1)+" of "+strconv.Itoa(n), 1)
}
