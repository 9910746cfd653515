package app

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/store"
	"thenar/internal/units"
)

// Texts are the texts that were typed, by the names of their fields. A field
// that was not sent leaves its value as it is.
type Texts map[string]string

// Choice is a mitt of the shelf that can be the pattern of a class.
type Choice struct {
	ID   int64
	Name string
}

// Class is a class, saved or only typed, with what each student knits.
type Class struct {
	ID    int64
	Doc   roster.Class
	Stamp string // of the saved values that its form shows
	Lines []roster.Line
	Mitts []Choice // that can be its pattern
	Newer bool     // the pattern's mitt was changed since it was taken
	Cost  *Cost    // of printing it as it is saved; nil if it was not counted yet
}

// ClassEntry is one class in the list of classes.
type ClassEntry struct {
	ID       int64
	Name     string
	Date     string
	Students int
	Archived bool
}

// Classes returns all classes, the one changed last first, and the mitts that a
// new class can begin with.
func (a *App) Classes(ctx context.Context) ([]ClassEntry, []Choice, error) {
	classes, mitts, err := a.store.Classes(ctx)
	if err != nil {
		return nil, nil, err
	}
	var list []ClassEntry
	for _, c := range classes {
		doc, err := roster.Decode(c.Document)
		if err != nil {
			return nil, nil, err
		}
		list = append(list, ClassEntry{c.ID, doc.Name, doc.Date, len(doc.Students), doc.Archived})
	}
	choices, _, err := choicesOf(mitts, nil)
	return list, choices, err
}

// choicesOf returns the mitts that can be the pattern of a class: those that
// are not put away, and the current one. newer reports whether the current one
// was changed since it was taken.
func choicesOf(mitts []store.Mitt, now *roster.Pattern) (list []Choice, newer bool, err error) {
	for _, m := range mitts {
		doc, err := project.Decode(m.Document)
		if err != nil {
			return nil, false, err
		}
		taken := now != nil && m.ID == now.Mitt
		newer = newer || taken && m.Revision > now.Revision
		if taken || !doc.Archived {
			list = append(list, Choice{m.ID, doc.Name})
		}
	}
	return list, newer, nil
}

// Class returns a class as it is saved.
func (a *App) Class(ctx context.Context, id int64) (Class, error) {
	c, mitts, err := a.store.ClassAndMitts(ctx, id)
	if err != nil {
		return Class{}, err
	}
	doc, err := roster.Decode(c.Document)
	if err != nil {
		return Class{}, err
	}
	class, err := a.reviewed(ctx, id, doc, mitts)
	if cost, ok := a.costs.get(id, sha256.Sum256(c.Document)); ok {
		class.Cost = &cost
	}
	return class, err
}

// reviewed returns a class with what each of its students knits.
func (a *App) reviewed(ctx context.Context, id int64, doc roster.Class, mitts []store.Mitt) (c Class, err error) {
	c = Class{ID: id, Doc: doc, Stamp: stamp(about(doc))}
	pl, done := a.Planner()
	defer done()
	if c.Lines, err = doc.Review(ctx, pl, doc.Whole()); err != nil {
		return Class{}, err
	}
	c.Mitts, c.Newer, err = choicesOf(mitts, doc.Pattern)
	return c, err
}

// unsaved returns a class as a form has it, without saving it.
func (a *App) unsaved(ctx context.Context, id int64, doc roster.Class) (Class, error) {
	mitts, err := a.store.List(ctx)
	if err != nil {
		return Class{}, err
	}
	return a.reviewed(ctx, id, doc, mitts)
}

// stamp returns a short hash of v. A form carries the stamp of what it shows,
// so that saving it can tell whether that was changed elsewhere.
func stamp(v any) string {
	raw, _ := json.Marshal(v) // plain structures always marshal
	sum := sha256.Sum256(raw)
	return hex.EncodeToString(sum[:8])
}

// about returns a class with only what its form shows.
func about(c roster.Class) roster.Class {
	c.Students, c.Next, c.Pattern, c.Print, c.Archived = nil, 0, nil, "", false
	return c
}

