package app

import (
	"context"

	"thenar/internal/chart"
	"thenar/internal/store"
)

// News is what happened to a mitt after a revision, as a listening page is
// told.
type News struct {
	Revision int64         `json:"revision"`
	Decided  int64         `json:"decided"`
	Strokes  []store.Drawn `json:"strokes"`
	CanUndo  bool          `json:"can_undo"`
	CanRedo  bool          `json:"can_redo"`
	Restored int64         `json:"-"` // changes when a backup is put back
}

// News returns what happened to a mitt after a revision, whether through this
// app or through another program that writes to the file.
func (a *App) News(ctx context.Context, id, after int64) (News, error) {
	n, err := a.store.Since(ctx, id, after)
	if err != nil {
		return News{}, err
	}
	news := News{n.Revision, n.Decided, n.Strokes, n.CanUndo, n.CanRedo, n.Restored}
	if news.Strokes == nil {
		news.Strokes = []store.Drawn{}
	}
	for i := range news.Strokes {
		if news.Strokes[i].Edits == nil {
			news.Strokes[i].Edits = []chart.Edit{}
		}
	}
	return news, nil
}
