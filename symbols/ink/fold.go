package ink

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"io"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Fold keeps the marks that a page has so far in a fraction of the memory, until they are written: a packet of many pages would
// else hold all of them open. Of a folded page Items are those that were added since; Unfolded has all of them. The places of
// paths are rounded as Strata rounds them, and paths that it leaves out are left out.
func (p *Page) Fold() {
	if len(p.Items) == 0 {
		return
	}
	var f folder
	for i := range p.Items {
		f.item(p.Items[i])
	}
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.BestSpeed) // the level is one that there is
	w.Write(f.out)                                    // a buffer takes all
	w.Close()
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
		raw, _ := io.ReadAll(flate.NewReader(bytes.NewReader(packed))) // what Fold wrote, whole
		for u := (unfolder{in: raw, strings: []string{""}}); len(u.in) > 0; {
			q.Items = append(q.Items, u.item())
		}
	}
	q.Items = append(q.Items, p.Items...)
	return &q
}

// What an item has, in the first byte of it.
const (
	hasPath = 1 << iota
	hasStroke
	hasFill
	hasText
	hasImage
)

// folder writes items as bytes: whole numbers as varints, strings once.
type folder struct {
	out   []byte
	known map[string]uint64
}

func (f *folder) uint(n uint64) { f.out = binary.AppendUvarint(f.out, n) }
func (f *folder) int(n int64)   { f.out = binary.AppendVarint(f.out, n) }
func (f *folder) float(v float64) {
	f.out = binary.LittleEndian.AppendUint64(f.out, math.Float64bits(v))
}
func (f *folder) colour(c Colour) { f.out = append(f.out, c.R, c.G, c.B) }

// bool writes a flag.
func (f *folder) bool(b bool) {
	f.out = append(f.out, 0)
	if b {
		f.out[len(f.out)-1] = 1
	}
}

// string writes a string in full the first time, and else its number.
func (f *folder) string(s string) {
	if f.known == nil {
		f.known = map[string]uint64{"": 0}
	}
	n, known := f.known[s]
	if !known {
		n = uint64(len(f.known))
		f.known[s] = n
	}
	if f.uint(n); !known {
		f.uint(uint64(len(s)))
		f.out = append(f.out, s...)
	}
}

// item writes a mark, or nothing for a path that shows nothing.
func (f *folder) item(it Item) {
	if it.Text == nil && it.Image == nil && !it.tidyPath() {
		return
	}
	has := byte(0)
	for bit, is := range [...]bool{len(it.Path) > 0, it.Stroke != nil, it.Fill != nil, it.Text != nil, it.Image != nil} {
		if is {
			has |= 1 << bit
		}
	}
	f.out = append(f.out, has, byte(it.Layer))
	f.string(it.Object)
	f.string(it.Alt)
	f.int(int64(it.Clip))
	if has&hasPath != 0 {
		f.path(it.Path)
	}
	if s := it.Stroke; s != nil {
		f.stroke(s)
	}
	if it.Fill != nil {
		f.colour(*it.Fill)
	}
	if it.Text != nil {
		f.text(it.Text)
	}
	if it.Image != nil {
		f.image(it.Image)
	}
}

// perMillimetre is how many steps of rounded places there are.
const perMillimetre = 100

// path writes segments by how far each place lies from the one before it.
func (f *folder) path(path []Segment) {
	f.uint(uint64(len(path)))
	var x, y int64
	for i := range path {
		s := &path[i]
		f.out = append(f.out, byte(s.Op))
		for _, p := range s.P[:s.points()] {
			toX, toY := int64(math.Round(p.X*perMillimetre)), int64(math.Round(p.Y*perMillimetre))
			f.int(toX - x)
			f.int(toY - y)
			x, y = toX, toY
		}
	}
}

func (f *folder) stroke(s *Stroke) {
	f.colour(s.Colour)
	f.float(s.Width)
	f.uint(uint64(len(s.Dash)))
	for _, d := range s.Dash {
		f.float(d)
	}
	f.bool(s.Round)
}

