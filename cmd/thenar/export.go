package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// export writes a mitt, a class or everything as JSON.
func export(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", dbUsage)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	what, id, err := exported(f.Arg(0))
	if err != nil {
		return err
	}
	return withExisting(ctx, *db, func(a *app.App) error {
		var e app.Export
		var err error
		switch what {
		case "all":
			e, err = a.ExportAll(ctx)
		case "classes":
			e, err = a.ExportClass(ctx, id)
		default:
			e, err = a.ExportMitt(ctx, id)
		}
		if err != nil {
			return asInput(err, "ID")
		}
		for _, what := range e.Mended() {
			fmt.Fprintf(std.Err, "%s: it held characters that can't be read back, which are replaced in the file\n", what)
		}
		return e.Write(std.Out)
	})
}

// exported reads which thing to export: 7 or mitts/7, classes/2, all.
func exported(text string) (what string, id int64, err error) {
	if text == "all" {
		return "all", 0, nil
	}
	what, number, named := strings.Cut(strings.Trim(text, "/"), "/")
	if !named {
		what, number = "mitts", what
	}
	id, err = strconv.ParseInt(number, 10, 64)
	if err != nil || id < 1 || what != "mitts" && what != "classes" {
		return "", 0, fault.Fields{{Path: "ID", Message: fmt.Sprintf("is %q; write the number of a mitt, as in the address of its page (7), or classes/2, or all", text)}}
	}
	return what, id, nil
}

// importFile imports everything that an exported file holds.
func importFile(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", dbUsage)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	raw, err := readFile(f.Arg(0), app.MaxExport, std)
	if err != nil {
		return err
	}
	e, err := app.ReadExport(ctx, raw)
	if err != nil {
		return err
	}
	return withApp(ctx, *db, func(a *app.App) error {
		came, err := a.Import(ctx, e)
		for _, one := range came {
			tell(std.Out, one)
		}
		return err
	})
}

// tell prints what became of an imported mitt or class, or of the motifs.
func tell(out io.Writer, a app.Arrival) {
	if a.What == app.MovedMotifs {
		fmt.Fprintf(out, "motifs: %s\n", a.How)
		return
	}
	fmt.Fprintf(out, "%s %d, %s: %s\n", a.What, a.ID, a.Name, a.How)
}
