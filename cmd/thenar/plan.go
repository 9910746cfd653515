package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// plan turns a measure sheet into its plan, or one sheet a line into one plan
// a line.
func plan(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	lines := f.Bool("lines", false, "one sheet a line in, one plan a line out, in order")
	brief := f.Bool("brief", false, "leave out the fit, round by round")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	in, err := open(f.Arg(0), std.In)
	if err != nil {
		return err
	}
	defer in.Close()
	if *lines {
		return planLines(ctx, in, std.Out, *brief)
	}
	raw, err := io.ReadAll(io.LimitReader(in, sheet.Largest+1))
	if err != nil {
		return fault.New(fault.Invalid, "FILE: %v; name a file that can be read", err)
	}
	out, err := planOne(project.NewPlanner(), raw, *brief)
	if err != nil {
		return err
	}
	var pretty bytes.Buffer
	if err := json.Indent(&pretty, out, "", "  "); err != nil {
		return fmt.Errorf("plan: %w", err)
	}
	pretty.WriteByte('\n')
	_, err = pretty.WriteTo(std.Out)
	return err
}

func planOne(pl *project.Planner, raw []byte, brief bool) ([]byte, error) {
	s, err := sheet.Parse(raw)
	if err != nil {
		return nil, err
	}
	p, err := pl.Plan(s)
	if err != nil {
		return nil, err
	}
	return pl.Report(p, brief)
}

// planLines plans every line; a bad line gives its faults in its place. A
// line longer than any sheet is bad, too, and is read past.
func planLines(ctx context.Context, in io.Reader, out io.Writer, brief bool) error {
	pl := project.NewPlanner()
	r := bufio.NewReaderSize(in, 1<<16)
	w := bufio.NewWriterSize(out, 1<<16)
	bad := false
	for {
		line, err := readLine(r)
		if errors.Is(err, io.EOF) && len(line) == 0 {
			break
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return fmt.Errorf("plan -lines: %w", err)
		}
		if ctx.Err() != nil {
			return ctx.Err()
		}
		result, fail := planOne(pl, line, brief)
		if fail != nil {
			bad = true
			result = errorLine(fail)
		}
		if _, err := w.Write(append(result, '\n')); err != nil {
			return err
		}
		if errors.Is(err, io.EOF) {
			break
		}
	}
	if err := w.Flush(); err != nil {
		return err
	}
	if bad {
		return errTold
	}
	return nil
}

// readLine reads up to a line break, without it, and keeps no more than one
// byte over the largest sheet.
func readLine(r *bufio.Reader) ([]byte, error) {
	var line []byte
	for {
		part, err := r.ReadSlice('\n')
		if keep := sheet.Largest + 1 - len(line); keep > 0 {
			line = append(line, part[:min(keep, len(part))]...)
		}
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case err != nil:
			return line, err
		}
		return bytes.TrimRight(line, "\r\n"), nil
	}
}

// errorLine is a bad line's answer.
func errorLine(err error) []byte {
	var fields fault.Fields
	lines := []string{fault.Message(err)}
	if errors.As(err, &fields) {
		lines = fields.Lines()
	}
	raw, _ := json.Marshal(map[string][]string{"error": lines}) // strings can't fail
	return raw
}
