package store

import (
	"context"
	"fmt"
	"slices"
)

// How is what became of a mitt or class that was taken in.
type How string

// What may become of it.
const (
	Fresh   How = "new"
	There   How = "here already"
	Further How = "gone on with"      // here up to a revision; those after it were added
	Beside  How = "kept beside yours" // here too, but gone on with in another way
)

// Arrived is what became of one mitt or class of a file, in the file's order,
// with its number here.
type Arrived struct {
	ID    int64
	How   How
	Added int // revisions
}

// Words says what became of it.
func (a Arrived) Words() string {
	if a.How == Further {
		return fmt.Sprintf("%s, %d more revisions", a.How, a.Added)
	}
	return string(a.How)
}

// Imported is what became of a file.
type Imported struct {
	Mitts, Classes []Arrived
	Motifs         int // that are new
}

// candidate is a mitt or class here that may be the one of a file.
type candidate struct {
	id           int64
	fingerprints []string
}

// meet finds among candidates the one that a file's revisions are of. How many
// of them are here already is told too.
func meet(candidates []candidate, fingerprints []string) (id int64, here int, how How) {
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

// arrive finds the mitt or class of a table that a file's revisions are of, or
// makes a new one, and tells how many of them are here already.
func arrive(ctx context.Context, tx *txn, table, created string, fingerprints []string, known func(id int64) ([]string, error)) (a Arrived, here int, err error) {
	ids, err := numbers(ctx, tx, `SELECT id FROM `+table+` WHERE created = ? ORDER BY id`, created)
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
	a.ID, here, a.How = meet(list, fingerprints)
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
