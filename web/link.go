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

// slowest is the slowest pace at which a client may send or receive: rate bytes
// a second on average, and never more than grace behind. A client that was fast
// can save up no more than grace either, so a silent one is cut off after that.
type slowest struct {
	rate  int64
	grace time.Duration
}

// usual is the pace of an app. A weak link near by carries more (common
// practice, no source), and it is enough for a photograph straight from a
// camera.
var usual = slowest{rate: 8000, grace: 30 * time.Second}

// The bytes that are read or written between two looks at the clock: at the
// usual pace half a second, and two. The system's own send buffer is bounded,
// since only what leaves it shows that the client receives it.
const (
	readAtOnce  = 4 << 10
	writeAtOnce = 16 << 10
	sendBuffer  = 64 << 10
)

// credit is how long a client may still keep the server waiting, in one
// direction. Time that the server itself takes does not count.
type credit struct {
	slowest
	left time.Duration
}

// wait runs do for at most as long as there is credit, and earns credit for the
// bytes that it moved.
func (c *credit) wait(deadline func(time.Time) error, do func() (int, error)) (int, error) {
	begun := time.Now()
	_ = deadline(begun.Add(c.left)) // a recorder in a test has none
	n, err := do()
	earned := time.Duration(n) * time.Second / time.Duration(c.rate)
	c.left = min(c.left-time.Since(begun)+earned, c.grace)
	return n, err
}

// link moves the connection's deadlines on while bytes are sent and received
// during one request. Other wrappers may lie around it; linkOf looks through
// them.
type link struct {
	http.ResponseWriter
	conn    *http.ResponseController
	in, out credit
	late    bool // the request body did not arrive in time
}

// paced bounds how slowly a request goes, rather than how long it takes.
func (s *Server) paced(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		p := s.slowest
		l := &link{w, http.NewResponseController(w), credit{p, p.grace}, credit{p, p.grace}, false}
		if r.Body == nil || r.Body == http.NoBody {
			l.heard()
		} else {
			r = r.WithContext(r.Context()) // a copy: net/http looks at the original Body after the response
			r.Body = &sent{r.Body, l}
		}
		next.ServeHTTP(l, r)
		// Time for net/http to read what is left of the body, and then to send
		// the rest of the response.
		_ = l.conn.SetWriteDeadline(time.Now().Add(2 * p.grace))
	})
}

// heard ends the deadline for reading: all has arrived, and the response may
// take longer. A read deadline that passed later would break it off.
func (l *link) heard() { _ = l.conn.SetReadDeadline(time.Time{}) }

// Write implements http.ResponseWriter, and fails once the client receives too
// slowly.
func (l *link) Write(p []byte) (n int, err error) {
	for {
		part := p[n:min(len(p), n+writeAtOnce)]
		m, err := l.out.wait(l.conn.SetWriteDeadline, func() (int, error) { return l.ResponseWriter.Write(part) })
		if n += m; err != nil || n >= len(p) {
			return n, err
		}
	}
}

// FlushError is the method that http.ResponseController flushes with.
func (l *link) FlushError() error {
	_, err := l.out.wait(l.conn.SetWriteDeadline, func() (int, error) { return 0, l.conn.Flush() })
	return err
}

// Unwrap lets http.ResponseController reach the connection.
func (l *link) Unwrap() http.ResponseWriter { return l.ResponseWriter }

// sent is the body of a request, read at the pace of its link.
type sent struct {
	io.ReadCloser
	link *link
}

// Read implements io.Reader, and fails once the client sends too slowly.
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

// linkOf returns the link beneath the wrappers around it, or nil.
func linkOf(w http.ResponseWriter) *link {
	for {
		switch inner := w.(type) {
		case *link:
			return inner
		case interface{ Unwrap() http.ResponseWriter }:
			w = inner.Unwrap()
		default:
			return nil
		}
	}
}

// cutOff reports whether the body of a request was cut off because it came too
// slowly, whatever error its reader returned.
func cutOff(w http.ResponseWriter) bool {
	l := linkOf(w)
	return l != nil && l.late
}

// The message of a request that was cut off, and of one that sent a file.
const (
	late     = "This came too slowly: try nearer the router."
	lateFile = "This came too slowly: choose a smaller photograph or file, or try nearer the router."
)

// answerLate answers a request that was cut off, with time of its own, and
// hangs up. After the status 408 Chromium would send it all again; no browser
// does after this one.
func answerLate(w http.ResponseWriter, r *http.Request) error {
	l, message := linkOf(w), late
	if kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); kind == "multipart/form-data" {
		message = lateFile
	}
	l.out.left = l.out.grace
	_ = l.conn.SetReadDeadline(time.Now().Add(l.in.grace / 10)) // a client that is still sending reads the response only after it
	w.Header().Set("Connection", "close")
	if wantsJSON(r) {
		writeJSON(w, http.StatusRequestEntityTooLarge, map[string][]string{"error": {message}})
		return nil
	}
	r = r.WithContext(context.WithoutCancel(r.Context())) // net/http takes a late connection for a closed one
	return page(w, r, http.StatusRequestEntityTooLarge, view.ProblemPage(view.Problem{Title: "Too slow to arrive", Message: message}))
}

// narrow bounds how much of a response the system buffers on its way out.
func narrow(ctx context.Context, c net.Conn) context.Context {
	if tcp, ok := c.(*net.TCPConn); ok {
		_ = tcp.SetWriteBuffer(sendBuffer)
	}
	return ctx
}
