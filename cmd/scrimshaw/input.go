package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"syscall"
	"time"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// largest is how many bytes of a scene are read. The parser's own limit is lower and says so
// with a place; this one keeps an endless stream from filling the memory.
const largest = 64 << 20

// input is an opened scene with the faults found so far.
type input struct {
	name     string // base name for output files, without extension
	document *scene.Document
	log      *source.Log
	root     *os.Root // of the scene's folder; nil for the built-in scene
}

// Close releases the scene's folder.
func (in *input) Close() {
	if in.root != nil {
		in.root.Close()
	}
}

// open reads the scene that the arguments name: none is the built-in scene, "-" standard input.
func open(std streams, args []string) (*input, error) {
	file, name, folder, err := readScene(std, args)
	if err != nil {
		return nil, err
	}
	in := &input{name: name, log: &source.Log{}}
	env := scene.Env{Today: epoch(os.Getenv)}
	if env.Kit, err = kit.Shipped(); err != nil {
		return nil, err
	}
	if folder != "" {
		if in.root, err = os.OpenRoot(folder); err != nil {
			return nil, fmt.Errorf("cannot open the folder of the scene: %w", err)
		}
		env.Files = in.root.FS()
	}
	in.document = scene.Open(env, file, in.log)
	return in, nil
}

// readScene returns the scene's text, a name for its outputs and the folder its files live in.
func readScene(std streams, args []string) (file *source.File, name, folder string, err error) {
	switch {
	case len(args) == 0:
		text, err := samples.Text(samples.Default)
		return &source.File{Name: samples.Default + ".yaml", Text: text}, samples.Default, "", err
	case args[0] == "-":
		text, err := readBounded(std.in, "standard input")
		return &source.File{Name: "-", Text: text}, "scene", ".", err
	}
	text, err := readFile(args[0])
	base := filepath.Base(args[0])
	name = base[:len(base)-len(filepath.Ext(base))]
	return &source.File{Name: filepath.ToSlash(args[0]), Text: text}, name, filepath.Dir(args[0]), err
}

// readFile returns the text of a scene's file, which may be a pipe that another program writes to.
func readFile(path string) ([]byte, error) {
	if path == "" {
		return nil, errors.New("the name of the scene is empty")
	}
	mode := os.O_RDONLY
	if info, err := os.Stat(path); err == nil && info.Mode()&fs.ModeNamedPipe != 0 {
		mode |= syscall.O_NONBLOCK // or opening it would wait for a writer that may never come
	}
	f, err := os.OpenFile(path, mode, 0)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%w; to make a first scene: scrimshaw new %s", plainOpenError(err, path), path)
	case err != nil:
		return nil, plainOpenError(err, path)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s is a folder; name the scene file in it", path)
	}
	if mode != os.O_RDONLY {
		return readPipe(f, path)
	}
	return readBounded(f, path)
}

// How long a pipe may stay without a writer, and how often it is looked at.
const (
	pipePatience = 2 * time.Second
	pipeGlance   = 20 * time.Millisecond
)

// readPipe reads a pipe to its end. One that nothing has written to yet reads as ended too, so it
// is given a while.
func readPipe(f *os.File, path string) ([]byte, error) {
	for waited := time.Duration(0); waited < pipePatience; waited += pipeGlance {
		if text, err := readBounded(f, path); err != nil || len(text) > 0 {
			return text, err
		}
		time.Sleep(pipeGlance)
	}
	return nil, fmt.Errorf("%s is a pipe that nothing writes to", path)
}

// interruptible is a reader that stops waiting when its context ends: a person who forgot the
// scene behind a dash sits before a terminal that waits.
type interruptible struct {
	ctx context.Context
	r   io.Reader
}

func (i interruptible) Read(p []byte) (int, error) {
	type result struct {
		data []byte
		err  error
	}
	// A buffer of its own: the read may end when p has long been used for something else.
	done, buffer := make(chan result, 1), make([]byte, len(p))
	go func() {
		n, err := i.r.Read(buffer)
		done <- result{buffer[:n], err}
	}()
	select {
	case <-i.ctx.Done():
		return 0, errors.New("interrupted")
	case r := <-done:
		return copy(p, r.data), r.err
	}
}

func readBounded(r io.Reader, name string) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return text, nil
}

// plainOpenError says what could not be read.
func plainOpenError(err error, path string) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no file %s", path)
	}
	var p *os.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return fmt.Errorf("cannot read %s: %w", path, err)
}

// epoch is the date of SOURCE_DATE_EPOCH, by which a build can be repeated; zero where it is not
// set. The machine's clock is asked only where a flag says so.
func epoch(getenv func(string) string) time.Time {
	if seconds, err := strconv.ParseInt(getenv("SOURCE_DATE_EPOCH"), 10, 64); err == nil {
		return time.Unix(seconds, 0).UTC()
	}
	return time.Time{}
}
