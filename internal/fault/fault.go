// Package fault holds the few kinds of error that the program tells apart,
// and the list of field messages that a person can act on.
//
// Every message that reaches a person comes from a Field or from an Error
// made here; anything else is Internal and its text stays in the log.
package fault

import (
	"errors"
	"fmt"
	"strings"
)

// Kind sorts errors by what the caller can do about them.
type Kind int

const (
	Internal    Kind = iota // our mistake or the machine's: logged, not shown
	Invalid                 // the input is wrong; the message says what would be right
	NotFound                // no such mitt, page or file
	Conflict                // somebody saved in between
	Newer                   // the file was written by a newer program
	Unavailable             // it can't be done now, and may work later: a full disk, a locked file
)

// Error is a message that is safe to show, with its kind and its cause.
type Error struct {
	Kind    Kind
	Message string
	Cause   error
}

// New makes an Error of the kind with a message safe to show to a person.
func New(kind Kind, format string, args ...any) *Error {
	return &Error{Kind: kind, Message: fmt.Sprintf(format, args...)}
}

// Error gives the message, then the cause for the log.
func (e *Error) Error() string {
	if e.Cause != nil {
		return e.Message + ": " + e.Cause.Error()
	}
	return e.Message
}

// Unwrap gives the cause.
func (e *Error) Unwrap() error { return e.Cause }

// Because returns a copy of e with a cause, which is logged and never shown.
func (e *Error) Because(cause error) *Error {
	c := *e
	c.Cause = cause
	return &c
}

// KindOf finds the kind of err. A list of fields is Invalid; an error that
// did not come from this package is Internal.
func KindOf(err error) Kind {
	var fields Fields
	if errors.As(err, &fields) {
		return Invalid
	}
	var e *Error
	if errors.As(err, &e) {
		return e.Kind
	}
	return Internal
}

// Message is the text to show for err: its own where it is safe to show,
// a general sentence for Internal.
func Message(err error) string {
	var fields Fields
	if errors.As(err, &fields) {
		return fields.Error()
	}
	var e *Error
	if errors.As(err, &e) && e.Kind != Internal {
		return e.Message
	}
	return "Something went wrong on this side. What you saved before is safe; please try again."
}

// Wrap prefixes *err with what was attempted. It is deferred once, at the
// top of a function, so that an error in the log reads like a call path:
//
//	defer fault.Wrap(&err, "store.Save(%d)", id)
func Wrap(err *error, format string, args ...any) {
	if *err != nil {
		*err = fmt.Errorf("%s: %w", fmt.Sprintf(format, args...), *err)
	}
}

// Field is one fault in what a person gave: where, what is wrong, and what
// would be right. Path is written as in "hand.thumb_circumference"; Works is
// a value that would be right, if one is known, for a page to offer.
type Field struct {
	Path    string `json:"field"`
	Message string `json:"message"`
	Works   string `json:"-"`
}

// String is the line that the command line prints.
func (f Field) String() string { return f.Path + ": " + f.Message }

// Fields are all faults of one input, in the order in which they were found.
type Fields []Field

// Add appends a fault.
func (f *Fields) Add(path, format string, args ...any) {
	*f = append(*f, Field{Path: path, Message: fmt.Sprintf(format, args...)})
}

// Err is nil for no faults, so that "return x, faults.Err()" reads well.
func (f Fields) Err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Error joins the faults, one a line.
func (f Fields) Error() string {
	return strings.Join(f.Lines(), "\n")
}

// Lines gives each fault as "FIELD: message".
func (f Fields) Lines() []string {
	lines := make([]string, len(f))
	for i, field := range f {
		lines[i] = field.String()
	}
	return lines
}

// Has tells whether path has a fault.
func (f Fields) Has(path string) bool {
	for _, field := range f {
		if field.Path == path {
			return true
		}
	}
	return false
}
