package kit

import (
	"embed"
	"errors"
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
	if log.Failed() {
		return nil, errors.New("the catalogue that comes with the program has faults")
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
	l.finish(log)
	return l.catalogue
}

// clone copies the lists, so that laying over one does not change the other.
func (c *Catalogue) clone() *Catalogue {
	return &Catalogue{
		Units: slices.Clone(c.Units), Bulbs: slices.Clone(c.Bulbs), Modifiers: slices.Clone(c.Modifiers),
		Gels: slices.Clone(c.Gels), Cloth: slices.Clone(c.Cloth), Materials: slices.Clone(c.Materials),
		Sensors: slices.Clone(c.Sensors), Stands: slices.Clone(c.Stands), Grip: slices.Clone(c.Grip),
	}
}

// loader is a catalogue while it is read.
type loader struct {
	catalogue *Catalogue
	units     []*Unit // those read now, still to be finished
}

// fileShape is the table of the sections of a kit file.
func fileShape() *source.Shape[loader] {
	version := source.Int("the version", 1, 1)
	return &source.Shape[loader]{Name: "kit file", Doc: "More things for the catalogue.", Fields: []source.Field[loader]{
		{Key: "scrimshaw", Doc: "Version of the language.", Example: "1", Schema: version.Schema,
			Read: func(_ *loader, n *source.Node, c *source.Context) { version.Read(n, c) }},
		section("units", "unit", unitShape(), func(l *loader, u *Unit, e Entry, c *source.Context) {
			u.Entry = merged(e, u.Entry)
			u.check(c)
			l.units = append(l.units, u)
			put(&l.catalogue.Units, u)
		}),
		section("bulbs", "bulb", bulbShape(), func(l *loader, b *Bulb, e Entry, _ *source.Context) {
			b.Entry = merged(e, b.Entry)
			b.PowerFactor = orOne(b.PowerFactor)
			put(&l.catalogue.Bulbs, b)
		}),
		section("modifiers", "modifier", modifierShape(), func(l *loader, m *Modifier, e Entry, c *source.Context) {
			m.Entry = merged(e, m.Entry)
			m.check(c)
			put(&l.catalogue.Modifiers, m)
		}),
		section("gels", "gel", gelShape(), func(l *loader, g *GelData, e Entry, c *source.Context) {
			g.Entry = merged(e, g.Entry)
			g.check(c)
			put(&l.catalogue.Gels, g)
		}),
		section("cloth", "cloth", clothShape(), func(l *loader, d *clothData, e Entry, c *source.Context) {
			cloth := d.cloth(e)
			if cloth.Direct+cloth.Diffuse+cloth.Reflect > 1 {
				c.ErrorAt(e.Origin, CodeKit, "", "the cloth %q lets through and throws back more light than falls on it", e.Name)
			}
			put(&l.catalogue.Cloth, cloth)
		}),
		section("materials", "material", materialShape(), func(l *loader, m *Material, e Entry, c *source.Context) {
			m.Entry = merged(e, m.Entry)
			if m.Reflectance+m.Transmittance > 1 {
				c.ErrorAt(e.Origin, CodeKit, "", "the material %q lets through and throws back more light than falls on it", e.Name)
			}
			put(&l.catalogue.Materials, m)
		}),
		section("sensors", "sensor", sensorShape(), func(l *loader, s *Sensor, e Entry, _ *source.Context) {
			s.Entry = merged(e, s.Entry)
			put(&l.catalogue.Sensors, s)
		}),
		section("stands", "stand", standShape(), func(l *loader, s *Stand, e Entry, c *source.Context) {
			s.Entry = merged(e, s.Entry)
			if s.Highest < s.Lowest {
				c.ErrorAt(e.Origin, CodeKit, "", "the stand %q has its highest height below its lowest", e.Name)
			}
			put(&l.catalogue.Stands, s)
		}),
		section("grip", "piece of grip", gripShape(), func(l *loader, g *Grip, e Entry, _ *source.Context) {
			g.Entry = merged(e, g.Entry)
			put(&l.catalogue.Grip, g)
		}),
	}}
}

// section is the field of one kind of entry: each is read by its shape and then kept.
func section[T any](key, noun string, shape *source.Shape[T], keep func(*loader, *T, Entry, *source.Context)) source.Field[loader] {
	return source.Field[loader]{
		Key: key, Doc: "Each " + noun + " by its name.",
		Schema: func() map[string]any {
			return map[string]any{"type": "object", "additionalProperties": shape.Schema()}
		},
		Read: func(l *loader, n *source.Node, c *source.Context) {
			source.Each(n, noun, c, func(k *source.Key) {
				v := new(T)
				shape.Read(v, k.Value, c)
				keep(l, v, Entry{Name: k.Name, Origin: k.Span}, c)
			})
		},
	}
}

// merged is the entry with its name and place, and the line of text that was read.
func merged(e, read Entry) Entry {
	e.Doc = read.Doc
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

func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}
