package store

import (
	"context"
	"fmt"
	"slices"
)

// How is the outcome of importing a mitt or class.
type How string

// The outcomes of an import.
const (
	Fresh   How = "new"
	There   How = "here already"
	Further How = "gone on with"      // its later revisions were added to those already here
	Beside  How = "kept beside yours" // changed in both places, so it was added as another
)

// Arrived is the outcome of one imported mitt or class, with its number here.
type Arrived struct {
	ID    int64
	How   How
	Added int // the number of revisions added
}

// Words returns the outcome as a person reads it.
func (a Arrived) Words() string {
	if a.How == Further {
		return fmt.Sprintf("%s, %d more revisions", a.How, a.Added)
	}
	return string(a.How)
}

// Imported is the outcome of an import, in the order of the file.
type Imported struct {
	Mitts, Classes []Arrived
	Motifs         int // the number of new motifs
}

// candidate is a stored mitt or class that an imported one may be the same as.
type candidate struct {
	id           int64
	fingerprints []string
}

// match returns the candidate that shares the longest history with
// fingerprints, and the number of revisions that both have. Revisions are only
// ever added, so two histories of one mitt agree up to the shorter one's end.
func match(candidates []candidate, fingerprints []string) (id int64, here int, how How) {
	how = Fresh
	for _, c := range candidates {
		common := min(len(c.fingerprints), len(fingerprints))
		switch {
		case !slices.Equal(c.fingerprints[:common], fingerprints[:common]):
			if c.fingerprints[0] == fingerprints[0] && how == Fresh {
				how = Beside
			}
		case len(c.fingerprints) >= len(fingerprints):
			return c.id, len(fingerprints), There
		case common > here:
			id, here, how = c.id, common, Further
		}
	}
	return id, here, how
}

// findOrAdd returns the row of table that has the history fingerprints, or adds
// a new row. here is the number of revisions that the row has already.
func findOrAdd(ctx context.Context, tx *txn, table, created string, fingerprints []string, known func(id int64) ([]string, error)) (a Arrived, here int, err error) {
	ids, err := queryIDs(ctx, tx, `SELECT id FROM `+table+` WHERE created = ? ORDER BY id`, created)
	if err != nil {
		return a, 0, err
	}
	var list []candidate
	for _, id := range ids {
		c := candidate{id: id}
		if c.fingerprints, err = known(id); err != nil {
			return a, 0, err
		}
		list = append(list, c)
	}
	a.ID, here, a.How = match(list, fingerprints)
	a.Added = len(fingerprints) - here
	if a.ID > 0 {
		return a, here, nil
	}
	made, err := tx.ExecContext(ctx, `INSERT INTO `+table+` (created) VALUES (?)`, created)
	if err != nil {
		return a, 0, err
	}
	a.ID, err = made.LastInsertId()
	return a, here, err
}
