// Package ink is a drawing as data, in millimetres on paper with x right and y up from the
// lower-left corner of the page. Symbols and sheets draw on it; the writers turn it into bytes.
package ink

import "gonum.org/v1/gonum/spatial/r2"

// Inch is an inch, mm.
const Inch = 25.4

// Layer is one named, switchable layer. Layers are drawn in ascending order.
type Layer uint8

// The layers of a sheet, in drawing order.
const (
	Ground Layer = iota // the colour of the paper, where that is not white
	Tint
	Wedges
	Contours
	Walls
	Furniture
	Cables
	Moves // where things stood in the set-up before
	People
	CameraWedge
	Beams
	Throws
	Tapes
	Symbols
	Tags
	Readings
	Notes
	Revisions // what is not as on the sheet before
	Collar
	layers
)

// Op is a path operation.
type Op byte

// The path operations; Curve is a cubic Bezier with two control points and an end point.
const (
	Move Op = iota
	Line
	Curve
	Close
)

// Segment is one step of a path. Move and Line use P[0]; Curve uses P[0], P[1], P[2].
type Segment struct {
	Op Op
	P  [3]r2.Vec // mm
}

// Colour is opaque; anything translucent is composed before it is drawn.
type Colour struct{ R, G, B uint8 }

// Stroke is a pen. Width and Dash are in millimetres.
type Stroke struct {
	Colour Colour
	Width  float64
	Dash   []float64
	Round  bool // round caps and joins; else butt caps and mitre joins
}

// Text is one line of text. Size is the em in millimetres (a capital is about 0.7 of it high; the
// typeface knows); Angle is degrees counter-clockwise; At is the baseline point that Align names.
type Text struct {
	At     r2.Vec
	S      string
	Size   float64
	Angle  float64
	Bold   bool
	Align  Align
	Colour Colour
	Halo   *Colour // a rim of this colour behind the glyphs: a stroke HaloWidth wide
}

// HaloWidth is the width of the stroke that makes a halo, in ems; half of it shows beside a glyph.
const HaloWidth = 0.25

// MitreLimit is how far a mitre may reach, in widths of its line; sharper corners are cut off.
const MitreLimit = 4

// Align says which point of the baseline Text.At is.
type Align uint8

// The alignments.
const (
	Left Align = iota
	Centre
	Right
)

// Item is one mark: a path, a text or an image.
type Item struct {
	Layer  Layer
	Object string // the thing it stands for: "light:key", so a page can join marks to data
	Alt    string // a sentence for a reader who cannot see it
	Path   []Segment
	Stroke *Stroke
	Fill   *Colour
	Text   *Text
	Image  *Image
	Clip   int // index into Page.Clips plus one; 0 is unclipped
}

// Image is a raster laid into a rectangle, its first pixel at the upper left.
type Image struct {
	Min, Max      r2.Vec // corners of the rectangle, mm
	Width, Height int    // pixels
	RGB           []byte // 3 bytes a pixel, rows from the top
}

// Page is one sheet of paper.
type Page struct {
	Title         string
	Name          string   // for the name of its file: "close", "close.lists", ".lists" of the only set-up; "" for none
	Outline       []string // its place in the outline of its document, the outermost heading first; none stands for its title
	Description   string
	Width, Height float64 // mm
	Items         []Item
	Clips         [][]r2.Vec // convex polygons, mm
	Links         []Link
}

// Link leads from a rectangle of a page to another page of its document.
type Link struct {
	Min, Max r2.Vec // mm
	To       string // the Name of the page that it leads to; a name of no page leads nowhere
}

// Document is what a writer turns into bytes.
type Document struct {
	Title, Language, Author, Subject string
	Date                             string // ISO 8601, "" for none
	Pages                            []Page
	Tagged                           bool // its lettering is read in an order that the file says, not as it happens to be drawn
}
