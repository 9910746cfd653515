package web

import (
	"bufio"
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/paper"
)

// program is the program itself, in a process of its own.
type program struct {
	b       *testing.B
	at      string
	process *exec.Cmd
	client  *http.Client
}

func newProgram(b *testing.B) *program {
	b.Helper()
	dir := b.TempDir()
	file := filepath.Join(dir, "thenar")
	out, err := exec.Command("go", "build", "-o", file, "thenar/cmd/thenar").CombinedOutput()
	require.NoError(b, err, "%s", out)
	p := &program{b: b, process: exec.Command(file, "-db", filepath.Join(dir, "thenar.db"), "-listen", "127.0.0.1:0")}
	said, err := p.process.StdoutPipe()
	require.NoError(b, err)
	require.NoError(b, p.process.Start())
	b.Cleanup(func() {
		_ = p.process.Process.Signal(os.Interrupt)
		_ = p.process.Wait()
	})
	line, err := bufio.NewReader(said).ReadString('\n')
	require.NoError(b, err)
	p.at = strings.TrimSuffix(strings.TrimSpace(line), "/")
	p.client = &http.Client{
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
		Transport:     &http.Transport{MaxIdleConnsPerHost: 32},
	}
	return p
}

// resident is the most memory that the program had so far, in MB.
func (p *program) resident() float64 {
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", p.process.Process.Pid))
	require.NoError(p.b, err)
	_, rest, _ := strings.Cut(string(raw), "VmHWM:")
	var kb float64
	_, err = fmt.Sscan(rest, &kb)
	require.NoError(p.b, err)
	return kb / 1024
}

func (p *program) ask(method, path, kind string, body io.Reader, more ...string) (status int, header http.Header, size int64) {
	req, err := http.NewRequest(method, p.at+path, body)
	if err != nil {
		p.b.Error(err)
		return 0, nil, 0
	}
	req.Header.Set("Content-Type", kind)
	req.Header.Set("Accept", "text/html")
	for i := 0; i+1 < len(more); i += 2 {
		req.Header.Set(more[i], more[i+1])
	}
	resp, err := p.client.Do(req)
	if err != nil {
		p.b.Error(err)
		return 0, nil, 0
	}
	defer resp.Body.Close()
	size, err = io.Copy(io.Discard, resp.Body)
	if err != nil {
		p.b.Error(err)
	}
	return resp.StatusCode, resp.Header, size
}

func (p *program) form(path string, form url.Values) {
	status, _, _ := p.ask("POST", path, "application/x-www-form-urlencoded", strings.NewReader(form.Encode()))
	require.Less(p.b, status, http.StatusBadRequest, path)
}

// follow asks as a browser does: a page that waits is asked for again.
func (p *program) follow(path string) (status int, size int64, waited int) {
	for {
		status, header, size := p.ask("GET", path, "", nil)
		if status != http.StatusAccepted {
			return status, size, waited
		}
		waited++
		wait, to, _ := strings.Cut(header.Get("Refresh"), "; url=")
		seconds, err := time.ParseDuration(wait + "s")
		if err != nil {
			p.b.Error(err)
			return 0, 0, waited
		}
		time.Sleep(seconds)
		path = to
	}
}

// others asks for every other page, and tells which took longest.
func (p *program) others() (slowest string, most time.Duration) {
	for _, path := range []string{
		"/", "/mitts/1/desk/fit", "/mitts/1/desk/chart", "/mitts/1/desk/knit", "/mitts/1/desk/try", "/mitts/1/chart", "/mitts/1/history", "/mitts/1/what-if",
		"/classes", "/classes/1", "/classes/1/students/7", "/status", "/motifs",
	} {
		at := time.Now()
		status, _, _ := p.ask("GET", path, "", nil)
		assert.Equal(p.b, http.StatusOK, status, path)
		if took := time.Since(at); took > most {
			slowest, most = path, took
		}
	}
	return slowest, most
}

