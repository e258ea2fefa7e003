package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// staging is the one list of files that a run has written, whole and down to the disk, beside the places where they
// belong. They are renamed together when nothing can be half written any more, and nothing stops that. Until
// then each is locked, so that the next run can tell what a run has left that was killed: see sweep.
type staging struct {
	mu     sync.Mutex
	files  []*stagedFile
	closed bool // no more files are taken
	done   bool // all are in place
}

type stagedFile struct {
	path string // where it belongs
	file *os.File
}

// stagedPattern is what a file is called until it is in place.
const stagedPattern = ".scrimshaw-*"

var errStopped = errors.New(stoppedMessage)

// add writes an output beside its place.
func (s *staging) add(o output) error {
	path, mode, err := destination(o.path)
	if err != nil {
		return err
	}
	f, err := s.create(path)
	if err != nil {
		return plainPathError(err, o.path)
	}
	_, err = f.Write(o.data)
	if err = errors.Join(err, f.Chmod(mode), f.Sync()); err != nil {
		return plainPathError(err, o.path)
	}
	return nil
}

// create makes the file for an output, and puts it on the list before anything can go wrong.
func (s *staging) create(path string) (*os.File, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return nil, errStopped
	}
	folder := filepath.Dir(path)
	sweep(folder)
	f, err := os.CreateTemp(folder, stagedPattern)
	if err != nil {
		return nil, err
	}
	lock(f)
	s.files = append(s.files, &stagedFile{path, f})
	return f, nil
}

// putInPlace renames every file to the name that was asked for.
func (s *staging) putInPlace() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return errStopped
	}
	folders := map[string]bool{}
	for len(s.files) > 0 {
		f := s.files[0]
		if err := os.Rename(f.file.Name(), f.path); err != nil {
			s.drop()
			return plainPathError(err, f.path)
		}
		f.file.Close()
		s.files, folders[filepath.Dir(f.path)] = s.files[1:], true
	}
	for folder := range folders {
		syncFolder(folder)
	}
	s.done = true
	return nil
}

// close takes no more files and takes back those that are not in place. It returns whether all were in place already.
func (s *staging) close() (done bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = true
	s.drop()
	return s.done
}

// drop takes back what is not in place.
func (s *staging) drop() {
	for _, f := range s.files {
		f.file.Close()
		os.Remove(f.file.Name())
	}
	s.files = nil
}

// syncFolder brings the new names in a folder down to the disk, where the system can do that.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		d.Sync()
		d.Close()
	}
}

// settled is how old a file is at least that a run has left: a new one may not be locked yet.
const settled = 2 * time.Second

// literal is a name as a pattern that only it fits.
func literal(name string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "?", `\?`, "[", `\[`).Replace(name)
}

// sweep removes what a run has left in a folder that was killed: its files that are not in place, which nobody
// holds locked.
func sweep(folder string) {
	left, _ := filepath.Glob(filepath.Join(literal(folder), stagedPattern))
	for _, name := range left {
		info, err := os.Lstat(name)
		if err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > settled && abandoned(name) {
			os.Remove(name)
		}
	}
}
