package store

import (
	"os"
	"path/filepath"
)

// inTheWay are the files, and the directory, that have to be writable for the
// database at path to be used, and are not.
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
