package main

import (
	"context"
	"flag"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strconv"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// layout is the flags that lay out printed sheets. A flag that is given wins
// over what was kept with the mitt or the class.
type layout struct {
	*flag.FlagSet
	pdf       *bool
	dir, db   *string
	asOptions map[string]string // flag → name of the option
}

func (v *verb) layout(std stdio) layout {
	f := v.flags(std)
	l := layout{FlagSet: f, asOptions: map[string]string{}}
	l.pdf = f.Bool("pdf", false, "as one PDF; else as SVG, one page after the other")
	l.dir = f.String("dir", "", "write the pages into this `folder` instead, as page-001.svg and so on, or as handout.pdf")
	l.db = f.String("db", "", dbUsage)
	for _, name := range []string{"paper", "cell", "pieces", "knits"} {
		l.asOptions[name] = name
	}
	f.String("paper", "", "`size`: a4 or letter")
	f.String("cell", "", "width of a chart's stitch in `mm`")
	f.String("pieces", "", "the `parts` in their order, such as plan,chart,key,words")
	f.String("knits", "", "`from`: left, for who knits from left to right")
	for _, name := range []string{"sideways", "large", "grey", "double", "boxed"} {
		l.asOptions[name] = name
	}
	f.Bool("sideways", false, "the paper lies on its side")
	f.Bool("large", false, "large print: letters of 18 pt, stitches 6.5 mm wide")
	f.Bool("grey", false, "greys that a copier keeps apart")
	f.Bool("double", false, "for both sides of the paper: a chart faces its words, every handout begins on a fresh sheet")
	f.Bool("boxed", false, "of motifs that repeat, charts show one in a box with the number of times that it is worked")
	return l
}

// asked returns the options that were given as flags.
func (l layout) asked() app.Layout {
	q := url.Values{}
	l.Visit(func(f *flag.Flag) {
		if name, ok := l.asOptions[f.Name]; ok {
			switch value := f.Value.String(); value {
			case "true":
				q.Set(name, "1")
			case "false":
				q.Set(name, "")
			default:
				q.Set(name, value)
			}
		}
	})
	return app.Layout{Asked: q, Final: true}
}

// number reads the argument ID.
func (l layout) number(what string) (int64, error) {
	id, err := strconv.ParseInt(l.Arg(0), 10, 64)
	if err != nil || id < 1 {
		return 0, fault.Fields{{Path: "ID", Message: fmt.Sprintf("is %q; write the number of a %s, as in the address of its page", l.Arg(0), what)}}
	}
	return id, nil
}

// printHandout writes the printed sheets of a mitt.
func printHandout(ctx context.Context, v *verb, args []string, std stdio) error {
	l := v.layout(std)
	if err := v.parse(l.FlagSet, args, 1, std); err != nil {
		return err
	}
	id, err := l.number("mitt")
	if err != nil {
		return err
	}
	return withExisting(ctx, *l.db, func(a *app.App) error {
		sheets, err := a.Handout(ctx, id, l.asked())
		if err != nil {
			return asInput(err, "ID")
		}
		if sheets.Lacks != nil {
			fmt.Fprintf(std.Err, "The handout stands without a part: %v\n", sheets.Lacks)
		}
		return l.write(ctx, sheets, std)
	})
}

// printClass writes the printed sheets of a class.
func printClass(ctx context.Context, v *verb, args []string, std stdio) error {
	l := v.layout(std)
	student := l.Int("student", 0, "only this student, by the `number` in the address of their page")
	part := l.String("students", "", "only these `places` of the list, such as 101-200; a PDF holds at most 100")
	if err := v.parse(l.FlagSet, args, 1, std); err != nil {
		return err
	}
	id, err := l.number("class")
	if err != nil {
		return err
	}
	return withExisting(ctx, *l.db, func(a *app.App) error {
		set, err := a.ClassSet(ctx, id, app.ClassAsk{Layout: l.asked(), Student: max(*student, 0), Part: *part, PDF: *l.pdf})
		if err != nil {
			return asInput(err, "ID")
		}
		for _, text := range set.Trouble {
			fmt.Fprintln(std.Err, text+" Answer on the page of the class.")
		}
		return l.write(ctx, set.Sheets, std)
	})
}

// asInput turns an error that something does not exist into a fault of the
// argument that names it.
func asInput(err error, field string) error {
	if fault.KindOf(err) == fault.NotFound {
		return fault.Fields{{Path: field, Message: fault.Message(err)}}
	}
	return err
}

// write writes sheets as the flags ask.
func (l layout) write(ctx context.Context, sheets app.Sheets, std stdio) error {
	if *l.pdf {
		return l.writePDF(ctx, sheets, std)
	}
	i := 0
	for p := range sheets.Pages() {
		i++
		if *l.dir == "" {
			if err := p.WriteSVG(std.Out); err != nil {
				return err
			}
			fmt.Fprintln(std.Out)
			continue
		}
		file, err := l.file(fmt.Sprintf("page-%03d.svg", i))
		if err != nil {
			return err
		}
		if err := p.WriteSVG(file); err != nil {
			return err
		}
		if err := file.Close(); err != nil {
			return err
		}
	}
	return ctx.Err()
}

func (l layout) writePDF(ctx context.Context, sheets app.Sheets, std stdio) error {
	out := std.Out
	if *l.dir != "" {
		file, err := l.file("handout.pdf")
		if err != nil {
			return err
		}
		defer file.Close()
		out = file
	}
	lacking, err := sheets.WritePDF(ctx, out, sheets.Name)
	if lacking != "" {
		fmt.Fprintf(std.Err, "These letters are not in the PDF's face; a box stands for each: %s. The browser's print has them.\n", lacking)
	}
	return err
}

// file creates a file in the directory that -dir names.
func (l layout) file(name string) (*os.File, error) {
	if err := os.MkdirAll(*l.dir, 0o755); err != nil {
		return nil, fault.New(fault.Invalid, "dir: %v; name a directory that can be written", err)
	}
	file, err := os.Create(filepath.Join(*l.dir, name))
	if err != nil {
		return nil, fault.New(fault.Invalid, "dir: %v; name a directory that can be written", err)
	}
	return file, nil
}
