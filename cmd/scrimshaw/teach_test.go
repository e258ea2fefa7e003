package main

import (
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// taught is what meter --json says of a lesson.
type taught struct {
	Setup string
	Teach struct {
		Lights []struct {
			Light, Number          string
			Distance, Turn, Height *float64
		}
		Sentences []struct {
			Text    string
			Figures []struct {
				Name, Unit, Words string
				Value             float64
			}
		}
	}
}

// taughtNumber is a number in a sentence, with what makes a length in feet or a stop of it.
var taughtNumber = regexp.MustCompile(`T?\d+(?:\.\d+)?(?:\+[⅓⅔])?(?:'\d+½?")?`)

// TestTaughtNumbersAreInJSON: every number of a sentence to learn from is in meter --json, and says that value to its last digit; the
// sheet says the same sentences.
func TestTaughtNumbersAreInJSON(t *testing.T) {
	for sample, setup := range map[string]string{"four-keys": "side", "two-sizes": "close"} {
		path := "../../samples/" + sample + ".yaml"
		asked := []string{path, "--setup", setup}
		var all []taught
		printed := said(t, "", append([]string{"meter", "--json"}, asked...)...)
		if err := json.Unmarshal([]byte(printed[strings.Index(printed, "["):]), &all); err != nil {
			t.Fatal(err)
		}
		text := said(t, "", append([]string{"draw", "-o", "-", "--format", "txt", "--notes", "teach"}, asked...)...)
		for _, s := range all {
			if len(s.Teach.Sentences) < 4 {
				t.Errorf("%s %s has %d sentences", sample, s.Setup, len(s.Teach.Sentences))
			}
			for _, sentence := range s.Teach.Sentences {
				if !strings.Contains(text, sentence.Text) {
					t.Errorf("the sheet of %s %s does not say %q", sample, s.Setup, sentence.Text)
				}
				rest := strings.ReplaceAll(sentence.Text, " : 1", "")
				for _, l := range s.Teach.Lights {
					rest = strings.ReplaceAll(rest, l.Number+" "+l.Light, "")
				}
				figures := map[string]bool{}
				for _, f := range sentence.Figures {
					figures[taughtNumber.FindString(f.Words)] = true
					if got, ok := valueOfWords(f.Words); ok && !(math.Abs(got-f.Value) <= half(f.Words)) {
						t.Errorf("%s %s: %s is printed as %q, and is %g", sample, s.Setup, f.Name, f.Words, f.Value)
					}
				}
				for _, n := range taughtNumber.FindAllString(rest, -1) {
					if !figures[n] {
						t.Errorf("%s %s: %q of %q is no figure in JSON", sample, s.Setup, n, sentence.Text)
					}
				}
			}
		}
	}
}

// valueOfWords reads a plain figure; ok is false for stops of a lens, feet and footcandles, which have other units in JSON.
func valueOfWords(words string) (value float64, ok bool) {
	if strings.HasPrefix(words, "T") || strings.ContainsAny(words, `'"`) || strings.HasSuffix(words, " fc") {
		return 0, false
	}
	value, err := strconv.ParseFloat(taughtNumber.FindString(words), 64)
	return value, err == nil
}

// half is half of the last digit that a figure is printed to.
func half(words string) float64 {
	_, decimals, _ := strings.Cut(taughtNumber.FindString(words), ".")
	digits := taughtNumber.FindString(words)
	last := math.Pow10(-len(decimals))
	if decimals == "" && len(digits) > 3 {
		last = math.Pow10(len(digits) - 3) // three figures count
	}
	return last/2 + 1e-9
}
