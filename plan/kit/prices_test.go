package kit_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// prices reads a price file, and gives what is wrong with it, one fault a line.
func prices(t *testing.T, text string) (*kit.Prices, string) {
	t.Helper()
	log := &source.Log{}
	p := shipped(t).LoadPrices(&source.File{Name: "prices.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	var lines []string
	for _, d := range log.All() {
		lines = append(lines, d.Message+" ["+d.Hint+"]")
	}
	return p, strings.Join(lines, "\n")
}

// What a price file says is kept to a hundredth; days that it does not say are one of shooting, and those of shooting are charged.
func TestPriceFile(t *testing.T) {
	p, wrong := prices(t, "currency: EUR\nrates: {led-point-600-daylight: 45.5, sandbag-12: 0.01}\nsales: {gel-roll: 61.9}\n")
	if wrong != "" || p.Currency != "EUR" || p.Rates["led-point-600-daylight"] != 4550 || p.Rates["sandbag-12"] != 1 || p.Sales["gel-roll"] != 6190 {
		t.Errorf("%+v, %s", p, wrong)
	}
	for text, want := range map[string]kit.Days{
		"":                                     {Shoot: 1, Charged: 1},
		"days: {prep: 1, shoot: 3, return: 1}": {Prep: 1, Shoot: 3, Return: 1, Charged: 3},
		"days: {shoot: 5, charged: 3.5}":       {Shoot: 5, Charged: 3.5},
		"days: {prep: 2}":                      {Prep: 2, Shoot: 1, Charged: 1},
	} {
		if p, wrong := prices(t, text+"\n"); wrong != "" || p.Days != want {
			t.Errorf("%q: %+v, want %+v, %s", text, p.Days, want, wrong)
		}
	}
}

// A fault of a price file comes with its fix.
func TestPriceFileFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"rates: {sandbag-21: 1}", `the kit has no "sandbag-21" to put a price on [did you mean "sandbag-12"?]`},
		{"rates: {sandbag-12: 1.155}", "a price has two decimals at most, and 1.155 has more [write 1.16]"},
		{"rates: {sandbag-12: -1}", `a price is from 0 to 1000000, and "-1" is not [write 0 or more]`},
		{"days: {shoot: 0, charged: 2}", `a number of days is from 1 to 1000, and 0 is not [write 1 or more]`},
		{"hire: {sandbag-12: 1}", `a price file has no key "hire" [its keys are scrimshaw, currency, days, rates, sales]`},
	} {
		if _, wrong := prices(t, c.text+"\n"); wrong != c.want {
			t.Errorf("%s: %s\nwant %s", c.text, wrong, c.want)
		}
	}
}
