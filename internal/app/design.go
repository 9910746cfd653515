package app

import (
	"context"
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/units"
)

// Design is a mitt in several sizes, as it is shown: what was typed of them, saved or
// not, and all that follows.
type Design struct {
	ID     int64
	Doc    project.Document
	Stamp  string // tells what is saved of the sizes from what was before
	Texts  grade.Texts
	Graded *grade.Graded // nil where the sizes can't be worked out, or there are none
	Fault  error         // why not
	Faults fault.Fields  // of single fields
	Beside grade.Texts   // what is saved, where another window saved in between

	out   issue                // when its text was changed last, and which version it is
	Tried []int64              // the tries that have a photograph
	Wrote project.PatternTexts // what was typed for the pattern, where that could not be saved; else nil
}

// maxGraded is the number of mitts whose sizes are held: a page shows them, and its proofs,
// its files and its pictures ask for the same ones.
const maxGraded = 16

// design works out the sizes of a document, unless they are held.
func (a *App) design(ctx context.Context, id int64, doc project.Document, texts grade.Texts) Design {
	d := Design{ID: id, Doc: doc, Stamp: stamp(doc.Design), Texts: texts}
	if texts.Sizes() == 0 {
		return d
	}
	key := stamp([2]map[string]string{doc.Sheet, texts})
	if known, ok := a.graded.get(id, key); ok {
		d.Graded = known
		return d
	}
	design, err := grade.FromTexts(doc.Sheet, texts)
	if err == nil {
		d.Graded, err = grade.Grade(ctx, design)
	}
	if err == nil {
		a.graded.put(id, key, d.Graded)
	}
	d.Fault = err
	var fields fault.Fields
	if errors.As(err, &fields) {
		d.Faults = texts.Typed(fields)
	}
	return d
}

// OpenDesign returns a mitt in its sizes.
func (a *App) OpenDesign(ctx context.Context, id int64) (Design, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{Tries: true}))
	if err != nil {
		return Design{}, err
	}
	d := a.design(ctx, id, w.doc, w.doc.Design)
	for _, t := range w.Tries {
		if t.Photo {
			d.Tried = append(d.Tried, t.ID)
		}
	}
	return d, nil
}

// stampField names the field in which a form tells what it was made from.
const stampField = "stamp"

// The fields of the sizes' form that are no texts of theirs. A button adds its own: "set"
// with "PATH=TEXT", or "drop" with the number of the size that is taken out. A number that
// is to be fixed is told in three fields.
const (
	setField   = "set"
	dropField  = "drop"
	FixField   = "fix"       // its key
	FixForSize = "fix_for"   // the size, by its number from 0; empty: every size
	FixAt      = "fix_value" // what it is fixed at
)

// ofForm begins the names of fields that say what sizes may be filled with.
const ofForm = "fill."

// FillField returns the name of a field that says what sizes may be filled with.
func FillField(name string) string { return ofForm + name }

// texts lays the fields of a form over what is saved of the sizes: what the form does
// not show stays as it was.
func (t Typed) texts(saved grade.Texts) (grade.Texts, fault.Fields) {
	out := maps.Clone(saved)
	if out == nil {
		out = grade.Texts{}
	}
	var faults fault.Fields
	put := func(path, text string) {
		if out[path] = text; strings.TrimSpace(text) == "" {
			delete(out, path)
		}
	}
	for name, values := range t {
		switch name {
		case stampField, setField, dropField, FixField, FixForSize, FixAt:
		default:
			if !strings.HasPrefix(name, ofForm) {
				put(name, values[0])
			}
		}
	}
	t.fix(put, &faults)
	if set, ok := t[setField]; ok {
		path, text, _ := strings.Cut(set[0], "=")
		put(path, text)
	}
	if drop, ok := t[dropField]; ok {
		out = out.Without(drop[0])
	}
	out.Check(&faults)
	return out, faults
}

