package paper

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// shot writes pictures of pages into the folder that THENAR_SHOTS names, to be
// looked at.
func shot(t *testing.T, name string, pages []*draw.Scene) {
	t.Helper()
	folder := os.Getenv("THENAR_SHOTS")
	if folder == "" {
		return
	}
	for i, p := range pages {
		small := &draw.Scene{Width: p.Width / 3, Height: p.Height / 3}
		small.Add(p, 0, 0, 1.0/3)
		file, err := os.Create(filepath.Join(folder, fmt.Sprintf("%s-%d.png", name, i+1)))
		require.NoError(t, err)
		require.NoError(t, draw.WritePNG(t.Context(), file, small))
		require.NoError(t, file.Close())
	}
}
