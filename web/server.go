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
	"sync"
	"time"

	"thenar/internal/project"
	"thenar/internal/store"
)

// Server answers the app's requests.
type Server struct {
	store    *store.Store
	log      *slog.Logger
	planners sync.Pool     // *project.Planner: each serves one request at a time
	stopping chan struct{} // closed when those that listen have to go
	http.Handler
}

// New gives a Server on a store; what goes wrong inside is written to log. A
// key, if there is one, lets other machines in.
func New(st *store.Store, log io.Writer, key string) *Server {
	s := &Server{store: st, log: slog.New(slog.NewTextHandler(log, nil)), stopping: make(chan struct{})}
	s.planners.New = func() any { return project.NewPlanner() }
	s.Handler = guard(key, s.routes())
	return s
}

// The bounds on a slow or idle connection.
const (
	headerTime = 5 * time.Second
	bodyTime   = 30 * time.Second
	idleTime   = 2 * time.Minute
	stopTime   = 5 * time.Second
)

// Serve serves until ctx ends, then lets the requests in hand finish.
func Serve(ctx context.Context, ln net.Listener, st *store.Store, log io.Writer, key string) error {
	app := New(st, log, key)
	server := &http.Server{
		Handler: app, ReadHeaderTimeout: headerTime, ReadTimeout: bodyTime,
		WriteTimeout: bodyTime, IdleTimeout: idleTime, MaxHeaderBytes: 1 << 16,
	}
	server.RegisterOnShutdown(func() { close(app.stopping) })
	done := make(chan error, 1)
	go func() {
		<-ctx.Done()
		stopping, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
		defer cancel()
		done <- server.Shutdown(stopping)
	}()
	if err := server.Serve(ln); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("web.Serve: %w", err)
	}
	return <-done
}

// planner lends a planner of the pool; the function gives it back.
func (s *Server) planner() (*project.Planner, func()) {
	pl := s.planners.Get().(*project.Planner)
	return pl, func() { s.planners.Put(pl) }
}
