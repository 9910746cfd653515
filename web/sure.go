package web

import (
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/sheet"
)

// unsure refuses to print as long as there are questions, and says where they
// are answered.
func unsure(asks []sheet.Question, where string) error {
	if len(asks) == 0 {
		return nil
	}
	var faults fault.Fields
	for _, q := range asks {
		_, words, _ := strings.Cut(q.Words, ": ")
		faults.Add(q.Path, "%s Nothing is printed until somebody says yes on %s", words, where)
	}
	return faults
}

// answerMitt takes an answer about a measurement of a mitt, and leads back to
// its print page.
func (s *Server) answerMitt(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	form := r.PostForm
	is := doc
	is.Sheet, is.Sure = sheet.Answer(doc.Sheet, doc.Sure, doc.Questions(), form.Get("path"), form.Get("text"), form.Get("answer") == "yes")
	if is, err = s.keep(r.Context(), m, doc, is, false); err != nil {
		return err
	}
	if _, err := s.saveDoc(r.Context(), m.ID, m.Decided, is); err != nil {
		return err
	}
	http.Redirect(w, r, "/mitts/"+chi.URLParam(r, "id")+"/print", http.StatusSeeOther)
	return nil
}
