package scene

import (
	"path"
	"sync"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// shelf holds the photometric files of a document, each read once: several lights and set-ups may name
// one.
type shelf struct {
	env     Env
	scene   *source.File
	folders map[*source.File]string // of kit files, below the scene's folder

	mu    sync.Mutex
	files map[shelfKey]shelved
}

// shelfKey is a file as it is read; the same text could be named as either format.
type shelfKey struct {
	name string
	ies  bool
}

// shelved is a file that was read, or why it could not be opened.
type shelved struct {
	measured *kit.Measured
	err      error
}

func newShelf(env Env, scene *source.File) *shelf {
	return &shelf{env: env, scene: scene, folders: map[*source.File]string{scene: "."}, files: map[shelfKey]shelved{}}
}

// measureLights reads the photometric files that lights name as their output.
func (s *shelf) measureLights(lights []Light, c *source.Context) {
	for i := range lights {
		if o := lights[i].Output; o != nil {
			inner := *c
			inner.Path = []string{"lights", lights[i].Name, "output"}
			s.measure(o, &inner)
		}
	}
}

// measure reads the photometric file that an output names, if any. Its path starts at the folder of the file
// that names it.
func (s *shelf) measure(o *kit.Output, c *source.Context) {
	name, read := o.FileName()
	if name == "" || o.Measured != nil {
		return
	}
	err := staysInside(name)
	if err == nil {
		key := shelfKey{path.Join(s.folders[o.FileSpan.File], name), o.IES != ""}
		var m *kit.Measured
		if m, err = s.fetch(key, read); err == nil {
			o.SetMeasured(m, c)
			return
		}
	}
	refuseAt(c, o.FileSpan, err)
}

// fetch reads a file the first time it is asked for.
func (s *shelf) fetch(key shelfKey, read func(*source.File) *kit.Measured) (*kit.Measured, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if got, done := s.files[key]; done {
		return got.measured, got.err
	}
	var got shelved
	text, err := s.env.readFile(key.name, kit.MaxMeasuredBytes)
	if got.err = err; err == nil {
		got.measured = read(&source.File{Name: besides(s.scene.Name, key.name), Text: text})
	}
	s.files[key] = got
	return got.measured, got.err
}
