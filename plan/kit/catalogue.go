package kit

import (
	"strings"

	"scrimshaw/plan/source"
)

// Catalogue is everything a scene may call by name. Order lists keep the order of the files. A
// Catalogue is not changed once it is made; With makes another.
type Catalogue struct {
	Units     []*Unit
	Bulbs     []*Bulb
	Modifiers []*Modifier
	Gels      []*GelData
	Cloth     []*Cloth
	Materials []*Material
	Sensors   []*Sensor
	Filters   []*LensFilter
	Stands    []*Stand
	Grip      []*Grip
	Items     []*Item
}

// named is an entry of the catalogue.
type named interface{ entry() *Entry }

// Names lists the names of entries in the catalogue's order.
func Names[T named](list []T) []string {
	names := make([]string, len(list))
	for i, e := range list {
		names[i] = e.entry().Name
	}
	return names
}

// find is the entry of a name, or nil.
func find[T any, P interface {
	*T
	named
}](list []P, name string) P {
	for _, e := range list {
		if e.entry().Name == name {
			return e
		}
	}
	return nil
}

// Unit returns the unit of a name, or nil.
func (c *Catalogue) Unit(name string) *Unit { return find(c.Units, name) }

// Bulb returns the bulb of a name, or nil.
func (c *Catalogue) Bulb(name string) *Bulb { return find(c.Bulbs, name) }

// Modifier returns the modifier of a name, or nil.
func (c *Catalogue) Modifier(name string) *Modifier { return find(c.Modifiers, name) }

// GripOf returns the piece of grip of a name, or nil.
func (c *Catalogue) GripOf(name string) *Grip { return find(c.Grip, name) }

// ItemOf returns what a van holds of a name, or nil.
func (c *Catalogue) ItemOf(name string) *Item { return find(c.Items, name) }

// dimmerGroup is the shelf of dimmers.
const dimmerGroup = "dimmer"

// DimmerFor returns the smallest dimmer that stands a power, W; nil where none does.
func (c *Catalogue) DimmerFor(watts float64) (best *Item) {
	for _, item := range c.Items {
		if item.Group == dimmerGroup && item.Watts > 0 && item.Watts >= watts && (best == nil || item.Watts < best.Watts) {
			best = item
		}
	}
	return best
}

// ClothOf returns the cloth of a name, or nil.
func (c *Catalogue) ClothOf(name string) *Cloth { return find(c.Cloth, name) }

// Material returns the material of a name, or nil.
func (c *Catalogue) Material(name string) *Material { return find(c.Materials, name) }

// Sensor returns the sensor of a name, or nil.
func (c *Catalogue) Sensor(name string) *Sensor { return find(c.Sensors, name) }

// LensFilter returns the filter before a lens of a name, or nil.
func (c *Catalogue) LensFilter(name string) *LensFilter { return find(c.Filters, name) }

// Stand returns the stand of a name, or nil.
func (c *Catalogue) Stand(name string) *Stand { return find(c.Stands, name) }

// Gel returns the gel of a name, or nil. Gels are called as the trade writes them: `1/2 CTO` is
// also `half CTO`, `½ CTO` and `CTO 1/2`; `CTO` is `full CTO`; `ND .6` is also `ND 0.6`.
func (c *Catalogue) Gel(name string) *GelData {
	key := gelKey(name)
	for _, g := range c.Gels {
		if gelKey(g.Name) == key {
			return g
		}
	}
	return nil
}

// fractions are the ways to write the part of a full gel.
var fractions = strings.NewReplacer(
	"three quarter", "3/4", "quarter", "1/4", "half", "1/2", "eighth", "1/8", "sixteenth", "1/16", "full", "",
	"½", "1/2", "¼", "1/4", "⅛", "1/8", "¾", "3/4", "-", " ", "+", "plus ",
)

// gelKey is a gel's name in the form that all ways to write it share: the words without the
// fraction, then the fraction.
func gelKey(name string) string {
	part, words := "", []string{}
	for _, w := range strings.Fields(fractions.Replace(strings.ToLower(name))) {
		if strings.Contains(w, "/") {
			part = w
			continue
		}
		if density, ok := strings.CutPrefix(w, "nd"); ok && density != "" { // nd.6
			words, w = append(words, "nd"), density
		}
		if strings.HasPrefix(w, "0.") {
			w = w[1:]
		}
		words = append(words, w)
	}
	return strings.TrimSpace(strings.Join(words, " ") + " " + part)
}

// unknown is the hint for a name that the catalogue does not hold: the nearest, or where to look.
func unknown(name string, names []string, kind string) string {
	return source.DidYouMeanOr(name, names, "`"+strings.TrimSpace("scrimshaw kit "+kind)+"` lists them")
}
