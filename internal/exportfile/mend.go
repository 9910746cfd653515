package exportfile

import (
	"fmt"

	"thenar/internal/plain"
)

// MendKeys replaces keys of tries, counts and strokes that Read would refuse,
// which earlier versions accepted, and lists the ones it replaced. Different keys
// stay different, and the same mitt always gets the same keys.
func (m *Mitt) MendKeys() (mended []string) {
	keys, changed := plain.MendedKeys(m.TryKeys())
	for _, i := range changed {
		m.Tries[i].Key = keys[i]
		mended = append(mended, fmt.Sprintf("mitt %d, try %d: its key", m.ID, i+1))
	}
	keys, changed = plain.MendedKeys(m.CountKeys())
	for _, i := range changed {
		m.Counts[i].Key = keys[i]
		mended = append(mended, fmt.Sprintf("mitt %d, count %d: its key", m.ID, i+1))
	}
	given := m.strokeKeys()
	keys, changed = plain.MendedKeys(given.keys)
	for _, i := range changed {
		m.Revisions[given.at[i]].Key = keys[i]
		mended = append(mended, fmt.Sprintf("mitt %d, revision %d: its key", m.ID, m.Revisions[given.at[i]].Revision))
	}
	return mended
}

// TryKeys returns the keys of a mitt's tries, in order.
func (m *Mitt) TryKeys() []string {
	keys := make([]string, len(m.Tries))
	for i := range m.Tries {
		keys[i] = m.Tries[i].Key
	}
	return keys
}

// CountKeys returns the keys of a mitt's counts, in order.
func (m *Mitt) CountKeys() []string {
	keys := make([]string, len(m.Counts))
	for i := range m.Counts {
		keys[i] = m.Counts[i].Key
	}
	return keys
}

// keyed holds the keys of the revisions that have one, and their indexes.
type keyed struct {
	keys []string
	at   []int
}

func (m *Mitt) strokeKeys() (k keyed) {
	for i := range m.Revisions {
		if key := m.Revisions[i].Key; key != "" {
			k.keys, k.at = append(k.keys, key), append(k.at, i)
		}
	}
	return k
}
