package app

import (
	"cmp"
	"context"
	"maps"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/store"
)

// What can be done with a motif that is laid by rule, beside typing its fields.
const (
	RepeatOff    = "off"
	RepeatOn     = "on"
	RepeatOver   = "over"  // it comes to lie over the one above it
	RepeatUnder  = "under" // it comes to lie under the one below it
	RepeatRemove = "remove"
)

// LayMotif lays a motif by rule, over all that are laid. Its fields are named by their keys;
// a drawing has a line for each round. It is a stroke, which can be undone.
func (a *App) LayMotif(ctx context.Context, id int64, form Typed) error {
	typed := form.ofRepeat()
	return a.changeRepeat(ctx, id, func(s sheet.Sheet) (int, error) {
		at := s.Rows(sheet.PathRepeats)
		if at >= repeat.Most {
			return 0, fault.New(fault.Invalid, "%d motifs are the most that can be laid.", repeat.Most)
		}
		for _, key := range []string{"motif", "stitches"} {
			typed[key] = strings.Join(strings.Fields(typed[key]), "/")
		}
		if typed["motif"]+typed["stitches"] == "" {
			return 0, fault.New(fault.Invalid, "There is nothing to lay; write each round of the motif as a row, such as ..b.")
		}
		putRepeat(s, at, typed)
		return at, nil
	})
}

// ChangeRepeat changes a motif that is laid, by its number from 0: with its fields, named
// by their keys, or by what is done with it. It is a stroke, which can be undone.
func (a *App) ChangeRepeat(ctx context.Context, id int64, at int, do string, form Typed) error {
	return a.changeRepeat(ctx, id, func(s sheet.Sheet) (int, error) {
		own := s.GivenOfRepeat(at)
		if len(own) == 0 {
			return 0, fault.New(fault.NotFound, "That motif is no longer laid.")
		}
		switch do {
		case RepeatRemove:
			setRepeat(s, at, nil)
		case RepeatOff:
			putRepeat(s, at, map[string]string{"off": "true"})
		case RepeatOn:
			putRepeat(s, at, map[string]string{"off": ""})
		case RepeatOver, RepeatUnder:
			other, ok := beside(s, at, do == RepeatOver)
			if !ok {
				return at, nil
			}
			setRepeat(s, at, s.GivenOfRepeat(other))
			setRepeat(s, other, own)
		case "":
			putRepeat(s, at, form.ofRepeat())
		default:
			return 0, fault.New(fault.Invalid, "do: is %.20q; write off, on, over, under or remove", do)
		}
		return at, nil
	})
}

// ofRepeat returns the fields of a repeat in a form: of each the first text.
func (t Typed) ofRepeat() map[string]string {
	fields := map[string]string{}
	for _, key := range sheet.RepeatKeys() {
		if texts := t[key]; len(texts) > 0 {
			fields[key] = texts[0]
		}
	}
	return fields
}

// changeRepeat saves what a function does to the motifs of a sheet, as one stroke. What it
// makes of the one whose number it returns must be of use.
func (a *App) changeRepeat(ctx context.Context, id int64, set func(sheet.Sheet) (int, error)) error {
	_, err := a.changeTried(ctx, id, store.Wants{}, func(w triedWork, pl *project.Planner) (store.Change, error) {
		to := w.doc
		to.Sheet = w.doc.Sheet.Clone()
		at, err := set(to.Sheet)
		if err == nil {
			err = to.Sheet.RepeatFaults(at)
		}
		edits := w.doc.Difference(to)
		if err != nil || len(edits) == 0 {
			return store.Change{}, err
		}
		r := store.Request{Kind: store.Do, Newest: true, Edits: edits, Rewrite: project.Rewrite}
		return w.redrawn(pl, chart.Stroke{Edits: edits}, r)
	})
	return err
}

// beside returns the number of the motif that lies next over one, or under it.
func beside(s sheet.Sheet, at int, over bool) (other int, ok bool) {
	for _, one := range s.Repeats() {
		switch {
		case over && one.At > at:
			return one.At, true
		case !over && one.At < at:
			other, ok = one.At, true
		}
	}
	return other, ok
}

// putRepeat sets fields of a repeat. A repeat that no longer lies across the whole round
// can't keep the hand to its multiple, columns go with what is laid between them, and what
// becomes of it in the gusset goes with one that meets it.
func putRepeat(s sheet.Sheet, at int, typed map[string]string) {
	path := func(key string) string { return sheet.RepeatPath(at, key) }
	for _, key := range slices.Sorted(maps.Keys(typed)) {
		if slices.Contains(sheet.RepeatKeys(), key) {
			s.Put(path(key), strings.TrimSpace(typed[key]))
		}
	}
	over := repeat.Over(s.Given(path("over")))
	if over != repeat.Columns {
		s.Put(path("columns"), "")
	}
	if over != repeat.Round && over != "" && repeat.Set(s.Given(path("set"))) == repeat.KeptMultiple {
		s.Put(path("set"), "")
	}
	one := repeat.Repeat{Over: cmp.Or(over, repeat.Round), Section: cmp.Or(stitch.Part(s.Given(path("section"))), repeat.Whole)}
	if in := repeat.InGusset(s.Given(path("gusset"))); !one.MeetsGusset() || over == repeat.Gusset && in == repeat.StaysOut {
		s.Put(path("gusset"), "")
	}
}

// setRepeat gives a repeat these texts and no others.
func setRepeat(s sheet.Sheet, at int, given map[string]string) {
	for _, key := range sheet.RepeatKeys() {
		s.Put(sheet.RepeatPath(at, key), given[key])
	}
}
