package project

import (
	"errors"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// ThumbWay is one way to make a mitt, round its thumb or as another kind, planned for this
// very hand.
type ThumbWay struct {
	Kind         mitt.Kind // that it would be; empty: as it is
	Construction mitt.Construction
	Place        mitt.ThumbPlace // of a gusset
	Sets         []Setting       // what choosing it writes into the sheet
	Chosen       bool

	Plan     *mitt.Plan   // nil where it is refused
	Refused  fault.Fields // why
	Worst    float64      // how far the fabric is off what was wanted, at worst, in mm
	Stretch  float64      // the greatest of the fabric on the hand
	Idle                  // what it has no use for
	Mirrored bool         // right and left differ
}

// Setting is a path of a sheet, and the text to stand there.
type Setting struct{ Path, Text string }

// thumbWays are the ways that are offered, where they can be planned: each is one more
// plan.
var thumbWays = []struct {
	how   mitt.Construction
	place mitt.ThumbPlace
}{
	{mitt.ByGusset, mitt.AtSide},
	{mitt.ByGusset, mitt.InPalm},
	{mitt.Straight, ""},
	{mitt.Slit, ""},
	{mitt.NoThumb, ""},
}

// Thumbs returns the ways to make a mitt round its thumb, of which out is the present one. A way
// that is planned for no kind of mitt yet is left out; one that this mitt can't have says
// why. It makes at most one plan for each of the others; like those that show what a
// fixed number costs, they are not counted.
func (pl *Planner) Thumbs(d Document, marks chart.Marks, out *Outputs) []ThumbWay {
	var list []ThumbWay
	for _, way := range thumbWays {
		if !way.how.Planned() {
			continue
		}
		w := ThumbWay{Construction: way.how, Place: way.place, Chosen: out.Plan.Construction() == way.how}
		if w.Chosen && way.place != "" {
			w.Chosen = (out.Plan.Make.Place == mitt.InPalm) == (way.place == mitt.InPalm)
		}
		w.Sets = d.settings(way.how, way.place)
		if w.Chosen {
			w.Plan = out.Plan
			w.judge(out.Fit, out, out.Lost)
		} else {
			pl.otherThumb(&w, d, marks, out)
		}
		list = append(list, w)
	}
	return list
}

// otherThumb plans the mitt in a way that is not the present one.
func (pl *Planner) otherThumb(w *ThumbWay, d Document, marks chart.Marks, out *Outputs) {
	d.Sheet = d.Sheet.Clone()
	for _, s := range w.Sets {
		d.Sheet.Put(s.Path, s.Text)
	}
	planned, err := pl.plan(d.Effective())
	if err != nil {
		if !errors.As(err, &w.Refused) {
			w.Refused = fault.Fields{{Path: mitt.PathConstruction, Message: err.Error()}}
		}
		return
	}
	rows, err := fit.Rows(planned.Plan, planned.Mitt(), out.Bands)
	if err != nil {
		w.Refused = fault.Fields{{Path: mitt.PathConstruction, Message: err.Error()}}
		return
	}
	w.Plan = planned.Plan
	var lost []chart.Edit
	if len(marks) > 0 {
		lost = planned.Charts(d, marks).Lost()
	}
	w.judge(rows, out, lost)
}

// judge measures a way's rows against the hand, and lists what it has no use or place for.
func (w *ThumbWay) judge(rows []fit.Row, out *Outputs, lost []chart.Edit) {
	w.Worst = fit.Summarise(w.Plan, rows, out.Tolerance).Worst
	for _, r := range rows {
		w.Stretch = max(w.Stretch, r.Stretch)
	}
	w.Idle = idle(w.Plan, out.Told, lost)
	w.Mirrored = w.Plan.Parted()
}

// settings returns what a way writes into a sheet. What means the same already stays as
// it is written.
func (d Document) settings(how mitt.Construction, place mitt.ThumbPlace) []Setting {
	var list []Setting
	put := func(path, text, usual string) {
		if now := d.Sheet.Given(path); now == text || now == "" && text == usual {
			text = now
		} else if text == usual {
			text = ""
		}
		list = append(list, Setting{path, text})
	}
	if kind := mitt.Kind(d.Sheet.Given(sheet.PathKind)); how != mitt.NoThumb && kind.Whole() != kind {
		put(sheet.PathKind, string(kind.Whole()), "")
	}
	put(mitt.PathConstruction, string(how), string(mitt.ByGusset))
	if place != "" {
		put(mitt.PathPlace, string(place), string(mitt.AtSide))
	}
	return list
}
