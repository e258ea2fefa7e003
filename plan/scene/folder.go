package scene

import (
	"errors"
	"io"
	"io/fs"
	"path"
	"strings"
	"time"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// Env is all that reading a scene may see of the outside: files below the scene's folder,
// the shipped catalogue and today's date.
type Env struct {
	Files fs.FS          // nil: none
	Kit   *kit.Catalogue // the shipped catalogue; a scene's own kit files are laid over it
	Today time.Time      // zero: no date is printed
}

// filePath reads the path of a file below the scene's folder.
func filePath(what, like string) source.Reader[string] {
	return checked(text(what, like), checkInsideFolder)
}

// checkInsideFolder refuses a path that is absolute, leads out of the scene's folder or is not portable.
func checkInsideFolder(name string) error {
	clean := path.Clean(name)
	switch {
	case strings.Contains(name, `\`):
		return source.Errorf(CodeBadFile, "write "+strings.ReplaceAll(name, `\`, "/"), "%q has a backslash", name)
	case path.IsAbs(name), !fs.ValidPath(clean), clean == ".":
		return source.Errorf(CodeBadFile, "put the file beside the scene or below it", "%q leaves the scene's folder", name)
	}
	return nil
}

// readFile reads a file below the scene's folder: most bytes, and one more where it is larger.
func (e Env) readFile(name string, most int64) ([]byte, error) {
	if e.Files == nil {
		return nil, source.Errorf(CodeBadFile, "save the scene in a folder first", "%q cannot be read: this scene has no folder", name)
	}
	// A pipe would be waited for, so a file is looked at before it is opened.
	info, err := fs.Stat(e.Files, path.Clean(name))
	if err != nil {
		return nil, unreadable(name, err)
	}
	if !info.Mode().IsRegular() {
		return nil, source.Errorf(CodeBadFile, "name an ordinary file", "%q is a folder, a pipe or a device", name)
	}
	f, err := e.Files.Open(path.Clean(name))
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, unreadable(name, err)
	}
	return text, nil
}

// unreadable says why a file could not be read, without the path of this machine.
func unreadable(name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return source.Errorf(CodeBadFile, "write the path from the scene's folder", "there is no file %q", name)
	}
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return source.Errorf(CodeBadFile, "check that it is an ordinary file that you may read", "%q cannot be read: %s", name, err)
}

// displayName names a file as the user would, who named the scene.
func displayName(scene, name string) string {
	if scene == "-" {
		return path.Clean(name)
	}
	return path.Join(path.Dir(scene), name)
}
