package web

import (
	"context"
	"log/slog"
	"net/http"
	"strings"
	"time"

	"github.com/go-chi/chi/v5/middleware"
)

// slow is how long a request may take before its line is marked.
const slow = time.Second

// logged writes a line for each request: what was asked for and how it went.
// What a person wrote is not in it: no query, which may hold a key, no form,
// no address of the browser.
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

// lineOfRequest marks a request that took long.
func lineOfRequest(took time.Duration) string {
	if took >= slow {
		return "slow request"
	}
	return "request"
}

// stays tells whether a request is a line of events, which takes as long as
// somebody listens.
func stays(r *http.Request) bool { return strings.HasSuffix(r.URL.Path, "/events") }

// clipped keeps a line short, whatever was asked for.
func clipped(text string) string {
	const most = 100
	if len(text) > most {
		return text[:most] + "…"
	}
	return text
}
