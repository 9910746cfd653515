package web

import (
	"context"
	"errors"
	"slices"
	"sync"
	"time"
)

// The bounds of heavy requests: how many run at a time, how many wait, and how
// long a place is kept for a page that has not asked again.
const (
	maxHeavy   = 2
	maxWaiting = 16
	keepPlace  = 10 * time.Second
)

// How long a heavy request waits: a page says soon that it has to, and asks
// again by itself; a script can't be told, and waits longer.
const (
	pagePatience   = time.Second
	scriptPatience = 20 * time.Second
	askAgain       = "1" // s
)

// errCrowd is returned by take when the line is full.
var errCrowd = errors.New("too many wait already")

// turns lets heavy requests run in the order in which they were made.
type turns struct {
	page, script time.Duration // how long a page and a script wait

	mu    sync.Mutex
	busy  int
	line  []*place
	moved chan struct{} // closed, and made anew, whenever somebody may have moved up
}

func newTurns() *turns {
	return &turns{page: pagePatience, script: scriptPatience, moved: make(chan struct{})}
}

// place is a place in the line. It belongs to a request that waits, or to a
// page that asks again by itself and finds its place by the id.
type place struct {
	id    string
	asked int       // the number of requests that wait at it now
	left  time.Time // when the last of them was answered
}

// take waits for a turn, which done ends. After patience it gives up: done is
// nil, before is how many are ahead, and the place is kept for a while under
// its id. It fails with errCrowd if the line is full, and when ctx ends.
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

// stand returns the place with the id, or adds one at the end; nil if the line
// is full.
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

// forget removes the places whose pages did not ask again in time.
func (t *turns) forget() {
	t.line = slices.DeleteFunc(t.line, func(p *place) bool { return p.asked == 0 && !p.left.IsZero() && time.Since(p.left) >= keepPlace })
}

// leave removes a place at which no request waits any more.
func (t *turns) leave(p *place) {
	if p.asked == 0 {
		t.line = slices.DeleteFunc(t.line, func(q *place) bool { return p == q })
		t.move()
	}
}

// move wakes everybody in the line, to look where they stand.
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
