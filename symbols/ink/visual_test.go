package ink_test

import (
	"testing"

	"scrimshaw/symbols/ink"
)

// Lines in the order in which their letters stand from the left; the letters of a line that runs from right to left are
// turned round by hand here. The rules are those of UAX #9, and its examples are among them.
func TestVisual(t *testing.T) {
	for _, c := range []struct{ name, read, seen string }{
		{"left to right", "key light (5600 K), 12 m", "key light (5600 K), 12 m"},
		{"Greek and Cyrillic", "Φως свет", "Φως свет"},
		{"right to left", "אור", "רוא"},
		{"two words", "אור יום", "םוי רוא"},
		{"a word among others", "the אור is on", "the רוא is on"},
		{"two words among others", "the אור יום is on", "the םוי רוא is on"},
		{"a number behind a word", "the אור 12 is on", "the 12 רוא is on"},
		{"a number with its signs", "at אור 1,200.5% left", "at 1,200.5% רוא left"},
		{"a number between words", "אור 12 יום", "םוי 12 רוא"},
		{"a number before a word", "12 אור", "רוא 12"},
		{"a line that runs left", "אור key יום", "םוי key רוא"},
		{"two words of the other way in it", "אור key light יום", "םוי key light רוא"},
		{"brackets", "אור (יום)", "(םוי) רוא"},
		{"brackets round words of the other way", "אור (key)", "(key) רוא"},
		{"signs that turn", "א < ב", "ב > א"},
		{"a full stop at the end", "אור.", ".רוא"},
		{"a full stop at the end of the other way", "the אור.", "the רוא."},
		{"a mark stays behind its letter", "אָב", "באָ"},
		{"Arabic, which is not joined", "نور", "رون"},
		{"an Arabic number", "نور ١٢", "١٢ رون"},
		{"nothing", "", ""},
	} {
		if got := ink.Visual(c.read); got != c.seen {
			t.Errorf("%s: %q stands as %q, want %q", c.name, c.read, got, c.seen)
		}
	}
}

func TestRunsLeft(t *testing.T) {
	for line, left := range map[string]bool{"": false, "12": false, "key אור": false, "12 אור key": true, "אור": true, "(نور)": true} {
		if got := ink.RunsLeft(line); got != left {
			t.Errorf("%q: %v", line, got)
		}
	}
}

func TestUnshaped(t *testing.T) {
	for line, want := range map[string]string{"Größe é Ω свет 光 אור": "", "نور": "رنو", "e\u0301": "\u0301", "दि": "दि"} {
		if got := string(ink.Unshaped(line)); got != want {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
}
