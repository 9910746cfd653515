package project

import "slices"

// Printed is what a pattern that went out printed, so that it can be compared with what it
// would print now.
type Printed struct {
	Sizes   []string        `json:"sizes"`
	Numbers []PrintedNumber `json:"numbers"`
	Lines   []PrintedLine   `json:"lines"`
}

// PrintedNumber is a number of a pattern with its value for each size.
type PrintedNumber struct {
	Key    string   `json:"key"`
	Name   string   `json:"name"`
	Values []string `json:"values"`
}

// PrintedLine is a line of its text under the heading of its passage.
type PrintedLine struct {
	Key     string `json:"key"`
	Passage string `json:"passage"`
	Text    string `json:"text"`
}

// ChangedNumber is a number of one size that changed; an empty value is none.
type ChangedNumber struct{ Name, Size, Before, After string }

// ChangedLine is a line of the text that changed; an empty text is none.
type ChangedLine struct{ Key, Passage, Before, After string }

// ChangedPrint is what changed between two prints of a pattern.
type ChangedPrint struct {
	Gone, New []string // sizes
	Numbers   []ChangedNumber
	Lines     []ChangedLine
}

// None reports whether nothing changed.
func (c ChangedPrint) None() bool { return len(c.Gone)+len(c.New)+len(c.Numbers)+len(c.Lines) == 0 }

// value returns a number for a size; "" for none.
func (p Printed) value(key, size string) string {
	at := slices.Index(p.Sizes, size)
	i := slices.IndexFunc(p.Numbers, func(n PrintedNumber) bool { return n.Key == key })
	if at < 0 || i < 0 || at >= len(p.Numbers[i].Values) {
		return ""
	}
	return p.Numbers[i].Values[at]
}

// Since tells what changed from an earlier print to this one. The numbers of sizes that both
// have are compared, in the order of this one; lines by their keys, in the order in which
// they are read.
func (p Printed) Since(was Printed) (c ChangedPrint) {
	for _, size := range was.Sizes {
		if !slices.Contains(p.Sizes, size) {
			c.Gone = append(c.Gone, size)
		}
	}
	numbers := slices.Clone(p.Numbers)
	for _, n := range was.Numbers {
		if !slices.ContainsFunc(numbers, func(o PrintedNumber) bool { return o.Key == n.Key }) {
			numbers = append(numbers, n)
		}
	}
	for _, n := range numbers {
		for _, size := range p.Sizes {
			if !slices.Contains(was.Sizes, size) {
				continue
			}
			if before, after := was.value(n.Key, size), p.value(n.Key, size); before != after {
				c.Numbers = append(c.Numbers, ChangedNumber{n.Name, size, before, after})
			}
		}
	}
	for _, size := range p.Sizes {
		if !slices.Contains(was.Sizes, size) {
			c.New = append(c.New, size)
		}
	}
	c.Lines = linesSince(was.Lines, p.Lines)
	return c
}

// linesSince compares lines. One that is gone stands where it stood: after the last line
// before it that is still there.
func linesSince(was, now []PrintedLine) (list []ChangedLine) {
	at := func(lines []PrintedLine, key string) int {
		return slices.IndexFunc(lines, func(l PrintedLine) bool { return l.Key == key })
	}
	gone := map[string][]ChangedLine{} // by the key of the line before
	before := ""
	for _, l := range was {
		if at(now, l.Key) >= 0 {
			before = l.Key
			continue
		}
		gone[before] = append(gone[before], ChangedLine{l.Key, l.Passage, l.Text, ""})
	}
	list = append(list, gone[""]...)
	for _, l := range now {
		switch i := at(was, l.Key); {
		case i < 0:
			list = append(list, ChangedLine{l.Key, l.Passage, "", l.Text})
		case was[i].Text != l.Text:
			list = append(list, ChangedLine{l.Key, l.Passage, was[i].Text, l.Text})
		}
		list = append(list, gone[l.Key]...)
	}
	return list
}

// PrintedAs returns changes with what stood before them as it was printed.
func (c ChangedPrint) PrintedAs(was Printed) ChangedPrint {
	c.Lines, c.Numbers = slices.Clone(c.Lines), slices.Clone(c.Numbers)
	for i, l := range c.Lines {
		if at := slices.IndexFunc(was.Lines, func(o PrintedLine) bool { return o.Key == l.Key }); at >= 0 && l.Before != "" {
			c.Lines[i].Before = was.Lines[at].Text
		}
	}
	for i, n := range c.Numbers {
		for _, o := range was.Numbers {
			if before := was.value(o.Key, n.Size); o.Name == n.Name && before != "" {
				c.Numbers[i].Before = before
			}
		}
	}
	return c
}
