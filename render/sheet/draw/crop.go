package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// CropFrom leaves of the items from one on what lies in a panel; lettering that does not wholly is
// left out.
func CropFrom(page *ink.Page, first int, panel r2.Box, face ink.Measure) {
	kept, clip := page.Items[:first], 0
	for _, it := range page.Items[first:] {
		b := it.Bounds(face).Box
		whole := box.Contains(panel, b.Min) && box.Contains(panel, b.Max)
		switch {
		case b.Max.X <= panel.Min.X || b.Min.X >= panel.Max.X || b.Max.Y <= panel.Min.Y || b.Min.Y >= panel.Max.Y:
			continue
		case it.Text != nil && !whole:
			continue
		case !whole:
			if clip == 0 {
				page.Clips = append(page.Clips, box.Corners(panel))
				clip = len(page.Clips)
			}
			it.Clip = clip
		}
		kept = append(kept, it)
	}
	page.Items = kept
}
