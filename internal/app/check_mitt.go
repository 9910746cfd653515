package app

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/likeness"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// CheckedMitt is the mitt that one size of written instructions is like.
type CheckedMitt struct {
	Size string // which size, with the hand if there are two
	*likeness.Likeness

	hand string
}

// Gauged reports whether the stitches on 10 cm were typed, without which no mitt is found.
func (c Checked) Gauged() bool { return c.fabric.sts > 0 }

// Said says in one sentence what it is, and whether its plan has the counts of the text.
func (m CheckedMitt) Said() string {
	switch {
	case m.Why != "":
		return "It can’t be opened as a mitt: " + m.Why + "."
	case m.Same():
		return fmt.Sprintf("It is a %s of ours: its plan has the same counts in all %d rounds.", m.Kind.Words(), m.Rounds)
	case m.Off == 1:
		return fmt.Sprintf("It is nearly a %s of ours: its plan has another count in 1 of %d rounds.", m.Kind.Words(), m.Rounds)
	}
	return fmt.Sprintf("It is nearly a %s of ours: its plan has another count in %d of %d rounds.", m.Kind.Words(), m.Off, m.Rounds)
}

// Lasts says how many rounds are told by a length; empty if none is.
func (m CheckedMitt) Lasts() string {
	switch {
	case m.Why != "" || m.Long == 0:
		return ""
	case m.Long == 1:
		return "1 of them is told by a length, and follows from your gauge."
	}
	return fmt.Sprintf("%d of them are told by a length, and follow from your gauge.", m.Long)
}

// Mitt finds the mitt that a size is like, at the gauge that was typed; of the first size if
// none is named. Nothing is guessed: what the plan counts otherwise than the text is told.
func (c Checked) Mitt(size string) (CheckedMitt, error) {
	names := c.SizeNames()
	at := slices.Index(names, size)
	if size == "" {
		at = 0
	}
	if at < 0 { // of two hands the first
		at = slices.IndexFunc(c.Report.Sizes, func(s tally.Size) bool { return s.Name == size })
	}
	if at < 0 {
		return CheckedMitt{}, c.noSize(size)
	}
	g, ok := c.fabric.gauge(false)
	if !ok {
		return CheckedMitt{}, fault.Fields{{Path: "gauge", Message: "is missing; write stitches and rounds on 10 cm, such as 24/32"}}
	}
	of := &c.Report.Sizes[at]
	trace := c.traced(at)
	return CheckedMitt{Size: names[at], hand: of.Hand, Likeness: likeness.Of(c.Text, &trace, of, likeness.Gauge{
		Stitches: strings.TrimSpace(c.typed.Stitches), Rounds: strings.TrimSpace(c.typed.Rounds), StitchesPerMM: g.Stitches, RoundsPerMM: g.Rounds,
	})}, nil
}

// CheckedSheet returns the measure sheet of the mitt that a size of instructions is like, as
// JSON that PlanSheet takes, and what is otherwise in its plan. Where it is no
// mitt, it fails with a fault that says why.
func (c Checked) CheckedSheet(size string) (raw []byte, differs []string, err error) {
	m, err := c.Mitt(size)
	if err == nil && m.Why != "" {
		err = fault.Fields{{Path: "sheet", Message: "is none: " + m.Why}}
	}
	if err != nil {
		return nil, nil, err
	}
	return m.Sheet.JSON(), m.Otherwise(), nil
}

// OpenWritten begins a mitt with the numbers of one size of written instructions as fixed
// numbers, at the gauge that was typed, and returns its number. Its hand's measures are
// those that the fabric fits. Where the instructions are no mitt it fails with fault.Fields.
func (a *App) OpenWritten(ctx context.Context, text string, typed Measures, size string) (id int64, err error) {
	c, err := CheckMeasured(text, typed)
	if err != nil {
		return 0, err
	}
	m, err := c.Mitt(size)
	if err != nil {
		return 0, err
	}
	if m.Why != "" {
		return 0, fault.Fields{{Path: "mitt", Message: m.Said()}}
	}
	doc := project.New(c.title(m.Size))
	doc.Sheet = m.Sheet.Clone()
	if m.hand == string(project.Left) || m.hand == "" && strings.HasPrefix(strings.ToLower(doc.Name), "left") {
		doc.Side = project.Left
	}
	c.ball(doc.Sheet)
	return a.create(ctx, doc, nil)
}

// ball keeps what was typed of the yarn.
func (c Checked) ball(s sheet.Sheet) {
	s.Put("yarn.ball_mass", strings.TrimSpace(c.typed.BallGrams))
	s.Put("yarn.ball_length", strings.TrimSpace(c.typed.BallMetres))
}

// title names a mitt after the first line of its text, if that is a title, and after the size.
func (c Checked) title(size string) string {
	title := "A mitt from a pattern"
	lines := likeness.LinesOf(c.Text)
	if list := c.read.Statements; len(list) > 0 && list[0].At.Line <= len(lines) {
		s := &list[0]
		line := strings.TrimSpace(strings.Trim(strings.TrimSpace(lines[s.At.Line-1]), "#*"))
		if n := utf8.RuneCountInString(line); (s.Kind == written.Note || s.Kind == written.Heading) && n > 2 && n <= 60 && plain.Line(line, project.LongestName) == "" {
			title = line
		}
	}
	if size != "" {
		title += ", size " + size
	}
	return title
}
