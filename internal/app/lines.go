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
	"thenar/internal/grade"
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// A lineKind is what the lines of a file are: how long one may be, how many are handed
// over at once, and how one is answered.
type lineKind struct {
	largest, batch int
	appendTo       func(ctx context.Context, b []byte, pl *project.Planner, line []byte) ([]byte, error)
}

// lineJob is a batch of lines in one piece of memory, with their answers, one a
// line. Both buffers are reused.
type lineJob struct {
	text    []byte // the lines without their line breaks, one after the other
	ends    []int  // where each of them ends in text
	answers []byte
	bad     bool
	done    chan struct{}
}

// A job of sheets holds at most batch lines, and ends with the line that takes it past
// batchBytes: handing lines over one by one costs time, and so does a job whose
// answers outgrow keptBytes, since it begins with a small buffer again each time.
// The answer to an ordinary line takes 30 KB, that of a glove 60 KB. A design takes so
// long that it is a job of its own.
const (
	batch      = 8
	batchBytes = 1 << 16
)

// keptBytes is the largest buffer that a job keeps for its next lines.
const keptBytes = 1 << 20

// gcPercent lets the heap grow further between collections than Go does by
// itself: a plan allocates much and retains nothing, and frequent collections
// would take a good part of the time.
const gcPercent = 250

// maxMemory is where the collector stops waiting for gcPercent, which only long
// lines reach. The program itself takes some 10 MB more; the aim is to stay
// under 40 MB resident.
const maxMemory = 28 << 20

// ErrBadLines is returned by PlanLines and GradeLines if a line was bad. The answers tell what
// was wrong.
var ErrBadLines = errors.New("some lines were bad")

// PlanLines plans every line, several at once, and writes the answers in the
// order of the lines; the answer to a bad line is its faults. A line longer
// than any sheet is bad, and skipped. However many lines there are, memory
// holds two jobs for each processor.
func PlanLines(ctx context.Context, in io.Reader, out io.Writer, brief bool) error {
	return answerLines(ctx, in, out, lineKind{sheet.Largest, batch, func(_ context.Context, b []byte, pl *project.Planner, line []byte) ([]byte, error) {
		return appendPlan(b, pl, line, brief)
	}})
}

// GradeLines works out the sizes of every line's design, as PlanLines plans sheets.
func GradeLines(ctx context.Context, in io.Reader, out io.Writer) error {
	return answerLines(ctx, in, out, lineKind{grade.Largest, 1, appendSizes})
}

func answerLines(ctx context.Context, in io.Reader, out io.Writer, kind lineKind) error {
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
				j.answer(ctx, pl, kind)
			}
		}()
	}
	var failed error // of reading; written before order is closed
	go func() {
		defer close(order)
		defer close(jobs)
		failed = readJobs(ctx, in, free, kind, func(j *lineJob) {
			order <- j // neither blocks: both have room for every job
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

// writeAnswers writes the answers in order until there are no more, returns
// each job to free, and reports whether a line was bad.
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

// answer answers each line of the job.
func (j *lineJob) answer(ctx context.Context, pl *project.Planner, kind lineKind) {
	if cap(j.answers) > keptBytes {
		j.answers = nil
	}
	j.answers, j.bad = j.answers[:0], false
	from := 0
	for _, to := range j.ends {
		answered, err := kind.appendTo(ctx, j.answers, pl, j.text[from:to])
		if err != nil {
			answered, j.bad = append(j.answers, errorLine(err)...), true
		}
		j.answers, from = append(answered, '\n'), to
	}
	j.done <- struct{}{}
}

// readJobs fills free jobs with lines and hands them on.
func readJobs(ctx context.Context, in io.Reader, free <-chan *lineJob, kind lineKind, hand func(*lineJob)) error {
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
		for err == nil && len(j.ends) < kind.batch && len(j.text) < batchBytes {
			from := len(j.text)
			j.text, err = readLine(j.text, r, kind.largest)
			if err == nil || len(j.text) > from {
				j.ends = append(j.ends, len(j.text))
			}
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return fmt.Errorf("-lines: %w", err)
		}
		if len(j.ends) > 0 {
			hand(j)
		}
		if err != nil {
			return nil
		}
	}
}

// readLine appends the next line to text, without its line break, and keeps no
// more of it than one byte over the largest that it may be.
func readLine(text []byte, r *bufio.Reader, largest int) ([]byte, error) {
	from := len(text)
	for {
		part, err := r.ReadSlice('\n')
		if keep := largest + 1 - (len(text) - from); keep > 0 {
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

// errorLine returns the answer to a bad line.
func errorLine(err error) []byte {
	raw, _ := json.Marshal(map[string][]string{"error": fault.Lines(err)}) // strings always marshal
	return raw
}
