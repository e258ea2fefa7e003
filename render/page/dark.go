package page

import (
	"fmt"

	"scrimshaw/symbols/ink"
)

// dark is what the page about the sheets adds to its style where they are on dark paper: a white header on a dark set would
// undo what the sheets spare the eye. The colours are those of the sheets, their paper and the ink of their title.
func dark(doc *ink.Document) string {
	paper, letters, ok := coloursOf(&doc.Pages[0])
	if !ok {
		return ""
	}
	return fmt.Sprintf(`:root { color-scheme: dark; }
body, header, .paper, .plan { background: %s; color: %s; box-shadow: none; }
header, nav a, summary, fieldset { border-color: %[2]s; }
`, paper, letters)
}

// coloursOf are the colour of a page's paper and that of its first lettering beside the plan; ok is false where the paper
// is white.
func coloursOf(p *ink.Page) (paper, letters ink.Colour, ok bool) {
	p = p.Unfolded()
	for i := range p.Items {
		it := &p.Items[i]
		if it.Layer == ink.Ground && it.Fill != nil {
			paper, ok = *it.Fill, true
		}
		if it.Layer == ink.Collar && it.Text != nil {
			return paper, it.Text.Colour, ok
		}
	}
	return paper, letters, false
}
