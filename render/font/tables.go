package font

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// The structure of a font file and of the tables read here is that of the OpenType specification,
// ISO/IEC 14496-22: the table directory, OS/2 (fsType) and cmap (encoding records).

// requiredTables are the tables that every TrueType font has; optional are those that an embedded font
// keeps where they exist. Both in the order of the alphabet, as the directory asks for.
var (
	requiredTables = []string{"cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "post"}
	embedded       = []string{"OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"}
)

// tables are the tables of a font file by their tag.
type tables map[string][]byte

// readTables reads the directory and checks that the font can be embedded.
func readTables(file []byte) (tables, error) {
	if err := isTrueType(file); err != nil {
		return nil, err
	}
	t := tables{}
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		at := 12 + 16*i
		if at+16 > len(file) {
			return nil, errors.New("the table directory is cut short")
		}
		tag := string(file[at : at+4])
		start, size := uint64(binary.BigEndian.Uint32(file[at+8:])), uint64(binary.BigEndian.Uint32(file[at+12:]))
		if start+size > uint64(len(file)) {
			return nil, fmt.Errorf("table %q is cut short", tag)
		}
		t[tag] = file[start : start+size : start+size]
	}
	return t, t.check()
}

// isTrueType refuses files that are not a TrueType font, by their first bytes.
func isTrueType(file []byte) error {
	if len(file) < 12 {
		return errors.New("not a font: too short")
	}
	switch kind := binary.BigEndian.Uint32(file); kind {
	case 0x00010000, 0x74727565: // the number, or "true"
		return nil
	case 0x4F54544F: // "OTTO"
		return errors.New("an OpenType font with PostScript outlines: only TrueType outlines can be embedded")
	case 0x74746366: // "ttcf"
		return errors.New("a font collection: take one font out of it")
	default:
		return fmt.Errorf("not a TrueType font: it starts with %#08x", kind)
	}
}

// check says why the font cannot be embedded.
func (t tables) check() error {
	for _, tag := range requiredTables {
		if len(t[tag]) == 0 {
			return fmt.Errorf("table %q is missing", tag)
		}
	}
	if len(t["post"]) < 32 {
		return errors.New(`table "post" is cut short`)
	}
	if os2 := t["OS/2"]; len(os2) >= 10 {
		const restricted, noSubset, bitmapOnly = 0x0002, 0x0100, 0x0200
		if f := binary.BigEndian.Uint16(os2[8:]); f&0x000F == restricted || f&(noSubset|bitmapOnly) != 0 {
			return errors.New("its maker does not allow embedding (fsType)")
		}
	}
	if t["OS/2"] != nil && len(t["OS/2"]) < 78 {
		return errors.New(`table "OS/2" is cut short`)
	}
	if !t.unicode() {
		return errors.New("it has no Unicode character map (cmap format 4)")
	}
	return nil
}

// unicode says whether there is a map of the basic plane in the form that writers read.
func (t tables) unicode() bool {
	cmap := t["cmap"]
	if len(cmap) < 4 {
		return false
	}
	for i := range int(binary.BigEndian.Uint16(cmap[2:])) {
		at := 4 + 8*i
		if at+8 > len(cmap) {
			return false
		}
		platform, encoding := binary.BigEndian.Uint16(cmap[at:]), binary.BigEndian.Uint16(cmap[at+2:])
		start := uint64(binary.BigEndian.Uint32(cmap[at+4:]))
		if (platform == 0 || platform == 3 && encoding == 1) && start+2 <= uint64(len(cmap)) &&
			binary.BigEndian.Uint16(cmap[start:]) == 4 {
			return true
		}
	}
	return false
}

// embeddable returns a font file of the tables that an embedded font needs. The table of names is
// there but empty.
func (t tables) embeddable() []byte {
	var tags []string
	for _, tag := range embedded {
		if tag == "name" || len(t[tag]) > 0 {
			tags = append(tags, tag)
		}
	}
	out := make([]byte, 12+16*len(tags), len(t["glyf"])+1<<16)
	binary.BigEndian.PutUint32(out, 0x00010000)
	binary.BigEndian.PutUint16(out[4:], uint16(len(tags)))
	for i, tag := range tags {
		data := t[tag]
		if tag == "name" {
			data = []byte{0, 0, 0, 0, 0, 6} // format 0, no records
		}
		entry := out[12+16*i:]
		copy(entry, tag)
		binary.BigEndian.PutUint32(entry[8:], uint32(len(out)))
		binary.BigEndian.PutUint32(entry[12:], uint32(len(data)))
		out = append(out, data...)
		out = append(out, make([]byte, -len(out)&3)...)
	}
	return out
}
