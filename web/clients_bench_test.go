package web

import (
	"bytes"
	"database/sql"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/store"
)

// rawCommits is how many rows a second plain SQLite keeps durably, each in a
// transaction of its own, on the disk of dir: what saves are measured against.
func rawCommits(tb testing.TB, dir string) float64 {
	tb.Helper()
	db, err := sql.Open("sqlite", "file:"+filepath.Join(dir, "raw.db")+"?_txlock=immediate&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)")
	require.NoError(tb, err)
	defer db.Close()
	db.SetMaxOpenConns(1)
	_, err = db.Exec(`CREATE TABLE IF NOT EXISTS t (id INTEGER PRIMARY KEY, x TEXT) STRICT`)
	require.NoError(tb, err)
	const span = 3 * time.Second
	n, begun := 0, time.Now()
	for ; time.Since(begun) < span; n++ {
		_, err := db.Exec(`INSERT INTO t (x) VALUES ('[{"section":"gusset","round":1,"column":"A1","layer":"stitch","value":"p"}]')`)
		require.NoError(tb, err)
	}
	return float64(n) / time.Since(begun).Seconds()
}

// resident is what a process holds in memory, in MB.
func resident(tb testing.TB, pid int) float64 {
	tb.Helper()
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	require.NoError(tb, err)
	for line := range strings.Lines(string(raw)) {
		if text, ok := strings.CutPrefix(line, "VmRSS:"); ok {
			kb, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
			require.NoError(tb, err)
			return kb / 1000
		}
	}
	require.Fail(tb, "no VmRSS")
	return 0
}

// client is one of many that edit a mitt.
type client struct {
	b              *testing.B
	k              *killable
	http           *http.Client
	mitt           string
	after, decided int64
	form           url.Values
	drawn          []string // keys of strokes that were acknowledged
	took           map[string][]time.Duration
	conflicts      int
}

const clients, shared = 200, 20

// BenchmarkClients lets 200 clients at a time edit 20 mitts on a server in a
// process of its own: eight strokes, a count, the form. Nothing but a
// stated conflict may go wrong, and every stroke that was acknowledged must be
// there. -benchtime 60s makes it a minute; -v prints the table of times.
func BenchmarkClients(b *testing.B) {
	k := newKillable(b)
	dir := filepath.Dir(k.db)
	for range shared {
		_, err := post(b.Context(), k, "/mitts", "application/x-www-form-urlencoded", "sample=1")
		require.NoError(b, err)
	}
	before := rawCommits(b, dir)
	var all sync.WaitGroup
	list := make([]*client, clients)
	var memory []float64
	b.ResetTimer()
	for i := range list {
		c := &client{b: b, k: k, mitt: fmt.Sprintf("/mitts/%d", i%shared+1), took: map[string][]time.Duration{}, form: url.Values{}}
		c.http = &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 1}, CheckRedirect: direct.CheckRedirect}
		list[i] = c
		all.Go(func() {
			for n := i; n < b.N; n += clients {
				c.edit(i, n)
				if i == 0 && n/clients%max(1, b.N/clients/6) == 0 {
					memory = append(memory, resident(b, k.process.Process.Pid))
				}
			}
		})
	}
	all.Wait()
	b.StopTimer()
	raw := (before + rawCommits(b, dir)) / 2
	conflicts := 0
	for _, c := range list {
		conflicts += c.conflicts
	}
	saves := float64(b.N-conflicts) / b.Elapsed().Seconds() // a conflict saved nothing
	b.ReportMetric(float64(conflicts), "conflicts")
	b.ReportMetric(saves, "saves/s")
	b.ReportMetric(raw, "raw/s")
	b.ReportMetric(saves/raw, "ratio")
	k.kill()
	if b.N >= 100*clients { // not of the short runs by which its length is found
		report(b, list, memory)
	}
	noneLost(b, k.db, list)
}

