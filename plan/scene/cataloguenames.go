package scene

import (
	"strings"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// catalogueNameReader reads the name of an entry of the catalogue.
func catalogueNameReader(what, like string) source.Reader[Ref] {
	name := text(what, like)
	return source.Reader[Ref]{What: what, Like: like, Schema: name.Schema,
		Read: func(n *source.Node, c *source.Context) (Ref, bool) {
			v, ok := name.Read(n, c)
			return Ref{Name: v, Span: n.Span}, ok
		}}
}

// checkCatalogueNames refuses names that neither the catalogue nor the scene's materials hold.
func (s *Scene) checkCatalogueNames(k *kit.Catalogue, c *source.Context) {
	for _, n := range s.things() {
		for _, a := range n.thing.catalogueNames {
			if names, known := s.entries(k, a); !known {
				c.Path = append(strings.Split(n.thing.Path, "."), a.key)
				c.ErrorAt(a.ref.Span, CodeUnknownEntry, source.DidYouMeanOr(a.ref.Name, names, "`scrimshaw kit "+a.what+"` lists them"),
					"the kit has no %s %q", a.what, a.ref.Name)
			}
		}
	}
	c.Path = nil
}

// entries are the names that would do, and whether the one that is asked for is among them.
func (s *Scene) entries(k *kit.Catalogue, a catalogueName) (names []string, known bool) {
	switch a.what {
	case "cloth":
		return kit.Names(k.Cloth), k.ClothOf(a.ref.Name) != nil
	case "gel":
		return kit.Names(k.Gels), k.Gel(a.ref.Name) != nil
	}
	names = kit.Names(k.Materials)
	known = k.Material(a.ref.Name) != nil
	for i := range s.Materials {
		names = append(names, s.Materials[i].Name)
		known = known || s.Materials[i].Name == a.ref.Name
	}
	return names, known
}