// BenchmarkEightParts asks the program for eight parts of a class of 1,000 at
// once, a hundred students each in large print with all pieces, and for every
// other page meanwhile; six pictures of another site point at it, too. It
// reports the peak of the memory and how long other pages took, beside how long
// they take alone.
func BenchmarkEightParts(b *testing.B) {
	for b.Loop() {
		p := newProgram(b)
		p.form("/mitts", url.Values{"sample": {"1"}})
		p.form("/classes", url.Values{"name": {"Class"}, "mitt": {"1"}})
		table := "name,hand,stitches,rounds\n"
		for i := range 1000 {
			table += fmt.Sprintf("Student %d,%.1f,%d,%d\n", i, 16+float64(i%60)/10, 20+i%12, 28+i%14)
		}
		p.form("/classes/1/table", url.Values{"table": {table}})
		b.ReportMetric(p.resident(), "MB-before")
		o := paper.Usual()
		o.Large, o.Pieces = true, paper.Pieces()
		_, alone := p.others()
		b.ReportMetric(float64(alone.Milliseconds()), "slowest-alone-ms")
		begun := time.Now()
		var parts sync.WaitGroup
		var mu sync.Mutex
		waited, bytes := 0, int64(0)
		for i := range 8 {
			parts.Go(func() {
				status, size, n := p.follow(fmt.Sprintf("/classes/1/print.pdf?students=%d-%d&%s", 100*i+1, 100*i+100, o.Query().Encode()))
				assert.Equal(b, http.StatusOK, status)
				mu.Lock()
				defer mu.Unlock()
				waited, bytes = waited+n, bytes+size
			})
		}
		done := make(chan struct{})
		go func() { parts.Wait(); close(done) }()
		slowest, most := "", time.Duration(0)
		rounds := 0
		for going := true; going; rounds++ {
			if path, took := p.others(); took > most {
				slowest, most = path, took
			}
			for range 6 {
				status, _, _ := p.ask("GET", "/classes/1/print.pdf?students=1-100", "", nil, "Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "image")
				assert.Equal(b, http.StatusForbidden, status, "nothing is worked out for another site")
			}
			select {
			case <-done:
				going = false
			default:
			}
		}
		b.Logf("eight parts in %v, %d MB of PDF, %d waiting pages; %d times all other pages, the slowest %s in %v", time.Since(begun).Round(time.Millisecond), bytes>>20, waited, rounds, slowest, most.Round(time.Millisecond))
		b.ReportMetric(float64(most.Milliseconds()), "slowest-ms")
		b.ReportMetric(p.resident(), "peak-MB")
		assert.Less(b, p.resident(), 600.0)
	}
}

// BenchmarkOneRow sends a picture of one row of 50 million dots as the
// photograph of a try, and reports the peak of the memory.
func BenchmarkOneRow(b *testing.B) {
	for b.Loop() {
		p := newProgram(b)
		p.form("/mitts", url.Values{"sample": {"1"}})
		var body bytes.Buffer
		form := multipart.NewWriter(&body)
		for name, text := range map[string]string{"key": "k", "date": "2025-03-09", "side": "right", "section": "gusset", "round": "8", "note": "x"} {
			require.NoError(b, form.WriteField(name, text))
		}
		part, err := form.CreateFormFile("photo", "row.png")
		require.NoError(b, err)
		_, err = part.Write(oneRow(b))
		require.NoError(b, err)
		require.NoError(b, form.Close())
		b.ReportMetric(p.resident(), "MB-before")
		status, _, _ := p.ask("POST", "/mitts/1/tries", form.FormDataContentType(), &body)
		assert.Equal(b, http.StatusBadRequest, status)
		b.ReportMetric(p.resident(), "peak-MB")
		assert.Less(b, p.resident(), 60.0)
	}
}

// oneRow is a PNG of one row of 50 million grey dots (PNG, third edition, 5.3
// and 11.2).
func oneRow(b *testing.B) []byte {
	var out, packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	_, err := z.Write(make([]byte, 1+50_000_000))
	require.NoError(b, err)
	require.NoError(b, z.Close())
	out.WriteString("\x89PNG\r\n\x1a\n")
	for _, chunk := range []struct {
		name string
		data []byte
	}{{"IHDR", append(binary.BigEndian.AppendUint32(nil, 50_000_000), 0, 0, 0, 1, 8, 0, 0, 0, 0)}, {"IDAT", packed.Bytes()}, {"IEND", nil}} {
		body := append([]byte(chunk.name), chunk.data...)
		out.Write(binary.BigEndian.AppendUint32(nil, uint32(len(chunk.data))))
		out.Write(body)
		out.Write(binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(body)))
	}
	return out.Bytes()
}
