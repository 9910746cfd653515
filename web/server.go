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
	stopping chan struct{} // closed when those that listen have to go
	turns    *turns        // of heavy work
	http.Handler
}

// New returns a Server of an App. Every request is a line of log, and what goes
// wrong inside another. Other machines come in by the door.
func New(a *app.App, log io.Writer, door Door) *Server {
	s := &Server{app: a, door: door, slowest: usual, log: slog.New(slog.NewTextHandler(log, nil)), stopping: make(chan struct{}), turns: newTurns()}
	s.Handler = s.handler()
	return s
}

// handler is all that a request goes through.
func (s *Server) handler() http.Handler {
	return s.paced(s.logged(guard(s.door, s.access(s.routes()))))
}

// The bounds on a slow or idle connection.
const (
	headerTime = 5 * time.Second
	idleTime   = 2 * time.Minute
	stopTime   = 5 * time.Second
)

// gcPercent lets garbage grow to twice what is in use before it is collected:
// requests allocate much and retain little.
const gcPercent = 200

// bounded is the server of an app: whoever is too slow to ask or to listen is
// cut off, so that nobody can hold the door. The times for a body and an answer
// are those that they begin with; paced moves them on.
func bounded(app *Server, header time.Duration) *http.Server {
	return &http.Server{
		Handler: app, ReadHeaderTimeout: header, ReadTimeout: app.slowest.grace,
		WriteTimeout: app.slowest.grace, IdleTimeout: idleTime, MaxHeaderBytes: 1 << 16,
		ConnContext: narrow,
	}
}

// Serve serves until ctx ends, then lets the requests in hand finish. Once a
// day it makes a backup.
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
	defer daily.Wait() // for a backup in hand
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

// idleConns are the connections on which nothing was asked yet: browsers open
// some ahead, and a server that stops would wait for them.
type idleConns struct {
	mu     sync.Mutex
	conns  map[net.Conn]bool
	closed bool
}

// track is told of every connection what becomes of it.
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

// close closes them, and those that come after.
func (s *idleConns) close() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = true
	for c := range s.conns {
		c.Close()
	}
}
