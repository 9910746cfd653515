package web

import (
	"net/http"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
)

// lightest is the most bytes of a desk's page on its way, compressed, without
// faces, scripts and style sheets, which come once.
const lightest = 60 * 1024

// Every desk's page is light: of the sample, of a mitten in two colours, and of
// one that is on the needles with both hands begun.
// What a page fetches of itself after it has come is not counted.
func TestEveryDeskIsLight(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	sample, mitten, begun := a.sample(), colourful(t, a), a.sample()
	for _, side := range []string{"right", "left"} {
		for nth := 1; nth <= 20; nth += 19 {
			a.post(begun+"/needles", map[string][]string{"side": {side}, "nth": {strconv.Itoa(nth)}})
		}
	}
	for name, mitt := range map[string]string{"sample": sample, "mitten of two colours": mitten, "on the needles": begun} {
		for _, desk := range deskNames {
			page := a.taking("gzip", mitt+"/desk/"+desk)
			assert.Equal(t, http.StatusOK, page.status)
			assert.LessOrEqual(t, len(page.body), lightest, "%s of the %s", desk, name)
			t.Logf("%s, %s: %d bytes, %d unpacked", name, desk, len(page.body), len(page.zipped()))
		}
	}
	for _, nth := range []int{12, 60} { // in its ribbing, where every stitch has a symbol, and in its colours
		a.post(mitten+"/needles", map[string][]string{"side": {"right"}, "nth": {strconv.Itoa(nth)}})
		page := a.taking("gzip", mitten+"/desk/knit")
		assert.LessOrEqual(t, len(page.body), lightest, "knit, with %d done", nth)
		t.Logf("knit, with %d done: %d bytes", nth, len(page.body))
	}
	assert.LessOrEqual(t, len(a.taking("gzip", "/").body), lightest, "the shelf with all of them")
}
