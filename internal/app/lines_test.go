package app

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/grade"
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// endless gives one sheet after the other and counts the bytes.
type endless struct {
	line  string
	given atomic.Int64
}

func (e *endless) Read(p []byte) (int, error) {
	n := copy(p, e.line)
	for n < len(p)-len(e.line) {
		n += copy(p[n:], e.line)
	}
	e.given.Add(int64(n))
	return n, nil
}

// stopped takes a little, then says that it is full and takes no more.
type stopped struct {
	left int
	full chan struct{}
	ctx  context.Context
}

func (s *stopped) Write(p []byte) (int, error) {
	if s.left -= len(p); s.left > 0 {
		return len(p), nil
	}
	close(s.full)
	<-s.ctx.Done()
	return 0, io.ErrClosedPipe
}

// However much there is to read, no more is read than the jobs hold that wait
// to be written.
//
//thenar:race
func TestLinesWaitForTheirReader(t *testing.T) {
	in := &endless{line: `{"unit":"mm","gauge":{"swatches":[{"stitches":24,"width":100}]},"hand":{"hand_circumference":190}}` + "\n"}
	ctx, stop := context.WithCancel(context.Background())
	out := &stopped{left: 1 << 20, full: make(chan struct{}), ctx: ctx}
	ended := make(chan error)
	go func() { ended <- PlanLines(ctx, in, out, false) }()
	<-out.full
	stop()
	require.Error(t, <-ended)
	// What was written has about 20 KB a line and more.
	most := int64(1<<20/10_000+2*runtime.GOMAXPROCS(0)*batch+batch)*int64(len(in.line)) + 1<<16
	assert.LessOrEqual(t, in.given.Load(), most)
}

// Answers come in the order of the lines, each as it would come alone,
// whatever their lengths and faults; a line longer than any sheet is bad.
//
//thenar:race
func TestLinesKeepTheirOrder(t *testing.T) {
	var in, want bytes.Buffer
	pl := project.NewPlanner()
	for i := range 3 * batch {
		var line string
		switch i % 5 {
		case 3:
			line = fmt.Sprintf(`{"key%d": 1}`, i)
		case 4:
			line = strings.Repeat(" ", sheet.Largest+i)
		default:
			line = fmt.Sprintf(`{"unit":"mm","gauge":{"swatches":[{"stitches":24,"width":100}]},"hand":{"hand_circumference":%d}}`, 150+i)
		}
		in.WriteString(line + "\r\n")
		answer, err := appendPlan(nil, pl, []byte(line[:min(len(line), sheet.Largest+1)]), true)
		if err != nil {
			answer = errorLine(err)
		}
		want.Write(append(answer, '\n'))
	}
	var out bytes.Buffer
	require.ErrorIs(t, PlanLines(context.Background(), &in, &out, true), ErrBadLines)
	assert.Equal(t, want.String(), out.String())
}

// Lines of designs keep their order, too: each is answered as alone, one that is longer
// than any design or can't be made with its faults, and a design in a file gives the same.
//
//thenar:race
func TestLinesOfDesignsKeepTheirOrder(t *testing.T) {
	var in, want bytes.Buffer
	pl := project.NewPlanner()
	for i := range 9 {
		line := fmt.Sprintf(`{"format": "thenar/design@1", "sheet": {"gauge": {"swatches": [{"stitches": %d, "width": 10}]}}, "sizes": [{"name": "7", "hand": {"size": 7}}, {"name": "8", "hand": {"size": 8}}]}`, 20+i)
		switch i {
		case 2:
			line = `{"format": "thenar/design@1", "sizes": []}`
		case 4:
			line = strings.Repeat(" ", grade.Largest+1)
		case 6:
			line = ""
		}
		in.WriteString(line + "\n")
		answer, err := appendSizes(t.Context(), nil, pl, []byte(line))
		if err != nil {
			answer = errorLine(err)
		}
		want.Write(append(answer, '\n'))
	}
	var out bytes.Buffer
	require.ErrorIs(t, GradeLines(t.Context(), &in, &out), ErrBadLines)
	assert.Equal(t, want.String(), out.String())
	assert.Equal(t, 3, strings.Count(out.String(), `{"error":`))
}
