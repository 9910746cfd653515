package web

import (
	"context"
	"errors"
	"io"
	"mime"
	"net"
	"net/http"
	"os"
	"time"

	"thenar/web/view"
)

// slowest is how slowly one may send or take: rate in bytes a second on the
// whole, never more than grace behind it. Who was fast has no more than grace
// to spare, either, so that silence is cut off after it.
type slowest struct {
	rate  int64
	grace time.Duration
}

// usual is the pace of an app. A weak link near by carries more (common
// practice, no source), and a photograph that a camera made arrives by it.
var usual = slowest{rate: 8000, grace: 30 * time.Second}

// Bytes that are read and written between two looks at the clock: at the usual
// pace half a second, and two. The system's own buffer for what is sent is
// bounded, since only what leaves it shows that somebody takes it.
const (
	readAtOnce  = 4 << 10
	writeAtOnce = 16 << 10
	sendBuffer  = 64 << 10
)

// credit is for how long one side may still keep the server waiting. Time that
// the server takes for itself does not count.
type credit struct {
	slowest
	left time.Duration
}

// wait lets do take as long as there is credit, and counts what it moved.
func (c *credit) wait(deadline func(time.Time) error, do func() (int, error)) (int, error) {
	begun := time.Now()
	_ = deadline(begun.Add(c.left)) // a recorder in a test has none
	n, err := do()
	earned := time.Duration(n) * time.Second / time.Duration(c.rate)
	c.left = min(c.left-time.Since(begun)+earned, c.grace)
	return n, err
}

// link is one request's line to who asks: it moves the connection's deadlines
// on while bytes arrive and are taken. Wrappers around it are seen through.
type link struct {
	http.ResponseWriter
	conn    *http.ResponseController
	in, out credit
	late    bool // what was sent did not arrive in time
}

// paced bounds a request by its pace, and not by its length.
func (s *Server) paced(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		p := s.slowest
		l := &link{w, http.NewResponseController(w), credit{p, p.grace}, credit{p, p.grace}, false}
		if r.Body == nil || r.Body == http.NoBody {
			l.heard()
		} else {
			r = r.WithContext(r.Context()) // a copy: net/http looks at its own body after the answer
			r.Body = &sent{r.Body, l}
		}
		next.ServeHTTP(l, r)
		// For what net/http does after it: it looks through what was not read,
		// as long as that may still arrive, then sends the rest of the answer.
		_ = l.conn.SetWriteDeadline(time.Now().Add(2 * p.grace))
	})
}

// heard ends the time for sending: all has arrived, and the answer may take
// longer. A deadline that passes later would break it off.
func (l *link) heard() { _ = l.conn.SetReadDeadline(time.Time{}) }

// Write is that of http.ResponseWriter, as long as what is written is taken.
func (l *link) Write(p []byte) (n int, err error) {
	for {
		part := p[n:min(len(p), n+writeAtOnce)]
		m, err := l.out.wait(l.conn.SetWriteDeadline, func() (int, error) { return l.ResponseWriter.Write(part) })
		if n += m; err != nil || n >= len(p) {
			return n, err
		}
	}
}

// FlushError is what http.ResponseController flushes by.
func (l *link) FlushError() error {
	_, err := l.out.wait(l.conn.SetWriteDeadline, func() (int, error) { return 0, l.conn.Flush() })
	return err
}

// Unwrap lets http.ResponseController through to the connection.
func (l *link) Unwrap() http.ResponseWriter { return l.ResponseWriter }

// sent is the body of a request.
type sent struct {
	io.ReadCloser
	link *link
}

// Read is that of io.Reader, as long as something arrives.
func (b *sent) Read(p []byte) (int, error) {
	l := b.link
	if l.late {
		return 0, os.ErrDeadlineExceeded
	}
	part := p[:min(len(p), readAtOnce)]
	n, err := l.in.wait(l.conn.SetReadDeadline, func() (int, error) { return b.ReadCloser.Read(part) })
	switch {
	case errors.Is(err, io.EOF):
		l.heard()
	case errors.Is(err, os.ErrDeadlineExceeded):
		l.late = true
	}
	return n, err
}

// linkOf finds the link beneath whatever is wrapped around it; nil where there
// is none.
func linkOf(w http.ResponseWriter) *link {
	for {
		switch is := w.(type) {
		case *link:
			return is
		case interface{ Unwrap() http.ResponseWriter }:
			w = is.Unwrap()
		default:
			return nil
		}
	}
}

// cutOff tells whether the body of a request was cut off, whatever its reader
// made of that.
func cutOff(w http.ResponseWriter) bool {
	l := linkOf(w)
	return l != nil && l.late
}

// What is said then, and of what was sent with a file.
const (
	late     = "This came too slowly: try nearer the router."
	lateFile = "This came too slowly: choose a smaller photograph or file, or try nearer the router."
)

// answerLate answers what was cut off, with time of its own, and hangs up.
// The status is one that no browser takes as a reason to send it all again, as
// Chromium does after 408.
func answerLate(w http.ResponseWriter, r *http.Request) error {
	l, message := linkOf(w), late
	if kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); kind == "multipart/form-data" {
		message = lateFile
	}
	l.out.left = l.out.grace
	_ = l.conn.SetReadDeadline(time.Now().Add(l.in.grace / 10)) // who sends on meanwhile reads the answer first
	w.Header().Set("Connection", "close")
	if wantsJSON(r) {
		writeJSON(w, http.StatusRequestEntityTooLarge, map[string][]string{"error": {message}})
		return nil
	}
	r = r.WithContext(context.WithoutCancel(r.Context())) // net/http takes a connection that is late for one that is gone
	return page(w, r, http.StatusRequestEntityTooLarge, view.ProblemPage(view.Problem{Title: "Too slow to arrive", Message: message}))
}

// narrow bounds what the system keeps of an answer on its way.
func narrow(ctx context.Context, c net.Conn) context.Context {
	if tcp, ok := c.(*net.TCPConn); ok {
		_ = tcp.SetWriteBuffer(sendBuffer)
	}
	return ctx
}
