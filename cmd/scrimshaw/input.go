package main

import (
	"context"
	"errors"
	"fmt"
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

// input is an opened scene with the faults found so far.
type input struct {
	name     string // base name for output files, without extension
	path     string // as it was given; "" for the built-in scene and for standard input
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

// refuseOverwrite refuses outputs that would be written over the scene.
func (in *input) refuseOverwrite(paths []string) error {
	for _, path := range paths {
		if in.path != "" && path != "-" && canonicalPath(path) == canonicalPath(in.path) {
			return fmt.Errorf("-o %s is the scene itself; give the output another name", path)
		}
	}
	return nil
}

// open reads the scene that the arguments name: none is the built-in scene, "-" standard input.
func open(ctx context.Context, std streams, args []string) (*input, error) {
	file, name, folder, err := readScene(ctx, std, args)
	if err != nil {
		return nil, err
	}
	in := &input{name: name, log: &source.Log{}}
	if len(args) > 0 && args[0] != "-" {
		in.path = args[0]
	}
	env := scene.Env{}
	if env.Today, err = sourceDateEpoch(os.Getenv); err != nil {
		return nil, err
	}
	if env.Kit, err = kit.Shipped(); err != nil {
		return nil, err
	}
	if folder != "" {
		in.root, env.Files = filesOf(folder)
	}
	in.document = scene.Open(env, file, in.log)
	return in, nil
}

// filesOf gives the files of a folder and below it; root is nil where it cannot be listed.
func filesOf(folder string) (root *os.Root, files fs.FS) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, closedFolder{withoutPath(err)}
	}
	return root, root.FS()
}

// closedFolder is a folder that may be entered and not listed, out of which no file can be read that a scene names: a
// scene that names none is as good as any.
type closedFolder struct{ err error }

// Open refuses every file.
func (f closedFolder) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: f.err}
}

// readScene returns the scene's text, a name for its outputs and the folder its files live in.
func readScene(ctx context.Context, std streams, args []string) (file *source.File, name, folder string, err error) {
	switch {
	case len(args) == 0:
		text, err := samples.Text(samples.Default)
		return &source.File{Name: samples.Default + ".yaml", Text: text}, samples.Default, "", err
	case args[0] == "-":
		text, err := readBounded(std.in, "standard input")
		return &source.File{Name: "-", Text: text}, "scene", ".", err
	}
	text, err := readNamed(ctx, args[0], "scene")
	if errors.Is(err, fs.ErrNotExist) {
		err = fmt.Errorf("%w; to make a first scene: scrimshaw new %s", err, sceneName(args[0]))
	}
	base := filepath.Base(args[0])
	name = base[:len(base)-len(filepath.Ext(base))]
	return &source.File{Name: filepath.ToSlash(args[0]), Text: text}, name, filepath.Dir(args[0]), err
}

// lastEpoch is the last second that a date can be of: of the year 9999.
const lastEpoch = 253402300799

// sourceDateEpoch is the date of SOURCE_DATE_EPOCH, by which a build can be repeated; zero where it is not
// set. The machine's clock is asked only where a flag says so.
func sourceDateEpoch(getenv func(string) string) (time.Time, error) {
	text := getenv("SOURCE_DATE_EPOCH")
	if text == "" {
		return time.Time{}, nil
	}
	seconds, err := strconv.ParseInt(text, 10, 64)
	if err != nil || seconds < 0 || seconds > lastEpoch {
		return time.Time{}, fmt.Errorf("SOURCE_DATE_EPOCH=%s: write the seconds since 1970, from 0 to %d, which ends the year 9999", text, int64(lastEpoch))
	}
	return time.Unix(seconds, 0).UTC(), nil
}
