package paper

import (
	"cmp"
	"fmt"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/pattern"
)

// patternCautions sets the usual cautions.
func (p patternPages) patternCautions() block {
	return one("caution", aboveHeading, []part{setWhole(caution, p.width(), draw.TextStyle{Size: p.small})})
}

// Numbers returns every number of every size; one that no size has is left out.
func (s *PatternSheet) Numbers() (rows []pattern.Row) {
	names := s.Sizes[0].Out.Plan.Names()
	for _, n := range mitt.Ladder() {
		if n.List() {
			continue
		}
		r, some := pattern.Row{Name: names.Label(n)}, false
		for _, size := range s.Sizes {
			v := size.Out.Plan.Number(n)
			some = some || v != "" && v != "0"
			r.Values = append(r.Values, cmp.Or(v, "–"))
		}
		if some {
			rows = append(rows, r)
		}
	}
	return rows
}

// numbers sets every number of every size, to be ticked off.
func (p patternPages) numbers() block {
	const head = "Every number, to tick off"
	list := keptWith(p.headingPart(head), p.bySize(p.Numbers(), head))
	for i := range list[:len(list)-1] { // it is torn off, or copied, as a whole
		list[i].Keep = list[i].Keep || len(list) < mostWholeNumbers
	}
	b := one(head, aboveHeading, list)
	b.withNext = len(p.copyright()) > 0 // else that might stand alone on a page
	return b
}

// mostWholeNumbers is the most rows of numbers that stay together on a page.
const mostWholeNumbers = 40

// ends returns whose the pattern is, and which version of it this is; "" for neither.
func (s *PatternSheet) ends() string {
	var list []string
	switch {
	case s.Copyright != "":
		list = append(list, s.Copyright)
	case s.Designer != "" && s.Year > 0:
		list = append(list, fmt.Sprintf("© %d %s", s.Year, s.Designer))
	case s.Designer != "":
		list = append(list, "© "+s.Designer)
	}
	if s.Version != "" {
		list = append(list, s.Version)
	}
	for i, text := range list {
		if !strings.HasSuffix(text, ".") {
			list[i] += "."
		}
	}
	return strings.Join(list, " ")
}

// copyright sets that after all.
func (p patternPages) copyright() []block {
	text := p.ends()
	if text == "" {
		return nil
	}
	return []block{one("copyright", 25, setLines(text, p.width(), draw.TextStyle{Size: p.small}))}
}

// Front returns what the designer gives the text, for files of words alone.
func (s *PatternSheet) Front() pattern.Front {
	return pattern.Front{
		Title: s.Name, About: s.About, Designer: s.Designer, Story: paragraphsOf(s.Story), Notes: paragraphsOf(s.Notes),
		Numbers: s.Numbers(), Caution: caution, Ends: s.ends(),
	}
}
