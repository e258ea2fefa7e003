package ink

import "strings"

// layerTitles are the names of the layers as a reader sees them, in drawing order.
var layerTitles = [layers]string{
	Ground:      "Paper",
	Tint:        "Floor tint",
	Wedges:      "Beam wedges",
	Contours:    "Contours",
	Walls:       "Walls and openings",
	Furniture:   "Furniture",
	Cables:      "Cables",
	Moves:       "Moved from",
	People:      "People",
	CameraWedge: "Camera wedge",
	Beams:       "Beams",
	Throws:      "Throws",
	Tapes:       "Placing",
	Symbols:     "Symbols",
	Tags:        "Tags",
	Readings:    "Readings",
	Notes:       "Notes",
	Revisions:   "Revisions",
	Collar:      "Collar",
}

// Layers lists the layers in drawing order.
func Layers() []Layer {
	all := make([]Layer, layers)
	for i := range all {
		all[i] = Layer(i)
	}
	return all
}

// Title is the layer's name as a reader sees it: "Walls and openings".
func (l Layer) Title() string {
	if l < layers {
		return layerTitles[l]
	}
	return "Other"
}

// String is the layer's name as a word for programs: "walls-and-openings".
func (l Layer) String() string {
	return strings.ReplaceAll(strings.ToLower(l.Title()), " ", "-")
}
