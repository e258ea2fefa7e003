// Package files reads and writes photometric files: IES LM-63 in its editions of 1986, 1991, 1995,
// 2002 and 2019, and EULUMDAT. What a file says is kept in its own terms (LM63, LDT), so that it can be
// written again; Source gives the light that it describes.
//
// Faults are diagnostics at their line, with what was expected and a likely cause. What is not
// right but known from files in use is read, with a warning for each.
package files

import (
	"path"
	"strings"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
)

// Data is a photometric file that was read.
type Data interface {
	// Source gives the light: its flux, lm, its distribution, and the luminous opening. It refuses
	// values that are none of a file's, which reading has refused already.
	Source() (photometry.Source, error)
	// Nodes gives the intensities, cd, as they were measured, with the symmetry unfolded.
	Nodes() (photometry.Nodes, error)
	// Rated gives the flux of the lamps inside, lm; 0 where the file has absolute photometry, which
	// knows none.
	Rated() float64
	// Power gives the electrical power, W; 0 where it is not stated.
	Power() float64
	// Format names the format and its edition.
	Format() string
	// Name gives what the file calls the luminaire, in one line; "" for nothing.
	Name() string
	// Bytes gives the file as it is written.
	Bytes() ([]byte, error)
}

// MaxBytes is the most that is read of a file: a quarter of a degree each way, all round.
const MaxBytes = 16 << 20

// Read reads a file as what its name says it is (.ies, .ldt), or else as what it looks like.
func Read(f *source.File, log *source.Log) (Data, bool) {
	switch strings.ToLower(path.Ext(f.Name)) {
	case ".ies":
		return readIES(f, log)
	case ".ldt":
		return readLDT(f, log)
	}
	if looksLikeIES(f.Text) {
		return readIES(f, log)
	}
	return readLDT(f, log)
}

func readIES(f *source.File, log *source.Log) (Data, bool) {
	if d, ok := ReadLM63(f, log); ok {
		return d, true
	}
	return nil, false
}

func readLDT(f *source.File, log *source.Log) (Data, bool) {
	if d, ok := ReadLDT(f, log); ok {
		return d, true
	}
	return nil, false
}
