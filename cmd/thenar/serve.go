package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web"
)

// defaultListen is where the app is served: this machine only.
const defaultListen = "127.0.0.1:8420"

// serve serves the app until it is told to stop.
func serve(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	listen := f.String("listen", defaultListen, "address and port; this machine only")
	db := f.String("db", "", "database file (default: thenar/thenar.db in the system's place for data)")
	if err := v.parse(f, args, 0, std); err != nil {
		return err
	}
	if err := loopback(*listen); err != nil {
		return err
	}
	return withStore(ctx, *db, func(st *store.Store) error {
		ln, err := net.Listen("tcp", *listen)
		if err != nil {
			return fault.New(fault.Invalid, "listen: can't be used: %v; choose another port with -listen 127.0.0.1:PORT", err)
		}
		fmt.Fprintf(std.Out, "http://%s/\n", ln.Addr())
		return web.Serve(ctx, ln, st, std.Err)
	})
}

// loopback holds the app to this machine: it has no key that would keep
// others out.
func loopback(listen string) error {
	host, _, err := net.SplitHostPort(listen)
	if err != nil {
		return fault.Fields{{Path: "listen", Message: fmt.Sprintf("is %q; write an address and a port such as %s", listen, defaultListen)}}
	}
	if ip := net.ParseIP(host); host == "localhost" || (ip != nil && ip.IsLoopback()) {
		return nil
	}
	return fault.Fields{{Path: "listen", Message: fmt.Sprintf("is %q, which others can reach; write 127.0.0.1, ::1 or localhost", listen)}}
}

// demo fills a new database with the sample mitts.
func demo(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", "database file (default: thenar/thenar.db in the system's place for data)")
	if err := v.parse(f, args, 0, std); err != nil {
		return err
	}
	return withStore(ctx, *db, func(st *store.Store) error { return fill(ctx, st, std.Out) })
}

// fill puts the sample mitts into a store that is empty.
func fill(ctx context.Context, st *store.Store, out io.Writer) error {
	there, err := st.List(ctx)
	if err != nil {
		return err
	}
	if len(there) > 0 {
		return fault.Fields{{Path: "db", Message: fmt.Sprintf("holds %d mitts already; name a new file with -db", len(there))}}
	}
	for _, d := range project.Samples() {
		raw, err := d.Encode()
		if err != nil {
			return err
		}
		if _, err := st.Create(ctx, raw); err != nil {
			return err
		}
		fmt.Fprintln(out, d.Name)
	}
	return nil
}

// withStore opens the database at path, or at its usual place, for use, and
// closes it after.
func withStore(ctx context.Context, path string, use func(*store.Store) error) error {
	if path == "" {
		dir, err := dataDir()
		if err != nil {
			return err
		}
		path = filepath.Join(dir, "thenar", "thenar.db")
	}
	st, err := store.Open(ctx, path)
	if err != nil {
		return err
	}
	return errors.Join(use(st), st.Close())
}

// dataDir is $XDG_DATA_HOME, or the system's like.
func dataDir() (string, error) {
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		return os.UserConfigDir()
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", fault.New(fault.Invalid, "db: no home directory is known (%v); name a file with -db", err)
	}
	return filepath.Join(home, ".local", "share"), nil
}

// printVersion names the program's version, Go's, and the schema's number.
func printVersion(out io.Writer) {
	version := "unreleased"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		version = info.Main.Version
	}
	fmt.Fprintf(out, "thenar %s\n%s\nschema %d\n", version, runtime.Version(), store.Newest())
}
