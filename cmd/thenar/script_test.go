package main

import (
	"context"
	"database/sql"
	"fmt"
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"newer": makeNewer,
		"thenar": func() {
			os.Exit(run(context.Background(), os.Args[1:], stdio{os.Stdin, os.Stdout, os.Stderr}))
		},
	})
}

// makeNewer marks a database as written by a program of the future.
func makeNewer() {
	db, err := sql.Open("sqlite", os.Args[1])
	if err == nil {
		_, err = db.ExecContext(context.Background(), "PRAGMA user_version = 99")
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// Each file of testdata is one behaviour of the command line, headed by what
// it settles.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata"})
}
