package web

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
)

// pipes is a network in memory, whose time is that of its test.
type pipes struct {
	dialled chan net.Conn
	closed  chan struct{}
}

func (p pipes) Accept() (net.Conn, error) {
	select {
	case c := <-p.dialled:
		return c, nil
	case <-p.closed:
		return nil, net.ErrClosed
	}
}

func (p pipes) Close() error   { close(p.closed); return nil }
func (p pipes) Addr() net.Addr { return &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1)} }

func (p pipes) dial() net.Conn {
	here, there := net.Pipe()
	p.dialled <- there
	return here
}

// much is what is asked of large, and more than any credit.
const much = 2 << 20

// large takes and gives large bodies, and a line of events, at an app's pace
// and through all that is wrapped around its answers.
func large(s *Server) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /up", s.answer(limited(10*much, func(w http.ResponseWriter, r *http.Request) error {
		body, err := io.ReadAll(r.Body)
		if err != nil {
			return bodyFault(err)
		}
		_, err = fmt.Fprint(w, len(body))
		return err
	})))
	mux.HandleFunc("GET /down", s.answer(func(w http.ResponseWriter, _ *http.Request) error {
		w.Header().Set("Content-Type", "text/plain; charset=utf-8")
		_, err := io.CopyN(w, rand.NewChaCha8([32]byte{}), much) // compressed, it is as long
		return err
	}))
	mux.HandleFunc("GET /events", s.answer(func(w http.ResponseWriter, r *http.Request) error {
		line := http.NewResponseController(w)
		for range 100 {
			if !write(w, line, ":\n\n") {
				return nil
			}
			<-time.After(breatheAll)
		}
		return nil
	}))
	return s.outside(mux)
}

// inBubble gives a network on which an app of large bodies is served; its time
// is not the world's, and goes on as fast as everybody waits.
func inBubble(t *testing.T, f func(t *testing.T, to pipes)) {
	t.Helper()
	synctest.Test(t, func(t *testing.T) {
		s := New(app.New(nil), io.Discard, Door{})
		s.Handler = large(s)
		to, done := pipes{make(chan net.Conn), make(chan struct{})}, make(chan error, 1)
		server := bounded(s, headerTime)
		go func() { done <- server.Serve(to) }()
		f(t, to)
		require.NoError(t, server.Close())
		require.ErrorIs(t, <-done, http.ErrServerClosed)
	})
}

// drip sends bytes of a body each second, until all are sent or nobody takes
// them any more.
func drip(c net.Conn, all, each int) {
	part := []byte(strings.Repeat("x", each))
	for n := 0; n < all; n += each {
		if _, err := c.Write(part[:min(each, all-n)]); err != nil {
			return
		}
		<-time.After(time.Second)
	}
}

const upload = "POST /up HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept: application/json\r\nContent-Length: %d\r\n\r\n"

// What arrives slowly but steadily arrives, however long it takes; what comes
// more slowly, or stops, is cut off once it is behind by the grace, told so
// with a status that no browser takes as a reason to begin again, and hung up
// on. Having been fast buys no more than the grace.
//
//thenar:race
func TestSlowUploads(t *testing.T) {
	for _, c := range []struct {
		what        string
		head        string
		first, each int // bytes at once, and then each second
		status      int
		after       time.Duration // within so long of it
	}{
		{"as slow as may be", upload, 0, 8192, http.StatusOK, 256 * time.Second},
		{"chunks as slow as may be", "", 0, 8192, http.StatusOK, 256 * time.Second},
		{"half as fast", upload, 0, 4000, http.StatusRequestEntityTooLarge, time.Minute},
		{"nothing after the header", upload, 0, 0, http.StatusRequestEntityTooLarge, 30 * time.Second},
		{"nothing after a fast beginning", upload, much / 2, 0, http.StatusRequestEntityTooLarge, 30 * time.Second},
		{"a drop now and then after a fast beginning", upload, much / 2, 10, http.StatusRequestEntityTooLarge, 30 * time.Second},
	} {
		t.Run(c.what, func(t *testing.T) {
			inBubble(t, func(t *testing.T, to pipes) {
				conn := to.dial()
				var sending sync.WaitGroup
				defer sending.Wait()
				defer conn.Close()
				begun := time.Now()
				sending.Go(func() {
					if c.head == "" {
						fmt.Fprintf(conn, "POST /up HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\n%x\r\n", much)
						drip(conn, much, c.each)
						io.WriteString(conn, "\r\n0\r\n\r\n")
						return
					}
					fmt.Fprintf(conn, c.head, much)
					io.WriteString(conn, strings.Repeat("x", c.first))
					if c.each > 0 {
						drip(conn, much-c.first, c.each)
					}
				})
				resp, err := http.ReadResponse(bufio.NewReader(conn), nil)
				require.NoError(t, err)
				body, err := io.ReadAll(resp.Body)
				require.NoError(t, err)
				assert.Equal(t, c.status, resp.StatusCode)
				assert.InDelta(t, c.after.Seconds(), time.Since(begun).Seconds(), 1.5)
				if c.status == http.StatusOK {
					assert.Equal(t, fmt.Sprint(much), string(body))
					return
				}
				assert.True(t, resp.Close, "Connection: close")
				assert.JSONEq(t, `{"error": ["`+late+`"]}`, string(body))
				_, err = conn.Read(make([]byte, 1))
				assert.ErrorIs(t, err, io.EOF, "it is hung up on")
			})
		})
	}
}

// The same of what is taken: a slow reader gets everything, a slower one is
// hung up on.
//
//thenar:race
func TestSlowDownloads(t *testing.T) {
	for _, c := range []struct {
		what  string
		takes string // encodings
		each  int    // bytes a second
		whole bool
	}{
		{"as slow as may be", "identity", 8192, true},
		{"half as fast", "identity", 4000, false},
		{"nothing", "identity", 0, false},
		{"compressed, as slow as may be", "gzip", 8192, true},
		{"compressed, half as fast", "gzip", 4000, false},
		{"compressed, nothing", "gzip", 0, false},
	} {
		t.Run(c.what, func(t *testing.T) {
			inBubble(t, func(t *testing.T, to pipes) {
				conn := to.dial()
				defer conn.Close()
				fmt.Fprintf(conn, "GET /down HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept-Encoding: %s\r\nConnection: close\r\n\r\n", c.takes)
				begun, n := time.Now(), 0
				for part := make([]byte, max(c.each, 1)); ; {
					if c.each == 0 {
						<-time.After(time.Minute)
					}
					m, err := io.ReadFull(conn, part)
					n += m
					if err != nil {
						break
					}
					<-time.After(time.Second)
				}
				if c.whole {
					assert.Greater(t, n, much)
					assert.Greater(t, time.Since(begun), 4*time.Minute)
				} else {
					assert.Less(t, n, much/4)
				}
			})
		})
	}
}

// A line of events stays open for as long as each part of it is taken.
//
//thenar:race
func TestLineOfEventsStaysOpen(t *testing.T) {
	inBubble(t, func(t *testing.T, to pipes) {
		conn := to.dial()
		defer conn.Close()
		io.WriteString(conn, "GET /events HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept-Encoding: gzip\r\nConnection: close\r\n\r\n")
		resp, err := http.ReadResponse(bufio.NewReader(conn), nil)
		require.NoError(t, err)
		body, err := io.ReadAll(resp.Body)
		require.NoError(t, err)
		assert.Equal(t, 100, strings.Count(string(body), ":"))
	})
}
