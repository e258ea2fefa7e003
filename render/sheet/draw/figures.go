package draw

import "scrimshaw/render/sheet/section"

// figure is what sections show beside their words, as rows.
func (c *Drawing) figure(f section.Figure) []Row {
	switch f {
	case section.LevelFigure:
		return []Row{maps{c}.keyBar(section.KeyOf(c.In, c.In.Maps()...))}
	case section.SmallMapFigure:
		return maps{c}.insetRows()
	case section.SignFigure:
		return legend{c}.rows()
	}
	return nil
}

// Block lays a section out with its figure.
func (c *Drawing) Block(s *section.Section) *Block { return c.Typesetter.Block(s, c.figure(s.Figure)) }
