package kit

import (
	"path"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

// Measured is a photometric file that was read.
type Measured struct {
	File        *source.File
	Source      photometry.Source // nothing where the file could not be read
	Watts       float64           // input power; 0 where it is not stated
	Label       string            // for tags: the file's own name, "lamp.ies"
	Tilt        *Tilt             // nil where its light is the same at any tilt, as far as the file says
	Diagnostics []source.Diagnostic
}

// MaxMeasuredBytes is the most that is read of a photometric file.
const MaxMeasuredBytes = files.MaxBytes

// ReadIES reads a photometric file of IES LM-63.
func ReadIES(f *source.File) *Measured {
	return measured(f, func(log *source.Log) (files.Data, bool) { d, ok := files.ReadLM63(f, log); return d, ok })
}

// ReadLDT reads a photometric file of EULUMDAT.
func ReadLDT(f *source.File) *Measured {
	return measured(f, func(log *source.Log) (files.Data, bool) { d, ok := files.ReadLDT(f, log); return d, ok })
}

func measured(f *source.File, read func(*source.Log) (files.Data, bool)) *Measured {
	log := &source.Log{}
	m := &Measured{File: f, Label: path.Base(f.Name)}
	if d, ok := read(log); ok {
		s, err := d.Source() // which reading has tried
		if err == nil {
			m.Source, m.Watts, m.Tilt = s, d.Power(), tiltOf(d)
		}
	}
	m.Diagnostics = log.All()
	return m
}
