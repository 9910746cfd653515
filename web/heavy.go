package web

import (
	"crypto/rand"
	"errors"
	"net/http"
	"net/url"
	"strings"

	"thenar/internal/fault"
	"thenar/web/view"
)

// crowdedFor is the Retry-After, in seconds, when too many requests wait.
const crowdedFor = "60"

var errTooMany = fault.New(fault.Unavailable, "Many ask for sheets, tables or pictures at the same time. Try again in a minute.")

// heavy returns a handler that lets h run when it is its turn. The turn ends
// with the first byte of the response, which is complete by then, or when h
// gives up because nobody waits for it.
func (s *Server) heavy(h handler) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		done, err := s.turn(w, r)
		if done == nil {
			return err
		}
		defer done()
		return h(&turned{ResponseWriter: w, done: done}, r)
	}
}

// turn waits for a turn. If it does not come soon, turn answers with a page
// that says so, and done is nil.
func (s *Server) turn(w http.ResponseWriter, r *http.Request) (done func(), err error) {
	id, patience, reader := r.URL.Query().Get("turn"), s.turns.script, readsPages(r)
	if id == "" || len(id) > 64 {
		id = rand.Text()
	}
	if reader {
		patience = s.turns.page
	}
	done, before, err := s.turns.take(r.Context(), id, patience)
	switch {
	case errors.Is(err, errCrowd), err == nil && done == nil && !reader:
		return nil, errTooMany
	case err != nil || done != nil:
		return done, err
	}
	q := r.URL.Query()
	q.Set("turn", id)
	again := url.URL{Path: r.URL.Path, RawQuery: q.Encode()}
	w.Header().Set("Refresh", askAgain+"; url="+again.String())
	w.Header().Set("Retry-After", askAgain)
	return nil, page(w, r, http.StatusAccepted, view.WaitingPage(before, again.String()))
}

// readsPages reports whether a person sees the response as a page of its own.
func readsPages(r *http.Request) bool {
	dest := r.Header.Get("Sec-Fetch-Dest")
	return r.Method == http.MethodGet && strings.Contains(r.Header.Get("Accept"), "text/html") && (dest == "" || dest == "document")
}

// turned ends a turn with the first byte, so that somebody who downloads slowly
// keeps nobody waiting.
type turned struct {
	http.ResponseWriter
	done func()
}

// WriteHeader ends the turn, and implements http.ResponseWriter.
func (t *turned) WriteHeader(status int) {
	t.done()
	t.ResponseWriter.WriteHeader(status)
}

// Write ends the turn, and implements http.ResponseWriter.
func (t *turned) Write(p []byte) (int, error) {
	t.done()
	return t.ResponseWriter.Write(p)
}

// Unwrap lets http.ResponseController reach the connection.
func (t *turned) Unwrap() http.ResponseWriter { return t.ResponseWriter }
