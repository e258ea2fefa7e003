package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scrimshaw/plan/source"
)

// output is one file to be written.
type output struct {
	path  string // "-" is standard output
	asked string // the -o that it was asked by
	page  string // the title of the page, where a form holds a single one
	data  []byte
}

// writer puts the outputs of a run where they belong. Files are staged as soon as they are made, and nothing keeps
// what is in them; they go to their places together when all are made.
type writer struct {
	std     streams
	names   []string          // of files, as they were given
	first   map[string]output // by the one name of its file
	streams []output          // of standard output
}

// write makes and writes outputs: produce hands each to the function it gets.
func write(ctx context.Context, std streams, produce func(put func(output) error) error) (names []string, err error) {
	w := &writer{std: std, first: map[string]output{}}
	err = produce(func(o output) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		return w.put(o)
	})
	if err == nil {
		err = ctx.Err()
	}
	if err != nil {
		std.staged.close()
		return nil, err
	}
	return w.names, w.finish()
}

// put takes the next output.
func (w *writer) put(o output) error {
	if o.path == "-" {
		w.streams = append(w.streams, o)
		return nil
	}
	if err := w.refuseTwice(o); err != nil {
		return err
	}
	w.names = append(w.names, o.path)
	return w.std.staged.add(o)
}

// refuseTwice is the fault of two files of one run that would have one name, on a disk that may not tell
// capitals from small letters.
func (w *writer) refuseTwice(o output) error {
	key := strings.ToLower(canonicalPath(o.path))
	if before, twice := w.first[key]; twice {
		return fmt.Errorf("%s and %s would both be written to %s: give one of them another name, or write a .pdf, which holds all sheets",
			before.describe(), o.describe(), o.path)
	}
	w.first[key] = output{path: o.path, asked: o.asked, page: o.page}
	return nil
}

// finish puts the files in place, and then writes to standard output: what has gone down a pipe cannot be
// taken back where a file turns out not to be writable.
func (w *writer) finish() error {
	if err := w.std.staged.putInPlace(); err != nil {
		return err
	}
	for _, o := range w.streams {
		if _, err := w.std.out.Write(o.data); err != nil {
			return err
		}
	}
	return nil
}

// writeAndReport writes outputs and says where they are.
func writeAndReport(ctx context.Context, std streams, produce func(put func(output) error) error) error {
	names, err := write(ctx, std, produce)
	for _, name := range names {
		fmt.Fprintf(std.err, "wrote %s\n", source.Printable(name))
	}
	return err
}

// only makes one output.
func only(o output) func(put func(output) error) error {
	return func(put func(output) error) error { return put(o) }
}

// destination returns where an output goes, and its permissions. A file that is there keeps its own; a
// link is followed, for a rename would put the file in its place. What is no ordinary file, or
// protected, is left alone.
func destination(path string) (to string, mode fs.FileMode, err error) {
	info, err := os.Stat(path)
	switch {
	case err != nil: // not there, or told when it is written
		return throughLinks(path), 0o644, nil
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

// mostLinks is how many links a name is followed through.
const mostLinks = 16

// throughLinks is where a file belongs whose name may be a link to a file that is not there yet.
func throughLinks(path string) string {
	for range mostLinks {
		to, err := os.Readlink(path)
		if err != nil {
			return path
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return path
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

// describe says in words what an output is.
func (o *output) describe() string {
	if o.page == "" {
		return "-o " + o.asked
	}
	return fmt.Sprintf("%q of -o %s", o.page, o.asked)
}
