package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// backup copies the whole database to a new file, or to standard output.
func backup(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", dbUsage)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	return withExisting(ctx, *db, func(a *app.App) error {
		if f.Arg(0) != "-" {
			return a.Backup(ctx, f.Arg(0))
		}
		return throughFile(func(path string) error {
			if err := a.Backup(ctx, path); err != nil {
				return err
			}
			file, err := os.Open(path)
			if err != nil {
				return err
			}
			defer file.Close()
			_, err = io.Copy(std.Out, file)
			return err
		})
	})
}

// restore replaces the database with a backup, and keeps what was there.
func restore(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	db := f.String("db", "", dbUsage)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	path, err := dbPath(*db)
	if err != nil {
		return err
	}
	put := func(from string) error {
		kept, err := app.Restore(ctx, path, from)
		if err == nil && kept != "" {
			fmt.Fprintf(std.Err, "What was there is kept as %s.\n", kept)
		}
		return err
	}
	if f.Arg(0) != "-" {
		return put(f.Arg(0))
	}
	return throughFile(func(path string) error {
		file, err := os.Create(path)
		if err != nil {
			return err
		}
		if _, err := io.Copy(file, std.In); err != nil {
			return fault.New(fault.Invalid, "FILE: %v; send a backup on standard input", err)
		}
		if err := file.Close(); err != nil {
			return err
		}
		return put(path)
	})
}

// throughFile calls use with the path of a temporary file, and removes that
// afterwards.
func throughFile(use func(path string) error) error {
	dir, err := os.MkdirTemp("", "thenar")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	return use(filepath.Join(dir, "thenar.db"))
}
