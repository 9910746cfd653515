package words

import (
	"fmt"
	"io"
	"strings"
)

// Write writes instructions as plain text: a heading for each section, a line
// for each step, an empty line between sections.
func Write(w io.Writer, passages []Passage) error {
	var b strings.Builder
	for i, p := range passages {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(p.Title + "\n")
		for _, s := range p.Steps {
			if label := s.Label(); label != "" {
				b.WriteString(label + ": ")
			}
			b.WriteString(s.Text + "\n")
		}
	}
	if _, err := io.WriteString(w, b.String()); err != nil {
		return fmt.Errorf("words.Write: %w", err)
	}
	return nil
}
