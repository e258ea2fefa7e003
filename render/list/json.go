package list

import (
	"bytes"
	"encoding/json"
	"io"
)

// WriteJSON writes all tables as one object: the scene, its set-ups, a list of objects a table, the totals of the kit and what the lists are without.
// The keys of a row are those of its columns in their order; a number that is not known is null, and words that are not there are "".
func WriteJSON(w io.Writer, d *Day) error {
	out := struct {
		Scene       string     `json:"scene"`
		Setups      []string   `json:"setups"` // "" of a scene without set-ups
		Kit         rows       `json:"kit"`
		Consumables rows       `json:"consumables"`
		Totals      jsonTotals `json:"totals"`
		Dimmers     rows       `json:"dimmers"`
		Lamps       rows       `json:"lamps"`
		Circuits    rows       `json:"circuits"`
		Power       rows       `json:"power"`
		Without     []string   `json:"without"` // sentences: what is not on the lists
	}{d.Scene, d.Setups, rows{&d.Kit}, rows{&d.Consumables}, d.totals(), rows{&d.Dimmers}, rows{&d.Lamps}, rows{&d.Circuits}, rows{&d.Power}, d.Without}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

type jsonTotals struct {
	Kg            *float64 `json:"kg"`            // of what comes back, kg; null: not known
	WithoutMass   []string `json:"withoutMass"`   // what has no mass that is known
	ConsumablesKg *float64 `json:"consumablesKg"` // of what is used up, kg; null: not known
	Litres        *float64 `json:"litres"`        // of 0.001 m³; null: not known
	WithoutVolume int      `json:"withoutVolume"` // pieces without a case that is known
	Hire          *float64 `json:"hire"`          // in the currency of the price file, for all that comes back over the days that are charged; null: the scene has none
	Sales         *float64 `json:"sales"`         // in its currency for what is used up
	Price         *float64 `json:"price"`         // both, in its currency
	Terms         string   `json:"terms"`         // days and currency
}

func (d *Day) totals() jsonTotals {
	t := jsonTotals{Kg: d.Mass().Number, ConsumablesKg: d.ConsumableMass().Number, WithoutMass: d.sums.WithoutMass, Litres: d.Volume().Number, WithoutVolume: d.sums.WithoutVolume,
		Hire: d.Hire().Number, Sales: d.Sales().Number, Price: d.Price().Number, Terms: d.Terms()}
	if t.WithoutMass == nil {
		t.WithoutMass = []string{}
	}
	return t
}

// rows writes a table as a list of objects.
type rows struct{ table *Table }

// MarshalJSON keeps the order of the columns.
func (r rows) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	b.WriteByte('[')
	for i, row := range r.table.Rows {
		comma(&b, i)
		b.WriteByte('{')
		for k, c := range row {
			comma(&b, k)
			if err := enc.Encode(r.table.Columns[k].Key); err != nil {
				return nil, err
			}
			b.WriteByte(':')
			if err := enc.Encode(c.value(r.table.Columns[k].Number)); err != nil {
				return nil, err
			}
		}
		b.WriteByte('}')
	}
	b.WriteByte(']')
	return b.Bytes(), nil
}

func comma(b *bytes.Buffer, i int) {
	if i > 0 {
		b.WriteByte(',')
	}
}

// value is a cell as JSON has it.
func (c *Cell) value(isNumber bool) any {
	if isNumber {
		return c.Number
	}
	return c.Text
}
