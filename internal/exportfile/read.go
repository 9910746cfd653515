package exportfile

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/fault"
)

// Read reads a file. It fails with fault.Fields, each naming its place: for
// invalid JSON, unknown or repeated keys, and everything that the program itself
// would not have kept. Photographs are decoded last, one by one, until ctx ends.
func Read(ctx context.Context, data []byte) (File, error) {
	if len(data) > MaxBytes {
		return File{}, fault.Fields{{Path: "FILE", Message: fmt.Sprintf("is larger than %d MB; export fewer mitts at a time", MaxBytes>>20)}}
	}
	if why := notExport(data); why != "" {
		return File{}, fault.Fields{{Path: "FILE", Message: why}}
	}
	var f File
	dec := jsontext.NewDecoder(bytes.NewReader(data))
	if err := json.UnmarshalDecode(dec, &f, json.RejectUnknownMembers(true)); err != nil {
		return File{}, fault.Fields{{Path: "FILE", Message: unreadable(data, err)}}
	}
	if _, err := dec.ReadToken(); !errors.Is(err, io.EOF) {
		return File{}, fault.Fields{{Path: "FILE", Message: fmt.Sprintf("goes on after the document, at %s; one JSON object is all", place(data, dec.InputOffset()))}}
	}
	if f.Format == "" {
		return File{}, fault.Fields{{Path: "format", Message: fmt.Sprintf("is missing, so this was not exported by Thenar; it would be %q", Format)}}
	}
	if f.Format != Format {
		return File{}, fault.Fields{{Path: "format", Message: fmt.Sprintf("is %.40q; this reads %q", f.Format, Format)}}
	}
	f.compact()
	c := checker{}
	c.file(&f)
	if err := c.faults.Err(); err != nil {
		return File{}, err
	}
	if err := f.convertPhotos(ctx); err != nil {
		return File{}, err
	}
	return f, nil
}

// notExport says why data can't be an export, judged by its first bytes; "" if
// it may be one.
func notExport(data []byte) string {
	start := bytes.TrimSpace(data)
	switch {
	case len(start) == 0:
		return "is empty; choose a file that was exported"
	case bytes.HasPrefix(data, []byte("SQLite format 3\x00")):
		return "is a database or a backup of one; put it back with: thenar restore FILE"
	case start[0] != '{':
		return "can't be read at line 1, column 1: it is no file that was exported, which begins with {"
	}
	return ""
}

// unreadable says where decoding stopped, and why.
func unreadable(data []byte, err error) string {
	var syntax *jsontext.SyntacticError
	var meaning *json.SemanticError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF):
		return fmt.Sprintf("ends too early, at %s; export or copy it once more", place(data, int64(len(data))))
	case errors.As(err, &syntax):
		return fmt.Sprintf("can't be read at %s%s: %v", place(data, syntax.ByteOffset), inPointer(syntax.JSONPointer), syntax.Err)
	case errors.As(err, &meaning):
		why := "is not what belongs there"
		if errors.Is(err, json.ErrUnknownName) {
			why = "is not known here"
		}
		return fmt.Sprintf("can't be read at %s: %q %s", place(data, meaning.ByteOffset), meaning.JSONPointer, why)
	}
	return fmt.Sprintf("can't be read: %v", err)
}

func inPointer(p jsontext.Pointer) string {
	if p == "" {
		return ""
	}
	return fmt.Sprintf(" (%q)", p)
}

// place returns an offset as line and column in bytes, both from 1.
func place(data []byte, offset int64) string {
	before := data[:min(offset, int64(len(data)))]
	line := bytes.Count(before, []byte{'\n'})
	return fmt.Sprintf("line %d, column %d", line+1, len(before)-bytes.LastIndexByte(before, '\n'))
}

// compact takes the white space out of documents and records, since the program
// stores them so.
func (f *File) compact() {
	for _, m := range f.Mitts {
		for i := range m.Revisions {
			compact(&m.Revisions[i].Document)
		}
		for i := range m.Versions {
			compact(&m.Versions[i].Record)
		}
		for i := range m.Tries {
			t := &m.Tries[i]
			compact(&t.Record)
			for j := range t.Answers {
				compact(&t.Answers[j].Record)
			}
		}
	}
	for _, c := range f.Classes {
		for i := range c.Revisions {
			compact(&c.Revisions[i].Document)
		}
	}
}

func compact(v *jsontext.Value) {
	if *v != nil {
		_ = v.Compact(jsontext.PreserveRawStrings(true)) // valid JSON: it was decoded
	}
}
