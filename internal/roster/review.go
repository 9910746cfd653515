package roster

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Line is a student with the plan of their mitt, or the reasons why there is none.
type Line struct {
	Student Student
	Doc     project.Document
	Out     *project.Outputs // nil: no plan, or a line of Review
	Doubts  []string         // sentences for the teacher, who should look
	Missing []string         // sentences: why there is no plan

	// Asks are questions about values that hardly any hand has. Until they are
	// answered there is no plan, and nothing is printed.
	Asks []sheet.Question

	summary *summary         // set by Review, whose lines have no Out
	planned *project.Planned // nil: no plan
	marks   chart.Marks      // of the pattern, as far as they fit
}

// NeedsAttention reports whether the teacher should look at the line.
func (l *Line) NeedsAttention() bool { return len(l.Doubts)+len(l.Missing)+len(l.Asks) > 0 }

// Document returns the mitt of a student: the pattern with the student's hand and
// gauge, then the numbers fixed for all, then the student's own values.
func (c *Class) Document(s Student) project.Document {
	doc := project.New(s.Name)
	if c.Pattern != nil {
		doc.Sheet, doc.Side = c.Pattern.Sheet.In(c.Unit), c.Pattern.Side
	}
	doc.FromLeft = s.FromLeft
	doc.Sheet[sheet.PathUnit] = string(c.Unit)
	gauged := s.hasGauge()
	for path := range doc.Sheet {
		switch {
		case strings.HasPrefix(path, "hand.") && path != hand.FieldReference, strings.HasPrefix(path, mitt.PathPins+"."),
			gauged && strings.HasPrefix(path, "gauge.swatches["):
			delete(doc.Sheet, path)
		}
	}
	for path, text := range c.fixedSheet() {
		doc.Sheet.Put(path, text)
	}
	for path, text := range s.Sheet {
		doc.Sheet.Put(path, text)
	}
	if gauged {
		const swatch = "gauge.swatches[0]."
		doc.Sheet[swatch+"worked"] = sheet.Worked(doc.Sheet.Names().Make.Flat)
		switch s.Gauge {
		case FromCuff:
			doc.Sheet[swatch+"on_needles"] = "true"
		case FromBand:
			doc.Sheet[swatch+"counted_to"] = "1"
		default:
			doc.Sheet[swatch+"washed"] = "true"
		}
	}
	return doc
}

// hasGauge reports whether the student has a gauge of their own.
func (s *Student) hasGauge() bool { return strings.TrimSpace(s.Sheet[stitchesPath]) != "" }

// Review plans the mitt of each student of a part, in the order of the list. The
// lines keep their plans and numbers, some 6 KB each, and no outputs, which
// Complete works out. It fails only with ctx.
func (c *Class) Review(ctx context.Context, pl *project.Planner, p Part) ([]Line, error) {
	lines := make([]Line, 0, p.Len())
	for _, s := range c.Students[p.From-1 : p.To] {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		l := c.line(pl, s)
		l.summary = l.summarize()
		l.Out, l.Doc = nil, project.Document{}
		lines = append(lines, l)
	}
	return lines, nil
}

// Line plans the mitt of one student, with all its outputs.
func (c *Class) Line(pl *project.Planner, s Student) Line { return c.Complete(pl, c.line(pl, s)) }

// Complete returns a line of Review with the outputs of its plan.
func (c *Class) Complete(pl *project.Planner, l Line) Line {
	l.summary = nil
	if l.Doc.Sheet == nil {
		l.Doc = c.Document(l.Student)
	}
	if l.planned == nil {
		return l
	}
	out, err := pl.Outputs(l.planned, l.Doc, l.marks)
	if err != nil {
		l.Doubts, l.Missing = nil, reasons(err)
		return l
	}
	l.Out = out
	return l
}

// line plans what one student knits, and says what the teacher should look at.
func (c *Class) line(pl *project.Planner, s Student) Line {
	l := Line{Student: s, Doc: c.Document(s), Asks: c.Asks(s)}
	if len(l.Asks) > 0 {
		return l
	}
	if c.Pattern == nil {
		l.Missing = []string{"The class has no pattern yet: choose a mitt to begin with."}
		return l
	}
	if !hasHand(l.Doc.Sheet) {
		l.Missing = []string{"No hand yet: measure round the knuckles, or ask for a glove size."}
		return l
	}
	if !s.hasGauge() && c.Pattern.Sheet.Given(stitchesPath) == "" {
		l.Missing = []string{"No swatch yet, neither the student’s nor the pattern’s."}
		return l
	}
	planned, err := pl.Plan(l.Doc.Effective())
	if err != nil {
		l.Missing = reasons(err)
		return l
	}
	l.planned, l.marks = planned, c.marks()
	l.Out = planned.Brief(l.Doc, l.marks)
	if len(l.Out.Lost) > 0 || len(l.Out.Unsound) > 0 {
		l.Doubts = append(l.Doubts, "What is painted in the pattern’s chart doesn’t fit these rounds and is left out.")
		l.marks = chart.Marks{}
	}
	l.Doubts = append(l.Doubts, c.doubts(&l)...)
	return l
}

