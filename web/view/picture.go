package view

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// NewAnswer returns what a desk shows of outputs, or of the error in their way.
// Without a desk it has the drawings of all.
func NewAnswer(doc project.Document, out *project.Outputs, desk Desk, ask ChartAsk, err error) Answer {
	a, options := undrawn(doc, out, err)
	if out == nil {
		return a
	}
	if desk == "" || desk == FitDesk {
		options.Worn = picture.NewWorn(out.Charts)
		a.Bench = newBench(out, options)
	}
	if desk == "" || desk == ChartDesk {
		a.Chart = newChart(doc, out, ask)
	}
	return a
}

// undrawn is NewAnswer without the drawings of a plan.
func undrawn(doc project.Document, out *project.Outputs, err error) (Answer, picture.HandOptions) {
	a := Answer{
		Out: out, Faults: map[string]string{}, Filled: map[string]Filled{}, Works: map[string]string{}, Pins: map[mitt.Number]string{},
		Unit: doc.Sheet.Unit(), Names: doc.Sheet.Names(), Side: doc.Side, Lambda: doc.Sheet.Given("schedule.lambda"), Knitted: letGo(doc), Other: otherHand(doc, out),
	}
	for _, n := range mitt.Ladder() {
		if text := doc.Sheet.Given(n.Path()); text != "" {
			a.Pins[n] = text
		}
	}
	options := picture.HandOptions{Left: doc.Side == project.Left, Unit: a.Unit, Named: true, Fingers: doc.Sheet.Kind().Fingered()}
	if out == nil {
		a.blame(err)
		a.fillWidth(doc.Sheet)
		if h, err := doc.Sheet.Hand(); err == nil {
			full, filled := h.Fill()
			a.fill(filled)
			a.Drawing = SVG(picture.Bare(full, filled, options), false)
		} else if doc.Sheet.Given(hand.FieldCircumference) == "" && doc.Sheet.Given(hand.FieldBreadth) == "" && doc.Sheet.Given(hand.FieldSize) == "" {
			options.Example = true
			a.Drawing = SVG(picture.Bare(picture.Example(), nil, options), false)
		}
		return a, options
	}
	a.fill(out.Plan.Filled)
	a.fillWidth(doc.Sheet)
	for _, d := range out.Plan.Defaults {
		a.Filled[d.Field] = filledIn(defaultValue(d, a.Unit), d.From, d.Source)
	}
	return a, options
}

// letGo returns the path and the text that let go of the work that a mitt's
// plan keeps. A hand that is worked like the other one is planned anew instead.
func letGo(doc project.Document) [2]string {
	at := doc.Sheet.InForce(string(doc.Side))
	switch own := doc.Sheet.Given(at + ".side"); {
	case at == "":
		return [2]string{}
	case own != "" && own != string(doc.Side):
		return [2]string{sheet.PathSecond, sheet.Anew}
	}
	return [2]string{at + ".section", ""}
}

// otherHand says that the other hand of the pair goes on by a plan of its own, and in what
// that differs; or it returns "".
func otherHand(doc project.Document, out *project.Outputs) string {
	other := string(doc.Side.Other())
	k, own, ok := doc.Sheet.For(other).Progress()
	if !ok || own != other {
		return ""
	}
	text := fmt.Sprintf("These are the %s hand’s numbers. The %s hand is on the needles, planned on from %s.", doc.Side, other, fromWords(k))
	switch {
	case out == nil:
		return text
	case len(out.Pair.Numbers) == 0:
		return text + " Its numbers are the same."
	}
	return text + " It has " + out.Pair.Words() + "."
}

// fill notes the values filled in for the hand.
func (a *Answer) fill(filled []hand.Filled) {
	for _, f := range filled {
		a.Filled[f.Field] = filledIn(f.Value.Format(a.Unit), f.From, f.Source)
	}
}

// fillWidth notes the usual lengths of a swatch that has none: a form that gives
// only counts is read as over them. So its width is nothing still to be given.
func (a *Answer) fillWidth(s sheet.Sheet) {
	for i := range max(s.Rows("gauge.swatches"), 1) {
		at := fmt.Sprintf("gauge.swatches[%d].", i)
		for _, key := range []string{"width", "height"} {
			if s.Given(at+key) == "" {
				a.Filled[at+key] = filledIn(sheet.GaugeOver(a.Unit), "as is usual", "common practice")
			}
		}
		if s.Given(at+"stitches") == "" {
			delete(a.Faults, at+"width")
		}
	}
}

// defaultValue returns the value of a default, as the person would type it.
func defaultValue(d mitt.Default, u units.Unit) string {
	switch {
	case d.Ratio == nil:
		return units.FromMM(d.MM).Format(u)
	case strings.HasPrefix(d.Field, "ease."):
		return strings.Replace(strconv.Itoa(int(math.Round(*d.Ratio*100))), "-", "−", 1) + "\u00a0%"
	}
	return strconv.FormatFloat(*d.Ratio, 'f', 1, 64)
}

// blame puts each fault of an error at its field, and in Check what belongs to
// none.
func (a *Answer) blame(err error) {
	var fields fault.Fields
	if !errors.As(err, &fields) {
		a.Check = append(a.Check, fault.Message(err))
		return
	}
	for _, f := range fields {
		path := f.Path
		if path == "gauge.swatches" { // none was given: its first field is missing
			path = "gauge.swatches[0].stitches"
		}
		if _, there := a.Faults[path]; !there {
			a.Faults[path], a.Works[path] = a.inWords(path, f.Message), f.Works
		}
	}
}

// SVG writes a scene as SVG; sized gives it its size on paper.
func SVG(s *draw.Scene, sized bool) string {
	var b strings.Builder
	_ = draw.WriteSVG(&b, s, sized) // a strings.Builder does not fail
	return b.String()
}
