package app

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

// lineJob is some lines on their way, all in one piece of memory, and the
// answers to them, one a line. What holds both is used again.
type lineJob struct {
	text    []byte // the lines, one after the other
	ends    []int  // where each of them ends in text
	answers []byte
	bad     bool
	done    chan struct{}
}

// A job is so many lines, or as many as reach so many bytes: with one at a
// time, the handing over takes longer than the planning. Answers to ordinary
// lines take 30 KB each.
const (
	batch      = 16
	batchBytes = 1 << 16
)

// keptBytes is the most memory that a job keeps for the next lines.
const keptBytes = 1 << 20

// gcPercent lets garbage grow to so many per cent of what is in use: a plan
// allocates much and retains nothing, and a sweep every moment would take a
// good part of the time.
const gcPercent = 250

// maxMemory is where the sweep no longer waits for that much garbage, which
// only long lines come to. The program itself takes some 10 MB beside it, and
// under 40 MB resident is the aim.
const maxMemory = 28 << 20

// ErrBadLines is what ends PlanLines where a line was bad; its faults stand in
// the answers.
var ErrBadLines = errors.New("some lines were bad")

// PlanLines plans every line, several at once, and writes the answers in the
// order of the lines; a bad line gives its faults in its place. A line longer
// than any sheet is bad, too, and is read past. However many lines there are,
// memory holds two jobs for each processor.
func PlanLines(ctx context.Context, in io.Reader, out io.Writer, brief bool) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	defer debug.SetGCPercent(debug.SetGCPercent(gcPercent))
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(maxMemory))
	workers := runtime.GOMAXPROCS(0)
	free, jobs, order := make(chan *lineJob, 2*workers), make(chan *lineJob, 2*workers), make(chan *lineJob, 2*workers)
	for range 2 * workers {
		free <- &lineJob{done: make(chan struct{}, 1)}
	}
	for range workers {
		go func() {
			pl := project.NewPlanner()
			for j := range jobs {
				j.plan(pl, brief)
			}
		}()
	}
	var failed error // of reading; written before order is closed
	go func() {
		defer close(order)
		defer close(jobs)
		failed = readJobs(ctx, in, free, func(j *lineJob) {
			order <- j // both have room for every job that there is
			jobs <- j
		})
	}()
	bad, err := writeAnswers(ctx, order, free, out)
	if err != nil {
		return err
	}
	if failed != nil {
		return failed
	}
	if bad {
		return ErrBadLines
	}
	return nil
}

// writeAnswers writes the answers in order, until there are no more, and gives
// the jobs back.
func writeAnswers(ctx context.Context, order <-chan *lineJob, free chan<- *lineJob, out io.Writer) (bad bool, err error) {
	for j := range order {
		select {
		case <-j.done:
			bad = bad || j.bad
			if _, err := out.Write(j.answers); err != nil {
				return bad, err
			}
			free <- j
		case <-ctx.Done():
			return bad, ctx.Err()
		}
	}
	return bad, nil
}

// plan answers each line.
func (j *lineJob) plan(pl *project.Planner, brief bool) {
	if cap(j.answers) > keptBytes {
		j.answers = nil
	}
	j.answers, j.bad = j.answers[:0], false
	from := 0
	for _, to := range j.ends {
		answered, err := appendPlan(j.answers, pl, j.text[from:to], brief)
		if err != nil {
			answered, j.bad = append(j.answers, errorLine(err)...), true
		}
		j.answers, from = append(answered, '\n'), to
	}
	j.done <- struct{}{}
}

// readJobs fills free jobs with lines and hands them on.
func readJobs(ctx context.Context, in io.Reader, free <-chan *lineJob, hand func(*lineJob)) error {
	r := bufio.NewReaderSize(in, 1<<16)
	for {
		var j *lineJob
		select {
		case j = <-free:
		case <-ctx.Done():
			return ctx.Err()
		}
		if cap(j.text) > keptBytes {
			j.text = nil
		}
		j.text, j.ends = j.text[:0], j.ends[:0]
		var err error
		for err == nil && len(j.ends) < batch && len(j.text) < batchBytes {
			from := len(j.text)
			j.text, err = readLine(j.text, r)
			if err == nil || len(j.text) > from {
				j.ends = append(j.ends, len(j.text))
			}
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return fmt.Errorf("plan -lines: %w", err)
		}
		if len(j.ends) > 0 {
			hand(j)
		}
		if err != nil {
			return nil
		}
	}
}

// readLine appends what stands before the next line break to text, and no
// more of it than one byte over the largest sheet.
func readLine(text []byte, r *bufio.Reader) ([]byte, error) {
	from := len(text)
	for {
		part, err := r.ReadSlice('\n')
		if keep := sheet.Largest + 1 - (len(text) - from); keep > 0 {
			text = append(text, part[:min(keep, len(part))]...)
		}
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case err != nil:
			return text, err
		}
		return text[:from+len(bytes.TrimRight(text[from:], "\r\n"))], nil
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
