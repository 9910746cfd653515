package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strconv"
	"time"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// lookEvery is how often a listening page is given what is new. breatheAll is
// how long the stream may be silent before an empty event shows that it is
// still open.
const (
	lookEvery  = 250 * time.Millisecond
	breatheAll = 15 * time.Second
)

// listen sends a page what happens to its mitt after a revision, as events,
// while it listens: changes through this server, and those that any other
// program writes to the file. If a backup was put back since the page was made,
// it is told only that.
func (s *Server) listen(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	after, err := strconv.ParseInt(r.URL.Query().Get("after"), 10, 64)
	if err != nil || after < 0 {
		return fault.New(fault.Invalid, "after: is %.20q; write the number that the page has", r.URL.Query().Get("after"))
	}
	news, err := s.app.News(r.Context(), id, after)
	if err != nil {
		return err
	}
	known := r.URL.Query().Get("restored")
	if known == "" {
		known = strconv.FormatInt(news.Restored, 10)
	}
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	line := http.NewResponseController(w)
	look := time.NewTicker(lookEvery)
	defer look.Stop()
	silent := time.Now().Add(-breatheAll) // so that something is sent at once, which opens the stream
	for {
		if !s.stillIn(r.Context()) { // asked after reading the news, so that a device let out meanwhile gets none
			return nil
		}
		switch {
		case known != strconv.FormatInt(news.Restored, 10):
			write(w, line, "event: restored\ndata: {}\n\n")
			return nil
		case news.Revision > after:
			if !tell(w, line, news) {
				return nil
			}
			after, silent = news.Revision, time.Now()
		case time.Since(silent) >= breatheAll:
			if !write(w, line, ":\n\n") {
				return nil
			}
			silent = time.Now()
		}
		select {
		case <-look.C:
		case <-r.Context().Done():
			return nil
		case <-s.stopping:
			return nil
		}
		if news, err = s.app.News(r.Context(), id, after); err != nil {
			return nil // nobody listens any more, or the page connects again by itself
		}
	}
}

func tell(w http.ResponseWriter, line *http.ResponseController, n app.News) bool {
	raw, err := json.Marshal(n)
	return err == nil && write(w, line, fmt.Sprintf("data: %s\n\n", raw))
}

// write sends text on the stream, and reports whether that worked.
func write(w http.ResponseWriter, line *http.ResponseController, text string) bool {
	if _, err := fmt.Fprint(w, text); err != nil {
		return false
	}
	return line.Flush() == nil
}
