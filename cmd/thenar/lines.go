package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// lineJob is some lines on their way; done gives their answers.
type lineJob struct {
	lines [][]byte
	done  chan lineAnswers
}

type lineAnswers struct {
	text []byte // one line each
	bad  bool
}

// together is how many lines make a job: one at a time, the handing over takes
// longer than the planning.
const together = 64

// seldom lets garbage grow to so many times what is in use: a plan leaves much
// and keeps nothing, and is done twice as fast without a sweep every moment.
const seldom = 400

// planLines plans every line, several at once, and writes the answers in the
// order of the lines; a bad line gives its faults in its place. A line longer
// than any sheet is bad, too, and is read past.
func planLines(ctx context.Context, in io.Reader, out io.Writer, brief bool) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	defer debug.SetGCPercent(debug.SetGCPercent(seldom))
	workers := runtime.GOMAXPROCS(0)
	jobs, order := make(chan lineJob), make(chan lineJob, 2*workers)
	for range workers {
		go func() {
			pl := project.NewPlanner()
			for j := range jobs {
				j.done <- planSome(pl, j.lines, brief)
			}
		}()
	}
	var failed error // of reading; written before order is closed
	go func() {
		defer close(order)
		defer close(jobs)
		failed = someLines(ctx, in, func(lines [][]byte) bool {
			j := lineJob{lines, make(chan lineAnswers, 1)}
			for _, c := range []chan lineJob{order, jobs} {
				select {
				case c <- j:
				case <-ctx.Done():
					return false
				}
			}
			return true
		})
	}()
	bad, err := writeAnswers(ctx, order, out)
	if err != nil {
		return err
	}
	if failed != nil {
		return failed
	}
	if bad {
		return errTold
	}
	return nil
}

// writeAnswers writes the answers in order, until there are no more.
func writeAnswers(ctx context.Context, order <-chan lineJob, out io.Writer) (bad bool, err error) {
	w := bufio.NewWriterSize(out, 1<<16)
	for j := range order {
		select {
		case a := <-j.done:
			bad = bad || a.bad
			if _, err := w.Write(a.text); err != nil {
				return bad, err
			}
		case <-ctx.Done():
			return bad, ctx.Err()
		}
	}
	return bad, w.Flush()
}

func planSome(pl *project.Planner, lines [][]byte, brief bool) (a lineAnswers) {
	for _, line := range lines {
		text, err := planOne(pl, line, brief)
		if err != nil {
			text, a.bad = errorLine(err), true
		}
		a.text = append(append(a.text, text...), '\n')
	}
	return a
}

// someLines hands on the lines, so many together, until take refuses some.
func someLines(ctx context.Context, in io.Reader, take func(lines [][]byte) bool) error {
	r := bufio.NewReaderSize(in, 1<<16)
	for {
		lines := make([][]byte, 0, together)
		var err error
		for err == nil && len(lines) < together {
			var line []byte
			line, err = readLine(r)
			if err == nil || len(line) > 0 {
				lines = append(lines, line)
			}
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return fmt.Errorf("plan -lines: %w", err)
		}
		if len(lines) > 0 && !take(lines) {
			return ctx.Err()
		}
		if err != nil {
			return nil
		}
	}
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
