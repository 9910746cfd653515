package main

import (
	"fmt"
	"io"
	"runtime"
)

// printVersion names the program's version and Go's.
func printVersion(out io.Writer) { fmt.Fprintf(out, "thenar unreleased\n%s\n", runtime.Version()) }
