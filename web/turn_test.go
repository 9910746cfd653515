package web

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// forever is longer than a test lasts.
const forever = time.Hour

// held takes both turns; the function ends them.
func (a *served) held() (end func()) {
	a.t.Helper()
	turns := a.handler.turns
	var all []func()
	for range maxHeavy {
		done, _, err := turns.take(a.t.Context(), "", forever)
		require.NoError(a.t, err)
		all = append(all, done)
	}
	return func() {
		for _, done := range all {
			done()
		}
	}
}

// waiting is how many stand in the line.
func (t *turns) waiting() int {
	t.mu.Lock()
	defer t.mu.Unlock()
	return len(t.line)
}

// Of many that ask at the same time two are worked out, never more, and all in
// the end; a turn ends with the first byte.
//
//thenar:race
func TestTwoAtATime(t *testing.T) {
	a := newApp(t)
	s := a.handler
	s.turns.script = forever
	var now, most atomic.Int32
	h := s.answer(s.heavy(func(w http.ResponseWriter, _ *http.Request) error {
		n := now.Add(1)
		for was := most.Load(); n > was && !most.CompareAndSwap(was, n); was = most.Load() {
		}
		for range 200 {
			fmt.Fprintf(httptest.NewRecorder(), "%d", n) // something to do
		}
		now.Add(-1)
		_, err := w.Write([]byte("done"))
		return err
	}))
	var all sync.WaitGroup
	var answered atomic.Int32
	for range maxWaiting {
		all.Go(func() {
			w := httptest.NewRecorder()
			h(w, httptest.NewRequest("GET", "/", nil))
			if w.Body.String() == "done" {
				answered.Add(1)
			}
		})
	}
	all.Wait()
	assert.LessOrEqual(t, most.Load(), int32(maxHeavy))
	assert.Equal(t, int32(maxWaiting), answered.Load())
	a.held()() // both turns are free again
}

// Turns come in the order in which they were asked for, also by pages that ask
// again and again.
//
//thenar:race
func TestTurnsComeInOrder(t *testing.T) {
	a := newApp(t)
	turns := a.handler.turns
	end := a.held()
	for _, id := range []string{"first", "second", "third", "fourth"} {
		done, _, err := turns.take(t.Context(), id, 0)
		require.NoError(t, err)
		require.Nil(t, done)
	}
	end()
	for id, before := range map[string]int{"third": 2, "fourth": 3} {
		done, n, err := turns.take(t.Context(), id, 0)
		require.NoError(t, err)
		assert.Nil(t, done, "%s comes later", id)
		assert.Equal(t, before, n)
	}
	one, _, err := turns.take(t.Context(), "second", 0)
	require.NoError(t, err)
	require.NotNil(t, one, "there are two at a time")
	two, _, err := turns.take(t.Context(), "first", 0)
	require.NoError(t, err)
	one()
	two()
	three, _, err := turns.take(t.Context(), "third", 0)
	require.NoError(t, err)
	require.NotNil(t, three)
	three()
}

// The charts of a hand are drawn for a script when it is its turn, as its page was.
func TestStripsTakeATurn(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	a.handler.turns.script = 0
	end := a.held()
	assert.Equal(t, http.StatusServiceUnavailable, a.get(at+"/strips").status)
	end()
	assert.Equal(t, http.StatusOK, a.get(at+"/strips").status)
}

// Who has to wait is told so by a page that asks again by itself; other pages
// are served meanwhile, and a file comes when its turn does.
func TestWaitingPage(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	a.handler.turns.page = 0
	end := a.held()
	ask := func(path string) answer {
		req := a.request("GET", path, "", "")
		req.Header.Set("Accept", "text/html,*/*;q=0.8")
		return a.do(req)
	}
	var next []string
	for _, path := range []string{"/print.pdf?paper=letter", "/chart.png", "/desk/pattern"} {
		got := ask(at + path)
		require.Equal(t, http.StatusAccepted, got.status, path)
		assert.Contains(t, got.doc().Find("main").Text(), "goes on by itself")
		wait, to, ok := strings.Cut(got.header.Get("Refresh"), "; url=")
		require.True(t, ok)
		assert.Equal(t, askAgain, wait)
		again := ask(to)
		require.Equal(t, http.StatusAccepted, again.status)
		next = append(next, strings.TrimPrefix(again.header.Get("Refresh"), askAgain+"; url="))
	}
	for _, path := range []string{"/", at + "/desk/fit", at + "/desk/chart", at + "/desk/knit", at + "/desk/try", at + "/chart", "/status", "/classes"} {
		assert.Equal(t, http.StatusOK, ask(path).status, path)
	}
	end()
	for i, kind := range []string{"application/pdf", "image/png", "text/html; charset=utf-8"} {
		got := ask(next[i])
		require.Equal(t, http.StatusOK, got.status)
		assert.Equal(t, kind, got.header.Get("Content-Type"))
	}
	assert.Zero(t, a.handler.turns.waiting())
}

// The line is bounded: beyond it a sentence says when to try again, and what
// a page of another site sets off never stands in it.
func TestTheLineIsBounded(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	turns := a.handler.turns
	turns.script = forever
	end := a.held()
	for range 6 { // pictures on another site's page
		req := a.request("GET", at+"/print.pdf", "", "")
		req.Header.Set("Sec-Fetch-Site", "cross-site")
		req.Header.Set("Sec-Fetch-Mode", "no-cors")
		req.Header.Set("Sec-Fetch-Dest", "image")
		assert.Equal(t, http.StatusForbidden, a.do(req).status)
	}
	assert.Zero(t, turns.waiting(), "nothing is worked out")
	for i := range maxWaiting {
		done, _, err := turns.take(t.Context(), fmt.Sprint(i), 0)
		require.NoError(t, err)
		require.Nil(t, done)
	}
	got := a.get(at + "/print.pdf")
	assert.Equal(t, http.StatusServiceUnavailable, got.status)
	assert.Equal(t, crowdedFor, got.header.Get("Retry-After"))
	assert.Contains(t, got.doc().Text(), "Try again in a minute")
	end()
}

// Who goes away while they wait gives up their place, and who goes away while
// their work is done ends it.
//
//thenar:race
func TestWhoGoesAwayEndsTheirTurn(t *testing.T) {
	a := newApp(t)
	s := a.handler
	s.turns.script = forever
	ctx, cancel := context.WithCancel(t.Context())
	begun := make(chan struct{}, maxHeavy)
	h := s.answer(s.heavy(func(_ http.ResponseWriter, r *http.Request) error {
		begun <- struct{}{}
		<-r.Context().Done()
		return r.Context().Err()
	}))
	var all sync.WaitGroup
	for range maxHeavy + 3 {
		all.Go(func() { h(httptest.NewRecorder(), httptest.NewRequestWithContext(ctx, "GET", "/", nil)) })
	}
	<-begun
	<-begun
	cancel()
	all.Wait()
	assert.Zero(t, s.turns.waiting())
	a.held()()
}
