package web

import (
	"context"
	"net/http"

	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// load finds the mitt of the address.
func (s *Server) load(r *http.Request) (store.Mitt, project.Document, error) {
	id, err := mittID(r)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	return s.mitt(r.Context(), id)
}

// mitt reads a mitt with its document.
func (s *Server) mitt(ctx context.Context, id int64) (store.Mitt, project.Document, error) {
	m, err := s.store.Load(ctx, id)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	doc, err := project.Decode(m.Document)
	return m, doc, err
}

// saveDoc appends a document to a mitt's revisions.
func (s *Server) saveDoc(ctx context.Context, id, after int64, doc project.Document) (int64, error) {
	raw, err := doc.Encode()
	if err != nil {
		return 0, err
	}
	return s.store.Save(ctx, id, after, raw)
}

// outputs works out a mitt.
func (s *Server) outputs(ctx context.Context, m store.Mitt, doc project.Document) (*project.Outputs, error) {
	return s.app.Outputs(ctx, m.ID, doc)
}

// chartAsk reads from an address what of a mitt is charted, and how.
func chartAsk(r *http.Request) view.ChartAsk { return view.ReadChartAsk(r.URL.Query()) }
