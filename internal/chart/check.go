package chart

import (
	"fmt"
	"regexp"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// The bounds of one stroke that a page sends.
const (
	maxEdits = 20_000
	maxRound = 2_000
)

// MaxMarks is the largest number of marked cells of a mitt, more than the
// largest mitt has stitches. One stroke that copies a mitt or restores a moment
// may set as many.
const MaxMarks = 200_000

// LongestNote is the largest number of characters of a note.
const LongestNote = 200

var column = regexp.MustCompile(`^[` + wale.Families + `][1-9][0-9]{0,3}$`)

// Check refuses edits that no chart can hold. Each fault names the edit by its
// index in the stroke.
func Check(edits []Edit) error {
	var faults fault.Fields
	if len(edits) == 0 || len(edits) > maxEdits {
		faults.Add("edits", "has %d edits; a stroke has 1 to %d", len(edits), maxEdits)
		return faults
	}
	for i, e := range edits {
		e.check(fmt.Sprintf("edits[%d]", i), &faults)
		if len(faults) > 20 {
			break
		}
	}
	return faults.Err()
}

// sheetPath matches the fields of the sheet that a chart's page may set: those of its
// repeats. What they hold is checked where the sheet is read.
var sheetPath = regexp.MustCompile(`^repeats\[[0-9]{1,2}\]\.[a-z]+$`)

func (e Edit) check(path string, faults *fault.Fields) {
	if e.Layer == Sheet {
		if !sheetPath.MatchString(e.Column) || e.Section != "" || e.Round != 0 {
			faults.Add(path+".column", "is %.40q; a chart sets the fields of its repeats, such as repeats[0].from, and no round", e.Column)
		}
		return
	}
	if e.Section.Order() == 0 {
		faults.Add(path+".section", "is %.20q; write %s", e.Section, listed(stitch.Parts()))
	}
	if e.Round < 1 || e.Round > maxRound {
		faults.Add(path+".round", "is %d; write a round from 1 to %d", e.Round, maxRound)
	}
	whole := e.Column == "" && (e.Layer == Notes || e.Layer == Needles)
	if !whole && !column.MatchString(e.Column) {
		faults.Add(path+".column", "is %.20q; write a column such as B1, A2, Z2 or H7", e.Column)
	}
	e.checkValue(path, faults)
}

func (e Edit) checkValue(path string, faults *fault.Fields) {
	switch e.Layer {
	case Stitches:
		if op, ok := stitch.ByCode(e.Value); e.Value != "" && (!ok || !op.Paintable()) {
			faults.Add(path+".value", "is %.20q, which can't be painted; write the code of a stitch such as p", e.Value)
		}
	case Colours:
		if e.Value != "" && !yarnID(e.Value) {
			faults.Add(path+".value", "is %.20q, which is no yarn; write a letter from a to h", e.Value)
		}
	case Notes:
		if why := plain.Line(e.Value, LongestNote); why != "" {
			faults.Add(path+".value", "%s", why)
		}
	case Needles:
		if e.Column != "" || (e.Value != "" && e.Value != "here") {
			faults.Add(path+".value", "is %.20q; write here, for a whole round", e.Value)
		}
	case Strands:
		if e.Value != "" && !strand.MatchString(e.Value) {
			faults.Add(path+".value", "is %.20q, which is no strand; write its yarn and over how many stitches it passes, such as b7", e.Value)
		}
	case Motifs:
		if e.Value != "" && !onMotif.MatchString(e.Value) {
			faults.Add(path+".value", "is %.20q, which is no stitch of a motif; write the hand, its size and the stitch, such as r8x6.3.5", e.Value)
		}
	default:
		faults.Add(path+".layer", "is %.20q; write stitch, colour, note, needles, strand or motif", e.Layer)
	}
}

// listed joins parts as in "cuff, hand or thumb".
func listed(parts []stitch.Part) string {
	text := ""
	for i, p := range parts {
		switch {
		case i > 0 && i == len(parts)-1:
			text += " or "
		case i > 0:
			text += ", "
		}
		text += string(p)
	}
	return text
}