func (c *Class) marks() chart.Marks {
	m := chart.Marks{}
	m.Apply(c.Pattern.Marks)
	return m
}

func hasHand(s sheet.Sheet) bool {
	for _, path := range []string{hand.FieldCircumference, hand.FieldSize, hand.FieldBreadth, hand.FieldLength} {
		if s.Given(path) != "" {
			return true
		}
	}
	return false
}

// reasons returns why there is no plan, each with its field in words.
func reasons(err error) []string {
	var fields fault.Fields
	if !errors.As(err, &fields) {
		return []string{fault.Message(err)}
	}
	var list []string
	for _, f := range fields {
		if f.Path == sheet.PathKind && f.Works != "" { // a person knows a kind by its name, not its key
			says, _, _ := strings.Cut(f.Message, ": write ")
			list = append(list, fmt.Sprintf("The kind %s. Better: a %s.", says, mitt.Kind(f.Works).Words()))
			continue
		}
		list = append(list, words.Caution(f.String()))
	}
	return list
}

// doubtfulGauge is the share by which a gauge may differ from the pattern's before
// the teacher is asked to look: some two needle sizes (common practice, no source).
const doubtfulGauge = 0.10

// doubts returns what the teacher should look at in a plan.
func (c *Class) doubts(l *Line) []string {
	var list []string
	p := l.Out.Plan
	switch {
	case !l.Student.hasGauge():
		list = append(list, "No swatch of their own: planned by the pattern’s. Count the first rounds of the cuff.")
	case l.Student.Gauge == FromBand:
		list = append(list, "Stitches from the ball band are a guess: count the first rounds and plan again.")
	case l.Student.Gauge == FromCuff:
		list = append(list, "Stitches counted on the cuff: count plain rounds, for ribbing draws in. Washing may change them.")
	}
	if s, ok := c.patternGauge(); ok {
		if off := p.Gauge.Stitches/s - 1; math.Abs(off) > doubtfulGauge {
			list = append(list, fmt.Sprintf("Far from the pattern’s swatch: %.1f stitches over 10 cm, not %.1f (%s). Another needle, or count again?", p.Gauge.Stitches*100, s*100, strings.Replace(fmt.Sprintf("%+.0f\u00a0%%", off*100), "-", "−", 1)))
		}
	}
	if text := handDoubt(l.Doc.Sheet, p.Hand.Circumference); text != "" {
		list = append(list, text)
	}
	for _, w := range p.Warnings {
		if w.Code == "measure_again" && l.Student.isSureOf(w.Message) {
			continue
		}
		if w.Code != "swatch" || l.Student.hasGauge() && l.Student.Gauge == FromSwatch {
			list = append(list, words.Caution(w.Message))
		}
	}
	return list
}

// patternGauge returns the pattern's own gauge in stitches per mm; ok is false if
// it has none.
func (c *Class) patternGauge() (float64, bool) {
	g, err := c.Pattern.Sheet.Gauge()
	return g.Stitches, err == nil
}

// handDoubt returns a doubt about a hand outside the chart of hand sizes, glove
// sizes 6 to 11 (EN 420:2003), or "".
func handDoubt(s sheet.Sheet, girth units.Length) string {
	if s.Given(hand.FieldSize) != "" {
		return ""
	}
	switch size := hand.SizeOf(girth); {
	case size < float64(hand.SmallestListed)-0.5:
		return fmt.Sprintf("Hand smaller than the chart’s: %s is glove size %.1f, the chart begins at %d. What was not measured is filled by the ratios of adults’ hands.", girth.With(s.Unit()), size, hand.SmallestListed)
	case size > float64(hand.LargestListed)+0.5:
		return fmt.Sprintf("Hand larger than the chart’s: %s is glove size %.1f, the chart ends at %d. Measure again, thumb held away.", girth.With(s.Unit()), size, hand.LargestListed)
	}
	return ""
}
