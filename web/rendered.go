package web

import (
	"io"
	"sync"
)

// chunk is a piece of a rendered page. Fresh memory costs more than what is
// written into it, so chunks are used again.
type chunk [64 << 10]byte

var chunks = sync.Pool{New: func() any { return new(chunk) }}

// rendered is a page in memory before the first byte of it is sent. Free gives its
// chunks back.
type rendered struct {
	list []*chunk
	used int // bytes of the last chunk
}

// Write implements io.Writer; it never fails.
func (b *rendered) Write(p []byte) (int, error) {
	for rest := p; len(rest) > 0; {
		n := copy(b.room(), rest)
		rest, b.used = rest[n:], b.used+n
	}
	return len(p), nil
}

// WriteString implements io.StringWriter, through which sheets come that are
// larger than any buffer.
func (b *rendered) WriteString(text string) (int, error) {
	for rest := text; len(rest) > 0; {
		n := copy(b.room(), rest)
		rest, b.used = rest[n:], b.used+n
	}
	return len(text), nil
}

// room returns what is left of the last chunk, or a fresh one if it is full.
func (b *rendered) room() []byte {
	if len(b.list) == 0 || b.used == len(chunk{}) {
		b.list, b.used = append(b.list, chunks.Get().(*chunk)), 0
	}
	return b.list[len(b.list)-1][b.used:]
}

// sendTo writes the page to w.
func (b *rendered) sendTo(w io.Writer) error {
	for i, c := range b.list {
		end := len(c)
		if i == len(b.list)-1 {
			end = b.used
		}
		if _, err := w.Write(c[:end]); err != nil {
			return err
		}
	}
	return nil
}

func (b *rendered) free() {
	for _, c := range b.list {
		chunks.Put(c)
	}
	b.list = nil
}
