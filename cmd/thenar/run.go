package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"thenar/internal/fault"
)

// The exit codes: done, input that is wrong, and any other failure.
const (
	exitDone  = 0
	exitOther = 1
	exitInput = 2
)

// stdio is where a verb reads and writes: results to Out, messages to Err.
type stdio struct {
	In  io.Reader
	Out io.Writer
	Err io.Writer
}

// verb is a command of the command line.
type verb struct {
	name    string
	args    string // the arguments, as help shows them
	does    string
	example string
	run     func(ctx context.Context, v *verb, args []string, io stdio) error
}

// errTold ends a verb that has written its messages already.
var errTold = errors.New("the messages are written")

// run carries out the verb that args begin with, or serves if there is none,
// and returns the exit code.
func run(ctx context.Context, args []string, io stdio) int {
	if len(args) == 1 && (args[0] == "-version" || args[0] == "--version") {
		printVersion(io.Out)
		return exitDone
	}
	if len(args) == 1 && (args[0] == "-h" || args[0] == "--help" || args[0] == "help") {
		overview(io.Out)
		return exitDone
	}
	name := defaultVerb
	if len(args) > 0 && (args[0] == "" || args[0][0] != '-') {
		name, args = args[0], args[1:]
	}
	for i := range verbs {
		if verbs[i].name == name {
			return exitCode(verbs[i].run(ctx, &verbs[i], args, io), io.Err)
		}
	}
	fmt.Fprintf(io.Err, "%s: is no verb; thenar -h lists them\n", name)
	return exitInput
}

// exitCode writes what went wrong, a line for each fault, and returns the exit
// code.
func exitCode(err error, messages io.Writer) int {
	switch {
	case err == nil, errors.Is(err, flag.ErrHelp):
		return exitDone
	case errors.Is(err, errTold):
		return exitInput
	}
	switch fault.KindOf(err) {
	case fault.Invalid: // a line for each field
		fmt.Fprintln(messages, fault.Message(err))
		return exitInput
	case fault.Internal:
		fmt.Fprintln(messages, err)
	default:
		fmt.Fprintln(messages, fault.Message(err))
	}
	return exitOther
}

// flags returns the flag set of a verb, with its help.
func (v *verb) flags(io stdio) *flag.FlagSet {
	f := flag.NewFlagSet(v.name, flag.ContinueOnError)
	f.SetOutput(io.Err)
	f.Usage = func() {
		out := f.Output()
		fmt.Fprintf(out, "thenar %s %s\n%s\n\nexample: %s\n", v.name, v.args, v.does, v.example)
		f.PrintDefaults()
	}
	return f
}

// parse reads the flags and exactly want arguments. Help that was asked for
// goes to standard output; a wrong flag is a fault of the input.
func (v *verb) parse(f *flag.FlagSet, args []string, want int, io stdio) error {
	for _, a := range args {
		if a == "-h" || a == "-help" || a == "--help" {
			f.SetOutput(io.Out)
		}
	}
	err := f.Parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return err
	case err != nil:
		return errTold
	case f.NArg() != want:
		return fault.New(fault.Invalid, "%s: takes %d arguments after its flags, not %d; thenar %s %s", v.name, want, f.NArg(), v.name, v.args)
	}
	return nil
}

// open opens a file for reading; "-" is standard input.
func open(name string, stdin io.Reader) (io.ReadCloser, error) {
	if name == "-" {
		return io.NopCloser(stdin), nil
	}
	file, err := os.Open(name)
	if err != nil {
		return nil, fault.New(fault.Invalid, "FILE: %v; name a file that can be read, or - for standard input", err)
	}
	return file, nil
}

func overview(out io.Writer) {
	fmt.Fprintln(out, "thenar plans fitted mitts, mittens and gloves. Without a verb it serves the app.")
	fmt.Fprintln(out)
	for _, v := range verbs {
		fmt.Fprintf(out, "  thenar %s %s\n      %s\n", v.name, v.args, v.does)
	}
	fmt.Fprintln(out, "  thenar -version")
	fmt.Fprintln(out, "\nthenar VERB -h explains a verb.")
}
