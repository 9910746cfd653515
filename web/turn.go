package web

import (
	"context"
	"errors"
	"slices"
	"sync"
	"time"
)

// The bounds of heavy work: how much of it is done at a time, how many wait for
// it, and how long a place is kept for a page that does not ask again.
const (
	maxHeavy   = 2
	maxWaiting = 16
	keepPlace  = 10 * time.Second
)

// How long heavy work is waited for: before a page says so, and by a script,
// which can't be told. A page asks again by itself.
const (
	pagePatience   = time.Second
	scriptPatience = 20 * time.Second
	askAgain       = "1" // s
)

// errCrowd refuses who would be one too many to wait.
var errCrowd = errors.New("too many wait already")

// turns lets heavy work be done in the order in which it was asked for.
type turns struct {
	page, script time.Duration // how long they wait

	mu    sync.Mutex
	busy  int
	line  []*place
	moved chan struct{} // closed when somebody gets on or goes
}

func newTurns() *turns {
	return &turns{page: pagePatience, script: scriptPatience, moved: make(chan struct{})}
}

// place is one in the line: of a request that waits, or of a page that asks
// again by itself, and knows it by its id.
type place struct {
	id    string
	asked int       // requests that wait at it now
	left  time.Time // when the last of them was answered
}

// take waits for a turn, which done ends. After patience it gives up and tells
// how many are before it; its place is kept for a while, to be found by its id.
// It fails with errCrowd, and with ctx.
func (t *turns) take(ctx context.Context, id string, patience time.Duration) (done func(), before int, err error) {
	end := time.NewTimer(patience)
	defer end.Stop()
	t.mu.Lock()
	defer t.mu.Unlock()
	if ctx.Err() != nil {
		return nil, 0, ctx.Err()
	}
	p := t.stand(id)
	if p == nil {
		return nil, 0, errCrowd
	}
	p.asked++
	for {
		t.forget()
		at := slices.Index(t.line, p)
		if at < 0 { // another request of the same page had this turn
			if p = t.stand(id); p == nil {
				return nil, 0, errCrowd
			}
			p.asked++
			continue
		}
		if t.busy+at < maxHeavy {
			t.line = slices.Delete(t.line, at, at+1)
			t.busy++
			t.move()
			return sync.OnceFunc(t.end), 0, nil
		}
		moved := t.moved
		t.mu.Unlock()
		late := false
		select {
		case <-moved:
		case <-end.C:
			late = true
		case <-ctx.Done():
		}
		t.mu.Lock()
		if ctx.Err() != nil || late {
			p.asked--
			p.left = time.Now()
			if ctx.Err() != nil {
				t.leave(p)
				return nil, 0, ctx.Err()
			}
			time.AfterFunc(keepPlace, t.look)
			return nil, t.busy + slices.Index(t.line, p), nil
		}
	}
}

// stand finds a place again, or adds one at the end; nil where the line is full.
func (t *turns) stand(id string) *place {
	t.forget()
	for _, p := range t.line {
		if p.id == id {
			return p
		}
	}
	if len(t.line) >= maxWaiting {
		return nil
	}
	p := &place{id: id}
	t.line = append(t.line, p)
	return p
}

// forget takes those out of the line whose page did not ask again.
func (t *turns) forget() {
	t.line = slices.DeleteFunc(t.line, func(p *place) bool { return p.asked == 0 && !p.left.IsZero() && time.Since(p.left) >= keepPlace })
}

// leave takes a place out of the line that nobody stands at any more.
func (t *turns) leave(p *place) {
	if p.asked == 0 {
		t.line = slices.DeleteFunc(t.line, func(q *place) bool { return p == q })
		t.move()
	}
}

// move lets everybody in the line look where they stand.
func (t *turns) move() {
	close(t.moved)
	t.moved = make(chan struct{})
}

func (t *turns) look() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.move()
}

func (t *turns) end() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.busy--
	t.move()
}
