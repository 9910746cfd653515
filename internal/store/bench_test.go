package store

import (
	"database/sql"
	"fmt"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// rawCommits is how many rows a second plain SQLite keeps durably, each in a
// transaction of its own, on the disk of dir: what saves are measured against.
func rawCommits(tb testing.TB, dir string, span time.Duration) float64 {
	tb.Helper()
	db, err := sql.Open("sqlite", dsn(filepath.Join(dir, "raw.db"), "_txlock=immediate"))
	require.NoError(tb, err)
	defer db.Close()
	db.SetMaxOpenConns(1)
	_, err = db.Exec(`CREATE TABLE t (id INTEGER PRIMARY KEY, x TEXT) STRICT`)
	require.NoError(tb, err)
	n, begun := 0, time.Now()
	for ; time.Since(begun) < span; n++ {
		_, err := db.Exec(`INSERT INTO t (x) VALUES ('[{"section":"gusset","round":1,"column":"A1","layer":"stitch","value":"p"}]')`)
		require.NoError(tb, err)
	}
	return float64(n) / time.Since(begun).Seconds()
}

// How many strokes a second are kept, by one hand after the other and by 200
// at a time, as a ratio to plain commits on the same disk.
func BenchmarkSaves(b *testing.B) {
	for _, hands := range []int{1, 200} {
		b.Run(fmt.Sprintf("hands=%d", hands), func(b *testing.B) {
			dir := b.TempDir()
			s, err := Open(b.Context(), filepath.Join(dir, "thenar.db"))
			require.NoError(b, err)
			defer s.Close()
			ids := make([]int64, 20)
			for i := range ids {
				ids[i], err = s.Create(b.Context(), []byte(`{"name": "one"}`))
				require.NoError(b, err)
			}
			raw := rawCommits(b, dir, time.Second)
			b.ResetTimer()
			var all sync.WaitGroup
			for hand := range hands {
				all.Go(func() {
					at := Applied{Revision: 1}
					for i := hand; i < b.N; i += hands {
						var err error
						if at, err = s.Append(b.Context(), ids[hand%len(ids)], at.Revision, purl(hand+1, i%60+1)); err != nil {
							b.Error(err)
						}
					}
				})
			}
			all.Wait()
			saves := float64(b.N) / b.Elapsed().Seconds()
			b.ReportMetric(saves, "saves/s")
			b.ReportMetric(raw, "raw/s")
			b.ReportMetric(saves/raw, "ratio")
		})
	}
}
