// Package web serves the app: routes, forms, handlers.
package web

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"runtime/debug"
	"sync"
	"time"

	"thenar/internal/app"
)

// Server answers the app's requests.
type Server struct {
	app      *app.App
	door     Door
	slowest  slowest
	log      *slog.Logger
	stopping chan struct{} // closed when event streams have to end
	turns    *turns        // of heavy requests
	http.Handler
}

// New returns a Server of an App. It writes a line to log for each request and
// for each failure. Other machines come in by the door.
func New(a *app.App, log io.Writer, door Door) *Server {
	s := &Server{app: a, door: door, slowest: usual, log: slog.New(slog.NewTextHandler(log, nil)), stopping: make(chan struct{}), turns: newTurns()}
	s.Handler = s.handler()
	return s
}

// handler returns everything that a request passes through, from the outside
// in.
func (s *Server) handler() http.Handler {
	return s.outside(guard(s.door, s.access(s.routes())))
}

// outside wraps what every response goes through on its way to the client: it
// is compressed, then its bytes are counted for the log and for the pace.
func (s *Server) outside(next http.Handler) http.Handler {
	return s.paced(s.logged(compressed(next)))
}

// The bounds on a slow or idle connection.
const (
	headerTime = 5 * time.Second
	idleTime   = 2 * time.Minute
	stopTime   = 5 * time.Second
)

// gcPercent lets the heap grow to three times what is in use before it is
// collected: requests allocate much and retain little.
const gcPercent = 200

// bounded returns an HTTP server for an app that cuts off whoever is too slow
// to ask or to listen. A body and a response begin with the deadlines set here;
// paced moves them on.
func bounded(app *Server, header time.Duration) *http.Server {
	return &http.Server{
		Handler: app, ReadHeaderTimeout: header, ReadTimeout: app.slowest.grace,
		WriteTimeout: app.slowest.grace, IdleTimeout: idleTime, MaxHeaderBytes: 1 << 16,
		ConnContext: narrow,
	}
}

// Serve serves until ctx ends, then lets the requests in flight finish. It
// makes a backup once a day.
func Serve(ctx context.Context, ln net.Listener, a *app.App, log io.Writer, door Door) error {
	return New(a, log, door).serve(ctx, ln)
}

func (s *Server) serve(ctx context.Context, ln net.Listener) error {
	defer debug.SetGCPercent(debug.SetGCPercent(gcPercent))
	ctx, stop := context.WithCancel(ctx)
	server := bounded(s, headerTime)
	var idle idleConns
	server.ConnState = idle.track
	server.RegisterOnShutdown(func() { close(s.stopping) })
	server.RegisterOnShutdown(idle.close)
	var daily sync.WaitGroup
	daily.Go(func() {
		if err := s.app.Savable(ctx); err != nil && ctx.Err() == nil {
			s.log.Error("nothing can be saved now", "error", err)
		}
		s.backupDaily(ctx)
	})
	defer daily.Wait() // for a backup that is being made
	defer stop()
	done := make(chan error, 1)
	go func() {
		<-ctx.Done()
		stopping, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
		defer cancel()
		err := server.Shutdown(stopping)
		if errors.Is(err, context.DeadlineExceeded) {
			s.log.Warn("stopped before some had sent all of what they asked")
			err = server.Close()
		}
		done <- err
	}()
	if err := server.Serve(ln); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("web.Serve: %w", err)
	}
	return <-done
}

// idleConns are the connections without a request so far. Browsers open some
// ahead, and a server that stops would wait for them.
type idleConns struct {
	mu     sync.Mutex
	conns  map[net.Conn]bool
	closed bool
}

// track follows the state of a connection, as http.Server.ConnState.
func (s *idleConns) track(c net.Conn, state http.ConnState) {
	s.mu.Lock()
	defer s.mu.Unlock()
	switch {
	case state != http.StateNew:
		delete(s.conns, c)
	case s.closed:
		c.Close()
	default:
		if s.conns == nil {
			s.conns = map[net.Conn]bool{}
		}
		s.conns[c] = true
	}
}

// close closes them, and those that are opened later.
func (s *idleConns) close() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = true
	for c := range s.conns {
		c.Close()
	}
}
