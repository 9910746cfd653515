package testenv

import "regexp"

// The words that only one side of the trade uses: teaching pages of the trade
// name bind off and gauge as the US words for cast off and tension, and yfwd, yon
// and yrn as the UK's yarn overs; stockinette is in the Craft Yarn Council's list
// (from memory), stocking stitch common practice, no source.
var (
	OfUS = regexp.MustCompile(`(?i)\b(bind(ing|s)?[- ]off|bound[- ]off|stockinette|gauges?)\b|\bBO\b|\bUS \d`)
	OfUK = regexp.MustCompile(`(?i)\b(cast(ing|s)?[- ]off|stocking[- ]stitch|tensions?|yfwd|yfrn|yon|yrn)\b`)
)
