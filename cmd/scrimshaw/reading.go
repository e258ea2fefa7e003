package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"syscall"
	"time"
)

// largest is how many bytes of a file are read. The parsers' own limits are lower and say so
// with a place; this one keeps an endless stream from filling the memory.
const largest = 64 << 20

// readNamed returns the bytes of a file, which may be a pipe that another program writes to. what is the kind of
// file it should be, in words.
func readNamed(ctx context.Context, path, what string) ([]byte, error) {
	if path == "" {
		return nil, fmt.Errorf("the name of the %s is empty", what)
	}
	mode := os.O_RDONLY
	if info, err := os.Stat(path); err == nil && info.Mode()&fs.ModeNamedPipe != 0 {
		mode |= syscall.O_NONBLOCK // or opening it would wait for a writer that may never come
	}
	f, err := os.OpenFile(path, mode, 0)
	if err != nil {
		return nil, plainOpenError(err, path)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s is a folder; name the %s file in it", path, what)
	}
	if mode != os.O_RDONLY {
		return readPipe(ctx, f, path)
	}
	return readBounded(interruptible{ctx, f}, path)
}

// How long a pipe may stay without a writer, and how often it is looked at.
const (
	pipeTimeout      = 2 * time.Second
	pipePollInterval = 20 * time.Millisecond
)

// readPipe reads a pipe to its end. One that nothing has written to yet reads as ended too, so it
// is given a while.
func readPipe(ctx context.Context, f *os.File, path string) ([]byte, error) {
	for waited := time.Duration(0); waited < pipeTimeout; waited += pipePollInterval {
		if text, err := readBounded(interruptible{ctx, f}, path); err != nil || len(text) > 0 {
			return text, err
		}
		time.Sleep(pipePollInterval)
	}
	return nil, fmt.Errorf("%s is a pipe that nothing writes to", path)
}

func readBounded(r io.Reader, name string) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, withoutPath(err))
	}
	if len(text) > largest {
		return nil, fmt.Errorf("%s is larger than %d MB; check that it is the file you mean", name, largest>>20)
	}
	return text, nil
}

// plainOpenError says what could not be read.
func plainOpenError(err error, path string) error {
	if errors.Is(err, fs.ErrNotExist) {
		return missingFile(path)
	}
	return fmt.Errorf("cannot read %s: %w", path, withoutPath(err))
}

// missingFile is the name of a file that is not there.
type missingFile string

func (n missingFile) Error() string { return "there is no file " + string(n) }

func (n missingFile) Is(target error) bool { return target == fs.ErrNotExist }
