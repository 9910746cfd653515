package web

import (
	"bufio"
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
)

// lineOf opens the line of events of a chart; each call of the function gives
// the next news.
func lineOf(a *served, path string) func() app.News {
	a.t.Helper()
	resp, err := a.server.Client().Do(a.request("GET", path, "", ""))
	require.NoError(a.t, err)
	require.Equal(a.t, http.StatusOK, resp.StatusCode)
	require.Equal(a.t, "text/event-stream", resp.Header.Get("Content-Type"))
	a.t.Cleanup(func() { resp.Body.Close() })
	lines := bufio.NewScanner(resp.Body)
	return func() (news app.News) {
		a.t.Helper()
		for lines.Scan() {
			if data, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				require.NoError(a.t, json.Unmarshal([]byte(data), &news))
				return news
			}
		}
		require.Fail(a.t, "the line ended")
		return news
	}
}

// A page that listens is told what it does not know yet, then every stroke as
// it comes, and what was decided.
//
//thenar:race
func TestListen(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	next := lineOf(a, at+"/chart/events?after=1")
	first := next()
	assert.EqualValues(t, 2, first.Revision)
	require.Len(t, first.Strokes, 1)
	assert.Equal(t, "p", first.Strokes[0].Edits[0].Value)
	assert.True(t, first.CanUndo)
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":2,"undo":true}`).status)
	second := next()
	assert.EqualValues(t, 3, second.Revision)
	assert.Empty(t, second.Strokes[0].Edits[0].Value)
	assert.False(t, second.CanUndo)
	assert.EqualValues(t, 1, second.Decided)
	for _, wrong := range []string{"", "?after=x", "?after=-1"} {
		assert.Equal(t, http.StatusBadRequest, a.get(at+"/chart/events"+wrong).status)
	}
}

// A stroke whose answer was lost is sent again and stands once.
func TestAStrokeSentTwice(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	body := `{"after":1,"key":"a1","edits":[` + paintPurl + `]}`
	first, second := a.stroke(at+"/chart", body), a.stroke(at+"/chart", body)
	assert.Equal(t, first.body, second.body)
	assert.Contains(t, a.get(at+"/chart").body, `"revision":2`)
}

// A change of the rounds is worked out by the server, told as edits, undone as
// one stroke, and refused in words.
func TestChangeOfRounds(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	change := func(after int, kind string, round, to int) answer {
		return a.stroke(at+"/chart", fmt.Sprintf(`{"after":%d,"change":{"kind":%q,"section":"gusset","round":%d,"to":%d}}`, after, kind, round, to))
	}
	done := change(1, "insert", 3, 0)
	require.Equal(t, http.StatusOK, done.status, done.body)
	assert.Contains(t, done.body, `"column":"pins.gusset_rounds","layer":"sheet","value":"21"`)
	assert.Contains(t, a.get(at).doc().Find(".summary").Text(), "in 21 rounds")
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":3,"undo":true}`).status)
	assert.Contains(t, a.get(at).doc().Find(".summary").Text(), "in 20 rounds")
	refused := change(5, "remove", 1, 0)
	assert.Equal(t, http.StatusBadRequest, refused.status)
	assert.Contains(t, refused.body, "Round 1 makes 44 stitches of 42, which round 2 needs.")
	assert.Equal(t, http.StatusBadRequest, change(5, "turn", 1, 0).status)
	assert.Equal(t, http.StatusBadRequest, change(5, "move", 4, 0).status)
}
