package web

import (
	"encoding/json"
	"errors"
	"maps"
	"mime"
	"net/http"
	"slices"
	"strings"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/web/view"
)

// handler is an HTTP handler that may fail; answer turns its error into a page.
type handler func(w http.ResponseWriter, r *http.Request) error

// statuses are the HTTP status of each kind of fault.
var statuses = map[fault.Kind]int{
	fault.Invalid:  http.StatusBadRequest,
	fault.NotFound: http.StatusNotFound,
	fault.Conflict: http.StatusConflict,
	fault.Newer:    http.StatusServiceUnavailable,
	fault.Internal: http.StatusInternalServerError,

	fault.Unavailable: http.StatusServiceUnavailable,
}

var titles = map[fault.Kind]string{
	fault.Invalid:  "That can't be used",
	fault.NotFound: "Not here",
	fault.Conflict: "Another window was first",
	fault.Newer:    "A newer file",
	fault.Internal: "Something went wrong",

	fault.Unavailable: "Not now",
}

// retryAfter is the Retry-After, in seconds, of what can't be done right now.
const retryAfter = "5"

// answer runs h, and answers with a page if it fails, or with JSON for a
// script.
func (s *Server) answer(h handler) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		err := h(w, r)
		if err != nil && cutOff(w) {
			if err := answerLate(w, r); err != nil {
				s.log.Error("the page of a failure failed", "error", err)
			}
			return
		}
		if err == nil || r.Context().Err() != nil {
			return // done, or nobody waits for the answer any more
		}
		var tooLarge *http.MaxBytesError
		if errors.As(err, &tooLarge) {
			err = fault.New(fault.Invalid, "This is larger than %d bytes, more than any mitt needs.", tooLarge.Limit)
		}
		kind := fault.KindOf(err)
		switch {
		case errors.Is(err, errTooMany):
			s.log.Warn("too many wait", "path", r.URL.Path)
			w.Header().Set("Retry-After", crowdedFor)
		case kind == fault.Internal:
			s.log.Error("request failed", "method", r.Method, "path", r.URL.Path, "error", err)
		case kind == fault.Unavailable, kind == fault.Newer:
			s.log.Error("can't be done now", "method", r.Method, "path", r.URL.Path, "error", err)
			w.Header().Set("Retry-After", retryAfter)
		}
		if wantsJSON(r) {
			writeJSON(w, statuses[kind], map[string][]string{"error": strings.Split(fault.Message(err), "\n")})
			return
		}
		problem := view.Problem{Title: titles[kind], Message: fault.Message(err)}
		problem.Bar = s.barOf(r)
		if statuses[kind] >= http.StatusInternalServerError {
			problem.To, problem.Fields = sentAgain(r)
		}
		if err := page(w, r, statuses[kind], view.ProblemPage(problem)); err != nil {
			s.log.Error("the page of a failure failed", "error", err)
		}
	}
}

// rooms are the desks to which the pages below a mitt's address belong.
var rooms = map[string]view.Desk{
	"chart": view.ChartDesk, "print": view.PatternDesk, "design": view.PatternDesk, "sheets": view.PatternDesk, "needles": view.KnitDesk, "strips": view.KnitDesk, "tries": view.TryDesk, "habits": view.TryDesk,
}

// barOf returns the bar of the mitt in the address, or nil if there is none, so
// that a failure on its pages leaves the way back.
func (s *Server) barOf(r *http.Request) *view.Bar {
	parts := strings.Split(strings.Trim(r.URL.Path, "/"), "/")
	id, err := mittID(r)
	if err != nil || parts[0] != "mitts" {
		return nil
	}
	name, err := s.app.Name(r.Context(), id)
	if err != nil {
		return nil
	}
	desk := view.FitDesk
	if len(parts) > 2 {
		if of, ok := rooms[parts[2]]; ok {
			desk = of
		}
	}
	if at := chi.URLParam(r, "desk"); view.IsDesk(at) {
		desk = view.Desk(at)
	}
	return view.RoomBar(id, name, desk)
}

// sentAgain returns what a failed form sent, so that the page of the failure
// can send it once more and nothing typed is lost. Files are not part of it.
func sentAgain(r *http.Request) (to string, fields []view.SentField) {
	if r.Method != http.MethodPost || r.ParseForm() != nil {
		return "", nil
	}
	for _, name := range slices.Sorted(maps.Keys(r.PostForm)) {
		for _, value := range r.PostForm[name] {
			fields = append(fields, view.SentField{Name: name, Value: value})
		}
	}
	return r.URL.RequestURI(), fields
}

// wantsJSON reports whether a script asks.
func wantsJSON(r *http.Request) bool {
	sent, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	return sent == "application/json" || strings.HasPrefix(r.Header.Get("Accept"), "application/json")
}

// page renders a component completely before the first byte is written, so that
// a failure in it can become a page of its own.
func page(w http.ResponseWriter, r *http.Request, status int, c templ.Component) error {
	var b rendered
	defer b.free()
	if err := c.Render(r.Context(), &b); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	return b.sendTo(w)
}

func writeJSON(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	// The status is sent: an error now is one of the connection.
	_ = json.NewEncoder(w).Encode(v)
}
