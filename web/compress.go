package web

import (
	"bufio"
	"compress/gzip"
	"io"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"github.com/go-chi/chi/v5/middleware"
)

// textTypes are the types of response that gain by compression. Patterns, pictures
// and fonts are compressed already; an event stream has to arrive at once.
var textTypes = []string{
	"text/html", "text/css", "text/javascript", "text/csv", "text/plain", "application/json", "image/svg+xml",
}

// zipLevel is the level of compression: a page is sent once, so a little
// shorter is not worth waiting for.
const zipLevel = gzip.DefaultCompression

// compressed sends texts as gzip (RFC 1952) to clients that take it.
func compressed(next http.Handler) http.Handler {
	c := middleware.NewCompressor(zipLevel, textTypes...)
	c.SetEncoder("gzip", func(w io.Writer, _ int) io.Writer { return &zipper{to: w} })
	zips := c.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if stays(r) || r.Header.Get("Range") != "" || !takesGzip(r.Header) {
			w.Header().Set("Vary", "Accept-Encoding")
			next.ServeHTTP(w, r)
			return
		}
		zips.ServeHTTP(w, r)
	})
}

// takesGzip reports whether a client takes gzip by its Accept-Encoding header
// (RFC 9110, 12.5.3). A weight of 0 refuses an encoding.
func takesGzip(h http.Header) bool {
	for coding := range strings.SplitSeq(strings.Join(h.Values("Accept-Encoding"), ","), ",") {
		name, weight, weighted := strings.Cut(coding, ";")
		if !strings.EqualFold(strings.TrimSpace(name), "gzip") {
			continue
		}
		q, err := strconv.ParseFloat(strings.TrimPrefix(strings.ToLower(strings.TrimSpace(weight)), "q="), 64)
		return !weighted || err == nil && q > 0
	}
	return false
}

// writers are gzip writers for reuse: each takes a good part of a megabyte.
var writers = sync.Pool{New: func() any {
	w, err := gzip.NewWriterLevel(io.Discard, zipLevel)
	if err != nil {
		panic(err) // the level is a constant
	}
	return w
}}

// zipAhead is the number of compressed bytes that wait for the client. A page is
// shorter, so it is compressed before any of it is sent.
const zipAhead = 64 << 10

// buffers are those that compressed bytes wait in.
var buffers = sync.Pool{New: func() any { return bufio.NewWriterSize(io.Discard, zipAhead) }}

// zipper compresses what is written to it. It takes a gzip writer with the first
// byte, which handlers write when all is ready, and gives it back before the
// last bytes are sent. So neither a request that is slow to arrive or waits for
// its turn holds one, nor a page that is slow to leave.
type zipper struct {
	to    io.Writer
	ahead *bufio.Writer
	zip   *gzip.Writer // nil before the first byte
}

// Write implements io.Writer.
func (z *zipper) Write(p []byte) (int, error) {
	if z.zip == nil {
		z.zip = writers.Get().(*gzip.Writer)
		z.ahead = buffers.Get().(*bufio.Writer)
		z.ahead.Reset(z.to)
		z.zip.Reset(z.ahead)
	}
	return z.zip.Write(p)
}

// Close ends the compressed body, also one of no bytes.
func (z *zipper) Close() error {
	_, err := z.Write(nil)
	if err == nil {
		err = z.zip.Close()
	}
	z.zip.Reset(io.Discard) // so that the pool keeps no connection
	writers.Put(z.zip)
	z.zip = nil
	if err == nil {
		err = z.ahead.Flush()
	}
	z.ahead.Reset(io.Discard)
	buffers.Put(z.ahead)
	z.ahead = nil
	return err
}
