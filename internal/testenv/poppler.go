package testenv

import (
	"bytes"
	"fmt"
	"image"
	"os/exec"
	"strconv"
	"testing"
)

// Grey draws a page of a PDF by poppler in greys, with so many dots to the inch.
// It comes as plain rows of dots (the netpbm format P5), which cost nothing to
// pack and unpack: a PNG takes as long again as the drawing.
func Grey(t testing.TB, file string, page, dpi int) *image.Gray {
	t.Helper()
	n := strconv.Itoa(page)
	raw, err := exec.Command(Program(t, "pdftoppm"), "-r", strconv.Itoa(dpi), "-gray", "-singlefile", "-f", n, "-l", n, file).Output()
	if err != nil {
		t.Fatal(err)
	}
	var width, height int
	if _, err := fmt.Fscanf(bytes.NewReader(raw), "P5\n%d %d\n255\n", &width, &height); err != nil || len(raw) < width*height {
		t.Fatalf("page %s of %s is no picture of %d by %d dots: %v", n, file, width, height, err)
	}
	return &image.Gray{Pix: raw[len(raw)-width*height:], Stride: width, Rect: image.Rect(0, 0, width, height)}
}
