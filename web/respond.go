package web

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"mime"
	"net/http"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/fault"
	"thenar/web/view"
)

// handler is a handler that may fail; answer turns the failure into a page.
type handler func(w http.ResponseWriter, r *http.Request) error

// statuses are the answers to each kind of fault.
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
	fault.Conflict: "Saved in between",
	fault.Newer:    "A newer file",
	fault.Internal: "Something went wrong",

	fault.Unavailable: "Not now",
}

// retryAfter is in how many seconds what can't be done now may work, as a
// browser or script is told.
const retryAfter = "5"

// answer runs h; a failure becomes a page, or JSON for a script.
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
		if statuses[kind] >= http.StatusInternalServerError {
			problem.To, problem.Fields = sentAgain(r)
		}
		if err := page(w, r, statuses[kind], view.ProblemPage(problem)); err != nil {
			s.log.Error("the page of a failure failed", "error", err)
		}
	}
}

// sentAgain is what a form sent and could not be done, to send it once more:
// nothing that was typed is lost with the page. A file is not part of it.
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

// wantsJSON tells whether a script asks.
func wantsJSON(r *http.Request) bool {
	sent, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	return sent == "application/json" || strings.HasPrefix(r.Header.Get("Accept"), "application/json")
}

// page renders a component whole before a byte is written, so that a failure
// inside it becomes a page of its own.
func page(w http.ResponseWriter, r *http.Request, status int, c templ.Component) error {
	var b bytes.Buffer
	if err := c.Render(r.Context(), &b); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, err := b.WriteTo(w)
	return err
}

func writeJSON(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	// The status is sent: a failure now is the connection's.
	_ = json.NewEncoder(w).Encode(v)
}