func (f *folder) text(t *Text) {
	for _, v := range [...]float64{t.At.X, t.At.Y, t.Size, t.Angle} {
		f.float(v)
	}
	f.string(t.S)
	f.bool(t.Bold)
	f.out = append(f.out, byte(t.Align))
	f.colour(t.Colour)
	if f.bool(t.Halo != nil); t.Halo != nil {
		f.colour(*t.Halo)
	}
}

func (f *folder) image(m *Image) {
	for _, v := range [...]float64{m.Min.X, m.Min.Y, m.Max.X, m.Max.Y} {
		f.float(v)
	}
	f.uint(uint64(m.Width))
	f.uint(uint64(m.Height))
	f.uint(uint64(len(m.RGB)))
	f.out = append(f.out, m.RGB...)
}

// unfolder reads what a folder wrote.
type unfolder struct {
	in      []byte
	strings []string
}

func (u *unfolder) uint() uint64 {
	n, size := binary.Uvarint(u.in)
	u.in = u.in[size:]
	return n
}

func (u *unfolder) int() int64 {
	n, size := binary.Varint(u.in)
	u.in = u.in[size:]
	return n
}

// bytes takes the next n bytes.
func (u *unfolder) bytes(n int) []byte {
	b := u.in[:n:n]
	u.in = u.in[n:]
	return b
}

func (u *unfolder) float() float64 {
	return math.Float64frombits(binary.LittleEndian.Uint64(u.bytes(8)))
}
func (u *unfolder) bool() bool { return u.bytes(1)[0] == 1 }

func (u *unfolder) colour() Colour {
	b := u.bytes(3)
	return Colour{b[0], b[1], b[2]}
}

func (u *unfolder) string() string {
	n := int(u.uint())
	if n == len(u.strings) {
		u.strings = append(u.strings, string(u.bytes(int(u.uint()))))
	}
	return u.strings[n]
}

// item reads a mark.
func (u *unfolder) item() (it Item) {
	head := u.bytes(2)
	has := head[0]
	it.Layer, it.Object, it.Alt, it.Clip = Layer(head[1]), u.string(), u.string(), int(u.int())
	if has&hasPath != 0 {
		it.Path = u.path()
	}
	if has&hasStroke != 0 {
		it.Stroke = u.stroke()
	}
	if has&hasFill != 0 {
		c := u.colour()
		it.Fill = &c
	}
	if has&hasText != 0 {
		it.Text = u.text()
	}
	if has&hasImage != 0 {
		it.Image = u.image()
	}
	return it
}

func (u *unfolder) path() []Segment {
	path := make([]Segment, u.uint())
	var x, y int64
	for i := range path {
		s := &path[i]
		s.Op = Op(u.bytes(1)[0])
		for k := range s.P[:s.points()] {
			x, y = x+u.int(), y+u.int()
			s.P[k] = r2.Vec{X: float64(x) / perMillimetre, Y: float64(y) / perMillimetre}
		}
	}
	return path
}

func (u *unfolder) stroke() *Stroke {
	s := &Stroke{Colour: u.colour(), Width: u.float()}
	for range u.uint() {
		s.Dash = append(s.Dash, u.float())
	}
	s.Round = u.bool()
	return s
}

func (u *unfolder) text() *Text {
	t := &Text{At: r2.Vec{X: u.float(), Y: u.float()}, Size: u.float(), Angle: u.float(), S: u.string(), Bold: u.bool()}
	t.Align = Align(u.bytes(1)[0])
	t.Colour = u.colour()
	if u.bool() {
		c := u.colour()
		t.Halo = &c
	}
	return t
}

func (u *unfolder) image() *Image {
	m := &Image{Min: r2.Vec{X: u.float(), Y: u.float()}, Max: r2.Vec{X: u.float(), Y: u.float()}, Width: int(u.uint()), Height: int(u.uint())}
	m.RGB = u.bytes(int(u.uint()))
	return m
}
