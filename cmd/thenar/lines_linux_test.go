package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Lines as long as any sheet may be are answered in under 40 MB resident, by a
// process of its own with two processors.
func TestLongLinesTakeLittleMemory(t *testing.T) {
	t.Parallel()
	const lines = 40
	file := t.TempDir() + "/thenar"
	out, err := exec.Command("go", "build", "-ldflags=-s -w", "-o", file, "thenar/cmd/thenar").CombinedOutput()
	require.NoError(t, err, "%s", out)
	c := exec.Command(file, "plan", "-lines", "-brief", "-")
	c.Env = append(os.Environ(), "GOMAXPROCS=2")
	in, err := c.StdinPipe()
	require.NoError(t, err)
	answers, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	line := []byte(`{"a":"` + strings.Repeat("x", 1<<20-20) + "\"}\n")
	sent := make(chan error, 1)
	go func() {
		_, err := in.Write(bytes.Repeat(line, lines))
		_, more := in.Write([]byte(strings.Repeat("\n", 16))) // two jobs of them: no answer waits for the rest of its own
		sent <- errors.Join(err, more)
	}()
	r := bufio.NewReader(answers)
	for range lines {
		_, err := r.ReadString('\n')
		require.NoError(t, err)
	}
	require.NoError(t, <-sent)
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", c.Process.Pid))
	require.NoError(t, err)
	kb := func(name string) (n int) {
		_, rest, _ := strings.Cut(string(raw), name+":")
		_, err := fmt.Sscan(rest, &n)
		require.NoError(t, err)
		return n
	}
	// The program's own pages, read from its file, are no memory that lines take.
	assert.Less(t, kb("VmHWM")-kb("RssFile"), 32<<10, "KB at most, of %d resident", kb("VmHWM"))
	require.NoError(t, in.Close())
	_, _ = r.WriteTo(new(bytes.Buffer))
	var ended *exec.ExitError
	require.ErrorAs(t, c.Wait(), &ended, "each line is bad")
}
