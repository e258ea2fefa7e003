package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
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
	f, err := os.Open(args[0])
	if err != nil {
		return nil, "", "", plainOpenError(err, args[0])
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, "", "", fmt.Errorf("%s is a folder; name the scene file in it", args[0])
	}
	text, err := readBounded(f, args[0])
	base := filepath.Base(args[0])
	name = base[:len(base)-len(filepath.Ext(base))]
	return &source.File{Name: filepath.ToSlash(args[0]), Text: text}, name, filepath.Dir(args[0]), err
}

func readBounded(r io.Reader, name string) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return text, nil
}

// plainOpenError says what could not be read, with the way to a first scene.
func plainOpenError(err error, path string) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no file %s; to make a first scene: scrimshaw new > %s", path, path)
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
