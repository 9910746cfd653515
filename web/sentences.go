package web

import (
	"errors"
	"net/http"
	"net/url"
	"slices"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showSentences shows the words of a pattern, line by line.
func (s *Server) showSentences(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	list, err := s.app.OpenSentences(r.Context(), id, q.Get("open"), q.Get("from"))
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.SentencesPage(view.Sentences{Sentences: list}))
}

// saveSentences saves what was typed of the words of a pattern, and leads to the line that is
// written next, or to the one that was written.
func (s *Server) saveSentences(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	list, open, from, err := s.app.SaveSentences(r.Context(), id, form)
	var fields fault.Fields
	switch {
	case err == nil:
		return toMitt(w, r, id, view.SentencesBelow+nextSentence(form, open, from))
	case list.Stamp == "":
		return err
	case fault.KindOf(err) == fault.Conflict:
		message := fault.Message(err) + " What you typed stands below, not saved. Look at the numbers and save once more."
		return page(w, r, http.StatusConflict, view.SentencesPage(view.Sentences{Sentences: list, Message: message}))
	case errors.As(err, &fields):
		return page(w, r, http.StatusBadRequest, view.SentencesPage(view.Sentences{Sentences: list, Message: "Nothing is saved yet: a sentence can’t be kept as it is."}))
	}
	return err
}

// nextSentence returns the query and fragment of the line that is written next, or else of one
// that was written.
func nextSentence(form app.Typed, open, from string) string {
	if open != "" {
		q := url.Values{"open": {open}}
		if from != "" {
			q.Set("from", from)
		}
		return "?" + q.Encode() // without a fragment, which would keep the field from being entered
	}
	var keys []string
	for name := range form {
		if view.IsSentence(name) {
			keys = append(keys, name)
		}
	}
	keys = append(keys, form["back"]...)
	if len(keys) == 0 {
		return ""
	}
	slices.Sort(keys)
	return "#" + view.SentenceAt(keys[0])
}
