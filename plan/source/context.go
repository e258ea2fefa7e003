package source

import (
	"errors"
	"fmt"
	"strings"
)

// Context is what a Field reader may ask while it reads: where faults go, and which files
// write bare lengths in feet. Nothing else reaches a reader.
type Context struct {
	Log   *Log
	Setup string                // the set-up being read, put on every fault
	Feet  func(file *File) bool // whether bare lengths in this file are feet
	Path  []string              // the keys walked so far; Shape.Read pushes and pops
	Later func(LaterKey)        // called for every key that is not computed yet; may be nil

	at []Span // where the keys of Path were written; shorter than Path where a caller pushed by hand
}

// LaterKey is a key that is written and not computed yet: the shape that it is a key of, and where it stands.
type LaterKey struct {
	Shape string
	Path  string // dotted, the key last
	Span  Span
}

// later reports a key of a shape that is not computed yet.
func (c *Context) later(shape string, key *Key) {
	if c.Later != nil {
		c.Later(LaterKey{Shape: shape, Path: strings.Join(c.Path, "."), Span: key.Span})
	}
}

// Enter goes down to a key: faults from here on carry its name in their path. Leave goes back.
func (c *Context) Enter(k *Key) {
	for len(c.at) < len(c.Path) {
		c.at = append(c.at, Span{})
	}
	c.Path = append(c.Path, k.Name)
	c.at = append(c.at[:len(c.Path)-1], k.Span)
}

// Leave goes back up from the key that was entered last.
func (c *Context) Leave() {
	c.Path = c.Path[:len(c.Path)-1]
	c.at = c.at[:min(len(c.at), len(c.Path))]
}

// Here is the place to blame for what n lacks: the key that n stands under, else n itself.
func (c *Context) Here(n *Node) Span {
	if depth := len(c.Path); depth > 0 && len(c.at) == depth && c.at[depth-1].Valid() {
		return c.at[depth-1]
	}
	return n.Span
}

// Error records an error at the value n. The hint is the fix, or "".
func (c *Context) Error(n *Node, code, hint, format string, args ...any) {
	c.ErrorAt(n.Span, code, hint, format, args...)
}

// ErrorAt records an error at span, with the path and the set-up that are being read.
func (c *Context) ErrorAt(span Span, code, hint, format string, args ...any) {
	c.report(Error, span, code, hint, fmt.Sprintf(format, args...))
}

// Refuse records at span why a value could not be read there: with the code and the hint of a Diagnostic, and of any
// other error as a bad value.
func (c *Context) Refuse(span Span, err error) {
	d := Errorf(CodeBadValue, "", "%s", err)
	errors.As(err, &d)
	c.ErrorAt(span, d.Code, d.Hint, "%s", d.Message)
}

// WarnAt records a warning at span, with the path and the set-up that are being read.
func (c *Context) WarnAt(span Span, code, hint, format string, args ...any) {
	c.report(Warning, span, code, hint, fmt.Sprintf(format, args...))
}

// InfoAt records a note at span, with the path and the set-up that are being read.
func (c *Context) InfoAt(span Span, code, hint, format string, args ...any) {
	c.report(Info, span, code, hint, fmt.Sprintf(format, args...))
}

func (c *Context) report(s Severity, span Span, code, hint, message string, related ...Related) {
	c.Log.Add(Diagnostic{
		Severity: s, Code: code, Span: span, Path: strings.Join(c.Path, "."), Setup: c.Setup,
		Message: message, Hint: hint, Related: related,
	})
}
