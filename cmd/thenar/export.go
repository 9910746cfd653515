package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/exportfile"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
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
	return withExisting(ctx, *db, func(st *store.Store) error {
		var file exportfile.File
		var err error
		switch what {
		case "all":
			file, err = st.ExportAll(ctx)
		case "classes":
			file, err = st.ExportClass(ctx, id)
		default:
			file, err = st.ExportMitt(ctx, id)
		}
		if err != nil {
			return asInput(err, "ID")
		}
		for _, what := range file.Mended {
			fmt.Fprintf(std.Err, "%s: it held characters that can't be read back, which are replaced in the file\n", what)
		}
		return exportfile.Write(std.Out, file)
	})
}

// exported reads what is asked for: 7 or mitts/7, classes/2, all.
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
		return "", 0, fault.Fields{{Path: "ID", Message: fmt.Sprintf("is %q; write the number of a mitt as in the address of its page, such as 7, or classes/2 for a class, or all", text)}}
	}
	return what, id, nil
}

// importFile takes in what an exported file holds.
func importFile(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", dbUsage)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	raw, err := readFile(f.Arg(0), exportfile.MaxBytes, std)
	if err != nil {
		return err
	}
	file, err := exportfile.Read(ctx, raw)
	if err != nil {
		return err
	}
	return withStore(ctx, *db, func(st *store.Store) error {
		done, err := st.Import(ctx, file)
		if err != nil {
			return err
		}
		tell(std.Out, file, done)
		return nil
	})
}

// tell says what became of a file, a line for each mitt and class.
func tell(out io.Writer, file exportfile.File, done store.Imported) {
	for i, a := range done.Mitts {
		fmt.Fprintf(out, "mitt %d, %s: %s\n", a.ID, file.Mitts[i].Name(), a.Words())
	}
	for i, a := range done.Classes {
		fmt.Fprintf(out, "class %d, %s: %s\n", a.ID, file.Classes[i].Name(), a.Words())
	}
	if done.Motifs > 0 {
		fmt.Fprintf(out, "motifs: %d new\n", done.Motifs)
	}
}

// fromExportFile is the mitt of an exported file.
func fromExportFile(ctx context.Context, raw []byte) (project.Document, chart.Marks, error) {
	file, err := exportfile.Read(ctx, raw)
	if err != nil {
		return project.Document{}, nil, err
	}
	m, err := file.OnlyMitt()
	if err != nil {
		return project.Document{}, nil, err
	}
	document, marks := m.Newest()
	doc, err := project.Decode(document)
	return doc, marks, err
}
