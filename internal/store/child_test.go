package store

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// tasks are what another program is made to do with a path.
var tasks = map[string]func(t *testing.T, path string){
	"save": func(t *testing.T, path string) {
		s, err := Open(t.Context(), path)
		require.NoError(t, err)
		mittIn(t, s)
		require.NoError(t, s.Close())
	},
}

// TestAsAnotherProgram is the other program: this one, started by program.
func TestAsAnotherProgram(t *testing.T) {
	if task := tasks[os.Getenv("THENAR_TASK")]; task != nil {
		task(t, os.Getenv("THENAR_PATH"))
		fmt.Println("\ndone")
		_, _ = io.Copy(io.Discard, os.Stdin) // until it is killed
	}
}

// program starts another program that does a task and then waits, with what it
// holds, until it is killed.
func program(t *testing.T, task, path string) (kill func()) {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	c := exec.Command(self, "-test.run=^TestAsAnotherProgram$", "-test.count=1")
	c.Env = append(os.Environ(), "THENAR_TASK="+task, "THENAR_PATH="+path)
	in, err := c.StdinPipe()
	require.NoError(t, err)
	out, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	kill = func() {
		_ = c.Process.Kill()
		_ = c.Wait()
		_ = in.Close()
	}
	t.Cleanup(kill)
	said := ""
	for lines := bufio.NewScanner(out); lines.Scan(); {
		if lines.Text() == "done" {
			return kill
		}
		said += strings.TrimSpace(lines.Text()) + "\n"
	}
	require.Fail(t, "the other program ended", said)
	return kill
}
