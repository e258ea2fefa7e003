package kit

import (
	"embed"
	"fmt"
	"slices"

	"scrimshaw/plan/source"
)

//go:embed data/*.yaml
var shipped embed.FS

// Shipped reads the catalogue that comes with the program. An error would be a fault of the
// program's own data.
func Shipped() (*Catalogue, error) {
	entries, err := shipped.ReadDir("data")
	if err != nil {
		return nil, err
	}
	var files []*source.File
	for _, e := range entries { // ReadDir sorts by name
		text, err := shipped.ReadFile("data/" + e.Name())
		if err != nil {
			return nil, err
		}
		files = append(files, &source.File{Name: "kit:" + e.Name(), Text: text})
	}
	log := &source.Log{}
	c := Load(files, log)
	if found := log.All(); len(found) > 0 {
		return nil, fmt.Errorf("the catalogue that comes with the program has faults: %s", found[0])
	}
	return c, nil
}

// Load reads a catalogue from kit files. What could be read in spite of faults is in it.
func Load(files []*source.File, log *source.Log) *Catalogue { return (&Catalogue{}).With(files, log) }

// With gives a catalogue with the entries of files laid over those of c: an entry replaces one of
// its name whole. c itself stays as it is.
func (c *Catalogue) With(files []*source.File, log *source.Log) *Catalogue {
	l := &loader{catalogue: c.clone()}
	shape := fileShape()
	for _, f := range files {
		if root := source.Parse(f, log); root != nil {
			shape.Read(l, root, &source.Context{Log: log})
		}
	}
	l.catalogue.link(l.units, l.bulbs, log)
	l.catalogue.doubt(l.units, l.bulbs, log)
	return l.catalogue
}

func (c *Catalogue) clone() *Catalogue {
	return &Catalogue{
		Units: slices.Clone(c.Units), Bulbs: slices.Clone(c.Bulbs), Modifiers: slices.Clone(c.Modifiers),
		Gels: slices.Clone(c.Gels), Cloth: slices.Clone(c.Cloth), Materials: slices.Clone(c.Materials),
		Sensors: slices.Clone(c.Sensors), Filters: slices.Clone(c.Filters), Stands: slices.Clone(c.Stands), Grip: slices.Clone(c.Grip),
		Items: slices.Clone(c.Items),
	}
}

// loader is a catalogue while it is read.
type loader struct {
	catalogue *Catalogue
	units     []*Unit // those read now, still to be finished
	bulbs     []*Bulb // those read now
}

// fileShape is the table of the sections of a kit file.
func fileShape() *source.Shape[loader] {
	version := source.Int("the version", 1, 1)
	return &source.Shape[loader]{Name: "kit file", Doc: "More things for the catalogue.", Fields: append([]source.Field[loader]{
		{Key: "scrimshaw", Doc: "Version of the language.", Example: "1", Schema: version.Schema,
			Read: func(_ *loader, n *source.Node, c *source.Context) { version.Read(n, c) }},
		section("units", "unit", unitShape(), (*Unit).check, func(l *loader, u *Unit, e Entry) {
			u.Entry = merged(e, u.Entry)
			u.fill()
			l.units = append(l.units, u)
			put(&l.catalogue.Units, u)
		}),
		section("bulbs", "bulb", bulbShape(), nil, func(l *loader, b *Bulb, e Entry) {
			b.Entry = merged(e, b.Entry)
			b.fill()
			l.bulbs = append(l.bulbs, b)
			put(&l.catalogue.Bulbs, b)
		}),
		section("modifiers", "modifier", modifierShape(), (*Modifier).check, func(l *loader, m *Modifier, e Entry) {
			m.Entry = merged(e, m.Entry)
			m.fill()
			put(&l.catalogue.Modifiers, m)
		}),
		section("gels", "gel", gelShape(), (*GelData).check, func(l *loader, g *GelData, e Entry) {
			g.Entry = merged(e, g.Entry)
			g.fill()
			put(&l.catalogue.Gels, g)
		}),
		section("cloth", "cloth", clothShape(), (*clothData).check, func(l *loader, d *clothData, e Entry) {
			put(&l.catalogue.Cloth, d.cloth(e))
		}),
		section("materials", "material", materialShape(), (*Material).check, func(l *loader, m *Material, e Entry) {
			m.Entry = merged(e, m.Entry)
			put(&l.catalogue.Materials, m)
		}),
		section("sensors", "sensor", sensorShape(), nil, func(l *loader, s *Sensor, e Entry) {
			s.Entry = merged(e, s.Entry)
			s.fill()
			put(&l.catalogue.Sensors, s)
		}),
		section("filters", "filter", lensFilterShape(), nil, func(l *loader, f *LensFilter, e Entry) {
			f.Entry = merged(e, f.Entry)
			f.fill()
			put(&l.catalogue.Filters, f)
		}),
	}, vanSections()...)}
}

// vanSections are those of what holds and shapes light without making any.
func vanSections() []source.Field[loader] {
	return []source.Field[loader]{
		section("stands", "stand", standShape(), (*Stand).check, func(l *loader, s *Stand, e Entry) {
			s.Entry = merged(e, s.Entry)
			put(&l.catalogue.Stands, s)
		}),
		section("grip", "piece of grip", gripShape(), (*Grip).check, func(l *loader, g *Grip, e Entry) {
			g.Entry = merged(e, g.Entry)
			put(&l.catalogue.Grip, g)
		}),
		section("items", "item", itemShape(), (*Item).check, func(l *loader, i *Item, e Entry) {
			i.Entry = merged(e, i.Entry)
			put(&l.catalogue.Items, i)
		}),
	}
}

// section is the field of one kind of entry: each is read by its shape and kept. check says what
// does not go together in an entry, or "", with a hint; it is asked only of one that could all be
// read. nil asks nothing.
func section[T any](key, noun string, shape *source.Shape[T], check func(*T) (message, hint string),
	keep func(*loader, *T, Entry)) source.Field[loader] {
	return source.Field[loader]{
		Key: key, Doc: "Each " + noun + " by its name.",
		Schema: func() map[string]any {
			return map[string]any{"type": "object", "additionalProperties": shape.Schema()}
		},
		Read: func(l *loader, n *source.Node, c *source.Context) {
			source.Each(n, noun, c, func(k *source.Key) {
				v := new(T)
				clean := readsWithoutError(c, func(c *source.Context) { shape.Read(v, k.Value, c) })
				if l.catalogue != nil { // none where a misspelt section is only tried
					keep(l, v, Entry{Name: k.Name, Origin: k.Span})
				}
				if !clean || check == nil {
					return
				}
				if message, hint := check(v); message != "" {
					c.ErrorAt(k.Span, CodeKit, hint, "the %s %q %s", noun, k.Name, message)
				}
			})
		},
	}
}

// merged is the entry with its name and place, and the line of text that was read.
func merged(e, read Entry) Entry {
	e.Doc, e.Spare = read.Doc, read.Spare
	return e
}

// put adds an entry, or replaces the one of its name where that stood.
func put[T named](list *[]T, v T) {
	name := v.entry().Name
	if i := slices.IndexFunc(*list, func(old T) bool { return old.entry().Name == name }); i >= 0 {
		(*list)[i] = v
		return
	}
	*list = append(*list, v)
}
