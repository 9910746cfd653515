package web

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// saves lets the browser keep what it is asked to save, does what saves a file, and returns
// the file, with the name that is proposed for it.
func (b *browser) saves(press func()) (name, content string) {
	b.t.Helper()
	folder, of := b.t.TempDir(), chromedp.FromContext(b.ctx)
	behave := func(params cdpbrowser.SetDownloadBehaviorParams) {
		params.BrowserContextID = of.BrowserContextID
		_, err := cdp.Call(b.ctx, of.Browser, cdpbrowser.SetDownloadBehavior, params)
		require.NoError(b.t, err)
	}
	tell := true
	behave(cdpbrowser.SetDownloadBehaviorParams{Behavior: cdpbrowser.SetDownloadBehaviorBehaviorAllowAndName, DownloadPath: folder, EventsEnabled: &tell})
	defer behave(cdpbrowser.SetDownloadBehaviorParams{Behavior: cdpbrowser.SetDownloadBehaviorBehaviorDefault})
	begun, ended := make(chan *cdpbrowser.EventDownloadWillBegin, 8), make(chan *cdpbrowser.EventDownloadProgress, 64)
	require.NoError(b.t, chromedp.ListenBrowser(b.ctx, func(event any) {
		switch e := event.(type) {
		case *cdpbrowser.EventDownloadWillBegin:
			if strings.HasPrefix(e.URL, b.url) { // tests beside this one save files, too
				begun <- e
			}
		case *cdpbrowser.EventDownloadProgress:
			if e.State != cdpbrowser.DownloadProgressStateInProgress {
				ended <- e
			}
		}
	}))
	press()
	var file *cdpbrowser.EventDownloadWillBegin
	select {
	case file = <-begun:
	case <-b.ctx.Done():
		require.Fail(b.t, "nothing was saved")
	}
	for {
		select {
		case e := <-ended:
			if e.GUID != file.GUID {
				continue
			}
			require.Equal(b.t, cdpbrowser.DownloadProgressStateCompleted, e.State)
			raw, err := os.ReadFile(filepath.Join(folder, e.GUID))
			require.NoError(b.t, err)
			return file.SuggestedFilename, string(raw)
		case <-b.ctx.Done():
			require.Fail(b.t, "the file never came")
		}
	}
}

// box is what a picture shows in a box: how often it is worked, and its cells of rust, from the
// lowest row up, each from the left.
type box struct {
	times int
	rows  []string
}

var (
	cornerOf = regexp.MustCompile(`M ([\d.]+) ([\d.]+) L ([\d.]+) [\d.]+ L [\d.]+ ([\d.]+)`)
	timesOf  = regexp.MustCompile(`^× (\d+)$`)
)

// rects reads the rectangles of a path: left, top, right, foot of each.
func rects(t *testing.T, d string) (list [][4]float64) {
	t.Helper()
	for _, found := range cornerOf.FindAllStringSubmatch(d, -1) {
		var r [4]float64
		for i := range r {
			var err error
			r[i], err = strconv.ParseFloat(found[i+1], 64)
			require.NoError(t, err)
		}
		list = append(list, r)
	}
	return list
}

// boxesOf reads the boxes of a picture, of motifs so many stitches wide, by what is drawn
// alone: lines, colours and figures, with a reader of XML that knows nothing else of it.
func boxesOf(t *testing.T, svg string, wide int) (list []box) {
	t.Helper()
	var rust, boxes [][4]float64 // of the chart that is read; its boxes come behind its cells
	var times []int
	flush := func() {
		for i, b := range boxes {
			w := (b[2] - b[0]) / float64(wide)
			require.NotEmpty(t, rust)
			h := rust[0][3] - rust[0][1]
			one := box{times: times[i]}
			for y := b[3] - h/2; y > b[1]; y -= h {
				row := ""
				for k := range wide {
					x, at := b[0]+(float64(k)+0.5)*w, "."
					if slices.ContainsFunc(rust, func(r [4]float64) bool { return x > r[0] && x < r[2] && y > r[1] && y < r[3] }) {
						at = "b"
					}
					row += at
				}
				one.rows = append(one.rows, row)
			}
			require.InDelta(t, math.Round((b[3]-b[1])/h), (b[3]-b[1])/h, 0.01, "whole rounds")
			list = append(list, one)
		}
		rust, boxes, times = nil, nil, nil
	}
	inTimes := false
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			flush()
			return list
		}
		require.NoError(t, err)
		inside := inTimes
		inTimes = false
		switch token := token.(type) {
		case xml.StartElement:
			attr := map[string]string{}
			for _, a := range token.Attr {
				attr[a.Name.Local] = a.Value
			}
			switch class := attr["class"]; {
			case attr["data-layer"] == "colour":
				flush()
			case class == "yarn yarn-b":
				rust = append(rust, rects(t, attr["d"])...)
			case class == "box":
				boxes = append(boxes, rects(t, attr["d"])...)
			case class == "label box-times":
				inTimes = true
			}
		case xml.CharData:
			if inside {
				n, err := strconv.Atoi(timesOf.FindStringSubmatch(string(token))[1])
				require.NoError(t, err)
				times = append(times, n)
			}
		}
	}
}

// isMotif reports whether the rows of a box go through a motif again and again, from any of
// its rounds on. Rounds without any of it may stand below and above.
func (b box) isMotif(motif []string) bool {
	rows := b.rows
	plain := strings.Repeat(".", len(motif[0]))
	for len(rows) > 0 && rows[0] == plain {
		rows = rows[1:]
	}
	for len(rows) > 0 && rows[len(rows)-1] == plain {
		rows = rows[:len(rows)-1]
	}
	for from := range motif {
		i := from - 1
		if !slices.ContainsFunc(rows, func(row string) bool {
			i++
			return row != motif[i%len(motif)]
		}) {
			return len(rows) > 0
		}
	}
	return false
}
