package app

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/roster"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// SizeSet is a set of hands that sizes may be filled with.
type SizeSet = grade.Set

// FillSizes saves what was typed of the sizes of a mitt, with those of a set in place of
// those that stood there.
func (a *App) FillSizes(ctx context.Context, id int64, typed Typed, set SizeSet, from, to, step string) (Design, error) {
	return a.changeDesign(ctx, id, typed, func(texts grade.Texts, u units.Unit) (grade.Texts, error) {
		var faults fault.Fields
		var bounds [3]float64
		for i, c := range []struct{ name, text string }{{"from", from}, {"to", to}, {"step", step}} {
			v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(c.text), ",", ".", 1), 64)
			if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
				faults.Add(FillField(string(set)+"."+c.name), "is %.20q; write a number such as 6", c.text)
			}
			bounds[i] = v
		}
		if err := faults.Err(); err != nil {
			return nil, err
		}
		return texts.Fill(set, bounds[0], bounds[1], bounds[2], u)
	})
}

// PasteSizes saves what was typed of the sizes of a mitt, and adds those of a pasted list:
// each line a name and a girth of the hand, and its length if it is known.
func (a *App) PasteSizes(ctx context.Context, id int64, typed Typed, list string) (Design, error) {
	return a.changeDesign(ctx, id, typed, func(texts grade.Texts, u units.Unit) (grade.Texts, error) {
		return texts.Paste(list, u)
	})
}

// SizesAsk says which students of a class become sizes.
type SizesAsk struct {
	Class    string // its number
	From, To string // by girth, counted from 1; empty: all
	Numbered bool   // sizes are called 1, 2 … and not as the students
	Gauges   bool   // each with the student's own gauge, if there is one
}

// ClassOfSizes is a class that a mitt's sizes may be taken from.
type ClassOfSizes struct {
	ID       int64
	Name     string
	Measured int // students of whose hand anything is known
}

// ClassesOfSizes lists the classes with a hand in them, the one changed last first.
func (a *App) ClassesOfSizes(ctx context.Context) (list []ClassOfSizes, err error) {
	classes, _, err := a.store.Classes(ctx)
	if err != nil {
		return nil, err
	}
	for _, c := range classes {
		doc, err := roster.Decode(c.Document)
		if err != nil {
			return nil, err
		}
		if n := len(handsOf(doc)); n > 0 && !doc.Archived {
			list = append(list, ClassOfSizes{c.ID, doc.Name, n})
		}
	}
	return list, nil
}

// SizesOfClass saves what was typed of the sizes of a mitt, with the hands of a class's
// students in place of those that stood there, in order of their girths.
func (a *App) SizesOfClass(ctx context.Context, id int64, typed Typed, ask SizesAsk) (Design, error) {
	class, _ := strconv.ParseInt(ask.Class, 10, 64)
	var doc roster.Class
	c, err := a.store.LoadClass(ctx, class)
	if err == nil {
		doc, err = roster.Decode(c.Document)
	}
	if err != nil && fault.KindOf(err) != fault.NotFound {
		return Design{}, err
	}
	return a.changeDesign(ctx, id, typed, func(texts grade.Texts, u units.Unit) (grade.Texts, error) {
		if err != nil {
			return nil, fault.Fields{{Path: FillField("class"), Message: "is none that there is; choose one of the list"}}
		}
		list := handsOf(doc)
		from, to, err := ask.part(len(list))
		if err != nil {
			return nil, err
		}
		var sizes []grade.Size
		for i, s := range list[from-1 : to] {
			size := grade.Size{Name: s.Name, Hand: s.in(u, doc.Unit, ask.Gauges)}
			if ask.Numbered {
				size.Name = strconv.Itoa(from + i)
			}
			sizes = append(sizes, size)
		}
		return texts.Take(sizes), nil
	})
}

// part returns which of so many students are asked for, counted from 1.
func (ask SizesAsk) part(students int) (from, to int, err error) {
	var faults fault.Fields
	at := func(name, text string, usual int) int {
		if strings.TrimSpace(text) == "" {
			return usual
		}
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || n < 1 || n > students {
			faults.Add(FillField("class."+name), "is %.20q; write a number from 1 to %d", text, students)
		}
		return n
	}
	from, to = at("from", ask.From, 1), at("to", ask.To, students)
	switch n := to - from + 1; {
	case len(faults) > 0:
	case n < 1:
		faults.Add(FillField("class.to"), "is %d, before %d; write a number from there on", to, from)
	case n > grade.MaxSizes:
		faults.Add(FillField("class.to"), "makes %d sizes; %d are the most: write %d or less", n, grade.MaxSizes, from+grade.MaxSizes-1)
	}
	return from, to, faults.Err()
}

// measured is a student with a hand.
type measured struct {
	roster.Student
	girth units.Length // 0: what is written can't be read
}

// handsOf lists the students of a class of whose hand anything is written, in order of
// girth; those whose hand can't be read come last.
func handsOf(c roster.Class) (list []measured) {
	for _, s := range c.Students {
		own := sheet.Sheet{sheet.PathUnit: string(c.Unit)}
		for path, text := range s.Sheet {
			if strings.HasPrefix(path, "hand.") && strings.TrimSpace(text) != "" {
				own[path] = text
			}
		}
		if len(own) == 1 {
			continue
		}
		one := measured{Student: s}
		if h, err := own.Hand(); err == nil {
			h, _ = h.Fill()
			one.girth = h.Circumference
		}
		list = append(list, one)
	}
	slices.SortStableFunc(list, func(a, b measured) int {
		if (a.girth == 0) != (b.girth == 0) {
			return cmp.Compare(b.girth, a.girth)
		}
		return cmp.Compare(a.girth, b.girth)
	})
	return list
}

// in returns the student's hand, and the own gauge if it is asked for, with its lengths in
// unit u; those of the class are in unit from.
func (s *measured) in(u, from units.Unit, gauges bool) sheet.Sheet {
	out := sheet.Sheet{}
	for path, text := range s.Sheet {
		ofGauge := strings.HasPrefix(path, "gauge.swatches[")
		if strings.TrimSpace(text) == "" || !strings.HasPrefix(path, "hand.") && !(ofGauge && gauges) {
			continue
		}
		counted := strings.HasSuffix(path, ".size") || strings.HasSuffix(path, ".stitches") || strings.HasSuffix(path, ".rounds")
		if l, err := units.Parse(text, from); err == nil && !counted && u != from {
			text = l.Exact(u)
		}
		out[path] = text
	}
	return out
}

// Called says how many hands a class has, in words.
func (c ClassOfSizes) Called() string {
	if c.Measured == 1 {
		return c.Name + ", 1 hand"
	}
	return fmt.Sprintf("%s, %d hands", c.Name, c.Measured)
}
