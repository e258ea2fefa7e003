package scene

import (
	"path"
	"sync"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// photometricFiles holds the photometric files of a document, each read once: several lights and set-ups may name
// one.
type photometricFiles struct {
	env     Env
	scene   *source.File
	folders map[*source.File]string // of kit files, below the scene's folder

	mu    sync.Mutex
	files map[photometricKey]openedFile
}

// photometricKey is a file as it is read; the same text could be named as either format.
type photometricKey struct {
	name string
	ies  bool
}

// openedFile is a file that was read, or why it could not be opened.
type openedFile struct {
	measured *kit.Measured
	err      error
}

func newPhotometricFiles(env Env, scene *source.File) *photometricFiles {
	return &photometricFiles{env: env, scene: scene, folders: map[*source.File]string{scene: "."}, files: map[photometricKey]openedFile{}}
}

// measureLights reads the photometric files that lights name as their output.
func (s *photometricFiles) measureLights(lights []Light, c *source.Context) {
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
func (s *photometricFiles) measure(o *kit.Output, c *source.Context) {
	name, read := o.FileName()
	if name == "" || o.Measured != nil {
		return
	}
	err := checkInsideFolder(name)
	if err == nil {
		key := photometricKey{path.Join(s.folders[o.FileSpan.File], name), o.IES != ""}
		var m *kit.Measured
		if m, err = s.fetch(key, read); err == nil {
			o.SetMeasured(m, c)
			return
		}
	}
	c.Refuse(o.FileSpan, err)
}

// fetch reads a file the first time it is asked for.
func (s *photometricFiles) fetch(key photometricKey, read func(*source.File) *kit.Measured) (*kit.Measured, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if got, done := s.files[key]; done {
		return got.measured, got.err
	}
	var got openedFile
	text, err := s.env.readFile(key.name, kit.MaxMeasuredBytes)
	if got.err = err; err == nil {
		got.measured = read(&source.File{Name: displayName(s.scene.Name, key.name), Text: text})
	}
	s.files[key] = got
	return got.measured, got.err
}
