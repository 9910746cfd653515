package written

import "slices"

// Names returns what the stitches are called for short that are read by their names, each once,
// in the order of the letters.
func Names() (list []string) {
	seen := map[string]bool{}
	add := func(name string) {
		if !seen[name] {
			seen[name] = true
			list = append(list, name)
		}
	}
	for _, s := range signs {
		add(s.name)
	}
	for _, of := range phrases {
		for _, one := range of {
			add(one.name)
		}
	}
	slices.Sort(list)
	return list
}
