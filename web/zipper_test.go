package web

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// While a page is on its way to a client that receives slowly, its gzip writer
// is in use by others.
func TestPageOnItsWayHoldsNoGzipWriter(t *testing.T) {
	var z *zipper
	var held []bool
	var sent bytes.Buffer
	z = &zipper{to: writes(func(p []byte) (int, error) {
		held = append(held, z.zip != nil)
		return sent.Write(p)
	})}
	page := strings.Repeat("Knit 3, make one leaning left. ", 8000)
	_, err := io.WriteString(z, page)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	assert.Equal(t, []bool{false}, held)
	zip, err := gzip.NewReader(&sent)
	require.NoError(t, err)
	got, err := io.ReadAll(zip)
	require.NoError(t, err)
	assert.Equal(t, page, string(got))
}

// writes is a function as an io.Writer.
type writes func([]byte) (int, error)

func (f writes) Write(p []byte) (int, error) { return f(p) }
