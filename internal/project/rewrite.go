package project

import (
	"thenar/internal/chart"
	"thenar/internal/sheet"
)

// pathSide is the side of a document in an edit of the sheet.
const pathSide = "side"

// Rewrite puts edits of the sheet into a stored document and gives those that
// take them back: the column of an edit is the path of a field, its value the
// text; empty was not given. What then remains of a row at the end of a list,
// if only choices do, goes too.
func Rewrite(raw []byte, edits []chart.Edit) (rewritten []byte, inverse []chart.Edit, err error) {
	before, err := Decode(raw)
	if err != nil {
		return nil, nil, err
	}
	after := before
	after.Sheet = before.Sheet.Clone()
	for _, e := range edits {
		after.put(e.Column, e.Value)
	}
	after.Sheet.Trim()
	if err := after.Check(); err != nil {
		return nil, nil, err
	}
	rewritten, err = after.Encode()
	return rewritten, after.Difference(before), err
}

// put writes a text at a path.
func (d *Document) put(path, text string) {
	if path == pathSide {
		d.Side = Side(text)
		return
	}
	d.Sheet.Put(path, text)
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
