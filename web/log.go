package web

import (
	"context"
	"log/slog"
	"net/http"
	"strings"
	"time"

	"github.com/go-chi/chi/v5/middleware"
)

// slow is how long a request may take before it is logged as a warning.
const slow = time.Second

// logged logs each request and its outcome, but nothing that a person wrote: no
// query, which may hold the key, no form, and no address of the browser.
func (s *Server) logged(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun, seen := time.Now(), middleware.NewWrapResponseWriter(w, r.ProtoMajor)
		next.ServeHTTP(seen, r)
		took, level := time.Since(begun), slog.LevelInfo
		line := lineOfRequest(took)
		if stays(r) {
			line = "listened"
		} else if took >= slow {
			level = slog.LevelWarn
		}
		s.log.Log(context.WithoutCancel(r.Context()), level, line,
			"method", clipped(r.Method), "path", clipped(r.URL.Path), "status", max(seen.Status(), http.StatusOK), "bytes", seen.BytesWritten(), "ms", took.Milliseconds())
	})
}

// lineOfRequest returns the message for a request that took this long.
func lineOfRequest(took time.Duration) string {
	if took >= slow {
		return "slow request"
	}
	return "request"
}

// stays reports whether a request is an event stream, which takes as long as
// somebody listens.
func stays(r *http.Request) bool { return strings.HasSuffix(r.URL.Path, "/events") }

// clipped shortens text for the log.
func clipped(text string) string {
	const maxBytes = 100
	if len(text) > maxBytes {
		return text[:maxBytes] + "…"
	}
	return text
}
