package web

import (
	"strings"

	"thenar/internal/fault"
	"thenar/internal/sheet"
)

// unsure refuses to print as long as there are questions, and says where they
// are answered.
func unsure(asks []sheet.Question, where string) error {
	if len(asks) == 0 {
		return nil
	}
	var faults fault.Fields
	for _, q := range asks {
		_, words, _ := strings.Cut(q.Words, ": ")
		faults.Add(q.Path, "%s Nothing is printed until somebody says yes on %s", words, where)
	}
	return faults
}
