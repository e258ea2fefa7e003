package scene

import (
	"io/fs"
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

// Document is a parsed scene file.
type Document struct {
	Root   *source.Node
	Setups []string // names in the order of the file
	Env    Env
	Kit    *kit.Catalogue // shipped and own
}
