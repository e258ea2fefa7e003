package ink

import (
	"bytes"
	"compress/flate"
	"encoding/gob"
)

// Fold keeps the marks that a page has so far in a fraction of the memory, until they are written: a packet of many pages would
// else hold all of them open. Of a folded page Items are those that were added since; Unfolded has all of them. The places of
// paths are rounded as Strata rounds them, and paths that it leaves out are left out.
func (p *Page) Fold() {
	if len(p.Items) == 0 {
		return
	}
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.BestSpeed) // the level is one that there is
	to := gob.NewEncoder(w)
	for _, it := range p.Items {
		if it.Text != nil || it.Image != nil || it.tidyPath() {
			_ = to.Encode(&it) // plain data, and a buffer takes all
		}
	}
	_ = w.Close()
	p.folded, p.Items = append(p.folded[:len(p.folded):len(p.folded)], bytes.Clone(packed.Bytes())), nil
}

// Unfolded is the page with all its marks: itself, where none are folded.
func (p *Page) Unfolded() *Page {
	if len(p.folded) == 0 {
		return p
	}
	q := *p
	q.folded, q.Items = nil, nil
	for _, packed := range p.folded {
		from := gob.NewDecoder(flate.NewReader(bytes.NewReader(packed)))
		for { // to the end of what Fold wrote
			var it Item
			if from.Decode(&it) != nil {
				break
			}
			q.Items = append(q.Items, it)
		}
	}
	q.Items = append(q.Items, p.Items...)
	return &q
}
