// Package static holds the style sheets, scripts and fonts of the pages, and
// the address under which they are served.
package static

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"io/fs"
)

// FS holds the files as css/…, js/…, img/… and fonts/…; of the fonts those that
// a browser loads, with their licences.
//
//go:embed all:css all:js all:img fonts/*.woff2 fonts/*.txt
var FS embed.FS

// Version is a short hash over the names and contents of all files. It stands
// in their address, so a browser may keep a file for good: a file that
// changed has another address. One hash for all, and in front of the name, so
// that a script's relative import leads to the script of the same version.
var Version = version(FS)

// URL is the address of a file, named as in FS: "css/base.css".
func URL(name string) string { return address(Version, name) }

func address(version, name string) string { return "/static/" + version + "/" + name }

// version hashes every file with its name. The lengths keep a name and a
// content apart from the next. Files in memory can be read, so an error here
// is a fault of the build and stops the program before it serves anything.
func version(files fs.FS) string {
	hash := sha256.New()
	err := fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		content, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		fmt.Fprintf(hash, "%d %s %d ", len(name), name, len(content))
		_, err = hash.Write(content)
		return err
	})
	if err != nil {
		panic(fmt.Errorf("static: %w", err))
	}
	return hex.EncodeToString(hash.Sum(nil))[:12]
}
