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

// Read reads a file. It fails with fault.Fields, each naming the place: what
// is no JSON, keys that are unknown or stand twice, and everything that the
// program itself would not have kept. Photographs are looked at last, one by
// one, as long as ctx lasts.
func Read(ctx context.Context, data []byte) (File, error) {
	if len(data) > Largest {
		return File{}, fault.Fields{{Path: "FILE", Message: fmt.Sprintf("is larger than %d MB; export fewer mitts at a time", Largest>>20)}}
	}
	if why := noExport(data); why != "" {
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
	f.pack()
	c := checker{}
	c.file(&f)
	if err := c.faults.Err(); err != nil {
		return File{}, err
	}
	if err := f.keepPhotos(ctx); err != nil {
		return File{}, err
	}
	return f, nil
}

// noExport says what a file is instead, as far as its first bytes tell.
func noExport(data []byte) string {
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

// unreadable says where reading stopped, and why.
func unreadable(data []byte, err error) string {
	var syntax *jsontext.SyntacticError
	var meaning *json.SemanticError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF):
		return fmt.Sprintf("ends too early, at %s; export or copy it once more", place(data, int64(len(data))))
	case errors.As(err, &syntax):
		return fmt.Sprintf("can't be read at %s%s: %v", place(data, syntax.ByteOffset), within(syntax.JSONPointer), syntax.Err)
	case errors.As(err, &meaning):
		why := "is not what belongs there"
		if errors.Is(err, json.ErrUnknownName) {
			why = "is not known here"
		}
		return fmt.Sprintf("can't be read at %s: %q %s", place(data, meaning.ByteOffset), meaning.JSONPointer, why)
	}
	return fmt.Sprintf("can't be read: %v", err)
}

func within(p jsontext.Pointer) string {
	if p == "" {
		return ""
	}
	return fmt.Sprintf(" (%q)", p)
}

// place is a position as an editor shows it.
func place(data []byte, offset int64) string {
	before := data[:min(offset, int64(len(data)))]
	line := bytes.Count(before, []byte{'\n'})
	return fmt.Sprintf("line %d, column %d", line+1, len(before)-bytes.LastIndexByte(before, '\n'))
}

// pack takes the spaces out of documents, as the program writes them.
func (f *File) pack() {
	for _, m := range f.Mitts {
		for i := range m.Revisions {
			packed(&m.Revisions[i].Document)
		}
		for i := range m.Tries {
			t := &m.Tries[i]
			packed(&t.Record)
			for j := range t.Verdicts {
				packed(&t.Verdicts[j].Answer)
			}
		}
	}
	for _, c := range f.Classes {
		for i := range c.Revisions {
			packed(&c.Revisions[i].Document)
		}
	}
}

func packed(v *jsontext.Value) {
	if *v != nil {
		_ = v.Compact(jsontext.PreserveRawStrings(true)) // it was read already
	}
}
