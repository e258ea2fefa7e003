package png

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"image"
	"io"
	"math"
)

// The standard library's encoder tries five filters on every row, which drawings do not gain from,
// and cannot say how large a pixel is. This one follows the PNG specification (ISO/IEC 15948:2004;
// chunks in clause 11): rows without filter, a palette where it suffices, the resolution in pHYs.

// compressionLevel is that of the deflate stream: higher ones take twice the time for a twentieth less.
const compressionLevel = 4

// The colour types of IHDR.
const (
	trueColour = 2
	indexed    = 3
)

// Encode writes a picture that is opaque, with its resolution in pixels to the millimetre.
func Encode(w io.Writer, img *image.RGBA, perMM float64) error {
	palette := newPalette(img)
	kind, pixel := byte(trueColour), trueRow
	if palette != nil {
		kind, pixel = indexed, palette.row
	}
	data, err := deflated(img, pixel)
	if err != nil {
		return err
	}
	width, height := uint32(img.Rect.Dx()), uint32(img.Rect.Dy())
	density := uint32(math.Round(perMM * 1000)) // to the metre
	out := []byte("\x89PNG\r\n\x1a\n")
	header := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, width), height)
	out = chunk(out, "IHDR", append(header, 8, kind, 0, 0, 0))
	out = chunk(out, "sRGB", []byte{0})
	if palette != nil {
		out = chunk(out, "PLTE", palette.colours)
	}
	size := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, density), density)
	out = chunk(out, "pHYs", append(size, 1)) // the unit is the metre
	out = chunk(out, "IDAT", data)
	out = chunk(out, "IEND", nil)
	_, err = w.Write(out)
	return err
}

// chunk appends a chunk: its length, its name, its data and the checksum of the last two.
func chunk(out []byte, name string, data []byte) []byte {
	out = binary.BigEndian.AppendUint32(out, uint32(len(data)))
	start := len(out)
	out = append(append(out, name...), data...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[start:]))
}

// deflated returns the rows of a picture, each behind the number of its filter, compressed.
func deflated(img *image.RGBA, pixels func(row, pix []byte) []byte) ([]byte, error) {
	var data bytes.Buffer
	z, err := zlib.NewWriterLevel(&data, compressionLevel)
	if err != nil {
		return nil, err
	}
	var row []byte
	for y := range img.Rect.Dy() {
		row = pixels(append(row[:0], 0), img.Pix[y*img.Stride:][:4*img.Rect.Dx()])
		if _, err := z.Write(row); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return data.Bytes(), nil
}

// trueRow appends the colours of a row.
func trueRow(row, pix []byte) []byte {
	for ; len(pix) >= 4; pix = pix[4:] {
		row = append(row, pix[0], pix[1], pix[2])
	}
	return row
}

// palette numbers the colours of a picture in the order they come.
type palette struct {
	colours []byte // three bytes each
	number  map[uint32]byte
}

// newPalette returns nil where there are more colours than 256.
func newPalette(img *image.RGBA) *palette {
	p := &palette{number: map[uint32]byte{}}
	last := uint32(0) // no pixel is that: all are opaque
	for pix := img.Pix; len(pix) >= 4; pix = pix[4:] {
		colour := binary.LittleEndian.Uint32(pix)
		if colour == last {
			continue
		}
		last = colour
		if _, ok := p.number[colour]; ok {
			continue
		}
		if len(p.number) == 256 {
			return nil
		}
		p.number[colour] = byte(len(p.number))
		p.colours = append(p.colours, pix[:3]...)
	}
	return p
}

// row appends the numbers of a row's colours.
func (p *palette) row(row, pix []byte) []byte {
	last, number := uint32(0), byte(0)
	for ; len(pix) >= 4; pix = pix[4:] {
		if colour := binary.LittleEndian.Uint32(pix); colour != last {
			last, number = colour, p.number[colour]
		}
		row = append(row, number)
	}
	return row
}
