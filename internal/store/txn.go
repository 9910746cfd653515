package store

import (
	"context"
	"database/sql"
	"maps"
	"slices"
	"sync"
)

// maxPrepared is how many different statements are kept ready.
const maxPrepared = 128

// txn is a transaction whose statements are read once and kept ready for the
// next: SQLite takes longer to read most of ours than to carry them out.
type txn struct {
	*sql.Tx
	ready *prepared
	wrote bool // whether anything was carried out since it was false
}

// prepared are the statements of a pool that are kept ready.
type prepared struct {
	db    *sql.DB
	mu    sync.Mutex
	of    map[string]*sql.Stmt
	asked map[string]bool // for the next transaction
}

func prepareFor(db *sql.DB) *prepared {
	return &prepared{db: db, of: map[string]*sql.Stmt{}, asked: map[string]bool{}}
}

// find gives the statement of a query if it is ready; else it will be.
func (p *prepared) find(query string) *sql.Stmt {
	p.mu.Lock()
	defer p.mu.Unlock()
	s := p.of[query]
	if s == nil && len(p.of) < maxPrepared {
		p.asked[query] = true
	}
	return s
}

// prepare makes ready what was asked for: between transactions, since a pool
// of one connection has none to spare in one, and unlocked, since it may wait
// for a connection that a transaction has. What can't be prepared is run as it
// is, and says then what is wrong.
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

// transact runs f in a transaction, which is kept only if f succeeds.
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

// ExecContext is that of sql.Tx; all that writes goes through it.
func (t *txn) ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error) {
	t.wrote = true
	if s := t.ready.find(query); s != nil {
		return t.StmtContext(ctx, s).ExecContext(ctx, args...)
	}
	return t.Tx.ExecContext(ctx, query, args...)
}

// QueryContext is that of sql.Tx.
func (t *txn) QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error) {
	if s := t.ready.find(query); s != nil {
		return t.StmtContext(ctx, s).QueryContext(ctx, args...)
	}
	return t.Tx.QueryContext(ctx, query, args...)
}

// QueryRowContext is that of sql.Tx.
func (t *txn) QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row {
	if s := t.ready.find(query); s != nil {
		return t.StmtContext(ctx, s).QueryRowContext(ctx, args...)
	}
	return t.Tx.QueryRowContext(ctx, query, args...)
}
