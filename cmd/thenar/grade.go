package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/url"

	"thenar/internal/app"
)

// gradeDesign prints the sizes of a graded design as JSON, or the text for all of them,
// plain or as pages.
func gradeDesign(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	text := f.Bool("words", false, "the pattern’s text for all sizes")
	pages := f.Bool("pdf", false, "the pattern’s pages")
	lines := f.Bool("lines", false, "one design a line in, its sizes a line out, in order")
	right := f.Bool("right", false, "the text for the right hand alone; else for both, apart where they differ")
	left := f.Bool("left", false, "the text for the left hand alone")
	byRound := f.Bool("rounds", false, "the text round by round, not by the gusset’s rhythm")
	title := f.String("title", "Pattern", "the `name` on the pages")
	paper := f.String("paper", "a4", "`size` of the pages: a4 or letter")
	large := f.Bool("large", false, "pages in large print")
	each := f.Bool("each", false, "pages that draw each size by itself, too")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	if *lines {
		return answerLines(f.Arg(0), std, func(in io.Reader) error { return app.GradeLines(ctx, in, std.Out) })
	}
	raw, err := readFile(f.Arg(0), app.MaxDesign, std)
	if err != nil {
		return err
	}
	ask := app.PatternAsk{ByRound: *byRound, Each: *each}
	switch {
	case *left && !*right:
		ask.Hand = "left"
	case *right && !*left:
		ask.Hand = "right"
	}
	switch {
	case *pages:
		q := url.Values{"paper": {*paper}}
		if *large {
			q.Set("large", "1")
		}
		sheets, err := app.GradePages(ctx, raw, *title, ask, app.Layout{Asked: q, Final: true})
		if err != nil {
			return err
		}
		lacking, err := sheets.WritePDF(ctx, std.Out, sheets.Name)
		if lacking != "" {
			fmt.Fprintf(std.Err, "These letters are not in the PDF's face; a box stands for each: %s.\n", lacking)
		}
		return err
	case *text:
		return app.GradeWords(ctx, raw, ask, std.Out)
	}
	out, err := app.GradeDesign(ctx, raw)
	if err != nil {
		return err
	}
	return indented(out, std)
}

// indented prints JSON with line breaks.
func indented(raw []byte, std stdio) error {
	var pretty bytes.Buffer
	if err := json.Indent(&pretty, raw, "", "  "); err != nil {
		return fmt.Errorf("indented: %w", err)
	}
	pretty.WriteByte('\n')
	_, err := pretty.WriteTo(std.Out)
	return err
}
