package source

import (
	"fmt"
	"strings"
)

// Fault is what is wrong with the text of a value, as the function that reads the text knows it: without a
// place. The reader of the value, which knows the place, logs it as a Diagnostic; nothing else is handed on.
type Fault struct {
	Code    string
	Hint    string // "" where no fix is likely
	Message string // plain words, no full stop
}

// Faultf makes a Fault; hint may be "".
func Faultf(code, hint, format string, args ...any) *Fault {
	return &Fault{Code: code, Hint: hint, Message: fmt.Sprintf(format, args...)}
}

// Error returns the message without the hint.
func (f *Fault) Error() string { return f.Message }

// QuantityCode is the code of a text that could not be read as a quantity: one for what is no finite number,
// one for all else.
func QuantityCode(text string) string {
	word := strings.ToLower(strings.TrimLeft(text, "+-. "))
	if strings.HasPrefix(word, "nan") || strings.HasPrefix(word, "inf") {
		return CodeNotFinite
	}
	return CodeBadValue
}
