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

// How often a page that listens is looked after, and how long a line may be
// silent before it is said that it still stands.
const (
	lookEvery  = 250 * time.Millisecond
	breatheAll = 15 * time.Second
)

// listen tells a page what comes to its mitt after a revision, as events, for
// as long as it listens: from this server, and from any other program that
// writes into the file. Where a backup was put back since the page was made,
// it is told only that.
func (s *Server) listen(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	after, err := strconv.ParseInt(r.URL.Query().Get("after"), 10, 64)
	if err != nil || after < 0 {
		return fault.New(fault.Invalid, "after: is %.20q; write the revision that the page has", r.URL.Query().Get("after"))
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
	silent := time.Now().Add(-breatheAll) // the first breath opens the line
	for {
		if !s.stillIn(r.Context()) { // asked after the news, so that none goes to one who is out
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
			return nil // nobody listens any more, or the page asks again by itself
		}
	}
}

func tell(w http.ResponseWriter, line *http.ResponseController, n app.News) bool {
	raw, err := json.Marshal(n)
	return err == nil && write(w, line, fmt.Sprintf("data: %s\n\n", raw))
}

// write sends a part of the line.
func write(w http.ResponseWriter, line *http.ResponseController, text string) bool {
	if _, err := fmt.Fprint(w, text); err != nil {
		return false
	}
	return line.Flush() == nil
}
