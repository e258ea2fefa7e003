package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// output is one file to be written.
type output struct {
	path  string // "-" is standard output
	asked string // the -o that it was asked by
	page  string // the title of the page, where a form holds a single one
	data  []byte
}

// writeAndReport writes the outputs and says where they are. Files come first: what has gone down a pipe cannot be
// taken back where a file turns out not to be writable.
func writeAndReport(ctx context.Context, std streams, outputs []output) error {
	if err := sameFile(outputs); err != nil {
		return err
	}
	if err := writeFiles(ctx, outputs); err != nil {
		return err
	}
	for _, o := range outputs {
		if o.path != "-" {
			fmt.Fprintf(std.err, "wrote %s\n", o.path)
		}
	}
	return writeStream(std.out, outputs)
}

func writeStream(out io.Writer, outputs []output) error {
	for _, o := range outputs {
		if o.path != "-" {
			continue
		}
		if _, err := out.Write(o.data); err != nil {
			return err
		}
	}
	return nil
}

// writeFiles writes every file, whole or not at all: each goes to a temporary file beside its
// place first, and the renames come last, when nothing can be half written any more and nothing stops them.
func writeFiles(ctx context.Context, outputs []output) error {
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
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	return putInPlace(staged)
}

// putInPlace renames every file that was written to the name that was asked for.
func putInPlace(staged []stagedFile) error {
	for _, s := range staged {
		if err := os.Rename(s.temporary, s.path); err != nil {
			return plainPathError(err, s.path)
		}
	}
	return nil
}

type stagedFile struct{ temporary, path string }

// stage writes o beside its place and returns the temporary name.
func stage(o output) (stagedFile, error) {
	path, mode, err := destination(o.path)
	if err != nil {
		return stagedFile{}, err
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".scrimshaw-*")
	if err != nil {
		return stagedFile{}, plainPathError(err, o.path)
	}
	s := stagedFile{temporary: f.Name(), path: path}
	_, err = f.Write(o.data)
	err = errors.Join(err, f.Chmod(mode), f.Close())
	if err != nil {
		os.Remove(s.temporary)
		return stagedFile{}, plainPathError(err, o.path)
	}
	return s, nil
}

// destination returns where an output goes, and its permissions. A file that is there keeps its own; a
// link is followed, for a rename would put the file in its place. What is no ordinary file, or
// protected, is left alone.
func destination(path string) (to string, mode fs.FileMode, err error) {
	info, err := os.Stat(path)
	switch {
	case err != nil: // not there, or told when it is written
		return path, 0o644, nil
	case info.IsDir():
		return "", 0, fmt.Errorf("cannot write %s: it is a folder", path)
	case !info.Mode().IsRegular():
		return "", 0, fmt.Errorf("cannot write %s: it is not an ordinary file; write to standard output with -o -", path)
	case info.Mode().Perm()&0o222 == 0:
		return "", 0, fmt.Errorf("cannot write %s: it exists already and is write-protected; choose another name", path)
	}
	if to, err = filepath.EvalSymlinks(path); err != nil {
		return "", 0, plainPathError(err, path)
	}
	return to, info.Mode().Perm(), nil
}

// canonicalPath is the one name of what a path leads to: from the root, with all links followed. Of a file that is not
// there yet the links of its folder are.
func canonicalPath(path string) string {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		path = to
	} else if folder, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		path = filepath.Join(folder, filepath.Base(path))
	}
	if full, err := filepath.Abs(path); err == nil {
		return full
	}
	return filepath.Clean(path)
}

// plainPathError says what could not be written without naming the temporary file.
func plainPathError(err error, path string) error {
	folder := filepath.Dir(path)
	info, missing := os.Stat(folder)
	switch {
	case errors.Is(missing, fs.ErrNotExist):
		return fmt.Errorf("cannot write %s: there is no folder %s; make it first", path, folder)
	case missing == nil && !info.IsDir():
		return fmt.Errorf("cannot write %s: %s is a file, not a folder; name a folder", path, folder)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("cannot write %s: you may not add files to the folder %s; name another folder", path, folder)
	}
	return fmt.Errorf("cannot write %s: %w", path, withoutPath(err))
}

// sameFile is the fault of two files of one run that would have one name, on a disk that may not tell
// capitals from small letters.
func sameFile(files []output) error {
	first := map[string]output{}
	for _, f := range files {
		if f.path == "-" {
			continue
		}
		key := strings.ToLower(canonicalPath(f.path))
		if before, twice := first[key]; twice {
			return fmt.Errorf("%s and %s would both be written to %s: give one of them another name, or write a .pdf, which holds all sheets",
				before.describe(), f.describe(), f.path)
		}
		first[key] = f
	}
	return nil
}

// describe says in words what an output is.
func (o *output) describe() string {
	if o.page == "" {
		return "-o " + o.asked
	}
	return fmt.Sprintf("%q of -o %s", o.page, o.asked)
}
