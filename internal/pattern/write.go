package pattern

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"thenar/internal/words"
)

// Write writes the text plainly: a heading for each section, a line for each step, an empty
// line between sections. What is told before the first round comes first.
func Write(w io.Writer, t *Text) error { return WriteWith(w, Front{}, t) }

// WriteWith writes the text plainly with what the designer gave it.
func WriteWith(w io.Writer, f Front, t *Text) error {
	var blocks [][]string
	if f.Title != "" {
		blocks = append(blocks, append([]string{f.Title}, f.first()...))
	}
	blocks = append(blocks,
		append([]string{"Sizes"}, t.rows(t.Head.Sizes)...),
		append([]string{t.Head.Needs.Title}, t.told(t.Head.Needs)...),
		append([]string{"Abbreviations"}, signed(t.Head.Signs)...),
	)
	if len(f.Notes) > 0 {
		blocks = append(blocks, append([]string{"Notes"}, f.Notes...))
	}
	for _, p := range t.Passages {
		blocks = append(blocks, append([]string{t.Titled(p)}, t.told(p)...))
	}
	if len(f.Numbers) > 0 {
		blocks = append(blocks, append([]string{numbersTitle}, t.rows(f.Numbers)...))
	}
	if last := f.last(); len(last) > 0 {
		blocks = append(blocks, last)
	}
	var b strings.Builder
	for i, lines := range blocks {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(strings.Join(lines, "\n") + "\n")
	}
	if _, err := io.WriteString(w, b.String()); err != nil {
		return fmt.Errorf("pattern.Write: %w", err)
	}
	return nil
}

// told returns the lines of a passage as they are read.
func (t *Text) told(p Passage) (list []string) {
	for _, l := range p.Lines {
		if l.Table != nil {
			list = append(list, t.Lines(l.Table)...)
			continue
		}
		list = append(list, t.Told(p, l))
	}
	return list
}

// signed returns signs with what they mean.
func signed(signs []words.Sign) []string {
	list := make([]string, len(signs))
	for i, s := range signs {
		list[i] = s.Sign + ": " + s.Line
	}
	return list
}

// Titled returns the heading of a passage, with the sizes that it is for if others lack it.
func (t *Text) Titled(p Passage) string {
	title := p.Title
	if p.Hand != "" {
		title += ", " + p.Hand + " hand"
	}
	if len(p.For) == len(t.Sizes) {
		return title
	}
	return title + ": " + lower(t.Named(p.For)) + " only"
}

// Named names sizes: "Size 7", "Sizes 7, 8 and 9".
func (t *Text) Named(sizes []int) string {
	names := make([]string, len(sizes))
	for i, s := range sizes {
		names[i] = t.Sizes[s]
	}
	if len(names) == 1 {
		return "Size " + names[0]
	}
	return "Sizes " + words.Listed(names)
}

func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }

// Told returns a line of a passage as it is read.
func (t *Text) Told(p Passage, l Line) string {
	var b strings.Builder
	if l.Hand != "" {
		b.WriteString(strings.ToUpper(l.Hand[:1]) + l.Hand[1:] + " hand: ")
	}
	if !slices.Equal(l.For, p.For) || l.Under {
		b.WriteString(t.Named(l.For))
		if l.Only {
			b.WriteString(" only")
		}
		b.WriteString(": ")
	}
	l.tell(&b)
	return b.String()
}

// tell writes a line without the sizes that it is for.
func (l *Line) tell(b *strings.Builder) {
	switch {
	case l.Label != nil && l.Body == nil:
		b.WriteString(Plain(l.Label))
		if l.Count != nil {
			b.WriteString(", to " + Plain(l.Count))
		}
		b.WriteByte(':')
	case l.Label != nil:
		b.WriteString(Plain(l.Label) + ": " + Plain(l.Body) + ".")
		if l.Count != nil {
			b.WriteString(" " + Plain(l.Count) + ".")
		}
	default:
		b.WriteString(Plain(l.Body))
		if l.Under && !l.ByHand {
			b.WriteByte('.')
		}
	}
}

// Plain returns pieces as plain text.
func Plain(pieces []Piece) string {
	var b strings.Builder
	for _, p := range pieces {
		b.WriteString(p.String())
	}
	return b.String()
}

// String returns a piece as it is read: "44 (48, 52)" for a number.
func (p Piece) String() string {
	if len(p.Values) == 0 || p.Same {
		return p.Text
	}
	return listed(p.Values) + p.Tail
}

// listed returns the values of a number as they stand in the text.
func listed(values []string) string {
	if len(values) == 1 {
		return values[0]
	}
	return values[0] + " (" + strings.Join(values[1:], ", ") + ")"
}

// of returns a piece as it is read by one of its sizes.
func (p Piece) of(i int) string {
	if len(p.Values) == 0 || p.Same {
		return p.Text
	}
	return p.Values[i] + p.Tail
}
