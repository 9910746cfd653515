package web

import (
	"errors"
	"io"
	"mime/multipart"
	"net/http"

	"thenar/internal/fault"
)

// inMemory is how many bytes of a form's files are held in memory. The rest
// waits on disk, since a slow link may take minutes to send it.
const inMemory = 1 << 20

// readParts reads a form with files. The caller removes the files.
func readParts(r *http.Request) error {
	if err := r.ParseForm(); err != nil { // first, since ParseMultipartForm would swallow its error
		return bodyFault(err)
	}
	if err := r.ParseMultipartForm(inMemory); err != nil && !errors.Is(err, http.ErrNotMultipart) {
		return bodyFault(err)
	}
	return nil
}

// sentFile returns the file of a form that readParts read; nothing if it brought none.
func sentFile(r *http.Request) ([]byte, error) { return fileOf(r, "file") }

// fileOf returns the file of a field of a form; nil: none was sent.
func fileOf(r *http.Request, field string) ([]byte, error) {
	if r.MultipartForm == nil {
		return nil, nil
	}
	file, _, err := r.FormFile(field)
	if errors.Is(err, http.ErrMissingFile) {
		return nil, nil
	}
	if err != nil {
		return nil, bodyFault(err)
	}
	defer file.Close()
	return io.ReadAll(file)
}

// bodyFault returns the fault of a body that is no form, or is too large.
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
