package project

import (
	"fmt"
	"strings"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// reportRepeat is what became of a motif that is laid by rule: how often it stands whole
// across and up, and how many stitches stay plain on either side.
type reportRepeat struct {
	Number  int    `json:"number"` // in the sheet's list, from 1
	Name    string `json:"name,omitempty"`
	Times   int    `json:"times"`
	Up      int    `json:"up"`
	Before  int    `json:"plain_before"`
	After   int    `json:"plain_after"`
	Left    int    `json:"rounds_left_over"`
	Nowhere string `json:"nowhere,omitempty"` // why it isn't laid
}

// addRepeats adds the motifs and what has to be told of them.
func (r *report) addRepeats(p *Planned, m stitch.Mitt) {
	noun := stitch.Round{}.Noun()
	if p.Make.Flat {
		noun = stitch.RightSide.Noun()
	}
	s := p.charts(m, Document{}, nil)
	for _, l := range laidOn(p.extra.repeats, s) {
		c := &l.Came
		r.Repeats = append(r.Repeats, reportRepeat{l.At + 1, l.Name, c.Across, c.Up, c.Before, c.After, c.Left, c.Nowhere})
		if !l.Off {
			for _, w := range l.warnings(noun) {
				w.Message = p.extra.terms.Say(w.Message)
				r.Warnings = append(r.Warnings, w)
			}
		}
	}
	r.Warnings = append(r.Warnings, misnamed(s)...)
}

// warnings says what of a motif is laid otherwise than one might think.
func (l *Laid) warnings(noun string) (list []reportWarning) {
	c := &l.Came
	tell := func(code, format string, args ...any) {
		list = append(list, reportWarning{code, l.title() + " " + fmt.Sprintf(format, args...) + "."})
	}
	if c.Nowhere != "" {
		tell("motif_nowhere", "is laid nowhere: %s", c.Nowhere)
		return list
	}
	if area := l.elsewhere(); area != "" {
		tell("motif_not_centred", "is to be centred on the %s, where it isn't laid: it stands between its ends", area)
	}
	if c.Plain() > 0 {
		tell("motif_left_over", "leaves %s", plainBeside(*c))
	}
	if c.Fewer > 0 {
		tell("motif_fewer", "stands %s so; %d more would have room between the ends", words.Times(c.Across), c.Fewer)
	}
	if c.Beside {
		tell("motif_beside", "stands half a stitch off the gusset’s middle")
	}
	if asked := l.To - l.From + 1; l.To > 0 && c.Rounds < asked && l.Over != repeat.Gusset {
		tell("motif_clipped", "is laid in %d of %s: there are no more", c.Rounds, words.Plural(asked, noun))
	}
	switch {
	case c.Left > 0 && l.Cut:
		tell("motif_clipped", "is cut at the top, after %s", words.Plural(c.Left, noun))
	case c.Left > 0:
		tell("motif_left_over", "leaves %s at the top", words.Plural(c.Left, noun))
	}
	return list
}

// title begins a sentence about the motif.
func (l *Laid) title() string {
	if strings.TrimSpace(l.Name) != "" {
		return "“" + l.Called(l.Place) + "”"
	}
	return fmt.Sprintf("Motif %d", l.Place+1)
}

// elsewhere returns the area on which a motif is to be centred that lies over another one;
// empty: it can be.
func (l *Laid) elsewhere() string {
	switch {
	case l.Set == repeat.CentredBack && l.Over == repeat.Palm, l.Set == repeat.CentredPalm && l.Over == repeat.Back:
		return strings.TrimPrefix(string(l.Set), "centred_")
	}
	return ""
}
