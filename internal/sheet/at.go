package sheet

import (
	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// At is the request of a sheet without swatches, at a gauge in stitches and
// rounds per mm that is taken as it is.
func (s Sheet) At(stitches, rounds float64) (*mitt.Request, error) {
	s = s.Clone()
	const swatch = "gauge.swatches[0]."
	s[swatch+"stitches"], s[swatch+"width"] = "20", (100 * units.Millimetre).Exact(s.Unit()) // any; replaced below
	req, err := s.Request()
	if err != nil {
		return nil, err
	}
	req.Gauge = gauge.Gauge{Stitches: stitches, Rounds: rounds, Treated: true}
	return req, nil
}
