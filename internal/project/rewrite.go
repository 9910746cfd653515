package project

import (
	"thenar/internal/chart"
	"thenar/internal/sheet"
)

// pathSide is the side of a document in an edit of the sheet.
const pathSide = "side"

// Rewrite applies edits of the sheet to a stored document, and returns it with
// the edits that take them back. The column of an edit is the path of a field, the
// side, or a text of the pattern; its value is the text, and an empty value removes it. Rows at the end of a list in
// which nothing typed is left are removed too.
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
	return rewritten, append(after.Difference(before), after.Pattern.Difference(before.Pattern)...), err
}

// put sets the text at a path of the sheet, a text of the pattern, or the side of the
// document.
func (d *Document) put(path, text string) {
	if key, _, ok := PatternEdit(path); ok {
		d.Pattern = d.Pattern.With(key, text)
		return
	}
	if path == pathSide {
		d.Side = Side(text)
		return
	}
	d.Sheet.Put(path, text)
}

// Difference returns the edits that turn the sheet and side of d into those of
// to. Names, second variants and what belongs to the pattern are not compared.
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
