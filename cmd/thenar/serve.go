package main

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web"
)

// defaultListen is where the app is served by default, for this machine only.
const defaultListen = "127.0.0.1:8420"

// serve serves the app until it is told to stop.
func serve(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	listen := f.String("listen", defaultListen, "`address` and port; beyond 127.0.0.1 others near by reach it, with the key that is printed")
	db := f.String("db", "", dbUsage)
	newKey := f.Bool("new-key", false, "let every device out that was let in")
	if err := v.parse(f, args, 0, std); err != nil {
		return err
	}
	host, _, err := net.SplitHostPort(*listen)
	if err != nil {
		return fault.Fields{{Path: "listen", Message: fmt.Sprintf("is %q; write an address and a port such as %s", *listen, defaultListen)}}
	}
	return withApp(ctx, *db, func(a *app.App) error {
		if *newKey {
			if err := letAllOut(ctx, a, std.Err); err != nil {
				return err
			}
		}
		ln, err := net.Listen("tcp", *listen)
		if err != nil {
			return fault.New(fault.Invalid, "listen: can't be used: %v; choose another address or port, such as -listen %s", err, defaultListen)
		}
		door := web.Door{}
		if !loopback(host, ln.Addr()) {
			door = openDoor(ln.Addr())
		}
		if err := welcome(std.Out, ln.Addr(), door); err != nil {
			return errors.Join(err, ln.Close())
		}
		return web.Serve(ctx, ln, a, std.Err, door)
	})
}

// letAllOut lets every device out, and prints how many there were.
func letAllOut(ctx context.Context, a *app.App, out io.Writer) error {
	n, err := a.LetAllOut(ctx)
	if err == nil {
		fmt.Fprintf(out, "Devices let out: %d. Each needs the link again.\n", n)
	}
	return err
}

// openDoor returns a door with a new key.
func openDoor(at net.Addr) web.Door {
	key := rand.Text()
	return web.Door{Key: key, Link: link(at, key)}
}

// welcome prints where to open the app. If other devices can reach it, a QR
// code of the link follows.
func welcome(out io.Writer, at net.Addr, door web.Door) error {
	if door.Key == "" {
		_, err := fmt.Fprintln(out, link(at, ""))
		return err
	}
	code, err := app.QR(door.Link)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "%s\n\nOpen it once on each device, or point a phone's camera here:\n%s", door.Link, inBlocks(code))
	return err
}

// inBlocks returns a QR code as lines of text, two of its rows in each. The
// light squares are drawn, since most terminals write light on dark.
func inBlocks(rows [][]bool) string {
	var b strings.Builder
	for y := 0; y < len(rows); y += 2 {
		for x, above := range rows[y] {
			below := y+1 == len(rows) || rows[y+1][x]
			switch {
			case above && below:
				b.WriteByte(' ')
			case above:
				b.WriteRune('▄')
			case below:
				b.WriteRune('▀')
			default:
				b.WriteRune('█')
			}
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// loopback reports whether only this machine can reach an address.
func loopback(host string, at net.Addr) bool {
	tcp, ok := at.(*net.TCPAddr)
	return host != "" && ok && tcp.IP.IsLoopback()
}

// link returns the address to open in a browser, with the key if there is one.
func link(at net.Addr, key string) string {
	if key == "" {
		return fmt.Sprintf("http://%s/", at)
	}
	tcp, ok := at.(*net.TCPAddr)
	if ok && tcp.IP.IsUnspecified() {
		at = &net.TCPAddr{IP: outward(), Port: tcp.Port}
	}
	return fmt.Sprintf("http://%s/?key=%s", at, key)
}

// outward returns an address by which others near by reach this machine, or
// 127.0.0.1 if there is none.
func outward() net.IP {
	list, err := net.InterfaceAddrs()
	if err != nil {
		return net.IPv4(127, 0, 0, 1)
	}
	for _, a := range list {
		if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && n.IP.IsPrivate() {
			return n.IP
		}
	}
	for _, a := range list {
		if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && !n.IP.IsLoopback() {
			return n.IP
		}
	}
	return net.IPv4(127, 0, 0, 1)
}

// demo fills a new database with the sample mitts.
func demo(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", dbUsage)
	if err := v.parse(f, args, 0, std); err != nil {
		return err
	}
	return withApp(ctx, *db, func(a *app.App) error {
		names, err := a.AddSamples(ctx)
		for _, name := range names {
			fmt.Fprintln(std.Out, name)
		}
		return err
	})
}

// dbUsage is the help of the flag -db.
const dbUsage = "`file` with all that is kept (default: thenar/thenar.db in the system's place for data)"

// dbPath returns path, or the usual place of the database if path is empty.
func dbPath(path string) (string, error) {
	if path != "" {
		return path, nil
	}
	dir, err := dataDir()
	return filepath.Join(dir, "thenar", "thenar.db"), err
}

// withApp opens the database at path, or at its usual place, calls use, and
// closes it.
func withApp(ctx context.Context, path string, use func(*app.App) error) error {
	path, err := dbPath(path)
	if err != nil {
		return err
	}
	a, err := app.Open(ctx, path)
	if err != nil {
		return err
	}
	return errors.Join(use(a), a.Close())
}

// withExisting is withApp for verbs that only read, so that a mistyped path
// makes no new database.
func withExisting(ctx context.Context, path string, use func(*app.App) error) error {
	path, err := dbPath(path)
	if err != nil {
		return err
	}
	if _, err := os.Stat(path); err != nil {
		return fault.Fields{{Path: "db", Message: fmt.Sprintf("%v; name a file that is there", err)}}
	}
	return withApp(ctx, path, use)
}

// dataDir returns $XDG_DATA_HOME, or the system's directory for data.
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

// printVersion prints the versions of the program, of Go and of the schema.
func printVersion(out io.Writer) {
	version := "unreleased"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		version = info.Main.Version
	}
	fmt.Fprintf(out, "thenar %s\n%s\nschema %d\n", version, runtime.Version(), app.Schema())
}