// changeClass reads a class, has a change made outside any transaction, saves
// the result as the next revision, and returns it. Where somebody else saved in
// between, it starts over.
func (a *App) changeClass(ctx context.Context, id int64, change func(*roster.Class) error) (doc roster.Class, err error) {
	for range maxAttempts {
		var c store.Class
		if c, err = a.store.LoadClass(ctx, id); err != nil {
			return doc, err
		}
		if doc, err = roster.Decode(c.Document); err != nil {
			return doc, err
		}
		if err = change(&doc); err != nil {
			return doc, err
		}
		if err = doc.Check(); err != nil {
			return doc, err
		}
		raw, err2 := doc.Encode()
		if err2 != nil {
			return doc, err2
		}
		if _, err = a.store.SaveClass(ctx, id, c.Revision, raw); fault.KindOf(err) != fault.Conflict || ctx.Err() != nil {
			return doc, err
		}
	}
	return doc, err
}

// NewClass begins a class and returns its number. Its pattern is a mitt of the
// shelf, or none if mitt is 0.
func (a *App) NewClass(ctx context.Context, name string, mitt int64) (id int64, err error) {
	doc := roster.New(strings.TrimSpace(name))
	if doc.Name == "" {
		doc.Name = "My class"
	}
	if mitt != 0 {
		p, err := a.pattern(ctx, mitt)
		if err != nil {
			return 0, err
		}
		doc.SetPattern(p)
	}
	if err := doc.Check(); err != nil {
		return 0, err
	}
	raw, err := doc.Encode()
	if err != nil {
		return 0, err
	}
	return a.store.CreateClass(ctx, raw)
}

// pattern returns a mitt of the shelf as the pattern of a class.
func (a *App) pattern(ctx context.Context, mitt int64) (roster.Pattern, error) {
	m, err := a.store.Load(ctx, mitt)
	if err != nil {
		return roster.Pattern{}, err
	}
	doc, err := project.Decode(m.Document)
	return roster.Pattern{Mitt: m.ID, Revision: m.Revision, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet, Marks: m.Marks.Edits()}, err
}

// ChoosePattern makes a mitt, as it stands now, the pattern of a class.
func (a *App) ChoosePattern(ctx context.Context, class, mitt int64) error {
	p, err := a.pattern(ctx, mitt)
	if err != nil {
		return err
	}
	_, err = a.changeClass(ctx, class, func(doc *roster.Class) error {
		doc.SetPattern(p)
		return nil
	})
	return err
}

// ArchiveClass puts a class away, or brings it back.
func (a *App) ArchiveClass(ctx context.Context, class int64, archived bool) error {
	_, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		doc.Archived = archived
		return nil
	})
	return err
}

// UnsavedClass is a class as its form has it.
type UnsavedClass struct {
	Class
	Faults error         // why it can't be saved, by field
	Saved  *roster.Class // as another window saved it in between; nil if none did
}

// SaveClass saves what was typed about a class, and returns nil. What can't be
// kept, or was changed elsewhere since the form with this stamp was opened,
// comes back unsaved.
func (a *App) SaveClass(ctx context.Context, id int64, stamped string, typed Texts) (*UnsavedClass, error) {
	var u *UnsavedClass
	doc, err := a.changeClass(ctx, id, func(doc *roster.Class) error {
		was := *doc
		typed.aboutClass(doc)
		now := stamp(about(was))
		u = &UnsavedClass{Class: Class{Stamp: now}, Faults: doc.Check()}
		if u.Faults != nil && fault.KindOf(u.Faults) != fault.Invalid {
			return u.Faults
		}
		if stamped != now && stamp(about(*doc)) != now {
			u.Saved = &was
		}
		if u.Faults == nil && u.Saved == nil {
			u = nil
			return nil
		}
		return errUnsaved
	})
	if !errors.Is(err, errUnsaved) {
		return nil, err
	}
	now := u.Stamp
	u.Class, err = a.unsaved(ctx, id, doc)
	u.Stamp = now
	return u, err
}

// errUnsaved ends a change whose form is shown again instead of being saved.
var errUnsaved = fault.New(fault.Invalid, "This is not saved yet.")

// aboutClass puts the texts into a class.
func (t Texts) aboutClass(doc *roster.Class) {
	for name, text := range map[string]*string{"name": &doc.Name, "date": &doc.Date, "place": &doc.Place, "yarn": &doc.Yarn, "needle": &doc.Needle, "note": &doc.Note} {
		if typed, ok := t[name]; ok {
			*text = strings.TrimSpace(typed)
		}
	}
	doc.FixTyped(t)
	if u := units.Unit(t["unit"]); u.Size() != 0 && len(doc.Students) == 0 {
		doc.Unit = u
	}
}
