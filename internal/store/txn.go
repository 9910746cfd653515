package store

import (
	"context"
	"database/sql"
	"maps"
	"slices"
	"sync"
)

// maxPrepared is the largest number of prepared statements of a pool.
const maxPrepared = 128

// txn is a transaction that runs prepared statements: SQLite takes longer to
// parse most of ours than to run them.
type txn struct {
	*sql.Tx
	ready *prepared
	wrote bool // set by ExecContext
}

// prepared are the prepared statements of a pool, by query.
type prepared struct {
	db    *sql.DB
	mu    sync.Mutex
	of    map[string]*sql.Stmt
	asked map[string]bool // to be prepared before the next transaction
}

func prepareFor(db *sql.DB) *prepared {
	return &prepared{db: db, of: map[string]*sql.Stmt{}, asked: map[string]bool{}}
}

// find returns the statement of a query, or nil, and then has it prepared
// before the next transaction.
func (p *prepared) find(query string) *sql.Stmt {
	p.mu.Lock()
	defer p.mu.Unlock()
	s := p.of[query]
	if s == nil && len(p.of) < maxPrepared {
		p.asked[query] = true
	}
	return s
}

// prepare prepares the queries that were asked for. It runs between
// transactions, since a pool of one connection has none to spare during one,
// and without the lock, since it may wait for a connection that a transaction
// holds. A query that can't be prepared is run unprepared, and fails then.
func (p *prepared) prepare(ctx context.Context) {
	p.mu.Lock()
	asked := slices.Collect(maps.Keys(p.asked))
	clear(p.asked)
	p.mu.Unlock()
	for _, query := range asked {
		if s, err := p.db.PrepareContext(ctx, query); err == nil {
			p.mu.Lock()
			p.of[query] = s
			p.mu.Unlock()
		}
	}
}

// transact runs f in a transaction, which is committed only if f succeeds.
func (p *prepared) transact(ctx context.Context, readOnly bool, f func(*txn) error) error {
	p.prepare(ctx)
	tx, err := p.db.BeginTx(ctx, &sql.TxOptions{ReadOnly: readOnly})
	if err != nil {
		return err
	}
	// After a commit this does nothing.
	defer tx.Rollback()
	if err := f(&txn{Tx: tx, ready: p}); err != nil {
		return err
	}
	return tx.Commit()
}

// ExecContext is sql.Tx.ExecContext with prepared statements; all writes go
// through it.
func (t *txn) ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error) {
	t.wrote = true
	if s := t.ready.find(query); s != nil {
		return t.StmtContext(ctx, s).ExecContext(ctx, args...)
	}
	return t.Tx.ExecContext(ctx, query, args...)
}

// QueryContext is sql.Tx.QueryContext with prepared statements.
func (t *txn) QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error) {
	if s := t.ready.find(query); s != nil {
		return t.StmtContext(ctx, s).QueryContext(ctx, args...)
	}
	return t.Tx.QueryContext(ctx, query, args...)
}

// QueryRowContext is sql.Tx.QueryRowContext with prepared statements.
func (t *txn) QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row {
	if s := t.ready.find(query); s != nil {
		return t.StmtContext(ctx, s).QueryRowContext(ctx, args...)
	}
	return t.Tx.QueryRowContext(ctx, query, args...)
}
