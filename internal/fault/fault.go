// Package fault has the kinds of error that the program distinguishes, and the
// messages about fields of a form or file.
//
// Every message that a person reads is a Field's or an Error's. Any other error
// is Internal, and its text goes to the log only.
package fault

import (
	"errors"
	"fmt"
	"strings"
)

// Kind says what the caller can do about an error.
type Kind int

const (
	Internal    Kind = iota // our mistake or the machine's: logged, not shown
	Invalid                 // the input is wrong; the message says what would be right
	NotFound                // there is no such mitt, page or file
	Conflict                // somebody else saved in between
	Newer                   // the file was written by a newer program
	Unavailable             // it may work later: a full disk, a locked file
)

// Error is a message that is safe to show, with its kind and its cause.
type Error struct {
	Kind    Kind
	Message string
	Cause   error
}

// New returns an Error of a kind. Its message is safe to show to a person.
func New(kind Kind, format string, args ...any) *Error {
	return &Error{Kind: kind, Message: fmt.Sprintf(format, args...)}
}

// Error returns the message and the cause, for the log.
func (e *Error) Error() string {
	if e.Cause != nil {
		return e.Message + ": " + e.Cause.Error()
	}
	return e.Message
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }

// Because returns a copy of e with a cause, which is logged but never shown.
func (e *Error) Because(cause error) *Error {
	c := *e
	c.Cause = cause
	return &c
}

// KindOf returns the kind of err: Invalid for Fields, Internal for an error
// that is not of this package.
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

// Message returns the text to show for err, a general sentence if it is
// Internal.
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

// Wrap prefixes *err, if there is one, with what was attempted. Functions defer
// it, so that an error in the log reads like a call path:
//
//	defer fault.Wrap(&err, "store.Save(%d)", id)
func Wrap(err *error, format string, args ...any) {
	if *err != nil {
		*err = fmt.Errorf("%s: %w", fmt.Sprintf(format, args...), *err)
	}
}

// Field is one fault in a person's input. Message says what is wrong and what
// would be right.
type Field struct {
	Path    string `json:"field"` // such as "hand.thumb_circumference"
	Message string `json:"message"`
	Works   string `json:"-"` // a valid value for the page to offer, if one is known; of several other fields, as a query
}

// String returns the line that the command line prints.
func (f Field) String() string { return f.Path + ": " + f.Message }

// Fields are the faults of one input, in the order found.
type Fields []Field

// Add appends a fault.
func (f *Fields) Add(path, format string, args ...any) {
	*f = append(*f, Field{Path: path, Message: fmt.Sprintf(format, args...)})
}

// Err returns f as an error, nil if there are no faults: a nil Fields in an
// error would not equal nil.
func (f Fields) Err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Error returns the faults, one to a line.
func (f Fields) Error() string {
	return strings.Join(f.Lines(), "\n")
}

// Lines returns each fault as "FIELD: message".
func (f Fields) Lines() []string {
	lines := make([]string, len(f))
	for i, field := range f {
		lines[i] = field.String()
	}
	return lines
}

// Of returns what is wrong with path; empty: nothing.
func (f Fields) Of(path string) string {
	for _, field := range f {
		if field.Path == path {
			return field.Message
		}
	}
	return ""
}

// Has reports whether path has a fault.
func (f Fields) Has(path string) bool {
	for _, field := range f {
		if field.Path == path {
			return true
		}
	}
	return false
}

// Lines returns what a person is told of err, a line for each fault.
func Lines(err error) []string {
	var fields Fields
	if errors.As(err, &fields) {
		return fields.Lines()
	}
	return []string{Message(err)}
}
