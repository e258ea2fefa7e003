package scene

import (
	"path"

	"scrimshaw/plan/source"
)

// loadKit lays the scene's own kit files over the shipped catalogue. What is wrong with the key
// itself is reported with the scene.
func (d *Document) loadKit(log *source.Log) {
	n := d.Root.Get("kit")
	if n == nil {
		return
	}
	paths, fine := kitPaths.Read(n, &source.Context{Log: &source.Log{}})
	d.KitLacks = !fine
	c := &source.Context{Log: log, Path: []string{"kit"}}
	var files []*source.File
	for _, p := range paths {
		if !p.Set {
			d.KitLacks = true
			continue
		}
		text, err := d.Env.readFile(p.Value, source.MaxBytes)
		if err != nil {
			c.Refuse(p.Span, err)
			d.KitLacks = true
			continue
		}
		f := &source.File{Name: displayName(d.Root.Span.File.Name, p.Value), Text: text}
		d.files.folders[f] = path.Dir(path.Clean(p.Value))
		files = append(files, f)
	}
	if len(files) == 0 {
		return
	}
	own := &source.Log{}
	d.Kit = d.Kit.With(files, own)
	d.KitLacks = d.KitLacks || own.Failed()
	for _, found := range own.All() {
		log.Add(found)
	}
	for _, u := range d.Kit.Units { // those of the files are new, and nobody else's yet
		for i := range u.Outputs {
			d.files.measure(&u.Outputs[i].Output, c)
		}
	}
}

// loadPrices reads the price file that the scene names. What is wrong with the key itself comes with the scene.
func (d *Document) loadPrices(log *source.Log) {
	n := d.Root.Get("prices")
	if n == nil {
		return
	}
	name, fine := kitPath().Read(n, &source.Context{Log: &source.Log{}})
	if !fine {
		return
	}
	text, err := d.Env.readFile(name.Value, source.MaxBytes)
	if err != nil {
		(&source.Context{Log: log, Path: []string{"prices"}}).Refuse(name.Span, err)
		return
	}
	d.Prices = d.Kit.LoadPrices(&source.File{Name: displayName(d.Root.Span.File.Name, name.Value), Text: text}, log)
}

// kitPaths reads the files of more kit.
var kitPaths = oneOrMore("a list of kit files", "[lamps.yaml]", kitPath(), 50)

func kitPath() source.Reader[Given[string]] {
	name := filePath("a file", "lamps.yaml")
	return source.Reader[Given[string]]{What: name.What, Like: name.Like, Schema: name.Schema,
		Read: func(n *source.Node, c *source.Context) (Given[string], bool) {
			v, ok := name.Read(n, c)
			return Given[string]{Value: v, Set: ok, Span: n.Span}, ok
		}}
}