// fix puts the number that is to be fixed among the texts.
func (t Typed) fix(put func(path, text string), faults *fault.Fields) {
	value := strings.Join(t[FixAt], "")
	if strings.TrimSpace(value) == "" {
		return
	}
	n, ok := mitt.NumberOf(strings.Join(t[FixField], ""))
	if !ok {
		faults.Add(FixField, "is missing; choose the number that is to be %.40q", value)
		return
	}
	path := n.Path()
	if size := strings.Join(t[FixForSize], ""); size != "" {
		at, _ := strconv.Atoi(size)
		path = grade.SizePath(at, path)
	}
	put(path, value)
}

// SaveDesign saves what was typed of the sizes of a mitt. If another window saved
// other sizes since the form was made, nothing is saved, and the design that comes back
// has both. What is saved is not worked out: OpenDesign does.
func (a *App) SaveDesign(ctx context.Context, id int64, typed Typed) (Design, error) {
	return a.changeDesign(ctx, id, typed, func(texts grade.Texts, _ units.Unit) (grade.Texts, error) { return texts, nil })
}

// errOvertaken says that another window saved first.
var errOvertaken = fault.New(fault.Conflict, "Another window saved other sizes in between.")

// changeDesign saves what was typed of the sizes, changed in one way, and returns them. If
// they can't be kept, they come back unsaved and worked out, with the error.
func (a *App) changeDesign(ctx context.Context, id int64, typed Typed, change func(grade.Texts, units.Unit) (grade.Texts, error)) (Design, error) {
	var doc project.Document
	var texts grade.Texts
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		doc = w.doc
		var faults fault.Fields
		if texts, faults = typed.texts(doc.Design); len(faults) > 0 {
			return store.Change{}, faults
		}
		if stamped, ok := typed[stampField]; ok && stamped[0] != stamp(doc.Design) || !ok && !maps.Equal(texts, doc.Design) {
			return store.Change{}, errOvertaken
		}
		changed, err := change(texts, doc.Sheet.Unit())
		if err != nil {
			return store.Change{}, err
		}
		next := doc
		if next.Design = changed; maps.Equal(changed, doc.Design) {
			return store.Change{}, nil
		}
		if err := next.Check(); err != nil {
			return store.Change{}, err
		}
		doc, texts = next, changed
		return w.decision(next)
	})
	switch {
	case doc.Sheet == nil: // there is no such mitt
		return Design{}, err
	case err == nil:
		return Design{ID: id, Doc: doc, Stamp: stamp(doc.Design), Texts: texts}, nil
	}
	d := a.design(ctx, id, doc, texts)
	if errors.Is(err, errOvertaken) {
		d.Beside = doc.Design
	}
	var fields fault.Fields
	if errors.As(err, &fields) {
		d.Faults = append(fields, d.Faults...)
	}
	return d, err
}

// OpenSize begins a mitt with a size of another: its hand, what the common text fixes,
// and the drawing. It returns the number of the new mitt.
func (a *App) OpenSize(ctx context.Context, id int64, name string) (int64, error) {
	d, err := a.OpenDesign(ctx, id)
	if err != nil {
		return 0, err
	}
	if d.Graded == nil {
		return 0, fault.New(fault.Invalid, "There are no sizes to open yet. %s", d.inTheWay())
	}
	at := slices.IndexFunc(d.Graded.Sizes, func(s grade.Planned) bool { return s.Name == name })
	if at < 0 {
		return 0, fault.New(fault.NotFound, "This mitt has no size of that name any more.")
	}
	return a.begin(ctx, id, func(doc project.Document) project.Document {
		doc.Name = suffixed(doc.Name, ", size "+name)
		doc.Archived, doc.Design, doc.Pattern, doc.WhatIf, doc.Sure = false, nil, nil, nil, nil
		doc.Sheet = d.Graded.Sizes[at].Sheet.Clone()
		return doc
	})
}

// textless says that the sizes have no text, and why.
func (d *Design) textless() error {
	return fault.New(fault.Invalid, "There is no text for several sizes yet. %s", d.inTheWay())
}

// inTheWay says why the sizes are not worked out.
func (d *Design) inTheWay() string {
	if d.Fault == nil {
		return "Write down the hands first."
	}
	return "In the way: " + fault.Message(d.Fault)
}

// UnitOf returns the unit in which the lengths of a mitt's sizes are typed.
func (d *Design) UnitOf() units.Unit { return d.Doc.Sheet.Unit() }
