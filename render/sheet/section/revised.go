package section

// Revised is how much of a set-up is not as on the sheet before.
type Revised struct {
	New  bool // that sheet has no such set-up
	Rows int  // of its list of what was revised
}

// revisedOf counts what was revised of a set-up; nil where nobody asks.
func revisedOf(in *Input) *Revised {
	if in.Since == nil {
		return nil
	}
	return &Revised{New: in.Since.Setup == nil, Rows: len(in.Since.Lines) + len(shifted(in))}
}

// Words say it for a list of contents; "" where nobody asks.
func (r *Revised) Words() string {
	switch {
	case r == nil:
		return ""
	case r.New:
		return "new"
	case r.Rows == 0:
		return "as it was"
	}
	return Count(r.Rows, "revision")
}

// Differs says whether the sheet is not as the one before.
func (r *Revised) Differs() bool { return r != nil && (r.New || r.Rows > 0) }
