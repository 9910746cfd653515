package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"

	"codeberg.org/go-pdf/fpdf"

	"thenar/internal/draw"
)

// photo writes a photograph as it is. One that stands on several pages is in the file once,
// and one that can't be read is left out.
func (p *painter) photo(i *draw.Item) {
	if w, h := i.Photo.Sized(); w == 0 || h == 0 {
		return
	}
	name, as := fmt.Sprintf("%x", sha256.Sum256(i.Photo.JPEG)), fpdf.ImageOptions{ImageType: "jpg"}
	p.f.RegisterImageOptionsReader(name, as, bytes.NewReader(i.Photo.JPEG))
	x, y := p.at.At(i.X, i.Y)
	p.f.ImageOptions(name, x, y, i.Photo.Width*p.at.Scale, i.Photo.Height*p.at.Scale, false, as, 0, "")
}
