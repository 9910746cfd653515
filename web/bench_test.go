package web

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/project"
	"thenar/internal/store"
)

// BenchmarkPreview answers a change of the measure form over loopback and
// reports the median and the 95th percentile, beside those of a route that
// does nothing but answer.
func BenchmarkPreview(b *testing.B) {
	st, err := store.Open(context.Background(), filepath.Join(b.TempDir(), "thenar.db"))
	require.NoError(b, err)
	defer st.Close()
	server := httptest.NewServer(New(app.New(st), io.Discard, Door{}))
	defer server.Close()
	doc := project.Samples()[0]
	raw, err := doc.Encode()
	require.NoError(b, err)
	id, err := st.Create(context.Background(), raw)
	require.NoError(b, err)
	form := url.Values{"name": {doc.Name}, "side": {string(doc.Side)}, "after": {"1"}}
	for path, text := range doc.Sheet {
		form.Set(path, text)
	}
	var took, bare []time.Duration
	i := 0
	for b.Loop() {
		form.Set("hand.hand_circumference", fmt.Sprintf("%d.%d", 17+i%5, i%10))
		took = append(took, timed(b, func() (*http.Response, error) {
			return server.Client().PostForm(fmt.Sprintf("%s/mitts/%d/preview", server.URL, id), form)
		}))
		bare = append(bare, timed(b, func() (*http.Response, error) { return server.Client().Get(server.URL + "/nowhere/at/all") }))
		i++
	}
	b.ReportMetric(milliseconds(took, 0.50), "p50-ms")
	b.ReportMetric(milliseconds(took, 0.95), "p95-ms")
	b.ReportMetric(milliseconds(bare, 0.95), "bare-p95-ms")
}

func timed(b *testing.B, ask func() (*http.Response, error)) time.Duration {
	b.Helper()
	start := time.Now()
	resp, err := ask()
	require.NoError(b, err)
	_, err = io.Copy(io.Discard, resp.Body)
	require.NoError(b, err)
	require.NoError(b, resp.Body.Close())
	return time.Since(start)
}

func milliseconds(took []time.Duration, share float64) float64 {
	slices.Sort(took)
	return float64(took[int(share*float64(len(took)-1))].Microseconds()) / 1000
}
