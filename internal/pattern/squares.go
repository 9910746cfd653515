package pattern

import "regexp"

// In a text for several sizes round brackets hold the numbers of the sizes, so what is
// repeated stands in square ones: "[k1, p1] 15 (18, 20) times".

var againAfter = regexp.MustCompile(`^ (?:once|twice|\d+ times)\b`)

// squared puts what is repeated in square brackets.
func (l *Line) squared() {
	type bracket struct{ piece, at int }
	var whole string
	var starts []int // of the pieces
	for _, p := range l.Body {
		starts = append(starts, len(whole))
		whole += p.of(0)
	}
	var open []bracket
	for i, p := range l.Body {
		if p.Values != nil {
			continue
		}
		text := []byte(p.Text)
		for at, c := range text {
			switch {
			case c == '(':
				open = append(open, bracket{i, at})
			case c == ')' && len(open) > 0:
				from := open[len(open)-1]
				open = open[:len(open)-1]
				if !againAfter.MatchString(whole[starts[i]+at+1:]) {
					continue
				}
				text[at] = ']'
				if from.piece == i {
					text[from.at] = '['
				} else {
					before := []byte(l.Body[from.piece].Text)
					before[from.at] = '['
					l.Body[from.piece].Text = string(before)
				}
			}
		}
		l.Body[i].Text = string(text)
	}
}
