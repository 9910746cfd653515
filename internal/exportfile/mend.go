package exportfile

import (
	"fmt"

	"thenar/internal/plain"
)

// MendKeys puts keys that can be read back in the place of those that can't,
// which earlier versions took, and says of which tries and counts. Tries and
// counts that are told apart stay so, and the same mitt gives the same keys.
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

// TryKeys are the keys of a mitt's tries, in their order.
func (m *Mitt) TryKeys() []string {
	keys := make([]string, len(m.Tries))
	for i := range m.Tries {
		keys[i] = m.Tries[i].Key
	}
	return keys
}

// CountKeys are the keys of a mitt's counts, in their order.
func (m *Mitt) CountKeys() []string {
	keys := make([]string, len(m.Counts))
	for i := range m.Counts {
		keys[i] = m.Counts[i].Key
	}
	return keys
}

// keyed are the strokes that have a key, by their places.
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
