package paper

import (
	"fmt"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
)

// patternCautions sets the usual cautions.
func (p patternPages) patternCautions() block {
	return one("caution", aboveHeading, []part{setWhole(caution, p.width(), draw.TextStyle{Size: p.small})})
}

// numbers sets every number of every size, to be ticked off; one that no size has is left
// out.
func (p patternPages) numbers() block {
	names := p.middle().Plan.Names()
	var rows []sized
	for _, n := range mitt.Ladder() {
		if n.List() {
			continue
		}
		r, some := sized{name: names.Label(n)}, false
		for _, s := range p.Sizes {
			v := s.Out.Plan.Number(n)
			some = some || v != "" && v != "0"
			if v == "" {
				v = "–"
			}
			r.values = append(r.values, v)
		}
		if some {
			rows = append(rows, r)
		}
	}
	const head = "Every number, to tick off"
	list := keptWith(p.headingPart(head), p.bySize(rows, head))
	for i := range list[:len(list)-1] { // it is torn off, or copied, as a whole
		list[i].Keep = list[i].Keep || len(list) < mostWholeNumbers
	}
	b := one(head, aboveHeading, list)
	b.withNext = len(p.copyright()) > 0 // else that might stand alone on a page
	return b
}

// mostWholeNumbers is the most rows of numbers that stay together on a page.
const mostWholeNumbers = 40

// copyright sets whose the pattern is, after all, and which version of it this is.
func (p patternPages) copyright() []block {
	var list []string
	switch {
	case p.Copyright != "":
		list = append(list, p.Copyright)
	case p.Designer != "" && p.Year > 0:
		list = append(list, fmt.Sprintf("© %d %s", p.Year, p.Designer))
	case p.Designer != "":
		list = append(list, "© "+p.Designer)
	}
	if p.Version != "" {
		list = append(list, p.Version)
	}
	if len(list) == 0 {
		return nil
	}
	for i, text := range list {
		if !strings.HasSuffix(text, ".") {
			list[i] += "."
		}
	}
	return []block{one("copyright", 25, setLines(strings.Join(list, " "), p.width(), draw.TextStyle{Size: p.small}))}
}
