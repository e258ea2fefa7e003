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
	env := scene.Env{Today: sourceDateEpoch(os.Getenv)}
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

// sourceDateEpoch is the date of SOURCE_DATE_EPOCH, by which a build can be repeated; zero where it is not
// set. The machine's clock is asked only where a flag says so.
func sourceDateEpoch(getenv func(string) string) time.Time {
	if seconds, err := strconv.ParseInt(getenv("SOURCE_DATE_EPOCH"), 10, 64); err == nil {
		return time.Unix(seconds, 0).UTC()
	}
	return time.Time{}
}
