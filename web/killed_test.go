package web

import (
	"context"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
)

// servesAlone, in the environment, makes the test program serve the app in the
// place of running tests: a server that can be killed without warning.
const servesAlone = "THENAR_SERVES_ALONE"

func TestMain(m *testing.M) {
	if db := os.Getenv(servesAlone); db != "" {
		os.Exit(serveAlone(db, os.Args[len(os.Args)-1]))
	}
	code := m.Run()
	stopChromium()
	os.Exit(code)
}

func serveAlone(db, address string) int {
	ctx := context.Background()
	st, err := store.Open(ctx, db)
	if err != nil {
		return 1
	}
	ln, err := net.Listen("tcp", address)
	if err != nil {
		return 1
	}
	if err := Serve(ctx, ln, app.New(st), os.Stderr, Door{}); err != nil {
		return 1
	}
	return 0
}

// killable is an app in a process of its own, on one address and one file.
type killable struct {
	t           testing.TB
	db, address string
	process     *exec.Cmd
}

func newKillable(t testing.TB) *killable {
	t.Helper()
	ln, err := (&net.ListenConfig{}).Listen(t.Context(), "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	k := &killable{t: t, db: filepath.Join(t.TempDir(), "thenar.db"), address: ln.Addr().String()}
	require.NoError(t, ln.Close())
	k.start()
	t.Cleanup(k.kill)
	return k
}

// start starts the server and waits until it can be reached.
func (k *killable) start() {
	k.t.Helper()
	self, err := os.Executable()
	require.NoError(k.t, err)
	k.process = exec.Command(self, k.address)
	k.process.Env = append(os.Environ(), servesAlone+"="+k.db)
	k.process.Stderr = os.Stderr
	require.NoError(k.t, k.process.Start())
	dialer := net.Dialer{Timeout: time.Second}
	require.Eventually(k.t, func() bool {
		c, err := dialer.DialContext(k.t.Context(), "tcp", k.address)
		return err == nil && c.Close() == nil
	}, 10*time.Second, 20*time.Millisecond)
}

// kill ends it as a dead battery would.
func (k *killable) kill() {
	if k.process == nil {
		return
	}
	_ = k.process.Process.Kill()
	_ = k.process.Wait() // it says that it was killed
	k.process = nil
}
