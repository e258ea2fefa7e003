package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// output is one file to be written.
type output struct {
	path string // "-" is standard output
	data []byte
}

// writeAll writes every output, whole or not at all: each goes to a temporary file beside its
// place first, and the renames come last, when nothing can be half written any more.
func writeAll(std streams, outputs []output) (err error) {
	var staged []stagedFile
	defer func() {
		for _, s := range staged {
			os.Remove(s.temporary)
		}
	}()
	for _, o := range outputs {
		if o.path == "-" {
			continue
		}
		s, err := stage(o)
		if err != nil {
			return err
		}
		staged = append(staged, s)
	}
	for _, s := range staged {
		if err := os.Rename(s.temporary, s.path); err != nil {
			return plainPathError(err, s.path)
		}
	}
	for _, o := range outputs {
		if o.path == "-" {
			if _, err := std.out.Write(o.data); err != nil {
				return fmt.Errorf("cannot write to standard output: %w", err)
			}
		}
	}
	return nil
}

type stagedFile struct{ temporary, path string }

// stage writes o beside its place and returns the temporary name.
func stage(o output) (stagedFile, error) {
	f, err := os.CreateTemp(filepath.Dir(o.path), ".scrimshaw-*")
	if err != nil {
		return stagedFile{}, plainPathError(err, o.path)
	}
	s := stagedFile{temporary: f.Name(), path: o.path}
	_, err = f.Write(o.data)
	err = errors.Join(err, f.Chmod(0o644), f.Close())
	if err != nil {
		os.Remove(s.temporary)
		return stagedFile{}, plainPathError(err, o.path)
	}
	return s, nil
}

// plainPathError says what could not be written without naming the temporary file.
func plainPathError(err error, path string) error {
	var p *os.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("cannot write %s: %w", path, p.Err)
	}
	var l *os.LinkError
	if errors.As(err, &l) {
		return fmt.Errorf("cannot write %s: %w", path, l.Err)
	}
	return fmt.Errorf("cannot write %s: %w", path, err)
}
