package web

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
	"thenar/internal/testenv"
)

// ledger are the saves that a server acknowledged: what was sent, by where and
// under which number it should stand.
type ledger struct {
	mu   sync.Mutex
	said map[string]string
	came chan struct{} // one for each
}

func (l *ledger) note(place, sent string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.said[place] = sent
	l.came <- struct{}{}
}

// Killed at any instant under a stream of saves of every kind, the server
// comes back with each one that it acknowledged, in a file that is whole.
func TestKilledUnderSaves(t *testing.T) {
	k := newKillable(t)
	const hands = 4
	ids := make([]int64, hands)
	for hand := range hands {
		made, err := post(t.Context(), k, "/mitts", "application/x-www-form-urlencoded", "sample=1")
		require.NoError(t, err)
		ids[hand], err = strconv.ParseInt(strings.TrimPrefix(made.header.Get("Location"), "/mitts/"), 10, 64)
		require.NoError(t, err)
	}
	said := &ledger{said: map[string]string{}, came: make(chan struct{}, 1<<16)}
	r := rand.New(rand.NewPCG(20, 7))
	const together = 25
	total, times := 0, testenv.Cases(10, 1000)
	for killed := range times {
		ctx, cancel := context.WithCancel(t.Context())
		ended := make(chan struct{})
		var all sync.WaitGroup
		for hand, id := range ids {
			all.Go(func() { stream(ctx, k, said, id, hand, killed) })
		}
		go func() { all.Wait(); close(ended) }()
		for range r.IntN(60) { // then the others are amid a save
			select {
			case <-said.came:
			case <-ended:
				require.Fail(t, "the server refused a save")
			}
		}
		k.kill()
		<-ended
		cancel()
		for len(said.came) > 0 {
			<-said.came
		}
		if killed%together == together-1 || killed == times-1 {
			total += verify(t, k.db, said)
		}
		k.start() // which looks through the file first
	}
	t.Logf("killed %d times, %d saves acknowledged and there", times, total)
}

// stream sends one save after the other, until the server is gone: a stroke, a
// count, a try, the form, all with names of their own.
func stream(ctx context.Context, k *killable, said *ledger, id int64, hand, killed int) {
	after := int64(0)
	for i := 0; ctx.Err() == nil; i++ {
		key := fmt.Sprintf("k%dh%di%d", killed, hand, i)
		at := fmt.Sprintf("/mitts/%d", id)
		switch i % 4 {
		case 0, 1:
			value := []string{"p", "k"}[i%2]
			body := fmt.Sprintf(`{"after":%d,"key":%q,"edits":[{"section":"gusset","round":%d,"column":"A1","layer":"stitch","value":%q}]}`, after, key, i%19+1, value)
			got, err := post(ctx, k, at+"/chart", "application/json", body)
			if err != nil || got.status != http.StatusOK {
				return
			}
			var reply app.Drawn
			if json.Unmarshal([]byte(got.body), &reply) != nil {
				return // cut off amid the answer: it was not acknowledged whole
			}
			after = reply.Revision
			said.note(fmt.Sprintf("stroke %d %d", id, reply.Revision), key)
		case 2:
			body := url.Values{"key": {key}, "date": {"2025-03-09"}, "side": {"right"}, "section": {"gusset"}, "round": {"8"}, "note": {key}}.Encode()
			got, err := post(ctx, k, at+"/tries", "application/x-www-form-urlencoded", body)
			if err != nil || got.status != http.StatusSeeOther {
				return
			}
			said.note(fmt.Sprintf("try %d %s", id, key), key)
		case 3:
			got, err := post(ctx, k, at+"/needles", "application/json", fmt.Sprintf(`{"key":%q,"side":"right","section":"cuff","round":%d}`, key, i%8+1))
			if err != nil || got.status != http.StatusOK {
				return
			}
			said.note(fmt.Sprintf("count %d %s", id, key), key)
		}
	}
}

// post sends a body and reads the answer whole; without that nothing is
// acknowledged.
func post(ctx context.Context, k *killable, path, kind, body string) (answer, error) {
	req, err := http.NewRequestWithContext(ctx, http.MethodPost, "http://"+k.address+path, strings.NewReader(body))
	if err != nil {
		return answer{}, err
	}
	req.Header.Set("Content-Type", kind)
	resp, err := direct.Do(req)
	if err != nil {
		return answer{}, err
	}
	defer resp.Body.Close()
	var b bytes.Buffer
	_, err = b.ReadFrom(resp.Body)
	return answer{k.t, resp.StatusCode, resp.Header, b.String()}, err
}

// direct follows no redirects.
var direct = &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}

// verify opens the file as a new start would, which looks through it, and
// finds every save that was acknowledged since the last time.
func verify(t *testing.T, db string, said *ledger) int {
	t.Helper()
	st, err := store.Open(t.Context(), db)
	require.NoError(t, err)
	defer func() { require.NoError(t, st.Close()) }()
	f, err := st.ExportAll(t.Context())
	require.NoError(t, err)
	there := map[string]string{}
	for _, m := range f.Mitts {
		for _, r := range m.Revisions {
			there[fmt.Sprintf("stroke %d %d", m.ID, r.Revision)] = r.Key
		}
		for _, try := range m.Tries {
			there[fmt.Sprintf("try %d %s", m.ID, try.Key)] = try.Key
		}
		for _, c := range m.Counts {
			there[fmt.Sprintf("count %d %s", m.ID, c.Key)] = c.Key
		}
	}
	for place, sent := range said.said {
		assert.Equal(t, sent, there[place], place)
	}
	n := len(said.said)
	clear(said.said)
	return n
}
