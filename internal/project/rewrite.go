package project

import (
	"thenar/internal/chart"
	"thenar/internal/sheet"
)

// pathSide is the side of a document in an edit of the sheet.
const pathSide = "side"

// Rewrite puts edits of the sheet into a stored document and gives those that
// take them back, in the order in which they do so: the column of an edit is
// the path of a field, its value the text; empty was not given.
func Rewrite(raw []byte, edits []chart.Edit) (rewritten []byte, inverse []chart.Edit, err error) {
	d, err := Decode(raw)
	if err != nil {
		return nil, nil, err
	}
	inverse = make([]chart.Edit, len(edits))
	for i, e := range edits {
		back := e
		back.Value = d.put(e.Column, e.Value)
		inverse[len(edits)-1-i] = back
	}
	if err := d.Check(); err != nil {
		return nil, nil, err
	}
	rewritten, err = d.Encode()
	return rewritten, inverse, err
}

// put writes a text at a path and gives the one that stood there.
func (d *Document) put(path, text string) (was string) {
	if path == pathSide {
		was, d.Side = string(d.Side), Side(text)
		return was
	}
	was = d.Sheet[path]
	if text == "" {
		delete(d.Sheet, path)
	} else {
		d.Sheet[path] = text
	}
	return was
}

// Difference is the edits of the sheet that turn d into to; its name, and the
// variant beside it, stay.
func (d Document) Difference(to Document) []chart.Edit {
	edits := []chart.Edit{}
	add := func(path, text string) {
		edits = append(edits, chart.Edit{Layer: chart.Sheet, Column: path, Value: text})
	}
	if d.Side != to.Side {
		add(pathSide, string(to.Side))
	}
	both := sheet.Sheet{}
	for _, s := range []sheet.Sheet{d.Sheet, to.Sheet} {
		for path := range s {
			both[path] = "x"
		}
	}
	for _, path := range both.Paths() {
		if d.Sheet[path] != to.Sheet[path] {
			add(path, to.Sheet[path])
		}
	}
	return edits
}
