package sheet

// figures are what sections show beside their words, as rows.
func (c *drawing) figure(f figure) []row {
	switch f {
	case levelFigure:
		return []row{maps{c}.keyBar(keyOf(c.in, c.in.fields()...))}
	case smallMapFigure:
		return maps{c}.insetRows()
	case signFigure:
		return legend{c}.rows()
	}
	return nil
}

// block lays a section out with its figure.
func (c *drawing) block(s *section) *textBlock { return c.typesetter.block(s, c.figure(s.figure)) }
