package store

import (
	"os"
	"path/filepath"
)

// inTheWay returns the files, and the directory, that must be writable to use
// the database at path and are not.
func inTheWay(path string) (list []string) {
	whole := true
	for _, end := range []string{"", logEnd, mapEnd} {
		if _, err := os.Stat(path + end); err != nil {
			whole = false
		} else if !writable(path + end) {
			list = append(list, path+end)
		}
	}
	if dir := filepath.Dir(path); !whole && !writable(dir) {
		list = append(list, dir)
	}
	return list
}
