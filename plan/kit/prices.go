package kit

import (
	"math"
	"slices"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// Money is a sum in hundredths of its currency, so that sums are exact.
type Money int64

// Units is the sum as a number of its currency.
func (m Money) Units() float64 { return float64(m) / hundredths }

// hundredths are those of a unit of a currency.
const hundredths = 100

// Prices is a price file: what a desk asks for things of the catalogue, by their names.
type Prices struct {
	Currency string
	Days     Days
	Rates    map[string]Money // of one for a day that is charged
	Sales    map[string]Money // of one that is used up
}

// Days are those of a hire.
type Days struct {
	Prep, Shoot, Return int
	Charged             float64 // of 24 hours: days that are charged, in full and in part
}

// What bounds a price, how many there are, and days.
const (
	priceMost  = 1e6
	mostPrices = 2000
	mostDays   = 1000
)

// LoadPrices reads a price file for a catalogue. What is wrong with it goes to log; a price for what the catalogue does not have is an error.
func (c *Catalogue) LoadPrices(f *source.File, log *source.Log) *Prices {
	p := &Prices{}
	if root := source.Parse(f, log); root != nil {
		c.priceShape().Read(p, root, &source.Context{Log: log})
	}
	if p.Days.Shoot == 0 {
		p.Days.Shoot = 1
	}
	if p.Days.Charged == 0 {
		p.Days.Charged = float64(p.Days.Shoot)
	}
	return p
}

// priceShape is the table of the keys of a price file.
func (c *Catalogue) priceShape() *source.Shape[Prices] {
	version := source.Int("the version", 1, 1)
	return &source.Shape[Prices]{Name: "price file", Doc: "What a desk asks for things of the kit.", Fields: []source.Field[Prices]{
		{Key: "scrimshaw", Doc: "Version of the language.", Example: "1", Schema: version.Schema,
			Read: func(_ *Prices, n *source.Node, c *source.Context) { version.Read(n, c) }},
		withDefault(field("currency", source.Text("a currency", "EUR"), func(p *Prices) *string { return &p.Currency }, "What the prices are in."), "not said"),
		withDefault(field("days", daysReader(), func(p *Prices) *Days { return &p.Days }, "Days of the hire."), "one day of shooting"),
		withDefault(field("rates", c.pricesReader("a map of rates"), func(p *Prices) *map[string]Money { return &p.Rates }, "For one thing a day, by its name in the kit."), "none"),
		withDefault(field("sales", c.pricesReader("a map of sales"), func(p *Prices) *map[string]Money { return &p.Sales }, "For one of what is used up, a roll, by its name in the kit."), "none"),
	}}
}

// daysReader reads the days of a hire.
func daysReader() source.Reader[Days] {
	days := func(least int) source.Reader[int] { return source.Int("a number of days", least, mostDays) }
	shape := &source.Shape[Days]{Name: "days of a hire", Doc: "Days of a hire.", Fields: []source.Field[Days]{
		withDefault(field("prep", days(0), func(d *Days) *int { return &d.Prep }, "Before the first day of shooting."), "0"),
		withDefault(field("shoot", days(1), func(d *Days) *int { return &d.Shoot }, "Days of shooting."), "1"),
		withDefault(field("return", days(0), func(d *Days) *int { return &d.Return }, "After the last."), "0"),
		withDefault(field("charged", amount("a number of days", "2.5", 0.1, 3*mostDays), func(d *Days) *float64 { return &d.Charged }, "Days that are charged."), "the days of shooting"),
	}}
	return source.Reader[Days]{What: "days of a hire", Like: "{prep: 1, shoot: 2, return: 1}", Schema: shape.Schema,
		Read: func(n *source.Node, c *source.Context) (v Days, ok bool) {
			ok = readsWithoutError(c, func(c *source.Context) { shape.Read(&v, n, c) })
			return v, ok
		}}
}

// pricesReader reads prices by the names of the catalogue.
func (c *Catalogue) pricesReader(what string) source.Reader[map[string]Money] {
	price := amount("a price", "12.50", 0, priceMost)
	return source.Reader[map[string]Money]{What: what, Like: "{led-point-600-daylight: 45}",
		Schema: func() map[string]any { return map[string]any{"type": "object", "additionalProperties": price.Schema()} },
		Read: func(n *source.Node, at *source.Context) (all map[string]Money, ok bool) {
			all, names := map[string]Money{}, c.priced()
			if len(n.Keys) > mostPrices {
				at.ErrorAt(n.Keys[mostPrices].Span, source.CodeOutOfRange, "leave out what no list of yours has", "a price file holds at most %d prices of a kind", mostPrices)
				return nil, false
			}
			ok = readsWithoutError(at, func(at *source.Context) {
				source.Each(n, "price", at, func(k *source.Key) {
					if !slices.Contains(names, k.Name) {
						at.ErrorAt(k.Span, source.CodeUnknownKey, unknown(k.Name, names, ""), "the kit has no %q to put a price on", k.Name)
					}
					v, fine := price.Read(k.Value, at)
					if cents := math.Round(v * hundredths); fine && math.Abs(cents-v*hundredths) > 1e-6 {
						at.Error(k.Value, source.CodeBadValue, "write "+unit.FormatNumber(cents/hundredths), "a price has two decimals at most, and %s has more", k.Value.Text)
					} else {
						all[k.Name] = Money(cents)
					}
				})
			})
			return all, ok
		}}
}

// priced are the names of what a price can be for.
func (c *Catalogue) priced() []string {
	return slices.Concat(Names(c.Units), Names(c.Bulbs), Names(c.Modifiers), Names(c.Stands), Names(c.Grip), Names(c.Items))
}
