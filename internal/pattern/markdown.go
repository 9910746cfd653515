package pattern

import (
	"fmt"
	"io"
	"strings"
)

// Markdown writes the text as CommonMark with what the designer gave it: a heading for each
// section, a paragraph for each line, tables as they stand in plain text.
func Markdown(w io.Writer, f Front, t *Text) error {
	var b strings.Builder
	heading := func(level, text string) { b.WriteString(level + " " + escaped(text) + "\n\n") }
	paragraphs := func(list []string) {
		for _, text := range list {
			b.WriteString(escaped(text) + "\n\n")
		}
	}
	heading("#", f.Title)
	paragraphs(f.first())
	heading("##", "Sizes")
	fenced(&b, t.rows(t.Head.Sizes))
	heading("##", t.Head.Needs.Title)
	t.paragraphs(&b, t.Head.Needs)
	heading("##", "Abbreviations")
	for _, s := range t.Head.Signs {
		b.WriteString("- **" + escaped(s.Sign) + "** " + escaped(s.Line) + "\n")
	}
	b.WriteByte('\n')
	if len(f.Notes) > 0 {
		heading("##", "Notes")
		paragraphs(f.Notes)
	}
	for _, p := range t.Passages {
		heading("##", t.Titled(p))
		t.paragraphs(&b, p)
	}
	if len(f.Numbers) > 0 {
		heading("##", numbersTitle)
		fenced(&b, t.rows(f.Numbers))
	}
	paragraphs(f.last())
	if _, err := io.WriteString(w, strings.TrimRight(b.String(), "\n")+"\n"); err != nil {
		return fmt.Errorf("pattern.Markdown: %w", err)
	}
	return nil
}

// paragraphs writes the lines of a passage. What is told below the round that a line names
// is a list.
func (t *Text) paragraphs(b *strings.Builder, p Passage) {
	for i, l := range p.Lines {
		switch {
		case l.Table != nil:
			fenced(b, t.Lines(l.Table))
		case l.Under:
			b.WriteString("- " + escaped(t.Told(p, l)) + "\n")
			if i+1 == len(p.Lines) || !p.Lines[i+1].Under {
				b.WriteByte('\n')
			}
		default:
			text, label := escaped(t.Told(p, l)), escaped(Plain(l.Label)+":")
			if l.Label != nil {
				text = strings.Replace(text, label, "**"+label+"**", 1)
			}
			b.WriteString(text + "\n\n")
		}
	}
}

// fenced writes lines as they stand.
func fenced(b *strings.Builder, lines []string) {
	b.WriteString("```text\n" + strings.Join(lines, "\n") + "\n```\n\n")
}

// signsOfMarkup are those that would not be read as themselves.
var signsOfMarkup = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "<", `\<`, ">", `\>`, "#", `\#`, "&", `\&`, "!", `\!`, "|", `\|`, "~", `\~`, "+", `\+`,
)

// escaped returns a text that CommonMark reads as it stands.
func escaped(text string) string {
	text = signsOfMarkup.Replace(text)
	if strings.HasPrefix(text, "- ") {
		text = `\` + text
	}
	return text
}