// edit does what a person does next.
func (c *client) edit(who, n int) {
	turn := n / clients % 10
	key := fmt.Sprintf("c%dn%d", who, n)
	switch turn {
	case 8:
		c.send("count", "/needles", "application/json", fmt.Sprintf(`{"key":%q,"side":"right","section":"cuff","round":%d}`, key, n%8+1))
	case 9:
		c.form.Set("after", strconv.FormatInt(c.decided, 10))
		c.form.Set("yarn.ball_mass", strconv.Itoa(n%400+1))
		status, body := c.send("form", "", "application/x-www-form-urlencoded", c.form.Encode())
		var said struct {
			Revision int64 `json:"revision"`
		}
		if status == http.StatusOK && json.Unmarshal(body, &said) == nil {
			c.decided = said.Revision
		} else { // somebody else saved: look at it, and go on from there
			c.conflicts++
			c.decided = c.look()
		}
	default:
		edit := fmt.Sprintf(`{"section":"gusset","round":%d,"column":"A%d","layer":"stitch","value":%q}`, n%19+1, who%5+1, []string{"p", "k"}[n%2])
		_, body := c.send("stroke", "/chart", "application/json", fmt.Sprintf(`{"after":%d,"key":%q,"edits":[%s]}`, c.after, key, edit))
		var reply app.Drawn
		if json.Unmarshal(body, &reply) == nil {
			c.after = reply.Revision
			c.drawn = append(c.drawn, key)
		}
	}
}

// look gives the newest revision of the mitt.
func (c *client) look() int64 {
	resp, err := c.http.Get("http://" + c.k.address + c.mitt + "/chart")
	if err != nil {
		c.b.Error(err)
		return 0
	}
	defer resp.Body.Close()
	var reply app.Drawn
	if err := json.NewDecoder(resp.Body).Decode(&reply); err != nil {
		c.b.Error(err)
	}
	return reply.Revision
}

func (c *client) send(what, below, kind, body string) (int, []byte) {
	req, err := http.NewRequestWithContext(c.b.Context(), http.MethodPost, "http://"+c.k.address+c.mitt+below, strings.NewReader(body))
	if err != nil {
		c.b.Error(err)
		return 0, nil
	}
	req.Header.Set("Content-Type", kind)
	req.Header.Set("Accept", "application/json")
	begun := time.Now()
	resp, err := c.http.Do(req)
	if err != nil {
		c.b.Error(err)
		return 0, nil
	}
	defer resp.Body.Close()
	var read bytes.Buffer
	_, _ = read.ReadFrom(resp.Body)
	c.took[what] = append(c.took[what], time.Since(begun))
	if resp.StatusCode != http.StatusOK && (what != "form" || resp.StatusCode != http.StatusConflict) {
		c.b.Errorf("%s: %d %.200s", what, resp.StatusCode, read.String())
	}
	return resp.StatusCode, read.Bytes()
}

// report prints how long the clients waited, and what the server held.
func report(b *testing.B, list []*client, memory []float64) {
	b.Helper()
	for _, what := range []string{"stroke", "count", "form"} {
		var took []time.Duration
		for _, c := range list {
			took = append(took, c.took[what]...)
		}
		if len(took) == 0 {
			continue
		}
		slices.Sort(took)
		at := func(share float64) time.Duration {
			return took[min(len(took)-1, int(share*float64(len(took))))].Round(100 * time.Microsecond)
		}
		b.Logf("%-7s %7d  median %8v  90 %% %8v  99 %% %8v  longest %8v", what, len(took), at(0.5), at(0.9), at(0.99), at(1))
	}
	b.Logf("resident MB, from first to last: %.0f", memory)
}

// noneLost finds every stroke that was acknowledged, once.
func noneLost(b *testing.B, db string, list []*client) {
	b.Helper()
	st, err := store.Open(b.Context(), db)
	require.NoError(b, err)
	defer st.Close()
	f, err := st.ExportAll(b.Context())
	require.NoError(b, err)
	there := map[string]int{}
	for _, m := range f.Mitts {
		for _, r := range m.Revisions {
			there[r.Key]++
		}
	}
	for _, c := range list {
		for _, key := range c.drawn {
			if there[key] != 1 {
				b.Errorf("stroke %s stands %d times", key, there[key])
			}
		}
	}
}
