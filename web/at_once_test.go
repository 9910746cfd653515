package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"testing"

	"github.com/go-chi/chi/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// pages returns the address of every page and file of an app that can be asked
// for, with 1 for each number in it.
func pages(t *testing.T, s *Server) (list []string) {
	t.Helper()
	numbers := strings.NewReplacer("{id}", "1", "{revision}", "1", "{try}", "1", "{class}", "1", "{student}", "1", "{number}", "1", "{size}", "7", "{name}", "none")
	require.NoError(t, chi.Walk(s.routes().(chi.Routes), func(method, path string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		if path = numbers.Replace(path); method != http.MethodGet || path == "/static/{version}/*" || strings.HasSuffix(path, "/events") {
			return nil
		}
		if mitt, of := strings.CutSuffix(path, "/desk/{desk}"); of {
			for _, name := range deskNames {
				list = append(list, mitt+"/desk/"+name)
			}
			return nil
		}
		list = append(list, path)
		return nil
	}))
	require.NotContains(t, strings.Join(list, " "), "{", "every place in an address is filled")
	require.Greater(t, len(list), 30)
	return list
}

// Everything is asked for while everything else is: each page by several
// windows, strokes, counts, tries, numbers and copies of the same mitt, names
// in its class, backups, and devices that are let in and out. Nothing fails
// inside, and whoever listens hears of each stroke that was acknowledged.
//
//thenar:race
func TestEverythingAtOnce(t *testing.T) {
	a, near := far(t)
	at := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(at+"/design/fill", glove("7", "8")).status)
	a.table(a.class(), tuesday, nil)
	next := lineOf(a, at+"/chart/events?after=1")
	var all sync.WaitGroup
	rounds := testenv.Cases(1, 20)
	list := pages(t, a.handler)
	for window := range 3 {
		all.Go(func() {
			for i := range rounds * len(list) / 3 {
				path := list[(i*7+window*11)%len(list)]
				got := a.get(path)
				assert.True(t, got.status < 500 || got.status == http.StatusServiceUnavailable, "%s: %d", path, got.status)
			}
		})
	}
	var drawn sync.Map
	for window := range 2 {
		all.Go(func() {
			for i := range 8 * rounds {
				key := fmt.Sprintf("w%di%d", window, i)
				body := fmt.Sprintf(`{"after":1,"key":%q,"edits":[{"section":"gusset","round":%d,"column":"A1","layer":"colour","value":%q}]}`, key, i%16+1, []string{"a", "b"}[window])
				if got := a.stroke(at+"/chart", body); assert.Equal(t, http.StatusOK, got.status, got.body) {
					drawn.Store(key, true)
				}
				a.write(at, key, i)
			}
		})
	}
	for range 2 {
		all.Go(func() { comeAndGo(t, near, rounds) })
	}
	all.Wait()
	strokes := 0
	drawn.Range(func(any, any) bool { strokes++; return true })
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"key":"last","edits":[`+paintPurl+`]}`).status)
	for heard, last := 0, false; !last; {
		for _, s := range next().Strokes {
			heard++
			last = last || s.Edits[0].Value == "p"
		}
		if last {
			assert.Equal(t, strokes+1, heard)
		}
	}
}

// write saves something else beside a stroke, each time of another kind.
func (a *served) write(at, key string, i int) {
	a.t.Helper()
	var got answer
	switch i % 8 {
	case 0:
		got = a.stroke(at+"/needles", fmt.Sprintf(`{"key":%q,"side":"right","section":"cuff","round":%d}`, key, i%8+1))
	case 1:
		got = a.post(at+"/tries", url.Values{"key": {key}, "date": {"2025-03-09"}, "side": {"left"}, "section": {"cuff"}, "round": {"8"}, "note": {key}})
	case 2:
		form := a.form(at)
		form.Set("yarn.ball_mass", fmt.Sprint(50+i))
		got = a.post(at+[]string{"", "/preview", "/what-if/preview"}[i/8%3], form)
	case 3:
		got = a.post(at+"/copy", nil)
	case 4:
		got = a.post("/classes/1/students", url.Values{"name": {key}, "hand.size": {"8"}})
	case 5:
		got = a.post(at+"/history", url.Values{"name": {key}, "revision": {"1"}})
	case 6:
		got = a.post("/status/backup", nil)
	case 7:
		got = a.stroke("/motifs", fmt.Sprintf(`{"name":%q,"cells":[{"x":0,"y":0,"colour":"a"}]}`, key))
	}
	assert.True(a.t, got.status < 500 || got.status == http.StatusServiceUnavailable, "%d: %d %s", i%8, got.status, got.body)
}

// comeAndGo lets a device in, guesses a wrong key, looks round, and lets all
// devices out again.
func comeAndGo(t *testing.T, near http.Handler, rounds int) {
	for range 2 * rounds {
		in := askFrom(near, "GET", "/?key="+testKey, "", aPhone, nil)
		if in.Code != http.StatusOK { // it waits, since the other one guessed
			continue
		}
		token := in.Result().Cookies()[0].Value
		for _, path := range []string{"/", "/status", "/?key=WRONG"} {
			seen := askFrom(near, "GET", path, token, aPhone, nil)
			assert.Less(t, seen.Code, 500, path)
		}
		askFrom(near, "POST", "/status/devices/out", token, aPhone, nil)
	}
}
