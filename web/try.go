package web

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showTries shows the form for a new try, and all tries in the order of time.
func (s *Server) showTries(w http.ResponseWriter, r *http.Request, id int64) error {
	q := r.URL.Query()
	list, err := s.app.Tries(r.Context(), id, q.Get("side"), q.Get("section"), q.Get("round"))
	if err != nil {
		return err
	}
	return triesPage(w, r, http.StatusOK, view.NewTries(list, nil))
}

func triesPage(w http.ResponseWriter, r *http.Request, status int, t view.Tries) error {
	q := r.URL.Query()
	if q.Has("beside") || q.Has("two") {
		t.Beside(q["beside"])
	}
	t.Back = q.Get("back") != ""
	return page(w, r, status, view.TriesPage(t))
}

// addTry saves a try, and redirects to what it suggests. What can't be used
// comes back as it was typed.
func (s *Server) addTry(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	t, err := readTry(r)
	if err != nil {
		return err
	}
	try, err := s.app.AddTry(r.Context(), id, t)
	var faults fault.Fields
	if errors.As(err, &faults) && !wantsJSON(r) {
		list, err := s.app.RefusedTry(r.Context(), id, t.Try)
		if err != nil {
			return err
		}
		page := view.NewTries(list, faults)
		page.Form.Instead, _ = strconv.ParseInt(r.PostFormValue("instead"), 10, 64) // 0: none
		return triesPage(w, r, http.StatusBadRequest, page)
	}
	if err != nil {
		return err
	}
	if instead, err := strconv.ParseInt(r.PostFormValue("instead"), 10, 64); err == nil && instead != try {
		if err := s.app.SetAside(r.Context(), id, instead, true); err != nil {
			return err
		}
	}
	return send(w, r, view.MittAt(id, fmt.Sprintf("/tries/%d", try)))
}

// send redirects a browser, or tells a script where to go.
func send(w http.ResponseWriter, r *http.Request, to string) error {
	if wantsJSON(r) {
		writeJSON(w, http.StatusOK, map[string]string{"to": to})
		return nil
	}
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// readTry reads the form of a try with its photograph.
func readTry(r *http.Request) (app.NewTry, error) {
	if err := readParts(r); err != nil {
		return app.NewTry{}, err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll() // leaves nothing on the disk
	}
	var photograph io.Reader
	if file, _, err := r.FormFile("photo"); err == nil { // otherwise none was sent
		defer file.Close()
		photograph = file
	}
	return app.ReadTry(r.Context(), r.PostFormValue, photograph)
}

// tryID returns the number of the mitt in the address, and of its try.
func tryID(r *http.Request) (id, try int64, err error) {
	if id, err = mittID(r); err != nil {
		return 0, 0, err
	}
	try, _ = strconv.ParseInt(chi.URLParam(r, "try"), 10, 64) // 0, which no try has, if it is no number
	return id, try, nil
}

// showPhoto sends the photograph of a try.
func (s *Server) showPhoto(w http.ResponseWriter, r *http.Request) error {
	id, try, err := tryID(r)
	if err != nil {
		return err
	}
	picture, err := s.app.Photo(r.Context(), id, try)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/jpeg")
	_, err = w.Write(picture)
	return err
}

// ticks returns the corrections that the address or the form accepts, and those
// that it offered.
func ticks(r *http.Request) app.Ticks {
	_ = r.FormValue("keep") // fills r.Form
	return app.Ticks{Keep: r.Form["keep"], Offered: r.Form["offered"], Free: strings.Fields(r.FormValue("free"))}
}

// showTry shows what a try suggests, or what was answered.
func (s *Server) showTry(w http.ResponseWriter, r *http.Request) error {
	id, try, err := tryID(r)
	if err != nil {
		return err
	}
	v, err := s.app.WeighTry(r.Context(), id, try, ticks(r))
	if asked, ok := unfitting(r, err); ok {
		return s.askAgain(w, r, v.Entry, asked)
	}
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.TryAnswerPage(view.NewTryAnswer(v)))
}

// unfitting returns what a noted try says that no longer fits the plan; ok is
// false if a script asks, which reads the messages itself.
func unfitting(r *http.Request, err error) (faults fault.Fields, ok bool) {
	return faults, errors.As(err, &faults) && !wantsJSON(r)
}

// askAgain shows the form of a noted try that no longer fits the plan, as it
// was typed, so that it can be put right. Saving it puts the earlier note away.
func (s *Server) askAgain(w http.ResponseWriter, r *http.Request, e app.TryEntry, faults fault.Fields) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	list, err := s.app.NotedAgain(r.Context(), id, e.Try)
	if err != nil {
		return err
	}
	t := view.NewTries(list, faults)
	t.Form.Instead = e.ID
	return triesPage(w, r, http.StatusConflict, t)
}

// answerTry puts the accepted corrections into the mitt, and redirects to its
// needles.
func (s *Server) answerTry(w http.ResponseWriter, r *http.Request) error {
	id, try, err := tryID(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	after, err := strconv.ParseInt(r.PostForm.Get("after"), 10, 64)
	if err != nil {
		return fault.New(fault.Invalid, "after: is no moment of this mitt; open the try again")
	}
	side, err := s.app.AnswerTry(r.Context(), id, try, app.TryAnswer{
		After: after, Key: r.PostForm.Get("key"), Rip: r.PostForm.Get("how") == "rip", Finger: view.RippedFinger(r.PostForm.Get("how")), Ticks: ticks(r),
	})
	if _, ok := unfitting(r, err); ok {
		return send(w, r, view.MittAt(id, fmt.Sprintf("/tries/%d", try))) // whose page says what doesn't fit
	}
	if err != nil {
		return err
	}
	return send(w, r, view.KnitDesk.At(id)+"?side="+side)
}

// takeBack undoes the answer to a try.
func (s *Server) takeBack(w http.ResponseWriter, r *http.Request) error {
	id, try, err := tryID(r)
	if err != nil {
		return err
	}
	if err := s.app.TakeBack(r.Context(), id, try); err != nil {
		return err
	}
	return send(w, r, view.TryDesk.At(id)+"?back=1#line")
}

// setAside puts away a try that was noted by mistake, or brings it back.
func (s *Server) setAside(w http.ResponseWriter, r *http.Request) error {
	id, try, err := tryID(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	if err := s.app.SetAside(r.Context(), id, try, r.PostForm.Get("aside") != "false"); err != nil {
		return err
	}
	return send(w, r, view.TryDesk.At(id)+"#line")
}
