package web

import (
	"errors"
	"mime/multipart"
	"net/http"

	"thenar/internal/fault"
)

// inMemory are the bytes of the files of a form that are kept in memory; what
// is more waits on the disk, since a slow link may send for minutes.
const inMemory = 1 << 20

// readParts reads a form with files. The caller removes them.
func readParts(r *http.Request) error {
	if err := r.ParseForm(); err != nil { // by itself, or the next would keep its error
		return bodyFault(err)
	}
	if err := r.ParseMultipartForm(inMemory); err != nil && !errors.Is(err, http.ErrNotMultipart) {
		return bodyFault(err)
	}
	return nil
}

// bodyFault is a body that is no form, or larger than allowed.
func bodyFault(err error) error {
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) {
		return err
	}
	if errors.Is(err, multipart.ErrMessageTooLarge) {
		return fault.New(fault.Invalid, "This form has more parts and headers than any of ours.")
	}
	return fault.New(fault.Invalid, "This is no form that can be read: %v.", err)
}
