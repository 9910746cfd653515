package web

import (
	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// A device comes in by the link, which leaves its address bar, and is named on
// This computer. Let out, it keeps what it could not send; let in again, all of
// that arrives.
func TestDeviceInTheBrowser(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	st, url := serveWith(t, func(s *Server) {
		s.door = Door{Key: testKey, Link: "http://192.168.0.7:8420/?key=" + testKey}
		s.Handler = s.handler()
	})
	address := url + "/?key=" + testKey
	b := newBrowserAt(t, url)
	b.do(chromedp.Navigate(address))
	b.arrives(`location.search === "" && document.querySelector(".begin") !== null`)
	b.do(chromedp.Navigate(address)) // known by now
	assert.Equal(t, url+"/", eval[string](b, `location.href`))
	for range 2 {
		_, err := st.LetIn(t.Context(), "Android phone")
		require.NoError(t, err)
	}
	b.open("/status")
	b.do(chromedp.Evaluate[chromedp.Void](`(() => {
		const item = [...document.querySelectorAll(".devices li")].at(-1);
		item.querySelector("details").open = true;
		item.querySelector("[name=name]").value = "The desk in the workshop";
	})()`))
	b.follow(".devices li:last-child details button")
	assert.Contains(t, eval[string](b, `document.querySelector(".devices li:last-child p").textContent`), "The desk in the workshop this device")
	check(b, string(axe), "devices", "/status")
	b.asBegun()

	b.open("/")
	b.follow(".begin form:nth-of-type(2) button")
	b.desk(b.mitt(), "chart")
	b.until(`document.querySelector("#chart-saved") !== null`)
	list, err := st.Devices(t.Context())
	require.NoError(t, err)
	require.Len(t, list, 3, "the link that was opened twice let one device in")
	require.NoError(t, st.LetOut(t.Context(), list[2].ID))
	b.click(b.cell(3, 1))
	b.until(`document.querySelector("#chart-saved").textContent.includes("kept here")`)
	m, err := st.Load(t.Context(), 1)
	require.NoError(t, err)
	assert.Empty(t, m.Marks)
	b.expectErrors() // those of the answers 403
	require.Equal(t, 200, await[int](b, `fetch("/?key=`+testKey+`").then((r) => r.status)`), "as another window opens it")
	b.do(chromedp.Evaluate[chromedp.Void](`window.dispatchEvent(new Event("online"))`))
	b.until(`document.querySelector("#chart-saved").textContent.startsWith("saved")`)
	m, err = st.Load(t.Context(), 1)
	require.NoError(t, err)
	assert.Len(t, m.Marks, 1)
}
