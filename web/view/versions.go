package view

import (
	"fmt"
	"strings"

	"thenar/internal/app"
	"thenar/internal/project"
)

// VersionsBelow is the address of the versions of a pattern, below that of its mitt.
const VersionsBelow = DesignBelow + "/versions"

// Versions is the page of the patterns that went out.
type Versions struct {
	app.Versions
	Name    string // as it was typed, where nothing was kept
	Message string // why not
}

// sinceAt returns the address of what changed since a version.
func sinceAt(id, number int64, below string) string {
	return MittAt(id, fmt.Sprintf("%s/%d%s", VersionsBelow, number, below))
}

// next is what the next version will be called.
func (v Versions) next() string { return fmt.Sprintf("Version %d", len(v.List)+1) }

// titled returns what a version is called, with a capital.
func titled(v app.Version) string { return capital(v.Called()) }

// orNothing returns a text, or what stands for none.
func orNothing(text, nothing string) string {
	if text == "" {
		return nothing
	}
	return text
}

// sizesSince says which sizes came and went.
func sizesSince(c project.ChangedPrint) (list []string) {
	if len(c.New) > 0 {
		list = append(list, "New sizes: "+strings.Join(c.New, ", ")+".")
	}
	if len(c.Gone) > 0 {
		list = append(list, "No longer there: "+strings.Join(c.Gone, ", ")+".")
	}
	return list
}
